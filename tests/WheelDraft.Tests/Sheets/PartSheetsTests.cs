using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Sheets;

/// <summary>The sheets of strips, assembly, wiring and runs: nothing overlaps, nothing leaves the paper, nothing is left out.</summary>
public sealed class PartSheetsTests
{
    public static TheoryData<string> Files => [.. Demos.Names];

    public static TheoryData<string> FilesWithStrips => [.. Demos.WithStrips];

    [Theory]
    [MemberData(nameof(Files))]
    public void Of_EveryDemo_TextsKeepClearOfEachOtherAndOnThePaper(string file)
    {
        foreach (Sheet sheet in All(Demos.Of(file)))
        {
            string overlaps = string.Join("; ", SheetAudit.OverlappingTexts(sheet).Select(p => $"'{p.First.Text}' on '{p.Second.Text}'"));
            Assert.True(overlaps.Length == 0, $"{sheet.Words.Name}: {overlaps}");
            Assert.Empty(SheetAudit.TextsOffPaper(sheet));
            Assert.Empty(SheetAudit.ItemsOffPaper(sheet));
            Assert.Empty(sheet.Warnings);
        }
    }

    [Theory]
    [MemberData(nameof(FilesWithStrips))]
    public void StripSheet_TellsEveryFoldAndFigure(string file)
    {
        Design design = Demos.Of(file);
        for (int i = 0; i < design.Strips.Strips.Count; i++)
        {
            PlacedStrip strip = design.Strips.Strips[i];
            string[] texts = [.. StripSheet.Of(design, i).Texts.Select(t => t.Text)];
            Assert.Contains(FormingWords.Force(strip.Spring!), texts, StringComparer.Ordinal);
            foreach (StripFold fold in strip.Form.Folds)
            {
                Assert.Contains(new DrawingNumbers(design.Brief.DrawingUnit).LengthInColumn(fold.AtMm), texts, StringComparer.Ordinal);
            }
        }
    }

    // Oracle: the form in space, worked out apart from the profile.
    [Theory]
    [MemberData(nameof(FilesWithStrips))]
    public void Profile_OfEveryStrip_LiesOnItsFormInSpace(string file)
    {
        foreach (PlacedStrip strip in Demos.Of(file).Strips.Strips)
        {
            StripProfile profile = StripProfile.Of(strip.Form);
            for (double at = 0; at <= strip.Form.LengthMm; at += 0.7)
            {
                SpaceVector place = strip.Form.FrameAt(at).Origin;
                Assert.Equal(place.Z, profile.At(at).At.Y, 1e-9);
                Assert.Equal(place.X, profile.At(at).At.X, 1e-9);
            }

            Assert.Equal(-strip.Form.DeflectionMm!.Value, profile.Contact!.Value.Y, 1e-9);
            Assert.Equal(profile.Contact.Value.Y, profile.Bounds.MinY < profile.Form.SeatLevelMm ? profile.Bounds.MinY : profile.Rivet!.Bounds.MinY, 0.05);
        }
    }

