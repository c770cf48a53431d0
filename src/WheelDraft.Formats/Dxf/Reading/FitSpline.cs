using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>A spline given by the points that it passes through: the cubic that bends evenly over chord lengths.</summary>
/// <remarks>C. de Boor, A Practical Guide to Splines (1978), chapter IV: with end directions the complete spline, at unit speed over the chord
/// length as CAD programs take it; without them the natural one. Programs may differ where no end directions are given.</remarks>
internal static class FitSpline
{
    internal static SplineShape Read(DxfRecord record)
    {
        Point[] through = [.. Apart(record.Numbers(11).Zip(record.Numbers(21), (x, y) => new Point(x, y)))];
        double[] z = [.. record.Numbers(31)];
        foreach (double height in z)
        {
            EntityReader.Level(record, z[0], height);
        }

        const int closed = 1;
        if (through.Length < 2 || (record.Whole(70, 0) & closed) != 0)
        {
            throw record.Fault("it gives fit points only, and is closed or has fewer than two of them, from which each program makes another curve; convert it to arcs");
        }

        double[] steps = [.. through.Skip(1).Select((p, i) => p.DistanceTo(through[i]))];
        Vector[] slopes = Slopes(through, steps, End(record, 12), End(record, 13));
        List<Weighted> controls = [Weighted.Of(through[0].X, through[0].Y, 1)];
        List<double> knots = [0, 0, 0, 0];
        double at = 0;
        for (int i = 0; i < steps.Length; i++)
        {
            at += steps[i];
            Point[] bezier = [through[i] + (slopes[i] * (steps[i] / 3)), through[i + 1] - (slopes[i + 1] * (steps[i] / 3)), through[i + 1]];
            controls.AddRange(bezier.Select(p => Weighted.Of(p.X, p.Y, 1)));
            knots.AddRange([at, at, at]);
        }

        knots.Add(at);
        return new(record.Layer, record.Source, 3, [.. knots], [.. controls]) { IsGuessed = true };
    }

    private static IEnumerable<Point> Apart(IEnumerable<Point> points)
    {
        Point? last = null;
        foreach (Point p in points)
        {
            if (last != p)
            {
                yield return p;
            }

            last = p;
        }
    }

    private static Vector? End(DxfRecord record, int code)
    {
        Vector direction = new(record.Number(code, 0), record.Number(code + 10, 0));
        return direction.Length > 0 ? direction.Unit() : null;
    }

    /// <summary>The slopes at all points, per unit of chord length: a tridiagonal system, solved by elimination.</summary>
    private static Vector[] Slopes(Point[] p, double[] h, Vector? first, Vector? last)
    {
        int n = p.Length;
        double[] diagonal = new double[n];
        double[] above = new double[n];
        Vector[] right = new Vector[n];
        (diagonal[0], above[0], right[0]) = first is Vector start ? (1, 0, start) : (2, 1, (p[1] - p[0]) * (3 / h[0]));
        for (int i = 1; i < n; i++)
        {
            bool isLast = i == n - 1;
            (double below, double middle, double over, Vector value) = !isLast
                ? (h[i], 2 * (h[i - 1] + h[i]), h[i - 1], ((p[i] - p[i - 1]) * (3 * h[i] / h[i - 1])) + ((p[i + 1] - p[i]) * (3 * h[i - 1] / h[i])))
                : last is Vector end ? (0, 1, 0, end) : (1, 2, 0, (p[i] - p[i - 1]) * (3 / h[i - 1]));
            double factor = below / diagonal[i - 1];
            diagonal[i] = middle - (factor * above[i - 1]);
            above[i] = over;
            right[i] = value - (right[i - 1] * factor);
        }

        Vector[] slopes = new Vector[n];
        slopes[n - 1] = right[n - 1] / diagonal[n - 1];
        for (int i = n - 2; i >= 0; i--)
        {
            slopes[i] = (right[i] - (slopes[i + 1] * above[i])) / diagonal[i];
        }

        return slopes;
    }
}
