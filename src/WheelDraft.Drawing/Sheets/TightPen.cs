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

    private const double DotMm = 0.75;

    /// <summary>Whether a number has its verdict beside it; if not, the key has it.</summary>
    public bool HasVerdicts { get; init; } = true;

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
            Required(pen.Pen, [.. Contour.Circle(view.Of(place.First), view.OnPaperMm(required)).Pieces]);
        }

        Path(pen.Pen, [.. place.Path.Select(p => p.Placed(view.ToPaper))]);
        Ends(pen.Pen, [.. new[] { place.First, place.Second }.Distinct().Select(view.Of)]);
    }

    /// <summary>Draws a gap or path, on the paper.</summary>
    public static void Path(GroupPen pen, IReadOnlyList<Piece> path)
    {
        if (path.Count > 0)
        {
            pen.Line(path, PathStyle);
        }
    }

    /// <summary>Draws the circle of what is required, or what of it is seen, on the paper.</summary>
    public static void Required(GroupPen pen, IReadOnlyList<Piece> circle)
    {
        if (circle.Count > 0)
        {
            pen.Line(circle, RequiredStyle);
        }
    }

    /// <summary>How far the mark at an end of a gap reaches, mm.</summary>
    public const double EndMm = DotMm + (LineStyle.HaloMm / 2);

    /// <summary>Draws the ends of a gap, on the paper.</summary>
    public static void Ends(GroupPen pen, IReadOnlyList<Point> ends)
    {
        foreach (Point end in ends)
        {
            pen.Area(new Outline(Contour.Circle(end, DotMm)), Fill.Solid(Ink.Error));
        }
    }

    /// <summary>Draws a leader that ends in a dot on an area, on the paper.</summary>
    public static void Leader(GroupPen pen, Point from, Point to, double dotMm)
    {
        Segment line = new(from, to);
        pen.Line([line], LineStyle.Dimension.Halo).Line([line], LineStyle.Dimension)
            .Area(new Outline(Contour.Circle(to, dotMm)), Fill.Solid(Ink.Dimension), LineStyle.MarkHalo);
    }

    // A smaller circle would lie over the gap that it points out, mm on the paper.
    private const double LeastCircleMm = 2.2;

    /// <summary>Draws the circles of details and their letters, clear of all texts and leaders and, where it can be, of edges.</summary>
    public void DrawCircles(IEnumerable<SpacingDetail> details)
    {
        GroupPen pen = sheet.Group("circles", "Circles of the details", "circles");
        foreach (SpacingDetail detail in details)
        {
            (Point middle, double radius) = (view.Of(detail.Middle), Math.Max(LeastCircleMm, view.OnPaperMm(detail.InPlanMm)));
            Contour circle = Contour.Circle(middle, radius);
            pen.Line(circle, LineStyle.Dimension.Halo).Line(circle, LineStyle.Dimension);
            Letter(pen, detail.Letter, middle, radius);
        }
    }

    private static void Letter(GroupPen pen, string letter, Point middle, double radiusMm)
    {
        SheetText[] places =
        [
            .. ((double[])[2.6, 4.2, 6, 9]).SelectMany(beyond => Enumerable.Range(0, 16).Select(k => middle + Vector.Polar(radiusMm + beyond, (k + 2) * Math.PI / 8)))
                .Select(p => new SheetText(letter, new(p, TextAlong.Middle, TextAcross.Middle), TextStyle.Label)),
        ];
        SheetText[] free = [.. places.Where(t => pen.Texts.IsFree(t.Box))];
        SheetText chosen = free.FirstOrDefault(t => pen.Texts.IsOffEdges(t.Box.Grown(TextRegistry.AirMm))) ?? free.FirstOrDefault() ?? places[0];
        pen.PlatedText(letter, chosen.Place, TextStyle.Label);
    }

    /// <summary>Writes the numbers, and the names of nets that no look tells, in columns beside the plan, on leaders that do not cross.</summary>
    /// <param name="places">What is numbered.</param>
    /// <param name="named">Parts that are named, with what is said of them.</param>
    /// <param name="plan">The plan, on the paper.</param>
    /// <param name="area">Where the words may stand.</param>
    public void DrawNumbers(IReadOnlyList<TightPlace> places, IReadOnlyList<(Point At, string Words)> named, Bounds plan, Bounds area)
    {
        GroupPen pen = sheet.Group("numbers", "Numbers of the table", "numbers");
        CalloutRing ring = new(plan.Grown(2), area);
        RingCallout[] numbers = [.. places.Select(p => new RingCallout(view.Of(p.First.Towards(p.Second, 0.5)), Words(p, HasVerdicts)))];
        RingCallout[] names = [.. named.Select(n => new RingCallout(view.Of(n.At), n.Words))];
        if (ring.TryDraw(pen, [.. numbers, .. names]))
        {
            return;
        }

        if (!ring.TryDraw(pen, numbers))
        {
            sheet.Warn("The spacing drawing has no room for its numbers; its table says where the distances are.");
        }

        if (names.Length > 0)
        {
            sheet.Warn(Invariant.Text($"The spacing drawing has no room to name {names.Length} parts whose looks others have too; the assembly drawing names them."));
        }
    }

    /// <summary>What is written at a place: the verdict is given by the word as well as by the colour.</summary>
    public static string Words(TightPlace place, bool hasVerdict = true) => Invariant.Text($"{place.Number}{(hasVerdict ? $" {SpacingWords.Verdict(place.Verdict)}" : "")}");
}
