using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A fixed insulating surface that strips lie on.</summary>
/// <param name="Name">Name.</param>
/// <param name="Group">Material group.</param>
/// <param name="LevelMm">Height above (+) or below (−) the copper face.</param>
/// <param name="Outline">Plan outline; null for unbounded.</param>
public sealed record SurfaceBrief(string Name, MaterialGroup Group, double LevelMm, Outline? Outline)
{
    /// <summary>Thickness of the plate whose upper face it is, mm; null when not given.</summary>
    public double? ThicknessMm { get; init; }
}

/// <summary>Any other conductive or touchable thing near the wheel.</summary>
/// <param name="Name">Name.</param>
/// <param name="Kind">What it is, electrically.</param>
/// <param name="Net">Net: the given one when live, E when earthed, its own name otherwise.</param>
/// <param name="Outline">Plan outline.</param>
/// <param name="FromZMm">Lower end, z.</param>
/// <param name="ToZMm">Upper end, z.</param>
public sealed record PartBrief(string Name, PartKind Kind, string Net, Outline Outline, double FromZMm, double ToZMm);

/// <summary>What a part is, electrically.</summary>
public enum PartKind
{
    /// <summary>On a live net.</summary>
    Live,

    /// <summary>Earthed, on net E.</summary>
    Earthed,

    /// <summary>A person can touch it.</summary>
    Touchable,

    /// <summary>Metal, connected to nothing.</summary>
    Floating,
}

/// <summary>A raised insulating wall on a surface.</summary>
/// <param name="Surface">Name of the surface.</param>
/// <param name="Path">Centre line, plan points.</param>
/// <param name="HeightMm">Height.</param>
/// <param name="ThicknessMm">Thickness.</param>
/// <param name="Joint">How it meets the surface.</param>
public sealed record RibBrief(string Surface, IReadOnlyList<Point> Path, double HeightMm, double ThicknessMm, RibJoint Joint);

/// <summary>How a rib meets its surface.</summary>
public enum RibJoint
{
    /// <summary>One piece with it.</summary>
    Moulded,

    /// <summary>Cemented.</summary>
    Cemented,

    /// <summary>Loose: a path also runs through the joint.</summary>
    Loose,
}

/// <summary>A slot cut through a surface, or a groove in it.</summary>
/// <param name="Surface">Name of the surface.</param>
/// <param name="Path">Centre line, plan points.</param>
/// <param name="WidthMm">Width at the top.</param>
/// <param name="DepthMm">Depth; null for through.</param>
/// <param name="Profile">Shape of its sides.</param>
public sealed record SlotBrief(string Surface, IReadOnlyList<Point> Path, double WidthMm, double? DepthMm, SlotProfile Profile);

/// <summary>Shape of a groove's sides.</summary>
public enum SlotProfile
{
    /// <summary>Parallel sides.</summary>
    Parallel,

    /// <summary>A V.</summary>
    V,
}
