namespace WheelDraft.Geometry;

/// <summary>Pairs of pieces that may meet: those with parts whose bounds come near each other.</summary>
internal sealed class NearPairs
{
    private readonly List<Bounds>[] _parts;
    private readonly List<int> _owners = [];
    private readonly int[] _seenBy;
    private readonly BoundsTree _tree;

    internal NearPairs(IReadOnlyList<Piece> pieces)
    {
        double longest = Parts.LongestMm([.. pieces.Select(p => p.Bounds)]);
        _parts = [.. pieces.Select(p => Parts.Of(p, longest).Select(part => part.Bounds).ToList())];
        for (int i = 0; i < _parts.Length; i++)
        {
            _owners.AddRange(Enumerable.Repeat(i, _parts[i].Count));
        }

        _tree = new([.. _parts.SelectMany(p => p)]);
        _seenBy = new int[pieces.Count];
        Array.Fill(_seenBy, -1);
    }

    /// <summary>Later pieces that may meet a piece, in order.</summary>
    internal List<int> After(int piece, double toleranceMm)
    {
        List<int> near = [];
        foreach (Bounds part in _parts[piece])
        {
            foreach (int item in _tree.Overlapping(part.Grown(toleranceMm)))
            {
                int other = _owners[item];
                if (other > piece && _seenBy[other] != piece)
                {
                    _seenBy[other] = piece;
                    near.Add(other);
                }
            }
        }

        near.Sort();
        return near;
    }
}
