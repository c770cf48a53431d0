using System.Globalization;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Sheets;

/// <summary>Times are read off the finished chart, by its own axis labels, and compared with what was asked.</summary>
public sealed class TimingSheetTests
{
    [Fact]
    public void Of_OnPeriods_StandWhereTheAxisSaysSo()
    {
        Sheet sheet = TimingSheet.Of(Design.Of(Briefs.Worked()));
        (double FromS, double ToS)[] bars = Bars(sheet, "hold", FillKind.Copper);
        Assert.Equal(3, Assert.Single(bars).FromS, 1e-6);
        Assert.Equal(180, bars[0].ToS, 1e-6);
        (double FromS, double ToS) mist = Assert.Single(Bars(sheet, "mist", FillKind.Copper));
        Assert.Equal(122, mist.FromS, 1e-6);
        Assert.Equal(127.5, mist.ToS, 1e-6);
    }

    [Fact]
    public void Of_BothAxes_AgreeOnOneTurn()
    {
        Sheet sheet = TimingSheet.Of(Design.Of(Briefs.Worked()));
        Assert.Equal(2, sheet.Texts.Count(t => t.Text is "0" && InAxes(sheet, t)));
        double end = sheet.Texts.Single(t => t.Text is "360" && InAxes(sheet, t)).Place.Anchor.X;
        Assert.Equal(end, sheet.Texts.Single(t => t.Text is "180" && InAxes(sheet, t) && t.Place.Anchor.Y < Row(sheet, "hold").Items.Min(i => i.Bounds.MinY)).Place.Anchor.X, 1e-9);
        Assert.Equal(2, sheet.Texts.Count(t => t.Text is "home"));
    }

    [Fact]
    public void Of_OnPeriodThroughHome_IsSplitAtBothEnds()
    {
        Sheet sheet = TimingSheet.Of(Design.Of(Briefs.Plain(Briefs.Output("fan", 3, (170, 25)))));
        (double FromS, double ToS)[] bars = [.. Bars(sheet, "fan", FillKind.Copper).OrderBy(b => b.FromS)];
        Assert.Equal(2, bars.Length);
        Assert.Equal(0, bars[0].FromS, 1e-6);
        Assert.Equal(15, bars[0].ToS, 1e-6);
        Assert.Equal(170, bars[1].FromS, 1e-6);
        Assert.Equal(180, bars[1].ToS, 1e-6);
    }

    [Fact]
    public void Of_Whiskers_AreTheWorstCaseOfStartAndOnTime()
    {
        Design design = Design.Of(Briefs.Plain(Briefs.Output("fan", 3, (20, 100))));
        RingPeriod period = design.Wheel.Rings[0].Periods[0];
        TimingBar bar = new TimingRows(design).Sections()[0].Rows[0].Bars[0];
        Assert.Equal((period.Bands.StartMinS, period.Bands.StartMaxS), (bar.MakeS!.Value.LeastS, bar.MakeS.Value.MostS));
        Assert.Equal(120 - period.Limits.ShorterS, bar.BreakS!.Value.LeastS, 1e-9);
        Assert.Equal(120 + period.Limits.LongerS, bar.BreakS.Value.MostS, 1e-9);

        // Supply 1 % fast or slow takes at least a hundredth of 20 s off or on the start.
        Assert.True(period.Bands.StartMinS < 20 / 1.01 && period.Bands.StartMaxS > 20 / 0.99);
    }

    [Fact]
    public void Of_AdjustingEdge_ShowsTheRangeAsked()
    {
        Sheet sheet = TimingSheet.Of(Design.Of(Briefs.Worked()));
        (double FromS, double ToS) range = Assert.Single(Bars(sheet, "mist", FillKind.Whisker));

        // A second asked for; the end of travel is set out so that the whole range is exactly that.
        Assert.Equal(1, range.ToS - range.FromS, 1e-3);
        Assert.InRange(127.5, range.FromS, range.ToS);
    }

