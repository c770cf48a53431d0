using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Fabrication;

/// <summary>The plate under the strips as a part.</summary>
public sealed class BasePlateTests
{
    public static TheoryData<string> FilesWithStrips => [.. Demos.WithStrips];

    // Oracle: the strips' solids. The tab's end is the one end of the seated prisms that no other solid of the strip reaches beyond; a foot's hole lies
    // its developed distance from there toward the riser, since what is seated is flat.
    [Theory]
    [MemberData(nameof(FilesWithStrips))]
    public void Holes_OfEveryFoot_LieOnTheSeatedSolidsWithinAMillionthOfAMillimetre(string file)
    {
        Design design = Demos.Of(file);
        BasePlate plate = Assert.Single(design.Parts.Bases);
        int feet = 0;
        foreach (PlacedStrip strip in design.Strips.Strips)
        {
            Point[] seated = [.. strip.Solids.Where(s => s.OnSurface is not null).SelectMany(s => s.Outline.Outer.Pieces.Select(p => p.Start))];
            Point contact = strip.WorkingContact!.Value.Plan;
            Point[] end = [.. seated.OrderByDescending(p => p.DistanceTo(contact)).Take(2)];
            Point middle = end[0].Towards(end[1], 0.5);
            Vector across = (end[1] - end[0]).Unit();
            Vector along = across.Left.Dot(contact - middle) > 0 ? across.Left : -across.Left;
            foreach (StripHole hole in strip.Form.Strip.Holes)
            {
                Point expected = middle + (along * hole.AtMm) + (along.Left * hole.AcrossMm);
                BaseHole drilled = Assert.Single(plate.Holes, h => h.At.DistanceTo(expected) < 1e-6);
                Assert.Equal(hole.DiameterMm, drilled.DiameterMm);
                feet++;
            }
        }

        Assert.Equal(plate.Holes.Count - 1, feet);
        Assert.Equal(Point.Origin, plate.Holes[0].At);
    }

    [Theory]
    [MemberData(nameof(FilesWithStrips))]
    public void Part_OfEveryDemo_HoldsEverySeatAndCanBeCut(string file)
    {
        Design design = Demos.Of(file);
        BasePlate plate = Assert.Single(design.Parts.Bases);
        Outline shape = Assert.Single(plate.Part.Shapes).Finished;
        Assert.Empty(Soundness.Faults(shape));
        Assert.Empty(plate.Findings);
        foreach (Solid seated in design.Solids.Where(s => string.Equals(s.OnSurface, plate.Surface.Name, StringComparison.Ordinal)))
        {
            Assert.All(seated.Outline.Outer.Pieces, p => Assert.True(shape.Outer.Bounds.Contains(p.Start)));
        }

        foreach (BaseClamp clamp in plate.Clamps)
        {
            StripClamp held = design.Strips.Strips.First(s => string.Equals(s.Form.Strip.Name, clamp.Strip, StringComparison.Ordinal)).Form.Clamp;
            Assert.Equal(held.ToMm - held.FromMm, clamp.Edge.Pieces[0].Length, 1e-9);
        }
    }

    [Fact]
    public void PartCutFile_OfABase_CutsNoLineBetweenLiveParts()
    {
        Design design = Demos.Of("propagation-bench");
        CutDrawing drawing = PartCutFile.Of(design, design.Parts.Bases[0].Part);
        Assert.Equal(1 + design.Parts.Bases[0].Holes.Count, drawing.Contours.Count);
        Assert.NotEmpty(drawing.Paths);
        Assert.All(drawing.Paths, p => Assert.Equal(CutLayer.Note, p.Layer));
        Assert.Contains(drawing.Notes, n => n.Text.Contains("BASE", StringComparison.Ordinal));
    }

    [Fact]
    public void Bases_WithoutSeatedStrips_AreNone()
    {
        Assert.Empty(Demos.Of("tank-doser").Parts.Bases);
        Assert.Empty(Demos.Of("seed-drier").Parts.Bases);
    }

    [Fact]
    public void Bases_SlotCutThrough_IsAnOpeningOfThePlate()
    {
        Design design = new ChangedDemo("propagation-bench").And("\n[[slot]]\nsurface = \"floor\"\npath = [ [\"-40 mm\", \"0 mm\"], [\"-36 mm\", \"5 mm\"] ]\nwidth = \"2 mm\"\ndepth = \"through\"\n").Design();
        BasePlate plate = Assert.Single(design.Parts.Bases);
        Assert.Equal(plate.Holes.Count + 1, plate.Part.Shapes[0].Finished.Holes.Count);
        Assert.Equal(2 * Math.Sqrt(41), -plate.Part.Shapes[0].Finished.Holes[^1].SignedAreaMm2, 1e-9);
    }

    [Fact]
    public void Bases_OutlineThatLeavesAFootOutside_SaysWhichHoleIsNotDrawn()
    {
        Design design = new ChangedDemo("propagation-bench").With("level = \"-7 mm\"", "level = \"-7 mm\"\noutline = [ [\"-49 mm\", \"-47 mm\"], [\"30 mm\", \"-47 mm\"], [\"30 mm\", \"54 mm\"], [\"-49 mm\", \"54 mm\"] ]").Design();
        BasePlate plate = Assert.Single(design.Parts.Bases);
        Assert.Equal(5, plate.Part.Stock.ThicknessMm);
        Assert.Equal(2, design.Findings.Count(f => string.Equals(f.Code, "cut.base", StringComparison.Ordinal) && f.Severity == FindingSeverity.Warning));
        Assert.Contains(design.Findings, f => f.Message.Contains("feed strip, foot", StringComparison.Ordinal));
        Assert.Empty(Soundness.Faults(plate.Part.Shapes[0].Finished));
    }
}
