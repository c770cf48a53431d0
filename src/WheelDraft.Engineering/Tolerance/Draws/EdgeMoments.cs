using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>How much later than nominal a patch leaves one edge, for four draws at once.</summary>
/// <remarks>The geometry of <see cref="EdgeCurves"/>, whose moment of a point is −atan2(y, x) − acos(d / R). With h = √(R² − d²) the angle taken off is
/// that of the vector (x d − y h, x h + y d); its angle from the nominal one comes out of one square root, one division and one
/// arctangent of a small number, whose series alternates, so that what is left out is less than its next term (<see cref="LeftOutRad"/>).
/// A point's moment is monotone in the wiper's radius, in the wear and in the line's place, each: on a straight way a point's angle stands
/// still only where it slides along the line, and then all along. So corners of the box bound it, and points that never decide are left out.</remarks>
internal sealed class EdgeMoments
{
    // Where the series would need more terms than these, four library arctangents are quicker.
    private const int MostTerms = 16;

    // What the series may leave out, rad: a hundredth of a microsecond of a turn of an hour.
    private const double LeftOutRad = 1e-11;

    // Bounds are compared with this to spare, far above rounding.
    private const double SpareRad = 1e-9;

    private readonly DecidingPoint[] _points;
    private readonly double _cos;
    private readonly double _sin;
    private readonly Vector256<double>[] _series;

    /// <param name="patches">The patch, new and worn.</param>
    /// <param name="edge">The line.</param>
    /// <param name="wiper">Where the wiper rides.</param>
    /// <param name="straysMm">How far the line may be moved along its normal, either way.</param>
    public EdgeMoments((EdgePatchPoints New, EdgePatchPoints Worn) patches, CopperEdge edge, RidingPlace wiper, double straysMm)
    {
        double nominal = -Enumerable.Max(patches.New.CurvesAt(wiper.RadiusMm, edge.OffsetMm).Select(c => c.At(0)));
        (_sin, _cos) = Math.SinCos(nominal);
        DecidingPoint[] all = DecidingPoint.Of(patches, edge.OffsetMm, wiper.RadiusMm + wiper.MovedMm);
        (double Least, double Most)[] bounds = [.. all.Select(p => Bounds(p, wiper.PlayMm, straysMm))];
        double decides = bounds.Min(b => b.Most) + SpareRad;
        _points = [.. all.Where((_, i) => !(bounds[i].Least > decides))];
        double widest = Math.Max(Math.Abs(bounds.Min(b => b.Least)), Math.Abs(decides));
        _series = SeriesFor(widest);
    }

    /// <summary>How much later than nominal, as a tangent's two sides, the second above nothing; frame of a break, so later at a make edge means that
    /// the contact makes sooner. <see cref="LaterRad"/> makes an angle of their quotient.</summary>
    /// <param name="playMm">The wiper outward of its place.</param>
    /// <param name="outMm">The line outward along its normal.</param>
    /// <param name="wear">From 0, new, to 1, worn.</param>
    [MethodImpl(MethodImplOptions.NoInlining)] // what its caller inlines has a limit: beyond it every sum of two vectors would be a call
    public (Vector256<double> Beside, Vector256<double> Ahead) Later(Vector256<double> playMm, Vector256<double> outMm, Vector256<double> wear)
    {
        (Vector256<double> least, Vector256<double> ahead) = Of(in _points[0], playMm, outMm, wear);
        for (int i = 1; i < _points.Length; i++)
        {
            (Vector256<double> beside, Vector256<double> before) = Of(in _points[i], playMm, outMm, wear);
            Vector256<double> isLess = Vector256.LessThan(beside * ahead, least * before); // one division for all points
            (least, ahead) = (Vector256.ConditionalSelect(isLess, beside, least), Vector256.ConditionalSelect(isLess, before, ahead));
        }

        return (least, ahead);
    }

