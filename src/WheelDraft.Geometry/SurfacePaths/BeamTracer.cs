namespace WheelDraft.Geometry;

/// <summary>Where the straight ways of a source arrive.</summary>
/// <param name="LengthMm">Length from the source.</param>
/// <param name="Beam">The beam that arrives.</param>
/// <param name="At">Where, on the beam's sheet.</param>
/// <param name="Linked">Where on the conductor a link ends that starts there; null without one.</param>
/// <param name="Over">The wall that the link spares.</param>
internal sealed record Arrival(double LengthMm, Beam Beam, Point At, Point? Linked = null, ReliefEdge? Over = null);

/// <summary>Sends beams from one source over a relief, and notes the shortest ways to conductors and bends.</summary>
/// <param name="relief">The surface.</param>
/// <param name="links">Links across recesses.</param>
/// <param name="targets">Conductors that are looked for.</param>
internal sealed class BeamTracer(Relief relief, RecessLinks links, IReadOnlyList<SurfaceConductor> targets)
{
    private readonly Stack<Beam> _open = new();
    private readonly List<ReliefEdge> _seen = [];
    private readonly List<(double Rad, int Corner)> _events = [];
    private readonly Arrival?[] _best = new Arrival?[targets.Count];

    // Walls that stand close scatter beams without end in sight; a search that follows more than this is given up for a plain lower
    // bound. Scenes of tests and demos take some thousands.
    private const int MostBeams = 500_000;

    /// <summary>Longest way that is of use, mm.</summary>
    internal required Func<double> Limit { get; init; }

    /// <summary>Least that any way still needs beyond a stretch in plan, mm.</summary>
    internal required Func<Bounds, double> Rest { get; init; }

    /// <summary>Whether anything was left out because it was too long.</summary>
    internal bool WasLimited { get; private set; }

    /// <summary>The shortest way to each target.</summary>
    internal IReadOnlyList<Arrival?> Best => _best;

    /// <summary>The shortest way to each bend.</summary>
    internal Dictionary<int, Arrival> Bends { get; } = [];

    /// <exception cref="TooManyBeamsException">The walls scatter more beams than are followed.</exception>
    internal void Trace(IEnumerable<Beam> beams)
    {
        int followed = 0;
        foreach (Beam beam in beams)
        {
            _open.Push(beam);
            while (_open.TryPop(out Beam? next))
            {
                if (++followed > MostBeams || _open.Count > MostBeams)
                {
                    throw new TooManyBeamsException();
                }

                if (next.Wall is null)
                {
                    OnLevel(next);
                }
                else
                {
                    OnWall(next, next.Wall);
                }
            }
        }
    }

    private void OnLevel(Beam beam)
    {
        LookFor(beam);
        double wide = Math.Atan2(beam.Right.Cross(beam.Left), beam.Right.Dot(beam.Left));
        List<(double Rad, int Corner)> events = [(0, -1), .. _events, (wide, -1)];
        ReliefEdge[] seen = [.. _seen];
        events.Sort((a, b) => a.Rad.CompareTo(b.Rad));
        double from = 0;
        ReliefEdge? ahead = null;
        bool any = false;
        for (int i = 1; i < events.Count; i++)
        {
            if (events[i].Rad - events[i - 1].Rad <= 1e-13)
            {
                continue;
            }

            Vector middle = beam.Right.Turned((events[i].Rad + events[i - 1].Rad) / 2);
            ReliefEdge? hit = First(beam, middle, seen);
            ArriveAtCorners(beam, events, i, hit);
            if (any && hit != ahead)
            {
                Sweep(beam, from, events[i - 1].Rad, ahead);
                from = events[i - 1].Rad;
            }

            (ahead, any) = (hit, true);
        }

        if (any)
        {
            Sweep(beam, from, wide, ahead);
        }
    }

    /// <summary>Edges that can lie before a beam, and the directions in which corners do.</summary>
    private void LookFor(Beam beam)
    {
        _seen.Clear();
        _events.Clear();
        foreach (ReliefEdge edge in relief.Edges)
        {
            Vector a = edge.From - beam.Source, b = edge.To - beam.Source;
            bool isOutside = (beam.Right.Cross(a) < -Tolerances.TouchMm && beam.Right.Cross(b) < -Tolerances.TouchMm)
                || (a.Cross(beam.Left) < -Tolerances.TouchMm && b.Cross(beam.Left) < -Tolerances.TouchMm)
                || (beam.Through is { } through && (edge == through
                    || ((edge.From - through.From).Dot(beam.Inward) <= Tolerances.TouchMm && (edge.To - through.From).Dot(beam.Inward) <= Tolerances.TouchMm)));
            if (isOutside)
            {
                continue;
            }

            if (!beam.Ignored.Contains(edge))
            {
                _seen.Add(edge);
            }

            AddEvent(beam, a, edge.FromCorner);
            AddEvent(beam, b, edge.ToCorner);
            if (beam.FromMm > 0)
            {
                foreach (double along in OnCircle(beam, edge))
                {
                    AddEvent(beam, edge.At(along) - beam.Source, -1);
                }
            }
        }
    }

