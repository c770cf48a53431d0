using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Tolerance;

/// <summary>Doses with the tolerance of their flow, and times on other grids.</summary>
public sealed class DoseAndMainsTests
{
    private static readonly TimingLimits Limits = new(0.4, 0.2, []);

    // 5.5 s at 1.2 L/min is 110 mL; by hand: 5.3 s at nine tenths, 5.9 s at eleven tenths.
    [Fact]
    public void DoseLimits_WithAFlowTolerance_TakeTheShortTimeAtTheLeastFlow()
    {
        OutputBrief output = Briefs.Output("mist", 10, 5.5, 0.6) with { FlowLPerS = 1.2 / 60, FlowToleranceShare = 0.1 };
        DoseLimits dose = DoseLimits.Of(output, 5.5, Limits)!.Value;
        Assert.Equal(110, dose.NominalMl, 1e-9);
        Assert.Equal(5.3 * 20 * 0.9, dose.LeastMl, 1e-9);
        Assert.Equal(5.9 * 20 * 1.1, dose.MostMl, 1e-9);
        Assert.Equal(12, dose.AskedMl!.Value, 1e-9);
        Assert.Null(DoseLimits.Of(output with { FlowLPerS = null }, 5.5, Limits));
    }

    [Theory]
    [InlineData(true, 0.2, true)]
    [InlineData(true, 0, false)]
    [InlineData(false, 0.2, false)]
    public void Findings_AToleranceAskedAsAVolume_IsHeldAgainstTheDose(bool isDose, double flow, bool found)
    {
        OutputBrief output = Briefs.Output("mist", 10, 5.5, 1) with { FlowLPerS = 1.2 / 60, FlowToleranceShare = flow, IsToleranceOfDose = isDose };
        Assert.Equal(found, Design.Of(Briefs.Plain(output)).Findings.Any(f => f is { Code: "timing.dose", Severity: FindingSeverity.Error }));
    }

    // The flow's part of the variance: 10 % at three sigma of 110 mL, 3.67 mL (closed form).
    [Fact]
    public void Spread_OfADose_CountsItsFlow()
    {
        OutputBrief output = Briefs.Output("mist", 10, 5.5, 1) with { FlowLPerS = 1.2 / 60, FlowToleranceShare = 0.1 };
        PeriodSpread spread = Design.Of(Few(Briefs.Plain(output))).Spreads.All[0].Periods[0];
        double ofTime = spread.OnTime.Deviation * 20;
        Assert.Equal(Math.Sqrt((ofTime * ofTime) + (110 * 110 / 900.0)), spread.Dose!.Deviation, 0.02);
        Assert.Contains(spread.Dose.Shares, s => s.Kind == DeviationKind.Flow && s.Total > 0.5);
        Assert.DoesNotContain(spread.OnTime.Shares, s => s.Kind == DeviationKind.Flow);
        Assert.InRange(spread.Dose.LeastDrawn, spread.Dose.WorstLeast, spread.Dose.WorstMost);
        Assert.InRange(spread.Dose.MostDrawn, spread.Dose.WorstLeast, spread.Dose.WorstMost);
    }

    // EN 50160: 60 s become 59.41 to 60.61 s at 50.5 and 49.5 Hz, and 57.69 to 63.83 s at 52 and 47 Hz (t = t_nominal · f_nominal / f).
    [Theory]
    [InlineData(0, 59.41, 60.61)]
    [InlineData(1, 57.69, 63.83)]
    public void Times_OfAMinuteAtTheLimitsOfTheGrid_AreThoseOfTheFrequencies(int grid, double leastS, double mostS)
    {
        Brief brief = Briefs.Plain(Briefs.Output("fan", 10, 60));
        TimingLimits frequencyAlone = new((60 / 0.99) - 60, 60 - (60 / 1.01), []);
        MainsTimes times = MainsFrequencies.Times(brief, brief.Outputs[0], 60, frequencyAlone, MainsFrequencies.Of(50)[grid]);
        Assert.Equal(leastS, times.LeastS, 0.005);
        Assert.Equal(mostS, times.MostS, 0.005);
        Assert.Equal(grid == 0, times.IsWithin);
    }

    [Fact]
    public void OtherHz_OfTheTwoUsualFrequencies_IsTheOther()
    {
        Assert.Equal(60, MainsFrequencies.OtherHz(50));
        Assert.Equal(50, MainsFrequencies.OtherHz(60));
        Assert.Null(MainsFrequencies.OtherHz(400));
        Assert.Empty(MainsFrequencies.Of(400));
        Assert.Single(MainsFrequencies.Of(60));
    }

    private static Brief Few(Brief brief) => brief with
    {
        MonteCarlo = new() { Draws = 60_000 },
        Places = new Dictionary<string, TextPlace>(StringComparer.Ordinal) { ["monte_carlo.draws"] = new(1, 1) },
    };
}
