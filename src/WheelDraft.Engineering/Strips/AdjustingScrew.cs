using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>An adjusting screw in its place: it pushes the edge of its strip along the radius of the strip's station, from the rim's side.</summary>
/// <remarks>Live, since it touches the strip, and turned by hand. Its axis lies level with the middle of the strip where it meets it.</remarks>
/// <param name="Name">What reports call it: the strip's name and "screw".</param>
/// <param name="Thread">Its thread, e.g. M3.</param>
/// <param name="Meets">Where it meets the strip's edge at mid travel; z over the copper face.</param>
/// <param name="DirectionRad">Outward along its axis: the station's radius, housing angle.</param>
public sealed record AdjustingScrew(string Name, string Thread, SpaceVector Meets, double DirectionRad)
{
    /// <summary>Diameter of its thread, mm.</summary>
    public required double DiameterMm { get; init; }

    /// <summary>From the strip to the far end of its head, mm.</summary>
    public required double LengthMm { get; init; }

    /// <summary>How far it moves between the ends of the wiper's travel, mm: the travel by the lever.</summary>
    public required double TravelMm { get; init; }

    /// <summary>Its thread, its head over all of its travel, and then its lugs, as spacing measures them.</summary>
    public required IReadOnlyList<Solid> Solids { get; init; }

    /// <summary>The lugs or plates that hold it, the nearest to the strip first.</summary>
    public required IReadOnlyList<HeldScrewLug> Lugs { get; init; }

    /// <summary>How wide its lugs are across its axis, in plan and height, mm: its thread three times, so that as much stands on either side of the hole
    /// (common practice, no source).</summary>
    public double LugWidthMm => 3 * DiameterMm;

    /// <summary>What stands in its way, or works otherwise than the file says.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>What the screw of a strip is called.</summary>
    internal static string NameOf(PlacedStrip strip) => $"{strip.Form.Strip.Name} screw";
}

/// <summary>A lug or plate across an adjusting screw.</summary>
/// <param name="From">Where its face toward the strip crosses the screw's axis, in plan.</param>
/// <param name="To">Where its face toward the head crosses it.</param>
/// <param name="Solid">All of it: from the surface that its strip is seated on to beyond the screw.</param>
public sealed record HeldScrewLug(Point From, Point To, Solid Solid);
