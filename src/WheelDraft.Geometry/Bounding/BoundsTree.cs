namespace WheelDraft.Geometry;

/// <summary>A tree of bounds over numbered items, so that searches visit few of them.</summary>
/// <remarks>A bounding-volume hierarchy split at the median of the longer side, in flat arrays; building costs n log² n.
/// The order of visits is fixed by the items alone, so equal input gives equal answers.</remarks>
internal sealed partial class BoundsTree
{
    // Four boxes a leaf: measured flat between 2 and 8; larger leaves measure more pairs, smaller ones walk more nodes.
    private const int LeafSize = 4;

    private readonly Bounds[] _itemBounds;
    private readonly int[] _items;
    private readonly Bounds[] _nodes;
    private readonly int[] _first;
    private readonly int[] _count;
    private readonly int[] _right;
    private int _used;

    internal BoundsTree(Bounds[] itemBounds)
    {
        _itemBounds = itemBounds;
        _items = [.. Enumerable.Range(0, itemBounds.Length)];
        int most = Math.Max(1, 2 * itemBounds.Length);
        _nodes = new Bounds[most];
        _first = new int[most];
        _count = new int[most];
        _right = new int[most];
        if (itemBounds.Length > 0)
        {
            Build(0, itemBounds.Length);
        }
    }

    /// <summary>Bounds of all items; null when there are none.</summary>
    internal Bounds? All => _used > 0 ? _nodes[0] : null;

    /// <summary>The search for what is nearest to a place: gives items in the order of their promise while whoever asks narrows the limit.</summary>
    /// <param name="place">Where the search starts from.</param>
    /// <param name="limitMm">Items whose bounds lie this far or further are left out, mm.</param>
    internal NearestSearch From(Bounds place, double limitMm) => new(this, place, limitMm);

    /// <summary>Every item whose bounds touch an area.</summary>
    internal OverlapSearch Overlapping(Bounds area) => new(this, area);

    /// <summary>The search for the nearest pair of items of two trees, in the order of their promise.</summary>
    /// <param name="other">The other tree, or the same.</param>
    /// <param name="limitMm">Pairs whose bounds lie this far apart or further are left out, mm.</param>
    internal PairSearch Beside(BoundsTree other, double limitMm) => new(this, other, limitMm);

    private int Build(int first, int count)
    {
        int node = _used++;
        Bounds all = _itemBounds[_items[first]];
        for (int i = 1; i < count; i++)
        {
            all = all.With(_itemBounds[_items[first + i]]);
        }

        _nodes[node] = all;
        _first[node] = first;
        if (count <= LeafSize)
        {
            _count[node] = count;
            return node;
        }

        bool wide = all.Width >= all.Height;
        double[] keys = new double[count];
        for (int i = 0; i < count; i++)
        {
            Point centre = _itemBounds[_items[first + i]].Centre;
            keys[i] = wide ? centre.X : centre.Y;
        }

        keys.AsSpan().Sort(_items.AsSpan(first, count));
        Build(first, count / 2);
        _right[node] = Build(first + (count / 2), count - (count / 2));
        return node;
    }

    private static (int Near, int Far) Ordered(BoundsTree tree, int node, Bounds place)
    {
        int left = node + 1;
        int right = tree._right[node];
        return tree._nodes[right].DistanceTo(place) < tree._nodes[left].DistanceTo(place) ? (right, left) : (left, right);
    }

    private static double Size(Bounds b) => Math.Max(b.Width, b.Height);
}
