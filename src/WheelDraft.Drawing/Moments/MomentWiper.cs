using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A wiper in the picture of a moment, in the housing.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Net">Its net.</param>
/// <param name="Output">The output whose contact it makes; null for the feed, second wipers and other strips.</param>
/// <param name="Outline">Its strip's edges, or the arm that stands for it.</param>
internal sealed record MomentWiper(string Name, string Net, string? Output, IReadOnlyList<Contour> Outline)
{
    // Without strips, arms stand for them: this share of the carrier's radius beyond its rim.
    private const double ArmShare = 0.18;

    /// <summary>Its outer end.</summary>
    public required Point Foot { get; init; }

    /// <summary>Its contact.</summary>
    public required Point Tip { get; init; }

    /// <summary>The contact patch where an arm stands for a strip; else null.</summary>
    public Outline? Patch { get; init; }

    /// <summary>Every wiper of a design, and strips that ride on no ring.</summary>
    public static IReadOnlyList<MomentWiper> Of(Design design, double carrierMm)
    {
        List<MomentWiper> wipers = [];
        foreach (RingLayout ring in design.Wheel.AllRings)
        {
            string name = ring.IsFeed ? "feed" : ring.Name;
            wipers.Add(Of(design, ring, carrierMm) with { Name = name, Net = ring.Net, Output = ring.IsFeed ? null : ring.Name });
            if (ring.Return is ReturnWiper other)
            {
                RingLayout second = ring with { StationRad = other.StationRad, Patch = other.Patch };
                wipers.Add(Of(design, second, carrierMm) with { Name = $"{ring.Name} return", Net = other.Net });
            }
        }

        wipers.AddRange(design.Strips.Strips.Where(s => s.Ring is null).Select(s => OfStrip(s, s.Placement.Of(s.Form.FrameAt(s.Form.LengthMm)).Origin.Plan) with { Name = s.Form.Strip.Name }));
        return wipers;
    }

    private static MomentWiper Of(Design design, RingLayout ring, double carrierMm)
    {
        Point tip = Point.Polar(ring.RadiusMm, ring.StationRad);
        PlacedStrip? strip = design.Strips.Strips.FirstOrDefault(s => s.Ring is RingPlace place && place.RadiusMm == ring.RadiusMm && place.StationRad == ring.StationRad);
        if (strip is not null)
        {
            return OfStrip(strip, tip);
        }

        double half = Math.Max(ring.Patch.HalfWidthMm, ring.Patch.HalfLengthMm);
        double reach = carrierMm * (1 + ArmShare);
        Contour arm = Contour.Rectangle(new(ring.RadiusMm - ring.Patch.HalfLengthMm, -half), new(reach, half)).Placed(Placement.Turn(ring.StationRad));
        return new("", ring.Net, null, [arm])
        {
            Foot = Point.Polar(reach, ring.StationRad),
            Tip = tip,
            Patch = ring.Patch.At(ring.RadiusMm, ring.StationRad),
        };
    }

    private static MomentWiper OfStrip(PlacedStrip strip, Point tip) => new("", strip.Net, null, [.. PlanView.Ribbons(strip)])
    {
        Foot = strip.Placement.Of(strip.Form.FrameAt(0)).Origin.Plan,
        Tip = tip,
    };
}
