using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Where conductors touch a surface, by what they are measured against.</summary>
/// <remarks>On a fixed surface a turning conductor counts wherever it comes. On the carrier two that turn with it are as drawn; against a fixed
/// one the turning one is what it sweeps, because the fixed one stays where it is. On surfaces that are one, two that turn are left to
/// the carrier. A wiper's nose against the wheel's copper is judged as an open contact; so is what of its strip hangs over
/// copper, whose gap is that through air: only what is nearer than X to the carrier beyond all copper counts against copper.</remarks>
internal sealed class ConductorPrints
{
    private readonly InsulatingSurface _surface;
    private readonly IReadOnlyList<CreepageConductor> _conductors;
    private readonly List<IReadOnlyList<Footprint>> _all = [];
    private readonly int[] _still;
    private readonly int[] _swept;
    private readonly int[] _besideCopper;

    internal ConductorPrints(InsulatingSurface surface, IReadOnlyList<CreepageConductor> conductors, double xMm)
    {
        (_surface, _conductors) = (surface, conductors);
        RadialInterval[] copper = [.. conductors.SelectMany(c => c.Touching).Where(t => t.Solid.IsWheelCopper).Select(t => Radii(t.Solid))];
        bool meet = conductors.Any(c => !c.Turns) && conductors.Any(c => c.Turns);
        _still = [.. conductors.Select(c => Add(c.Touching, swept: !surface.Turns, xMm))];
        _swept = [.. conductors.Select((c, i) => surface.Turns && meet && c.Turns ? Add(c.Touching, swept: true, xMm) : _still[i])];
        _besideCopper = [.. conductors.Select((c, i) => !c.IsWiper || copper.Length == 0 ? _still[i] : Add(BesideAll(c, copper), swept: true, xMm))];
    }

    /// <summary>Every set of footprints, one a conductor of the paths.</summary>
    internal IReadOnlyList<IReadOnlyList<Footprint>> All => _all;

    /// <summary>Which two sets two conductors are measured by; null when the two are not measured here.</summary>
    internal (int First, int Second)? Of(int first, int second)
    {
        CreepageConductor a = _conductors[first], b = _conductors[second];
        if (a.Turns && b.Turns)
        {
            return _surface.Parts.Count > 0 && _surface.Parts.Any(p => p.Turns) ? null : (_still[first], _still[second]);
        }

        int ofFirst = Against(first, b), ofSecond = Against(second, a);
        return ofFirst < 0 || ofSecond < 0 ? null : (ofFirst, ofSecond);
    }

    private int Against(int conductor, CreepageConductor other) =>
        _conductors[conductor].IsWiper && other.IsWheelCopper ? _besideCopper[conductor]
        : other.Turns ? _still[conductor]
        : _swept[conductor];

    private int Add(IReadOnlyList<SurfaceContact> touching, bool swept, double xMm)
    {
        Footprint[] prints = [.. touching.SelectMany(t => t.Prints(swept, xMm))];
        if (prints.Length == 0)
        {
            return -1;
        }

        _all.Add(prints);
        return _all.Count - 1;
    }

    private static IReadOnlyList<SurfaceContact> BesideAll(CreepageConductor wiper, RadialInterval[] copper) =>
        [.. wiper.Touching.Where(t => !t.Solid.IsNose && copper.All(c => Radii(t.Solid).GapMm(c) > 0))];

    private static RadialInterval Radii(Solid solid) => Distances.Radii(solid.Outline, Point.Origin);
}
