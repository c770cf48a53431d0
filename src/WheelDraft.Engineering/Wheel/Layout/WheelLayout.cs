using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A wheel set out: radii, stations, edges and the copper as exact outlines.</summary>
/// <remarks>Wheel frame: at programme angle 0 it coincides with the housing.</remarks>
public sealed record WheelLayout
{
    /// <summary>Outer diameter, mm: of the copper, or of the carrier that lands lie on.</summary>
    public required double OuterDiameterMm { get; init; }

    /// <summary>What was kept between rings, mm: the web asked for, or with lands the distance needed; wider when the diameter is given.</summary>
    public required double WebMm { get; init; }

    /// <summary>The feed ring; null for a lands wheel.</summary>
    public required RingLayout? Feed { get; init; }

    /// <summary>The output rings, in file order.</summary>
    public required IReadOnlyList<RingLayout> Rings { get; init; }

    /// <summary>The pieces of copper as cut, before any kerf: one with windows and holes, or one for each land.</summary>
    public required IReadOnlyList<CopperPiece> Copper { get; init; }

    /// <summary>The square that just holds the wheel, mm.</summary>
    public Bounds Extent => new(-OuterDiameterMm / 2, -OuterDiameterMm / 2, OuterDiameterMm / 2, OuterDiameterMm / 2);

    /// <summary>The carrier, its bore and fixings cut out.</summary>
    public required Outline Carrier { get; init; }

    /// <summary>The bore as cut.</summary>
    public required Contour Bore { get; init; }

    /// <summary>Centres of the fixings.</summary>
    public required IReadOnlyList<Point> Fixings { get; init; }

    /// <summary>Diameter of the fixings' pitch circle, mm; null without fixings.</summary>
    public double? PitchCircleMm { get; init; }

    /// <summary>The names of all rings from the inside outwards where their order was searched for, the feed's as <see cref="FeedBrief.NameInOrder"/>; else null.</summary>
    public IReadOnlyList<string>? RingOrder { get; init; }

    /// <summary>What the person should know about the layout.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>The feed ring, if there is one, and the output rings.</summary>
    public IEnumerable<RingLayout> AllRings => Feed is null ? Rings : Rings.Prepend(Feed);

    /// <summary>The ring of an output.</summary>
    public RingLayout Ring(string output) => Rings.First(r => string.Equals(r.Name, output, StringComparison.OrdinalIgnoreCase));
}

/// <summary>A piece of the wheel's copper.</summary>
/// <param name="Name">As reports call it.</param>
/// <param name="Net">Its net: the feed's, or a net of its own for a land.</param>
/// <param name="Outline">Its outline, wheel frame.</param>
public sealed record CopperPiece(string Name, string Net, Outline Outline)
{
    /// <summary>Whether it is joined to no wiper in part of the turn.</summary>
    public bool FloatsAtTimes { get; init; }
}

/// <summary>One ring: where it runs and how its copper is cut.</summary>
public sealed record RingLayout
{
    /// <summary>The output's name; the feed's net for the feed.</summary>
    public required string Name { get; init; }

    /// <summary>Whether this is the feed ring.</summary>
    public bool IsFeed { get; init; }

    /// <summary>Net of its wiper.</summary>
    public required string Net { get; init; }

    /// <summary>The other side of its contact: the feed's net, or that of the second wiper of a lands wheel.</summary>
    public required string WheelNet { get; init; }

    /// <summary>Ring radius, at mid travel, mm.</summary>
    public required double RadiusMm { get; init; }

    /// <summary>Station of its wiper, housing angle, rad in [0, 2π).</summary>
    public required double StationRad { get; init; }

    /// <summary>The contact patch, wiper frame.</summary>
    public required ContactPatch Patch { get; init; }

    /// <summary>Travel of the wiper along the radius, mm.</summary>
    public required double TravelMm { get; init; }

    /// <summary>Radial play of the wiper, mm.</summary>
    public required double SidePlayMm { get; init; }

    /// <summary>Least radius that the patch covers over its travel, mm.</summary>
    public required double PathFromMm { get; init; }

    /// <summary>Greatest radius that the patch covers over its travel, mm.</summary>
    public required double PathToMm { get; init; }

    /// <summary>How far windows reach beyond the patch path, mm; null for a whole ring and for lands.</summary>
    public double? SideGapMm { get; init; }

    /// <summary>Inner radius of the windows, mm; null for a whole ring and for lands.</summary>
    public double? WindowFromMm { get; init; }

    /// <summary>Outer radius of the windows, mm; null for a whole ring and for lands. Without a rim it is the wheel's own edge.</summary>
    public double? WindowToMm { get; init; }

