using WheelDraft.Geometry;

namespace WheelDraft.Tests.Measuring;

/// <summary>The beams of <see cref="PairSearch"/>: each looked into anew for every pair of conductors.</summary>
/// <param name="relief">The surface.</param>
/// <param name="links">Links across recesses.</param>
/// <param name="targets">Conductors that are looked for.</param>
internal sealed partial class PairBeams(Relief relief, RecessLinks links, IReadOnlyList<SurfaceConductor> targets)
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

                ArriveOnBrink(next);
            }
        }
    }

    /// <summary>Ends of the edge to which a link or a bridge leads.</summary>
    private void ArriveOnBrink(Beam beam)
    {
        if (beam is { Entry: BeamEntry.Link or BeamEntry.AcrossRecess, Through: { } brink })
        {
            foreach (ReliefCorner corner in new[] { relief.Corners[brink.FromCorner], relief.Corners[brink.ToCorner] })
            {
                if (IsIn(beam, corner.At) && corner.Beside(brink, beam.IsHigh) is { Node: >= 0 } sector)
                {
                    Note(sector.Node, new Arrival(beam.LengthTo(corner.At), beam, corner.At));
                }
            }
        }
    }

    /// <summary>A way to a target found otherwise.</summary>
    internal void Offer(int target, Arrival? arrival)
    {
        if (arrival is not null && arrival.LengthMm < (_best[target]?.LengthMm ?? double.PositiveInfinity))
        {
            _best[target] = arrival;
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

        if (ahead is { Blocks: true })
        {
            foreach (Beam over in RecessLinks.AcrossRecess(reach, ahead))
            {
                _open.Push(over);
            }
        }
        else if (ahead is not null)
        {
            Cross(reach, ahead);
        }
    }
}
