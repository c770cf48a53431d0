using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A creepage path between two nets on one surface.</summary>
/// <param name="Surface">The surface.</param>
/// <param name="First">Item at its beginning.</param>
/// <param name="Second">Item at its end.</param>
/// <param name="NominalMm">Length that counts, as drawn.</param>
/// <param name="WorstMm">The same with all tolerances against it.</param>
/// <param name="Parts">Its parts from conductor to conductor, in order; more than one where floating copper lies between.</param>
public sealed record CreepagePath(
    InsulatingSurface Surface, Solid First, Solid Second, double NominalMm, double WorstMm, IReadOnlyList<CreepagePart> Parts)
{
    /// <summary>Height of the surface under the first item, mm.</summary>
    public required double FirstLevelMm { get; init; }

    /// <summary>Height of the surface under the second; the same but on surfaces that are one.</summary>
    public required double SecondLevelMm { get; init; }

    /// <summary>The path from the other end.</summary>
    public CreepagePath Reversed() => new(Surface, Second, First, NominalMm, WorstMm, [.. Parts.Reverse().Select(p => p.Reversed())])
    {
        FirstLevelMm = SecondLevelMm,
        SecondLevelMm = FirstLevelMm,
    };
}

/// <summary>A part of a creepage path, from one conductor to the next.</summary>
/// <param name="From">Item at its beginning.</param>
/// <param name="To">Item at its end.</param>
/// <param name="NominalMm">Its length as drawn.</param>
/// <param name="WorstMm">Its length with all tolerances against it; counted as nothing where it is below X.</param>
/// <param name="Counts">Whether it is at least X long at its worst and so counts.</param>
/// <param name="Path">Its legs.</param>
public sealed record CreepagePart(string From, string To, double NominalMm, double WorstMm, bool Counts, SurfacePath Path)
{
    internal CreepagePart Reversed() => new(To, From, NominalMm, WorstMm, Counts, Path.Reversed());
}

/// <summary>Creepage paths on one surface, or on several that are one: first between every two conductors, then the shortest chain over
/// floating copper.</summary>
/// <remarks>What is judged is measured among ribs and slots at their least (<see cref="WorstBarriers"/>), with a link longer by all that can
/// bring a conductor nearer to a wall, and notches of the outline narrower by both their faces; what is drawn, among those drawn. A turning conductor is what it sweeps, but on the carrier against
/// another that turns with it.</remarks>
internal sealed class SurfaceCreepage
{
    private readonly InsulatingSurface _surface;
    private readonly double _xMm;
    private readonly IReadOnlyList<CreepageConductor> _conductors;
    private readonly ILookup<string, int> _ofNet;
    private readonly int[] _floating;
    private readonly ConductorPrints _prints;
    private readonly SurfacePaths _worst;
    private readonly Lazy<SurfacePaths> _drawn;

    /// <summary>Paths between the conductors on a surface.</summary>
    /// <param name="surface">The surface.</param>
    /// <param name="solids">All solids between which paths are asked for, and all that may float.</param>
    /// <param name="grooveXMm">X, mm.</param>
    /// <param name="leftOut">What solids that were left out of the list bring to the surface.</param>
    internal SurfaceCreepage(InsulatingSurface surface, IReadOnlyList<Solid> solids, double grooveXMm, Bystanders? leftOut = null)
    {
        (_surface, _xMm) = (surface, grooveXMm);
        _conductors = CreepageConductor.On(surface, solids, grooveXMm);
        _ofNet = Enumerable.Range(0, _conductors.Count).ToLookup(i => _conductors[i].Net, StringComparer.Ordinal);
        _floating = [.. Enumerable.Range(0, _conductors.Count).Where(i => _conductors[i].Floats)];
        Bystanders all = Bystanders.Of(_conductors).With(leftOut ?? Bystanders.None);
        _prints = new(surface, _conductors, all.Copper, grooveXMm);
        double nearer = all.LoosestMm + (2 * surface.FaceMm);
        bool isPlain = surface is { Ribs.Count: 0, Slots.Count: 0 }, hasNotches = surface.Outline is not null && surface.FaceMm > 0;
        _worst = Paths(WorstBarriers.On(surface), isPlain ? grooveXMm : grooveXMm + nearer, grooveXMm + (2 * surface.FaceMm));
        _drawn = new(() => (isPlain || nearer == 0) && !hasNotches ? _worst : Paths(surface, grooveXMm, grooveXMm));
    }

