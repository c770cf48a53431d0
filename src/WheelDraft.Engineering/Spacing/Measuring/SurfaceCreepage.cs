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
    /// <summary>The path from the other end.</summary>
    public CreepagePath Reversed() => new(Surface, Second, First, NominalMm, WorstMm, [.. Parts.Reverse().Select(p => p.Reversed())]);
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

/// <summary>Creepage paths on one surface: first between every two conductors, then the shortest chain over floating copper.</summary>
internal sealed class SurfaceCreepage
{
    private readonly InsulatingSurface _surface;
    private readonly double _xMm;
    private readonly IReadOnlyList<CreepageConductor> _conductors;
    private readonly SurfacePaths _paths;

    internal SurfaceCreepage(InsulatingSurface surface, IReadOnlyList<Solid> solids, double grooveXMm)
    {
        _surface = surface;
        _xMm = grooveXMm;
        _conductors = CreepageConductor.On(surface, solids);
        _paths = new SurfacePaths(surface.Outline, surface.Regions(grooveXMm), [.. _conductors.Select(c => c.Footprints)], grooveXMm);
    }

    /// <summary>The shortest path at its worst between two nets; null when one of them is not on the surface or no path leads across.</summary>
    internal CreepagePath? Between(string firstNet, string secondNet)
    {
        CreepagePath? best = null;
        for (int i = 0; i < _conductors.Count; i++)
        {
            if (IsOn(i, firstNet) && Chain(i, secondNet) is { } path && (best is null || path.WorstMm < best.WorstMm))
            {
                best = path;
            }
        }

        return best;
    }

    /// <summary>The shortest chain from a conductor to a net over floating copper (Dijkstra over conductors).</summary>
    private CreepagePath? Chain(int start, string net)
    {
        double[] at = [.. Enumerable.Repeat(double.PositiveInfinity, _conductors.Count)];
        CreepagePart?[] last = new CreepagePart?[_conductors.Count];
        int[] before = new int[_conductors.Count];
        bool[] settled = new bool[_conductors.Count];
        at[start] = 0;
        before[start] = -1;
        while (true)
        {
            int next = Enumerable.Range(0, at.Length).Where(i => !settled[i] && at[i] < double.PositiveInfinity).OrderBy(i => at[i]).FirstOrDefault(-1);
            if (next < 0)
            {
                return null;
            }

            settled[next] = true;
            if (IsOn(next, net))
            {
                return Path(start, next, before, last);
            }

            if (next != start && !_conductors[next].Floats)
            {
                continue;
            }

            for (int other = 0; other < at.Length; other++)
            {
                bool worthwhile = _conductors[other].Floats || IsOn(other, net);
                if (!settled[other] && worthwhile && Part(next, other, isWhole: next == start && IsOn(other, net)) is { } part && at[next] + Counted(part) < at[other])
                {
                    (at[other], before[other], last[other]) = (at[next] + Counted(part), next, part);
                }
            }
        }
    }

    private bool IsOn(int conductor, string net) => string.Equals(_conductors[conductor].Net, net, StringComparison.Ordinal);

    private static double Counted(CreepagePart part) => part.Counts ? part.WorstMm : 0;

    /// <summary>A part of a chain: below X it counts as nothing, unless it is the whole path.</summary>
    private CreepagePart? Part(int from, int to, bool isWhole)
    {
        if (_paths.Shortest(from, to) is not { } path)
        {
            return null;
        }

        CreepageConductor a = _conductors[from], b = _conductors[to];
        double worst = Math.Max(0, path.LengthMm - SolidPair.PlanToleranceMm(a.Loosest, b.Loosest));
        return new CreepagePart(a.Item, b.Item, path.LengthMm, worst, isWhole || worst >= _xMm, path);
    }

    private CreepagePath Path(int start, int end, int[] before, CreepagePart?[] last)
    {
        List<CreepagePart> parts = [];
        for (int i = end; i != start; i = before[i])
        {
            parts.Add(last[i]!);
        }

        parts.Reverse();

        return new CreepagePath(
            _surface,
            _conductors[start].Loosest,
            _conductors[end].Loosest,
            parts.Where(p => p.Counts || p.NominalMm >= _xMm).Sum(p => p.NominalMm),
            parts.Where(p => p.Counts).Sum(p => p.WorstMm),
            parts);
    }
}

/// <summary>One item of one net on a surface.</summary>
internal sealed record CreepageConductor(string Item, string Net, bool Floats, IReadOnlyList<Footprint> Footprints, Solid Loosest)
{
    /// <summary>Items on a surface, in the order of their first solids.</summary>
    internal static IReadOnlyList<CreepageConductor> On(InsulatingSurface surface, IReadOnlyList<Solid> solids) =>
        [.. solids.Where(s => Touches(surface, s)).GroupBy(s => (s.Net, s.Name)).Select(g => Of(surface, [.. g]))];

    private static CreepageConductor Of(InsulatingSurface surface, IReadOnlyList<Solid> solids) => new(
        solids[0].Name,
        solids[0].Net,
        solids.All(s => s.Kind == SolidKind.Floating || s.FloatsAtTimes),
        [.. solids.Select(s => Print(surface, s))],
        solids.MaxBy(s => s.Tolerance.InPlanMm)!);

    /// <summary>Whether a solid is on the surface: because it is made so, or because it reaches through its level.</summary>
    private static bool Touches(InsulatingSurface surface, Solid solid)
    {
        if (solid.OnSurface is { } named)
        {
            return string.Equals(named, surface.Name, StringComparison.Ordinal);
        }

        bool crosses = solid.FromZMm <= surface.LevelMm && surface.LevelMm <= solid.ToZMm;
        bool movesAgainst = surface.Turns && !solid.Turns;
        return crosses && !movesAgainst
            && (surface.Outline is not { } outline || Distances.Between(Plan(surface, solid), outline).DistanceMm == 0);
    }

    /// <summary>A solid that turns over a fixed surface counts wherever it comes.</summary>
    private static Outline Plan(InsulatingSurface surface, Solid solid) =>
        solid.Turns && !surface.Turns ? SweptShape.Whole(solid.Outline) : solid.Outline;

    private static Footprint Print(InsulatingSurface surface, Solid solid) =>
        new(Plan(surface, solid), Math.Max(0, solid.ToZMm - surface.LevelMm));
}
