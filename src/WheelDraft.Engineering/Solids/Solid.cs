using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A conductive (or touchable) prism: a plan outline over a range of heights.</summary>
/// <remarks>A strip is several solids of one name. The plan outline is connected: measuring over a whole turn rests on that.
/// Solids of one net are never measured against each other.</remarks>
/// <param name="Name">The item as reports call it, e.g. <c>mist strip</c>; all solids of one item share it.</param>
/// <param name="Net">Net: <c>E</c> when earthed; the item's own name when touchable or floating.</param>
/// <param name="Kind">What it is, electrically.</param>
/// <param name="Turns">Whether it turns with the wheel about the origin.</param>
/// <param name="FromZMm">Lower end, z, mm; the copper face is 0, positive toward the wiper side.</param>
/// <param name="ToZMm">Upper end, z, mm; not below the lower end.</param>
/// <param name="Outline">Plan outline at programme angle 0, exact lines and arcs.</param>
public sealed record Solid(string Name, string Net, SolidKind Kind, bool Turns, double FromZMm, double ToZMm, Outline Outline)
{
    /// <summary>Whether it is the wheel's copper or a land: what wipers ride on.</summary>
    public bool IsWheelCopper { get; init; }

    /// <summary>Whether it is the part of a contact that touches the wheel's copper on purpose: left out against
    /// <see cref="IsWheelCopper"/> solids (the open-contact rules judge it), measured against everything else.</summary>
    public bool IsNose { get; init; }

    /// <summary>For a leg beside a contact fold, as far as it belongs to the nose: the radius of its ring, mm. It is left out against copper on that
    /// ring, whose open contact is judged by the section of the whole nose, and measured against everything else; null for all others.</summary>
    internal double? NoseRingMm { get; init; }

    /// <summary>Whether it is left out against something because that is what its nose rides on.</summary>
    internal bool RidesOn(Solid copper)
    {
        if (!copper.IsWheelCopper || NoseRingMm is not double ring)
        {
            return copper.IsWheelCopper && IsNose;
        }

        RadialInterval radii = Distances.Radii(copper.Outline, Point.Origin);
        return radii.LeastMm <= ring && ring <= radii.GreatestMm;
    }

    /// <summary>Whether it is a part of a strip as it lies while its output is open and the wiper rides lower, on the carrier; the same part
    /// stands in the list as it lies on the copper too, and the lesser distance counts.</summary>
    public bool IsLowered { get; init; }

    /// <summary>Whether it is joined to nothing in part of the turn though it is live in another (a land under no wiper):
    /// it then splits creepage paths as floating copper does, and still has rows of its own.</summary>
    public bool FloatsAtTimes { get; init; }

    /// <summary>Name of the insulating surface that it lies on or stands on, for creepage; null when it touches none by design.
    /// A solid whose height range crosses a surface's level counts as touching it all the same.</summary>
    public string? OnSurface { get; init; }

    /// <summary>How far its edges and its place may differ from nominal; nothing by default.</summary>
    public SolidTolerance Tolerance { get; init; } = SolidTolerance.None;
}

/// <summary>What a solid is, electrically.</summary>
public enum SolidKind
{
    /// <summary>On a live net; neutral is live.</summary>
    Live,

    /// <summary>Earthed, on net E.</summary>
    Earthed,

    /// <summary>A person can touch it.</summary>
    Touchable,

    /// <summary>Metal, connected to nothing: it splits paths and needs no distance of its own.</summary>
    Floating,
}

/// <summary>How far a solid may differ from nominal, mm, each at least 0.</summary>
/// <param name="CutEdgeMm">Cutter tolerance of its edges, normal to themselves.</param>
/// <param name="SidePlayMm">How far it may lie to one side, in plan.</param>
/// <param name="RunOutMm">How far its centre may lie off the axis: half the total indicator reading; 0 for what does not turn.</param>
/// <param name="FaceRunOutMm">How far it may lie higher or lower: half the total face run-out; 0 for what does not turn.</param>
public sealed record SolidTolerance(double CutEdgeMm, double SidePlayMm, double RunOutMm, double FaceRunOutMm)
{
    /// <summary>Exactly as drawn.</summary>
    public static SolidTolerance None { get; } = new(0, 0, 0, 0);

    /// <summary>How far each of its faces may lie off, in plan and in height: the housing's tolerance for a fixed part.</summary>
    public double FaceMm { get; init; }

    /// <summary>How far all of it may lie higher or lower: the housing's tolerance of the surface that it is seated on.</summary>
    public double LevelMm { get; init; }

    /// <summary>All that acts in plan, mm.</summary>
    public double InPlanMm => CutEdgeMm + SidePlayMm + RunOutMm + FaceMm;

    /// <summary>All that acts in height, mm.</summary>
    public double InHeightMm => FaceRunOutMm + FaceMm + LevelMm;
}
