using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A tight or missing distance, numbered.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Verdict">Tight or missing.</param>
/// <param name="First">Where the distance begins, in the housing, plan.</param>
/// <param name="Second">Where it ends.</param>
/// <param name="Path">Gap or path from the one to the other, plan.</param>
internal sealed record TightPlace(int Number, SpacingVerdict Verdict, Point First, Point Second, IReadOnlyList<Piece> Path)
{
    /// <summary>Radius in plan of what is required round the first point, at the height of the second; null where no circle shows it.</summary>
    public double? RequiredMm { get; init; }

    /// <summary>How far the wheel is turned there, anticlockwise; null where it is as drawn or nothing turns.</summary>
    public double? TurnedRad { get; init; }

    /// <summary>The turning items that decide there.</summary>
    public IReadOnlyList<Solid> Turning { get; init; } = [];

    /// <summary>Names of the items that decide.</summary>
    public IReadOnlyList<string> Items { get; init; } = [];

    /// <summary>The nets at its beginning and its end; empty where there is no path.</summary>
    public IReadOnlyList<string> Nets { get; init; } = [];

    /// <summary>The contact patch that it begins on, in the housing; null where it begins on no contact.</summary>
    public Outline? Patch { get; init; }

    /// <summary>What the table says of it.</summary>
    public required TightFigures Figures { get; init; }
}

/// <summary>A row of the spacing drawing's table.</summary>
/// <param name="Between">The two items.</param>
/// <param name="Kind">Clearance, creepage or open contact.</param>
/// <param name="RequiredMm">What is required.</param>
/// <param name="NominalMm">What there is as drawn.</param>
/// <param name="WorstMm">What there is at worst.</param>
/// <param name="AtRad">Programme angle, or null for fixed items.</param>
internal sealed record TightFigures(string Between, string Kind, double RequiredMm, double NominalMm, double WorstMm, double? AtRad)
{
    /// <summary>The verdict on the worst figure.</summary>
    public SpacingVerdict Verdict => Verdicts.On(WorstMm, RequiredMm);

    /// <summary>How much of the required distance there is at worst.</summary>
    public double Share => RequiredMm > 0 ? WorstMm / RequiredMm : double.PositiveInfinity;
}

/// <summary>What the spacing drawing shows of a design's spacing.</summary>
/// <param name="Numbered">Tight and missing distances, those with the least share of what is required first.</param>
/// <param name="Unnumbered">How many more are tight or missing.</param>
/// <param name="Others">The distances that meet, the nearest first.</param>
internal sealed record TightPlaces(IReadOnlyList<TightPlace> Numbered, int Unnumbered, IReadOnlyList<TightFigures> Others)
{
    // More numbers than this make no picture; the rest stands in the report.
    private const int Most = 30;

    // A plan distance below this has no direction: a point.
    private const double PointMm = 1e-6;

    /// <summary>Reads them from a design.</summary>
    public static TightPlaces Of(Design design)
    {
        (TightFigures Figures, Func<int, TightPlace> Place)[] all =
        [
            .. design.Spacing.Rows.Select(r => (FiguresOf(r), (Func<int, TightPlace>)(n => PlaceOf(r, n)))),
            .. design.OpenContacts.Where(o => o.RequiredMm is not null).Select(o => (FiguresOf(o), (Func<int, TightPlace>)(n => PlaceOf(design, o, n)))),
        ];
        (TightFigures Figures, Func<int, TightPlace> Place)[] tight = [.. all.Where(a => a.Figures.Verdict != SpacingVerdict.Meets).OrderBy(a => a.Figures.Share)];
        return new(
            [.. tight.Take(Most).Select((t, i) => t.Place(i + 1))],
            Math.Max(0, tight.Length - Most),
            [.. all.Select(a => a.Figures).Where(f => f.Verdict == SpacingVerdict.Meets).OrderBy(f => f.Share)]);
    }

    private static TightFigures FiguresOf(SpacingRow row) => new(
        $"{row.FirstItem} – {row.SecondItem}",
        row.Kind == SpacingKind.Clearance ? "clearance" : "creepage",
        row.Required.RequiredMm,
        row.NominalMm,
        row.WorstMm,
        row.AtRad);

