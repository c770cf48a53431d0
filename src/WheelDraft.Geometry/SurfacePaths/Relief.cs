namespace WheelDraft.Geometry;

/// <summary>A surface with walls: plane levels with straight upright walls between them.</summary>
/// <remarks>Where ribs overlap the higher one counts, where grooves overlap the deeper one. Where a rib and a groove cross, neither has a wall: whether
/// the rib bridges the groove or the groove cuts the rib is not known, and no way may come out too long.</remarks>
internal sealed class Relief
{
    private readonly List<FlatBorder> _borders;
    private readonly List<ReliefCorner> _corners = [];
    private readonly Dictionary<(long, long), List<int>> _cells = [];
    private readonly List<ReliefEdge> _edges = [];
    private readonly List<ReliefSector> _nodes = [];

    /// <summary>A surface with walls.</summary>
    /// <param name="surface">Its plan; null for unbounded.</param>
    /// <param name="regions">What stands on it or is cut into it.</param>
    /// <param name="linkMm">Recesses between ribs are bridged where they are narrower, mm.</param>
    /// <param name="notchMm">Notches of the plan are bridged where they are narrower, mm.</param>
    internal Relief(Outline? surface, IEnumerable<SurfaceRegion> regions, double linkMm, double notchMm)
    {
        _borders = [.. regions.Select(r => new FlatBorder(r, blocksOutside: false))];
        if (surface is not null)
        {
            _borders.Insert(0, new FlatBorder(SurfaceRegion.Through(SurfaceRegion.OutlineName, surface), blocksOutside: true));
        }

        AddEdges([]);
        List<Point> cuts = new Recesses(_edges, linkMm, notchMm).Cuts();
        if (cuts.Count > 0)
        {
            ReliefEdge[] uncut = [.. _edges];
            _corners.Clear();
            _cells.Clear();
            _edges.Clear();
            AddEdges(cuts);
            foreach (ReliefEdge edge in _edges)
            {
                edge.Whole = Array.Find(uncut, e => e.DistanceTo(edge.From) <= SurfaceTolerances.SameMm && e.DistanceTo(edge.To) <= SurfaceTolerances.SameMm) ?? edge;
            }
        }

        new Recesses(_edges, linkMm, notchMm).Bridge();
        foreach (ReliefCorner corner in _corners.Where(c => c.Edges.Count > 0))
        {
            AddSectors(corner);
            AddPlaces(corner);
        }
    }

    /// <summary>A surface as above; null where there is neither a wall to be crossed nor a notch to be bridged.</summary>
    internal static Relief? IfAny(Outline? surface, IReadOnlyList<SurfaceRegion> regions, double linkMm, double notchMm)
    {
        if (regions.Any(r => !r.IsImpassable))
        {
            return new Relief(surface, regions, linkMm, notchMm);
        }

        return surface is not null && !new FlatBorder(SurfaceRegion.Through(SurfaceRegion.OutlineName, surface), blocksOutside: true).IsConvex
            && new Relief(surface, regions, linkMm, notchMm) is { HasBridges: true } notched ? notched : null;
    }

    internal IReadOnlyList<ReliefEdge> Edges => _edges;

    /// <summary>The most that can be taken off a shortest path, which crosses no edge twice, mm.</summary>
    internal double SlackMm => _edges.Sum(e => e.SlackMm);

    internal IReadOnlyList<ReliefCorner> Corners => _corners;

    /// <summary>Where a shortest path can bend.</summary>
    internal IReadOnlyList<ReliefSector> Nodes => _nodes;

    /// <summary>Whether a bridge leads across any recess.</summary>
    private bool HasBridges => _edges.Exists(e => e.Across.Count > 0);

    /// <summary>How many places there are to which ways are noted: each corner once for each of its sectors, since none leads from one to the next through a corner.</summary>
    internal int PlaceCount { get; private set; }

