using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Parameters;

/// <summary>Outputs and their times.</summary>
internal static class OutputMaker
{
    /// <summary>An output.</summary>
    /// <param name="table">Its table.</param>
    /// <param name="spacing">The spacing rules, for the rule of an open contact.</param>
    /// <param name="hasStrip">Whether a strip gives what the contact leaves out.</param>
    public static OutputBrief Output(CheckedTable table, SpacingBrief spacing, bool hasStrip)
    {
        string name = table.Text("name")!;
        ProgrammeBrief programme = table.Is("on", "always") ? ProgrammeBrief.Always : new ProgrammeBrief([.. table.Tables("on").Select(Period)]);
        return new OutputBrief(name, table.Text("net") ?? name, programme, WheelMaker.Contact(table, hasStrip))
        {
            ToleranceS = table.Quantity("tolerance") is { Dimension: Dimension.Time } time ? time.Value : null,
            StationRad = table.RadOrNull("station"),
            RadiusMm = table.BaseOrNull("radius"),
            SidePlayMm = table.Base("side_play"),
            OverOpenContact = table.Has("open_contact") ? table.Insulation("open_contact") : spacing.OverOpenContact,
            FlowLPerS = table.BaseOrNull("flow"),
            FlowToleranceShare = table.BaseOrNull("flow_tolerance") ?? 0,
            IsToleranceOfDose = table.Quantity("tolerance") is { Dimension: Dimension.Volume },
            Measured = table.Has("copper") ? new([.. table.Tables("copper").Select(Stretch)]) { GivenRad = table.RadOrNull("measured_to") } : null,
            Adjust = table.Table("adjust") is { } adjust ? Adjust(adjust) : null,
            ReturnStationRad = table.RadOrNull("return_station"),
            ReturnNet = table.Text("return_net"),
        };
    }

    private static CircleArc Stretch(CheckedTable table) => CircleArc.Between(table.Rad("from"), table.Rad("to"));

    private static OnPeriodBrief Period(CheckedTable table)
    {
        StartBrief start = table.Text("after") is { } output ? new StartAfter(output, Amount(table.Quantity("gap")!.Value)) : new StartAt(Amount(table.Quantity("from")!.Value));
        ExtentBrief extent = table.Quantity("to") is { } to ? new LastsTo(Amount(to))
            : table.Quantity("for") is { Dimension: Dimension.Volume } volume ? new LastsForVolume(volume.Value)
            : new LastsFor(Amount(table.Quantity("for")!.Value));
        return new OnPeriodBrief(start, extent);
    }

    private static TurnAmount Amount(Quantity quantity) =>
        quantity.Dimension == Dimension.Angle ? TurnAmount.Radians(quantity.AngleRad) : TurnAmount.Seconds(quantity.Value);

    private static AdjustBrief Adjust(CheckedTable table) => new(
        table.Is("edge", "on") ? AdjustedEdge.On : AdjustedEdge.Off,
        table.Base("range"),
        table.Base("travel"),
        table.Is("longer", "in") ? LongerWay.In : LongerWay.Out,
        table.Text("screw")!,
        Screws.PitchMm(table.Text("screw")!),
        table.Number("lever")!.Value)
    {
        Place = table.BaseOrNull("screw_at") is double at ? new ScrewPlace(at, table.Base("screw_length")) { Lugs = [.. table.Items("screw_lugs").Select(Lug)] } : null,
    };

    private static ScrewLug Lug(CheckedValue pair) => new(pair.Items[0].Quantity!.Value.Value, pair.Items[1].Quantity!.Value.Value);
}
