using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Fabrication;

/// <summary>Pieces that fall or tip, webs that warp: by shapes whose measures are known.</summary>
public sealed class CutHazardTests
{
    private static CutHazard[] Of(Design design) => [.. CutHazards.Of(design.Brief, design.Wheel, design.Strips, design.Parts)];

    private static Design With(Func<ProcessBrief, ProcessBrief> process)
    {
        Brief brief = Demos.Of("propagation-bench").Brief;
        return Design.Of(brief with { Process = process(brief.Process) });
    }

    // The rim of the demo's wheel is its web of 1.2 mm wide, all round but for one spoke; its strips are at most 10 mm wide.
    [Fact]
    public void Of_TheBench_NamesItsRimAndItsStripsWithPlaces()
    {
        Design design = Demos.Of("propagation-bench");
        CutHazard[] all = Of(design);
        CutHazard warp = Assert.Single(all, h => h.Finding.Code is "cut.warp");
        Assert.Equal(PartRole.Wheel, warp.Part.Role);
        Assert.All(warp.Places, p => Assert.True(Distances.ToEdge(p, design.Parts.Wheel.Shapes[0].Finished).DistanceMm < 1e-6));
        Assert.Contains("1.2 mm wide", warp.Finding.Message, StringComparison.Ordinal);
        Assert.Equal(design.Parts.Strips.Count, all.Count(h => h.Finding.Code is "cut.falls"));
        Assert.All(all, h => Assert.Equal(FindingSeverity.Note, h.Finding.Severity));
        Assert.All(all, h => Assert.Contains(h.Finding, design.Findings));
    }

    [Fact]
    public void Of_PartsOnTabs_DoNotFall() =>
        Assert.DoesNotContain(Of(With(p => p with { HoldingTabs = 2, TabWidthMm = 0.5 })), h => h.Finding.Code is "cut.falls");

    // Nothing is known of grate and heat without a process by name; an etching bath has neither.
    [Theory]
    [InlineData(null)]
    [InlineData("photo-etch")]
    [InlineData("wire-edm")]
    public void Of_NoProcessOrABath_HasNone(string? name) => Assert.Empty(Of(With(p => p with { Name = name })));

    [Fact]
    public void Draw_TheBench_MarksEveryPlaceOnItsDrawing()
    {
        Design design = Demos.Of("propagation-bench");
        SheetGroup marks = WheelSheet.Of(design).Groups.Single(g => g.Id.EndsWith("hazards", StringComparison.Ordinal));
        Assert.Equal(Of(design).Where(h => h.Part.Role == PartRole.Wheel).Sum(h => h.Places.Count), marks.Content.OfType<SheetArea>().Count());
    }
}
