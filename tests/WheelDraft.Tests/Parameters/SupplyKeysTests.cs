using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Parameters;

/// <summary>[supply] lines, voltage_tolerance and over_voltages, and a load's own voltage.</summary>
public sealed class SupplyKeysTests
{
    private static readonly string Whole = File.ReadAllText(Path.Combine(ReaderCaseTests.Folder, "whole-windowed.toml"));

    private static ParameterResult Read(string supply, string replace = "", string by = "") =>
        ParameterReader.Read(Encoding.UTF8.GetBytes(Whole
            .Replace("[supply]\n", $"[supply]\n{supply}\n", StringComparison.Ordinal)
            .Replace(replace.Length > 0 ? replace : "\0", by, StringComparison.Ordinal)));

    [Fact]
    public void Read_LeftOut_IsOneLineWithoutToleranceAndOverVoltages()
    {
        SupplyBrief supply = Read("").Brief!.Supply;
        Assert.Equal(["L"], supply.Lines);
        Assert.Equal((0, OverVoltages.None, 230), (supply.VoltageToleranceShare, supply.OverVoltages, supply.HighestV));
    }

    [Fact]
    public void Read_Given_IsInTheBrief()
    {
        SupplyBrief supply = Read("lines = [\"L\", \"L2\", \"L3\"]\nvoltage_tolerance = \"10 %\"\nover_voltages = \"temporary\"").Brief!.Supply;
        Assert.Equal(["L", "L2", "L3"], supply.Lines);
        Assert.Equal((0.1, OverVoltages.Temporary), (supply.VoltageToleranceShare, supply.OverVoltages));
        Assert.Equal(398.37, supply.HighestV, 0.01);
    }

    [Theory]
    [InlineData("lines = [\"L\", \"L2\"]", "the supply has two lines")]
    [InlineData("lines = [\"L\", \"n\", \"L3\"]", "has the name of neutral")]
    [InlineData("lines = [\"L\", \"L2\", \"l2\"]", "stands twice")]
    [InlineData("lines = [\"L1\", \"L2\", \"L3\"]", "the net \"L\" is none of the lines")]
    [InlineData("lines = []", "lines")]
    [InlineData("voltage_tolerance = \"60 %\"", "voltage_tolerance")]
    [InlineData("over_voltages = \"some\"", "over_voltages")]
    public void Read_Wrong_IsToldWithItsPlace(string supply, string words)
    {
        ParameterResult result = Read(supply);
        Assert.Null(result.Brief);
        Assert.Contains(result.Diagnostics, d => d.ToString("x").Contains(words, StringComparison.Ordinal));
    }
}
