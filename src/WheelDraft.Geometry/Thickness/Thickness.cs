namespace WheelDraft.Geometry;

/// <summary>How thin the material is at its thinnest, and how narrow the void.</summary>
/// <remarks>The least |pq| over points p and q of the edge with pq normal to the edge at both (or in the fan of normals of a
/// corner that pokes in), where the open disc on pq as diameter is empty of edges and lies in the material (in the void for
/// slots). Where two edges run parallel or concentric there is a common normal along a whole stretch; the disc is then
/// tried between all places where its emptiness can change, so nothing is sampled. Widths are exact to 1e-11 mm; a disc
/// that another edge enters by less than <see cref="Tolerances.TouchMm"/> counts as empty; parallel means within 1e-9 rad.
/// A wedge that tapers to a point or to a convex corner has no common normal and so no width of its own.</remarks>
public static class Thickness
{
    /// <summary>The thinnest place of the material; nothing when no two edges face each other through it.</summary>
    /// <param name="outline">The shape.</param>
    /// <param name="belowMm">Only a thinner place is looked for, mm, which is the quicker the less it is; all when it is left out.</param>
    /// <exception cref="ArgumentNullException">There is no outline.</exception>
    public static Nearest? LeastWeb(Outline outline, double belowMm = double.PositiveInfinity)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return new FacingEdges([.. outline.Contours]).Narrowest(inside: 1, belowMm);
    }

    /// <summary>The narrowest place of the void, in holes, notches and between the shapes; nothing when no two edges face
    /// each other across it.</summary>
    /// <param name="outlines">Shapes that do not overlap.</param>
    public static Nearest? LeastSlot(params IEnumerable<Outline> outlines) => LeastSlot(outlines, double.PositiveInfinity);

    /// <summary>The narrowest place of the void that is narrower than a width; nothing when there is none.</summary>
    /// <param name="outlines">Shapes that do not overlap.</param>
    /// <param name="belowMm">The width, mm.</param>
    public static Nearest? LeastSlot(IEnumerable<Outline> outlines, double belowMm)
    {
        ArgumentNullException.ThrowIfNull(outlines);
        return new FacingEdges([.. outlines.SelectMany(o => o.Contours).Select(c => c.Reversed())]).Narrowest(inside: 0, belowMm);
    }
}
