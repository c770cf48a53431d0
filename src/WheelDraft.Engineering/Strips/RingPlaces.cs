namespace WheelDraft.Engineering;

/// <summary>What the strips need to know of the wheel layout.</summary>
/// <param name="Feed">Where the feed wiper touches; null for a lands wheel.</param>
/// <param name="Outputs">Where each output's wiper touches, in file order.</param>
public sealed record RingPlaces(RingPlace? Feed, IReadOnlyList<RingPlace> Outputs)
{
    /// <summary>Where each output's second wiper touches (lands wheel), in file order; empty for a windowed wheel.</summary>
    public IReadOnlyList<RingPlace?> Returns { get; init; } = [];

    /// <summary>The places of a wheel.</summary>
    internal static RingPlaces Of(Brief brief, WheelLayout wheel)
    {
        // A contact is off its ring when it reaches into the bore or over the rim.
        RingPlace PlaceOf(RingLayout ring) => new(ring.RadiusMm, ring.StationRad, brief.Wheel.Bore.DiameterMm / 2, wheel.OuterDiameterMm / 2);
        return new(wheel.Feed is null ? null : PlaceOf(wheel.Feed), [.. wheel.Rings.Select(PlaceOf)])
        {
            Returns = [.. wheel.Rings.Select(r => r.Return is ReturnWiper other ? PlaceOf(r) with { StationRad = other.StationRad } : null)],
        };
    }
}
