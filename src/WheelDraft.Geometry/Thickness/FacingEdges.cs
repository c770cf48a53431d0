namespace WheelDraft.Geometry;

/// <summary>Pairs of edges that face each other through the region on the left of contours.</summary>
internal sealed class FacingEdges
{
    private readonly Boundary _boundary;
    private readonly List<Feature> _features = [];
    private readonly BoundsTree _tree;

    internal FacingEdges(IReadOnlyList<Contour> contours)
    {
        _boundary = new(contours);
        List<Bounds> bounds = [];
        foreach (Boundary.Edge edge in _boundary.Edges)
        {
            _features.Add(Feature.Of(edge.Part));
            bounds.Add(edge.Part.Bounds);
        }

        foreach (Corner corner in contours.SelectMany(c => c.Corners()).Where(c => c.IsReEntrant))
        {
            _features.Add(Feature.Of(corner));
            bounds.Add(Bounds.Of(corner.At));
        }

        _tree = new([.. bounds]);
    }

    /// <summary>The least width of the region; nothing when no two edges face each other.</summary>
    /// <param name="inside">The winding number of the contours in the region.</param>
    /// <param name="belowMm">Only a lesser width is looked for, mm.</param>
    internal Nearest? Narrowest(int inside, double belowMm)
    {
        Nearest? best = null;
        BoundsTree.PairSearch search = _tree.Beside(_tree, belowMm);
        while (search.Next(out int i, out int j))
        {
            foreach (Facing facing in i < j ? Facing.Between(_features[i], _features[j]) : [])
            {
                // Neighbours that run on smoothly face each other across nothing where they join.
                bool isJoint = facing.WidthMm <= Tolerances.JoinMm && _features[i].Joins(_features[j]);
                if (facing.WidthMm < search.LimitMm && !isJoint && FreePlace(facing, inside) is Point middle)
                {
                    best = facing.At(middle);
                    search.LimitMm = facing.WidthMm;
                }
            }
        }

        return best;
    }

    /// <summary>A centre of the disc, on the line midway, for which the disc is empty and in the region.</summary>
    private Point? FreePlace(Facing facing, int inside)
    {
        if (facing.Midway is not Piece midway)
        {
            return IsFree(facing.Middle, facing.WidthMm, inside) ? facing.Middle : null;
        }

        // Mostly the middle will do; where it does not, the disc is tried once between every two changes.
        if (IsFree(facing.Middle, facing.WidthMm, inside))
        {
            return facing.Middle;
        }

        List<double> changes = Changes(midway, facing.WidthMm / 2);
        for (int i = 1; i < changes.Count; i++)
        {
            Point middle = midway.PointAt((changes[i - 1] + changes[i]) / 2);
            if (IsFree(middle, facing.WidthMm, inside))
            {
                return middle;
            }
        }

        return null;
    }

    private bool IsFree(Point middle, double width, int inside) =>
        _boundary.Nearest(middle).DistanceMm >= (width / 2) - Tolerances.TouchMm && _boundary.Winding(middle) == inside;

    /// <summary>Shares of the line midway where an edge comes as near as the radius, in order, with both ends.</summary>
    private List<double> Changes(Piece midway, double radius)
    {
        List<double> shares = [0, 1];
        foreach (int i in _boundary.Tree.Overlapping(midway.Bounds.Grown(radius)))
        {
            Piece edge = _boundary.Edges[i].Part;
            foreach (Piece at in Around(edge, radius))
            {
                Meeting meeting = Intersections.Of(midway, at);
                shares.AddRange(meeting.Points.Select(p => p.ShareOnFirst));
                shares.AddRange(meeting.Stretches.SelectMany(s => new[] { s.From.ShareOnFirst, s.To.ShareOnFirst }));
            }
        }

        shares.Sort();
        return shares;
    }

    /// <summary>Where the points lie that are a radius away from a piece.</summary>
    private static IEnumerable<Piece> Around(Piece piece, double radius)
    {
        yield return new Arc(piece.Start, radius, 0, Angles.TurnRad);
        yield return new Arc(piece.End, radius, 0, Angles.TurnRad);
        if (piece is Segment segment)
        {
            Vector left = segment.Direction.Left * radius;
            yield return new Segment(segment.Start + left, segment.End + left);
            yield return new Segment(segment.Start - left, segment.End - left);
        }
        else if (piece is Arc arc)
        {
            yield return new Arc(arc.Centre, arc.RadiusMm + radius, arc.StartRad, arc.SweepRad);
            double inner = Math.Abs(arc.RadiusMm - radius);
            if (inner > Tolerances.ShortestPieceMm)
            {
                yield return new Arc(arc.Centre, inner, arc.RadiusMm > radius ? arc.StartRad : arc.StartRad + Math.PI, arc.SweepRad);
            }
        }
    }
}
