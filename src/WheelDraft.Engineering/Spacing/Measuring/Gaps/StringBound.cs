using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>How much shorter a string over given edges can still become.</summary>
/// <remarks>Its length is convex in the places where it ends and bends, so nowhere below its tangent there: what tightening can gain is no more than what the
/// tangent falls over the ends and edges on which they lie (M. Frank and P. Wolfe, An algorithm for quadratic programming, Naval Research Logistics
/// Quarterly 3, 1956).</remarks>
internal static class StringBound
{
    /// <summary>Ends of more pieces than this are taken as their bounds.</summary>
    private const int MostPieces = 32;

    /// <summary>No string over these edges is shorter, mm.</summary>
    /// <param name="lengthMm">Length of one that need not be tight, mm.</param>
    /// <param name="places">Where it ends and bends.</param>
    /// <param name="ends">What it ends on.</param>
    /// <param name="edge">The edge of each bend, from 1.</param>
    internal static double LeastMm(double lengthMm, SpacePoint[] places, (StringEnd From, StringEnd To) ends, Func<int, StringEdge> edge)
    {
        double least = lengthMm + Fall(Pull(places, 0), places[0], ends.From) + Fall(Pull(places, places.Length - 1), places[^1], ends.To);
        for (int i = 1; i < places.Length - 1; i++)
        {
            SpaceVector pull = Pull(places, i);
            StringEdge on = edge(i);
            least += Math.Min(0, Math.Min(pull.Dot(Between(places[i], on.Start)), pull.Dot(Between(places[i], on.End))));
        }

        return least;
    }

    /// <summary>How fast the length grows where a place is moved: the sum of the directions from its neighbours.</summary>
    private static SpaceVector Pull(SpacePoint[] places, int i)
    {
        SpaceVector before = i > 0 ? Direction(places[i - 1], places[i]) : default, after = i < places.Length - 1 ? Direction(places[i + 1], places[i]) : default;
        return before + after;
    }

    /// <summary>Least of a linear function over an end, from its value at a place of it.</summary>
    private static double Fall(SpaceVector pull, SpacePoint at, StringEnd end)
    {
        Vector plan = new(pull.X, pull.Y);
        double least = double.PositiveInfinity;
        if (end.Outline.Outer.Pieces.Count > MostPieces)
        {
            Bounds b = end.Outline.Bounds;
            least = plan.Dot(new Point(plan.X > 0 ? b.MinX : b.MaxX, plan.Y > 0 ? b.MinY : b.MaxY) - at.Plan);
        }
        else
        {
            foreach (Piece piece in end.Outline.Outer.Pieces)
            {
                least = Math.Min(least, plan.Dot(piece.Start - at.Plan));
                if (piece is Arc arc)
                {
                    least = Math.Min(least, plan.Dot(arc.Centre - at.Plan) - (arc.RadiusMm * plan.Length));
                }
            }
        }

        return least + Math.Min(pull.Z * (end.FromZMm - at.Z), pull.Z * (end.ToZMm - at.Z));
    }

    /// <summary>The direction from a place to another, length 1; none where they are one.</summary>
    internal static SpaceVector Direction(SpacePoint from, SpacePoint to)
    {
        SpaceVector way = Between(from, to);
        double length = way.Length;
        return length > 0 ? way / length : default;
    }

    private static SpaceVector Between(SpacePoint from, SpacePoint to) => new(to.X - from.X, to.Y - from.Y, to.Z - from.Z);
}
