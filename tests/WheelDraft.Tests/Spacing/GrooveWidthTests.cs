using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Spacing;

public sealed class GrooveWidthTests
{
    /// <summary>X of 0.25, 1.0 and 1.5 mm, a third of a clearance below 3 mm (TI SLUP419 table 7, IS 15382-1 clause 4.2).</summary>
    [Theory]
    [InlineData(1, GrooveX.Full, 1.5, 0.25)]
    [InlineData(2, GrooveX.Full, 1.5, 1.0)]
    [InlineData(3, GrooveX.Full, 1.5, 1.5)]
    [InlineData(3, GrooveX.Third, 1.5, 0.5)]
    [InlineData(2, GrooveX.Third, 2.4, 0.8)]
    [InlineData(3, GrooveX.Third, 3.0, 1.5)]
    [InlineData(1, GrooveX.Third, 1.5, 0.25)]
    public void LeastMm_DegreeAndRule_IsX(int degree, GrooveX rule, double clearanceMm, double x) =>
        Assert.Equal(x, GrooveWidth.LeastMm(degree, rule, clearanceMm), 1e-12);

    /// <summary>Older texts have 2.5 mm at pollution degree 4; IEC 60664-1 does not, and degree 4 has no creepage anyway.</summary>
    [Fact]
    public void LeastMm_PollutionDegree4_IsRefused() =>
        Assert.Throws<RuleRefusedException>(() => GrooveWidth.LeastMm(4, GrooveX.Full, 1));
}
