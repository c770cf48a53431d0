using System.Text.Json;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>The command <c>rule</c> from arguments to words and exit status. Values: IEC 60664-1 and IEC 60335-1 as in cases/worked_examples.csv.</summary>
public sealed class RuleCommandTests
{
    [Theory]
    [InlineData("clearance|--voltage|230 V|--category|II|--degree|2", 1.5, 2500.0, "IEC 60664-1:2020 Table F.2")]
    [InlineData("clearance|--voltage|230 V|--category|II|--degree|2|--insulation|reinforced", 3.0, 4000.0, "IEC 60664-1:2020 Table F.2")]
    [InlineData("clearance|--impulse|4 kV|--degree|3", 3.0, 4000.0, "IEC 60664-1:2020 Table F.2")]
    [InlineData("clearance|--impulse|4 kV|--degree|3|--altitude|4000 m", 3.87, 4000.0, "IEC 60664-1:2020 Table F.2")]
    [InlineData("clearance|--voltage|120 V|--category|II|--degree|3|--standard|IEC 60335-1", 0.8, 1500.0, "IEC 60335-1 ed. 4 Table 16")]
    [InlineData("creepage|--voltage|250 V|--degree|3|--group|IIIa|--insulation|reinforced|--standard|IEC 60335-1", 8.0, null, "IEC 60335-1 ed. 4 Table 17")]
    [InlineData("creepage|--voltage|208 V|--degree|2|--group|IIIa", 2.0, null, "IEC 60664-1:2020 Table F.5")]
    [InlineData("creepage|--voltage|0.23 kV|--degree|3|--group|IIIa|--insulation|functional", 3.68, null, "IEC 60664-1:2020 Table F.5")]
    public void Rule_Json_HasTheAgreedFields(string args, double requiredMm, double? impulseV, string basis)
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run(["rule", .. args.Split('|'), "--json"]));
        Assert.Empty(run.Error);
        using JsonDocument json = JsonDocument.Parse(run.Out);
        JsonElement root = json.RootElement;
        string[] fields = impulseV is null ? ["required_mm", "basis", "steps", "confidence"] : ["required_mm", "impulse_v", "basis", "steps", "confidence"];
        Assert.Equal(fields, root.EnumerateObject().Select(p => p.Name), StringComparer.Ordinal);
        Assert.Equal(requiredMm, root.GetProperty("required_mm").GetDouble());
        Assert.Equal(impulseV, impulseV is null ? null : root.GetProperty("impulse_v").GetDouble());
        Assert.Equal(basis, root.GetProperty("basis").GetString());
        Assert.Equal("high", root.GetProperty("confidence").GetString());
        Assert.Equal(
            "The table's distance: no wear addition, no margin, a creepage distance not raised to the clearance.",
            root.GetProperty("steps").EnumerateArray().Last().GetString());
    }

    // By hand: (120 + 1200) √2 = 1866.8 V, row 2 kV of Table F.8: 1.27 mm in place of the 0.5 mm of 1500 V.
    [Theory]
    [InlineData("none", 0.5, "that is more than the 0.50 mm given")]
    [InlineData("temporary", 1.27, "it decides")]
    public void Rule_OverVoltages_RuleOrAreTold(string over, double requiredMm, string words)
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("rule", "clearance", "--voltage", "120 V", "--category", "II", "--degree", "2", "--over-voltages", over, "--json"));
        using JsonDocument json = JsonDocument.Parse(run.Out);
        Assert.Equal(requiredMm, json.RootElement.GetProperty("required_mm").GetDouble());
        Assert.Equal(1500, json.RootElement.GetProperty("impulse_v").GetDouble());
        Assert.Contains(json.RootElement.GetProperty("steps").EnumerateArray(), s => s.GetString()!.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void Rule_OverVoltagesOfAnImpulse_AreRefused()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run("rule", "clearance", "--impulse", "4 kV", "--degree", "2", "--over-voltages", "temporary"));
        Assert.Contains("--voltage and --category", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Rule_Words_TellDistanceBasisAndSteps()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("rule", "creepage", "--voltage", "230 V", "--degree", "3", "--group", "IIIa"));
        Assert.Equal(
            """
            Required creepage: 4.00 mm
              basis       IEC 60664-1:2020 Table F.5, 250 V, PD3, IIIa
              read in     terminal block catalogue of 2015, p. 594, read row by row as Table F.4 of edition 2; TI SLUP419 table 3; notes on edition 3
              confidence  high
               1. Voltage 230 V, rationalised 250 V (IEC 60664-1:2020 Table F.4, IEC 60664-1:2007 clause 5.2.3, from memory).
               2. Creepage, row 250 V, PD3, IIIa: 4.00 mm (IEC 60664-1:2020 Table F.5).
               3. Basic insulation: the value as it is.
               4. The table's distance: no wear addition, no margin, a creepage distance not raised to the clearance.
            A drafting aid, no certificate: check it against the standard itself.

            """,
            run.Out);
        Assert.Empty(run.Error);
    }

    [Theory]
    [InlineData("creepage|--voltage|230 V|--degree|4|--group|IIIa", "Pollution degree 4")]
    [InlineData("clearance|--voltage|230 V|--category|II|--degree|4", "Pollution degree 4")]
    [InlineData("creepage|--voltage|700 V|--degree|3|--group|IIIb", "Material group IIIb")]
    [InlineData("creepage|--voltage|230 V|--degree|2|--group|IIIb|--standard|IEC 60335-1", "50 V only")]
    [InlineData("creepage|--voltage|2.5 kV|--degree|2|--group|I", "above 2000 V")]
    [InlineData("clearance|--voltage|1600 V|--category|II|--degree|2", "above 1500 V")]
    [InlineData("clearance|--voltage|230 V|--category|IV|--degree|2|--standard|IEC 60335-1", "category IV")]
    [InlineData("clearance|--impulse|4 kV|--degree|2|--altitude|21000 m", "above 20000 m")]
    public void Rule_OutsideTheRules_IsRefusedWithTheReason(string args, string reason)
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run(["rule", .. args.Split('|'), "--json"]));
        Assert.Contains(reason, run.Out, StringComparison.Ordinal);
        Assert.Contains(reason, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("clearance|--degree|2", "--voltage and --category")]
    [InlineData("clearance|--voltage|230 V|--degree|2", "--voltage and --category")]
    [InlineData("clearance|--voltage|230 V|--category|II", "--degree is missing")]
    [InlineData("clearance|--voltage|230 V|--impulse|4 kV|--degree|2", "instead of")]
    [InlineData("clearance|--voltage|230|--category|II|--degree|2", "has no unit")]
    [InlineData("clearance|--voltage|0 V|--category|II|--degree|2", "not above zero")]
    [InlineData("clearance|--voltage|230 V|--category|V|--degree|2", "it is one of I, II, III, IV")]
    [InlineData("clearance|--impulse|4 kV|--degree|2|--insulation|reinforcd", "did you mean \"reinforced\"")]
    [InlineData("creepage|--voltage|230 V|--degree|2|--group|iiia", "did you mean \"IIIa\"")]
    [InlineData("creepage|--voltage|230 V|--degree|2", "--group is missing")]
    [InlineData("creepage|--degree|2|--group|I", "--voltage is missing")]
    [InlineData("creepage|--voltage|230 V|--degree|2|--group|I|--altitude|0 m", "--altitude")]
    [InlineData("", "clearance, creepage")]
    public void Rule_WrongArguments_AreToldWithTheRightForm(string args, string told)
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run(["rule", .. args.Split('|', StringSplitOptions.RemoveEmptyEntries)]));
        Assert.Empty(run.Out);
        Assert.Contains(told, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Rule_SeveralWrongArguments_AreAllToldInOneRun()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run("rule", "creepage", "--voltage", "230", "--degree", "7", "--group", "IV", "--standard", "IEC 1"));
        Assert.Equal(4, run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries).Count(l => !l.Contains("wheeldraft explain CODE", StringComparison.Ordinal)));
    }
}
