namespace WheelDraft.Geometry;

/// <summary>A part of a surface whose border a path crosses at a cost, or not at all.</summary>
/// <remarks>What makes a region (a rib, a groove, a slot) and what its wall adds is decided by who builds it; this chapter
/// knows lengths only. A path may begin and end inside a region.</remarks>
/// <param name="Name">As listings call it, e.g. <c>rib 2</c>.</param>
/// <param name="Outline">Its plan.</param>
/// <param name="WallMm">Added where the border is crossed, mm, at least 0; infinite for what must be gone round.</param>
/// <param name="Wall">Which way its wall goes.</param>
public sealed record SurfaceRegion(string Name, Outline Outline, double WallMm, RegionWall Wall)
{
    /// <summary>Whether a path has to go round it.</summary>
    public bool IsImpassable => double.IsPositiveInfinity(WallMm);

    /// <summary>What the outline of the surface itself is called where a path crosses it.</summary>
    public const string OutlineName = "outline";

    /// <summary>A through cut: a path goes round it.</summary>
    public static SurfaceRegion Through(string name, Outline outline) => new(name, outline, double.PositiveInfinity, RegionWall.None);
}

/// <summary>Which way the wall of a region goes: where a conductor stands at its foot, a recess lies between them.</summary>
public enum RegionWall
{
    /// <summary>No upright wall (a through cut, a V).</summary>
    None,

    /// <summary>Up from outside: a rib; its foot is outside.</summary>
    Raised,

    /// <summary>Down from outside: a groove with upright sides; its foot is inside.</summary>
    Sunk,
}

/// <summary>Where a conductor touches a surface.</summary>
/// <param name="Outline">Plan of what touches.</param>
/// <param name="HeightMm">How far it stands up from the surface there, mm, at least 0.</param>
public sealed record Footprint(Outline Outline, double HeightMm);