    private static IEnumerable<double> OnCircle(Beam beam, ReliefEdge edge)
    {
        double middle = edge.AlongOf(beam.Source), off = edge.UphillOf(beam.Source);
        double half2 = (beam.FromMm * beam.FromMm) - (off * off);
        if (half2 > 0)
        {
            double half = Math.Sqrt(half2);
            foreach (double along in (double[])[middle - half, middle + half])
            {
                if (along > 0 && along < edge.LengthMm)
                {
                    yield return along;
                }
            }
        }
    }

    private void AddEvent(Beam beam, Vector v, int corner)
    {
        double right = beam.Right.Cross(v), left = v.Cross(beam.Left);
        bool isBeyond = beam.Through is null || (beam.Source + v - beam.Through.From).Dot(beam.Inward) > Tolerances.TouchMm;
        if (right >= -Tolerances.TouchMm && left >= -Tolerances.TouchMm && v.Dot(beam.Right + beam.Left) > 0 && isBeyond && v.Length > Math.Max(SurfaceTolerances.SameMm, beam.FromMm - Tolerances.TouchMm))
        {
            double wide = Math.Atan2(beam.Right.Cross(beam.Left), beam.Right.Dot(beam.Left));
            _events.Add((Math.Clamp(Math.Atan2(right, v.Dot(beam.Right)), 0, wide), corner));
        }
    }

    /// <summary>The first edge in a direction; null when there is none.</summary>
    private static ReliefEdge? First(Beam beam, Vector direction, ReliefEdge[] edges)
    {
        double begin = beam.BeginMm(direction), best = double.PositiveInfinity;
        ReliefEdge? first = null;
        foreach (ReliefEdge edge in edges)
        {
            Vector a = edge.From - beam.Source;
            double cross = direction.Cross(edge.Along);
            if (Math.Abs(cross) < 1e-15)
            {
                continue;
            }

            double at = a.Cross(edge.Along) / cross, along = a.Cross(direction) / cross;
            if (at > begin && at < best && along >= -Tolerances.TouchMm && along <= edge.LengthMm + Tolerances.TouchMm)
            {
                (best, first) = (at, edge);
            }
        }

        return first;
    }

    private static double HitMm(Beam beam, Vector direction, ReliefEdge edge)
    {
        double cross = direction.Cross(edge.Along);
        return Math.Abs(cross) < 1e-15 ? double.PositiveInfinity : (edge.From - beam.Source).Cross(edge.Along) / cross;
    }

    /// <summary>Notes the corners at both limits of a stretch that are seen from within it.</summary>
    private void ArriveAtCorners(Beam beam, List<(double Rad, int Corner)> events, int i, ReliefEdge? ahead)
    {
        for (int k = i; k < events.Count && events[k].Rad - events[i].Rad <= 1e-13; k++)
        {
            Arrive(beam, events[k].Corner, ahead, isLeft: true);
        }

        for (int k = i - 1; k >= 0 && events[i - 1].Rad - events[k].Rad <= 1e-13; k--)
        {
            Arrive(beam, events[k].Corner, ahead, isLeft: false);
        }
    }

    private void Arrive(Beam beam, int corner, ReliefEdge? ahead, bool isLeft)
    {
        if (corner < 0)
        {
            return;
        }

        ReliefCorner at = relief.Corners[corner];
        Vector to = at.At - beam.Source;
        Vector direction = to.Unit();
        if (ahead is not null && HitMm(beam, direction, ahead) < to.Length - Tolerances.TouchMm)
        {
            return;
        }

        // The place just before the corner, a hair towards the stretch: in the sector that the beam comes through.
        Vector aside = isLeft ? -direction.Left : direction.Left;
        if (at.SectorAt(-direction + (aside * 1e-6)) is { Node: >= 0 } sector)
        {
            Note(sector.Node, new Arrival(beam.OffsetMm + to.Length, beam, at.At));
        }
    }

