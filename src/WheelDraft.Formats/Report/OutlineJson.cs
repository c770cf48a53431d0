using WheelDraft.Geometry;

namespace WheelDraft.Formats.Report;

/// <summary>Contours as vertices x, y, bulge: a bulge belongs to its start vertex, a circle is two half arcs.</summary>
internal static class OutlineJson
{
    public static string Vertices(Contour contour) => JsonSheet.List(contour.Pieces.SelectMany(Halves).Select(Vertex));

    private static IEnumerable<Piece> Halves(Piece piece)
    {
        if (piece is not Arc arc || Math.Abs(arc.SweepRad) <= Math.PI)
        {
            return [piece];
        }

        double half = arc.SweepRad / 2;
        return [new Arc(arc.Centre, arc.RadiusMm, arc.StartRad, half), new Arc(arc.Centre, arc.RadiusMm, arc.StartRad + half, half)];
    }

    private static string Vertex(Piece piece) =>
        JsonSheet.List([JsonSheet.MmFigure(piece.Start.X), JsonSheet.MmFigure(piece.Start.Y), JsonSheet.Figure(piece.Bulge, 9)]);
}