    /// <summary>Inner radius of the lands, mm; null for a windowed wheel.</summary>
    public double? LandFromMm { get; init; }

    /// <summary>Outer radius of the lands, mm; null for a windowed wheel.</summary>
    public double? LandToMm { get; init; }

    /// <summary>The on-periods with their edges, by start; empty for a whole ring.</summary>
    public required IReadOnlyList<RingPeriod> Periods { get; init; }

    /// <summary>The second wiper; null for a windowed wheel.</summary>
    public ReturnWiper? Return { get; init; }

    /// <summary>The lands, one for each on-period in the same order, or the one whole ring; empty for a windowed wheel.</summary>
    public IReadOnlyList<LandLayout> Lands { get; init; } = [];

    /// <summary>What rides on it: its own wiper, then the second one of a lands wheel.</summary>
    public IReadOnlyList<RingWiper> Wipers
    {
        get
        {
            RingWiper own = new(IsFeed ? "feed" : Name, Net, StationRad, Patch);
            return Return is ReturnWiper other ? [own, new($"{Name} return", other.Net, other.StationRad, other.Patch) { IsReturn = true }] : [own];
        }
    }

    /// <summary>What the adjusting edge does; null without one.</summary>
    public AdjustLayout? Adjust { get; init; }

    /// <summary>What holds the ring at its radius, in words.</summary>
    public required string Why { get; init; }

    /// <summary>Whether the ring is copper all the way round.</summary>
    public bool IsWhole => Periods.Count == 0;
}

/// <summary>A wiper on its ring.</summary>
/// <param name="Name">What people call it: feed, the output's name, or that name with "return".</param>
/// <param name="Net">Its net.</param>
/// <param name="StationRad">Its station, housing angle, rad in [0, 2π).</param>
/// <param name="Patch">Its contact patch, wiper frame.</param>
public sealed record RingWiper(string Name, string Net, double StationRad, ContactPatch Patch)
{
    /// <summary>Whether it is the second wiper of a lands wheel.</summary>
    public bool IsReturn { get; init; }
}

/// <summary>One on-period on its ring.</summary>
/// <param name="Wanted">The on-period asked for.</param>
/// <param name="Make">Where the copper begins, in the programme frame of the ring's station.</param>
/// <param name="Break">Where the copper ends, in the same frame.</param>
/// <param name="CopperRad">The copper on the ring radius, wheel angles.</param>
public sealed record RingPeriod(OnPeriod Wanted, CopperEdge Make, CopperEdge Break, CircleArc CopperRad)
{
    /// <summary>Worst-case limits of its on-time, at mid travel.</summary>
    public required TimingLimits Limits { get; init; }

    /// <summary>Worst-case bands of its two edges, each by itself.</summary>
    public required PeriodBands Bands { get; init; }
}

/// <summary>What an adjusting edge does.</summary>
/// <param name="Asked">What was asked.</param>
/// <param name="Edge">The sloped edge.</param>
/// <param name="EdgeInner">Its inner end: radius and programme angle.</param>
/// <param name="EdgeOuter">Its outer end: radius and programme angle.</param>
/// <param name="Steps">Figures along the travel, from the inner end to the outer one.</param>
/// <param name="Turns">Screw turns over the travel.</param>
/// <param name="LinearityS">Greatest departure of the on-time from the straight line between both ends of travel, s.</param>
public sealed record AdjustLayout(
    AdjustBrief Asked,
    CopperEdge Edge,
    EdgePoint EdgeInner,
    EdgePoint EdgeOuter,
    IReadOnlyList<AdjustStep> Steps,
    double Turns,
    double LinearityS)
{
    /// <summary>The figures at mid travel.</summary>
    public AdjustStep Middle => Steps[Steps.Count / 2];
}

/// <summary>A point of an edge.</summary>
/// <param name="RadiusMm">Radius.</param>
/// <param name="ProgrammeRad">Programme angle, in [0, 2π).</param>
public readonly record struct EdgePoint(double RadiusMm, double ProgrammeRad);

/// <summary>An output at one place of its travel.</summary>
/// <param name="OffsetMm">Outward from mid travel.</param>
/// <param name="OnS">On-time there, s.</param>
/// <param name="SecondsPerTurn">Change of the on-time per turn of the screw there, at least 0, s.</param>
public readonly record struct AdjustStep(double OffsetMm, double OnS, double SecondsPerTurn)
{
    /// <summary>How much longer than the on-time there at worst, s.</summary>
    public double LongerS { get; init; }

    /// <summary>How much shorter than the on-time there at worst, s.</summary>
    public double ShorterS { get; init; }
}
