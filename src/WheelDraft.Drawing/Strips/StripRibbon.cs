using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A formed strip as the wiper side sees it: its edges in plan, seat coordinates, mm.</summary>
/// <remarks>A leg that stands upright is a step in the way; a strip that turns back over itself is drawn as one ribbon for each way,
/// the lower first.</remarks>
internal static class StripRibbon
{
    // Legs shorter than this in plan stand upright, mm: a tenth of the thinnest stock.
    private const double UprightMm = 0.01;

    /// <summary>The ribbons of a strip, free of the wheel.</summary>
    /// <param name="form">The strip.</param>
    public static IReadOnlyList<Contour> Of(StripForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        List<List<Edges>> ways = [[]];
        Vector? last = null;
        foreach (FormedPiece piece in form.Pieces)
        {
            Vector way = piece.End.Origin.Plan - piece.Start.Origin.Plan;
            if (way.Length < UprightMm)
            {
                continue;
            }

            Vector leaving = Level(piece.Kind == FormedKind.Sweep ? piece.End.Along : new(way.X, way.Y, 0));
            Vector entering = Level(piece.Kind == FormedKind.Sweep ? piece.Start.Along : new(way.X, way.Y, 0));
            if (last is Vector before && before.Dot(entering) < 0)
            {
                ways.Add([]);
            }

            ways[^1].Add(Edges.Of(piece));
            last = leaving;
        }

        return [.. ways.Where(w => w.Count > 0).Select(Closed)];
    }

    /// <summary>From seat coordinates to the housing's plan.</summary>
    public static Placement ToHousing(SpacePlacement placement) =>
        Placement.Turn(placement.TurnRad).Then(Placement.Translation(new(placement.Shift.X, placement.Shift.Y)));

    private static Vector Level(SpaceVector v) => new Vector(v.X, v.Y).Unit();

    private static Contour Closed(List<Edges> way)
    {
        List<Piece> pieces = [];
        foreach (Edges edges in way)
        {
            Join(pieces, edges.Right.Start);
            pieces.Add(edges.Right);
        }

        foreach (Edges edges in Enumerable.Reverse(way))
        {
            Join(pieces, edges.Left.End);
            pieces.Add(edges.Left.Reversed());
        }

        Join(pieces, pieces[0].Start);
        return new Contour(pieces);
    }

    private static void Join(List<Piece> pieces, Point to)
    {
        if (pieces.Count > 0 && pieces[^1].End.DistanceTo(to) > Tolerances.JoinMm)
        {
            pieces.Add(new Segment(pieces[^1].End, to));
        }
    }

    private sealed record Edges(Piece Right, Piece Left)
    {
        public static Edges Of(FormedPiece piece) => new(Side(piece, -1), Side(piece, 1));

        private static Piece Side(FormedPiece piece, int side)
        {
            Point from = piece.Start.At(0, side * piece.WidthMm / 2, 0).Plan;
            Point to = piece.End.At(0, side * piece.WidthEndMm / 2, 0).Plan;
            bool isRound = piece.Kind == FormedKind.Sweep && piece.Start.Up.Z > 1 - 1e-12 && piece.WidthMm == piece.WidthEndMm;
            return isRound
                ? Arc.About(piece.Centre.Plan, from, to, piece.AngleRad > 0 ? Turning.Anticlockwise : Turning.Clockwise)
                : new Segment(from, to);
        }
    }
}
