using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Draws numbered distances over the plan.</summary>
internal sealed class TightPen(SheetBuilder sheet, SheetView view)
{
    /// <summary>The gap or path.</summary>
    public static LineStyle PathStyle { get; } = LineStyle.Wide(LineKind.ContinuousWide, Ink.Error, 0.7);

    /// <summary>The circle of what is required.</summary>
    public static LineStyle RequiredStyle { get; } = LineStyle.Of(LineKind.DashedNarrow, Ink.Accent);

    private const double DotMm = 0.8;

    /// <summary>Draws what belongs to one number: the parts as they stand there, the circle, the path and its ends.</summary>
    public void Draw(TightPlace place)
    {
        ViewPen pen = sheet.Group(
            Invariant.Text($"place-{place.Number}"),
            Invariant.Text($"{place.Number}: {place.Figures.Between}, {place.Figures.Kind}, {SpacingWords.Verdict(place.Verdict)}"),
            "place").In(view);
        if (place.TurnedRad is double turned)
        {
            foreach (Solid solid in place.Turning)
            {
                pen.Line(solid.Outline.Outer.Placed(Placement.Turn(turned)), LineStyle.Phantom);
            }
        }

        if (place.RequiredMm is double required)
        {
            pen.Line(Contour.Circle(place.First, required), RequiredStyle);
        }

        if (place.Path.Count > 0)
        {
            pen.Line(place.Path, PathStyle);
        }

        foreach (Point end in new[] { place.First, place.Second }.Distinct())
        {
            pen.Pen.Area(new Outline(Contour.Circle(view.Of(end), DotMm)), Fill.Solid(Ink.Error));
        }
    }

    /// <summary>Writes the numbers in columns beside the plan, on leaders that do not cross.</summary>
    /// <param name="places">What is numbered.</param>
    /// <param name="plan">The plan, on the paper.</param>
    /// <param name="area">Where the numbers may stand.</param>
    public void DrawNumbers(IReadOnlyList<TightPlace> places, Bounds plan, Bounds area)
    {
        GroupPen pen = sheet.Group("numbers", "Numbers of the table", "numbers");
        CalloutRing ring = new(plan.Grown(2), area);
        if (!ring.TryDraw(pen, [.. places.Select(p => new RingCallout(view.Of(p.First.Towards(p.Second, 0.5)), Words(p)))]))
        {
            sheet.Warn("The spacing drawing has no room for its numbers; its table says where the distances are.");
        }
    }

    /// <summary>What is written at a place: the verdict is given by the word as well as by the colour.</summary>
    public static string Words(TightPlace place) => Invariant.Text($"{place.Number} {SpacingWords.Verdict(place.Verdict)}");
}
