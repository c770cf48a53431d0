namespace WheelDraft.Engineering;

/// <summary>The greatest and least sum of the moments at which two edges are left, the copper's centre anywhere in a disc.</summary>
/// <remarks>A centre off by u moves the line of an edge with normal n outward by n·u. For one point at each edge the sum is a smooth
/// function of u whose gradient hardly turns over the disc, so that going where the gradient points (conditional gradient,
/// Frank and Wolfe, "An algorithm for quadratic programming", 1956; from memory) ends on the disc's edge after a few steps.
/// With G the gradient's length there, K the greatest curvature and e the disc's radius, every other centre v away gives at most
/// (K·e − G)·|v|²/(2e) more: nothing when K·e ≤ G, and that is the proof. Where it fails, or where two points decide in turn, the
/// directions are searched by halving, each part bounded by the monotone growth of both moments.</remarks>
internal sealed class CentreSearch
{
    // Steps along the gradient: each makes the rest smaller by about K·e/G, a hundredfold as a rule.
    private const int MostSteps = 60;

    // Where the direction of the gradient no longer changes: its effect on the sum is the square of this.
    private const double StillTurns = 1e-10;

    // Parts of the circle looked at before the search settles for the bound that it has, which is safe and a little wide.
    private const int MostParts = 200_000;

    private readonly double _cos;
    private readonly double _sin;
    private readonly double _radiusMm;
    private readonly double _apartRad;
    private readonly double _closeRad;

    /// <param name="radiusMm">How far the centre may be off.</param>
    /// <param name="apartRad">Angle from the break edge's normal to the make edge's, wheel frame.</param>
    /// <param name="closeRad">How near to the true extreme a bound has to be.</param>
    public CentreSearch(double radiusMm, double apartRad, double closeRad)
    {
        (_radiusMm, _apartRad, _closeRad) = (radiusMm, apartRad, closeRad);
        (_sin, _cos) = Math.SinCos(apartRad);
    }

    /// <summary>A bound on the greatest sum: never less than it, and more by at most what was asked.</summary>
    /// <param name="off">The break edge.</param>
    /// <param name="offMm">How far its line is cut outward.</param>
    /// <param name="make">The make edge.</param>
    /// <param name="makeMm">How far its line is cut outward.</param>
    public double Greatest(EdgeCurves off, double offMm, EdgeCurves make, double makeMm)
    {
        if (_radiusMm == 0)
        {
            return off.Latest(offMm) + make.Latest(makeMm);
        }

        double most = double.NegativeInfinity;
        IReadOnlyList<PointCurve> makes = make.LatestCurves(makeMm - _radiusMm, makeMm + _radiusMm);
        foreach (PointCurve o in off.LatestCurves(offMm - _radiusMm, offMm + _radiusMm))
        {
            foreach (PointCurve m in makes)
            {
                (double at, double slack) = Climb(o, offMm, m, makeMm, 1);
                if (!(slack <= _closeRad))
                {
                    return Halved(off, offMm, make, makeMm, 1);
                }

                most = Math.Max(most, at + slack);
            }
        }

        return most;
    }

    /// <summary>A bound on the least sum: never more than it, and less by at most what was asked.</summary>
    /// <param name="off">The break edge.</param>
    /// <param name="offMm">How far its line is cut inward, a negative number.</param>
    /// <param name="make">The make edge.</param>
    /// <param name="makeMm">How far its line is cut inward, a negative number.</param>
    public double Least(EdgeCurves off, double offMm, EdgeCurves make, double makeMm)
    {
        if (_radiusMm == 0)
        {
            return off.Soonest(offMm) + make.Soonest(makeMm);
        }

        (double found, int offPoint, int makePoint) = Descend(off, offMm, make, makeMm);
        double least = double.PositiveInfinity;
        foreach (PointCurve o in SoonerOnes(off, offPoint, offMm))
        {
            foreach (PointCurve m in SoonerOnes(make, makePoint, makeMm))
            {
                (double at, double slack) = Climb(o, offMm, m, makeMm, -1);
                least = Math.Min(least, at - slack);
            }
        }

        return found - least <= _closeRad ? least : Halved(off, offMm, make, makeMm, -1);
    }

    /// <summary>The curves of one point at both ends of the wiper's range, as far as either may be the sooner one.</summary>
    private IReadOnlyList<PointCurve> SoonerOnes(EdgeCurves edge, int point, double outMm)
    {
        (PointCurve inner, PointCurve outer) = (edge.Inner(point), edge.Outer(point));
        (double low, double high) = (outMm - _radiusMm, outMm + _radiusMm);
        return inner.At(low) <= outer.At(low) && inner.At(high) <= outer.At(high) ? [inner]
            : outer.At(low) <= inner.At(low) && outer.At(high) <= inner.At(high) ? [outer]
            : [inner, outer];
    }

