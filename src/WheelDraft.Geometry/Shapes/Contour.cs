using System.Globalization;

namespace WheelDraft.Geometry;

/// <summary>A closed path of straight and circular pieces, each starting where the one before ends.</summary>
/// <remarks>Closed by construction; whether it crosses itself is asked separately. Immutable.</remarks>
public sealed class Contour
{
    private readonly Piece[] _pieces;

    /// <summary>A closed path from its pieces in order.</summary>
    /// <param name="pieces">At least one; a single one must be a whole circle.</param>
    /// <exception cref="ArgumentException">There is no piece, or two neighbours lie further apart than
    /// <see cref="Tolerances.JoinMm"/>.</exception>
    public Contour(IEnumerable<Piece> pieces)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        _pieces = [.. pieces];
        if (_pieces.Length == 0)
        {
            throw new ArgumentException("A contour needs at least one piece.", nameof(pieces));
        }

        for (int i = 0; i < _pieces.Length; i++)
        {
            Point end = _pieces[i].End;
            Point next = _pieces[(i + 1) % _pieces.Length].Start;
            double gap = end.DistanceTo(next);
            if (!(gap <= Tolerances.JoinMm))
            {
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Piece {i} ends {gap} mm from the start of the next one: the contour is open there."), nameof(pieces));
            }
        }

        double area = 0;
        Vector moment = default;
        Bounds bounds = _pieces[0].Bounds;
        foreach (Piece piece in _pieces)
        {
            area += piece.AreaTerm;
            moment += piece.MomentTerm;
            bounds = bounds.With(piece.Bounds);
        }

        SignedAreaMm2 = area;
        MomentMm3 = moment;
        Bounds = bounds;
    }

    /// <summary>The pieces in order.</summary>
    public IReadOnlyList<Piece> Pieces => _pieces;

    /// <summary>Area, mm²: positive when travelled anticlockwise.</summary>
    public double SignedAreaMm2 { get; }

    /// <summary>First moments of the signed area, mm³.</summary>
    internal Vector MomentMm3 { get; }

    /// <summary>The smallest upright rectangle round it, exact.</summary>
    public Bounds Bounds { get; }

    /// <summary>Length round it, mm.</summary>
    public double Length => _pieces.Sum(p => p.Length);

    /// <summary>Which way it is travelled.</summary>
    public Turning Turning => SignedAreaMm2 >= 0 ? Turning.Anticlockwise : Turning.Clockwise;

    /// <summary>Centroid of the area inside.</summary>
    /// <exception cref="InvalidOperationException">The area is 0.</exception>
    public Point Centroid =>
        SignedAreaMm2 == 0
            ? throw new InvalidOperationException("A contour without area has no centroid.")
            : Point.Origin + (MomentMm3 / SignedAreaMm2);

    /// <summary>A whole circle, anticlockwise, as one piece that starts to the right of its centre.</summary>
    public static Contour Circle(Point centre, double radiusMm) => new([new Arc(centre, radiusMm, 0, Angles.TurnRad)]);

    /// <summary>A polygon through points, closed by itself.</summary>
    /// <exception cref="ArgumentException">Fewer than three points, or two neighbours coincide.</exception>
    public static Contour Polygon(params IReadOnlyList<Point> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return points.Count < 3
            ? throw new ArgumentException($"A polygon needs three points; found {points.Count}.", nameof(points))
            : new(points.Select((p, i) => new Segment(p, points[(i + 1) % points.Count])));
    }

    /// <summary>An upright rectangle, anticlockwise from its lower left corner.</summary>
    public static Contour Rectangle(Point corner, Point opposite)
    {
        Bounds b = Bounds.Of(corner, opposite);
        return Polygon(new(b.MinX, b.MinY), new(b.MaxX, b.MinY), new(b.MaxX, b.MaxY), new(b.MinX, b.MaxY));
    }

    /// <summary>The same path, travelled the other way.</summary>
    public Contour Reversed() => new(_pieces.Reverse().Select(p => p.Reversed()));

    /// <summary>The same path, travelled the given way.</summary>
    public Contour Travelled(Turning turning) => Turning == turning ? this : Reversed();

    /// <summary>The path moved, turned, scaled or mirrored; a mirror reverses the way it is travelled.</summary>
    public Contour Placed(Placement placement) => new(_pieces.Select(p => p.Placed(placement)));

    /// <summary>All pieces, as in messages.</summary>
    public override string ToString() => string.Join("; ", _pieces.AsEnumerable());
}