    private void Note(int node, Arrival arrival)
    {
        if (!Bends.TryGetValue(node, out Arrival? known) || arrival.LengthMm < known.LengthMm)
        {
            Bends[node] = arrival;
        }
    }

    /// <summary>A stretch of a beam on a level within which one edge lies ahead.</summary>
    private void Sweep(Beam beam, double fromRad, double toRad, ReliefEdge? ahead)
    {
        Vector right = fromRad == 0 ? beam.Right : beam.Right.Turned(fromRad), left = beam.Right.Turned(toRad);
        BeamReach reach = new(beam, right, left, ahead);
        for (int k = 0; k < targets.Count; k++)
        {
            double most = Math.Min(Limit(), _best[k]?.LengthMm ?? double.PositiveInfinity);
            if (reach.Nearest(targets[k], most - beam.OffsetMm) is { } at)
            {
                _best[k] = new Arrival(beam.LengthTo(at), beam, at);
            }
        }

        if (ahead is not null && !ahead.Blocks)
        {
            Cross(reach, ahead);
        }
    }

    private void Cross(BeamReach reach, ReliefEdge edge)
    {
        Beam beam = reach.Beam;
        Point first = OnEdge(beam, reach.Right, edge), second = OnEdge(beam, reach.Left, edge);
        if (IsTooFar(beam, first, second, Bounds.Of(first, second)))
        {
            return;
        }

        bool climbs = reach.Climbs;
        double level = climbs ? edge.LowMm : edge.HighMm;
        Point source = new(edge.AlongOf(beam.Source), level + edge.UphillOf(beam.Source));
        (Vector right, Vector left) = Beam.Ordered(OnWall(reach.Right, edge), OnWall(reach.Left, edge));
        _open.Push(new Beam
        {
            Entry = BeamEntry.OntoWall,
            Before = beam,
            Wall = edge,
            Through = edge,
            IsHigh = !climbs,
            Source = source,
            Right = right,
            Left = left,
            OffsetMm = beam.OffsetMm - edge.SlackMm,
        });
        if (!climbs)
        {
            foreach (Beam over in links.AcrossRecess(reach, edge))
            {
                _open.Push(over);
            }

            for (int k = 0; k < targets.Count; k++)
            {
                if (links.Land(beam, edge, first, second, targets[k]) is { } landed && landed.LengthMm < Math.Min(Limit(), _best[k]?.LengthMm ?? double.PositiveInfinity))
                {
                    _best[k] = landed;
                }
            }
        }
    }

    private static Vector OnWall(Vector v, ReliefEdge edge) => new(v.Dot(edge.Along), v.Dot(edge.Uphill));

    private static Point OnEdge(Beam beam, Vector direction, ReliefEdge edge)
    {
        double along = (edge.From - beam.Source).Cross(direction) / direction.Cross(edge.Along);
        return edge.At(double.IsFinite(along) ? Math.Clamp(along, 0, edge.LengthMm) : 0);
    }

    private bool IsTooFar(Beam beam, Point first, Point second, Bounds plan)
    {
        Vector along = second - first;
        double length2 = along.Dot(along);
        double share = length2 > 0 ? Math.Clamp((beam.Source - first).Dot(along) / length2, 0, 1) : 0;
        if (beam.LengthTo(first.Towards(second, share)) + Rest(plan) < Limit())
        {
            return false;
        }

        WasLimited = true;
        return true;
    }

    private void OnWall(Beam beam, ReliefEdge wall)
    {
        Point s = beam.Source;
        double length = wall.LengthMm, low = wall.LowMm, high = wall.HighMm;
        Point a = new(0, low), b = new(length, low), c = new(length, high), d = new(0, high);
        bool under = s.Y <= low + Tolerances.TouchMm, over = s.Y >= high - Tolerances.TouchMm, before = s.X <= Tolerances.TouchMm, behind = s.X >= length - Tolerances.TouchMm;
        if (!under)
        {
            Leave(beam, wall, a, b, isHigh: false);
        }

        if (!over)
        {
            Leave(beam, wall, d, c, isHigh: true);
        }

        if (!before)
        {
            LeaveAside(beam, wall, a, d, isFrom: true);
        }

        if (!behind)
        {
            LeaveAside(beam, wall, b, c, isFrom: false);
        }
    }

