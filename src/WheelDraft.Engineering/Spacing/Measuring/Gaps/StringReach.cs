using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The edges that a string can bend over, by number, and how long it is at least over some of them.</summary>
/// <remarks>A string that touches two things is no shorter than they are apart in plan and height; so no order of edges undercuts any chain of such
/// distances over some of its edges. Each distance is found once.</remarks>
internal sealed class StringReach
{
    /// <summary>Taken off, mm: far above rounding and stretches too short to be pieces, far below what decides between two orders.</summary>
    internal const double OffMm = 1e-7;

    private readonly IReadOnlyList<RibBox> _boxes;
    private readonly IReadOnlyList<StringEdge>?[] _edges;
    private readonly StringEnd[] _ends;
    private readonly Dictionary<(int, int), double> _apart = [];

    internal StringReach(StringEnd from, StringEnd to, IReadOnlyList<RibBox> boxes)
    {
        (_boxes, _ends) = (boxes, [from, to]);
        _edges = new IReadOnlyList<StringEdge>?[boxes.Count];
    }

    internal StringEdge this[int number] => EdgesOf(number / RibBox.EdgeCount)[number % RibBox.EdgeCount];

    /// <summary>The number of an edge.</summary>
    internal static int NumberOf(int box, int edge) => (box * RibBox.EdgeCount) + edge;

    /// <summary>No string over these edges in this order is shorter, mm.</summary>
    internal double LeastMm(ReadOnlySpan<int> edges)
    {
        // The longest chain from one end over some of the edges to the other.
        Span<double> at = stackalloc double[edges.Length];
        double least = 0;
        for (int i = 0; i < edges.Length; i++)
        {
            at[i] = FromEnd(0, edges[i]);
            for (int k = 0; k < i; k++)
            {
                at[i] = Math.Max(at[i], at[k] + Apart(edges[k], edges[i]));
            }

            least = Math.Max(least, at[i] + FromEnd(1, edges[i]));
        }

        return Math.Max(0, least - OffMm);
    }

    private IReadOnlyList<StringEdge> EdgesOf(int box) => _edges[box] ??= _boxes[box].Edges;

    private double FromEnd(int end, int edge) => Known((~end, edge), this, static (at, key) => FromEnd(at._ends[~key.Item1], at[key.Item2]));

    private double Apart(int a, int b) => Known((Math.Min(a, b), Math.Max(a, b)), this, static (at, key) => Apart(at[key.Item1], at[key.Item2]));

    private double Known((int, int) key, StringReach at, Func<StringReach, (int, int), double> find)
    {
        if (!_apart.TryGetValue(key, out double apart))
        {
            apart = find(at, key);
            _apart.Add(key, apart);
        }

        return apart;
    }

    private static double FromEnd(StringEnd end, StringEdge edge) =>
        SolidPair.Hypotenuse(InPlan(edge, end.Outline), GapMm(edge.LowMm, edge.HighMm, end.FromZMm, end.ToZMm));

    private static double Apart(StringEdge a, StringEdge b)
    {
        double plan = (a.Plan, b.Plan) switch
        {
            ({ } first, { } second) => Distances.Between(first, second).DistanceMm,
            ({ } first, null) => Distances.Between(b.Start.Plan, first).DistanceMm,
            (null, { } second) => Distances.Between(a.Start.Plan, second).DistanceMm,
            _ => a.Start.Plan.DistanceTo(b.Start.Plan),
        };
        return SolidPair.Hypotenuse(plan, GapMm(a.LowMm, a.HighMm, b.LowMm, b.HighMm));
    }

    private static double InPlan(StringEdge edge, Outline outline)
    {
        double least = Distances.Between(edge.Start.Plan, outline).DistanceMm;
        if (edge.Plan is { } stretch && least > 0)
        {
            foreach (Piece piece in outline.Pieces)
            {
                if (piece.Bounds.DistanceTo(stretch.Bounds) < least)
                {
                    least = Math.Min(least, Distances.Between(stretch, piece).DistanceMm);
                }
            }
        }

        return least;
    }

    private static double GapMm(double low, double high, double otherLow, double otherHigh) => Math.Max(0, Math.Max(low - otherHigh, otherLow - high));
}
