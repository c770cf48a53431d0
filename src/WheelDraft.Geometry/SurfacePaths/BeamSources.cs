namespace WheelDraft.Geometry;

/// <summary>Beams that leave bends and conductors.</summary>
internal static class BeamSources
{
    /// <summary>A fan is cut into beams of at most this angle, rad.</summary>
    private const double WidestRad = Math.PI * 0.6;

    /// <summary>Beams from a bend: over its level, along the walls beside it, up and down those whose upright end it is on, and over bridges.</summary>
    internal static IEnumerable<Beam> FromBend(Relief relief, ReliefSector sector)
    {
        ReliefCorner corner = relief.Corners[sector.Corner];
        foreach (Beam beam in Fan(corner.At, sector.FromRad, sector.SweepRad, corner.Edges))
        {
            yield return beam;
        }

        foreach (ReliefEdge edge in sector.Left == sector.Right ? [sector.Left] : (ReliefEdge[])[sector.Left, sector.Right])
        {
            if (!edge.Blocks)
            {
                bool starts = corner.Starts(edge), isHigh = corner.Beside(edge, high: true) == sector;
                yield return AlongWall(edge, starts ? 0 : edge.LengthMm, isHigh, starts ? 1 : -1);
            }
        }

        foreach (ReliefEdge wall in corner.WallsBeside(sector))
        {
            bool starts = corner.Starts(wall);
            yield return OnWall(wall, new(starts ? 0 : wall.LengthMm, sector.LevelMm), starts ? 1 : -1, 1);
            yield return OnWall(wall, new(starts ? 0 : wall.LengthMm, sector.LevelMm), starts ? 1 : -1, -1);
        }

        foreach (Beam beam in RecessLinks.FromBend(corner, sector))
        {
            yield return beam;
        }
    }

    /// <summary>Beams from a corner of a conductor, or from where a border cuts it.</summary>
    internal static IEnumerable<Beam> FromCorner(Relief relief, SurfaceConductor conductor, Point at)
    {
        List<ReliefEdge> on = [.. relief.Edges.Where(e => e.DistanceTo(at) <= SurfaceTolerances.SameMm)];
        if (on.Count == 0)
        {
            return NormalFan(conductor, at) is { } fan ? Fan(at, fan.FromRad, fan.SweepRad, []) : [];
        }

        ReliefCorner? corner = on.Select(e => e.From.DistanceTo(at) <= SurfaceTolerances.SameMm ? relief.Corners[e.FromCorner]
            : e.To.DistanceTo(at) <= SurfaceTolerances.SameMm ? relief.Corners[e.ToCorner] : null).FirstOrDefault(c => c is not null);
        return corner is null ? FromEdge(conductor, at, on[0], on) : FromReliefCorner(relief, conductor, corner);
    }

    /// <summary>Beams square to a round outside edge of a conductor.</summary>
    internal static IEnumerable<Beam> FromArc(SurfaceConductor conductor, Arc arc)
    {
        Point middle = arc.PointAt(0.5);
        bool isHollow = !conductor.Covers(middle.Towards(arc.Centre, Math.Min(0.5, 5e-6 / arc.RadiusMm)));
        if (isHollow)
        {
            yield break;
        }

        CircleArc span = arc.Span;
        foreach (Beam beam in Fan(arc.Centre, span.StartRad, span.SweepRad, []))
        {
            yield return new Beam
            {
                Entry = BeamEntry.Source,
                Source = beam.Source,
                Right = beam.Right,
                Left = beam.Left,
                OffsetMm = -arc.RadiusMm,
                FromMm = arc.RadiusMm,
            };
        }
    }

    private static IEnumerable<Beam> FromReliefCorner(Relief relief, SurfaceConductor conductor, ReliefCorner corner)
    {
        List<ReliefSector> stands = [.. corner.Sectors.Where(s => !s.IsBlocked && Stands(conductor, corner.At, s.FromRad, s.SweepRad))];
        return (stands.Count > 0 ? stands : corner.Sectors.Where(s => !s.IsBlocked)).SelectMany(s => FromBend(relief, s));
    }

