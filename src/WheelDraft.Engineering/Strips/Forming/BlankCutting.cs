using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Cuts the blank of a formed chain, and says why it cannot be cut.</summary>
internal sealed class BlankCutting
{
    private readonly StripBrief _strip;
    private readonly IReadOnlyList<FormedPiece> _chain;
    private readonly TabDimensions? _tab;
    private readonly Action<string, FormattableString> _refuse;
    private readonly FlatFrame[] _starts;
    private readonly double _insideRadiusMm;

    internal BlankCutting(StripBrief strip, IReadOnlyList<FormedPiece> chain, double insideRadiusMm, Action<string, FormattableString> refuse)
    {
        _strip = strip;
        _chain = chain;
        _tab = strip.Shape[0] is StripTab tab ? TabDimensions.Find(tab.Size) : null;
        _insideRadiusMm = insideRadiusMm;
        _refuse = refuse;
        _starts = new FlatFrame[chain.Count];
        FlatFrame at = new(Point.Origin, 0);
        for (int i = 0; i < chain.Count; i++)
        {
            _starts[i] = at;
            at = at.After(chain[i], 1);
        }
    }

    internal StripBlank? Cut(IReadOnlyList<StripFold> folds, StripNose? nose)
    {
        Contour outer = Edge();
        if (Overlap(outer) is Point crossing)
        {
            _refuse("shape", $"the blank of strip \"{_strip.Name}\" overlaps itself near ({Wording.Number(crossing.X, 2)}, {Wording.Number(crossing.Y, 2)}) mm on the flat; it cannot be cut from one sheet: change the sweeps or lengths");
            return null;
        }

        List<Contour> holes = [];
        for (int i = 0; i < _strip.Holes.Count; i++)
        {
            AddHole(i, outer, holes);
        }

        List<BlankMark> marks = [];
        if (_tab is TabDimensions tab)
        {
            if (tab.IsHole)
            {
                holes.Add(Contour.Circle(new(tab.DetentAtMm, 0), tab.DetentDiameterMm / 2));
            }
            else
            {
                marks.Add(new BlankMark(new(tab.DetentAtMm, 0), tab.DetentDiameterMm, BlankMarkKind.Dimple));
            }
        }

        if (nose?.Rivet is StripRivet rivet)
        {
            marks.Add(new BlankMark(At(nose.AtMm).At(0), rivet.DiameterMm, BlankMarkKind.Rivet));
        }

        return new StripBlank(new Outline(Rounded(outer), holes), _chain[^1].ToMm)
        {
            FoldLines = [.. folds.Select(f => Across(f.AtMm))],
            ClampLines = _strip.Clamp is StripClamp c ? [Across(c.FromMm), Across(c.ToMm)] : [],
            Marks = marks,
        };
    }

    // Down the right-hand edge to the tip and back along the left, so anticlockwise.
    private Contour Edge()
    {
        List<Piece> right = [];
        List<Piece> left = [];
        for (int i = 0; i < _chain.Count; i++)
        {
            AddEdge(right, i, -1);
            AddEdge(left, i, 1);
        }

        List<Piece> all = [.. right];
        Join(all, left[^1].End);
        all.AddRange(Enumerable.Reverse(left).Select(p => p.Reversed()));
        return new Contour(Closed(all));
    }

    private void AddEdge(List<Piece> edge, int index, int side)
    {
        FormedPiece piece = _chain[index];
        FlatFrame start = _starts[index];
        FlatFrame end = start.After(piece, 1);
        Point from = start.At(side * piece.WidthMm / 2);
        Point to = end.At(side * piece.WidthEndMm / 2);
        if (index == 0 && _tab is TabDimensions tab)
        {
            // The corners of a tab's tip are chamfered so that the receptacle slides on.
            Point corner = start.At(side * ((piece.WidthMm / 2) - tab.ChamferMm));
            from += Vector.Polar(tab.ChamferMm, start.DirectionRad);
            edge.Add(new Segment(corner, from));
        }

        Join(edge, from);
        if (from.DistanceTo(to) <= Tolerances.ShortestPieceMm)
        {
            return;
        }

        edge.Add(piece.Kind == FormedKind.Sweep
            ? Arc.About(start.CentreOf(piece), from, to, piece.AngleRad > 0 ? Turning.Anticlockwise : Turning.Clockwise)
            : new Segment(from, to));
    }