    /// <summary>The conductors, in the order of their first solids.</summary>
    internal IReadOnlyList<CreepageConductor> Conductors => _conductors;

    private SurfacePaths Paths(InsulatingSurface surface, double linkMm, double notchMm) =>
        new(surface.Outline, surface.Regions(_xMm), _prints, linkMm, notchMm);

    /// <summary>The shortest path at its worst between two nets; null when one of them is not on the surface or no path leads across.</summary>
    internal CreepagePath? Between(string firstNet, string secondNet)
    {
        CreepagePath? best = null;
        foreach (int first in _ofNet[firstNet])
        {
            if (Chain(first, _ofNet[secondNet]) is { } path && (best is null || path.WorstMm < best.WorstMm))
            {
                best = path;
            }
        }

        return best;
    }

    /// <summary>The shortest path at its worst between two conductors; null when no path leads across.</summary>
    internal CreepagePath? Between(int first, int second) => Chain(first, [second]);

    /// <summary>The shortest chain from a conductor to one that is wanted, over floating copper (Dijkstra over conductors).</summary>
    private CreepagePath? Chain(int start, IEnumerable<int> wanted)
    {
        HashSet<int> ends = [.. wanted];
        int[] stops = [.. ends.Concat(_floating).Append(start).Distinct().Order()];
        Dictionary<int, (double At, int Before, CreepagePart? Last)> reached = new() { [start] = (0, -1, null) };
        HashSet<int> settled = [];
        while (stops.Where(i => reached.ContainsKey(i) && !settled.Contains(i)).OrderBy(i => reached[i].At).FirstOrDefault(-1) is var next and >= 0)
        {
            settled.Add(next);
            if (ends.Contains(next))
            {
                return Path(start, next, reached);
            }

            foreach (int other in stops.Where(i => !settled.Contains(i)))
            {
                double known = reached.TryGetValue(other, out var way) ? way.At : double.PositiveInfinity;
                if (Part(next, other, isWhole: next == start && ends.Contains(other)) is { } part && reached[next].At + Counted(part) < known)
                {
                    reached[other] = (reached[next].At + Counted(part), next, part);
                }
            }
        }

        return null;
    }

    private static double Counted(CreepagePart part) => part.Counts ? part.WorstMm : 0;

    /// <summary>A part of a chain: below X it counts as nothing, unless it is the whole path.</summary>
    private CreepagePart? Part(int from, int to, bool isWhole)
    {
        if (_prints.Of(from, to) is not var (first, second) || _worst.Shortest(first, second) is not { } path)
        {
            return null;
        }

        CreepageConductor a = _conductors[from], b = _conductors[to];
        double worst = Math.Max(0, path.LengthMm - SolidPair.PlanToleranceMm(a.Loosest, b.Loosest));
        return new CreepagePart(a.Item, b.Item, path.LengthMm, worst, isWhole || !SpacingTolerances.IsBelow(worst, _xMm), path);
    }

    /// <summary>The part with its length as drawn: looked for only where a chain takes it.</summary>
    private CreepagePart AsDrawn(CreepagePart part, int from, int to) =>
        !ReferenceEquals(_drawn.Value, _worst) && _prints.Of(from, to) is var (first, second) && _drawn.Value.Shortest(first, second) is { } drawn
            ? part with { NominalMm = drawn.LengthMm }
            : part;

    private CreepagePath Path(int start, int end, Dictionary<int, (double At, int Before, CreepagePart? Last)> reached)
    {
        List<CreepagePart> parts = [];
        for (int i = end; i != start; i = reached[i].Before)
        {
            parts.Add(AsDrawn(reached[i].Last!, reached[i].Before, i));
        }

        parts.Reverse();

        return new CreepagePath(
            _surface,
            _conductors[start].Loosest,
            _conductors[end].Loosest,
            parts.Where(p => p.Counts || !SpacingTolerances.IsBelow(p.NominalMm, _xMm)).Sum(p => p.NominalMm),
            parts.Where(p => p.Counts).Sum(p => p.WorstMm),
            parts)
        {
            FirstLevelMm = _conductors[start].LevelMm,
            SecondLevelMm = _conductors[end].LevelMm,
        };
    }
}
