namespace WheelDraft.Geometry;

/// <summary>The tolerances of surface paths that are not arguments, each with its reason. What two pieces need to touch is
/// <see cref="Tolerances.TouchMm"/>, here as everywhere.</summary>
internal static class SurfaceTolerances
{
    /// <summary>Nearer to a border than this is on it, mm.</summary>
    /// <remarks>Above the rounding of tangent points (1e-9 mm), below what any path can gain from it (1e-5 mm in all).</remarks>
    internal const double OnBorderMm = 1e-6;

    /// <summary>Shorter than this nothing runs along a border, mm.</summary>
    /// <remarks>A leg that leaves a round border touches it within tolerance for √(8 r · 1e-6), 0.03 mm at a radius of 100 mm: what that
    /// decides is which side it is on, and both sides are then looked at.</remarks>
    internal const double AlongMm = 1e-5;

    /// <summary>How far to either side a leg along a border is looked at, mm: well off the border, well below what is measured.</summary>
    internal const double BesideMm = 1e-5;

    /// <summary>What a leg beside a border meets on less than this is a corner that it only passes, mm.</summary>
    internal const double PassedMm = 2e-4;

    /// <summary>Corners nearer than this are one, mm.</summary>
    /// <remarks>Above the rounding of crossings (1e-9 mm), as for <see cref="OnBorderMm"/>.</remarks>
    internal const double SameMm = 1e-6;

    /// <summary>How far beside an edge its level and its material are looked up, mm: well off the edge, below any feature that is made.</summary>
    internal const double LevelMm = 5e-6;

    /// <summary>How far round a bend a conductor is looked for, mm: beyond <see cref="LevelMm"/> on both sides, below any feature that is made.</summary>
    internal const double AwayMm = 2e-5;

    /// <summary>How far outside its limits a beam still sees a place, mm: rounding grows with every wall that it is unfolded over.</summary>
    internal const double SeenMm = 1e-8;

    /// <summary>Two moves whose places differ by less are one way, and straight on if they turn by less than this share, mm.</summary>
    /// <remarks>Only what a path is shown as depends on it, never its length.</remarks>
    internal const double InLineMm = 1e-7;

    /// <summary>Taken off what is found by narrowing down, as a share of a link.</summary>
    /// <remarks>A hundred times what narrowing down can miss, and nothing beside what is measured.</remarks>
    internal const double NarrowedShare = 1e-7;

    /// <summary>Less than this a corner that straight ways can leave does not open, rad.</summary>
    /// <remarks>A way that leaves between the normals of two pieces that differ by less is as long as one from either piece, within 1e-9 of itself.</remarks>
    internal const double FlatRad = 1e-9;

    /// <summary>An angle on an arc that lies less than this before its start is at its start, rad: the rounding of a tangent point on the smallest
    /// arc that is made.</summary>
    internal const double ArcStartRad = 1e-7;
}