    private static TightFigures FiguresOf(OpenContact contact) => new(
        $"{contact.Output} wiper – wheel",
        "open contact",
        contact.RequiredMm!.Value,
        contact.NominalMm,
        contact.WorstMm,
        contact.AtRad);

    private static TightPlace PlaceOf(SpacingRow row, int number)
    {
        TightFigures figures = FiguresOf(row);
        SolidGap? turning = row.Gaps.FirstOrDefault(g => g.TurnedRad is double t && Math.Abs(Angles.Signed(t)) > Tolerances.TouchMm);
        return new(number, figures.Verdict, row.OnFirst.Plan, row.OnSecond.Plan, row.Kind == SpacingKind.Clearance ? PathOf(row.Gaps) : PathOf(row.Path))
        {
            Figures = figures,
            Items = [row.FirstItem, row.SecondItem],
            Nets = [row.Nets.First, row.Nets.Second],
            RequiredMm = row.Kind == SpacingKind.Clearance && row.Gaps.Count == 1 ? InPlan(figures.RequiredMm, row.OnFirst.Z - row.OnSecond.Z) : null,
            TurnedRad = turning?.TurnedRad,
            Turning = turning is null ? [] : [.. new[] { turning.First, turning.Second }.Where(s => s.Turns)],
        };
    }

    /// <summary>An open contact: from its nose to the copper, at the angle that decides.</summary>
    /// <remarks>The wheel as it stands there is drawn in the detail alone: drawn over each other for every contact, they would hide the plan.</remarks>
    private static TightPlace PlaceOf(Design design, OpenContact contact, int number)
    {
        RingLayout ring = design.Wheel.Ring(contact.Output);
        OpenGap gap = contact.Deciding;
        TightFigures figures = FiguresOf(contact);
        return new(number, figures.Verdict, gap.OnNose, gap.OnCopper, [.. Through([gap.OnNose, gap.OnCopper])])
        {
            Figures = figures,
            Items = [.. design.Solids.Where(s => s.Turns).Select(s => s.Name)],
            Nets = [ring.Net, ring.WheelNet],
            RequiredMm = gap.RequiredMm,
            TurnedRad = design.Motion.Sigma * gap.AtRad,
            Patch = PatchAt(ring, gap.OnNose),
        };
    }

    // The patch where it is on its travel, in the middle or at either end, that has the point on its edge.
    private static Outline PatchAt(RingLayout ring, Point onNose)
    {
        double half = ring.TravelMm / 2;
        return ((double[])[0, -half, half])
            .SelectMany(o => ring.Wipers.Select(w => w.Patch.At(ring.RadiusMm + o, w.StationRad)))
            .MinBy(p => Distances.ToEdge(onNose, p).DistanceMm)!;
    }

    /// <summary>The radius at which a sphere cuts a level so far from its centre; null where it does not reach it.</summary>
    private static double? InPlan(double radiusMm, double heightMm) =>
        Math.Abs(heightMm) < radiusMm ? Math.Sqrt((radiusMm * radiusMm) - (heightMm * heightMm)) : null;

    private static IReadOnlyList<Piece> PathOf(IReadOnlyList<SolidGap> gaps) =>
        [.. gaps.SelectMany(g => Through(g.String.Count > 2 ? [.. g.String.Select(p => p.Plan)] : [g.OnFirst.Plan, g.OnSecond.Plan]))];

    private static IReadOnlyList<Piece> PathOf(CreepagePath? path) =>
        path is null ? [] : [.. path.Parts.SelectMany(p => p.Path.Legs).Select(l => l.Piece).Where(p => p.Length > PointMm)];

    private static IEnumerable<Piece> Through(IReadOnlyList<Point> points)
    {
        for (int i = 0; i + 1 < points.Count; i++)
        {
            if (points[i].DistanceTo(points[i + 1]) > PointMm)
            {
                yield return new Segment(points[i], points[i + 1]);
            }
        }
    }
}
