using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>The set-out of a wheel as a table: every edge with its corners, as a person marks them on the copper.</summary>
internal static class SetOutWords
{
    /// <summary>One row an edge: the corners of window or land on either side of the ring radius, and the point on it, each with x, y and chord.</summary>
    /// <param name="design">The design.</param>
    /// <param name="withCorners">Whether corners are listed; without them, points on the ring radius alone.</param>
    public static SheetTable Table(Design design, bool withCorners = true)
    {
        CutNumbers numbers = CutNumbers.Of(design);
        TableColumn[] columns =
        [
            new($"Edge, {numbers.UnitSign}"),
            new("At °", TextAlong.End),
            .. withCorners ? Columns("inner") : [],
            .. Columns("ring"),
            .. withCorners ? Columns("outer") : [],
        ];
        return new(columns, [.. Edges(design).Select(e => Row(numbers, e, withCorners))]) { Title = "Set-out: every edge and corner from the axis" };
    }

    /// <summary>The edges of a design's wheel as they are set out.</summary>
    public static IReadOnlyList<SetOutEdge> Edges(Design design) => SetOut.Of(design.Wheel, design.Motion).Edges;

    /// <summary>How the table is read.</summary>
    public static string Note(Design design) =>
        $"Set-out from the axis to {CutNumbers.Of(design).StepWords}, a tenth of the cut's tolerance: x towards the home mark, y to the left of it. Chord: straight from where the home line crosses the point's own radius; step it "
        + "anticlockwise where y is above 0, else clockwise. Inner and outer are the corners, sharp, before rounding.";

    private static IEnumerable<TableColumn> Columns(string which) =>
        [new($"{which} x", TextAlong.End), new("y", TextAlong.End), new("chord", TextAlong.End)];

    private static IReadOnlyList<string> Row(CutNumbers numbers, SetOutEdge edge, bool withCorners) =>
    [
        $"{edge.Ring.Name} {(edge.End == EdgeEnd.Make ? "make" : "break")}",
        numbers.Direction(edge.OnRing.WheelRad, edge.OnRing.RadiusMm),
        .. withCorners ? Cells(numbers, edge.Inner) : [],
        .. Cells(numbers, edge.OnRing),
        .. withCorners ? Cells(numbers, edge.Outer) : [],
    ];

    private static IEnumerable<string> Cells(CutNumbers numbers, SetOutPoint point) =>
        [numbers.Length(point.At.X), numbers.Length(point.At.Y), numbers.Length(point.ChordMm)];
}
