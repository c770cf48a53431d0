namespace WheelDraft.Geometry;

/// <summary>Links across recesses narrower than the link: from a conductor to a wall at whose foot it stands, and from rib to rib.</summary>
/// <remarks><para>A recess is bridged by a straight link of at most that length in the worst place (IEC 60664-1, clause on measuring, assumption 2):
/// from a conductor's upper edge at a distance g from a wall one reaches, with the link l, a half disc of radius r = √(l² − g²) on the wall; a place
/// D away from its middle is √(g² + D²) away where D ≤ r, and l + D − r otherwise. Both are distances in one unfolding each.</para>
/// <para>Between two ribs the straight link is counted however slantwise it is crossed: at slants at which it would be longer than l, a path may come out too
/// short by what a link and a walk along the rib take more; never too long.</para></remarks>
internal sealed class RecessLinks(Relief relief, double linkMm)
{
    /// <summary>The link's length, mm.</summary>
    internal double LinkMm => linkMm;

    /// <summary>The length of the way from a place near a wall to its upper edge across a recess.</summary>
    /// <param name="gapMm">Width of the recess there, less than the link.</param>
    /// <param name="awayMm">How far along the wall, up and aside, the place on the edge is from opposite the conductor's upper edge.</param>
    /// <param name="linkMm">The link.</param>
    internal static double AcrossRecess(double gapMm, double awayMm, double linkMm)
    {
        double reach = Math.Sqrt(Math.Max(0, (linkMm * linkMm) - (gapMm * gapMm)));
        return awayMm <= reach ? Math.Sqrt((gapMm * gapMm) + (awayMm * awayMm)) : linkMm + awayMm - reach;
    }

    /// <summary>Beams from the upper edges of walls near which a place of a conductor stands.</summary>
    internal IEnumerable<Beam> From(SurfaceConductor conductor, Point at)
    {
        foreach (ReliefEdge edge in relief.Edges)
        {
            double gap = -edge.UphillOf(at);
            if (!edge.Blocks && edge.IsUpright && gap >= -SurfaceTolerances.SameMm && gap < linkMm && edge.Whole.DistanceTo(at) < linkMm && IsFree(at, edge))
            {
                double climb = Math.Max(0, edge.WallMm - conductor.HeightAt(at));
                foreach (Beam beam in Over(edge, at, Math.Max(0, gap), climb))
                {
                    yield return beam;
                }
            }
        }
    }

    private IEnumerable<Beam> Over(ReliefEdge edge, Point at, double gap, double climb)
    {
        double opposite = edge.AlongOf(at), reach = Math.Sqrt((linkMm * linkMm) - (gap * gap));
        Point wall = edge.At(opposite) - (edge.Uphill * climb);
        if (climb >= reach)
        {
            return Beams([Part(edge, at, wall, linkMm - reach, 0, edge.LengthMm)]);
        }

        // Straight to the upper edge as far as the link goes, by link and along the wall beyond, and bent at the edge in between.
        double straight = Math.Sqrt((gap * gap) + (climb * climb)), aside = Math.Sqrt((reach * reach) - (climb * climb));
        Point source = edge.At(opposite) - (edge.Uphill * straight);
        return Beams([
            Part(edge, at, source, 0, opposite - aside, opposite + aside),
            Part(edge, at, wall, linkMm - reach, 0, opposite - aside),
            Part(edge, at, wall, linkMm - reach, opposite + aside, edge.LengthMm),
            Bent(edge, at, (source, wall), opposite - aside),
            Bent(edge, at, (source, wall), opposite + aside),
        ]);
    }

    private static IEnumerable<Beam> Beams(IEnumerable<Beam?> beams) => beams.OfType<Beam>();

    private static Beam? Part(ReliefEdge edge, Point at, Point source, double offset, double from, double to)
    {
        (from, to) = (Math.Max(0, from), Math.Min(edge.LengthMm, to));
        if (from >= to || -edge.UphillOf(source) <= Tolerances.TouchMm)
        {
            return null;
        }

        return Link(edge, at, source, offset, (edge.At(from) - source).Unit(), (edge.At(to) - source).Unit());
    }

    private Beam? Bent(ReliefEdge edge, Point at, (Point Straight, Point Wall) sources, double along)
    {
        Point bend = edge.At(along);
        if (along < 0 || along > edge.LengthMm || bend.DistanceTo(sources.Straight) <= Tolerances.TouchMm || bend.DistanceTo(sources.Wall) <= Tolerances.TouchMm)
        {
            return null;
        }

        return Link(edge, at, bend, linkMm, (bend - sources.Straight).Unit(), (bend - sources.Wall).Unit());
    }

