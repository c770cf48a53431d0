using WheelDraft.Engineering;
using WheelDraft.Formats.Report;
using Xunit;

namespace WheelDraft.Tests.Report;

/// <summary>Cautions for mains stand wherever a supply can kill: its lines and its tolerance count, as they do for insulation.</summary>
public sealed class CautionsTests
{
    // 48 V with ten per cent is 52.8 V, and three lines of 40 V are 69 V apart: the report called both extra-low, the grades of insulation neither.
    [Theory]
    [InlineData(24, 0.1, 1, true)]
    [InlineData(48, 0, 1, true)]
    [InlineData(48, 0.1, 1, false)]
    [InlineData(40, 0, 3, false)]
    [InlineData(230, 0, 1, false)]
    public void For_Supply_AreThoseOfExtraLowVoltageOnlyWhereNoTwoLinesEverExceedIt(double volts, double toleranceShare, int lines, bool isExtraLow)
    {
        Design demo = Demos.Of("tank-doser");
        SupplyBrief supply = demo.Brief.Supply with { VoltageV = volts, VoltageToleranceShare = toleranceShare, Lines = [.. Enumerable.Range(1, lines).Select(i => FormattableString.Invariant($"L{i}"))] };
        Design design = demo with { Brief = demo.Brief with { Supply = supply } };
        Assert.Equal(isExtraLow, Cautions.For(design)[0].StartsWith("Extra-low voltage", StringComparison.Ordinal));
    }
}
