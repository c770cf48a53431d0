namespace WheelDraft.Geometry;

/// <summary>The few tolerances of the plane that are not arguments, each with its reason.</summary>
/// <remarks>Lengths in millimetres. A part is at most a metre across, where a double resolves 1e-13 mm.</remarks>
public static class Tolerances
{
    /// <summary>How far apart the end of one piece and the start of the next may lie in a closed contour, mm.</summary>
    /// <remarks>Far above rounding (1e-12 mm for end points found by sine and cosine), far below anything that can be
    /// measured (1e-3 mm). Larger, and gaps in a drawing pass unseen; smaller, and honest contours are refused.</remarks>
    public const double JoinMm = 1e-7;

    /// <summary>A piece shorter than this is no piece, mm.</summary>
    /// <remarks>Ten times below <see cref="JoinMm"/>, so that a dropped piece never opens a contour.</remarks>
    public const double ShortestPieceMm = 1e-8;

    /// <summary>Two pieces that come this near touch, mm.</summary>
    /// <remarks>A thousand times the rounding of a tangent point found by calculation (1e-12 mm), a hundred times below
    /// <see cref="JoinMm"/>. Larger, and a real gap counts as contact; smaller, and a fillet misses the line it is tangent to.</remarks>
    public const double TouchMm = 1e-9;
}
