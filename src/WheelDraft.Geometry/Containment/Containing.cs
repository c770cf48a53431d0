namespace WheelDraft.Geometry;

// The chapter "Containment": whether points lie in shapes. It stands above distances, which it asks, and below everything
// that asks about material and void.

/// <summary>Where points lie with regard to contours and outlines.</summary>
public static class Containing
{
    /// <summary>How often a contour goes round a point: 1 inside an anticlockwise one, −1 inside a clockwise one, 0 outside.</summary>
    /// <remarks>A point within rounding of the path may be given to either side; ask <see cref="Locate(Contour, Point, double)"/> where that matters.</remarks>
    public static int Winding(this Contour contour, Point p)
    {
        ArgumentNullException.ThrowIfNull(contour);
        IReadOnlyList<Piece> pieces = contour.Pieces;
        int winding = 0;
        for (int i = 0; i < pieces.Count; i++)
        {
            winding += Geometry.Winding.Of(pieces[i], pieces[i].Start, pieces[(i + 1) % pieces.Count].Start, p);
        }

        return winding;
    }

    /// <summary>Whether a point lies inside, outside or on a contour, in either direction of travel.</summary>
    /// <param name="contour">The contour.</param>
    /// <param name="p">The point.</param>
    /// <param name="toleranceMm">How near the path counts as on it, mm.</param>
    public static Whereabouts Locate(this Contour contour, Point p, double toleranceMm = Tolerances.TouchMm)
    {
        ArgumentNullException.ThrowIfNull(contour);
        return contour.Pieces.Any(piece => p.DistanceTo(piece.NearestTo(p)) <= toleranceMm) ? Whereabouts.OnEdge
            : contour.Winding(p) != 0 ? Whereabouts.Inside
            : Whereabouts.Outside;
    }

    /// <summary>Whether a point lies in the material of an outline, in the void or on an edge.</summary>
    /// <param name="outline">The outline.</param>
    /// <param name="p">The point.</param>
    /// <param name="toleranceMm">How near an edge counts as on it, mm.</param>
    public static Whereabouts Locate(this Outline outline, Point p, double toleranceMm = Tolerances.TouchMm) =>
        outline.Edges().Nearest(p).DistanceMm <= toleranceMm ? Whereabouts.OnEdge
            : outline.Edges().Winding(p) > 0 ? Whereabouts.Inside
            : Whereabouts.Outside;

    /// <summary>Whether an outline, its edge included, contains a point.</summary>
    public static bool Contains(this Outline outline, Point p) => outline.Locate(p) != Whereabouts.Outside;

    /// <summary>How often all contours of an outline together go round a point: 1 in the material, 0 in the void, when they are sound.</summary>
    internal static int Winding(this Outline outline, Point p) => outline.Contours.Sum(c => c.Winding(p));

    /// <summary>The pieces of an outline prepared for searches; made at the first question and kept.</summary>
    internal static Boundary Edges(this Outline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return outline.Kept(static o => new Boundary(o.Contours));
    }
}
