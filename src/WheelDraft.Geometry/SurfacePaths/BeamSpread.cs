namespace WheelDraft.Geometry;

/// <summary>What lies before beams: the edges and bends that they see, and the beams beyond.</summary>
/// <param name="relief">The surface.</param>
internal sealed partial class BeamSpread(Relief relief)
{
    private BeamTree _tree = null!;
    private readonly List<ReliefEdge> _seen = [];
    private readonly List<(double Rad, int Corner)> _events = [];
    private readonly List<BeamExit> _exits = [];

    /// <summary>Where a beam goes on; the corners that it sees are noted in its tree.</summary>
    internal BeamExit[] Of(Beam beam, BeamTree tree)
    {
        _tree = tree;
        _exits.Clear();
        if (beam.Wall is { } wall)
        {
            OnWall(beam, wall);
        }
        else
        {
            OnLevel(beam);
        }

        if (beam is { Entry: BeamEntry.Link or BeamEntry.AcrossRecess, Through: { } brink })
        {
            ArriveOnBrink(beam, brink.FromCorner);
            ArriveOnBrink(beam, brink.ToCorner);
        }

        return [.. _exits];
    }

    /// <summary>The beams beyond an exit, in the order in which they are found.</summary>
    internal IEnumerable<Beam> Beyond(Beam beam, BeamExit exit) => exit.Kind switch
    {
        BeamExitKind.OntoWall => Across(beam, exit),
        BeamExitKind.OverBrink => RecessLinks.AcrossRecess(exit.Reach!.Value, exit.Edge!),
        BeamExitKind.OffWall => [OffWall(beam, exit)],
        _ => [RoundCorner(beam, exit)],
    };

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
        if (at.SectorAt(-direction + (aside * 1e-6)) is { IsBlocked: false } sector)
        {
            Note(sector, new Arrival(beam.OffsetMm + to.Length, beam, at.At));
        }
    }

    /// <summary>Notes the end of an edge to which a link or a bridge leads.</summary>
    private void ArriveOnBrink(Beam beam, int corner)
    {
        ReliefCorner at = relief.Corners[corner];
        if (IsIn(beam, at.At) && at.Beside(beam.Through!, beam.IsHigh) is { IsBlocked: false } sector)
        {
            Note(sector, new Arrival(beam.LengthTo(at.At), beam, at.At));
        }
    }

    private void Note(ReliefSector sector, Arrival arrival)
    {
        _tree.Reach(sector.Place, arrival.LengthMm);
        if (sector.Node >= 0)
        {
            _tree.Note(sector, arrival);
        }
    }

    /// <summary>A stretch of a beam on a level within which one edge lies ahead.</summary>
    private void Sweep(Beam beam, double fromRad, double toRad, ReliefEdge? ahead)
    {
        Vector right = fromRad == 0 ? beam.Right : beam.Right.Turned(fromRad), left = beam.Right.Turned(toRad);
        BeamReach reach = new(beam, right, left, ahead);
        if (ahead is null || (ahead.Blocks && ahead.Across.Count == 0))
        {
            _exits.Add(new BeamExit { Kind = BeamExitKind.Ends, Reach = reach });
            return;
        }

        Point first = OnEdge(beam, right, ahead), second = OnEdge(beam, left, ahead);
        _exits.Add(new BeamExit
        {
            Kind = ahead.Blocks ? BeamExitKind.OverBrink : BeamExitKind.OntoWall,
            Reach = reach,
            Edge = ahead,
            First = first,
            Second = second,
            NearMm = NearMm(beam, first, second),
            Plan = Bounds.Of(first, second),
        });
    }

    private static double NearMm(Beam beam, Point first, Point second)
    {
        Vector along = second - first;
        double length2 = along.Dot(along);
        double share = length2 > 0 ? Math.Clamp((beam.Source - first).Dot(along) / length2, 0, 1) : 0;
        return beam.LengthTo(first.Towards(second, share));
    }

    /// <summary>Onto the wall ahead and, where it goes down, across a narrow recess.</summary>
    private static IEnumerable<Beam> Across(Beam beam, BeamExit exit)
    {
        BeamReach reach = exit.Reach!.Value;
        ReliefEdge edge = exit.Edge!;
        bool climbs = reach.Climbs;
        double level = climbs ? edge.LowMm : edge.HighMm;
        Point source = new(edge.AlongOf(beam.Source), level + edge.UphillOf(beam.Source));
        (Vector right, Vector left) = Beam.Ordered(OnWall(reach.Right, edge), OnWall(reach.Left, edge));
        Beam onto = new()
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
        };
        return climbs ? [onto] : [onto, .. RecessLinks.AcrossRecess(reach, edge)];
    }

    private static Vector OnWall(Vector v, ReliefEdge edge) => new(v.Dot(edge.Along), v.Dot(edge.Uphill));

    private static Point OnEdge(Beam beam, Vector direction, ReliefEdge edge)
    {
        double along = (edge.From - beam.Source).Cross(direction) / direction.Cross(edge.Along);
        return edge.At(double.IsFinite(along) ? Math.Clamp(along, 0, edge.LengthMm) : 0);
    }
}
