using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What strips may differ by, in words.</summary>
internal static class FormingWords
{
    /// <summary>The limits in one line, those that the file leaves out given as common practice.</summary>
    public static string Limits(FormingBrief forming)
    {
        ArgumentNullException.ThrowIfNull(forming);
        (FormingLimit Limit, string Words)[] all =
        [
            (forming.FoldRad, FormattableString.Invariant($"folds ±{Angles.DegFromRad(forming.FoldRad.Value):0.###}°")),
            (forming.ThicknessShare, FormattableString.Invariant($"thickness ±{100 * forming.ThicknessShare.Value:0.###} %")),
            (forming.HeightMm, FormattableString.Invariant($"height ±{forming.HeightMm.Value:0.###} mm")),
            (forming.RadiusMm, FormattableString.Invariant($"fold radii ±{forming.RadiusMm.Value:0.###} mm")),
        ];
        string[] assumed = [.. all.Where(a => !a.Limit.IsGiven).Select(a => a.Words)];
        string[] given = [.. all.Where(a => a.Limit.IsGiven).Select(a => a.Words)];
        return string.Join("; ", new[]
        {
            given.Length > 0 ? string.Join(", ", given) : null,
            assumed.Length > 0 ? $"{string.Join(", ", assumed)} assumed, common practice, no source" : null,
        }.OfType<string>());
    }

    /// <summary>A force with its band, rounded so that the band only grows: 0.62 N (0.45 to 0.80 N).</summary>
    /// <param name="newtons">The drawn force.</param>
    /// <param name="least">The least.</param>
    /// <param name="most">The greatest.</param>
    public static string Force(double newtons, double least, double most) =>
        FormattableString.Invariant($"{newtons:0.00} N ({Math.Floor(100 * least) / 100:0.00} to {Math.Ceiling(100 * most) / 100:0.00} N)");

    /// <summary>The force of a spring with its band.</summary>
    public static string Force(StripSpring spring)
    {
        ArgumentNullException.ThrowIfNull(spring);
        return Force(spring.ForceN, spring.LeastForceN, spring.MostForceN);
    }
}
