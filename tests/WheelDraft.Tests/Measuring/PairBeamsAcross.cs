using WheelDraft.Geometry;

namespace WheelDraft.Tests.Measuring;

/// <content>Beams across walls.</content>
internal sealed partial class PairBeams
{
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
            foreach (Beam over in RecessLinks.AcrossRecess(reach, edge))
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
