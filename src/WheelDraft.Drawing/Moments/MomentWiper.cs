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
    public Point Foot { get; init; }

    /// <summary>Its contact.</summary>
    public Point Tip { get; init; }

    /// <summary>The contact patch where an arm stands for a strip; else null.</summary>
    public Outline? Patch { get; init; }

    /// <summary>Every wiper of a design, and strips that ride on no ring.</summary>
    public static IReadOnlyList<MomentWiper> Of(Design design, double carrierMm)
    {
        List<MomentWiper> wipers = [];
        foreach (RingLayout ring in design.Wheel.AllRings)
        {
            wipers.AddRange(ring.Wipers.Select(w => Of(design, ring, w, carrierMm)));
        }

        wipers.AddRange(design.Strips.Strips
            .Where(s => s.Ring is null)
            .Select(s => OfStrip(new(s.Form.Strip.Name, s.Net, null, []), s, s.Placement.Of(s.Form.FrameAt(s.Form.LengthMm)).Origin.Plan)));
        return wipers;
    }

    private static MomentWiper Of(Design design, RingLayout ring, RingWiper wiper, double carrierMm)
    {
        Point tip = Point.Polar(ring.RadiusMm, wiper.StationRad);
        MomentWiper named = new(wiper.Name, wiper.Net, ring.IsFeed || wiper.IsReturn ? null : ring.Name, []);
        if (design.Strips.At(ring.RadiusMm, wiper.StationRad) is PlacedStrip strip)
        {
            return OfStrip(named, strip, tip);
        }

        double half = Math.Max(wiper.Patch.HalfWidthMm, wiper.Patch.HalfLengthMm);
        double reach = carrierMm * (1 + ArmShare);
        Contour arm = Contour.Rectangle(new(ring.RadiusMm - half, -half), new(reach, half)).Placed(Placement.Turn(wiper.StationRad));
        return named with { Outline = [arm], Foot = Point.Polar(reach, wiper.StationRad), Tip = tip, Patch = wiper.Patch.At(ring.RadiusMm, wiper.StationRad) };
    }

    private static MomentWiper OfStrip(MomentWiper named, PlacedStrip strip, Point tip) =>
        named with { Outline = [.. PlanView.Ribbons(strip)], Foot = strip.Placement.Of(strip.Form.FrameAt(0)).Origin.Plan, Tip = tip };
}
