using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>How the holes of a part are drilled, in sentences.</summary>
internal static class DrillWords
{
    /// <summary>Bore and fixings of a wheel or its carrier.</summary>
    public static IReadOnlyList<string> OfWheel(Design design)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        DrillSeries series = DrillSeries.Of(design.Brief.DrawingUnit);
        BoreBrief bore = design.Brief.Wheel.Bore;
        string flat = bore.FlatMm is double mm ? $" with a flat {numbers.Length(mm)} from the opposite side, its normal at {DrawingNumbers.Direction(bore.FlatAtRad)}" : "";
        List<string> words = [$"Bore {numbers.Diameter(bore.DiameterMm)}{flat}: {Way(numbers, DrillPlan.Bore(bore, design.Wheel.Bore, series), Point.Origin)}."];
        if (design.Wheel.Fixings.Count > 0)
        {
            double hole = design.Brief.Wheel.Fixings!.DiameterMm;
            words.Add($"Fixings, {DrawingNumbers.Trimmed(design.Wheel.Fixings.Count, 0)} × {numbers.Diameter(hole)}: {Way(numbers, DrillPlan.Round(design.Wheel.Fixings[0], hole, series), design.Wheel.Fixings[0])}.");
        }

        return words;
    }

    /// <summary>What to do for one hole.</summary>
    /// <param name="numbers">How sizes are written.</param>
    /// <param name="plan">How it is drilled; null when no drill is small enough.</param>
    /// <param name="centre">The middle of the hole.</param>
    public static string Way(DrawingNumbers numbers, DrillPlan? plan, Point centre)
    {
        if (plan is null)
        {
            return "smaller than every drill of the series: pierce and file to the line";
        }

        string place = plan.At.DistanceTo(centre) > Tolerances.JoinMm ? $" beside the axis, at x {numbers.Length(plan.At.X)}, y {numbers.Length(plan.At.Y)}" : "";
        return $"drill {Size(numbers, plan.DrillMm)}{place}{(plan.ToSize ? "" : ", then file to the line")}";
    }

    // A drill by the name that it is sold under: millimetres, or a fraction of an inch in lowest terms.
    private static string Size(DrawingNumbers numbers, double drillMm)
    {
        if (numbers.Unit != DrawingUnit.Inch)
        {
            return numbers.Diameter(drillMm);
        }

        int below = 64;
        int above = (int)Math.Round(drillMm / DrillSeries.Fractional.StepMm);
        while (above % 2 == 0 && below > 1)
        {
            (above, below) = (above / 2, below / 2);
        }

        return Invariant.Text($"{above}/{below} in");
    }
}
