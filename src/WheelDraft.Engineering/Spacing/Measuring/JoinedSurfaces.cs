using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Surfaces nearer than X to each other: one for paths that cross from one to the other.</summary>
internal static class JoinedSurfaces
{
    /// <summary>Each group of surfaces that are one, as one surface.</summary>
    /// <remarks>The gap between them is crossed straight and a level difference adds nothing. The group has no outline: a path on it may be
    /// measured too short where it would have to go round a place that is no surface, never too long. Of its ribs and slots those
    /// count that stand clear of the other surfaces in plan, and its material is the worst of the group.</remarks>
    internal static IReadOnlyList<InsulatingSurface> Of(IReadOnlyList<InsulatingSurface> surfaces, double xMm)
    {
        int[] group = [.. Enumerable.Range(0, surfaces.Count)];
        for (int i = 0; i < surfaces.Count; i++)
        {
            for (int j = i + 1; j < surfaces.Count; j++)
            {
                if (SpacingTolerances.IsBelow(WorstGapMm(surfaces[i], surfaces[j]), xMm))
                {
                    (int from, int to) = (Math.Max(group[i], group[j]), Math.Min(group[i], group[j]));
                    group = [.. group.Select(g => g == from ? to : g)];
                }
            }
        }

        return [.. surfaces.Select((s, i) => (s, i)).GroupBy(x => group[x.i], x => x.s).Where(g => g.Count() > 1).Select(g => One([.. g]))];
    }

    private static double WorstGapMm(InsulatingSurface a, InsulatingSurface b) => SolidPair.Hypotenuse(
        Math.Max(0, PlanGapMm(a, b) - PlanOffMm(a) - PlanOffMm(b)),
        Math.Max(0, HeightGapMm(a, b) - a.FaceMm - b.FaceMm));

    private static double PlanOffMm(InsulatingSurface surface) => surface.Turns ? surface.RunOutMm : surface.FaceMm;

    private static double HeightGapMm(InsulatingSurface a, InsulatingSurface b) =>
        Math.Max(0, Math.Max(a.LevelMm - a.BodyMm - b.LevelMm, b.LevelMm - b.BodyMm - a.LevelMm));

    private static double PlanGapMm(InsulatingSurface a, InsulatingSurface b)
    {
        if (a.Outline is not { } first || b.Outline is not { } second)
        {
            return 0;
        }

        return a.Turns == b.Turns ? Distances.Between(first, second).DistanceMm
            : a.Turns ? WholeTurn.Nearest(second, first).Plan.DistanceMm
            : WholeTurn.Nearest(first, second).Plan.DistanceMm;
    }

    private static InsulatingSurface One(IReadOnlyList<InsulatingSurface> parts) => new(
        string.Join(" with ", parts.Select(p => p.Name)), parts.Max(p => p.Group), parts[0].LevelMm, null, Turns: false)
    {
        FaceMm = parts.Max(p => p.Turns ? 0 : p.FaceMm),
        Ribs = [.. parts.SelectMany(p => p.Ribs.Where(r => IsClear(Band.Along(r.Path, r.ThicknessMm), p, parts)))],
        Slots = [.. parts.SelectMany(p => p.Slots.Where(s => IsClear(Band.Along(s.Path, s.WidthMm), p, parts)))],
        Parts = parts,
    };

    private static bool IsClear(Outline barrier, InsulatingSurface of, IReadOnlyList<InsulatingSurface> parts) =>
        parts.All(p => ReferenceEquals(p, of) || (p.Outline is { } outline && Distances.Between(barrier, outline).DistanceMm > 0));
}
