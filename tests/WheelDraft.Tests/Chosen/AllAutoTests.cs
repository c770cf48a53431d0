using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Chosen;

/// <summary>Demos made by hand, set out again with everything "auto": no error, no larger wheel, no smaller least ratio.</summary>
public sealed class AllAutoTests(ITestOutputHelper told)
{
    // All demos, strips of folds among them, are some minutes of work.
    private const string AllOfThem = "WHEELDRAFT_ALL_AUTO";

    public static TheoryData<string> Names => Environment.GetEnvironmentVariable(AllOfThem) is "1" ? [.. Demos.Names] : ["seed-drier", "tank-doser"];

    [Theory]
    [MemberData(nameof(Names))]
    public void Demo_WithEverythingLeftToTheProgram_IsNoWorseThanByHand(string name)
    {
        Design hand = Demos.Of(name);
        Brief asked = AllAuto.Of(hand);
        Design auto = Design.Of(SettingOut.IsNeeded(asked) ? SettingOut.Of(asked).Brief : asked);
        DesignMerits ours = DesignMerits.Of(auto), theirs = DesignMerits.Of(hand);
        told.WriteLine(FormattableString.Invariant($"{name}: {ours.DiameterMm:0.###} mm for {theirs.DiameterMm:0.###}, least ratio {ours.Tightest?.Ratio:0.###} for {theirs.Tightest?.Ratio:0.###}"));
        Assert.Null(ours.First?.Message);
        Assert.True(ours.DiameterMm <= theirs.DiameterMm + 1e-6);
        Assert.True((ours.Tightest?.Ratio ?? double.PositiveInfinity) >= (theirs.Tightest?.Ratio ?? 0) - 1e-6, $"{ours.Tightest} for {theirs.Tightest}");
    }

    [Theory]
    [InlineData("propagation-bench")]
    [InlineData("fry-feeder")]
    [InlineData("seed-drier")]
    public void Judged_AnyDemo_HasTheVerdictsAndFiguresOfTheWholeDesign(string name)
    {
        Design whole = Demos.Of(name), judged = Design.Judged(whole.Brief);
        Assert.Equal(whole.Findings.Where(f => f.Severity == FindingSeverity.Error), judged.Findings.Where(f => f.Severity == FindingSeverity.Error));
        Assert.Equal(whole.Spacing.Rows.Select(r => r.WorstMm), judged.Spacing.Rows.Select(r => r.WorstMm));
        Assert.Equal(Merit.Of(whole), Merit.Of(judged));
    }
}