    [Fact]
    public void Of_LoadOnAllTheTurn_IsOneBarFromHomeToHome()
    {
        // Was drawn from the start of the interval that contains home, as if it ran through home.
        Brief brief = Briefs.Plain(Briefs.Output("fan", 3, (170, 25))) with { DriveMotor = new("motor", "L", "N", new RatedPower(3, 0.6), 0.8, 0.2) };
        (double FromS, double ToS) bar = Assert.Single(Bars(TimingSheet.Of(Design.Of(brief)), "motor", FillKind.Lit));
        Assert.Equal(0, bar.FromS, 1e-6);
        Assert.Equal(180, bar.ToS, 1e-6);
    }

    [Fact]
    public void Of_LoadThatNeedsAnInput_IsHatchedAndSaysWhich()
    {
        Brief brief = Briefs.Plain(Briefs.Output("mist", 3, (100, 4))) with
        {
            Loads = [new("valve", "mist", "lid side", new RatedPower(7, 0.5), 0.8, 0.2)],
            Inputs = [new("lid", "lid side", "N", null)],
        };
        Sheet sheet = TimingSheet.Of(Design.Of(brief));
        Assert.Empty(Bars(sheet, "valve", FillKind.Lit));
        (double FromS, double ToS) bar = Assert.Single(Bars(sheet, "valve", FillKind.LitAtInputs));
        Assert.Equal(4, bar.ToS - bar.FromS, 1e-6);
        Assert.NotEqual(PatternKind.None, Fill.Of(FillKind.LitAtInputs).Pattern.Kind);
        Assert.Contains(sheet.Texts, t => t.Text.Contains("a = lid closed", StringComparison.Ordinal));
        Assert.Contains(Row(sheet, "valve").Items.OfType<SheetText>(), t => t.Text is "a");
    }

    [Fact]
    public void Of_OneLongWord_IsNotBroken()
    {
        // Names were broken inside words to keep their column narrow.
        Sheet sheet = TimingSheet.Of(Design.Of(Briefs.Plain(Briefs.Output("dampers", 3, (10, 100)), Briefs.Output("a fan with a name of several words", 3, (10, 100)))));
        Assert.Contains(Row(sheet, "dampers").Items.OfType<SheetText>(), t => t.Text is "dampers");
    }

    [Fact]
    public void Of_MotorHeldByTheWheel_ShowsWhereItParks()
    {
        Brief brief = Briefs.Plain(Briefs.Output("run", 3, (3, 176))) with
        {
            DriveMotor = new("motor", "run", "N", new RatedPower(3, 0.6), 0.8, 0.2),
            Inputs = [new("start", "L", "run", null)],
        };
        Sheet sheet = TimingSheet.Of(Design.Of(brief));
        Assert.Contains(Row(sheet, "parks").Items.OfType<SheetText>(), t => t.Text is "179 s");
        Assert.Contains(sheet.AllGroups, g => g.Id is "parked");
    }

    private static SheetGroup Row(Sheet sheet, string name) => sheet.AllGroups.Single(g => g.Name.Role is "row" && string.Equals(g.Name.Title, name, StringComparison.Ordinal));

    private static bool InAxes(Sheet sheet, SheetText text) => sheet.Groups.Single(g => g.Id is "axes").Items.Contains(text);

    private static (double FromS, double ToS)[] Bars(Sheet sheet, string row, FillKind kind)
    {
        SheetText[] labels = [.. sheet.Groups.Single(g => g.Id is "axes").Items.OfType<SheetText>()
            .Where(t => double.TryParse(t.Text, CultureInfo.InvariantCulture, out _))];
        double low = labels.Min(l => l.Place.Anchor.Y);
        SheetText[] seconds = [.. labels.Where(l => l.Place.Anchor.Y == low).OrderBy(l => l.Place.Anchor.X)];
        (double left, double right) = (seconds[0].Place.Anchor.X, seconds[^1].Place.Anchor.X);
        (double first, double last) = (Number(seconds[0]), Number(seconds[^1]));
        double Time(double x) => first + ((x - left) / (right - left) * (last - first));
        return [.. Row(sheet, row).Items.OfType<SheetArea>().Where(a => a.Fill.Kind == kind).Select(a => (Time(a.Shapes[0].Bounds.MinX), Time(a.Shapes[0].Bounds.MaxX)))];
    }

    private static double Number(SheetText text) => double.Parse(text.Text, CultureInfo.InvariantCulture);
}
