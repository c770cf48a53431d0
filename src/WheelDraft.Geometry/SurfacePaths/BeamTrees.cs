namespace WheelDraft.Geometry;

/// <summary>All beams over a relief that somebody has followed, each looked into once: those of every bend and of every conductor.</summary>
/// <remarks>Trees are kept while there is room; what goes beyond is looked into again each time, with the same result.</remarks>
internal sealed class BeamTrees
{
    /// <summary>Beams that are kept with what lies before them.</summary>
    /// <remarks>About half a kilobyte each, so 200 MB at most; only time depends on it.</remarks>
    private const int MostKept = 400_000;

    private readonly BeamSpread _spread;
    private readonly BendWays?[] _ways;
    private readonly Dictionary<SurfaceConductor, ConductorBeams> _conductors = [];
    private readonly Dictionary<SurfaceConductor, double[]> _planMm = [];
    private int _kept;

    internal BeamTrees(Relief relief, RecessLinks links)
    {
        (Relief, Links) = (relief, links);
        _spread = new BeamSpread(relief);
        _ways = new BendWays[relief.Nodes.Count];
        UnsureMm = relief.SlackMm + SurfaceTolerances.AlongMm;
    }

    internal Relief Relief { get; }

    internal RecessLinks Links { get; }

    /// <summary>By how much a way can come out shorter than its plan, mm: so near to a limit in plan no way is yet left out, none is yet the shortest.</summary>
    internal double UnsureMm { get; }

    /// <summary>How far each bend is from a conductor in plan at least, mm, by node.</summary>
    internal double[] PlanMm(SurfaceConductor conductor)
    {
        if (!_planMm.TryGetValue(conductor, out double[]? all))
        {
            all = [.. Relief.Nodes.Select(n => conductor.Bounds.DistanceTo(Relief.Corners[n.Corner].At))];
            _planMm.Add(conductor, all);
        }

        return all;
    }

    /// <summary>The ways that leave a bend.</summary>
    internal BendWays WaysFrom(ReliefSector bend) => _ways[bend.Node] ??= new BendWays(this, bend);

    /// <summary>The ways that leave a bend; null while nobody has asked for any.</summary>
    internal BendWays? KnownWaysFrom(int node) => _ways[node];

    /// <summary>The beams that leave a bend.</summary>
    internal BeamNode[] OfBend(ReliefSector bend, BeamTree tree) => Nodes(BeamSources.FromBend(Relief, bend), tree);

    /// <summary>The beams that leave a conductor: those of its round edges, then those of its corners.</summary>
    internal ConductorBeams OfConductor(SurfaceConductor conductor)
    {
        if (!_conductors.TryGetValue(conductor, out ConductorBeams? beams))
        {
            BeamTree tree = new(Relief.PlaceCount, isOfBend: false);
            beams = new(tree,
            [
                .. conductor.Pieces.OfType<Arc>().Select(arc => new ConductorSource(Nodes(BeamSources.FromArc(conductor, arc), tree), [])),
                .. conductor.Corners.Concat(FeetNearWalls(conductor))
                    .Select(corner => new ConductorSource(Nodes(BeamSources.FromCorner(Relief, conductor, corner), tree), Nodes(Links.From(conductor, corner), tree))),
            ]);
            _conductors.Add(conductor, beams);
        }

        return beams;
    }

    /// <summary>Where a beam goes on.</summary>
    internal BeamExit[] ExitsOf(BeamNode node)
    {
        if (node.Exits is { } known)
        {
            return known;
        }

        BeamExit[] exits = _spread.Of(node.Beam, node.Tree);
        if (_kept < MostKept)
        {
            _kept++;
            node.Exits = exits;
        }

        return exits;
    }

    /// <summary>The beams beyond an exit.</summary>
    internal BeamNode[] Beyond(BeamNode node, BeamExit exit) => exit.Beyond ??= Nodes(_spread.Beyond(node.Beam, exit), node.Tree);

    /// <summary>The way on from the upper edge at an exit to a conductor near the foot of its wall; null when there is none.</summary>
    internal Arrival? Land(BeamReach reach, BeamExit exit, SurfaceConductor conductor)
    {
        if (!Links.IsNear(exit.Edge!, conductor))
        {
            return null;
        }

        Dictionary<SurfaceConductor, Arrival?> landings = exit.Landings ??= [];
        if (!landings.TryGetValue(conductor, out Arrival? landed))
        {
            landed = Links.Land(reach.Beam, exit.Edge!, exit.First, exit.Second, conductor);
            landings.Add(conductor, landed);
        }

        return landed;
    }

    private static BeamNode[] Nodes(IEnumerable<Beam> beams, BeamTree tree) => [.. beams.Select(b => new BeamNode(b, tree))];

    /// <summary>Where a round edge is nearest to a wall.</summary>
    private IEnumerable<Point> FeetNearWalls(SurfaceConductor conductor)
    {
        foreach (Arc arc in conductor.Pieces.OfType<Arc>())
        {
            foreach (ReliefEdge edge in Relief.Edges.Where(e => !e.Blocks && e.IsUpright))
            {
                Point foot = arc.Centre + (edge.Uphill * arc.RadiusMm);
                if (BorderCuts.IsOnSpan(arc, foot) && -edge.UphillOf(foot) >= 0 && edge.DistanceTo(foot) < Links.LinkMm)
                {
                    yield return foot;
                }
            }
        }
    }
}

/// <summary>The beams that leave a conductor.</summary>
/// <param name="Tree">What they have in common.</param>
/// <param name="Sources">Those of its round edges, then those of its corners.</param>
internal sealed record ConductorBeams(BeamTree Tree, IReadOnlyList<ConductorSource> Sources);

/// <summary>The beams that leave one round edge or corner of a conductor.</summary>
/// <param name="Own">From its outline.</param>
/// <param name="Linked">From the upper edges of walls that it is linked to.</param>
internal sealed record ConductorSource(BeamNode[] Own, BeamNode[] Linked);
