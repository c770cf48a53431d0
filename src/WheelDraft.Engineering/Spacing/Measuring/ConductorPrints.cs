using System.Collections;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Where conductors touch a surface, by what they are measured against.</summary>
/// <remarks><para>On a fixed surface a turning conductor counts wherever it comes. On the carrier two that turn with it are as drawn; against a fixed
/// one the turning one is what it sweeps, because the fixed one stays where it is. On surfaces that are one, two that turn are left to
/// the carrier. A wiper's nose against the wheel's copper is judged as an open contact; so is what of its strip hangs over
/// copper, whose gap is that through air: only what is nearer than X to the carrier beyond all copper counts against copper.</para>
/// <para>A measure of one pair needs the prints of two: each is made when it is first asked for.</para></remarks>
internal sealed class ConductorPrints : IReadOnlyList<IReadOnlyList<Footprint>>
{
    private readonly InsulatingSurface _surface;
    private readonly IReadOnlyList<CreepageConductor> _conductors;
    private readonly double _xMm;
    private readonly bool _meet;
    private readonly Lazy<RadialInterval[]> _copper;
    private readonly Footprint[]?[] _prints;

    /// <summary>Where the conductors on a surface touch it.</summary>
    /// <param name="surface">The surface.</param>
    /// <param name="conductors">The conductors.</param>
    /// <param name="copper">All of the wheel's copper there.</param>
    /// <param name="xMm">X, mm.</param>
    internal ConductorPrints(InsulatingSurface surface, IReadOnlyList<CreepageConductor> conductors, IReadOnlyList<Solid> copper, double xMm)
    {
        (_surface, _conductors, _xMm) = (surface, conductors, xMm);
        _copper = new(() => [.. copper.Select(Radii)]);
        _meet = conductors.Any(c => !c.Turns) && conductors.Any(c => c.Turns);
        _prints = new Footprint[]?[3 * conductors.Count];
    }

    // What a conductor is measured by: as it stands, as it sweeps, and without what hangs over copper. One set of each for all conductors, in this order.
    private enum Kind
    {
        Still,
        Swept,
        BesideCopper,
    }

    /// <inheritdoc/>
    public int Count => _prints.Length;

    /// <summary>A set of footprints; empty where the conductor is not measured by it, or touches nothing then.</summary>
    public IReadOnlyList<Footprint> this[int set] => _prints[set] ??= Made((Kind)(set / _conductors.Count), _conductors[set % _conductors.Count]);

    /// <inheritdoc/>
    public IEnumerator<IReadOnlyList<Footprint>> GetEnumerator() => Enumerable.Range(0, Count).Select(i => this[i]).GetEnumerator();

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>Which two sets two conductors are measured by; null when the two are not measured here.</summary>
    internal (int First, int Second)? Of(int first, int second)
    {
        CreepageConductor a = _conductors[first], b = _conductors[second];
        bool bothTurn = a.Turns && b.Turns;
        if (bothTurn && _surface.Parts.Any(p => p.Turns))
        {
            return null;
        }

        (int ofFirst, int ofSecond) = bothTurn ? (SetOf(first, Kind.Still), SetOf(second, Kind.Still)) : (Against(first, b), Against(second, a));
        return this[ofFirst].Count == 0 || this[ofSecond].Count == 0 ? null : (ofFirst, ofSecond);
    }

    private int SetOf(int conductor, Kind kind) => ((int)kind * _conductors.Count) + conductor;

    private int Against(int conductor, CreepageConductor other)
    {
        Kind kind = _conductors[conductor].IsWiper && other.IsWheelCopper ? Kind.BesideCopper : other.Turns ? Kind.Still : Kind.Swept;
        return SetOf(conductor, HasOwn(kind, _conductors[conductor]) ? kind : Kind.Still);
    }

    // Whether a conductor's set of a kind is another than where it stands.
    private bool HasOwn(Kind kind, CreepageConductor conductor) => kind switch
    {
        Kind.Swept => _surface.Turns && _meet && conductor.Turns,
        Kind.BesideCopper => conductor.IsWiper && _copper.Value.Length > 0,
        _ => true,
    };

    private Footprint[] Made(Kind kind, CreepageConductor conductor)
    {
        if (!HasOwn(kind, conductor))
        {
            return [];
        }

        IReadOnlyList<SurfaceContact> touching = kind == Kind.BesideCopper ? BesideAll(conductor, _copper.Value) : conductor.Touching;
        bool swept = kind != Kind.Still || !_surface.Turns;
        return [.. touching.SelectMany(t => t.Prints(swept, _xMm))];
    }

    private static IReadOnlyList<SurfaceContact> BesideAll(CreepageConductor wiper, RadialInterval[] copper) =>
        [.. wiper.Touching.Where(t => !t.Solid.IsNose && copper.All(c => Radii(t.Solid).GapMm(c) > 0))];

    private static RadialInterval Radii(Solid solid) => Distances.Radii(solid.Outline, Point.Origin);
}
