using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Fabrication;

/// <summary>Lead-ins by geometry: in what falls away, never across a wiper's path or on a spring, the outline as it was.</summary>
public sealed class LeadInTests
{
    private static Gen<(Design Design, double LengthMm)> Any => Gen.Select(Gen.Int[0, Demos.Names.Count - 1], Gen.Double[0.1, 5]).Select((i, mm) => (Demos.Of(Demos.Names[i]), mm));

    private static IEnumerable<(Part Part, LeadIn Lead)> All(Design design, double lengthMm) =>
        design.Parts.Strips.Prepend(design.Parts.Wheel).SelectMany(p => LeadIns.Of(design.Strips, p, lengthMm).Select(l => (p, l)));

    [Fact]
    public void Of_AnyLength_LiesInWhatFallsAway() =>
        Any.Sample(
            (design, lengthMm) =>
            {
                foreach ((Part part, LeadIn lead) in All(design, lengthMm))
                {
                    foreach (double share in (ReadOnlySpan<double>)[0, 0.3, 0.6, 0.9])
                    {
                        Point at = lead.Line.PointAt(share);
                        Assert.DoesNotContain(part.Shapes, s => s.ToCut.Contains(at));
                    }

                    Assert.InRange(lead.Line.Length, lengthMm / 4 - 1e-9, lengthMm + 1e-9);
                    Assert.True(lead.Line.End.DistanceTo(lead.Contour.Pieces[0].Start) < 1e-9);
                }
            },
            20);

    [Fact]
    public void Of_AnyLength_LeavesTheOutlineAsItWas() =>
        Any.Sample(
            (design, lengthMm) =>
            {
                foreach ((_, LeadIn lead) in All(design, lengthMm))
                {
                    Assert.Empty(Likeness.Departures(lead.Of, lead.Contour, 1e-6));
                    Assert.Equal(lead.Of.SignedAreaMm2, lead.Contour.SignedAreaMm2, 1e-6);
                    Assert.Equal(lead.Of.Length, lead.Contour.Length, 1e-6);
                }
            },
            10);

    // methods.md "Windowed wheel": the patch path is the annulus that the patch covers over its travel; a strip springs from its second clamp on.
    [Fact]
    public void Of_AnyLength_StaysOffPatchPathsAndSprings() =>
        Any.Sample(
            (design, lengthMm) =>
            {
                foreach ((Part part, LeadIn lead) in All(design, lengthMm))
                {
                    double radius = lead.Line.End.DistanceTo(Point.Origin);
                    if (part.Role == PartRole.Wheel)
                    {
                        Assert.DoesNotContain(design.Wheel.AllRings, r => radius > r.PathFromMm && radius < r.PathToMm);
                    }
                    else if (part.Shapes[0].ToCut.Outer == lead.Of && design.Strips.Strips[part.StripIndex].Form.Strip.Clamp?.ToMm is double heldTo)
                    {
                        Assert.True(lead.Line.End.X <= heldTo);
                    }
                }
            },
            20);

    [Fact]
    public void Of_Demos_EveryContourOfAWheelHasOne()
    {
        Design design = Demos.Of("propagation-bench");
        Assert.Equal(design.Parts.Wheel.Shapes.Sum(s => 1 + s.ToCut.Holes.Count), LeadIns.Of(design.Strips, design.Parts.Wheel, 1).Count);
    }
}
