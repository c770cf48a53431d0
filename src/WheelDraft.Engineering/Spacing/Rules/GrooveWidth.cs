namespace WheelDraft.Engineering;

/// <summary>The least width X at which a creepage path follows a groove or goes round a slot.</summary>
internal static class GrooveWidth
{
    /// <summary>X for a pollution degree, mm.</summary>
    /// <param name="pollutionDegree">1 to 4; 4 is refused.</param>
    /// <param name="rule">Full, or a third of the clearance where that is below 3 mm.</param>
    /// <param name="clearanceMm">The clearance that goes with the path, mm; above 0. Not looked at with <see cref="GrooveX.Full"/>.</param>
    /// <returns>X, mm. The third is a permission: it makes more grooves count, so it never raises X.</returns>
    /// <exception cref="RuleRefusedException">Pollution degree 4.</exception>
    /// <remarks>IEC 60664-1:2020 clause 6.8 (edition 2: clause 6.2).</remarks>
    public static double LeastMm(int pollutionDegree, GrooveX rule, double clearanceMm)
    {
        SpacingRules.CheckDegree(pollutionDegree);
        double fullMm = Iec60664GrooveWidths.WidthMm[pollutionDegree - 1];
        if (rule == GrooveX.Full)
        {
            return fullMm;
        }

        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(clearanceMm);
        return clearanceMm < Iec60664GrooveWidths.ThirdBelowClearanceMm ? Math.Min(fullMm, clearanceMm / 3) : fullMm;
    }
}
