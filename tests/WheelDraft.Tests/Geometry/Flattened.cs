using NetTopologySuite.Geometries;
using WheelDraft.Geometry;
using Point = WheelDraft.Geometry.Point;

namespace WheelDraft.Tests.Geometry;

/// <summary>The same shapes as chords, for NetTopologySuite as an oracle; the chord error is stated, not neglected.</summary>
/// <remarks>A chord of sweep s on radius r lies at most r(1 − cos(s/2)) from its arc.</remarks>
internal static class Flattened
{
    private const int ChordsATurn = 360;
    private static readonly GeometryFactory _factory = new();

    internal static double ErrorMm(Piece piece) =>
        piece is Arc arc ? arc.RadiusMm * (1 - Math.Cos(Math.Abs(arc.SweepRad) / Chords(arc) / 2)) : 0;

    internal static double ErrorMm(Outline outline) => outline.Pieces.Max(ErrorMm);

    internal static LineString Line(Piece piece) => _factory.CreateLineString([.. Coordinates(piece)]);

    internal static LinearRing Ring(Contour contour)
    {
        List<Coordinate> all = [];
        foreach (Piece piece in contour.Pieces)
        {
            all.AddRange(Coordinates(piece).SkipLast(1));
        }

        all.Add(all[0].Copy());
        return _factory.CreateLinearRing([.. all]);
    }

    internal static Polygon Polygon(Outline outline) =>
        _factory.CreatePolygon(Ring(outline.Outer), [.. outline.Holes.Select(Ring)]);

    internal static NetTopologySuite.Geometries.Point Of(Point p) => _factory.CreatePoint(new Coordinate(p.X, p.Y));

    private static int Chords(Arc arc) => Math.Max(2, (int)Math.Ceiling(Math.Abs(arc.SweepRad) / Angles.TurnRad * ChordsATurn));

    private static IEnumerable<Coordinate> Coordinates(Piece piece)
    {
        int chords = piece is Arc arc ? Chords(arc) : 1;
        for (int i = 0; i <= chords; i++)
        {
            Point p = piece.PointAt((double)i / chords);
            yield return new Coordinate(p.X, p.Y);
        }
    }
}
