using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>Inside radii that a wheel has no room for are refused with a cure, whatever they meet first.</summary>
public sealed class InsideRadiusTests
{
    private static ChangedDemo Demo(string radius) => new ChangedDemo("propagation-bench").With("inside_radius = \"0.15 mm\"", $"inside_radius = \"{radius}\"");

    // A bore of 6 mm with its flat 2 mm from the axis: no circle of 3 mm touches both the flat and the bore from within. It ended as a fault of the program.
    [Fact]
    public void Of_AnInsideRadiusOfHalfTheBoreBesideAFlat_IsRefusedAtTheBore()
    {
        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => Demo("3 mm").Design());
        Finding reason = Assert.Single(refused.Reasons);
        Assert.Equal("wheel.bore", reason.Code);
        Assert.Contains("inside_radius", reason.Message, StringComparison.Ordinal);
        Assert.True(reason.Where!.Value.Line > 1);
    }

    [Theory]
    [InlineData("6 mm")]
    [InlineData("8 mm")]
    [InlineData("12 mm")]
    public void Of_AnInsideRadiusThatLeavesNoPlaceForAFlatSide_IsRefusedOrBuilt(string radius)
    {
        try
        {
            Demo(radius).With(", flat = \"5 mm\", flat_at = \"0 deg\"", "").Design();
        }
        catch (DesignRefusedException refused)
        {
            Assert.NotEmpty(refused.Reasons);
        }
    }
}
