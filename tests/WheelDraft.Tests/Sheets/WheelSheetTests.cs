using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using WheelDraft.Tests.Drawing;
using Xunit;

namespace WheelDraft.Tests.Sheets;

public sealed class WheelSheetTests
{
    [Fact]
    public void Of_WorkedWheel_NamesEveryEdgeHomeAndDirection()
    {
        Sheet sheet = WheelSheet.Of(Design.Of(Briefs.Worked()));
        PaperTests.AssertTidy(sheet);
        string[] texts = [.. sheet.Texts.Select(t => t.Text)];
        Assert.Contains("home mark, 0°", texts, StringComparer.Ordinal);
        Assert.Contains("turns clockwise", texts, StringComparer.Ordinal);
        Assert.Contains(texts, t => t.StartsWith("Ø6", StringComparison.Ordinal));
        foreach (string output in (string[])["hold", "mist"])
        {
            Assert.Contains(texts, t => t.StartsWith($"{output} make ", StringComparison.Ordinal));
            Assert.Contains(texts, t => t.StartsWith($"{output} break ", StringComparison.Ordinal));
        }
    }

    // The wiper meets first the edge that the table calls the make: turn the wheel and look. Oracle: the copper itself.
    [Theory]
    [InlineData(Turning.Clockwise)]
    [InlineData(Turning.Anticlockwise)]
    public void MakeAndBreak_EitherDirection_AreTheEndsThatTheWiperMeetsInThatOrder(Turning direction)
    {
        Brief plain = Briefs.Plain(Briefs.Output("fan", 3, (20, 60)));
        Design design = Design.Of(plain with { Drive = plain.Drive with { Direction = direction } });
        RingLayout ring = design.Wheel.Rings[0];
        (double make, double off) = WheelEdges.MakeAndBreak(design, ring.Periods[0]);
        double MetAt(double edgeRad) => design.Motion.SecondsFromRad(Angles.InTurn(design.Motion.Sigma * (ring.StationRad - edgeRad)));

        // The patch reaches 0.2 mm before and behind its middle: half a second at this ring.
        Assert.Equal(20, MetAt(make), 0.6);
        Assert.Equal(80, MetAt(off), 0.6);
    }

    [Fact]
    public void Of_DirectionArrow_FliesTheWayTheWheelTurns()
    {
        Brief plain = Briefs.Plain(Briefs.Output("fan", 3, (20, 60)));
        foreach (Turning direction in Enum.GetValues<Turning>())
        {
            Sheet sheet = WheelSheet.Of(Design.Of(plain with { Drive = plain.Drive with { Direction = direction } }));
            Arc shaft = sheet.Groups.Single(g => g.Id is "home").Items.OfType<SheetLine>().SelectMany(l => l.Pieces).OfType<Arc>().Last();
            Assert.Equal(direction == Turning.Anticlockwise, shaft.SweepRad > 0);
        }
    }

    [Fact]
    public void Of_LongNames_AreNumberedInLeadersSoThatTheWheelStaysLarge()
    {
        // Leaders with long names had made the wheel small, or the paper large.
        Brief brief = Briefs.Plain(Briefs.Output("circulation pump of the second tank", 3, (10, 50)), Briefs.Output("circulation pump of the third tank", 3, (70, 50)));
        Sheet sheet = WheelSheet.Of(Design.Of(brief));
        Assert.Equal("A3", sheet.Size.Name);
        Assert.Contains(sheet.Texts, t => t.Text.StartsWith("2 make ", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_ManyEdges_ListsAllInTheTableAndStaysTidy()
    {
        (double, double)[] periods = [.. Enumerable.Range(0, 12).Select(i => (i * 15.0, 7.0))];
        Design design = Design.Of(Briefs.Plain([.. Enumerable.Range(0, 12).Select(i => Briefs.Output(FormattableString.Invariant($"output {i + 1}"), 9, periods))]));
        Sheet sheet = WheelSheet.Of(design);
        PaperTests.AssertTidy(sheet);
        Assert.Empty(sheet.Warnings);
        SheetText[] tables = [.. sheet.Groups.Where(g => g.Name.Role is "table").SelectMany(g => g.Items).OfType<SheetText>()];
        Assert.Equal(design.Wheel.Rings.Sum(r => r.Periods.Count), tables.Count(t => t.Text.EndsWith(" make", StringComparison.Ordinal)));

        // What has no leader carries a number that the table explains, and what has not even that is counted on the drawing.
        Assert.Contains(tables, t => t.Text is "12.12 output 12 make" or "12.12");
        Assert.Contains(sheet.Texts, t => t.Text.StartsWith("Edges are numbered", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_Demo_DrawsSectionDatumRunOutRadiiAndTheSmallWindowEnlarged()
    {
        // Rings, webs and rim stood in a table alone, thickness and run-out nowhere; a window of 1.4 mm could not be read.
        Design design = SheetDesigns.Demo("propagation-bench");
        Sheet sheet = WheelSheet.Of(design);
        Assert.Equal("2:1", SheetScale(sheet));
        SheetText[] section = [.. sheet.Groups.Single(g => g.Id is "section-dimensions").Items.OfType<SheetText>()];
        CutNumbers numbers = CutNumbers.Of(design);
        foreach (double radius in design.Wheel.Rings.SelectMany(r => new[] { r.WindowFromMm, r.WindowToMm, r.RadiusMm }).OfType<double>().Append(design.Wheel.OuterDiameterMm / 2))
        {
            Assert.Contains(section, t => t.Text.StartsWith(numbers.Length(radius), StringComparison.Ordinal));
        }

        Assert.Contains(section, t => t.Text is "0.5"); // copper
        Assert.Contains(section, t => t.Text is "3"); // carrier
        Assert.Equal(3, section.Count(t => t.Text is "A")); // the datum and two frames
        Assert.Equal(2, section.Count(t => t.Text is "0.1")); // run-out of rim and face
        Assert.Contains(sheet.AllGroups, g => g.Name.Title is "Detail B: run, window");
    }

    [Fact]
    public void Of_Demo_GivesEachEdgeOnce()
    {
        // Every angle stood in two tables and at a leader.
        string[] texts = [.. WheelSheet.Of(SheetDesigns.Demo("propagation-bench")).Texts.Select(t => t.Text)];
        Assert.Equal(1, texts.Count(t => t.Contains("94.84", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("A3")]
    public void DesignSheets_LargestSheetGiven_NoneIsLarger(string largest)
    {
        Design demo = SheetDesigns.Demo("propagation-bench");
        Design design = demo with { Brief = demo.Brief with { Office = new() { LargestSheet = largest, Revisions = [new("A", new(2026, 10, 2), "first issue")] } } };
        double most = PaperSize.Iso.Single(s => string.Equals(s.Name, largest, StringComparison.Ordinal)) is { } size ? size.WidthMm * size.HeightMm : 0;
        IReadOnlyList<Sheet> sheets = DesignSheets.Of(design, null, _ => { });
        Assert.All(sheets, s => Assert.InRange(s.WidthMm * s.HeightMm, 1, most));
        Assert.Contains(sheets.Single(s => s.Words.Name is "wheel").Texts, t => t.Text is "first issue");
    }

    private static string SheetScale(Sheet sheet)
    {
        string[] block = [.. sheet.Groups.Single(g => g.Id is "title-block").Items.OfType<SheetText>().Select(t => t.Text)];
        return block[Array.IndexOf(block, "Scale") + 1];
    }
}
