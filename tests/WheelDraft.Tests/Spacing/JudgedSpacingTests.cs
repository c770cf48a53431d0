using NetTopologySuite.Operation.Distance;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using WheelDraft.Tests.Geometry;
using Xunit;

namespace WheelDraft.Tests.Spacing;

/// <summary>What becomes of a whole design's spacing: which nets a fault may bridge, what lies on the carrier.</summary>
public sealed class JudgedSpacingTests
{
    // An earthed part above the copper: 1.5 mm and a margin of 0.2 mm are asked, so nearer than 3.4 mm dirt or a bent strip may bridge.
    [Theory]
    [InlineData(0.9, true)]
    [InlineData(2.5, true)]
    [InlineData(3.3, true)]
    [InlineData(3.6, false)]
    [InlineData(9, false)]
    public void Faults_EarthedPartAboveTheCopper_HaveThemBridgedBelowTwiceWhatIsRequired(double aboveMm, bool isBridged)
    {
        Design design = Design.Of(Briefs.Worked() with
        {
            Parts = [new("frame", PartKind.Earthed, "E", new(Contour.Circle(new(18, 0), 2)), aboveMm, aboveMm + 3)],
        });
        SpacingRow row = Assert.Single(design.Spacing.Rows, r => r.Kind == SpacingKind.Clearance && r.Nets is { First: "E", Second: "L" });
        Assert.Equal((1.7, aboveMm), (row.Required.RequiredMm, row.WorstMm), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-9);
        Assert.Equal(isBridged, design.Circuit.Faults.Any(f => f.Fault == new CircuitFault(CircuitFaultKind.NetsBridged, "E", "L")));
    }

    [Fact]
    public void Creepage_BetweenTwoLands_IsOverTheCarrierThatTurnsWithThem()
    {
        // Oracle: NetTopologySuite. The lands lie on opposite sides; on a carrier that stood still each would count all round.
        Design design = Design.Of(Briefs.Lands(
            Briefs.TwoWipers(Briefs.Output("heater", 30, (20, 20)), 0, 30),
            Briefs.TwoWipers(Briefs.Output("fan", 30, (5, 20)), 200, 230)));
        Outline[] lands = [.. design.Wheel.Rings.Select(r => r.Lands[0].Outline)];
        double apart = DistanceOp.Distance(Flattened.Polygon(lands[0]), Flattened.Polygon(lands[1]));
        SpacingRow row = Assert.Single(design.Spacing.Rows, r => r.Kind == SpacingKind.Creepage && r.Nets is { First: "fan land", Second: "heater land" });
        Assert.Equal(ItemNames.Carrier, row.Path!.Surface.Name);
        Assert.Equal(apart, row.NominalMm, lands.Sum(Flattened.ErrorMm));
    }
}
