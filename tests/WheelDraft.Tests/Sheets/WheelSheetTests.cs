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
            Arc shaft = sheet.Groups.Single(g => g.Id is "home").Items.OfType<SheetLine>().SelectMany(l => l.Pieces).OfType<Arc>().Single();
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
        Assert.Equal(design.Wheel.Rings.Sum(r => r.Periods.Count), sheet.Groups.Single(g => g.Id is "table").Items.OfType<SheetText>().Count(t => t.Text.Contains('–', StringComparison.Ordinal)));
    }
}
