namespace WheelDraft.Engineering;

/// <summary>The few tolerances of measuring, each with its reason.</summary>
internal static class SpacingTolerances
{
    /// <summary>How far apart the bounds of a certified minimum may be, mm.</summary>
    /// <remarks>Half of the micrometre that is promised. Larger breaks the promise; smaller costs branches and shows nowhere.</remarks>
    internal const double CertifiedMm = 5e-4;

    /// <summary>Figures are rounded to this before they are compared, decimals of a millimetre.</summary>
    /// <remarks>A nanometre: far above rounding, far below what any part keeps. Without it a gap drawn to be exactly as large as required
    /// may miss by the last bit.</remarks>
    internal const int ComparedDecimals = 6;

    /// <summary>Whether a length is below a limit, both rounded as figures are before they are compared: exactly at the limit is not below.</summary>
    internal static bool IsBelow(double mm, double limitMm) => Compared(mm) < Compared(limitMm);

    /// <summary>A figure as it is compared.</summary>
    internal static double Compared(double mm) => Math.Round(mm, ComparedDecimals, MidpointRounding.AwayFromZero);

    /// <summary>A row that meets by less than this factor is tight (common practice, no source).</summary>
    internal const double TightFactor = 1.1;
}