    private void AddEdges(IReadOnlyList<Point> cuts)
    {
        List<(FlatStretch Stretch, FlatBorder Border, Bounds Bounds)> all = [.. _borders.SelectMany(b => b.Stretches.Select(s => (s, b, Bounds.Of(s.From, s.To).Grown(SurfaceTolerances.SameMm))))];
        List<SortedList<double, int>> marks = [.. all.Select(_ => new SortedList<double, int>())];
        foreach ((FlatStretch stretch, _, _) in all)
        {
            CornerAt(stretch.From);
            CornerAt(stretch.To);
        }

        for (int i = 0; i < all.Count; i++)
        {
            for (int j = i + 1; j < all.Count; j++)
            {
                if (all[i].Bounds.Overlaps(all[j].Bounds) && Meeting(all[i].Stretch, all[j].Stretch) is { } at)
                {
                    CornerAt(at);
                }
            }
        }

        foreach (Point cut in cuts)
        {
            CornerAt(cut);
        }

        Dictionary<(int, int), (double Slack, List<FlatBorder> Borders)> found = [];
        foreach ((FlatStretch stretch, FlatBorder border, Bounds bounds) in all)
        {
            int[] on = CornersOn(stretch, bounds);
            for (int i = 0; i + 1 < on.Length; i++)
            {
                (int, int) key = (Math.Min(on[i], on[i + 1]), Math.Max(on[i], on[i + 1]));
                (double slack, List<FlatBorder> borders) = found.TryGetValue(key, out var known) ? known : (0, []);
                borders.Add(border);
                found[key] = (Math.Max(slack, stretch.SagittaMm), borders);
            }
        }

        foreach (((int from, int to), (double slack, List<FlatBorder> borders)) in found)
        {
            AddEdge(from, to, slack, borders);
        }
    }

    private int[] CornersOn(FlatStretch s, Bounds bounds)
    {
        Vector along = (s.To - s.From).Unit();
        double length = (s.To - s.From).Length;
        List<(double Along, int Corner)> on = [];
        for (int i = 0; i < _corners.Count; i++)
        {
            if (bounds.Contains(_corners[i].At))
            {
                Vector v = _corners[i].At - s.From;
                double at = v.Dot(along);
                if (Math.Abs(along.Cross(v)) <= SurfaceTolerances.SameMm && at >= -SurfaceTolerances.SameMm && at <= length + SurfaceTolerances.SameMm)
                {
                    on.Add((at, i));
                }
            }
        }

        on.Sort();
        return [.. on.Select(o => o.Corner)];
    }

    private static Point? Meeting(FlatStretch a, FlatStretch b)
    {
        Vector va = a.To - a.From, vb = b.To - b.From;
        double cross = va.Cross(vb);
        if (Math.Abs(cross) <= 1e-12 * va.Length * vb.Length)
        {
            return null;
        }

        double onA = (b.From - a.From).Cross(vb) / cross, onB = (b.From - a.From).Cross(va) / cross;
        double slackA = SurfaceTolerances.SameMm / va.Length, slackB = SurfaceTolerances.SameMm / vb.Length;
        return onA >= -slackA && onA <= 1 + slackA && onB >= -slackB && onB <= 1 + slackB ? a.From.Towards(a.To, onA) : null;
    }

    private int CornerAt(Point p)
    {
        (long X, long Y) cell = ((long)Math.Floor(p.X / (4 * SurfaceTolerances.SameMm)), (long)Math.Floor(p.Y / (4 * SurfaceTolerances.SameMm)));
        for (long x = cell.X - 1; x <= cell.X + 1; x++)
        {
            for (long y = cell.Y - 1; y <= cell.Y + 1; y++)
            {
                if (_cells.TryGetValue((x, y), out List<int>? near))
                {
                    foreach (int i in near)
                    {
                        if (_corners[i].At.DistanceTo(p) <= SurfaceTolerances.SameMm)
                        {
                            return i;
                        }
                    }
                }
            }
        }

        if (!_cells.TryGetValue(cell, out List<int>? here))
        {
            _cells.Add(cell, here = []);
        }

        here.Add(_corners.Count);
        _corners.Add(new ReliefCorner(p));
        return _corners.Count - 1;
    }

    private void AddEdge(int from, int to, double slackMm, List<FlatBorder> borders)
    {
        Point a = _corners[from].At, b = _corners[to].At;
        Vector along = (b - a).Unit();
        Point middle = a.Towards(b, 0.5);
        SurfaceLevel left = LevelAt(middle + (along.Left * SurfaceTolerances.LevelMm)), right = LevelAt(middle - (along.Left * SurfaceTolerances.LevelMm));
        if (left.StepTo(right) is not { } step)
        {
            return;
        }

        FlatBorder border = borders.Find(x => !x.BlocksOutside && !x.Region.IsImpassable) ?? borders[0];
        ReliefEdge edge = new()
        {
            Index = _edges.Count,
            FromCorner = from,
            ToCorner = to,
            From = a,
            To = b,
            Along = along,
            LengthMm = (b - a).Length,
            LowMm = Math.Min(step.ThisMm, step.OtherMm),
            HighMm = Math.Max(step.ThisMm, step.OtherMm),
            Uphill = step.ThisMm > step.OtherMm ? along.Left : -along.Left,
            SlackMm = slackMm,
            Region = border.Region.Name,
            IsUpright = border.Region.Wall != RegionWall.None,
            IsRaised = border.Region.Wall == RegionWall.Raised,
            IsOutline = double.IsPositiveInfinity(Math.Max(step.ThisMm, step.OtherMm)) && borders.Exists(b => b.BlocksOutside),
        };
        _edges.Add(edge);
        _corners[from].Edges.Add(edge);
        _corners[to].Edges.Add(edge);
    }