    private static IEnumerable<Beam> FromEdge(SurfaceConductor conductor, Point at, ReliefEdge edge, List<ReliefEdge> on)
    {
        double right = (-edge.Uphill.Left).AngleRad;
        bool high = Stands(conductor, at, right, Math.PI), low = Stands(conductor, at, right + Math.PI, Math.PI);
        if (!high && !low)
        {
            high = low = true;
        }

        double along = Math.Clamp(edge.AlongOf(at), 0, edge.LengthMm);
        foreach (bool isHigh in (bool[])[true, false])
        {
            if (!(isHigh ? high && !edge.Blocks : low))
            {
                continue;
            }

            foreach (Beam beam in Fan(at, isHigh ? right : right + Math.PI, Math.PI, on))
            {
                yield return beam;
            }

            if (isHigh != edge.Blocks)
            {
                foreach (Beam beam in RecessLinks.FromBrink(at, edge))
                {
                    yield return beam;
                }
            }

            if (!edge.Blocks)
            {
                yield return AlongWall(edge, along, isHigh, 1);
                yield return AlongWall(edge, along, isHigh, -1);
            }
        }
    }

    /// <summary>Whether part of a conductor lies in a sector near a point.</summary>
    private static bool Stands(SurfaceConductor conductor, Point at, double fromRad, double sweepRad)
    {
        const int directions = 24;
        return Enumerable.Range(0, directions).Any(i =>
        {
            double turn = (i + 0.5) / directions;
            Point p = at + Vector.Polar(SurfaceTolerances.AwayMm, fromRad + (sweepRad * turn));
            return conductor.Footprints.Any(f => BorderCuts.SideOf(f.Outline, p) == Side.Inside);
        });
    }

    /// <summary>The quarter fan on a wall from its foot upwards, or from its upper edge down, to one side.</summary>
    private static Beam AlongWall(ReliefEdge edge, double along, bool isHigh, int sense) =>
        OnWall(edge, new(along, isHigh ? edge.HighMm : edge.LowMm), sense, isHigh ? -1 : 1);

    /// <summary>The quarter fan on a wall from a place on it, to one side and up or down.</summary>
    private static Beam OnWall(ReliefEdge edge, Point at, int sense, int up)
    {
        Vector flat = new(sense, 0), upright = new(0, up);
        (Vector right, Vector left) = Beam.Ordered(flat, upright);
        return new Beam
        {
            Entry = BeamEntry.Source,
            Wall = edge,
            Source = at,
            Right = right,
            Left = left,
            OffsetMm = -edge.SlackMm,
        };
    }

    private static IEnumerable<Beam> Fan(Point at, double fromRad, double sweepRad, IReadOnlyList<ReliefEdge> ignored)
    {
        int n = Math.Max(1, (int)Math.Ceiling(sweepRad / WidestRad));
        for (int i = 0; i < n; i++)
        {
            yield return new Beam
            {
                Entry = BeamEntry.Source,
                Source = at,
                Right = Vector.Polar(1, fromRad + (sweepRad * i / n)),
                Left = Vector.Polar(1, fromRad + (sweepRad * (i + 1) / n)),
                Ignored = ignored,
            };
        }
    }

    /// <summary>The directions in which a straight way from a place of a conductor cannot be shortened by moving its end along any piece there.</summary>
    private static (double FromRad, double SweepRad)? NormalFan(SurfaceConductor conductor, Point at)
    {
        if (conductor.Footprints.Any(f => BorderCuts.SideOf(f.Outline, at) == Side.Inside))
        {
            return null;
        }

        // A way in direction u is no longer after a step in direction t unless u · t ≤ 0: each step leaves half a turn about −t.
        CircleArc left = CircleArc.Full;
        foreach (Piece piece in conductor.Pieces)
        {
            foreach (Vector step in Steps(piece, at))
            {
                IReadOnlyList<CircleArc> common = left.Intersect(CircleArc.Sweep(step.AngleRad + (Math.PI / 2) - SurfaceTolerances.FlatRad, Math.PI + (2 * SurfaceTolerances.FlatRad)));
                if (common.Count == 0)
                {
                    return null;
                }

                left = common.MaxBy(c => c.SweepRad);
            }
        }

        return left.SweepRad <= 8 * SurfaceTolerances.FlatRad ? null : (left.StartRad, left.SweepRad);
    }

    private static IEnumerable<Vector> Steps(Piece piece, Point at)
    {
        bool atStart = piece.Start.DistanceTo(at) <= Tolerances.JoinMm, atEnd = piece.End.DistanceTo(at) <= Tolerances.JoinMm;
        if (atStart)
        {
            yield return piece.TangentAt(0);
        }

        if (atEnd)
        {
            yield return -piece.TangentAt(1);
        }

        if (!atStart && !atEnd && BorderCuts.NearestOn(piece, at).DistanceTo(at) <= Tolerances.JoinMm)
        {
            Vector along = piece.TangentAt(piece.ShareNearest(at));
            yield return along;
            yield return -along;
        }
    }
}
