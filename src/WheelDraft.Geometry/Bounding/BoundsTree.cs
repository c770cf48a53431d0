namespace WheelDraft.Geometry;

/// <summary>A tree of bounds over numbered items, so that searches visit few of them.</summary>
/// <remarks>A bounding-volume hierarchy split at the median of the longer side, in flat arrays; building costs n log² n.
/// The order of visits is fixed by the items alone, so equal input gives equal answers.</remarks>
internal sealed class BoundsTree
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

    /// <summary>Visits items in the order of their promise and narrows the limit by what each gives; returns the last limit.</summary>
    /// <param name="place">Where the search starts from.</param>
    /// <param name="limit">Items whose bounds lie this far or further are left out, mm.</param>
    /// <param name="distanceOf">The distance of an item, mm; never less than that of its bounds.</param>
    internal double Nearest(Bounds place, double limit, Func<int, double> distanceOf) =>
        _used == 0 ? limit : Nearest(0, place, limit, distanceOf);

    /// <summary>Visits every item whose bounds touch an area.</summary>
    internal void Overlapping(Bounds area, Action<int> visit)
    {
        if (_used > 0)
        {
            Overlapping(0, area, visit);
        }
    }

    /// <summary>Visits pairs of items of two trees in the order of their promise and narrows the limit by what each gives.</summary>
    internal double NearestPair(BoundsTree other, double limit, Func<int, int, double> distanceOf) =>
        _used == 0 || other._used == 0 ? limit : NearestPair(0, other, 0, limit, distanceOf);

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

    private double Nearest(int node, Bounds place, double limit, Func<int, double> distanceOf)
    {
        if (_count[node] > 0)
        {
            for (int i = _first[node]; i < _first[node] + _count[node]; i++)
            {
                if (_itemBounds[_items[i]].DistanceTo(place) < limit)
                {
                    limit = Math.Min(limit, distanceOf(_items[i]));
                }
            }

            return limit;
        }

        int near = node + 1;
        int far = _right[node];
        double nearGap = _nodes[near].DistanceTo(place);
        double farGap = _nodes[far].DistanceTo(place);
        if (farGap < nearGap)
        {
            (near, far, nearGap, farGap) = (far, near, farGap, nearGap);
        }

        limit = nearGap < limit ? Nearest(near, place, limit, distanceOf) : limit;
        return farGap < limit ? Nearest(far, place, limit, distanceOf) : limit;
    }

    private void Overlapping(int node, Bounds area, Action<int> visit)
    {
        if (!_nodes[node].Overlaps(area))
        {
            return;
        }

        if (_count[node] == 0)
        {
            Overlapping(node + 1, area, visit);
            Overlapping(_right[node], area, visit);
            return;
        }

        for (int i = _first[node]; i < _first[node] + _count[node]; i++)
        {
            if (_itemBounds[_items[i]].Overlaps(area))
            {
                visit(_items[i]);
            }
        }
    }

    private double NearestPair(int node, BoundsTree other, int otherNode, double limit, Func<int, int, double> distanceOf)
    {
        if (_nodes[node].DistanceTo(other._nodes[otherNode]) >= limit)
        {
            return limit;
        }

        bool leaf = _count[node] > 0;
        bool otherLeaf = other._count[otherNode] > 0;
        if (leaf && otherLeaf)
        {
            return LeafPairs(node, other, otherNode, limit, distanceOf);
        }

        if (otherLeaf || (!leaf && Size(_nodes[node]) >= Size(other._nodes[otherNode])))
        {
            (int near, int far) = Ordered(this, node, other._nodes[otherNode]);
            limit = NearestPair(near, other, otherNode, limit, distanceOf);
            return NearestPair(far, other, otherNode, limit, distanceOf);
        }

        (int first, int second) = Ordered(other, otherNode, _nodes[node]);
        limit = NearestPair(node, other, first, limit, distanceOf);
        return NearestPair(node, other, second, limit, distanceOf);
    }

    private double LeafPairs(int node, BoundsTree other, int otherNode, double limit, Func<int, int, double> distanceOf)
    {
        for (int i = _first[node]; i < _first[node] + _count[node]; i++)
        {
            int item = _items[i];
            for (int j = other._first[otherNode]; j < other._first[otherNode] + other._count[otherNode]; j++)
            {
                int otherItem = other._items[j];
                if (_itemBounds[item].DistanceTo(other._itemBounds[otherItem]) < limit)
                {
                    limit = Math.Min(limit, distanceOf(item, otherItem));
                }
            }
        }

        return limit;
    }

    private static (int Near, int Far) Ordered(BoundsTree tree, int node, Bounds place)
    {
        int left = node + 1;
        int right = tree._right[node];
        return tree._nodes[right].DistanceTo(place) < tree._nodes[left].DistanceTo(place) ? (right, left) : (left, right);
    }

    private static double Size(Bounds b) => Math.Max(b.Width, b.Height);
}
