using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>Rules of sheet bending: allowance, neutral axis, springback. Angles are those turned through, radians.</summary>
internal static class BendRule
{
    /// <summary>Length of blank that a fold takes, mm: θ (R + K t).</summary>
    public static double AllowanceMm(double angleRad, double insideRadiusMm, double thicknessMm, double k) =>
        Math.Abs(angleRad) * (insideRadiusMm + (k * thicknessMm));

    /// <summary>The neutral-axis factor where the person gives none.</summary>
    /// <remarks>For tight bends the handbook's rule for the temper; as the radius grows the neutral axis moves to the middle, which
    /// DIN 6935 puts as K = 0.325 + 0.25 log₁₀(R/t), at most 0.5 (from memory): the larger of the two. Only a test strip is sure.</remarks>
    public static MaterialValue K(Material material, double insideRadiusMm, double thicknessMm)
    {
        ArgumentNullException.ThrowIfNull(material);
        double wide = Math.Min(0.5, 0.325 + (0.25 * Math.Log10(insideRadiusMm / thicknessMm)));
        return wide > material.TightBendK.Value
            ? new(wide, string.Create(CultureInfo.InvariantCulture, $"DIN 6935, neutral axis by R/t = {insideRadiusMm / thicknessMm:0.##}"), FromMemory: true)
            : material.TightBendK;
    }

    /// <summary>What to set so that a fold springs back to the wanted angle and radius.</summary>
    /// <remarks>Pure bending of an elastic, perfectly plastic sheet: Rᵢ/R_f = 4X³ − 3X + 1 with X = Rᵢ Y/(E t); the neutral arc
    /// keeps its length (standard forming texts, after Boothroyd and Marciniak). Sound for X below about 0.25.</remarks>
    /// <param name="angleRad">Wanted angle, with its sign.</param>
    /// <param name="insideRadiusMm">Wanted inside radius.</param>
    /// <param name="thicknessMm">Thickness.</param>
    /// <param name="material">Alloy and temper.</param>
    public static SpringbackSetting Springback(double angleRad, double insideRadiusMm, double thicknessMm, Material material)
    {
        ArgumentNullException.ThrowIfNull(material);
        double strain = material.YieldMpa.Value / (material.ModulusGpa.Value * 1000 * thicknessMm);

        // X falls short of ½, where a sheet springs back wholly, whatever the wanted radius: R_f (4X³ − 3X + 1) − Rᵢ falls all the
        // way there, so that halving finds the one root. 200 halvings are beyond the last bit.
        double low = 0;
        double high = Math.Min(insideRadiusMm, 0.5 / strain);
        for (int step = 0; step < 200 && low < high; step++)
        {
            double middle = low + ((high - low) / 2);
            double x = middle * strain;
            if (insideRadiusMm * ((4 * x * x * x) - (3 * x) + 1) > middle)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        double tool = high;
        double set = angleRad * (insideRadiusMm + (thicknessMm / 2)) / (tool + (thicknessMm / 2));
        return new SpringbackSetting(tool, set, tool * strain);
    }
}

/// <summary>How a fold is set so that it springs back to the wanted one.</summary>
/// <param name="ToolRadiusMm">Inside radius under the tool.</param>
/// <param name="AngleRad">Angle under the tool, with its sign.</param>
/// <param name="X">Rᵢ Y/(E t): above about 0.25 the formula is outside its range.</param>
public readonly record struct SpringbackSetting(double ToolRadiusMm, double AngleRad, double X);
