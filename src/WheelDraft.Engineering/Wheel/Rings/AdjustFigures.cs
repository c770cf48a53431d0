using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Works out what a sloped edge does along the travel of its wiper.</summary>
internal static class AdjustFigures
{
    // Places along the travel at which figures are given: both ends, the middle and the quarters.
    private const int Places = 5;

    // Finer steps for the departure from a straight line: a smooth curve, so 64 steps find its top to 0.1 %.
    private const int LinearitySteps = 64;

    public static AdjustLayout Of(RingShop shop, RingDemand ring, RingTrial trial)
    {
        AdjustBrief asked = ring.Adjust!;
        PeriodCut cut = trial.Cuts[0];
        CopperEdge edge = asked.Edge == AdjustedEdge.On ? cut.Make : cut.Break;
        ProgrammePatch patch = new(ring.Patch, shop.Motion.Direction);
        double perTurn = asked.ScrewPitchMm * asked.Lever;
        List<AdjustStep> steps = [];
        for (int i = 0; i < Places; i++)
        {
            double offset = asked.TravelMm * ((i / (Places - 1.0)) - 0.5);
            PeriodCut there = At(patch, cut, trial.RadiusMm + offset);
            (double longer, double shorter) = new RingTiming(shop, ring, Deviations.Of(shop, ring), trial.RadiusMm, offset).Limits(ring.Periods[0], cut);
            steps.Add(new(offset, OnS(shop, there), Math.Abs(there.SecondsPerMm(shop.Motion.SpeedRadPerS)) * perTurn)
            {
                LongerS = longer,
                ShorterS = shorter,
            });
        }

        double linearity = 0;
        for (int i = 0; i <= LinearitySteps; i++)
        {
            double share = i / (double)LinearitySteps;
            double there = OnS(shop, At(patch, cut, trial.RadiusMm + (asked.TravelMm * (share - 0.5))));
            linearity = Math.Max(linearity, Math.Abs(there - (steps[0].OnS + (share * (steps[^1].OnS - steps[0].OnS)))));
        }

        return new(asked, edge, End(edge, trial.BandFromMm), End(edge, trial.BandToMm), steps, asked.TravelMm / perTurn, linearity);
    }

    private static EdgePoint End(CopperEdge edge, double radiusMm) => new(radiusMm, Angles.InTurn(edge.AngleAt(radiusMm)));

    private static PeriodCut At(ProgrammePatch patch, PeriodCut cut, double radiusMm) =>
        cut with { MakeTouch = cut.Make.TouchOf(patch, radiusMm), BreakTouch = cut.Break.TouchOf(patch, radiusMm) };

    private static double OnS(RingShop shop, PeriodCut cut) =>
        shop.Motion.SecondsFromRad(cut.BreakTouch.AtRad - cut.MakeTouch.AtRad);
}
