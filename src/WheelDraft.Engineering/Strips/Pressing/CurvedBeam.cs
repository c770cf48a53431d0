namespace WheelDraft.Engineering;

/// <summary>Bending of a bar that is curved where it is bent: the stress gathers on the inside of the curve.</summary>
/// <remarks>Winkler and Bach, as in S. Timoshenko, Strength of Materials, part II, "Bending of curved bars", for a rectangular
/// section: plane sections stay plane, the neutral axis lies on r = h/ln(r_o/r_i).</remarks>
internal static class CurvedBeam
{
    // A fold without any inside radius would have no bound to its stress, and no tool makes one: a twentieth of the thickness stands
    // for it, where the factor is 4.2. A smaller radius would only raise it.
    private const double SharpestShare = 0.05;

    /// <summary>Stress at the inside of the curve over that of a straight bar of the same section, at least 1.</summary>
    /// <param name="insideRadiusMm">Radius of the inner face.</param>
    /// <param name="depthMm">Depth of the section along the radius: thickness of a fold, width of a sweep; above 0.</param>
    internal static double InnerFactor(double insideRadiusMm, double depthMm)
    {
        double inner = Math.Max(insideRadiusMm, SharpestShare * depthMm) / depthMm;
        if (inner > SeriesFrom)
        {
            return 1 + (1 / (3 * (inner + 0.5)));
        }

        double neutral = 1 / Math.Log((inner + 1) / inner);
        double offset = inner + 0.5 - neutral;

        // M (r_n − r_i)/(A e r_i) over 6 M/(b h²), all lengths in depths.
        return (neutral - inner) / (6 * offset * inner);
    }

    // Beyond this ratio the closed form loses digits in r_c − r_n (of the order 1/(12 r)); the first term of its series, with c = h/2
    // from the centre line, is nearer than 1e-5 there: K = 1 + 2c/(3R) + …
    private const double SeriesFrom = 200;
}
