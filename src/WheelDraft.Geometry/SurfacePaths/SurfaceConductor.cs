namespace WheelDraft.Geometry;

/// <summary>A conductor on a surface, made ready for paths: its pieces, its corners, and on which side of edges it lies.</summary>
internal sealed class SurfaceConductor
{
    private readonly IReadOnlyList<Footprint> _footprints;
    private Boundary? _edges;

    internal SurfaceConductor(IReadOnlyList<Footprint> footprints, IReadOnlyList<Piece> cutting)
    {
        _footprints = footprints;
        Pieces = [.. footprints.SelectMany(f => f.Outline.Pieces)];
        PieceBounds = [.. Pieces.Select(p => p.Bounds)];
        List<Point> corners = [.. Pieces.Select(p => p.Start)];
        List<double> cuts = [];
        foreach (Piece piece in Pieces)
        {
            foreach (Piece wall in cutting.Where(w => w.Bounds.Grown(SurfaceTolerances.OnBorderMm).Overlaps(piece.Bounds)))
            {
                cuts.Clear();
                BorderCuts.Add(piece, wall, cuts);
                corners.AddRange(cuts.Select(piece.PointAt));
            }
        }

        Corners = corners;
        HighestMm = footprints.Select(f => f.HeightMm).DefaultIfEmpty(0).Max();
        Bounds = footprints.Select(f => f.Outline.Bounds).DefaultIfEmpty().Aggregate((a, b) => a.With(b));
    }

    /// <summary>All pieces of its outlines.</summary>
    internal IReadOnlyList<Piece> Pieces { get; }

    /// <summary>Bounds of each piece.</summary>
    internal IReadOnlyList<Bounds> PieceBounds { get; }

    /// <summary>Ends of pieces, and where borders cut them.</summary>
    internal IReadOnlyList<Point> Corners { get; }

    internal Bounds Bounds { get; }

    /// <summary>How far it stands up from the surface at most, mm.</summary>
    internal double HighestMm { get; }

    internal IReadOnlyList<Footprint> Footprints => _footprints;

    /// <summary>Whether its material, its border included, is at a point.</summary>
    internal bool Covers(Point p) => _footprints.Any(f => BorderCuts.SideOf(f.Outline, p) != Side.Outside);

    /// <summary>Whether a piece reaches to one side of an edge, or bounds material there.</summary>
    /// <param name="piece">Index of the piece.</param>
    /// <param name="edge">The edge, endless.</param>
    /// <param name="side">Square to the edge, towards the side.</param>
    internal bool Reaches(int piece, ReliefEdge edge, Vector side)
    {
        Piece p = Pieces[piece];
        double start = (p.Start - edge.From).Dot(side), end = (p.End - edge.From).Dot(side), middle = (p.PointAt(0.5) - edge.From).Dot(side);
        if (Math.Max(middle, Math.Max(start, end)) > SurfaceTolerances.SameMm)
        {
            return true;
        }

        if (p is Arc arc)
        {
            Point far = arc.Centre + (side * arc.RadiusMm);
            return (far - edge.From).Dot(side) > SurfaceTolerances.SameMm && BorderCuts.IsOnSpan(arc, far);
        }

        return Math.Min(start, end) >= -SurfaceTolerances.SameMm && Covers(p.PointAt(0.5) + (side * SurfaceTolerances.LevelMm));
    }

    /// <summary>How far it stands up from the surface at a point of its outline.</summary>
    internal double HeightAt(Point p)
    {
        double height = 0;
        foreach (Footprint f in _footprints)
        {
            if (BorderCuts.SideOf(f.Outline, p) != Side.Outside)
            {
                height = Math.Max(height, f.HeightMm);
            }
        }

        return height;
    }

    /// <summary>All contours of all footprints in one tree; footprints may overlap, and the material is where they go round at all.</summary>
    private Boundary Edges => _edges ??= new(_footprints.SelectMany(f => f.Outline.Contours));

    /// <summary>The least distance to another conductor, as the crow flies; 0 where they have a point in common.</summary>
    internal Nearest NearestTo(SurfaceConductor other)
    {
        if (Bounds.Overlaps(other.Bounds) && (other.Holds(this) ?? Holds(other)) is Point common)
        {
            return new(0, common, common);
        }

        return Edges.Nearest(other.Edges);
    }

    /// <summary>A point of the other's footprints that lies in this one's material; null when none of their first points does.</summary>
    private Point? Holds(SurfaceConductor other)
    {
        foreach (Footprint footprint in other._footprints)
        {
            Point start = footprint.Outline.Outer.Pieces[0].Start;
            if (Bounds.Contains(start) && Edges.Winding(start) > 0)
            {
                return start;
            }
        }

        return null;
    }

    /// <summary>Whether the two have a point in common.</summary>
    internal bool Touches(SurfaceConductor other)
    {
        if (!Bounds.Overlaps(other.Bounds))
        {
            return false;
        }

        List<double> cuts = [];
        for (int i = 0; i < Pieces.Count; i++)
        {
            Bounds near = PieceBounds[i].Grown(SurfaceTolerances.OnBorderMm + Tolerances.JoinMm);
            for (int k = 0; k < other.Pieces.Count; k++)
            {
                if (!near.Overlaps(other.PieceBounds[k]))
                {
                    continue;
                }

                BorderCuts.Add(Pieces[i], other.Pieces[k], cuts);
                if (cuts.Count > 0 && MeetWithin(Pieces[i], other.Pieces[k], cuts))
                {
                    return true;
                }

                cuts.Clear();
            }
        }

        return Covers(other) || other.Covers(this);
    }

    private static bool MeetWithin(Piece a, Piece b, List<double> cuts) =>
        cuts.Exists(c => BorderCuts.NearestOn(b, a.PointAt(c)).DistanceTo(a.PointAt(c)) <= Tolerances.JoinMm);

    private bool Covers(SurfaceConductor other) =>
        _footprints.Any(f => other._footprints.Any(o => BorderCuts.SideOf(f.Outline, o.Outline.Outer.Pieces[0].Start) != Side.Outside));
}
