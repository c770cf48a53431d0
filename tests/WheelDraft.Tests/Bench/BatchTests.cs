using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Bench;

/// <summary>Capability and control charts of a batch.</summary>
public sealed class BatchTests
{
    // NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6 (from memory): limits 8 and 20, mean 16, s = 2 give Cp = 1.0 and Cpk = 0.6667.
    [Fact]
    public void Capability_HandbookFigures_AreReproduced()
    {
        BatchFigure figure = new(0, 0, 8, 20, [14, 16, 18]);
        Assert.Equal(2, figure.SpreadS, 1e-12);
        Assert.Equal(1.0, figure.Cp, 1e-12);
        Assert.Equal(0.6667, figure.Cpk, 1e-4);
    }

    // χ² of 9 degrees of freedom: 2.700 at 0.025 and 19.023 at 0.975 (any table of it).
    [Fact]
    public void CpLimits_TenWheels_FollowTheChiSquareTable()
    {
        double[] wheels = [4.9, 5.0, 5.1, 5.2, 4.8, 5.05, 4.95, 5.0, 5.15, 4.85];
        BatchFigure figure = new(0, 0, 4, 6, wheels);
        Assert.Equal(figure.Cp * Math.Sqrt(2.700 / 9), figure.CpLimits.Low, 0.01 * figure.Cp);
        Assert.Equal(figure.Cp * Math.Sqrt(19.023 / 9), figure.CpLimits.High, 0.01 * figure.Cp);
        Assert.True(figure.CpkLimits.Low < figure.Cpk && figure.Cpk < figure.CpkLimits.High);
    }

    // Worked here: moving ranges 1, 1, 1, 1, 10 and 10 have a mean of 4, the wheels one of 82/7: limits 82/7 ± 2.66 · 4, within which 20 still lies.
    [Fact]
    public void ControlLimits_OneWheelFarOff_IsOutside()
    {
        BatchFigure figure = new(0, 0, 0, 40, [10, 11, 10, 11, 10, 20, 10]);
        Assert.Equal((82 / 7.0) - (2.66 * 24 / 6), figure.ControlLimits.Low, 1e-9);
        Assert.Empty(figure.Outside);
        BatchFigure more = new(0, 0, 0, 40, [10, 11, 10, 11, 10, 11, 10, 11, 10, 11, 10, 11, 10, 11, 10, 25]);
        Assert.Equal([15], more.Outside);
    }

    [Fact]
    public void Batch_WheelsOfOtherMains_AreExplainedByTheTurnTime()
    {
        Design design = Demos.Of("propagation-bench");
        BenchDesign asked = new(design.Brief, design.Motion, design.Programme, design.Wheel);
        LoggedProgramme programme = LoggedProgramme.Of(design);
        BenchComparison[] wheels =
        [
            .. new[] { 0.0, 0.004, -0.003, 0.006 }.Select((slow, i) => BenchComparison.Of(asked, BenchTurns.Of(
                new SyntheticLog(programme) { Turns = 2.3, DriftShare = 0, SlowShare = slow, Seed = 40 + i }.Record()))),
        ];
        BatchStudy study = BatchStudy.Of(wheels);
        int run = Enumerable.Range(0, study.Figures.Count).First(i => study.Figures[i].Output == 0);
        SpreadShare first = study.Shares[run][0];
        Assert.StartsWith("turn time", first.Cause, StringComparison.Ordinal);
        Assert.True(first.Share > 0.9);
        Assert.All(study.Shares, s => Assert.True(s.Sum(x => x.Share) < 1.0001));
    }
}
