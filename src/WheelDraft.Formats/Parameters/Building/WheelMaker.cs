using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Wheel, carrier, feed and contacts.</summary>
internal static class WheelMaker
{
    /// <summary>The wheel. A lands wheel without 'web' has none to keep.</summary>
    public static WheelBrief Wheel(CheckedTable table) => new(
        table.Is("construction", "lands") ? WheelConstruction.Lands : WheelConstruction.Windowed,
        table.Base("thickness"),
        table.Text("material")!,
        Bore(table.Table("bore")!),
        Shaft(table.Text("shaft")!),
        table.BaseOrNull("web") ?? 0)
    {
        OuterDiameterMm = table.BaseOrNull("outer_diameter"),
        Fixings = table.Table("fixings") is { } fixings ? Fixings(fixings) : null,
        ShaftDiameterMm = table.BaseOrNull("shaft_diameter"),
        ShaftNet = table.Text("shaft_net"),
        RunOutMm = table.Base("run_out"),
        FaceRunOutMm = table.Base("face_run_out"),
        Rim = table.Flag("rim")!.Value,
        RingOrder = table.Has("order") && !table.Is("order", "auto") ? table.Texts("order") : null,
        SearchesRingOrder = table.Is("order", "auto"),
    };

    /// <summary>The carrier.</summary>
    public static CarrierBrief Carrier(CheckedTable table) => new(table.Group(), table.Base("thickness"), table.Base("step"))
    {
        Cti = table.Number("cti"),
        DiameterMm = table.BaseOrNull("diameter"),
    };

    /// <summary>The feed.</summary>
    public static FeedBrief Feed(CheckedTable table, bool hasStrip) =>
        new(table.Text("net")!, table.RadOrNull("station"), Contact(table, hasStrip), table.Base("side_play")) { RadiusMm = table.BaseOrNull("radius") };

    /// <summary>The contact of the feed or an output.</summary>
    /// <param name="table">Its table.</param>
    /// <param name="hasStrip">Whether a strip gives what the table leaves out.</param>
    public static ContactBrief Contact(CheckedTable table, bool hasStrip)
    {
        double? angle = table.RadOrNull("contact_angle") is { } given ? FoldAngle(given) : hasStrip ? null : 0;
        return new ContactBrief(
            table.Base("contact_length"),
            table.BaseOrNull("contact_width"),
            table.BaseOrNull("worn_length") ?? table.Base("contact_length"),
            angle,
            table.BaseOrNull("nose_radius"));
    }

    /// <summary>A direction of a fold line in (−90°, 90°]: it has no sense.</summary>
    private static double FoldAngle(double angleRad)
    {
        double rest = Math.IEEERemainder(angleRad, Math.PI);
        return rest <= -Math.PI / 2 ? rest + Math.PI : rest;
    }

    /// <summary>A bore, of the wheel or a cam.</summary>
    public static BoreBrief Bore(CheckedTable table) => new(table.Base("diameter"), table.BaseOrNull("flat"), table.Rad("flat_at")) { Fit = table.Text("fit") ?? "" };

    private static FixingsBrief Fixings(CheckedTable table) =>
        new((int)table.Number("count")!.Value, table.Base("diameter"), table.BaseOrNull("pitch_circle"), table.Rad("first_at")) { GivenHeadMm = table.BaseOrNull("head"), More = [.. table.Tables("more").Select(c => new FixingCircle((int)c.Number("count")!.Value, c.Base("pitch_circle"), c.Rad("first_at")))] };

    private static ShaftKind Shaft(string word) => word switch
    {
        "live" => ShaftKind.Live,
        "earthed" => ShaftKind.Earthed,
        "touchable" => ShaftKind.Touchable,
        "floating" => ShaftKind.Floating,
        _ => ShaftKind.Insulating,
    };

    /// <summary>Sheets to nest on.</summary>
    public static SheetBrief Sheet(CheckedTable table)
    {
        IReadOnlyList<CheckedValue> size = table.Items("size");
        return new(table.Text("material")!, table.Base("thickness"), size[0].Quantity!.Value.Value, size[1].Quantity!.Value.Value, table.Base("gap"), (int)table.Number("sets")!.Value);
    }
}
