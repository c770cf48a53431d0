namespace WheelDraft.Engineering;

/// <summary>The two edges of one on-period on a ring, and when the patch touches them at mid travel.</summary>
internal sealed record PeriodCut(CopperEdge Make, CopperEdge Break, EdgeTouch MakeTouch, EdgeTouch BreakTouch)
{
    /// <summary>Change of the on-time per millimetre that the wiper moves outward, s/mm.</summary>
    public double SecondsPerMm(double speedRadPerS) => (BreakTouch.RadPerMm - MakeTouch.RadPerMm) / speedRadPerS;
}
