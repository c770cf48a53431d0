using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>The set-out of a wheel as a table: every edge with its corners, as a person marks them on the copper.</summary>
internal static class SetOutWords
{
    /// <summary>One row an edge: the corners of window or land on either side of the ring radius, and the point on it, each with x, y and chord.</summary>
    /// <param name="design">The design.</param>
    /// <param name="withCorners">Whether corners are listed; without them, points on the ring radius alone.</param>
    /// <param name="withAngles">Whether edges are numbered and their angles listed; not where they stand on the drawing, so that each is given once.</param>
    public static SheetTable Table(Design design, bool withCorners = true, bool withAngles = true)
    {
        CutNumbers numbers = CutNumbers.Of(design);
        TableColumn[] columns =
        [
            new($"Edge, {numbers.UnitSign}"),
            .. withAngles ? [new("At °", TextAlong.End)] : (TableColumn[])[],
            .. withCorners ? Columns("inner") : [],
            .. Columns("ring"),
            .. withCorners ? Columns("outer") : [],
        ];
        return new(columns, [.. Edges(design).GroupBy(e => e.Ring).SelectMany(ring => ring.Select((e, i) => Row(numbers, e, (withCorners, withAngles ? Invariant.Text($"{WheelEdges.NumberOf(design, ring.Key)}.{(i / 2) + 1} ") : ""))))]) { Title = "Set-out: every edge and corner from the axis" };
    }

    /// <summary>The edges of a design's wheel as they are set out.</summary>
    public static IReadOnlyList<SetOutEdge> Edges(Design design) => SetOut.Of(design.Wheel, design.Motion).Edges;

    /// <summary>How the table is read.</summary>
    public static string Note(Design design) =>
        $"Set-out from the axis to {CutNumbers.Of(design).StepWords}, a tenth of the cut's tolerance: x towards the home mark, y to the left of it. Chord: straight from where the home line crosses the point's own radius; step it "
        + "anticlockwise where y is above 0, else clockwise. Inner and outer are the corners, sharp, before rounding.";

    private static IEnumerable<TableColumn> Columns(string which) =>
        [new($"{which} x", TextAlong.End), new("y", TextAlong.End), new("chord", TextAlong.End)];

    private static IReadOnlyList<string> Row(CutNumbers numbers, SetOutEdge edge, (bool Corners, string Number) with) =>
    [
        $"{with.Number}{edge.Ring.Name} {(edge.End == EdgeEnd.Make ? "make" : "break")}",
        .. with.Number.Length > 0 ? [numbers.Direction(edge.OnRing.WheelRad, edge.OnRing.RadiusMm)] : (string[])[],
        .. with.Corners ? Cells(numbers, edge.Inner) : [],
        .. Cells(numbers, edge.OnRing),
        .. with.Corners ? Cells(numbers, edge.Outer) : [],
    ];

    private static IEnumerable<string> Cells(CutNumbers numbers, SetOutPoint point) =>
        [numbers.Length(point.At.X), numbers.Length(point.At.Y), numbers.Length(point.ChordMm)];
}
