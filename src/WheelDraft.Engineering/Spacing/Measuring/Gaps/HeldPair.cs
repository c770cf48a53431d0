namespace WheelDraft.Engineering;

/// <summary>Two bends of a string in one place, where the edges over which it bends meet.</summary>
internal static class HeldPair
{
    /// <summary>Bends nearer than this to each other are in one place, mm.</summary>
    internal const double TogetherMm = 1e-5;

    /// <summary>Less than this, for a step of 1, is rounding.</summary>
    private const double Rounding = 1e-9;

    /// <summary>Whether moving both at once, each along its edge, makes a string no shorter.</summary>
    /// <remarks>Its length is convex, so no other step in any direction would either. For steps x and y it grows by a·x + b·y + |x·u − y·v|, with the directions u and v of the edges and the pulls
    /// a and b of what lies before and behind.</remarks>
    /// <param name="places">The place before, that of both, and the one behind.</param>
    /// <param name="first">Edge of the first.</param>
    /// <param name="second">Edge of the second.</param>
    internal static bool IsTight((SpacePoint Before, SpacePoint Both, SpacePoint Behind) places, StringEdge first, StringEdge second)
    {
        SpaceVector u = StringBound.Direction(first.Start, first.End), v = StringBound.Direction(second.Start, second.End);
        double a = StringBound.Direction(places.Before, places.Both).Dot(u), b = StringBound.Direction(places.Behind, places.Both).Dot(v), along = u.Dot(v);
        foreach (int x in Senses(first, places.Both))
        {
            foreach (int y in Senses(second, places.Both))
            {
                if (!Holds(x * a, y * b, x * y * along))
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>Which way a place can move along an edge.</summary>
    private static IEnumerable<int> Senses(StringEdge edge, SpacePoint at)
    {
        if (at.DistanceTo(edge.End) > TogetherMm)
        {
            yield return 1;
        }

        if (at.DistanceTo(edge.Start) > TogetherMm)
        {
            yield return -1;
        }
    }

    /// <summary>Whether no steps of at least 0 shorten it: of a·x + b·y, taken as a share of |x·u − y·v|, the least is −1 or more.</summary>
    private static bool Holds(double a, double b, double along)
    {
        double across = 1 - (along * along);
        if (across < Rounding)
        {
            return along < 0 || a + b >= -Rounding;
        }

        bool isBetween = a + (along * b) < 0 && b + (along * a) < 0;
        return !isBetween || (a * a) + (b * b) + (2 * along * a * b) <= across * (1 + Rounding);
    }
}
