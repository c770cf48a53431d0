using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

/// <summary>The adjusting screw as a live solid where the file says where it meets its strip.</summary>
public sealed class AdjustingScrewTests
{
    private const string Placed = ", screw_at = \"48 mm\", screw_length = \"24 mm\", screw_lugs = [ [\"5 mm\", \"11 mm\"] ]";

    private static ChangedDemo Screwed(string at, string lugs = "", string lever = "1.0") =>
        new ChangedDemo("propagation-bench").With("lever = 2.29" + Placed, $"lever = {lever}, screw_at = \"{at}\", screw_length = \"20 mm\"{lugs}");

    // The arm outside the rim: nothing live of another net is near.
    [Fact]
    public void Of_ScrewBesideTheRim_PushesTheOuterEdgeAlongTheStationsRadius()
    {
        Design design = Screwed("40 mm").Design();
        AdjustingScrew screw = Assert.Single(design.Screws);
        Assert.True(design.Meets);
        Assert.Equal("mist strip screw", screw.Name);
        Assert.Equal(Angles.RadFromDeg(270), screw.DirectionRad, 1e-12);
        Assert.Equal((3, 20, 2), (screw.DiameterMm, screw.LengthMm, screw.TravelMm));

        // Oracle: the strip's prisms. The place is on the edge of one of them, and its outer one: 0.01 mm further out there is none.
        Solid[] arm = [.. design.Solids.Where(s => string.Equals(s.Name, "mist strip", StringComparison.Ordinal) && s.FromZMm > 1)];
        Point edge = screw.Meets.Plan;
        Assert.Contains(arm, s => s.Outline.Contains(edge + new Vector(0, 0.01)) && s.FromZMm <= screw.Meets.Z && s.ToZMm >= screw.Meets.Z);
        Assert.DoesNotContain(arm, s => s.Outline.Contains(edge - new Vector(0, 0.01)));

        // The thread from a millimetre before the edge, where the travel ends, to a millimetre past its length; the head twice as wide.
        Solid[] solids = [.. design.Solids.Where(s => string.Equals(s.Name, screw.Name, StringComparison.Ordinal))];
        Assert.All(solids, s => Assert.Equal("mist", s.Net));
        Assert.Equal(edge.Y + 1, solids[0].Outline.Bounds.MaxY, 1e-9);
        Assert.Equal(edge.Y - 21, solids[0].Outline.Bounds.MinY, 1e-9);
        Assert.Equal(3, solids[0].ToZMm - solids[0].FromZMm, 1e-9);
        Assert.Equal(6, solids[1].ToZMm - solids[1].FromZMm, 1e-9);
    }

    // Over the live wheel a screw has 0.8 mm below it where 1.7 mm are asked: measured, and not passed in silence.
    [Fact]
    public void Of_ScrewAtTheContact_MissesTheClearanceToTheWheel()
    {
        Design design = Screwed("69.7 mm").Design();
        Finding finding = Assert.Single(design.Findings, f => string.Equals(f.Code, "spacing.clearance", StringComparison.Ordinal) && f.Severity == FindingSeverity.Error);
        Assert.Contains("mist strip screw", finding.Message, StringComparison.Ordinal);
        Assert.False(design.Meets);
    }

