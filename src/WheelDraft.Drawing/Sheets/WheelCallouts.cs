using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The notes round a wheel: bore, fixings, home, wipers, edges; their points in the wheel frame.</summary>
internal sealed class WheelCallouts(Design design)
{
    private readonly WheelLayout _wheel = design.Wheel;
    private readonly DrawingNumbers _numbers = new(design.Brief.DrawingUnit);
    private readonly CutNumbers _cut = CutNumbers.Of(design);

    /// <summary>Ways of annotating with every edge's angle: rings by name, then by their number in the table.</summary>
    public IReadOnlyList<IReadOnlyList<RingCallout>> WaysWithEdges() =>
    [
        [.. Holes(), .. Stations(Named), .. Edges(Named)],
        [.. Holes(), .. Stations(ByNumber), .. Edges(ByNumber)],
    ];

    /// <summary>Ways of annotating where the table has the edges, the fullest first.</summary>
    public IReadOnlyList<IReadOnlyList<RingCallout>> WaysWithoutEdges() =>
    [
        [.. Holes(), .. Stations(Named)],
        [.. Holes(), .. Stations(ByNumber)],
        [.. Holes()],
    ];

    /// <summary>The home mark and every edge with its angle, rings by name.</summary>
    public IReadOnlyList<RingCallout> EdgesAndHome() => [Home(), .. Edges(Named)];

    /// <summary>Everything, numbered, in the wheel frame; without the edges when there are more than a reader would look up.</summary>
    public IReadOnlyList<RingCallout> Numbered()
    {
        const int most = 40;
        RingCallout[] all = [.. Holes(), .. Stations(Named), .. Edges(Named)];
        return CalloutKey.Numbered(all.Length <= most ? all : [.. Holes(), .. Stations(Named)]);
    }

    private IEnumerable<RingCallout> Holes()
    {
        // The bore's own size stands on the section.
        BoreBrief bore = design.Brief.Wheel.Bore;
        if (bore.FlatMm is double flat)
        {
            yield return new(Point.Polar(flat - (bore.DiameterMm / 2), bore.FlatAtRad), $"flat {_numbers.Length(flat)} at {DrawingNumbers.Direction(bore.FlatAtRad)}");
        }

        if (_wheel.Fixings.Count > 0)
        {
            FixingsBrief fixings = design.Brief.Wheel.Fixings!;
            yield return new(_wheel.Fixings[0], $"{DrawingNumbers.Trimmed(_wheel.Fixings.Count, 0)} × {_numbers.Diameter(fixings.DiameterMm)}");

            // Half-way to the next hole.
            yield return new(Point.Polar(_wheel.PitchCircleMm!.Value / 2, fixings.FirstAtRad + (Math.PI / fixings.Count)), $"pitch {_numbers.Diameter(_wheel.PitchCircleMm.Value)}");
        }

        yield return Home();
    }

    private RingCallout Home() => new(Point.Polar(Math.Max(_wheel.OuterDiameterMm, design.Brief.Carrier.DiameterMm ?? 0) / 2, 0), "home mark, 0°");

    private IEnumerable<RingCallout> Stations(Func<RingLayout, int, string> name) =>
        _wheel.AllRings.SelectMany(ring => ring.Wipers.Select(w => new RingCallout(
            Point.Polar(ring.RadiusMm, w.StationRad),
            $"{name(ring, NumberOf(ring))} {(w.IsReturn ? "return" : "wiper")} {DrawingNumbers.Direction(w.StationRad)}")));

    private IEnumerable<RingCallout> Edges(Func<RingLayout, int, string> name) => _wheel.AllRings.SelectMany(ring => ring.Periods.SelectMany(period =>
    {
        (double make, double off) = WheelEdges.MakeAndBreak(design, period);
        return new[]
        {
            new RingCallout(Point.Polar(ring.RadiusMm, make), $"{name(ring, NumberOf(ring))} make {_cut.Direction(make, ring.RadiusMm)}°"),
            new RingCallout(Point.Polar(ring.RadiusMm, off), $"{name(ring, NumberOf(ring))} break {_cut.Direction(off, ring.RadiusMm)}°"),
        };
    }));

    private int NumberOf(RingLayout ring) => WheelEdges.NumberOf(design, ring);

    private static string Named(RingLayout ring, int number) => ring.IsFeed ? "feed" : ring.Name;

    private static string ByNumber(RingLayout ring, int number) => ring.IsFeed ? "feed" : Invariant.Text($"{number}");
}

/// <summary>The edges of a wheel in figures and words.</summary>
internal static class WheelEdges
{
    /// <summary>Wheel angles at which a wiper at angle 0 finds the make and the break edge on its ring radius, in [0, 2π).</summary>
    public static (double MakeRad, double BreakRad) MakeAndBreak(Design design, RingPeriod period)
    {
        (double start, double end) = (Angles.InTurn(period.CopperRad.StartRad), Angles.InTurn(period.CopperRad.EndRad));

        // A wheel that turns clockwise brings growing wheel angles under its wipers.
        return design.Motion.Direction == Turning.Clockwise ? (start, end) : (end, start);
    }

    /// <summary>Every ring; then every edge and how it is set out, where there are any.</summary>
    /// <param name="design">The design.</param>
    /// <param name="withCorners">Whether corners are set out too.</param>
    /// <param name="withAngles">Whether edges are listed with their angles; not where these stand on the drawing.</param>
    public static IReadOnlyList<SheetTable> Tables(Design design, bool withCorners = true, bool withAngles = true)
    {
        SheetTable setOut = SetOutWords.Table(design, withCorners, withAngles);
        return setOut.Rows.Count == 0 ? [Table(design)] : [Table(design), setOut];
    }

