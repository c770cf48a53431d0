using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using WheelDraft.Tests.Sheets;
using Xunit;

namespace WheelDraft.Tests.Moments;

/// <summary>Films that are one file, as lists of moments.</summary>
public sealed class MomentReelTests
{
    public static TheoryData<string> Demos => [.. SheetDesigns.Demos];

    [Theory]
    [MemberData(nameof(Demos))]
    public void OfTurn_Demo_SwitchesAtEveryEdgeAndComesBackToItsBeginning(string demo)
    {
        Design design = SheetDesigns.Demo(demo);
        MomentReel reel = MomentReel.OfTurn(design);
        Assert.Equal(MomentReel.TurnForS, reel.ForS, 1e-9);
        Assert.Equal(Angles.TurnRad, reel.Frames[^1].ToRad, 1e-12);
        foreach (CircuitInterval interval in design.Circuit.Intervals)
        {
            Assert.Contains(reel.Frames, f => Math.Abs(Angles.InTurn(f.TurnedRad - interval.FromRad + 1e-6) - 1e-6) < 2e-6);
        }

        // Every picture begins where the one before ended.
        Assert.All(reel.Frames.Zip(reel.Frames.Skip(1)), pair => Assert.Equal(pair.First.ToRad, pair.Second.TurnedRad, 1e-12));
    }

    [Fact]
    public void OfStory_Demo_StandsWhileACaptionIsReadAndTurnsAsTheRunDoes()
    {
        Design design = SheetDesigns.Demo("propagation-bench");
        ScenarioRun run = design.Circuit.Play(design.Brief.Scenarios[0]);
        MomentReel reel = MomentReel.OfStory(design, 0);
        Assert.Equal("story-one-dry-hour-begins", reel.Name);
        ReelFrame[] read = [.. reel.Frames.Where(f => f.ToRad == f.TurnedRad)];
        Assert.Equal(run.Moments.Count, read.Length);
        foreach ((RunMoment moment, ReelFrame frame) in run.Moments.Zip(read))
        {
            Assert.Equal(moment.AngleRad + (moment.Turns * Angles.TurnRad), frame.TurnedRad, 1e-12);
            Assert.Equal(moment.Loads, frame.Moment.State.Loads);
            Assert.InRange(frame.ForS, 1.5, 12);
        }

        // What turns between two events turns as far as the run does.
        double turned = reel.Frames.Sum(f => f.ToRad - f.TurnedRad);
        double expected = run.Moments.Zip(run.Moments.Skip(1).Select(m => m.TimeS).Append(run.EndS))
            .Where(p => p.First.IsTurning).Sum(p => (p.Second - p.First.TimeS) / design.Motion.TurnTimeS * Angles.TurnRad);
        Assert.Equal(expected, turned, 1e-9);
    }

    [Fact]
    public void Picture_Unmoved_DrawsWheelAndCursorAtHomeAndAllElseAsItIs()
    {
        Design design = SheetDesigns.Demo("propagation-bench");
        MomentReel reel = MomentReel.OfTurn(design);
        Sheet moved = reel.Picture(70);
        Sheet still = reel.Picture(70, isUnmoved: true);
        Sheet home = reel.Picture(0);
        Assert.Equal(Texts(moved), Texts(still));
        Assert.Equal(Cursor(home), Cursor(still));
        Assert.NotEqual(Cursor(home), Cursor(moved));
        Assert.Equal(Cursor(home) + (reel.CursorTravelMm * reel.Frames[70].TurnedRad / Angles.TurnRad), Cursor(moved), 1e-9);
    }

    private static string Texts(Sheet sheet) => string.Join('|', sheet.Items.OfType<SheetText>().Select(t => t.Text));

    private static double Cursor(Sheet sheet) => sheet.Groups.Single(g => string.Equals(g.Id, "cursor", StringComparison.Ordinal)).Items.OfType<SheetLine>().Last().Pieces[0].Start.X;
}