    private static void Join(List<Piece> path, Point to)
    {
        if (path.Count > 0 && path[^1].End.DistanceTo(to) > Tolerances.JoinMm)
        {
            path.Add(new Segment(path[^1].End, to));
        }
    }

    private static List<Piece> Closed(List<Piece> path)
    {
        Join(path, path[0].Start);
        return path;
    }

    // Where the strip widens or narrows in a step its re-entrant corners carry the process's inside radius, less where the step is
    // too small for it: each side gives at most this share of its length to a corner.
    private Contour Rounded(Contour outer)
    {
        const double share = 0.45;
        return outer.Filleted(corner =>
        {
            if (!corner.IsReEntrant)
            {
                return 0;
            }

            IReadOnlyList<Piece> pieces = outer.Pieces;
            double side = Math.Min(pieces[corner.Number].Length, pieces[(corner.Number + pieces.Count - 1) % pieces.Count].Length);
            return Math.Min(_insideRadiusMm, share * side / Math.Tan(Math.Abs(corner.TurnRad) / 2));
        });
    }

    private static Point? Overlap(Contour outer)
    {
        // From left to right: only pieces whose extents along x overlap are compared.
        IReadOnlyList<Piece> pieces = outer.Pieces;
        Bounds[] bounds = [.. pieces.Select(p => p.Bounds)];
        int[] order = [.. Enumerable.Range(0, pieces.Count)];
        Array.Sort(order, (i, j) => bounds[i].MinX.CompareTo(bounds[j].MinX));
        for (int a = 0; a < order.Length; a++)
        {
            for (int b = a + 1; b < order.Length && bounds[order[b]].MinX <= bounds[order[a]].MaxX; b++)
            {
                (int i, int j) = (Math.Min(order[a], order[b]), Math.Max(order[a], order[b]));
                if (bounds[i].Overlaps(bounds[j]) && Crossing(pieces, i, j) is Point at)
                {
                    return at;
                }
            }
        }

        return null;
    }

    // Neighbours have their common end in common, and that is no overlap.
    private static Point? Crossing(IReadOnlyList<Piece> pieces, int i, int j)
    {
        const double sameMm = 1e-6;
        bool isNext = j == i + 1 || (i == 0 && j == pieces.Count - 1);
        if (isNext && pieces[i] is Segment one && pieces[j] is Segment two && one.Direction.Dot(two.Direction) > -0.5)
        {
            // Two straight neighbours that do not turn back have their joint in common and nothing else.
            return null;
        }

        Meeting meeting = Intersections.Of(pieces[i], pieces[j]);
        if (meeting.Stretches.Count > 0)
        {
            return meeting.Stretches[0].From.At;
        }

        foreach (CommonPoint common in meeting.Points)
        {
            bool isJoint = (j == i + 1 && common.At.DistanceTo(pieces[i].End) < sameMm)
                || (i == 0 && j == pieces.Count - 1 && common.At.DistanceTo(pieces[i].Start) < sameMm);
            if (!isJoint)
            {
                return common.At;
            }
        }

        return null;
    }

