using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The profile of many upright boxes seen from the side, as few outlines.</summary>
/// <remarks>Drawn box by box the seams between neighbours would show, in every program a little differently. The width is cut at every end of a box;
/// what is covered between two cuts goes on the outline before it where just one stretch of height follows just one.</remarks>
internal static class SideProfile
{
    /// <summary>The outlines of what boxes cover together.</summary>
    /// <param name="boxes">The boxes; one without width or height covers nothing.</param>
    public static IReadOnlyList<Outline> Of(IReadOnlyList<Bounds> boxes)
    {
        Bounds[] solid = [.. boxes.Where(b => b.Width > Tolerances.JoinMm && b.Height > Tolerances.JoinMm)];
        double[] cuts = [.. Apart(solid.SelectMany(b => new[] { b.MinX, b.MaxX }).Order())];
        List<Run> done = [], open = [];
        for (int i = 0; i + 1 < cuts.Length; i++)
        {
            (double fromX, double toX) = (cuts[i], cuts[i + 1]);
            IReadOnlyList<(double Low, double High)> spans = Spans(solid.Where(b => b.MinX <= fromX + Tolerances.JoinMm && b.MaxX >= toX - Tolerances.JoinMm));
            List<Run> next = [];
            foreach ((double low, double high) in spans)
            {
                Run[] before = [.. open.Where(r => r.Low < high && low < r.High)];
                bool goesOn = before.Length == 1 && spans.Count(s => before[0].Low < s.High && s.Low < before[0].High) == 1;
                Run run = goesOn ? before[0] : new Run();
                run.Add(fromX, toX, low, high);
                next.Add(run);
            }

            done.AddRange(open.Except(next));
            open = next;
        }

        return [.. done.Concat(open).Select(r => r.Outline())];
    }

    // Ends of boxes that touch may be a rounding apart: one cut serves both.
    private static IEnumerable<double> Apart(IEnumerable<double> ordered)
    {
        double last = double.NegativeInfinity;
        foreach (double x in ordered.Where(x => x - last > Tolerances.JoinMm))
        {
            yield return last = x;
        }
    }

    private static List<(double Low, double High)> Spans(IEnumerable<Bounds> covering)
    {
        List<(double Low, double High)> spans = [];
        foreach (Bounds box in covering.OrderBy(b => b.MinY))
        {
            if (spans.Count > 0 && box.MinY <= spans[^1].High)
            {
                spans[^1] = (spans[^1].Low, Math.Max(spans[^1].High, box.MaxY));
            }
            else
            {
                spans.Add((box.MinY, box.MaxY));
            }
        }

        return spans;
    }

    private sealed class Run
    {
        private readonly List<Point> _under = [];
        private readonly List<Point> _over = [];

        public double Low { get; private set; }

        public double High { get; private set; }

        public void Add(double fromX, double toX, double low, double high)
        {
            Append(_under, fromX, toX, low);
            Append(_over, fromX, toX, high);
            (Low, High) = (low, high);
        }

        public Outline Outline()
        {
            Point[] corners = [.. _under, .. Enumerable.Reverse(_over)];
            return new(new Contour(corners.Select((c, i) => new Segment(c, corners[(i + 1) % corners.Length]))));
        }

        private static void Append(List<Point> line, double fromX, double toX, double z)
        {
            if (line.Count > 0 && Math.Abs(line[^1].Y - z) <= Tolerances.JoinMm)
            {
                line[^1] = new(toX, line[^1].Y);
                return;
            }

            line.Add(new(fromX, z));
            line.Add(new(toX, z));
        }
    }
}
