using System.Runtime.CompilerServices;

namespace WheelDraft.Geometry;

/// <content>Searches, each a walk over the tree with the nodes still to be looked into in a stack of its own: nothing is allotted.</content>
internal sealed partial class BoundsTree
{
    /// <summary>Gives items nearest first, as far as their bounds promise; each that is nearer narrows <see cref="LimitMm"/>.</summary>
    internal struct NearestSearch
    {
        private readonly BoundsTree _tree;
        private readonly Bounds _place;
        private Nodes _open;
        private int _count;
        private int _at;
        private int _end;

        internal NearestSearch(BoundsTree tree, Bounds place, double limitMm)
        {
            (_tree, _place, LimitMm) = (tree, place, limitMm);
            _count = Math.Min(1, tree._used);
        }

        /// <summary>Items whose bounds lie this far or further are left out, mm.</summary>
        internal double LimitMm { get; set; }

        /// <summary>The next item that may be nearer than the limit; false when there is none.</summary>
        internal bool Next(out int item)
        {
            BoundsTree tree = _tree;
            while (true)
            {
                while (_at < _end)
                {
                    item = tree._items[_at++];
                    if (tree._itemBounds[item].DistanceTo(_place) < LimitMm)
                    {
                        return true;
                    }
                }

                if (_count == 0)
                {
                    item = -1;
                    return false;
                }

                int node = _open[--_count];
                if (!(tree._nodes[node].DistanceTo(_place) < LimitMm))
                {
                    continue;
                }

                if (tree._count[node] > 0)
                {
                    (_at, _end) = (tree._first[node], tree._first[node] + tree._count[node]);
                    continue;
                }

                (_open[_count + 1], _open[_count]) = Ordered(tree, node, _place);
                _count += 2;
            }
        }
    }

    /// <summary>Gives every item whose bounds touch an area.</summary>
    internal struct OverlapSearch
    {
        private readonly BoundsTree _tree;
        private readonly Bounds _area;
        private Nodes _open;
        private int _count;
        private int _at;
        private int _end;

        internal OverlapSearch(BoundsTree tree, Bounds area)
        {
            (_tree, _area) = (tree, area);
            _count = Math.Min(1, tree._used);
        }

        /// <summary>The item found last.</summary>
        public int Current { get; private set; }

        /// <summary>This search, for a loop over it.</summary>
        public readonly OverlapSearch GetEnumerator() => this;

        /// <summary>Looks for the next item; false when there is none.</summary>
        public bool MoveNext()
        {
            BoundsTree tree = _tree;
            while (true)
            {
                while (_at < _end)
                {
                    int item = tree._items[_at++];
                    if (tree._itemBounds[item].Overlaps(_area))
                    {
                        Current = item;
                        return true;
                    }
                }

                if (_count == 0)
                {
                    return false;
                }

                int node = _open[--_count];
                if (!tree._nodes[node].Overlaps(_area))
                {
                    continue;
                }

                if (tree._count[node] > 0)
                {
                    (_at, _end) = (tree._first[node], tree._first[node] + tree._count[node]);
                    continue;
                }

                (_open[_count], _open[_count + 1]) = (tree._right[node], node + 1);
                _count += 2;
            }
        }
    }

    /// <summary>Gives pairs of items of two trees nearest first, as far as their bounds promise; each that is nearer narrows <see cref="LimitMm"/>.</summary>
    internal struct PairSearch
    {
        private readonly BoundsTree _tree;
        private readonly BoundsTree _other;
        private Nodes _open;
        private Nodes _openOther;
        private int _count;
        private (int At, int End) _items;
        private (int At, int End) _others;
        private int _leafOther;

        internal PairSearch(BoundsTree tree, BoundsTree other, double limitMm)
        {
            (_tree, _other, LimitMm) = (tree, other, limitMm);
            _count = Math.Min(1, Math.Min(tree._used, other._used));
        }

        /// <summary>Pairs whose bounds lie this far apart or further are left out, mm.</summary>
        internal double LimitMm { get; set; }

        /// <summary>The next pair that may be nearer than the limit; false when there is none.</summary>
        internal bool Next(out int item, out int other)
        {
            while (true)
            {
                for (; _items.At < _items.End; _items.At++, _others.At = _others.End - _other._count[_leafOther])
                {
                    item = _tree._items[_items.At];
                    while (_others.At < _others.End)
                    {
                        other = _other._items[_others.At++];
                        if (_tree._itemBounds[item].DistanceTo(_other._itemBounds[other]) < LimitMm)
                        {
                            return true;
                        }
                    }
                }

                if (_count == 0)
                {
                    (item, other) = (-1, -1);
                    return false;
                }

                Open(_open[--_count], _openOther[_count]);
            }
        }

        private void Open(int node, int otherNode)
        {
            (Bounds bounds, Bounds otherBounds) = (_tree._nodes[node], _other._nodes[otherNode]);
            if (bounds.DistanceTo(otherBounds) >= LimitMm)
            {
                return;
            }

            bool leaf = _tree._count[node] > 0, otherLeaf = _other._count[otherNode] > 0;
            if (leaf && otherLeaf)
            {
                _items = (_tree._first[node], _tree._first[node] + _tree._count[node]);
                _others = (_other._first[otherNode], _other._first[otherNode] + _other._count[otherNode]);
                _leafOther = otherNode;
                return;
            }

            if (otherLeaf || (!leaf && Size(bounds) >= Size(otherBounds)))
            {
                (int near, int far) = Ordered(_tree, node, otherBounds);
                (_open[_count], _openOther[_count]) = (far, otherNode);
                (_open[_count + 1], _openOther[_count + 1]) = (near, otherNode);
            }
            else
            {
                (int near, int far) = Ordered(_other, otherNode, bounds);
                (_open[_count], _openOther[_count]) = (node, far);
                (_open[_count + 1], _openOther[_count + 1]) = (node, near);
            }

            _count += 2;
        }
    }

    // A walk keeps one node a level, and trees split at the median have fewer levels than this: two of them together, for any number of items that memory holds.
    [InlineArray(64)]
    private struct Nodes
    {
        private int _first;
    }
}
