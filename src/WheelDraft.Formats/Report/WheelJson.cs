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
        json.Mm("thickness_mm", design.Brief.Wheel.ThicknessMm);
        json.Text("material", design.Brief.Wheel.Material);
        json.Text("construction", design.Brief.Wheel.Construction == WheelConstruction.Windowed ? "windowed" : "lands");
        json.Mm("web_mm", wheel.WebMm);
        if (wheel.PitchCircleMm is double pitch)
        {
            json.Mm("pitch_circle_mm", pitch);
        }

        if (wheel.Feed is RingLayout feed)
        {
            json.Object("feed", () =>
            {
                json.Text("net", feed.Net);
                Wiper(json, feed);
            });
        }

        json.Objects("rings", wheel.Rings, r => Ring(json, r));
    });

    private static void Wiper(JsonSheet json, RingLayout ring)
    {
        json.Mm("radius_mm", ring.RadiusMm);
        json.Deg("station_deg", ring.StationRad);
        Patch(json, ring.Patch);
        json.MmList("path_mm", ring.PathFromMm, ring.PathToMm);
        json.Text("why", ring.Why);
    }

    private static void Lands(JsonSheet json, RingLayout ring, ReturnWiper other)
    {
        json.MmList("land_mm", ring.LandFromMm!.Value, ring.LandToMm!.Value);
        json.Object("return", () =>
        {
            json.Text("net", other.Net);
            json.Deg("station_deg", other.StationRad);
            Patch(json, other.Patch);
            json.Deg("apart_deg", other.ApartRad);
            json.Flag("upstream", other.IsUpstream);
            json.Mm("patch_gap_mm", other.PatchGapMm);
        });

        // Programme angles: over these parts of the turn a land is joined to each wiper, over the rest it floats.
        json.Objects("lands", ring.Lands, land =>
        {
            json.Text("name", land.Name);
            json.RawList("on_wiper_deg", Ends(land.OnWiper));
            json.RawList("on_return_deg", Ends(land.OnReturn));
            json.Array("floats", land.Floats, f => json.RawValue(JsonSheet.List(Ends(f))));
        });
    }

    private static IEnumerable<string> Ends(Geometry.CircleArc arc) =>
        arc.IsFull ? ["0", "360"] : [JsonSheet.DegFigure(arc.StartRad), JsonSheet.DegFigure(arc.EndRad)];

    private static void Patch(JsonSheet json, ContactPatch patch)
    {
        json.Mm("contact_length_mm", 2 * patch.HalfLengthMm);
        json.Mm("contact_width_mm", 2 * patch.HalfWidthMm);
        json.SignedDeg("contact_angle_deg", patch.AngleRad);
        json.Text("contact", patch.IsDisc ? "disc" : "rectangle");
    }

    private static void Ring(JsonSheet json, RingLayout ring)
    {
        json.Text("output", ring.Name);
        json.Text("net", ring.Net);
        Wiper(json, ring);
        if (ring.SideGapMm is double gap)
        {
            json.Mm("side_gap_mm", gap);
            json.MmList("window_mm", ring.WindowFromMm!.Value, ring.WindowToMm!.Value);
        }

        if (ring.Return is ReturnWiper other)
        {
            Lands(json, ring, other);
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
