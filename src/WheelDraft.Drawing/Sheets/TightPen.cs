using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Draws numbered distances over the plan.</summary>
internal sealed class TightPen(SheetBuilder sheet, SheetView view, Design design)
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

    /// <summary>Writes the numbers at the ends of leaders, each where it is free, outwards from the middle of the plan.</summary>
    public void DrawNumbers(IReadOnlyList<TightPlace> places, Point middle)
    {
        GroupPen pen = sheet.Group("numbers", "Numbers of the table", "numbers");
        foreach (Solid solid in design.Solids)
        {
            pen.Texts.TakeEdges(solid.Outline.Outer.Pieces.Select(p => p.Placed(view.ToPaper)));
        }

        DimensionPen numbers = new(pen);
        foreach (TightPlace place in places)
        {
            Point at = view.Of(place.First.Towards(place.Second, 0.5));
            Vector outwards = at - middle;
            numbers.Add(new CalloutDimension(at, outwards.Length < 1 ? 0.7 : outwards.AngleRad, Words(place)) { Subject = place.Figures.Between });
        }

        foreach (Dimension unplaced in numbers.Unplaced)
        {
            sheet.Warn($"The spacing drawing has no room for number {unplaced.Text}: {unplaced.Subject}; its table has the row.");
        }
    }

    // The verdict is told by the word as well as by the colour.
    private static string Words(TightPlace place) => place.Verdict == SpacingVerdict.Misses
        ? Invariant.Text($"{place.Number} misses")
        : Invariant.Text($"{place.Number}");
}