    [Theory]
    [MemberData(nameof(FilesWithStrips))]
    public void Ribbon_OfEveryStrip_HoldsItsContactInTheHousing(string file)
    {
        foreach (PlacedStrip strip in Demos.Of(file).Strips.Strips)
        {
            Contour ribbon = Assert.Single(StripRibbon.Of(strip.Form)).Placed(StripRibbon.ToHousing(strip.Placement));
            Assert.Equal(Turning.Anticlockwise, ribbon.Turning);
            Assert.True(new Outline(ribbon).Contains(strip.WorkingContact!.Value.Plan));
            Assert.Equal(strip.Ring!.RadiusMm, strip.WorkingContact.Value.Plan.RadiusMm, 1e-6);
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void CircuitSheet_OfEveryDemo_CrossesNothingAndNamesEverything(string file)
    {
        Design design = Demos.Of(file);
        Assert.Equal(0, WiringLayout.Of(design.Circuit.Request).Crossings);
        string words = string.Join(' ', CircuitSheet.Of(design).Texts.Select(t => t.Text));
        Assert.All(design.Brief.Loads, l => Assert.Contains(l.Name, words, StringComparison.Ordinal));
        Assert.All(design.Brief.Inputs, i => Assert.Contains(i.Name, words, StringComparison.Ordinal));
        Assert.All(design.Brief.Outputs, o => Assert.Contains(o.Name, words, StringComparison.Ordinal));
    }

    [Fact]
    public void AssemblySheet_TellsNetsApartByPatternAndLabel()
    {
        Sheet sheet = AssemblySheet.Of(Demos.Of("propagation-bench"));
        SheetGroup[] strips = [.. sheet.AllGroups.Where(g => g.Name.Role is "strip")];
        Assert.Equal(4, strips.Length);
        FillPattern[] patterns = [.. strips.Select(s => s.Items.OfType<SheetArea>().First().Fill.Pattern)];
        Assert.Equal(4, patterns.Distinct().Count());
        foreach (string net in (string[])["L", "run", "stir", "mist"])
        {
            Assert.Contains(sheet.Texts, t => t.Text.EndsWith($"({net})", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void CircuitSheet_ContactThatIsAlwaysClosed_IsDrawnClosedAndSaidSo()
    {
        // A note said that every contact is open, and one that is always closed was drawn open beside it.
        Design design = Demos.Of("tank-doser");
        Sheet sheet = CircuitSheet.Of(design);
        string words = string.Join(' ', sheet.Texts.Select(t => t.Text));
        Assert.DoesNotContain("every contact", words, StringComparison.Ordinal);
        WiringLayout layout = WiringLayout.Of(design.Circuit.Request);
        Assert.Equal("lamp", Assert.Single(layout.Symbols, s => s.IsAlways).Name);

        // Oracle: the heights of the blades. Open ones rise by 4 mm, a closed one by half of one.
        Segment[] blades = [.. sheet.Groups.Single(g => g.Id is "symbols").Items.OfType<SheetLine>().SelectMany(l => l.Pieces).OfType<Segment>().Where(s => s.Start.X < s.End.X && s.End.Y > s.Start.Y)];
        Assert.Equal(layout.Symbols.Count(s => s.Kind is WiringKind.Ring or WiringKind.Input), blades.Length);
        Assert.Single(blades, b => b.End.Y - b.Start.Y < 1);
    }

    [Fact]
    public void CircuitSheet_Designations_AreTheFilesOwnOrLetterCodesThatPassOverThem()
    {
        Design demo = Demos.Of("propagation-bench");
        Brief brief = demo.Brief with { Loads = [demo.Brief.Loads[0] with { Designation = "E2" }, .. demo.Brief.Loads.Skip(1)] };
        ReferenceDesignations designations = new(brief);
        Assert.Equal("E2", designations.Load(brief.Loads[0].Name));
        Assert.Equal("E1", designations.Load(brief.Loads[1].Name));
        string[] texts = [.. CircuitSheet.Of(demo).Texts.Select(t => t.Text)];
        foreach (string letter in (string[])["-B1", "-B2", "-Q1", "-Q2", "-Q3", "-X1", "-M1", "-E1", "-E2", "PE"])
        {
            Assert.Single(texts, t => string.Equals(t, letter, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void AssemblySheet_ShowsTheSideAndEveryItemOfItsPartsList()
    {
        Sheet sheet = AssemblySheet.Of(Demos.Of("propagation-bench"));
        Assert.Contains(sheet.Groups, g => g.Id is "side");
        string[] list = [.. sheet.Groups.Single(g => g.Name.Title is "Parts list").Items.OfType<SheetText>().Select(t => t.Text)];
        string[] labels = [.. sheet.Groups.Single(g => g.Id is "labels").Items.OfType<SheetText>().Select(t => t.Text)];
        foreach (string item in (string[])["1", "2", "4", "5", "6", "7", "8", "9"])
        {
            Assert.Contains(item, list, StringComparer.Ordinal);
            Assert.Contains(item, labels, StringComparer.Ordinal);
        }

        Assert.Contains(sheet.Texts, t => t.Text is "Ø62.44");
        Assert.Contains(sheet.Texts, t => t.Text is "46.84");
    }

    private static IEnumerable<Sheet> All(Design design) =>
    [
        .. design.Strips.Strips.Select((_, i) => StripSheet.Of(design, i)),
        AssemblySheet.Of(design),
        CircuitSheet.Of(design),
        .. design.Brief.Scenarios.Select((_, i) => RunSheet.Of(design, i)),
    ];
}