    private SurfaceLevel LevelAt(Point p)
    {
        double rib = 0, groove = 0;
        foreach (FlatBorder border in _borders)
        {
            bool inside = border.Contains(p);
            if (inside == border.BlocksOutside)
            {
                continue;
            }

            if (border.BlocksOutside || border.Region.IsImpassable)
            {
                return new SurfaceLevel(double.PositiveInfinity, 0);
            }

            (rib, groove) = border.Region.Wall == RegionWall.Raised
                ? (Math.Max(rib, border.Region.WallMm), groove)
                : (rib, Math.Max(groove, border.Region.WallMm));
        }

        return new SurfaceLevel(rib, groove);
    }

    private void AddSectors(ReliefCorner corner)
    {
        corner.Edges.Sort((a, b) => corner.Outward(a).AngleRad.CompareTo(corner.Outward(b).AngleRad));
        int n = corner.Edges.Count;
        for (int i = 0; i < n; i++)
        {
            ReliefEdge right = corner.Edges[i], left = corner.Edges[(i + 1) % n];
            double from = corner.Outward(right).AngleRad;
            double sweep = n == 1 ? Angles.TurnRad : Angles.InTurn(corner.Outward(left).AngleRad - from);
            double level = corner.IsHighOnLeft(right) ? right.HighMm : right.LowMm;
            ReliefSector sector = new(_corners.IndexOf(corner), i, level, from, sweep, right, left);
            corner.Sectors.Add(sector);
            if (!sector.IsBlocked && (n != 2 || sweep > Math.PI + 1e-9 || IsTorn(corner) || IsBrink(corner, sector)))
            {
                sector.Node = _nodes.Count;
                _nodes.Add(sector);
            }
        }
    }

    /// <summary>Whether one of two edges that meet at a corner ends there: where it lies across the other without a wall, a way can bend at any level.</summary>
    private static bool IsTorn(ReliefCorner corner) => corner.Edges is [var a, var b]
        && (LevelAt(corner, a, isLeft: true) != LevelAt(corner, b, isLeft: false) || LevelAt(corner, a, isLeft: false) != LevelAt(corner, b, isLeft: true));

    private static double LevelAt(ReliefCorner corner, ReliefEdge edge, bool isLeft) => corner.IsHighOnLeft(edge) == isLeft ? edge.HighMm : edge.LowMm;

    /// <summary>Whether a bridge ends beside a sector: there ways can bend to stay on it.</summary>
    private static bool IsBrink(ReliefCorner corner, ReliefSector sector) =>
        corner.BrinksOf(sector).Any(e => e.Across.Count > 0);

    private void AddPlaces(ReliefCorner corner)
    {
        foreach (ReliefSector sector in corner.Sectors.Where(s => !s.IsBlocked))
        {
            sector.Place = PlaceCount++;
        }

        foreach (ReliefEdge edge in corner.Edges)
        {
            int end = corner.Starts(edge) ? 0 : 2;
            edge.Places[end] = corner.Beside(edge, high: false)?.Place ?? -1;
            edge.Places[end + 1] = corner.Beside(edge, high: true)?.Place ?? -1;
        }
    }

    /// <summary>What covers a place: height of the highest rib, depth of the deepest groove, mm.</summary>
    private readonly record struct SurfaceLevel(double RibMm, double GrooveMm)
    {
        private bool IsBlocked => double.IsPositiveInfinity(RibMm);

        private bool IsBoth => RibMm > 0 && GrooveMm > 0;

        /// <summary>The levels on both sides of a border; null when there is no step between them.</summary>
        internal (double ThisMm, double OtherMm)? StepTo(SurfaceLevel other)
        {
            if (IsBlocked || other.IsBlocked)
            {
                return IsBlocked && other.IsBlocked ? null : (LevelBy(other), other.LevelBy(this));
            }

            double here = LevelBy(other), there = other.LevelBy(this);
            return Math.Abs(here - there) <= 1e-9 ? null : (here, there);
        }

        private double LevelBy(SurfaceLevel other) =>
            IsBlocked ? double.PositiveInfinity
            : !IsBoth ? RibMm - GrooveMm
            : other.IsBoth ? 0
            : other.IsBlocked ? 0
            : other.RibMm > 0 || other.GrooveMm > 0 ? other.RibMm - other.GrooveMm
            : Math.Min(RibMm, GrooveMm);
    }
}
