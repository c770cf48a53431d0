namespace WheelDraft.Geometry;

/// <summary>How a beam came onto its sheet.</summary>
internal enum BeamEntry
{
    /// <summary>It begins here.</summary>
    Source,

    /// <summary>It begins at an upper edge, linked to a conductor at the foot of the wall.</summary>
    Link,

    /// <summary>From a level onto a wall.</summary>
    OntoWall,

    /// <summary>From a wall onto a level.</summary>
    OffWall,

    /// <summary>From a wall round a corner onto the next.</summary>
    RoundCorner,

    /// <summary>From one upper edge to another across a narrow recess.</summary>
    AcrossRecess,
}

/// <summary>All straight ways from one point that cross the same walls, unfolded into the plane of the sheet where they are now.</summary>
/// <remarks>A sheet is a level (plan coordinates) or a wall (x along it from its first corner, y the level). The point lies where it comes to by
/// unfolding, so lengths on the sheet are lengths from the beginning. J. Chen and Y. Han, Shortest paths on a polyhedron, Proceedings of the 6th
/// ACM Symposium on Computational Geometry (1990), sections 2 and 3.</remarks>
internal sealed class Beam
{
    internal required BeamEntry Entry { get; init; }

    /// <summary>Where it was before; null at its beginning.</summary>
    internal Beam? Before { get; init; }

    /// <summary>The wall that is its sheet; null on a level.</summary>
    internal ReliefEdge? Wall { get; init; }

    /// <summary>The edge across which it came onto its level.</summary>
    internal ReliefEdge? Through { get; init; }

    /// <summary>Whether its level is the upper one of <see cref="Through"/>.</summary>
    internal bool IsHigh { get; init; }

    /// <summary>Where it comes from, unfolded.</summary>
    internal required Point Source { get; init; }

    /// <summary>Its right limit, length 1.</summary>
    internal required Vector Right { get; init; }

    /// <summary>Its left limit, length 1; less than half a turn to the left of the right one.</summary>
    internal required Vector Left { get; init; }

    /// <summary>Added to every distance from the source, mm.</summary>
    internal double OffsetMm { get; init; }

    /// <summary>Distance from the source at which it begins (the radius of a round edge), mm.</summary>
    internal double FromMm { get; init; }

    /// <summary>Edges on which the source lies.</summary>
    internal IReadOnlyList<ReliefEdge> Ignored { get; init; } = [];

    /// <summary>Where a <see cref="BeamEntry.Link"/> begins on the conductor.</summary>
    internal Point LinkedFrom { get; init; }

    /// <summary>Which end of the wall before a <see cref="BeamEntry.RoundCorner"/> left by: whether its first corner.</summary>
    internal bool LeftByFrom { get; init; }

    /// <summary>The edge at the near side of a recess.</summary>
    internal ReliefEdge? Near { get; init; }

    /// <summary>The direction into its sheet, square to the edge that it came across.</summary>
    internal Vector Inward => IsHigh ? Through!.Uphill : -Through!.Uphill;

    /// <summary>How far along a direction its sheet begins, mm.</summary>
    internal double BeginMm(Vector direction) =>
        Through is null ? FromMm : (Through.From - Source).Dot(Inward) / direction.Dot(Inward);

    internal double LengthTo(Point p) => OffsetMm + Source.DistanceTo(p);

    /// <summary>Limits in order: the right one first.</summary>
    internal static (Vector Right, Vector Left) Ordered(Vector a, Vector b) => a.Cross(b) >= 0 ? (a, b) : (b, a);

    /// <summary>The part of a stretch that lies in it; null when it is none.</summary>
    internal (Point First, Point Second)? Clip(Point a, Point b)
    {
        (double from, double to) = (0, 1);
        Vector va = a - Source, vb = b - Source;
        if (!Cut(Right.Cross(va), Right.Cross(vb), ref from, ref to) || !Cut(va.Cross(Left), vb.Cross(Left), ref from, ref to))
        {
            return null;
        }

        return (from == 0 ? a : a.Towards(b, from), to == 1 ? b : a.Towards(b, to));
    }

    /// <summary>Cuts a share of a stretch to where a linear function is not negative.</summary>
    internal static bool Cut(double atStart, double atEnd, ref double from, ref double to) => Narrow(atStart, atEnd, ref from, ref to) && from < to;

    /// <summary>Cuts a share of a stretch like <see cref="Cut"/>; a share of one point stays.</summary>
    internal static bool Narrow(double atStart, double atEnd, ref double from, ref double to)
    {
        if (atStart < 0 && atEnd < 0)
        {
            return false;
        }

        if (atStart < 0)
        {
            from = Math.Max(from, atStart / (atStart - atEnd));
        }
        else if (atEnd < 0)
        {
            to = Math.Min(to, atStart / (atStart - atEnd));
        }

        return from <= to;
    }
}
