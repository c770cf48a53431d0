using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Parameters;

/// <summary>Loads, inputs, interlocks, tolerance draws and scenarios.</summary>
internal static class CircuitMaker
{
    /// <summary>A load, or the motor.</summary>
    public static LoadBrief Load(CheckedTable table, string name)
    {
        IReadOnlyList<string> ends = table.Texts("between");
        return new LoadBrief(name, ends[0], ends[1], Rating(table), table.Base("pull_in"), table.Base("drop_out"))
        {
            RatedV = table.BaseOrNull("voltage"),
            Designation = table.Text("designation") ?? "",
        };
    }

    /// <summary>A sensor or switch.</summary>
    public static InputBrief Input(CheckedTable table)
    {
        IReadOnlyList<string> ends = table.Texts("between");
        return new InputBrief(table.Text("name")!, ends[0], ends[1], table.Text("closed_when")) { Designation = table.Text("designation") ?? "" };
    }

    /// <summary>A claim.</summary>
    public static InterlockBrief Interlock(CheckedTable table)
    {
        (string key, InterlockClaim claim) = table.Has("never_on") ? ("never_on", InterlockClaim.NeverOn)
            : table.Has("always_on") ? ("always_on", InterlockClaim.AlwaysOn)
            : ("never_together", InterlockClaim.NeverTogether);
        return new InterlockBrief(table.Text("name")!, claim, table.Texts(key))
        {
            WhileClosed = table.Texts("while_closed"),
            WhileOpen = table.Texts("while_open"),
            WhileTrue = table.Texts("while_true"),
            WhileFalse = table.Texts("while_false"),
            Between = table.Items("between") is [{ Quantity: { } from }, { Quantity: { } to }] ? CircleArc.Between(from.AngleRad, to.AngleRad) : null,
            Faults = table.Is("faults", "single") ? FaultDepth.Single : FaultDepth.None,
        };
    }

    /// <summary>How draws are made.</summary>
    public static MonteCarloBrief MonteCarlo(CheckedTable? table) => table is null ? new MonteCarloBrief() : new MonteCarloBrief
    {
        Draws = (int)table.Number("draws")!.Value,
        Seed = (long)table.Number("seed")!.Value,
        Distribution = table.Is("distribution", "uniform") ? DrawDistribution.Uniform : DrawDistribution.Normal,
    };

    /// <summary>A history.</summary>
    public static ScenarioBrief Scenario(CheckedTable table) => new(
        table.Text("name")!,
        [.. table.Tables("steps").Select(s => new ScenarioStep(s.Base("at"), s.Texts("close"), s.Texts("open"))
        {
            Block = s.Texts("block"),
            Free = s.Texts("free"),
            Latch = s.Texts("latch"),
            Unlatch = s.Texts("unlatch"),
        })],
        table.Base("duration"));

    private static LoadRating Rating(CheckedTable table) =>
        table.BaseOrNull("power") is { } power ? new RatedPower(power, table.Number("power_factor")!.Value)
        : table.BaseOrNull("current") is { } current ? new RatedCurrent(current, table.Number("power_factor")!.Value)
        : new RatedImpedance(table.Base("resistance"), table.Base("reactance"));
}
