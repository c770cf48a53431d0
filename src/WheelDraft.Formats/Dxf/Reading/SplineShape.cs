using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>A B-spline, rational or not; becomes chords.</summary>
/// <remarks>Each knot span is turned into a Bézier curve by its blossom (Ramshaw 1989, "Blossoms are polar forms"), which is
/// halved until its control points lie within the tolerance of the chord. The curve lies in their convex hull as long as
/// weights are above 0 (Farin, "Curves and Surfaces for CAGD"), so the bound holds for every point, not for samples.</remarks>
internal sealed record SplineShape(string Layer, DxfSource Source, int Degree, double[] Knots, Weighted[] Controls)
    : SourceShape(Layer, Source, Placement.Identity)
{
    /// <summary>Whether the file gives points to pass through only, so that other programs may draw it otherwise.</summary>
    internal bool IsGuessed { get; init; }

    private const int MostDegree = 11;

    /// <summary>Halvings of one span: 65,000 chords; a span that needs more is refused.</summary>
    private const int MostHalvings = 16;

    internal override bool IsClosed => false;

    internal override bool IsChords(Mapping mapping) => true;

    internal static SplineShape Read(DxfRecord record)
    {
        double[] x = [.. record.Numbers(10)];
        double[] y = [.. record.Numbers(20)];
        double[] z = [.. record.Numbers(30)];
        if (x.Length == 0)
        {
            return FitSpline.Read(record);
        }

        if (x.Length != y.Length)
        {
            throw record.Fault("its control points are not complete");
        }

        foreach (double height in z)
        {
            EntityReader.Level(record, z[0], height);
        }

        return Of(record, record.Whole(71, 3), [.. record.Numbers(40)], [.. x.Select((v, i) => new Point(v, y[i]))], [.. record.Numbers(41)], Placement.Identity);
    }

    /// <summary>A curve from its parts.</summary>
    /// <param name="record">What it stands in.</param>
    /// <param name="degree">Its degree.</param>
    /// <param name="knots">Its knots.</param>
    /// <param name="points">Its control points.</param>
    /// <param name="weights">Their weights; empty for all alike.</param>
    /// <param name="frame">The frame in which the control points are given.</param>
    internal static SplineShape Of(DxfRecord record, int degree, double[] knots, IReadOnlyList<Point> points, double[] weights, Placement frame)
    {
        if (degree is < 1 or > MostDegree || points.Count <= degree || knots.Length != points.Count + degree + 1)
        {
            throw record.Fault($"degree {FixedPoint.Short(degree, 0)}, {FixedPoint.Short(points.Count, 0)} control points and {FixedPoint.Short(knots.Length, 0)} knots do not belong together");
        }

        for (int i = 1; i < knots.Length; i++)
        {
            if (knots[i] < knots[i - 1])
            {
                throw record.Fault("its knots must not fall");
            }
        }

        if (weights.Length != 0 && (weights.Length != points.Count || weights.Any(w => !(w > 1e-9))))
        {
            throw record.Fault("each control point needs a weight above 0, or none has one");
        }

        Weighted[] controls = [.. points.Select(frame.Of).Select((p, i) => Weighted.Of(p.X, p.Y, weights.Length == 0 ? 1 : weights[i]))];
        return new(record.Layer, record.Source, degree, knots, controls);
    }

    internal override long Cost(Mapping mapping, double chordMm) => Controls.Length;

    internal override IEnumerable<Piece> Pieces(Mapping mapping, double chordMm)
    {
        Weighted[] placed = [.. Controls.Select(c => c.Placed(mapping))];
        Point? previous = null;
        for (int span = Degree; span < placed.Length; span++)
        {
            if (Knots[span] < Knots[span + 1])
            {
                foreach (Point next in Chords(Bezier(placed, span), chordMm))
                {
                    if (previous is Point from && from != next)
                    {
                        yield return new Segment(from, next);
                    }

                    previous = next;
                }
            }
        }
    }

    private Weighted[] Bezier(Weighted[] controls, int span)
    {
        Weighted[] bezier = new Weighted[Degree + 1];
        for (int j = 0; j <= Degree; j++)
        {
            Weighted[] d = controls[(span - Degree)..(span + 1)];
            for (int r = 1; r <= Degree; r++)
            {
                double argument = r <= j ? Knots[span + 1] : Knots[span];
                for (int i = Degree; i >= r; i--)
                {
                    double low = Knots[span - Degree + i];
                    double share = (argument - low) / (Knots[span + 1 + i - r] - low);
                    d[i] = Weighted.Mix(d[i - 1], d[i], share);
                }
            }

            bezier[j] = d[Degree];
        }

        return bezier;
    }

    /// <summary>The first point and the end of each chord.</summary>
    private static IEnumerable<Point> Chords(Weighted[] bezier, double chordMm)
    {
        yield return bezier[0].At;
        Stack<(Weighted[] Curve, int Halvings)> left = new([(bezier, 0)]);
        while (left.TryPop(out (Weighted[] Curve, int Halvings) next))
        {
            if (IsFlat(next.Curve, chordMm))
            {
                yield return next.Curve[^1].At;
                continue;
            }

            if (next.Halvings == MostHalvings)
            {
                throw new UnreadException("it needs more than 65,000 chords a span; give a larger tolerance");
            }

            (Weighted[] first, Weighted[] second) = Halves(next.Curve);
            left.Push((second, next.Halvings + 1));
            left.Push((first, next.Halvings + 1));
        }
    }

    private static bool IsFlat(Weighted[] curve, double chordMm)
    {
        Point start = curve[0].At;
        Point end = curve[^1].At;
        Vector chord = end - start;
        double square = chord.Dot(chord);
        foreach (Weighted control in curve)
        {
            double share = square > 0 ? Math.Clamp((control.At - start).Dot(chord) / square, 0, 1) : 0;
            if (control.At.DistanceTo(start + (chord * share)) > chordMm)
            {
                return false;
            }
        }

        return true;
    }

    private static (Weighted[] First, Weighted[] Second) Halves(Weighted[] curve)
    {
        int n = curve.Length;
        Weighted[] work = [.. curve];
        Weighted[] first = new Weighted[n];
        Weighted[] second = new Weighted[n];
        for (int r = 0; r < n; r++)
        {
            first[r] = work[0];
            second[n - 1 - r] = work[n - 1 - r];
            for (int i = 0; i < n - 1 - r; i++)
            {
                work[i] = Weighted.Mix(work[i], work[i + 1], 0.5);
            }
        }

        return (first, second);
    }
}

/// <summary>A control point in homogeneous coordinates.</summary>
internal readonly record struct Weighted(double X, double Y, double W)
{
    internal Point At => new(X / W, Y / W);

    internal static Weighted Of(double x, double y, double weight) => new(x * weight, y * weight, weight);

    internal static Weighted Mix(Weighted a, Weighted b, double share) =>
        new(a.X + ((b.X - a.X) * share), a.Y + ((b.Y - a.Y) * share), a.W + ((b.W - a.W) * share));

    internal Weighted Placed(Mapping mapping)
    {
        Point at = mapping.Of(At);
        return Of(at.X, at.Y, W);
    }
}
