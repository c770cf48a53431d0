namespace WheelDraft.Geometry;

/// <content>Beams on walls.</content>
internal sealed partial class BeamSpread
{
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
        if (beam.Clip(a, b) is { } way)
        {
            _exits.Add(new BeamExit
            {
                Kind = BeamExitKind.OffWall,
                Edge = wall,
                First = way.First,
                Second = way.Second,
                IsFirst = isHigh,
                NearMm = NearMm(beam, way.First, way.Second),
                Plan = Bounds.Of(wall.At(way.First.X), wall.At(way.Second.X)),
            });
        }
    }

    private static Beam OffWall(Beam beam, BeamExit exit)
    {
        ReliefEdge wall = exit.Edge!;
        bool isHigh = exit.IsFirst;
        Point source = wall.At(beam.Source.X) + (wall.Uphill * (beam.Source.Y - (isHigh ? wall.HighMm : wall.LowMm)));
        (Vector right, Vector left) = Beam.Ordered((wall.At(exit.First.X) - source).Unit(), (wall.At(exit.Second.X) - source).Unit());
        return new Beam
        {
            Entry = BeamEntry.OffWall,
            Before = beam,
            Through = wall,
            IsHigh = isHigh,
            Source = source,
            Right = right,
            Left = left,
            OffsetMm = beam.OffsetMm,
        };
    }

    private void ArriveOnWall(Beam beam, Point at, int corner, ReliefEdge wall, bool isHigh)
    {
        if (IsIn(beam, at) && relief.Corners[corner].Beside(wall, isHigh) is { } sector)
        {
            Note(sector, new Arrival(beam.LengthTo(at), beam, at));
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
        foreach ((ReliefEdge next, ReliefSector beyond, double up) in corner.Round(wall))
        {
            Point at = new(foot.X, beyond.LevelMm);
            if (ReliefCorner.IsHalfway(beyond, wall) && IsIn(beam, at))
            {
                Note(beyond, new Arrival(beam.LengthTo(at), beam, at));
            }

            if (beyond.LevelMm > up)
            {
                Turn(beam, wall, next, (new(foot.X, up), new(top.X, Math.Min(wall.HighMm, beyond.LevelMm))), isFrom);
            }
        }
    }

    private void Turn(Beam beam, ReliefEdge wall, ReliefEdge next, (Point Foot, Point Top) side, bool isFrom)
    {
        if (beam.Clip(side.Foot, side.Top) is { } way)
        {
            _exits.Add(new BeamExit
            {
                Kind = BeamExitKind.RoundCorner,
                Edge = next,
                First = way.First,
                Second = way.Second,
                IsFirst = isFrom,
                NearMm = NearMm(beam, way.First, way.Second),
                Plan = Bounds.Of(relief.Corners[isFrom ? wall.FromCorner : wall.ToCorner].At),
            });
        }
    }

    private Beam RoundCorner(Beam beam, BeamExit exit)
    {
        (ReliefEdge wall, ReliefEdge next, bool isFrom) = (beam.Wall!, exit.Edge!, exit.IsFirst);
        ReliefCorner corner = relief.Corners[isFrom ? wall.FromCorner : wall.ToCorner];
        bool starts = corner.Starts(next);
        double from = isFrom ? 0 : wall.LengthMm;
        double sense = isFrom == starts ? -1 : 1;
        double begin = starts ? 0 : next.LengthMm;
        Point Over(Point p) => new(begin + (sense * (p.X - from)), p.Y);
        Point source = Over(beam.Source);
        (Vector right, Vector left) = Beam.Ordered((Over(exit.First) - source).Unit(), (Over(exit.Second) - source).Unit());
        return new Beam
        {
            Entry = BeamEntry.RoundCorner,
            Before = beam,
            Wall = next,
            LeftByFrom = isFrom,
            Source = source,
            Right = right,
            Left = left,
            OffsetMm = beam.OffsetMm,
        };
    }
}
