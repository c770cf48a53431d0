using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>The wheel in the report.</summary>
internal static class WheelJson
{
    public static void Write(JsonSheet json, Design design) => json.Object("wheel", () =>
    {
        WheelLayout wheel = design.Wheel;
        json.Mm("outer_diameter_mm", wheel.OuterDiameterMm);
        json.Mm("bore_mm", design.Brief.Wheel.Bore.DiameterMm);
        json.Text("construction", design.Brief.Wheel.Construction == WheelConstruction.Windowed ? "windowed" : "lands");
        json.Mm("web_mm", wheel.WebMm);
        if (wheel.PitchCircleMm is double pitch)
        {
            json.Mm("pitch_circle_mm", pitch);
        }

        json.Object("feed", () => Wiper(json, wheel.Feed));
        json.Objects("rings", wheel.Rings, r => Ring(json, r));
    });

    private static void Wiper(JsonSheet json, RingLayout ring)
    {
        json.Mm("radius_mm", ring.RadiusMm);
        json.Deg("station_deg", ring.StationRad);
        json.Mm("contact_length_mm", 2 * ring.Patch.HalfLengthMm);
        json.Mm("contact_width_mm", 2 * ring.Patch.HalfWidthMm);
        json.Plain("contact_angle_deg", Geometry.Angles.DegFromRad(ring.Patch.AngleRad));
        json.Text("contact", ring.Patch.IsDisc ? "disc" : "rectangle");
        json.MmList("path_mm", ring.PathFromMm, ring.PathToMm);
        json.Text("why", ring.Why);
    }

    private static void Ring(JsonSheet json, RingLayout ring)
    {
        json.Text("output", ring.Name);
        json.Text("net", ring.Net);
        Wiper(json, ring);
        if (!ring.IsWhole)
        {
            json.Mm("side_gap_mm", ring.SideGapMm!.Value);
            json.MmList("window_mm", ring.WindowFromMm!.Value, ring.WindowToMm!.Value);
        }

        if (ring.Adjust is AdjustLayout adjust)
        {
            json.Array("edge", [adjust.EdgeInner, adjust.EdgeOuter], p =>
                json.RawValue(JsonSheet.List([JsonSheet.MmFigure(p.RadiusMm), JsonSheet.DegFigure(p.ProgrammeRad)])));
        }

        if (ring.IsWhole)
        {
            json.Array("copper", ["""{ "from_deg": 0, "to_deg": 360 }"""], json.RawValue);
        }
        else
        {
            json.Array("copper", ring.Periods, p => json.RawValue(
                $$"""{ "from_deg": {{JsonSheet.DegFigure(p.CopperRad.StartRad)}}, "to_deg": {{JsonSheet.DegFigure(p.CopperRad.EndRad)}} }"""));
        }
    }
}
