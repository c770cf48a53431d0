using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>One item of one net on a surface, or so near that it bridges onto it.</summary>
/// <param name="Item">The item.</param>
/// <param name="Net">Its net.</param>
/// <param name="Floats">Whether it splits paths: joined to nothing, always or at times.</param>
/// <param name="Loosest">Its solid with the largest tolerance in plan.</param>
/// <param name="Touching">Its solids that touch the surface, with the place where each does.</param>
internal sealed record CreepageConductor(string Item, string Net, bool Floats, Solid Loosest, IReadOnlyList<SurfaceContact> Touching)
{
    /// <summary>Whether it turns with the wheel.</summary>
    internal bool Turns => Loosest.Turns;

    /// <summary>Height of the surface that it touches, mm; of the first where several are one.</summary>
    internal double LevelMm => Touching[0].Surface.LevelMm;

    /// <summary>Whether it is what wipers ride on.</summary>
    internal bool IsWheelCopper => Touching.Any(t => t.Solid.IsWheelCopper);

    /// <summary>Whether it is a strip whose nose touches here: its nose against the copper is judged as an open contact.</summary>
    internal bool IsWiper { get; private init; }

    /// <summary>Items on a surface, in the order of their first solids.</summary>
    /// <param name="surface">The surface, or several that are one.</param>
    /// <param name="solids">All solids.</param>
    /// <param name="xMm">Nearer than this a conductor bridges onto a surface, mm.</param>
    internal static IReadOnlyList<CreepageConductor> On(InsulatingSurface surface, IReadOnlyList<Solid> solids, double xMm)
    {
        HashSet<(string Net, string Item)> wipers = [.. solids.Where(s => s.IsNose).Select(s => (s.Net, s.Name))];
        return
        [
            .. solids
                .SelectMany(s => surface.Members.Select(m => new SurfaceContact(s, m)).Where(c => c.Touches(xMm)))
                .GroupBy(c => (c.Solid.Net, c.Solid.Name, c.Solid.Turns))
                .Select(g => Of([.. g], wipers.Contains((g.Key.Net, g.Key.Name)))),
        ];
    }

    private static CreepageConductor Of(IReadOnlyList<SurfaceContact> touching, bool isWiper)
    {
        Solid first = touching[0].Solid;
        return new(
            first.Name,
            first.Net,
            touching.All(t => t.Solid.Kind == SolidKind.Floating || t.Solid.FloatsAtTimes),
            touching.MaxBy(t => t.Solid.Tolerance.InPlanMm)!.Solid,
            touching)
        {
            IsWiper = isWiper,
        };
    }
}

/// <summary>A solid and a surface that it may touch.</summary>
/// <remarks>It touches where it is made to, where it reaches through the level, and where it is nearer than X at its worst: above or
/// below, then with its whole shadow; or beside, then along all of the edge that is nearer than X. What bridges counts as nothing.</remarks>
internal sealed class SurfaceContact(Solid solid, InsulatingSurface surface)
{
    private double? _planGapMm;

    internal Solid Solid => solid;

    internal InsulatingSurface Surface => surface;

    /// <summary>Whether it is made to lie on the surface.</summary>
    private bool IsMadeTo => string.Equals(solid.OnSurface, surface.Name, StringComparison.Ordinal);

    /// <summary>From the surface's outline in plan, as drawn; 0 on it and over an unbounded one. What turns against it comes everywhere.</summary>
    private double PlanGapMm => _planGapMm ??= surface.Outline is not { } outline ? 0
        : Distances.Between(solid.Turns && !surface.Turns ? SweptShape.Whole(solid.Outline) : solid.Outline, outline).DistanceMm;

    /// <summary>Whether it touches.</summary>
    internal bool Touches(double xMm) =>
        IsMadeTo
        || (SpacingTolerances.IsBelow(HeightMm(surface.LevelMm, surface.LevelMm), xMm) && PlanGapMm == 0)
        || Beside(xMm) is not null;

    /// <summary>Where it touches: its own plan, or slivers of the edge that it is beside.</summary>
    /// <param name="swept">Whether a turning solid counts wherever it comes.</param>
    /// <param name="xMm">Nearer than this it bridges, mm.</param>
    internal IEnumerable<Footprint> Prints(bool swept, double xMm)
    {
        Outline plan = swept && solid.Turns ? SweptShape.Whole(solid.Outline) : solid.Outline;
        return !IsMadeTo && Beside(xMm) is double reach
            ? EdgeSlivers.Of(surface.Outline!, plan, reach).Select(sliver => new Footprint(sliver, 0))
            : [new Footprint(plan, Math.Max(0, solid.ToZMm + OffMm - surface.LevelMm))];
    }

    /// <summary>How far in plan it bridges onto the edge that it is beside; null when it is not.</summary>
    private double? Beside(double xMm)
    {
        // The edge goes down as far as the body does.
        double height = Math.Max(0, HeightMm(surface.LevelMm - surface.BodyMm, surface.LevelMm));
        if (surface.Outline is null || height >= xMm || PlanGapMm == 0)
        {
            return null;
        }

        double reach = Math.Sqrt((xMm * xMm) - (height * height)) + solid.Tolerance.InPlanMm + (surface.Turns ? surface.RunOutMm : surface.FaceMm);
        return SpacingTolerances.IsBelow(PlanGapMm, reach) ? reach : null;
    }

    /// <summary>From a range of heights at the worst; below 0 where it reaches into it.</summary>
    private double HeightMm(double fromMm, double toMm) => Math.Max(solid.FromZMm - toMm, fromMm - solid.ToZMm) - OffMm;

    /// <summary>All that can bring the two nearer in height, mm: a carrier's faces and what turns with it run out together.</summary>
    private double OffMm => solid.Turns && surface.Turns
        ? solid.Tolerance.FaceMm + solid.Tolerance.LevelMm + Math.Abs(solid.Tolerance.FaceRunOutMm - surface.FaceMm)
        : solid.Tolerance.InHeightMm + surface.FaceMm;
}
