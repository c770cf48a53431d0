namespace WheelDraft.Geometry;

/// <summary>The straight ways from one bend to conductors and other bends, found once for all pairs that need them.</summary>
/// <remarks>Which ways a pair needs depends on how far its two conductors are from the bend and from each other; most pairs with one conductor in
/// common need the same. What is found goes a little further than asked, so that the next pair finds it done.</remarks>
internal sealed class BendWays(BeamTrees trees, ReliefSector bend)
{
    /// <summary>How much further than asked ways are followed, mm: only time depends on it.</summary>
    private const double FurtherMm = 6;

    private readonly Dictionary<SurfaceConductor, WaysTo> _to = [];
    private readonly BeamTree _tree = new(trees.Relief.PlaceCount, isOfBend: true);
    private BeamNode[]? _beams;

    /// <summary>The shortest ways found to other bends.</summary>
    internal Dictionary<int, Arrival> Bends => _tree.Bends;

    /// <summary>The shortest way to a conductor, with all ways to bends that can be part of one to it.</summary>
    /// <param name="conductor">The conductor.</param>
    /// <param name="limitMm">Longer ones are of no use, mm.</param>
    /// <exception cref="TooManyBeamsException">The walls scatter more beams than are followed.</exception>
    internal WaysTo To(SurfaceConductor conductor, double limitMm)
    {
        if (_to.TryGetValue(conductor, out WaysTo? known) && (known.LimitMm >= limitMm || !known.WasLimited))
        {
            return known.AreTooMany ? throw new TooManyBeamsException() : known;
        }

        double byBend = ByBendMm(conductor), outdone = byBend + BeamTree.SurelyMm, limit = Math.Min(limitMm + FurtherMm, outdone);
        if (limit <= known?.LimitMm)
        {
            // What was left out then is outdone by a way that is known by now.
            _to[conductor] = known with { ByBendMm = byBend, WasLimited = false };
            return known.AreTooMany ? throw new TooManyBeamsException() : _to[conductor];
        }

        BeamTracer tracer = new(trees, [conductor])
        {
            Limit = () => limit,
            Rest = plan => plan.DistanceTo(conductor.Bounds),
            EnoughBeyondMm = trees.UnsureMm,
        };
        try
        {
            tracer.Trace(_beams ??= trees.OfBend(bend, _tree));
        }
        catch (TooManyBeamsException)
        {
            _to[conductor] = new WaysTo(limit, null, byBend, true, true);
            throw;
        }

        Arrival? shortest = trees.Links.Land(trees.Relief.Corners[bend.Corner], bend, conductor) is { } landed && !(tracer.Best[0]?.LengthMm <= landed.LengthMm) ? landed : tracer.Best[0];
        if (shortest is not null)
        {
            trees.OfConductor(conductor).Tree.ReachBend(bend.Place, shortest.LengthMm);
            trees.OfConductor(conductor).Tree.ReachBy(shortest.LengthMm, _tree);
        }

        return _to[conductor] = new WaysTo(limit, shortest, byBend, tracer.WasLimited && limit < outdone, false);
    }

    /// <summary>The shortest way to a conductor that is known by another bend, whichever way it is gone, mm; infinite when none is.</summary>
    private double ByBendMm(SurfaceConductor conductor)
    {
        double least = double.PositiveInfinity;
        foreach ((int node, Arrival there) in Bends)
        {
            if (trees.KnownWaysFrom(node) is { } ways && ways._to.TryGetValue(conductor, out WaysTo? on) && ways.Bends.TryGetValue(bend.Node, out Arrival? back))
            {
                least = Math.Min(least, Math.Max(there.LengthMm, back.LengthMm) + on.KnownMm);
            }
        }

        return least;
    }
}

/// <summary>The ways from a bend to a conductor.</summary>
/// <param name="LimitMm">How long ways were followed.</param>
/// <param name="Shortest">The shortest without a bend; null when there is none.</param>
/// <param name="ByBendMm">The shortest way that was known by other bends, mm; infinite without one.</param>
/// <param name="WasLimited">Whether anything was left out because it was too long.</param>
/// <param name="AreTooMany">Whether there were too many to follow.</param>
internal sealed record WaysTo(double LimitMm, Arrival? Shortest, double ByBendMm, bool WasLimited, bool AreTooMany)
{
    /// <summary>Length of the shortest way that is known, mm.</summary>
    internal double KnownMm => Math.Min(Shortest?.LengthMm ?? double.PositiveInfinity, ByBendMm);
}
