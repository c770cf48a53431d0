using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>From the frame of a shape to the drawing: a similarity while it can be one, else any map that keeps lines straight.</summary>
/// <remarks>Block references may scale x and y differently; then circles become ellipses, and arcs are taken as chords.</remarks>
internal sealed class Mapping
{
    private readonly double _xx, _xy, _yx, _yy, _x0, _y0;

    private Mapping(Placement? even, double xx, double xy, double yx, double yy, double x0, double y0)
    {
        Even = even;
        (_xx, _xy, _yx, _yy, _x0, _y0) = (xx, xy, yx, yy, x0, y0);
    }

    /// <summary>The map as a placement; null where it distorts.</summary>
    internal Placement? Even { get; }

    /// <summary>The largest factor by which it lengthens anything: the greater singular value of its matrix.</summary>
    internal double Stretch
    {
        get
        {
            double sum = (_xx * _xx) + (_xy * _xy) + (_yx * _yx) + (_yy * _yy);
            double first = (_xx * _xx) + (_yx * _yx) - (_xy * _xy) - (_yy * _yy);
            double second = 2 * ((_xx * _xy) + (_yx * _yy));
            return Math.Sqrt((sum + Math.Sqrt((first * first) + (second * second))) / 2);
        }
    }

    /// <summary>A similarity.</summary>
    internal static Mapping Of(Placement placement)
    {
        Vector x = placement.Of(new Vector(1, 0));
        Vector y = placement.Of(new Vector(0, 1));
        return new(placement, x.X, y.X, x.Y, y.Y, placement.Shift.X, placement.Shift.Y);
    }

    /// <summary>Factors along x and y, neither 0; negative ones mirror.</summary>
    internal static Mapping Scaling(double x, double y) => new(null, x, 0, 0, y, 0, 0);

    internal Point Of(Point p) => Even?.Of(p) ?? new((_xx * p.X) + (_xy * p.Y) + _x0, (_yx * p.X) + (_yy * p.Y) + _y0);

    internal Vector Of(Vector v) => new((_xx * v.X) + (_xy * v.Y), (_yx * v.X) + (_yy * v.Y));

    /// <summary>This map, then another.</summary>
    internal Mapping Then(Mapping next)
    {
        if (Even is Placement first && next.Even is Placement second)
        {
            return Of(first.Then(second));
        }

        Vector x = next.Of(new Vector(_xx, _yx));
        Vector y = next.Of(new Vector(_xy, _yy));
        Point origin = next.Of(new Point(_x0, _y0));
        return new(null, x.X, y.X, x.Y, y.Y, origin.X, origin.Y);
    }

    internal Mapping Then(Placement next) => Then(Of(next));

    /// <summary>How many chords keep within a tolerance of an arc that is mapped unevenly.</summary>
    /// <remarks>Over a step h a chord lies within r (1 - cos(h/2)) of its arc, and the map lengthens that by no more than <see cref="Stretch"/>.</remarks>
    internal long Chords(double radius, double sweepRad, double chordMm)
    {
        const long least = 4;
        double step = 2 * Math.Acos(1 - Math.Min(1, chordMm / (radius * Stretch)));
        return Math.Max(least, (long)Math.Min(1e9, Math.Ceiling(Math.Abs(sweepRad) / step)));
    }

    /// <summary>A piece in its place: as it is, or as chords.</summary>
    internal IEnumerable<Piece> Of(Piece piece, double chordMm)
    {
        if (Even is Placement placement)
        {
            yield return piece.Placed(placement);
            yield break;
        }

        long chords = piece is Arc arc ? Chords(arc.RadiusMm, arc.SweepRad, chordMm) : 1;
        Point previous = Of(piece.Start);
        for (long i = 1; i <= chords; i++)
        {
            Point next = Of(piece.PointAt(i / (double)chords));
            yield return new Segment(previous, next);
            previous = next;
        }
    }
}
