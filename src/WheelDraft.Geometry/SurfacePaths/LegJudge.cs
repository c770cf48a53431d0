namespace WheelDraft.Geometry;

/// <summary>What a leg costs: whether it may run, which walls it climbs, which recesses are bridged.</summary>
/// <remarks>A recess between a conductor and a wall at whose foot it stands, or between two raised regions, that is narrower than the
/// link is bridged by a link of exactly that length in the worst place (IEC 60664-1, clause on measuring, assumption 2), or straight to the upper edge if
/// that is nearer.</remarks>
internal sealed class LegJudge(IReadOnlyList<SurfaceBorder> borders, double linkMm)
{
    /// <summary>The judgements of a leg: none where it runs off the surface, two where it may run on either side of a border.</summary>
    /// <param name="leg">Straight or round.</param>
    /// <param name="start">The conductor that it starts from; null when it starts from a bend.</param>
    /// <param name="end">The conductor that it ends at; null when it ends at a bend.</param>
    internal IReadOnlyList<LegCost> Of(Piece leg, SurfaceConductor? start, SurfaceConductor? end)
    {
        bool runsAlong = false;
        LegCost? cost = Of(leg, new LegEnds(leg, start, end), BorderCuts.OnBorderMm, ref runsAlong);
        if (!runsAlong)
        {
            return cost is null ? [] : [cost];
        }

        List<LegCost> sides = [];
        foreach (double offMm in (double[])[BorderCuts.BesideMm, -BorderCuts.BesideMm])
        {
            if (Beside(leg, offMm) is { } beside && Of(beside, new LegEnds(leg, start, end), BorderCuts.PassedMm, ref runsAlong) is { } side)
            {
                sides.Add(side);
            }
        }

        return sides;
    }

    private LegCost? Of(Piece track, LegEnds ends, double leastMm, ref bool runsAlong)
    {
        List<Climb> climbs = [];
        ulong known = 0, first = 0, last = 0;
        Bounds bounds = track.Bounds;
        foreach (SurfaceBorder border in borders)
        {
            if (!border.BlocksOutside && !border.Region.Outline.Bounds.Grown(BorderCuts.OnBorderMm).Overlaps(bounds))
            {
                known |= border.Flag;
                continue;
            }

            IReadOnlyList<Stretch> stretches = border.Stretches(track, bounds, leastMm, ref runsAlong);
            if (border.Bit < 0)
            {
                if (stretches.Any(s => s.Inside != border.BlocksOutside))
                {
                    return null;
                }
            }
            else if (stretches.Count > 0)
            {
                known |= border.Flag;
                first |= stretches[0].Inside ? border.Flag : 0;
                last |= stretches[^1].Inside ? border.Flag : 0;
                AddClimbs(border, stretches, climbs);
                AddEndClimb(border, ends.Start, ends.Leg.Start, stretches[0].Inside, 0, climbs);
                AddEndClimb(border, ends.End, ends.Leg.End, stretches[^1].Inside, 1, climbs);
            }
        }

        return new LegCost(known, first, last, Crossings(ends.Leg, climbs, ends.Start, ends.End));
    }

    /// <summary>The leg moved a hair to its left (or right), to see on which side of a border it runs.</summary>
    private static Piece? Beside(Piece leg, double leftMm)
    {
        if (leg is Segment s)
        {
            Vector off = s.Direction.Left * leftMm;
            return new Segment(s.Start + off, s.End + off);
        }

        var arc = (Arc)leg;
        double radius = arc.RadiusMm - (Math.Sign(arc.SweepRad) * leftMm);
        return radius > 0 ? new Arc(arc.Centre, radius, arc.StartRad, arc.SweepRad) : null;
    }

    /// <summary>What a wall adds right after a leg without crossings from a conductor to its foot.</summary>
    internal double WallAfterMm(SurfaceBorder border, bool enters, double legMm, double heightMm)
    {
        double wall = border.Region.WallMm;
        bool fromFoot = ClimbsFromFoot(new(border, 1, enters), enters);
        return fromFoot ? wall - Saving(legMm, wall, wall - heightMm) : wall;
    }

    /// <summary>The length of the way from a foot to the upper edge of a wall across a recess.</summary>
    /// <param name="gapMm">Width of the recess.</param>
    /// <param name="climbMm">How far the edge lies above the conductor's own top; 0 or less when it does not.</param>
    /// <param name="linkMm">The link; a wider recess is not bridged.</param>
    internal static double AcrossRecess(double gapMm, double climbMm, double linkMm)
    {
        double climb = Math.Max(0, climbMm);
        double straight = Math.Sqrt((gapMm * gapMm) + (climb * climb));
        return straight <= linkMm
            ? straight
            : linkMm + climb - Math.Sqrt(Math.Max(0, (linkMm * linkMm) - (gapMm * gapMm)));
    }