    /// <summary>The extreme sum for one point at each edge, and by how much any other centre may pass it.</summary>
    private (double At, double Slack) Climb(PointCurve off, double offMm, PointCurve make, double makeMm, double way)
    {
        // Along the gradient, in the frame of the break edge's normal; the first try lies midway between both normals.
        (double x, double y) = Unit(1 + _cos, _sin);
        double length = 0;
        for (int i = 0; i < MostSteps; i++)
        {
            double p = off.SlopeAt(offMm + (way * _radiusMm * x));
            double q = make.SlopeAt(makeMm + (way * _radiusMm * ((x * _cos) + (y * _sin))));
            (double gx, double gy) = (p + (q * _cos), q * _sin);
            length = Math.Sqrt((gx * gx) + (gy * gy));
            (double nextX, double nextY) = Unit(gx, gy);
            bool still = Math.Abs(nextX - x) + Math.Abs(nextY - y) < StillTurns;
            (x, y) = (nextX, nextY);
            if (still)
            {
                break;
            }
        }

        double curvature = off.MostCurvature(Math.Abs(offMm) + _radiusMm) + make.MostCurvature(Math.Abs(makeMm) + _radiusMm);
        double at = off.At(offMm + (way * _radiusMm * x)) + make.At(makeMm + (way * _radiusMm * ((x * _cos) + (y * _sin))));
        return (at, 2 * _radiusMm * Math.Max(0, (curvature * _radiusMm) - length));
    }

    /// <summary>A low sum, and the points that decide it.</summary>
    private (double At, int Off, int Make) Descend(EdgeCurves off, double offMm, EdgeCurves make, double makeMm)
    {
        (double x, double y) = Unit(1 + _cos, _sin);
        (double At, int Off, int Make) best = (double.PositiveInfinity, 0, 0);
        for (int i = 0; i < MostSteps; i++)
        {
            double offOut = offMm - (_radiusMm * x);
            double makeOut = makeMm - (_radiusMm * ((x * _cos) + (y * _sin)));
            (double offAt, int offPoint, PointCurve o) = off.SoonestPoint(offOut);
            (double makeAt, int makePoint, PointCurve m) = make.SoonestPoint(makeOut);
            best = offAt + makeAt < best.At ? (offAt + makeAt, offPoint, makePoint) : best;
            (double p, double q) = (o.SlopeAt(offOut), m.SlopeAt(makeOut));
            (double nextX, double nextY) = Unit(p + (q * _cos), q * _sin);
            bool still = Math.Abs(nextX - x) + Math.Abs(nextY - y) < StillTurns;
            (x, y) = (nextX, nextY);
            if (still)
            {
                break;
            }
        }

        return best;
    }

    private static (double X, double Y) Unit(double x, double y)
    {
        double length = Math.Sqrt((x * x) + (y * y));
        return length > 0 ? (x / length, y / length) : (1, 0);
    }

    /// <summary>Halves the directions of the centre until what is left cannot pass what was found by more than was asked.</summary>
    private double Halved(EdgeCurves off, double offMm, EdgeCurves make, double makeMm, double way)
    {
        // What is sought is the greatest of way · sum; the centre way · e at an angle from the break edge's normal.
        double Value(double offCos, double makeCos) => way > 0
            ? off.Latest(offMm + (_radiusMm * offCos)) + make.Latest(makeMm + (_radiusMm * makeCos))
            : -(off.Soonest(offMm - (_radiusMm * offCos)) + make.Soonest(makeMm - (_radiusMm * makeCos)));

        double found = double.NegativeInfinity;
        PriorityQueue<(double From, double To, double Bound), double> parts = new();
        void Add(double from, double to)
        {
            double middle = (from + to) / 2;
            found = Math.Max(found, Value(Math.Cos(middle), Math.Cos(middle - _apartRad)));
            double bound = Value(MostCos(from, to), MostCos(from - _apartRad, to - _apartRad));
            parts.Enqueue((from, to, bound), -bound);
        }

        Add(0, 2 * Math.PI);
        for (int i = 0; i < MostParts; i++)
        {
            (double from, double to, double bound) = parts.Dequeue();
            if (!(bound - found > _closeRad))
            {
                return way * Math.Max(bound, found);
            }

            Add(from, (from + to) / 2);
            Add((from + to) / 2, to);
        }

        return way * parts.Dequeue().Bound;
    }

    /// <summary>The greatest cosine over a range of angles.</summary>
    private static double MostCos(double fromRad, double toRad)
    {
        double turns = Math.Ceiling(fromRad / (2 * Math.PI)) * 2 * Math.PI;
        return turns <= toRad ? 1 : Math.Max(Math.Cos(fromRad), Math.Cos(toRad));
    }
}