    /// <summary>How much later than nominal, rad.</summary>
    /// <param name="tangent">The two sides of <see cref="Later"/>, divided.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> LaterRad(Vector256<double> tangent) => -Arctangent(tangent);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private (Vector256<double> Beside, Vector256<double> Before) Of(in DecidingPoint p, Vector256<double> playMm, Vector256<double> outMm, Vector256<double> wear)
    {
        (Vector256<double> cos, Vector256<double> sin) = (Vector256.Create(_cos), Vector256.Create(_sin));
        Vector256<double> x = (wear * Vector256.Create(p.XWear)) + (playMm + Vector256.Create(p.X));
        Vector256<double> y = (wear * Vector256.Create(p.YWear)) + Vector256.Create(p.Y);
        Vector256<double> d = (wear * Vector256.Create(p.DWear)) + (outMm + Vector256.Create(p.D));
        Vector256<double> h = Vector256.Sqrt((x * x) + ((y * y) - (d * d)));
        Vector256<double> along = (d * cos) + (h * sin);
        Vector256<double> across = (h * cos) - (d * sin);
        return ((x * across) + (y * along), (x * along) - (y * across));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector256<double> Arctangent(Vector256<double> z)
    {
        Vector256<double>[] series = _series;
        if (series.Length == 0)
        {
            return OneByOne(z);
        }

        Vector256<double> square = z * z;
        Vector256<double> sum = series[0];
        for (int i = 1; i < series.Length; i++)
        {
            sum = (sum * square) + series[i];
        }

        return sum * z;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static Vector256<double> OneByOne(Vector256<double> z) => Vector256.Create(Math.Atan(z[0]), Math.Atan(z[1]), Math.Atan(z[2]), Math.Atan(z[3]));

    /// <summary>The terms of the arctangent's series, the last first; none where it is too slow.</summary>
    internal static Vector256<double>[] SeriesFor(double widest)
    {
        for (int terms = 1; terms <= MostTerms; terms++)
        {
            if (Math.Pow(widest, (2 * terms) + 1) / ((2 * terms) + 1) <= LeftOutRad)
            {
                return [.. Enumerable.Range(0, terms).Reverse().Select(k => Vector256.Create((k % 2 == 0 ? 1.0 : -1.0) / ((2 * k) + 1)))];
            }
        }

        return [];
    }

    // Tangents of a point's angle from the nominal one, over the corners of the box.
    private (double Least, double Most) Bounds(DecidingPoint p, double playMm, double straysMm)
    {
        (double least, double most) = (double.PositiveInfinity, double.NegativeInfinity);
        for (int corner = 0; corner < 8; corner++)
        {
            double wear = corner & 1;
            double x = p.X + (p.XWear * wear) + ((corner & 2) == 0 ? -playMm : playMm);
            double y = p.Y + (p.YWear * wear);
            double d = p.D + (p.DWear * wear) + ((corner & 4) == 0 ? -straysMm : straysMm);
            double h = Math.Sqrt((x * x) + (y * y) - (d * d));
            (double along, double across) = ((d * _cos) + (h * _sin), (h * _cos) - (d * _sin));
            double ahead = (x * along) - (y * across);

            // A quarter of a turn away and more, or out of reach: nothing is left out, and no series.
            double tangent = ahead > 0 ? ((x * across) + (y * along)) / ahead : double.NaN;
            (least, most) = double.IsNaN(tangent) ? (double.NegativeInfinity, double.PositiveInfinity) : (Math.Min(least, tangent), Math.Max(most, tangent));
        }

        return (least, most);
    }

    /// <summary>A point that may be last on the edge: place and line, new, and what wear adds.</summary>
    private readonly record struct DecidingPoint(double X, double XWear, double Y, double YWear, double D, double DWear)
    {
        public static DecidingPoint[] Of((EdgePatchPoints New, EdgePatchPoints Worn) patches, double offsetMm, double wiperMm)
        {
            double disc = patches.New.DiscMm;
            return patches.New.Corners.Count == 0
                ? [new(wiperMm, 0, 0, 0, offsetMm + disc, patches.Worn.DiscMm - disc)]
                : [.. patches.New.Corners.Zip(patches.Worn.Corners, (Vector n, Vector w) => new DecidingPoint(wiperMm + n.X, w.X - n.X, n.Y, w.Y - n.Y, offsetMm, 0))];
        }
    }
}

/// <summary>Where a wiper rides.</summary>
/// <param name="RadiusMm">Ring radius.</param>
/// <param name="MovedMm">How far it is moved outward from it.</param>
/// <param name="PlayMm">Its side play, plus and minus.</param>
internal readonly record struct RidingPlace(double RadiusMm, double MovedMm, double PlayMm);