    private static void AddClimbs(SurfaceBorder border, IReadOnlyList<Stretch> stretches, List<Climb> climbs)
    {
        for (int i = 1; i < stretches.Count; i++)
        {
            if (stretches[i].Inside != stretches[i - 1].Inside)
            {
                climbs.Add(new(border, (stretches[i].FromShare + stretches[i - 1].ToShare) / 2, stretches[i].Inside));
            }
        }
    }

    /// <summary>A conductor that stands on one side only, and whose leg leaves at once to the other, climbs there.</summary>
    private static void AddEndClimb(SurfaceBorder border, SurfaceConductor? conductor, Point at, bool inside, double share, List<Climb> climbs)
    {
        if (conductor is not null && border.SideOf(at) == Side.Border && !conductor.Stands(border, inside))
        {
            climbs.Add(new(border, share, share == 0 ? inside : !inside));
        }
    }

    private List<Crossing> Crossings(Piece leg, List<Climb> climbs, SurfaceConductor? start, SurfaceConductor? end)
    {
        if (climbs.Count == 0)
        {
            return [];
        }

        climbs.Sort((a, b) => a.Share != b.Share ? a.Share.CompareTo(b.Share) : a.Border.Bit.CompareTo(b.Border.Bit));
        double length = leg.Length;
        double[] saved = new double[climbs.Count];
        if (start is not null && ClimbsFromFoot(climbs[0], climbs[0].Enters))
        {
            saved[0] = Saving(climbs[0].Share * length, climbs[0].WallMm, climbs[0].WallMm - start.HeightAt(leg.Start));
        }

        Climb final = climbs[^1];
        if (end is not null && ClimbsFromFoot(final, !final.Enters))
        {
            double saving = Saving((1 - final.Share) * length, final.WallMm, final.WallMm - end.HeightAt(leg.End));
            saved[^1] = Math.Max(saved[^1], saving);
        }

        for (int i = 1; i < climbs.Count; i++)
        {
            // Down one rib and up the next (or the same one again): the recess between them.
            if (climbs[i - 1] is { Enters: false, Border.Region.Wall: RegionWall.Raised } down
                && climbs[i] is { Enters: true, Border.Region.Wall: RegionWall.Raised } up)
            {
                double saving = Saving((up.Share - down.Share) * length, down.WallMm + up.WallMm, Math.Abs(up.WallMm - down.WallMm));
                saved[i - 1] += saving * down.WallMm / (down.WallMm + up.WallMm);
                saved[i] += saving * up.WallMm / (down.WallMm + up.WallMm);
            }
        }

        return [.. climbs.Select((c, i) => new Crossing(
            c.Border.Region.Name, leg.PointAt(c.Share), Math.Max(0, c.WallMm - saved[i]), saved[i] > 0))];
    }

    private static bool ClimbsFromFoot(Climb climb, bool entersSeenFromConductor) => climb.Border.Region.Wall switch
    {
        RegionWall.Raised => entersSeenFromConductor,
        RegionWall.Sunk => !entersSeenFromConductor,
        _ => false,
    };

    private double Saving(double gapMm, double wallMm, double climbMm) =>
        gapMm < linkMm ? Math.Max(0, gapMm + wallMm - AcrossRecess(gapMm, climbMm, linkMm)) : 0;

    /// <summary>A leg as it is, with the conductors at its ends.</summary>
    private readonly record struct LegEnds(Piece Leg, SurfaceConductor? Start, SurfaceConductor? End);

    private readonly record struct Climb(SurfaceBorder Border, double Share, bool Enters)
    {
        internal double WallMm => Border.Region.WallMm;
    }
}

/// <summary>What a leg costs beyond its plan length, and at which level it begins and ends.</summary>
/// <param name="Known">Regions that it does not merely run along.</param>
/// <param name="First">Of those, the ones that it begins in.</param>
/// <param name="Last">Of those, the ones that it ends in.</param>
/// <param name="Crossed">Walls, in order.</param>
internal sealed record LegCost(ulong Known, ulong First, ulong Last, IReadOnlyList<Crossing> Crossed)
{
    /// <summary>Two places in one: nothing crossed.</summary>
    internal static LegCost Nothing { get; } = new(0, 0, 0, []);

    internal double AddedMm => Crossed.Sum(c => c.AddedMm);
}
