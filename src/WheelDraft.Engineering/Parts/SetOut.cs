using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The points by which a wheel's copper is set out by hand: each edge with its two corners; wheel frame.</summary>
/// <param name="Edges">The edges, ring by ring in file order, each on-period's make before its break.</param>
internal sealed record SetOut(IReadOnlyList<SetOutEdge> Edges)
{
    /// <summary>Share of the process tolerance to which a place is worth giving.</summary>
    public const double ShareOfTolerance = 0.1;

    /// <summary>The points of a wheel.</summary>
    public static SetOut Of(WheelLayout wheel, Motion motion) => new([.. wheel.Rings.SelectMany(r => OfRing(r, motion))]);

    private static IEnumerable<SetOutEdge> OfRing(RingLayout ring, Motion motion)
    {
        if ((ring.WindowFromMm ?? ring.LandFromMm) is not double from || (ring.WindowToMm ?? ring.LandToMm) is not double to)
        {
            yield break;
        }

        foreach (RingPeriod period in ring.Periods)
        {
            foreach (CopperEdge edge in (CopperEdge[])[period.Make, period.Break])
            {
                // A land's ends are radial, whatever wiper they are set by.
                SetOutPoint At(double radiusMm) => new(radiusMm, motion.WheelRad(ring.StationRad, edge.AngleAt(radiusMm)));
                yield return new(ring, edge.End, At(from), At(ring.RadiusMm), At(to));
            }
        }
    }
}

/// <summary>One edge of a ring's copper as it is set out.</summary>
/// <param name="Ring">The ring.</param>
/// <param name="End">Whether the contact makes or breaks there.</param>
/// <param name="Inner">The corner on the inner radius of windows or lands, sharp, before any rounding.</param>
/// <param name="OnRing">Where it crosses the ring radius.</param>
/// <param name="Outer">The corner on the outer radius, sharp.</param>
internal sealed record SetOutEdge(RingLayout Ring, EdgeEnd End, SetOutPoint Inner, SetOutPoint OnRing, SetOutPoint Outer);

/// <summary>A point of the wheel, set out from the axis and the home mark.</summary>
/// <param name="RadiusMm">Radius, mm.</param>
/// <param name="WheelRad">Wheel angle: from the home mark, anticlockwise seen from the wiper side.</param>
internal readonly record struct SetOutPoint(double RadiusMm, double WheelRad)
{
    /// <summary>The place: x from the axis towards the home mark, y to the left of that, mm.</summary>
    public Point At => Point.Polar(RadiusMm, WheelRad);

    /// <summary>The straight distance to where the home line crosses the point's own radius, mm: what dividers are set to. The point lies anticlockwise
    /// of the home line where y is above 0.</summary>
    public double ChordMm => 2 * RadiusMm * Math.Abs(Math.Sin(WheelRad / 2));
}
