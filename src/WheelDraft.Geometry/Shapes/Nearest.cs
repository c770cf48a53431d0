using System.Globalization;

namespace WheelDraft.Geometry;

/// <summary>The least distance between two shapes and where it lies.</summary>
/// <param name="DistanceMm">The distance, mm; 0 when they touch or overlap.</param>
/// <param name="OnFirst">The nearest point of the first shape.</param>
/// <param name="OnSecond">The nearest point of the second shape.</param>
public readonly record struct Nearest(double DistanceMm, Point OnFirst, Point OnSecond)
{
    /// <summary>The distance and both points.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{DistanceMm} mm from {OnFirst} to {OnSecond}");

    /// <summary>The same, with first and second exchanged.</summary>
    public Nearest Swapped => new(DistanceMm, OnSecond, OnFirst);
}
