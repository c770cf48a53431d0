namespace WheelDraft.Geometry;

/// <summary>The radii that a shape occupies about a point; a connected shape occupies all of them.</summary>
/// <param name="LeastMm">Least radius, mm; 0 when the shape contains the point.</param>
/// <param name="GreatestMm">Greatest radius, mm.</param>
/// <param name="AtLeast">A point of the shape at the least radius.</param>
/// <param name="AtGreatest">A point of the shape at the greatest radius.</param>
public readonly record struct RadialInterval(double LeastMm, double GreatestMm, Point AtLeast, Point AtGreatest)
{
    /// <summary>Gap between two sets of radii, mm; 0 when they touch or overlap.</summary>
    public double GapMm(RadialInterval other) =>
        Math.Max(0, Math.Max(other.LeastMm - GreatestMm, LeastMm - other.GreatestMm));
}
