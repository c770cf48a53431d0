using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

/// <summary>The adjusting screw as a live solid where the file says where it meets its strip.</summary>
public sealed class AdjustingScrewTests
{
    private static ChangedDemo Screwed(string at) => new ChangedDemo("propagation-bench").With("lever = 1.0", $"lever = 1.0, screw_at = \"{at}\", screw_length = \"20 mm\"");

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
        ParameterResult result = new ChangedDemo("propagation-bench").With("lever = 1.0", "lever = 1.0, screw_at = \"40 mm\"").Read();
        Assert.Contains(result.Diagnostics, d => d.ToString()!.Contains("screw_length", StringComparison.Ordinal));
    }

    [Fact]
    public void Assumptions_ScrewThatIsNotPlaced_SaysThatItIsNotMeasured() =>
        Assert.Contains(Demos.Of("propagation-bench").Assumptions, a => string.Equals(a.Key, "output[2].adjust.screw_at", StringComparison.Ordinal));
}
