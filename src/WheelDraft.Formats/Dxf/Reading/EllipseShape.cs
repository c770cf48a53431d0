using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>An ellipse or a part of one; becomes chords.</summary>
internal sealed record EllipseShape(string Layer, DxfSource Source, Placement Frame, Point Centre, Vector Major, Vector Minor, double FromRad, double SweepRad)
    : SourceShape(Layer, Source, Frame)
{
    internal override bool IsClosed => Math.Abs(SweepRad) >= Angles.TurnRad;

    internal override bool IsChords(Mapping mapping) => true;

    /// <summary>Unlike arcs, ellipses are given in the drawing's own frame; only the side that they turn to follows the axis.</summary>
    internal static EllipseShape Read(DxfRecord record, Placement frame)
    {
        Vector major = new(record.Number(11), record.Number(21));
        double ratio = record.Number(40);
        EntityReader.Level(record, 0, record.Number(31, 0));
        if (!(ratio > 0 && ratio <= 1) || !(major.Length > 0))
        {
            throw record.Fault("its half axes must be above 0, the minor one not above the major one");
        }

        Vector minor = major.Left * (frame.Mirrors ? -ratio : ratio);
        double from = record.Number(41, 0);
        double sweep = record.Number(42, Angles.TurnRad) - from;
        const double rounding = 1e-9;
        double turn = Angles.InTurn(sweep);
        bool whole = turn < rounding || turn > Angles.TurnRad - rounding;
        return new(record.Layer, record.Source, Placement.Identity, record.Point(10), major, minor, from, whole ? Angles.TurnRad : turn);
    }

    internal override long Cost(Mapping mapping, double chordMm) => Chords(mapping, chordMm);

    internal override IEnumerable<Piece> Pieces(Mapping mapping, double chordMm)
    {
        long chords = Chords(mapping, chordMm);
        Point first = At(0);
        Point previous = first;
        for (long i = 1; i <= chords; i++)
        {
            Point next = i == chords && IsClosed ? first : At(i / (double)chords);
            if (previous != next)
            {
                yield return new Segment(previous, next);
            }

            previous = next;
        }

        Point At(double share)
        {
            (double sin, double cos) = Math.SinCos(FromRad + (share * SweepRad));
            return mapping.Of(Centre + (Major * cos) + (Minor * sin));
        }
    }

    /// <summary>A chord over a parameter step h lies within a (1 - cos(h/2)) of the curve, a the half major axis: an
    /// ellipse is a circle squeezed, and squeezing brings nothing further apart.</summary>
    private long Chords(Mapping mapping, double chordMm)
    {
        const long least = 8;
        return Math.Max(least, mapping.Chords(Math.Max(Major.Length, Minor.Length), SweepRad, chordMm));
    }
}