    private void AddHole(int index, Contour outer, List<Contour> holes)
    {
        StripHole hole = _strip.Holes[index];
        string key = string.Create(CultureInfo.InvariantCulture, $"holes[{index}]");
        double radius = hole.DiameterMm / 2;
        if (hole.AtMm < 0 || hole.AtMm > _chain[^1].ToMm)
        {
            _refuse(key, $"hole {index + 1} of strip \"{_strip.Name}\" is at {hole.AtMm:0.###} mm, but the blank is {_chain[^1].ToMm:0.###} mm long");
            return;
        }

        Point centre = At(hole.AtMm).At(hole.AcrossMm);
        double toEdge = outer.Pieces.Min(p => Distances.Between(centre, p).DistanceMm);
        bool inside = Math.Abs(hole.AcrossMm) < WidthAt(hole.AtMm) / 2;
        if (!inside || toEdge <= radius)
        {
            _refuse(key, $"hole {index + 1} of strip \"{_strip.Name}\" (diameter {hole.DiameterMm:0.###} mm, {hole.AcrossMm:0.###} mm across) breaks through the edge: the strip is {WidthAt(hole.AtMm):0.###} mm wide there and the edge is {(inside ? toEdge : -toEdge):0.###} mm from its centre");
            return;
        }

        foreach ((FormedPiece fold, int i) in _chain.Select((p, i) => (p, i)).Where(x => x.p.Kind == FormedKind.Fold))
        {
            StripBend bend = (StripBend)_strip.Shape[fold.ShapeIndex];
            double least = (2 * _strip.ThicknessMm) + bend.RadiusMm;
            double gap = FoldDistance(_starts[i], fold, centre) - radius;
            if (gap < least - 1e-9)
            {
                _refuse(key, $"hole {index + 1} of strip \"{_strip.Name}\" comes within {Math.Max(gap, 0):0.###} mm of the fold at {fold.FromMm + (fold.DevelopedMm / 2):0.###} mm (which takes {fold.FromMm:0.###} to {fold.ToMm:0.###} mm); at least 2 t + R = {least:0.###} mm is needed, or the hole pulls out of shape (common practice); move it {least - gap:0.###} mm further away");
            }
        }

        foreach (Contour other in holes)
        {
            double apart = centre.DistanceTo(other.Centroid) - radius - ((Arc)other.Pieces[0]).RadiusMm;
            if (apart <= 0)
            {
                _refuse(key, $"hole {index + 1} of strip \"{_strip.Name}\" runs into another hole by {-apart:0.###} mm");
            }
        }

        holes.Add(Contour.Circle(centre, radius));
    }

    // From a point to the part of the blank that the fold takes.
    private static double FoldDistance(FlatFrame start, FormedPiece fold, Point p)
    {
        Vector v = (p - start.Origin).Turned(-start.DirectionRad);
        double along = Math.Max(0, Math.Max(-v.X, v.X - fold.DevelopedMm));
        double across = Math.Max(0, Math.Abs(v.Y) - (fold.WidthMm / 2));
        return new Vector(along, across).Length;
    }

    private FlatFrame At(double atMm)
    {
        int i = IndexAt(atMm);
        FormedPiece piece = _chain[i];
        return _starts[i].After(piece, Share(piece, atMm));
    }

    private double WidthAt(double atMm) => _chain[IndexAt(atMm)] is var p ? p.WidthAt(Share(p, atMm)) : 0;

    private static double Share(FormedPiece piece, double atMm) =>
        piece.DevelopedMm > 0 ? Math.Clamp((atMm - piece.FromMm) / piece.DevelopedMm, 0, 1) : 0;

    private int IndexAt(double atMm)
    {
        for (int i = 0; i < _chain.Count - 1; i++)
        {
            if (atMm <= _chain[i].ToMm)
            {
                return i;
            }
        }

        return _chain.Count - 1;
    }

    private Segment Across(double atMm)
    {
        FlatFrame frame = At(atMm);
        double half = WidthAt(atMm) / 2;
        return new Segment(frame.At(-half), frame.At(half));
    }

    /// <summary>A place on the blank's centre line and the direction there.</summary>
    private readonly record struct FlatFrame(Point Origin, double DirectionRad)
    {
        internal Point At(double leftMm) => Origin + Vector.Polar(leftMm, DirectionRad + (Math.PI / 2));

        internal Point CentreOf(FormedPiece sweep) => At(Math.Sign(sweep.AngleRad) * sweep.RadiusMm);

        // A fold lies flat on the blank: straight on by its allowance.
        internal FlatFrame After(FormedPiece piece, double share)
        {
            if (piece.Kind != FormedKind.Sweep)
            {
                return this with { Origin = Origin + Vector.Polar(piece.DevelopedMm * share, DirectionRad) };
            }

            double direction = DirectionRad + (piece.AngleRad * share);
            Point centre = CentreOf(piece);
            return new(centre - Vector.Polar(Math.Sign(piece.AngleRad) * piece.RadiusMm, direction + (Math.PI / 2)), direction);
        }
    }
}