    [Fact]
    public void Of_ScrewAtTheClamp_IsRefusedWithTheRange()
    {
        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => Screwed("12 mm").Design());
        Assert.Contains("21 mm", refused.Message, StringComparison.Ordinal);
        Assert.NotNull(refused.Reasons[0].Where);
    }

    [Fact]
    public void Read_PlaceWithoutLength_AsksForIt()
    {
        ParameterResult result = new ChangedDemo("propagation-bench").With(Placed, ", screw_at = \"40 mm\"").Read();
        Assert.Contains(result.Diagnostics, d => d.ToString()!.Contains("screw_length", StringComparison.Ordinal));
    }

    [Fact]
    public void Assumptions_ScrewThatIsNotPlaced_SaysThatItIsNotMeasured() =>
        Assert.Contains(new ChangedDemo("propagation-bench").With(Placed, "").Design().Assumptions, a => string.Equals(a.Key, "output[2].adjust.screw_at", StringComparison.Ordinal));

    [Fact]
    public void Assumptions_ScrewWithoutLugs_SaysThatTheyAreNotMeasured() =>
        Assert.Contains(Screwed("40 mm").Design().Assumptions, a => string.Equals(a.Key, "output[2].adjust.screw_lugs", StringComparison.Ordinal));

    // Oracle: places along the axis by hand. The strip's edge, five and eleven millimetres further out, nine wide; from the floor to 4.5 over the axis.
    [Fact]
    public void Of_Lug_StandsOnTheFloorRoundTheScrewsAxis()
    {
        Design design = Demos.Of("propagation-bench");
        AdjustingScrew screw = Assert.Single(design.Screws);
        Solid lug = Assert.Single(design.Solids, s => string.Equals(s.Name, "mist strip screw lug", StringComparison.Ordinal));
        Bounds plan = lug.Outline.Bounds;
        Assert.Equal(screw.Meets.X - 4.5, plan.MinX, 1e-9);
        Assert.Equal(screw.Meets.X + 4.5, plan.MaxX, 1e-9);
        Assert.Equal(screw.Meets.Y - 5, plan.MaxY, 1e-9);
        Assert.Equal(screw.Meets.Y - 11, plan.MinY, 1e-9);
        Assert.Equal((-7, screw.Meets.Z + 4.5, "mist"), (lug.FromZMm, lug.ToZMm, lug.Net));
        Assert.Contains(design.Spacing.AllPairs, r => string.Equals(r.FirstItem, lug.Name, StringComparison.Ordinal) || string.Equals(r.SecondItem, lug.Name, StringComparison.Ordinal));
    }

    // At the contact the lug would have to stand in the wheel; the carrier is no solid, so nothing else would have noticed.
    [Fact]
    public void Of_LugWhereTheWheelTurns_IsAnError()
    {
        Design design = Screwed("60 mm", ", screw_lugs = [ [\"2 mm\", \"5 mm\"] ]").Design();
        Assert.Contains(design.Findings, f => string.Equals(f.Code, "strip.lug", StringComparison.Ordinal) && f.Severity == FindingSeverity.Error);
    }

    [Theory]
    [InlineData("[ [\"0.5 mm\", \"6 mm\"] ]", "1 mm")]
    [InlineData("[ [\"6 mm\", \"5 mm\"] ]", "ends beyond its beginning")]
    [InlineData("[ [\"2 mm\", \"5 mm\"], [\"4 mm\", \"8 mm\"] ]", "behind the lug before it")]
    [InlineData("[ [\"5 mm\", \"14 mm\"] ]", "at least 20.4 mm")]
    public void Read_LugsThatCannotHoldTheScrew_AreRefusedWithTheirPlace(string lugs, string cure)
    {
        ParameterResult result = Screwed("40 mm", $", screw_lugs = {lugs}").Read();
        Assert.Contains(cure, Assert.Single(result.Diagnostics).ToString()!, StringComparison.Ordinal);
    }

    // Before, seconds a turn followed 'lever' alone: 1.0 here, where the contact moves four times as far as the screw.
    [Fact]
    public void Of_LeverThatDoesNotFitThePlace_WarnsWithTheOneThatDoes()
    {
        Finding finding = Assert.Single(Screwed("40 mm").Design().Findings, f => string.Equals(f.Code, "strip.lever", StringComparison.Ordinal));
        Assert.Contains("lever = 4.04", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Screwed("40 mm", lever: "4.04").Design().Findings, f => string.Equals(f.Code, "strip.lever", StringComparison.Ordinal));
    }
}
