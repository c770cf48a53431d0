namespace WheelDraft.Geometry;

/// <summary>Where the straight ways of a source arrive.</summary>
/// <param name="LengthMm">Length from the source.</param>
/// <param name="Beam">The beam that arrives.</param>
/// <param name="At">Where, on the beam's sheet.</param>
/// <param name="Linked">Where on the conductor a link ends that starts there; null without one.</param>
/// <param name="Over">The wall that the link spares.</param>
internal sealed record Arrival(double LengthMm, Beam Beam, Point At, Point? Linked = null, ReliefEdge? Over = null);

/// <summary>Follows the beams of sources over a relief, and notes the shortest ways to conductors.</summary>
/// <param name="trees">The beams of the surface.</param>
/// <param name="targets">Conductors that are looked for.</param>
internal sealed class BeamTracer(BeamTrees trees, IReadOnlyList<SurfaceConductor> targets)
{
    private readonly Stack<BeamNode> _open = new();
    private readonly Arrival?[] _best = new Arrival?[targets.Count];
    private bool _wasLimited;

    // Walls that stand close scatter beams without end in sight; a search that follows more than this is given up for a plain lower
    // bound. Scenes of tests and demos take some thousands.
    private const int MostBeams = 500_000;

    /// <summary>Longest way that is of use, mm.</summary>
    internal required Func<double> Limit { get; init; }

    /// <summary>Least that any way still needs beyond a stretch in plan, mm.</summary>
    internal required Func<Bounds, double> Rest { get; init; }

    /// <summary>With one target: how much longer than a way to it others are still followed, mm.</summary>
    internal double EnoughBeyondMm { get; init; } = double.PositiveInfinity;

    /// <summary>Whether anything may have been left out because it was longer than is of use.</summary>
    /// <remarks>A conductor that is not found may have been seen further away.</remarks>
    internal bool WasLimited => _wasLimited || (Array.Exists(_best, b => b is null) && double.IsFinite(Limit()));

    /// <summary>The shortest way to each target.</summary>
    internal IReadOnlyList<Arrival?> Best => _best;

    /// <exception cref="TooManyBeamsException">The walls scatter more beams than are followed.</exception>
    internal void Trace(BeamNode[] sources)
    {
        int followed = 0;
        foreach (BeamNode source in sources)
        {
            _open.Push(source);
            while (_open.TryPop(out BeamNode? next))
            {
                if (++followed > MostBeams || _open.Count > MostBeams)
                {
                    throw new TooManyBeamsException();
                }

                Follow(next);
            }
        }
    }

    private void Follow(BeamNode node)
    {
        foreach (BeamExit exit in trees.ExitsOf(node))
        {
            if (exit.Reach is { } reach)
            {
                LookFor(reach);
            }

            if (exit.Kind != BeamExitKind.Ends && !IsTooFar(exit) && !node.Tree.Outdoes(node.Beam, exit))
            {
                foreach (BeamNode beyond in trees.Beyond(node, exit))
                {
                    _open.Push(beyond);
                }

                Land(exit);
            }
        }
    }

    private void LookFor(in BeamReach reach)
    {
        for (int k = 0; k < targets.Count; k++)
        {
            double most = Math.Min(Limit(), _best[k]?.LengthMm ?? double.PositiveInfinity);
            if (reach.Nearest(targets[k], most - reach.Beam.OffsetMm) is { } at)
            {
                _best[k] = new Arrival(reach.Beam.LengthTo(at), reach.Beam, at);
            }
        }
    }

    /// <summary>From the upper edge of a wall that a beam comes down, by a link to a conductor at its foot.</summary>
    private void Land(BeamExit exit)
    {
        if (exit.Reach is not { Climbs: false } reach)
        {
            return;
        }

        for (int k = 0; k < targets.Count; k++)
        {
            double most = Math.Min(Limit(), _best[k]?.LengthMm ?? double.PositiveInfinity);
            if (trees.Links.LeastMm(exit, targets[k]) < most && trees.Land(reach, exit, targets[k]) is { } landed && landed.LengthMm < most)
            {
                _best[k] = landed;
            }
        }
    }

    private bool IsTooFar(BeamExit exit)
    {
        double least = exit.NearMm + Rest(exit.Plan);
        if (least >= Limit())
        {
            _wasLimited = true;
            return true;
        }

        return _best[0] is { } found && least >= found.LengthMm + EnoughBeyondMm;
    }
}

/// <summary>A search over walls that would follow too many beams.</summary>
internal sealed class TooManyBeamsException : Exception;
