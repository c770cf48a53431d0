using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>
/// Circuits of more inputs than can be tried together. The oracle is each part by itself: a circuit with the same rings, the motor and the loads and inputs of one
/// part alone, small enough to be looked at whole, must come to the same answers.
/// </summary>
public sealed class ManyInputsTests
{
    private const int Parts = 6;

    private static readonly int[] All = [.. Enumerable.Range(0, Parts)];

    [Fact]
    public void Analyse_TwentyFiveInputsInSixParts_IsWhatEachPartIsByItself()
    {
        CircuitAnalysis whole = Timer(All).Analyse();
        Assert.Equal(25, whole.Inputs.Count);
        for (int p = 0; p < Parts; p++)
        {
            CircuitAnalysis alone = Timer([p]).Analyse();
            Assert.Equal(alone.Intervals.Select(i => (i.FromRad, i.IsReachable)), whole.Intervals.Select(i => (i.FromRad, i.IsReachable)));
            Assert.Equal((alone.Cycle, alone.StalledIntervals.Count), (whole.Cycle, whole.StalledIntervals.Count));
            Assert.Equal(alone.CycleHistory.SkipLast(1), whole.CycleHistory.SkipLast(1), StringComparer.Ordinal);
            AssertSameTruth(alone, whole);
            Assert.Equal(VoltagesWithin(alone, p), VoltagesWithin(whole, p));
            InterlockResult claim = Assert.Single(alone.Interlocks);
            InterlockResult same = Assert.Single(whole.Interlocks, i => string.Equals(i.Name, claim.Name, StringComparison.Ordinal));
            Assert.Equal((claim.Verdict, string.Join("; ", claim.History)), (same.Verdict, string.Join("; ", same.History)));
            AssertSameFaults(alone, whole);
        }
    }

    // The second part lets its lamp burn with its switch open, under one single fault: what is unsafe among many inputs stays refuted.
    [Fact]
    public void Analyse_TwentyFiveInputs_RefutesWhatIsUnsafeAndProvesWhatIsNot()
    {
        CircuitAnalysis whole = Timer(All).Analyse();
        Assert.All(whole.Interlocks, i => Assert.Equal(i.Name.EndsWith('1') ? InterlockVerdict.Fails : InterlockVerdict.Holds, i.Verdict));
        InterlockResult unsafePart = whole.Interlocks[1];
        Assert.NotEmpty(unsafePart.History);
        Assert.Contains(whole.Faults, f => f.Fault.Kind == CircuitFaultKind.FeedOpen);
    }