    /// <summary>Every ring.</summary>
    public static SheetTable Table(Design design)
    {
        CutNumbers numbers = CutNumbers.Of(design);
        bool hasLands = design.Wheel.Feed is null;
        return new(
        [
            new("No.", TextAlong.End),
            new("Ring"),
            new($"Radius {numbers.UnitSign}", TextAlong.End),
            new(hasLands ? "Wipers at home °" : "Wiper at home °", TextAlong.End),
            new($"{(hasLands ? "Lands" : "Windows")} {numbers.UnitSign}", TextAlong.End),
        ],
        [.. design.Wheel.AllRings.Select(ring => Row(design, numbers, ring))])
        {
            Title = "Rings",
        };
    }

    /// <summary>What the drawing leaves to words.</summary>
    public static IReadOnlyList<string> Notes(Design design, bool withNumbers = false)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        ProcessBrief process = design.Brief.Process;
        return
        [
            $"Seen from the wiper side; the wheel turns {SheetWordsOf.Turns(design)}, {DrawingNumbers.Trimmed(design.Motion.TurnTimeS, 3)} s a turn. Circles mark the wipers at home.",
            "All angles are wheel angles: from the home mark, anticlockwise seen from the wiper side, edges on their ring radius. Finished sizes, before any kerf.",
            WheelSection.Note(design),
            .. MakerWords.Of(design, design.Parts.Wheel),
            .. HazardMarks.Notes(design, design.Parts.Wheel),
            SetOutWords.Note(design),
            $"Copper {design.Brief.Wheel.Material}, {numbers.Thickness(design.Brief.Wheel.ThicknessMm)} thick, thicknesses those of the stock; inside corners {numbers.Radius(process.InsideRadiusMm, 3)}.",
            .. design.Wheel.Rings.Where(r => r.Adjust is not null).Select(r => Slope(design, r)),
            .. design.Brief.Wheel.Rim || design.Wheel.Feed is null ? (string[])[] : ["No rim: windows of the outermost ring are open to the outside."],
            .. WheelMarks.Of(design).Missing,
            .. withNumbers ? [$"Edges are numbered because their names and angles do not fit beside the wheel: {(design.Wheel.Feed is null ? "land 2.1 is" : "copper 2.1 is")} the first on-period of ring 2; the table has its edges."] : (string[])[],
        ];
    }

    /// <summary>The wheel in sentences.</summary>
    public static string Description(Design design)
    {
        WheelLayout wheel = design.Wheel;
        string rings = string.Join("; ", wheel.Rings.Select(r => r.IsWhole
            ? $"'{r.Name}' on radius {Wording.Mm(r.RadiusMm)}, a whole ring"
            : $"'{r.Name}' on radius {Wording.Mm(r.RadiusMm)}, copper from {string.Join(" and ", r.Periods.Select(p => $"{Wording.Degrees(Angles.InTurn(p.CopperRad.StartRad))} to {Wording.Degrees(Angles.InTurn(p.CopperRad.EndRad))}"))}"));
        string bore = $"{Wording.Mm(wheel.OuterDiameterMm)} diameter with a bore of {Wording.Mm(design.Brief.Wheel.Bore.DiameterMm)}, seen from the wiper side. It turns {SheetWordsOf.Turns(design)}.";
        return ReadersUnit.Of(design.Brief).Words(wheel.Feed is RingLayout feed
            ? $"A copper disc of {bore} Feed ring on radius {Wording.Mm(feed.RadiusMm)}. Output rings: {rings}. Windows are cut where a ring is off."
            : $"Copper lands on an insulating disc of {bore} Rings: {rings}. Two wipers ride on each ring.");
    }

    /// <summary>A ring's number in table and leaders, from 1 in file order; 0 for the feed.</summary>
    public static int NumberOf(Design design, RingLayout ring) =>
        ring.IsFeed ? 0 : 1 + design.Wheel.Rings.TakeWhile(r => !ReferenceEquals(r, ring)).Count();

    /// <summary>From which radius to which a ring's windows or lands reach.</summary>
    private static string Band(CutNumbers numbers, RingLayout ring) =>
        (ring.WindowFromMm ?? ring.LandFromMm) is double from && (ring.WindowToMm ?? ring.LandToMm) is double to
            ? $"{numbers.Length(from)} – {numbers.Length(to)}"
            : "none";

    private static string Slope(Design design, RingLayout ring)
    {
        CutNumbers numbers = CutNumbers.Of(design);
        string End(EdgePoint point) => $"R{numbers.Length(point.RadiusMm)} at {numbers.Direction(design.Motion.WheelRad(ring.StationRad, point.ProgrammeRad), point.RadiusMm)}°";
        return $"'{ring.Name}': sloped {(ring.Adjust!.Edge.End == EdgeEnd.Make ? "make" : "break")} edge, straight from {End(ring.Adjust.EdgeInner)} to {End(ring.Adjust.EdgeOuter)}.";
    }

    private static IReadOnlyList<string> Row(Design design, CutNumbers numbers, RingLayout ring) =>
    [
        ring.IsFeed ? "" : DrawingNumbers.Trimmed(NumberOf(design, ring), 0),
        ring.IsFeed ? $"feed ({ring.Name})" : ring.Name,
        numbers.Length(ring.RadiusMm),
        string.Join(", ", ring.Wipers.Select(w => DrawingNumbers.DirectionInColumn(w.StationRad, 2))),
        Band(numbers, ring),
    ];
}
