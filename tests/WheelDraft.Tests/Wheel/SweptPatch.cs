using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using WheelDraft.Tests.Dxf;

namespace WheelDraft.Tests.Wheel;

/// <summary>What a bench would see of a wheel file: the copper read from DXF, a patch swept over it, makes and breaks found by touch.</summary>
/// <remarks>Shares no code with layout or writer and knows no formula: it asks only whether patch and copper have a point in
/// common. Arcs are flattened with a chord error under 1e-6 mm; edges that make and break are straight, so they are exact.</remarks>
internal sealed class SweptPatch
{
    // Coarse step of the sweep, degrees: on- and off-periods of the cases are longer.
    private const double StepDeg = 0.2;

    // Straight edges stay straight when they are moved; corners are drawn out.
    private static readonly NetTopologySuite.Operation.Buffer.BufferParameters Mitred = new(8, NetTopologySuite.Operation.Buffer.EndCapStyle.Round, NetTopologySuite.Operation.Buffer.JoinStyle.Mitre, 10);

    private readonly IPreparedGeometry _copper;

    /// <param name="dxf">The wheel file.</param>
    /// <param name="grownMm">How far every edge is cut outward of where it is drawn.</param>
    internal SweptPatch(string dxf, double grownMm = 0)
    {
        GeometryFactory factory = new();
        PlainDxf file = new(dxf);
        double toMm = file.Header("$INSUNITS").Trim() is "1" ? 25.4 : 1;
        LinearRing? outer = null;
        List<LinearRing> holes = [];
        foreach (PlainDxf.Record record in file.Records.Where(r => r.Layer is "OUTLINE" or "WINDOW"))
        {
            LinearRing ring = factory.CreateLinearRing([.. Flat(record, toMm)]);
            if (record.Layer is "OUTLINE")
            {
                outer = outer is null ? ring : throw new InvalidDataException("A wheel has one outline.");
            }
            else
            {
                holes.Add(ring);
            }
        }

        NetTopologySuite.Geometries.Geometry copper = factory.CreatePolygon(outer, [.. holes]);
        _copper = PreparedGeometryFactory.Prepare(grownMm == 0 ? copper : copper.Buffer(grownMm, Mitred));
    }

    internal sealed record Wiper(double RadiusMm, double StationDeg, double LengthMm, double WidthMm, double AngleDeg, bool IsDisc)
    {
        /// <summary>How far it stands off its station along the tangent, anticlockwise.</summary>
        internal double AlongMm { get; init; }
    }

    /// <summary>On-periods as (from, to) in degrees after home, by start; to may pass 360. Empty and whole told by one entry or none.</summary>
    /// <param name="wiper">The wiper.</param>
    /// <param name="clockwise">Which way the wheel turns.</param>
    /// <param name="centre">Where the copper's centre is off the axis, wheel frame.</param>
    internal List<(double FromDeg, double ToDeg)> OnPeriods(Wiper wiper, bool clockwise, (double X, double Y) centre = default)
    {
        double sense = clockwise ? 1 : -1;
        NetTopologySuite.Geometries.Utilities.AffineTransformation off = NetTopologySuite.Geometries.Utilities.AffineTransformation.TranslationInstance(-centre.X, -centre.Y);
        return PeriodsOf(programmeDeg =>
        {
            NetTopologySuite.Geometries.Geometry patch = Patch(wiper, wiper.StationDeg + (sense * programmeDeg));
            return _copper.Intersects(centre == default ? patch : off.Transform(patch));
        });
    }

