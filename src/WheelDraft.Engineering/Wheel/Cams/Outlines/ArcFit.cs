using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Arcs that follow a curve, moved inward by the roller's radius, and how far they may be from it.</summary>
/// <param name="Pieces">Lines and arcs in the sense in which the programme angle grows, tangent to each other.</param>
/// <param name="OffMm">A bound on the distance between them and the true outline, mm: computed, not sampled.</param>
internal sealed record FittedArcs(IReadOnlyList<Piece> Pieces, double OffMm);

/// <summary>Fits pairs of arcs to smooth curves.</summary>
/// <remarks>
/// Two arcs with the end tangents of a part of the curve (a biarc; K. M. Bolton, Biarc curves, Computer-Aided Design 7, 1975: from memory). The bound: along a curve that
/// leaves a circle at a point with its tangent, the distance f from the circle obeys |f''| ≤ K + k (δ² + k f), K being the greatest difference of curvature, k that of the
/// circle, δ ≤ K s the angle between both tangents; so |f| ≤ |f''| s²/2. Curvature over a part lies within its value in the middle and what <see cref="CurveBounds"/> allows.
/// Moving both inward by r adds at most r (δ²/2) / |1 − r k|, because their normals differ by δ.
/// </remarks>
internal static class ArcFit
{
    // A chord that turns less than this, rad, is a line: over a millimetre it departs by less than a nanometre.
    private const double StraightRad = 1e-9;

    // Halving ends here, rad of the programme: a curve that asks for more has no bound.
    private const double LeastPartRad = 1e-7;

    // What the third order may add to the bound: the shares of both arcs in the length are those of the arcs, not of the curve.
    private const double ThirdOrder = 1.05;

    /// <summary>Fits one curve.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="inwardMm">How far inside it the outline runs: the roller's radius, or 0.</param>
    /// <param name="withinMm">How far from the true outline they may be, mm, above 0.</param>
    /// <returns>Null where the curve has no bound.</returns>
    public static FittedArcs? Of(CamCurve curve, double inwardMm, double withinMm)
    {
        List<Piece> pieces = [];
        double off = 0;
        Stack<(double From, double To)> open = new();
        IReadOnlyList<double> cuts = curve.Cuts;
        for (int i = cuts.Count - 1; i > 0; i--)
        {
            open.Push((cuts[i - 1], cuts[i]));
        }

        while (open.TryPop(out (double From, double To) part))
        {
            if (part.To - part.From < LeastPartRad)
            {
                return null;
            }

            Biarc pair = Biarc.Of(curve.At(part.From), curve.At(part.To));
            double bound = Bound(curve, part, pair, inwardMm);
            if (bound <= withinMm)
            {
                off = Math.Max(off, bound);
                pieces.AddRange(pair.Moved(-curve.Sigma * inwardMm));
                continue;
            }

            double middle = (part.From + part.To) / 2;
            open.Push((middle, part.To));
            open.Push((part.From, middle));
        }

        return new(pieces, off);
    }

    private static double Bound(CamCurve curve, (double From, double To) part, Biarc pair, double inwardMm)
    {
        CurveBounds bounds = curve.Over(part.From, part.To);
        double half = (part.To - part.From) / 2;
        double middle = -curve.Sigma * curve.At(part.From + half).Convexity;
        double either = bounds.ConvexityPerRad * half;
        double length = bounds.SpeedMm * 2 * half;
        double shares = pair.FirstMm + pair.SecondMm;
        if (!double.IsFinite(either) || !pair.IsPlain)
        {
            return double.PositiveInfinity;
        }

        return ThirdOrder * Math.Max(
            Side(Math.Abs(middle - pair.FirstCurvature) + either, pair.FirstCurvature, length * pair.FirstMm / shares),
            Side(Math.Abs(middle - pair.SecondCurvature) + either, pair.SecondCurvature, length * pair.SecondMm / shares));

        double Side(double apart, double curvature, double alongMm)
        {
            double circle = Math.Abs(curvature);
            double angle = apart * alongMm;
            double bend = apart + (circle * ((angle * angle) + (circle * apart * alongMm * alongMm / 2)));
            double moved = Math.Abs(1 + (curve.Sigma * inwardMm * curvature));
            return (bend * alongMm * alongMm / 2) + (inwardMm * angle * angle / 2 / moved);
        }
    }

    /// <summary>Two arcs, tangent to each other in their joint and to the curve at both ends.</summary>
    private readonly record struct Biarc(CurvePoint Start, Point Joint, Vector JointTangent, CurvePoint End)
    {
        public double FirstCurvature => Curvature(Start.At, Start.Tangent, Joint);

        public double SecondCurvature => -Curvature(End.At, -End.Tangent, Joint);

        public double FirstMm => Start.At.DistanceTo(Joint);

        public double SecondMm => Joint.DistanceTo(End.At);

        // Both run forward.
        public bool IsPlain => Start.Tangent.Dot(Joint - Start.At) > 0 && End.Tangent.Dot(End.At - Joint) > 0;

        public static Biarc Of(CurvePoint start, CurvePoint end)
        {
            Vector across = end.At - start.At;
            Vector both = start.Tangent + end.Tangent;
            double a = 2 * (1 - start.Tangent.Dot(end.Tangent));
            double b = across.Dot(both);

            // d from |across|² − 2 d (across·both)/1 + … : a d² + 2 b d − across² = 0, in the form that stays exact for parallel tangents.
            double square = across.Dot(across);
            double d = square / (b + Math.Sqrt((b * b) + (a * square)));
            Point joint = start.At + ((across + ((start.Tangent - end.Tangent) * d)) / 2);
            Vector way = end.At - (end.Tangent * d) - (start.At + (start.Tangent * d));
            return new(start, joint, way.Unit(), end);
        }

        public IEnumerable<Piece> Moved(double leftMm)
        {
            Point from = Start.At + (Start.Tangent.Left * leftMm);
            Point over = Joint + (JointTangent.Left * leftMm);
            Point to = End.At + (End.Tangent.Left * leftMm);
            yield return One(from, over, 2 * Turn(Start.Tangent, Joint - Start.At));
            yield return One(over, to, 2 * Turn(End.At - Joint, End.Tangent));
        }

        private static Piece One(Point from, Point to, double sweepRad) =>
            Math.Abs(sweepRad) < StraightRad ? new Segment(from, to) : Arc.FromBulge(from, to, Math.Tan(sweepRad / 4));

        private static double Turn(Vector a, Vector b) => Math.Atan2(a.Cross(b), a.Dot(b));

        private static double Curvature(Point at, Vector tangent, Point to)
        {
            Vector chord = to - at;
            return 2 * tangent.Cross(chord) / chord.Dot(chord);
        }
    }
}