    // A star of three lines hangs together by N once N is open: each input is then felt by every load.
    [Fact]
    public void Analyse_InputsThatAFaultTiesTogether_AreRefusedWithTheFaultAndThePlace()
    {
        CircuitBuilder star = new() { Lines = ["L1", "L2", "L3"], FeedNet = "L1" };
        star.Ring("run", (10, 350));
        for (int i = 0; i < 18; i++)
        {
            star.Input(Text($"s{i}"), Text($"L{1 + (i % 3)}"), Text($"leg{i}")).Ohms(Text($"lamp{i}"), Text($"leg{i}"), "N", 100 + i);
        }

        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => star.Analyse());
        Finding reason = Assert.Single(refused.Reasons);
        Assert.Equal("circuit.too-many-inputs", reason.Code);
        Assert.Contains("neutral open", reason.Message, StringComparison.Ordinal);
    }

    // Sixteen was the limit whatever hung together; seventeen that do are still too many.
    [Fact]
    public void Analyse_SeventeenInputsOfOnePart_AreRefused()
    {
        CircuitBuilder one = new CircuitBuilder().Ring("run", (10, 350)).Ohms("base", "mid", "N", 100);
        for (int i = 0; i < 17; i++)
        {
            one.Input(Text($"s{i}"), "run", Text($"leg{i}")).Ohms(Text($"lamp{i}"), Text($"leg{i}"), "mid", 100 + i);
        }

        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => one.Analyse());
        Assert.Contains("17 inputs matter together", Assert.Single(refused.Reasons).Message, StringComparison.Ordinal);
    }

    // Twelve makes within each other's bands may come in any order: 2^12 sets of closed rings. With 2^11 positions of the inputs and 72 loads that is 600 million
    // states, and the 51,200 of the intervals that they belong to are not too many.
    [Fact]
    public void Analyse_EdgesThatMayComeInAnyOrder_AreRefusedWithAllThatMultiplies()
    {
        CircuitBuilder circuit = new();
        for (int r = 0; r < 12; r++)
        {
            circuit.Ring(Text($"ring{r}"), Text($"net{r}"), 2, (20 + (r / 10.0), 100 + (20 * r)));
            for (int l = 0; l < 6; l++)
            {
                circuit.Ohms(Text($"lamp{r}-{l}"), Text($"net{r}"), "N", 1000);
            }
        }

        for (int i = 0; i < 11; i++)
        {
            circuit.Input(Text($"s{i}"), Text($"net{i}"), Text($"net{i + 1}"));
        }

        Finding reason = Assert.Single(Assert.Throws<DesignRefusedException>(() => circuit.Analyse()).Reasons);
        Assert.Equal("circuit.too-large", reason.Code);
        Assert.Contains("2^11 positions of the inputs and 72 loads", reason.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void States_TwentyFiveInputs_ShowEveryStateOfEveryLoad()
    {
        CircuitAnalysis whole = Timer(All).Analyse();
        Assert.True(whole.States.Count < 65_536);
        for (int load = 0; load < whole.Loads.Count; load++)
        {
            for (int i = 0; i < whole.Intervals.Count; i++)
            {
                LoadState[] listed = [.. whole.States.Where(s => s.Interval == i).Select(s => s.Loads[load]).Distinct()];
                Assert.Equal(whole.Truth(i, load).Truth is LoadTruth.On or LoadTruth.WithInputs, listed.Contains(LoadState.On));
                Assert.Equal(whole.Truth(i, load).Truth is LoadTruth.Off or LoadTruth.WithInputs, listed.Contains(LoadState.Off));
            }
        }
    }

    private static CircuitBuilder Timer(int[] parts)
    {
        CircuitBuilder timer = new() { CoastMostDeg = 1 };
        timer.Ring("run", (5, 355));
        for (int p = 0; p < Parts; p++)
        {
            timer.Ring(Text($"ring{p}"), (20 + (40 * p), 120 + (35 * p)));
        }

        foreach (int p in parts)
        {
            // The first switch lets the part's ring in, the others put lamps on; in part 1 a lamp hangs before the switch.
            timer.Input(Text($"a{p}"), Text($"ring{p}"), Text($"mid{p}")).Ohms(Text($"base{p}"), Text($"mid{p}"), "N", 100 + p);
            for (int i = 0; i < 3; i++)
            {
                timer.Input(Text($"b{p}{i}"), Text($"mid{p}"), Text($"leg{p}{i}")).Ohms(Text($"lamp{p}{i}"), Text($"leg{p}{i}"), "N", 200 + (50 * i) + p);
            }

            if (p == 1)
            {
                timer.Ohms("leak1", "ring1", "leg10", 1);
            }

            timer.Interlock(new InterlockBrief(Text($"dark {p}"), InterlockClaim.NeverOn, [Text($"lamp{p}0")]) { WhileOpen = [Text($"a{p}")] });
        }

        return timer.Input("start", "L", "run").Motor("run", "N", 3);
    }

    // Other parts' rings have loads in the whole only.
    private static WorkingVoltage[] VoltagesWithin(CircuitAnalysis analysis, int part)
    {
        string[] nets = ["L", "N", "E", "run", Text($"ring{part}"), Text($"mid{part}"), Text($"leg{part}0"), Text($"leg{part}1"), Text($"leg{part}2")];
        return [.. analysis.WorkingVoltages.Where(v => nets.Contains(v.First, StringComparer.Ordinal) && nets.Contains(v.Second, StringComparer.Ordinal))];
    }

    private static void AssertSameTruth(CircuitAnalysis alone, CircuitAnalysis whole)
    {
        for (int load = 0; load < alone.Loads.Count; load++)
        {
            int same = whole.Loads.ToList().IndexOf(alone.Loads[load]);
            for (int i = 0; i < alone.Intervals.Count; i++)
            {
                Assert.Equal(alone.Truth(i, load), whole.Truth(i, same));
            }
        }
    }

    private static void AssertSameFaults(CircuitAnalysis alone, CircuitAnalysis whole)
    {
        foreach (FaultEffect effect in alone.Faults)
        {
            FaultEffect same = Assert.Single(whole.Faults, f => f.Fault == effect.Fault);
            Assert.Equal(effect.Effects, same.Effects.Where(e => alone.Loads.Contains(e.Load, StringComparer.Ordinal)));
            Assert.Equal(effect.ShortPath, same.ShortPath, StringComparer.Ordinal);
            Assert.Equal(effect.BreaksInterlocks, same.BreaksInterlocks.Where(n => alone.Interlocks.Any(i => string.Equals(i.Name, n, StringComparison.Ordinal))), StringComparer.Ordinal);
            Assert.Equal(effect.Dangers, same.Dangers.Where(d => effect.Dangers.Contains(d, StringComparer.Ordinal)), StringComparer.Ordinal);
        }
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