    /// <summary>The parts of the turn in which something is on, told at each programme angle by yes or no.</summary>
    internal static List<(double FromDeg, double ToDeg)> PeriodsOf(Func<double, bool> on)
    {
        List<double> makes = [];
        List<double> breaks = [];
        bool before = on(0);
        bool first = before;
        for (int i = 1; i <= (int)Math.Round(360 / StepDeg); i++)
        {
            double at = i * StepDeg;
            bool now = on(at);
            if (now != before)
            {
                (now ? makes : breaks).Add(Switch(on, at - StepDeg, at, before));
            }

            before = now;
        }

        if (makes.Count == 0 && breaks.Count == 0)
        {
            return first ? [(0, 360)] : [];
        }

        return [.. makes.Select(m => (m, breaks.Where(b => b > m).DefaultIfEmpty(breaks[0] + 360).First()))];
    }

    private static double Switch(Func<double, bool> on, double low, double high, bool atLow)
    {
        while (high - low > 1e-7)
        {
            double middle = (low + high) / 2;
            (low, high) = on(middle) == atLow ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    internal static Polygon Patch(Wiper w, double turnedDeg)
    {
        GeometryFactory factory = new();
        List<(double X, double Y)> corners = [];
        double fold = w.AngleDeg * Math.PI / 180;
        if (w.IsDisc)
        {
            const int sides = 720; // chord error of a 0.5 mm disc: 5 nm
            for (int i = 0; i < sides; i++)
            {
                corners.Add((w.RadiusMm + (w.LengthMm / 2 * Math.Cos(2 * Math.PI * i / sides)), w.AlongMm + (w.LengthMm / 2 * Math.Sin(2 * Math.PI * i / sides))));
            }
        }
        else
        {
            foreach ((double along, double across) in new[] { (-1.0, -1.0), (1, -1), (1, 1), (-1, 1) })
            {
                double s = along * w.WidthMm / 2;
                double t = across * w.LengthMm / 2;
                corners.Add((w.RadiusMm + (s * Math.Cos(fold)) - (t * Math.Sin(fold)), w.AlongMm + (s * Math.Sin(fold)) + (t * Math.Cos(fold))));
            }
        }

        double turn = turnedDeg * Math.PI / 180;
        List<Coordinate> ring = [.. corners.Select(c => new Coordinate((c.X * Math.Cos(turn)) - (c.Y * Math.Sin(turn)), (c.X * Math.Sin(turn)) + (c.Y * Math.Cos(turn))))];
        ring.Add(ring[0].Copy());
        return factory.CreatePolygon([.. ring]);
    }

    internal static List<Coordinate> Flat(PlainDxf.Record record, double toMm)
    {
        List<(double X, double Y, double Bulge)> corners = record.Kind is "CIRCLE"
            ? [(record.Number(10) - record.Number(40), record.Number(20), 1), (record.Number(10) + record.Number(40), record.Number(20), 1)]
            : record.Corners();
        List<Coordinate> all = [];
        for (int i = 0; i < corners.Count; i++)
        {
            (double x1, double y1, double bulge) = corners[i];
            (double x2, double y2, _) = corners[(i + 1) % corners.Count];
            all.Add(new(x1 * toMm, y1 * toMm));
            if (bulge == 0)
            {
                continue;
            }

            double sweep = 4 * Math.Atan(bulge);
            double cx = ((x1 + x2) / 2) - ((y2 - y1) * (1 - (bulge * bulge)) / (4 * bulge));
            double cy = ((y1 + y2) / 2) + ((x2 - x1) * (1 - (bulge * bulge)) / (4 * bulge));
            double radius = Math.Sqrt(((x1 - cx) * (x1 - cx)) + ((y1 - cy) * (y1 - cy)));
            double start = Math.Atan2(y1 - cy, x1 - cx);
            int parts = Math.Max(1, (int)Math.Ceiling(Math.Abs(sweep) / Math.Sqrt(8e-6 / Math.Max(1e-3, radius * toMm))));
            for (int k = 1; k < parts; k++)
            {
                double at = start + (sweep * k / parts);
                all.Add(new((cx + (radius * Math.Cos(at))) * toMm, (cy + (radius * Math.Sin(at))) * toMm));
            }
        }

        all.Add(all[0].Copy());
        return all;
    }
}
