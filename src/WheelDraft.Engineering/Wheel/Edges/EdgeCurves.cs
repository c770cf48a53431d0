using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>When one point of a patch leaves a straight edge whose line is moved along its normal.</summary>
/// <remarks>In the frame of a break, with the line's normal at programme angle N: a corner at an angle from the wiper's radius and at
/// a distance R from the axis leaves the line n·p = d at N + f, f(d) = −angle − acos(d/R). A disc of radius ρ on radius r leaves as
/// its centre leaves the line d + ρ. f grows with d.</remarks>
/// <param name="AngleRad">Of the point from the wiper's radius.</param>
/// <param name="RadiusMm">Of the point from the axis.</param>
/// <param name="OffsetMm">Of the line, nominal; of a disc with its radius added.</param>
internal readonly record struct PointCurve(double AngleRad, double RadiusMm, double OffsetMm)
{
    /// <summary>f with the line moved outward, rad; not a number where the line is out of reach.</summary>
    public double At(double outMm) => -AngleRad - Math.Acos((OffsetMm + outMm) / RadiusMm);

    /// <summary>Slope of f, rad/mm, above 0.</summary>
    public double SlopeAt(double outMm)
    {
        double x = OffsetMm + outMm;
        return 1 / Math.Sqrt((RadiusMm * RadiusMm) - (x * x));
    }

    /// <summary>The greatest of |f″| while the line moves by at most so much, rad/mm²; it grows with the distance of the line.</summary>
    public double MostCurvature(double withinMm)
    {
        double x = Math.Abs(OffsetMm) + withinMm;
        double rest = (RadiusMm * RadiusMm) - (x * x);
        return x / (rest * Math.Sqrt(rest));
    }
}

/// <summary>When a patch leaves a straight edge, over a range of the wiper's radius, as the line moves along its normal.</summary>
/// <remarks>The last corner decides. Along the wiper's radius each corner alone leaves ever later or ever sooner: its derivative
/// is zero only where the line's normal lies across that radius, and then it is zero on every radius. So the latest moment is
/// at an end of the range; the soonest too, unless one corner's moment falls and another's rises: then it is where the two meet.</remarks>
internal sealed class EdgeCurves
{
    // Halvings of a range of the wiper's radius: below 1e-15 of a millimetre of side play or travel.
    private const int Halvings = 60;

    private readonly EdgePatchPoints _patch;
    private readonly double _fromMm;
    private readonly double _toMm;
    private readonly double _offsetMm;
    private readonly PointCurve[] _inner;
    private readonly PointCurve[] _outer;
    private (double FromMm, double ToMm, IReadOnlyList<PointCurve> Curves)? _latest;

    /// <param name="patch">The patch in the frame of the edge.</param>
    /// <param name="fromMm">Least radius of the wiper.</param>
    /// <param name="toMm">Greatest radius of the wiper.</param>
    /// <param name="offsetMm">Distance of the line from the axis.</param>
    public EdgeCurves(EdgePatchPoints patch, double fromMm, double toMm, double offsetMm)
    {
        (_patch, _fromMm, _toMm, _offsetMm) = (patch, fromMm, toMm, offsetMm);
        _inner = patch.CurvesAt(fromMm, offsetMm);
        _outer = fromMm == toMm ? _inner : patch.CurvesAt(toMm, offsetMm);
    }

    /// <summary>A point's curve at the inner end of the range.</summary>
    public PointCurve Inner(int point) => _inner[point];

    /// <summary>A point's curve at the outer end of the range.</summary>
    public PointCurve Outer(int point) => _outer[point];

    /// <summary>The latest moment over the range.</summary>
    public double Latest(double outMm) => Math.Max(Last(_inner, outMm, out _), Last(_outer, outMm, out _));

    /// <summary>The soonest moment over the range.</summary>
    public double Soonest(double outMm) => SoonestPoint(outMm).At;

    /// <summary>The soonest moment over the range, and the curve of the point that decides.</summary>
    public (double At, int Point, PointCurve Curve) SoonestPoint(double outMm)
    {
        double atInner = Last(_inner, outMm, out int inner);
        double atOuter = Last(_outer, outMm, out int outer);
        bool fallsInside = _outer[inner].At(outMm) < atInner && _inner[outer].At(outMm) < atOuter;
        return fallsInside ? Meeting(outMm)
            : atInner <= atOuter ? (atInner, inner, _inner[inner])
            : (atOuter, outer, _outer[outer]);
    }

    /// <summary>Curves that may decide the latest moment while the line moves between two places: those that no other one lies over.</summary>
    /// <remarks>The difference of two curves has a slope of one sign, so that over at both ends is over all along.</remarks>
    public IReadOnlyList<PointCurve> LatestCurves(double fromMm, double toMm)
    {
        if (_latest is not { } known || known.FromMm != fromMm || known.ToMm != toMm)
        {
            _latest = known = (fromMm, toMm, Uppermost(fromMm, toMm)); // all on-periods of a ring ask for the same
        }

        return known.Curves;
    }

    private List<PointCurve> Uppermost(double fromMm, double toMm)
    {
        PointCurve[] all = ReferenceEquals(_inner, _outer) ? _inner : [.. _inner, .. _outer];
        List<PointCurve> kept = [];
        foreach (PointCurve curve in all)
        {
            (double low, double high) = (curve.At(fromMm), curve.At(toMm));
            if (!kept.Exists(k => k.At(fromMm) >= low && k.At(toMm) >= high))
            {
                kept.RemoveAll(k => k.At(fromMm) <= low && k.At(toMm) <= high);
                kept.Add(curve);
            }
        }

        return kept;
    }

    private (double At, int Point, PointCurve Curve) Meeting(double outMm)
    {
        (double low, double high) = (_fromMm, _toMm);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            PointCurve[] there = _patch.CurvesAt(middle, _offsetMm);
            Last(there, outMm, out int last);

            // A point whose moment falls towards the outer end: the meeting lies further out.
            (low, high) = _outer[last].At(outMm) < _inner[last].At(outMm) ? (middle, high) : (low, middle);
        }

        PointCurve[] found = _patch.CurvesAt((low + high) / 2, _offsetMm);
        double at = Last(found, outMm, out int point);
        return (at, point, found[point]);
    }

    private static double Last(PointCurve[] curves, double outMm, out int point)
    {
        double most = double.NegativeInfinity;
        point = 0;
        for (int i = 0; i < curves.Length; i++)
        {
            double at = curves[i].At(outMm);
            if (at > most || double.IsNaN(at))
            {
                (most, point) = (at, i);
            }
        }

        return most;
    }
}

/// <summary>The points of a patch that can be last on an edge: the corners of a rectangle, or the centre of a disc.</summary>
/// <param name="Corners">About the patch's centre, frame of the edge; none for a disc.</param>
/// <param name="DiscMm">Radius of a disc.</param>
internal sealed record EdgePatchPoints(IReadOnlyList<Vector> Corners, double DiscMm)
{
    /// <summary>The curve of every point with the wiper on a radius.</summary>
    public PointCurve[] CurvesAt(double wiperMm, double offsetMm)
    {
        if (Corners.Count == 0)
        {
            return [new PointCurve(0, wiperMm, offsetMm + DiscMm)];
        }

        PointCurve[] curves = new PointCurve[Corners.Count];
        for (int i = 0; i < curves.Length; i++)
        {
            (double x, double y) = (wiperMm + Corners[i].X, Corners[i].Y);
            curves[i] = new(Math.Atan2(y, x), Math.Sqrt((x * x) + (y * y)), offsetMm);
        }

        return curves;
    }
}