    private static Beam Link(ReliefEdge edge, Point at, Point source, double offset, Vector a, Vector b)
    {
        (Vector right, Vector left) = Beam.Ordered(a, b);
        return new Beam
        {
            Entry = BeamEntry.Link,
            Through = edge,
            IsHigh = true,
            Source = source,
            Right = right,
            Left = left,
            OffsetMm = offset - edge.SlackMm,
            LinkedFrom = at,
        };
    }

    private bool IsFree(Point at, ReliefEdge wall)
    {
        ReliefEdge whole = wall.Whole;
        Point foot = whole.At(Math.Clamp(whole.AlongOf(at), 0, whole.LengthMm));
        foreach (ReliefEdge edge in relief.Edges)
        {
            if (edge.Whole != whole && edge.DistanceTo(at) > SurfaceTolerances.SameMm && edge.DistanceTo(foot) > SurfaceTolerances.SameMm && Parts(edge, at, foot))
            {
                return false;
            }
        }

        return true;
    }

    private static bool Parts(ReliefEdge edge, Point a, Point b)
    {
        Vector ab = b - a;
        return edge.UphillOf(a) * edge.UphillOf(b) < 0 && ab.Cross(edge.From - a) * ab.Cross(edge.To - a) < 0;
    }

    /// <summary>Whether a conductor can stand so near to the foot of a wall that a link leads to it.</summary>
    internal bool IsNear(ReliefEdge edge, SurfaceConductor conductor) =>
        edge.IsUpright && linkMm > 0 && edge.Whole.Bounds.DistanceTo(conductor.Bounds) < linkMm;

    /// <summary>No way through a stretch of an upper edge lands on a conductor sooner, mm: what is left of the wall has to be gone down, and the plan gap across.</summary>
    internal double LeastMm(BeamExit exit, SurfaceConductor conductor)
    {
        double climb = Math.Max(0, exit.Edge!.WallMm - conductor.HighestMm), gap = exit.Plan.DistanceTo(conductor.Bounds);
        return exit.NearMm + Math.Sqrt((climb * climb) + (gap * gap)) - exit.Edge.SlackMm - (2 * SurfaceTolerances.NarrowedShare * linkMm);
    }

    /// <summary>The way on from an upper edge to a conductor near the foot of its wall.</summary>
    internal Arrival? Land(Beam beam, ReliefEdge edge, Point first, Point second, SurfaceConductor conductor)
    {
        if (!IsNear(edge, conductor))
        {
            return null;
        }

        Arrival? best = null;
        for (int i = 0; i < conductor.Pieces.Count; i++)
        {
            if (edge.Whole.Bounds.DistanceTo(conductor.PieceBounds[i]) < linkMm && conductor.Reaches(i, edge, -edge.Uphill)
                && LandOn(beam, edge, (edge.AlongOf(first), edge.AlongOf(second)), conductor, conductor.Pieces[i]) is { } landed
                && (best is null || landed.LengthMm < best.LengthMm))
            {
                best = landed;
            }
        }

        return best;
    }

    /// <summary>The way from a bend on the upper edge of walls to a conductor near the foot of one of them.</summary>
    internal Arrival? Land(ReliefCorner corner, ReliefSector bend, SurfaceConductor conductor)
    {
        Arrival? best = null;
        foreach (ReliefEdge edge in corner.BrinksOf(bend).Where(e => !e.Blocks))
        {
            Beam beam = new() { Entry = BeamEntry.Source, Source = corner.At, Right = edge.Along, Left = edge.Along };
            if (Land(beam, edge, corner.At, corner.At, conductor) is { } landed && !(best?.LengthMm <= landed.LengthMm))
            {
                best = landed;
            }
        }

        return best;
    }

