using System.Globalization;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Bench;

/// <summary>Faults put into logs of a demo, and what they are called. The oracle is the fault that was put in.</summary>
public sealed class BenchFaultTests
{
    // Of each kind so many logs; 25 with WHEELDRAFT_BENCH_CASES=500.
    private static int Cases => Environment.GetEnvironmentVariable("WHEELDRAFT_BENCH_CASES") is "500" ? 25 : 3;

    private static BenchDesign Asked => new(Demos.Of("propagation-bench").Brief, Demos.Of("propagation-bench").Motion, Demos.Of("propagation-bench").Programme, Demos.Of("propagation-bench").Wheel);

    [Fact]
    public void Compare_InjectedFaults_AreNamed()
    {
        LoggedProgramme programme = LoggedProgramme.Of(Demos.Of("propagation-bench"));
        List<string> wrong = [];
        for (int i = 0; i < Cases; i++)
        {
            double size = 0.3 + (0.05 * i);
            SyntheticLog log = new(programme) { Seed = 100 + i, Turns = 4.3, StepS = 0.02, DriftShare = 0.001 };
            Check(wrong, log with { SlowShare = 0.004 + (0.001 * i) }, BenchFaultKind.Scaled, null);
            int output = i % 3;
            Check(wrong, log with { Programme = programme.With(output, (p, _) => (p.FromS + size + 0.3, p.ForS)) }, BenchFaultKind.WiperMisplaced, output);
            Check(wrong, log with { Programme = programme.With(output, (p, _) => (p.FromS - size, p.ForS + (2 * size))) }, BenchFaultKind.PatchLength, output);
            Check(wrong, log with { Programme = programme.With(output, (p, k) => k == 0 ? (p.FromS, p.ForS + size + 0.1) : p) }, BenchFaultKind.EdgeOff, output);
        }

        // 95 of 100 are asked.
        Assert.True(wrong.Count * 20 <= Cases * 4, FormattableString.Invariant($"{wrong.Count} of {Cases * 4} misnamed:\n{string.Join('\n', wrong)}"));
    }

    [Fact]
    public void Compare_SoundWheel_NamesNothing()
    {
        LoggedProgramme programme = LoggedProgramme.Of(Demos.Of("propagation-bench"));
        BenchComparison comparison = Compared(new SyntheticLog(programme) { Turns = 4.3, DriftShare = 0 });
        Assert.Empty(comparison.Faults);
        Assert.False(comparison.Misses);
    }

    [Fact]
    public void Compare_LongerOnTime_TurnsTheScrewTheRightWay()
    {
        // The demo's on-time grows as the wiper moves in, 1 s over 2 mm; M3 has a pitch of 0.5 mm (ISO 261), and the contact moves 2.29 times as far: 1.747 turns a second.
        LoggedProgramme programme = LoggedProgramme.Of(Demos.Of("propagation-bench")).With(2, (p, _) => (p.FromS, p.ForS + 0.25));
        ScrewTurns screw = Assert.Single(Compared(new SyntheticLog(programme) { Turns = 4.3, DriftShare = 0 }).Screws);
        Assert.False(screw.MovesIn);
        Assert.True(screw.IsWithin);
        Assert.Equal(0.25 * 2 / (0.5 * 2.29), screw.Turns, 0.05);
    }

    [Fact]
    public void Compare_HomeKnown_TellsAWheelThatSitsTurned()
    {
        LoggedProgramme programme = LoggedProgramme.Of(Demos.Of("propagation-bench"));
        SyntheticLog log = new(programme) { Turns = 4.3, DriftShare = 0, BeginsAtS = 37.7 };
        BenchTurns turns = BenchTurns.Of(log.Record());

        // The wheel is at home 180 − 37.7 s into the log; told so rightly nothing is shifted, told 2 s sooner everything comes 2 s late.
        Assert.DoesNotContain(BenchComparison.Of(Asked, turns, 142.3).Faults, f => f.Kind == BenchFaultKind.WheelShifted);
        BenchFault fault = Assert.Single(BenchComparison.Of(Asked, turns, 140.3).Faults);
        Assert.Equal(BenchFaultKind.WheelShifted, fault.Kind);
        Assert.Equal(2, fault.Value, 0.05);
    }

    private static BenchComparison Compared(SyntheticLog log) => BenchComparison.Of(Asked, BenchTurns.Of(log.Record()));

    private static void Check(List<string> wrong, SyntheticLog log, BenchFaultKind kind, int? output)
    {
        IReadOnlyList<BenchFault> faults = Compared(log).Faults;
        if (faults.Count != 1 || faults[0].Kind != kind || faults[0].Output != output)
        {
            wrong.Add(string.Create(CultureInfo.InvariantCulture, $"{kind} of {output}, seed {log.Seed}: {string.Join(" | ", faults.Select(f => f.Words))}"));
        }
    }
}
