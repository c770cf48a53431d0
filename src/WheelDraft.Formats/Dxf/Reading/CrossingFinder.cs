using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Finds where the lines of a layer cross, touch or run along each other.</summary>
/// <remarks>Only pieces whose boxes share a cell of a grid are compared, each pair in one cell. A drawing in which most
/// boxes overlap would take the square of its size: the number of comparisons is limited, and a remark says when it was.</remarks>
internal static class CrossingFinder
{
    /// <summary>Comparisons of boxes: some tenths of a second.</summary>
    private const long MostBoxes = 100_000_000;

    /// <summary>Comparisons of pieces: one or two seconds.</summary>
    private const long MostPieces = 1_000_000;

    internal static void Look(ReadLayer layer, List<Finding> remarks)
    {
        Strand[] strands = [.. Strands(layer)];
        if (strands.Length == 0)
        {
            return;
        }

        List<(Point At, DxfSource First, DxfSource Second)> found = [];
        BoxGrid grid = new([.. strands.Select(s => s.Box)]);
        long boxes = 0;
        long pieces = 0;
        foreach ((int first, int second) in grid.Pairs(() => ++boxes <= MostBoxes))
        {
            Compare(strands[first], strands[second], found);
            if (++pieces > MostPieces || found.Count > LayerJoiner.MostPlaces)
            {
                break;
            }
        }

        Report(layer, found, remarks);
        if (boxes > MostBoxes || pieces > MostPieces || found.Count > LayerJoiner.MostPlaces)
        {
            remarks.Add(Finding.Error("drawing.crossing", $"Layer {layer.Name}: the search for crossings stopped here, there may be more."));
        }
    }

    private static IEnumerable<Strand> Strands(ReadLayer layer)
    {
        int run = 0;
        foreach (ReadContour contour in layer.Contours)
        {
            IReadOnlyList<Piece> pieces = contour.Contour.Pieces;
            for (int i = 0; i < pieces.Count; i++)
            {
                yield return new(pieces[i], contour.Source, run, i, pieces.Count);
            }

            run++;
        }

        foreach (ReadPath path in layer.OpenPaths)
        {
            for (int i = 0; i < path.Pieces.Count; i++)
            {
                yield return new(path.Pieces[i], path.Source, run, i, 0);
            }

            run++;
        }
    }

    private static void Compare(Strand first, Strand second, List<(Point At, DxfSource First, DxfSource Second)> found)
    {
        Meeting meeting = Intersections.Of(first.Piece, second.Piece);
        if (meeting.Stretches.Count > 0)
        {
            found.Add((meeting.Stretches[0].From.At, first.Source, second.Source));
            return;
        }

        foreach (CommonPoint point in meeting.Points)
        {
            if (!first.Joins(second, point) && !second.Joins(first, new(point.At, point.ShareOnSecond, point.ShareOnFirst)))
            {
                found.Add((point.At, first.Source, second.Source));
                return;
            }
        }
    }

    private static void Report(ReadLayer layer, List<(Point At, DxfSource First, DxfSource Second)> found, List<Finding> remarks)
    {
        foreach ((Point at, DxfSource first, DxfSource second) in found.OrderBy(f => f.First.Line).ThenBy(f => f.Second.Line))
        {
            string what = first == second ? $"{first} crosses, touches or doubles itself" : $"{first} and {second} cross, touch or run along each other";
            remarks.Add(Finding.Error("drawing.crossing", $"Layer {layer.Name}: {what} at {LayerJoiner.Text(at)} mm.", new(first.Line, 1)));
        }
    }

    /// <summary>A piece and its place in its run.</summary>
    /// <param name="Piece">The piece.</param>
    /// <param name="Source">Where the run begins in the file.</param>
    /// <param name="Run">Number of the run.</param>
    /// <param name="Index">Place in it.</param>
    /// <param name="Around">Pieces of a closed run; 0 for an open one.</param>
    private sealed record Strand(Piece Piece, DxfSource Source, int Run, int Index, int Around)
    {
        internal Bounds Box { get; } = Piece.Bounds.Grown(Tolerances.TouchMm);

        /// <summary>Whether the other piece follows this one and the point is where they join.</summary>
        internal bool Joins(Strand next, CommonPoint at)
        {
            bool follows = Run == next.Run && (Index + 1 == next.Index || (Around > 0 && Index + 1 == Around && next.Index == 0));

            // Ends may lie a join apart, so that the common point is a hair inside one of the pieces.
            return follows && at.At.DistanceTo(Piece.End) <= 2 * Tolerances.JoinMm && at.At.DistanceTo(next.Piece.Start) <= 2 * Tolerances.JoinMm;
        }
    }
}