    private Arrival? LandOn(Beam beam, ReliefEdge edge, (double From, double To) window, SurfaceConductor conductor, Piece piece)
    {
        (double from, double to) = (0, 1);
        if (piece is Segment && !(Beam.Cut(-edge.UphillOf(piece.Start) + SurfaceTolerances.SameMm, -edge.UphillOf(piece.End) + SurfaceTolerances.SameMm, ref from, ref to)
            && Beam.Cut(linkMm + edge.UphillOf(piece.Start), linkMm + edge.UphillOf(piece.End), ref from, ref to)))
        {
            return null;
        }

        Landing? best = null;
        foreach ((double share, double off) in Shares(beam, edge, piece, (from, to), share => At(share).LengthMm, CanBeLess))
        {
            Landing landing = At(share) with { OffMm = off };
            if (double.IsFinite(landing.LengthMm) && (best is not { } known || landing.LengthMm < known.LengthMm - Tolerances.TouchMm) && IsFree(landing.On, edge))
            {
                best = landing;
            }
        }

        return best is not { } found ? null : new Arrival(found.LengthMm - found.OffMm - edge.SlackMm, beam, edge.At(found.AlongMm), found.On, edge);

        Landing At(double share) => Landed(beam, edge, window, piece.PointAt(share), conductor);

        // No landing is nearer than straight in one unfolding, and that grows by no more than the step from place to place.
        bool CanBeLess(double a, double b) =>
            best is not { } known || Straight(beam, edge, piece.PointAt(a), conductor) + Straight(beam, edge, piece.PointAt(b), conductor) - ((b - a) * piece.Length) < 2 * known.LengthMm;
    }

    /// <summary>No way of a beam over an edge to a place at the foot of its wall is shorter, mm, wherever on the conductor's height it lands.</summary>
    private static double Straight(Beam beam, ReliefEdge edge, Point on, SurfaceConductor conductor)
    {
        double climb = Math.Max(0, edge.WallMm - conductor.HighestMm), gap = Math.Max(0, -edge.UphillOf(on));
        double across = Math.Max(0, edge.UphillOf(beam.Source)), aside = edge.AlongOf(on) - edge.AlongOf(beam.Source);
        double down = across + Math.Sqrt((gap * gap) + (climb * climb));
        return beam.OffsetMm + Math.Sqrt((aside * aside) + (down * down));
    }

    /// <summary>Places of a piece where a way can land: its ends, where it is opposite, and where narrowing down leads; with what is taken off there.</summary>
    private IEnumerable<(double Share, double OffMm)> Shares(Beam beam, ReliefEdge edge, Piece piece, (double From, double To) part, Func<double, double> length, Func<double, double, bool> canBeLess)
    {
        double start = edge.AlongOf(piece.PointAt(part.From)), end = edge.AlongOf(piece.PointAt(part.To)), source = edge.AlongOf(beam.Source);
        if (piece is Segment && start != end)
        {
            yield return (part.From + ((part.To - part.From) * Math.Clamp((source - start) / (end - start), 0, 1)), 0);
        }

        int parts = piece is Arc ? 24 : 1;
        for (int i = 0; i <= parts; i++)
        {
            yield return (At(i), 0);
        }

        for (int i = 0; i < parts; i++)
        {
            if (canBeLess(At(i), At(i + 1)))
            {
                yield return (Narrowed.Least(length, At(i), At(i + 1)), SurfaceTolerances.NarrowedShare * linkMm);
            }
        }

        double At(int i) => part.From + ((part.To - part.From) * i / parts);
    }

    private Landing Landed(Beam beam, ReliefEdge edge, (double From, double To) window, Point on, SurfaceConductor conductor)
    {
        double gap = -edge.UphillOf(on);
        if (gap < -SurfaceTolerances.SameMm || gap >= linkMm)
        {
            return new Landing(double.PositiveInfinity, 0, on, 0);
        }

        gap = Math.Max(0, gap);
        double climb = Math.Max(0, edge.WallMm - conductor.HeightAt(on)), opposite = edge.AlongOf(on);
        double along = Math.Clamp(Crossed(beam, edge, (gap, climb), opposite), Math.Min(window.From, window.To), Math.Max(window.From, window.To));
        double away = Math.Sqrt(((along - opposite) * (along - opposite)) + (climb * climb));
        return new Landing(beam.LengthTo(edge.At(along)) + AcrossRecess(gap, away, linkMm), along, on, 0);
    }

    /// <summary>Where the upper edge is best crossed on the way to a place opposite: in one of the two unfoldings, or where one goes over into the other.</summary>
    private double Crossed(Beam beam, ReliefEdge edge, (double GapMm, double ClimbMm) recess, double opposite)
    {
        double across = edge.UphillOf(beam.Source), source = edge.AlongOf(beam.Source);
        double reach = Math.Sqrt(Math.Max(0, (linkMm * linkMm) - (recess.GapMm * recess.GapMm)));
        double aside = recess.ClimbMm >= reach ? 0 : Math.Sqrt((reach * reach) - (recess.ClimbMm * recess.ClimbMm));
        double straight = At(Math.Sqrt((recess.GapMm * recess.GapMm) + (recess.ClimbMm * recess.ClimbMm)));
        if (aside > 0 && Math.Abs(straight - opposite) <= aside)
        {
            return straight;
        }

        double overWall = At(recess.ClimbMm);
        return Math.Abs(overWall - opposite) >= aside ? overWall : opposite + Math.CopySign(aside, source - opposite);

        double At(double beyond) => across + beyond <= 0 ? opposite : source + ((opposite - source) * across / (across + beyond));
    }