    private void Leave(Beam beam, ReliefEdge wall, Point a, Point b, bool isHigh)
    {
        ArriveOnWall(beam, a, wall.FromCorner, wall, isHigh);
        ArriveOnWall(beam, b, wall.ToCorner, wall, isHigh);
        if (beam.Clip(a, b) is not { } way || IsTooFar(beam, way.First, way.Second, Bounds.Of(wall.At(way.First.X), wall.At(way.Second.X))))
        {
            return;
        }

        Point source = wall.At(beam.Source.X) + (wall.Uphill * (beam.Source.Y - (isHigh ? wall.HighMm : wall.LowMm)));
        (Vector right, Vector left) = Beam.Ordered((wall.At(way.First.X) - source).Unit(), (wall.At(way.Second.X) - source).Unit());
        _open.Push(new Beam
        {
            Entry = BeamEntry.OffWall,
            Before = beam,
            Through = wall,
            IsHigh = isHigh,
            Source = source,
            Right = right,
            Left = left,
            OffsetMm = beam.OffsetMm,
        });
    }

    private void ArriveOnWall(Beam beam, Point at, int corner, ReliefEdge wall, bool isHigh)
    {
        if (IsIn(beam, at) && relief.Corners[corner].Beside(wall, isHigh) is { Node: >= 0 } sector)
        {
            Note(sector.Node, new Arrival(beam.LengthTo(at), beam, at));
        }
    }

    private static bool IsIn(Beam beam, Point p)
    {
        Vector v = p - beam.Source;
        return beam.Right.Cross(v) >= -Tolerances.TouchMm && v.Cross(beam.Left) >= -Tolerances.TouchMm && v.Dot(beam.Right + beam.Left) > 0;
    }

    /// <summary>Round an upright corner onto the next walls: which ones depends on how high.</summary>
    private void LeaveAside(Beam beam, ReliefEdge wall, Point foot, Point top, bool isFrom)
    {
        ReliefCorner corner = relief.Corners[isFrom ? wall.FromCorner : wall.ToCorner];
        double up = wall.LowMm;
        bool anticlockwise = !corner.IsHighOnLeft(wall);
        ReliefSector? sector = corner.Beside(wall, high: false);
        for (int i = 0; sector is not null && i < corner.Sectors.Count && up < wall.HighMm; i++)
        {
            ReliefEdge next = anticlockwise ? sector.Left : sector.Right;
            ReliefSector beyond = corner.Sectors[(sector.Index + (anticlockwise ? 1 : corner.Sectors.Count - 1)) % corner.Sectors.Count];
            if (beyond.IsBlocked || next == wall)
            {
                return;
            }

            if (corner.Edges.Count > 2 && beyond.Node >= 0 && beyond.LevelMm > wall.LowMm && beyond.LevelMm < wall.HighMm && IsIn(beam, new(foot.X, beyond.LevelMm)))
            {
                Point at = new(foot.X, beyond.LevelMm);
                Note(beyond.Node, new Arrival(beam.LengthTo(at), beam, at));
            }

            if (beyond.LevelMm > up)
            {
                Turn(beam, wall, next, (new(foot.X, up), new(top.X, Math.Min(wall.HighMm, beyond.LevelMm))), isFrom);
                up = beyond.LevelMm;
            }

            sector = beyond;
        }
    }

    private void Turn(Beam beam, ReliefEdge wall, ReliefEdge next, (Point Foot, Point Top) side, bool isFrom)
    {
        ReliefCorner corner = relief.Corners[isFrom ? wall.FromCorner : wall.ToCorner];
        if (beam.Clip(side.Foot, side.Top) is not { } way || IsTooFar(beam, way.First, way.Second, Bounds.Of(corner.At)))
        {
            return;
        }

        bool starts = corner.Starts(next);
        double from = isFrom ? 0 : wall.LengthMm;
        double sense = isFrom == starts ? -1 : 1;
        double begin = starts ? 0 : next.LengthMm;
        Point Over(Point p) => new(begin + (sense * (p.X - from)), p.Y);
        Point source = Over(beam.Source);
        (Vector right, Vector left) = Beam.Ordered((Over(way.First) - source).Unit(), (Over(way.Second) - source).Unit());
        _open.Push(new Beam
        {
            Entry = BeamEntry.RoundCorner,
            Before = beam,
            Wall = next,
            LeftByFrom = isFrom,
            Source = source,
            Right = right,
            Left = left,
            OffsetMm = beam.OffsetMm,
        });
    }
}

/// <summary>A search over walls that would follow too many beams.</summary>
internal sealed class TooManyBeamsException : Exception;
