using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>The loops of filled areas: closed from their parts, and nested into outlines.</summary>
internal static class AreaLoops
{
    /// <summary>A contour from runs in order, some of which may run the other way; and the widest gap that was closed, mm.</summary>
    /// <exception cref="UnreadException">The runs do not close.</exception>
    internal static (Contour Contour, double GapMm) Closed(IReadOnlyList<IReadOnlyList<Piece>> runs, double joinMm)
    {
        List<Piece> pieces = [];
        for (int i = 0; i < runs.Count; i++)
        {
            bool forward = i == 0 ? StartsWell(runs, joinMm) : pieces[^1].End.DistanceTo(runs[i][0].Start) <= joinMm;
            pieces.AddRange(forward ? runs[i] : runs[i].Reverse().Select(p => p.Reversed()));
        }

        double gap = pieces.Select((p, i) => p.End.DistanceTo(pieces[(i + 1) % pieces.Count].Start)).DefaultIfEmpty(double.PositiveInfinity).Max();
        if (!(gap <= joinMm))
        {
            throw new UnreadException("its boundary does not close, or its edges are out of order");
        }

        try
        {
            return (new Contour(JoinedRun.Close(pieces)), gap);
        }
        catch (ArgumentException)
        {
            throw new UnreadException("its boundary encloses nothing");
        }
    }

    /// <summary>The outlines of contours: the outermost are filled, the next are holes, and so on.</summary>
    internal static IEnumerable<Outline> Filled(IReadOnlyList<Contour> contours) =>
        contours.Count == 1 ? [new Outline(contours[0])] : ContourNesting.Outlines(contours);

    /// <summary>Whether the first run leads to the second as it is.</summary>
    private static bool StartsWell(IReadOnlyList<IReadOnlyList<Piece>> runs, double joinMm) =>
        runs.Count == 1 || new[] { runs[1][0].Start, runs[1][^1].End }.Any(p => p.DistanceTo(runs[0][^1].End) <= joinMm);
}