    private readonly record struct Landing(double LengthMm, double AlongMm, Point On, double OffMm);

    /// <summary>The beam carried on over bridges across the recess before an edge.</summary>
    internal static IEnumerable<Beam> AcrossRecess(BeamReach reach, ReliefEdge near)
    {
        foreach (ReliefEdge far in near.Across)
        {
            Vector middle = reach.Right + reach.Left;
            if (middle.Dot(far.Outward) < 0 && Seen(reach.Beam.Source, near, far) is var (source, from, to)
                && new Beam() { Entry = BeamEntry.Source, Source = source, Right = reach.Right, Left = reach.Left }.Clip(from, to) is { } way)
            {
                (Vector right, Vector left) = Beam.Ordered((way.First - source).Unit(), (way.Second - source).Unit());
                yield return new Beam
                {
                    Entry = BeamEntry.AcrossRecess,
                    Before = reach.Beam,
                    Through = far,
                    IsHigh = !far.Blocks,
                    Near = near,
                    Source = source,
                    Right = right,
                    Left = left,
                    OffsetMm = reach.Beam.OffsetMm - near.SlackMm - far.SlackMm,
                };
            }
        }
    }

    /// <summary>Beams over the bridges that begin at a bend.</summary>
    internal static IEnumerable<Beam> FromBend(ReliefCorner corner, ReliefSector sector) =>
        corner.BrinksOf(sector).SelectMany(edge => FromBrink(corner.At, edge));

    /// <summary>Beams over the bridges that begin at a place on an edge.</summary>
    internal static IEnumerable<Beam> FromBrink(Point at, ReliefEdge near)
    {
        foreach (ReliefEdge far in near.Across)
        {
            if (Seen(at, near, far) is var (source, from, to) && Math.Min(source.DistanceTo(from), source.DistanceTo(to)) > Tolerances.TouchMm
                && far.OutwardOf(source) > Tolerances.TouchMm)
            {
                (Vector right, Vector left) = Beam.Ordered((from - source).Unit(), (to - source).Unit());
                yield return new Beam
                {
                    Entry = BeamEntry.Link,
                    Through = far,
                    IsHigh = !far.Blocks,
                    Source = source,
                    Right = right,
                    Left = left,
                    OffsetMm = -near.SlackMm - far.SlackMm,
                    LinkedFrom = at,
                };
            }
        }
    }

    /// <summary>Where a place comes to lie by unfolding a bridge, and the part of the far edge that lies before the near one; null when none does.</summary>
    private static (Point Source, Point From, Point To)? Seen(Point at, ReliefEdge near, ReliefEdge far)
    {
        double a = near.OutwardOf(far.From), b = near.OutwardOf(far.To);
        (double from, double to) = (0, 1);
        if (!Beam.Cut(a, b, ref from, ref to))
        {
            return null;
        }

        double step = far.BrinkMm - near.BrinkMm, shift = 0;
        if (Math.Abs(near.Along.Cross(far.Along)) < 1e-9)
        {
            double gap = Math.Max(0, (a + b) / 2);
            shift = Math.Sqrt((gap * gap) + (step * step)) - gap;
        }

        return (at - (near.Outward * shift), far.From.Towards(far.To, from), far.From.Towards(far.To, to));
    }
}

/// <summary>Least values of functions of one number.</summary>
internal static class Narrowed
{
    /// <summary>Where a function with one valley is least between two ends, to within rounding of its value.</summary>
    /// <remarks>J. Kiefer, Sequential minimax search for a maximum, Proceedings of the American Mathematical Society 4 (1953).</remarks>
    internal static double Least(Func<double, double> function, double from, double to)
    {
        const double golden = 0.6180339887498949;
        double a = to - ((to - from) * golden), b = from + ((to - from) * golden);
        double atA = function(a), atB = function(b);
        for (int i = 0; i < 48; i++)
        {
            if (atA <= atB)
            {
                (to, b, atB) = (b, a, atA);
                a = to - ((to - from) * golden);
                atA = function(a);
            }
            else
            {
                (from, a, atA) = (a, b, atB);
                b = from + ((to - from) * golden);
                atB = function(b);
            }
        }

        return atA <= atB ? a : b;
    }
}
