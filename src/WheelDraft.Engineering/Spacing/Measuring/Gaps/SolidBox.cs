using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>An upright box round a solid with its tolerances: in the plan, or over radius and height for what is seen over a whole turn.</summary>
internal readonly record struct SolidBox(double MinX, double MaxX, double MinY, double MaxY, double MinZ, double MaxZ)
{
    /// <summary>Round the solid where it is drawn.</summary>
    internal static SolidBox InPlan(Solid s)
    {
        Bounds b = s.Outline.Bounds.Grown(s.Tolerance.InPlanMm);
        return new(b.MinX, b.MaxX, b.MinY, b.MaxY, s.FromZMm - s.Tolerance.InHeightMm, s.ToZMm + s.Tolerance.InHeightMm);
    }

    /// <summary>Its radii instead of its plan: the gap of two such boxes is the worst gap over the whole turn itself.</summary>
    internal static SolidBox ByRadius(Solid s, RadialInterval radii) => new(
        radii.LeastMm - s.Tolerance.InPlanMm,
        radii.GreatestMm + s.Tolerance.InPlanMm,
        0,
        0,
        s.FromZMm - s.Tolerance.InHeightMm,
        s.ToZMm + s.Tolerance.InHeightMm);

    internal SolidBox With(SolidBox o) => new(
        Math.Min(MinX, o.MinX), Math.Max(MaxX, o.MaxX), Math.Min(MinY, o.MinY), Math.Max(MaxY, o.MaxY), Math.Min(MinZ, o.MinZ), Math.Max(MaxZ, o.MaxZ));

    /// <summary>Gap of two boxes, mm: never more than that of what is inside.</summary>
    internal double GapMm(SolidBox o)
    {
        double x = Math.Max(0, Math.Max(o.MinX - MaxX, MinX - o.MaxX));
        double y = Math.Max(0, Math.Max(o.MinY - MaxY, MinY - o.MaxY));
        double z = Math.Max(0, Math.Max(o.MinZ - MaxZ, MinZ - o.MaxZ));
        return Math.Sqrt((x * x) + (y * y) + (z * z));
    }

    internal double Size => Math.Max(MaxX - MinX, Math.Max(MaxY - MinY, MaxZ - MinZ));
}

/// <summary>A tree of boxes over solids, halved along the longest side; pairs of two trees come out nearest first.</summary>
/// <remarks>Pairs by increasing bound from two hierarchies: G. R. Hjaltason and H. Samet, Incremental distance join algorithms for spatial
/// databases, SIGMOD 1998. Building costs n log² n; the order is fixed by the solids alone.</remarks>
internal sealed class SolidTree
{
    private readonly SolidBox[] _boxes;
    private readonly int[] _solids;
    private readonly List<TreeNode> _nodes = [];

    internal SolidTree(IReadOnlyList<SolidBox> boxes)
    {
        _boxes = [.. boxes];
        _solids = [.. Enumerable.Range(0, _boxes.Length)];
        if (_boxes.Length > 0)
        {
            Build(0, _boxes.Length);
        }
    }

    /// <summary>Pairs of solids with the gap of their boxes, in ascending order of it.</summary>
    internal IEnumerable<(int First, int Second, double LeastMm)> Pairs(SolidTree other)
    {
        if (_nodes.Count == 0 || other._nodes.Count == 0)
        {
            yield break;
        }

        PriorityQueue<(int First, int Second), (double, int, int)> open = new();
        Push(open, other, 0, 0);
        while (open.TryDequeue(out (int First, int Second) pair, out (double Gap, int, int) at))
        {
            TreeNode a = _nodes[pair.First], b = other._nodes[pair.Second];
            if (a.IsLeaf && b.IsLeaf)
            {
                yield return (a.Solid, b.Solid, at.Gap);
            }
            else if (b.IsLeaf || (!a.IsLeaf && a.Box.Size >= b.Box.Size))
            {
                Push(open, other, pair.First + 1, pair.Second);
                Push(open, other, a.Right, pair.Second);
            }
            else
            {
                Push(open, other, pair.First, pair.Second + 1);
                Push(open, other, pair.First, b.Right);
            }
        }
    }

    private void Push(PriorityQueue<(int First, int Second), (double, int, int)> open, SolidTree other, int first, int second) =>
        open.Enqueue((first, second), (_nodes[first].Box.GapMm(other._nodes[second].Box), first, second));

    private int Build(int first, int count)
    {
        int node = _nodes.Count;
        SolidBox all = _boxes[_solids[first]];
        for (int i = 1; i < count; i++)
        {
            all = all.With(_boxes[_solids[first + i]]);
        }

        _nodes.Add(new TreeNode(all, count == 1 ? _solids[first] : -1, -1));
        if (count > 1)
        {
            Halve(all, first, count);
            Build(first, count / 2);
            int right = Build(first + (count / 2), count - (count / 2));
            _nodes[node] = _nodes[node] with { Right = right };
        }

        return node;
    }

    private void Halve(SolidBox all, int first, int count)
    {
        Func<SolidBox, double> middle = all.MaxX - all.MinX == all.Size ? b => b.MinX + b.MaxX
            : all.MaxY - all.MinY == all.Size ? b => b.MinY + b.MaxY
            : b => b.MinZ + b.MaxZ;
        double[] keys = new double[count];
        for (int i = 0; i < count; i++)
        {
            keys[i] = middle(_boxes[_solids[first + i]]);
        }

        keys.AsSpan().Sort(_solids.AsSpan(first, count));
    }

    private readonly record struct TreeNode(SolidBox Box, int Solid, int Right)
    {
        internal bool IsLeaf => Solid >= 0;
    }
}
