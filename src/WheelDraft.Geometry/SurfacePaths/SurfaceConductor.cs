namespace WheelDraft.Geometry;

/// <summary>A conductor on a surface, made ready for paths: its pieces, its corners, and on which side of borders it stands.</summary>
internal sealed class SurfaceConductor
{
    private readonly Dictionary<int, (bool Inside, bool Outside)> _stands = [];
    private readonly IReadOnlyList<Footprint> _footprints;
    private Boundary? _edges;

    internal SurfaceConductor(IReadOnlyList<Footprint> footprints, IReadOnlyList<SurfaceBorder> borders)
    {
        _footprints = footprints;
        Pieces = [.. footprints.SelectMany(f => f.Outline.Pieces)];
        List<Point> corners = [.. Pieces.Select(p => p.Start)];
        foreach (SurfaceBorder border in borders)
        {
            AddCutsWith(border, corners);
        }

        Corners = corners;
        Bounds = footprints.Select(f => f.Outline.Bounds).Aggregate((a, b) => a.With(b));
    }

    /// <summary>All pieces of its outlines.</summary>
    internal IReadOnlyList<Piece> Pieces { get; }

    /// <summary>Ends of pieces, and where borders cut them.</summary>
    internal IReadOnlyList<Point> Corners { get; }

    internal Bounds Bounds { get; }

    internal IReadOnlyList<Footprint> Footprints => _footprints;

    /// <summary>Whether part of it stands on this side of a border.</summary>
    internal bool Stands(SurfaceBorder border, bool inside)
    {
        (bool isInside, bool isOutside) = _stands[border.Bit];
        return inside ? isInside : isOutside;
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
        foreach (Piece a in Pieces)
        {
            foreach (Piece b in other.Pieces)
            {
                BorderCuts.Add(a, b, cuts);
                if (cuts.Count > 0 && MeetWithin(a, b, cuts))
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

    private void AddCutsWith(SurfaceBorder border, List<Point> corners)
    {
        bool inside = false, outside = false, runsAlong = false;
        List<double> cuts = [];
        foreach (Piece piece in Pieces)
        {
            cuts.Clear();
            foreach (Piece wall in border.Pieces)
            {
                BorderCuts.Add(piece, wall, cuts);
            }

            corners.AddRange(cuts.Select(piece.PointAt));
            foreach (Stretch s in border.Stretches(piece, piece.Bounds, BorderCuts.OnBorderMm, ref runsAlong))
            {
                inside |= s.Inside;
                outside |= !s.Inside;
            }
        }

        if (border.Bit >= 0)
        {
            // A conductor that only runs along the border stands where its material is.
            _stands[border.Bit] = inside || outside ? (inside, outside) : (false, true);
        }
    }
}
