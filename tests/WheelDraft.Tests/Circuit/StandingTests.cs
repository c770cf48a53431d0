using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Where the wheel can stand: worked cases, and random circuits against brute force (<see cref="StandingOracle"/>).</summary>
public sealed class StandingTests
{
    // Random circuits of each property; WHEELDRAFT_CIRCUIT_CASES asks for more, 300 and over before a release.
    internal static readonly int Cases = int.TryParse(Environment.GetEnvironmentVariable("WHEELDRAFT_CIRCUIT_CASES"), System.Globalization.CultureInfo.InvariantCulture, out int asked) ? asked : 25;

    [Fact]
    public void Parks_AnInputThatOpensInMidTurn_IsAPlaceWhereItStands()
    {
        // Worked here: the thermostat alone feeds the motor, so the wheel stands wherever it opens; 230 V over the dose ring's gap.
        CircuitAnalysis analysis = new CircuitBuilder { CoastMostDeg = 0.5 }
            .Ring("dose", (10, 20)).Watts("valve", "dose", "N", 7).Motor("run", "N").Input("thermostat", "L", "run").Analyse();
        Assert.Empty(analysis.Parks);
        Assert.All(analysis.Standing, s => Assert.Equal("where 'thermostat' can open", s.Why));
        Assert.All(Enumerable.Range(0, 720), c => Assert.Contains(analysis.Standing, s => Covers(s, Deg((c + 0.5) / 2))));
        Assert.All(Enumerable.Range(0, 360).Where(d => d is < 10 or >= 20), d => Assert.Contains(analysis.Standing, s => Covers(s, Deg(d + 0.5)) && s.VoltageAcross.Contains(0)));
        Assert.DoesNotContain(analysis.Standing, s => Covers(s, Deg(15)) && s.VoltageAcross.Contains(0));
    }

    [Fact]
    public void Standing_BehindASwitchBeforeTheHoldingRing_ReachesToItsLatestMakeCoastAndBacklash()
    {
        // Worked here: hold breaks at 358° ± 0.2°, makes at 6° ± 0.2°. An input stops it from 357.8° to 6.2°, run on by 0.5°, with
        // 0.3° of backlash either way: 357.5° to 7°. Its own break: 357.8° to 358.2° + 0.5°, the same backlash: 357.5° to 359°.
        CircuitAnalysis analysis = new CircuitBuilder { CoastMostDeg = 0.5, BacklashDeg = 0.3 }
            .Ring("hold", "run", 0.2, (6, 358)).Motor("run", "N").Input("start", "L", "run").Analyse();
        Assert.Equal(
            [("where 'hold' lets go", 357.5, 359.0), ("where 'start' can open", 357.5, 367.0)],
            analysis.Standing.Select(s => (s.Why, Math.Round(Angles.DegFromRad(s.FromRad), 9), Math.Round(Angles.DegFromRad(s.ToRad), 9))));
        Assert.All(analysis.Standing, s => Assert.Equal([0], s.VoltageAcross));
    }

    [Fact]
    public void Standing_BehindAnEdgeThatNoInputFeeds_IsItsBandAndTheCoastAlone()
    {
        // Worked here: no input; the ring breaks at 300° ± 1°, least coast 2°, most 4°: 301° to 305°, and home is never reached.
        CircuitAnalysis analysis = new CircuitBuilder { CoastLeastDeg = 2, CoastMostDeg = 4 }.Ring("hold", "run", 1, (0, 300)).Motor("run", "N").Analyse();
        StandingStretch stretch = Assert.Single(analysis.Standing, s => s.Why is "where 'hold' lets go");
        Assert.Equal((301, 305), (Math.Round(Angles.DegFromRad(stretch.FromRad), 9), Math.Round(Angles.DegFromRad(stretch.ToRad), 9)));
        Assert.Equal([0], stretch.VoltageAcross);
    }

    [Fact]
    public void Reach_CoastThatMayCarryOverAGap_ReachesWhatLiesBehindIt()
    {
        // Worked here: no input; a gap from 100° to 102° and a coast of 0° to 3°: it may stand in the gap for good, or be carried over it.
        CircuitAnalysis analysis = new CircuitBuilder { CoastMostDeg = 3 }
            .Ring("hold", "run", 0, (102, 100)).Motor("run", "N").Ring("lamp", (200, 210)).Watts("lamp", "lamp", "N", 40)
            .Interlock(new InterlockBrief("dark", InterlockClaim.NeverOn, ["lamp"])).Analyse();
        Assert.All(analysis.Intervals, i => Assert.True(i.IsReachable));
        Assert.Equal(InterlockVerdict.Fails, analysis.Interlocks[0].Verdict);
        StandingStretch gap = Assert.Single(analysis.Standing);
        Assert.Equal((100, 102), (Math.Round(Angles.DegFromRad(gap.FromRad), 9), Math.Round(Angles.DegFromRad(gap.ToRad), 9)));
        Assert.Equal(CycleVerdict.No, analysis.Cycle);
        Assert.EndsWith("the wheel stands between 100° and 102°, for good", analysis.CycleHistory[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void Standing_MotorStraightOnTheSupply_IsNowhere()
    {
        CircuitAnalysis analysis = new CircuitBuilder().Ring("dose", (10, 20)).Watts("valve", "dose", "N", 7).Motor("L", "N").Analyse();
        Assert.Empty(analysis.Standing);
        Assert.Equal(CycleVerdict.Yes, analysis.Cycle);
        Assert.True(analysis.CycleCompletes);
        Assert.Empty(analysis.CycleHistory);
    }

    [Fact]
    public void Standing_WithoutAMotor_IsHomeAndCoastWithEveryOpenContact()
    {
        CircuitAnalysis analysis = new CircuitBuilder { CoastMostDeg = 3, BacklashDeg = 1 }
            .Ring("a", (10, 20)).Ring("b", (350, 30)).Ring("c", (3, 300)).Always("d").Analyse();
        StandingStretch home = Assert.Single(analysis.Standing);
        Assert.Equal((359, 364), (Math.Round(Angles.DegFromRad(home.FromRad), 9), Math.Round(Angles.DegFromRad(home.ToRad), 9)));
        Assert.Equal([0, 2], home.VoltageAcross);
        Assert.Equal(CycleVerdict.Undecided, analysis.Cycle);
        Assert.False(analysis.CycleCompletes);
    }

    [Fact]
    public void Standing_ContactWithBothSidesOnOnePotential_HasNoVoltageAcross()
    {
        // Worked here: the ring 'idle' leads from the copper on line to line itself.
        CircuitAnalysis analysis = new CircuitBuilder()
            .Ring("hold", "run", 0, (10, 350)).Motor("run", "N").Input("start", "L", "run").Ring("idle", "L", 0, (100, 200)).Analyse();
        Assert.All(analysis.Standing, s => Assert.Equal([0], s.VoltageAcross));
    }

    [Fact]
    public void Standing_ContactToANetThatFloats_HasTheVoltagesThatItCouldHave()
    {
        // Worked here: at home net x hangs on nothing; land a could join it to line and land b to neutral, so either gap may have 230 V.
        // Net y could only ever be joined to line: no voltage across its land.
        CircuitAnalysis analysis = new CircuitBuilder { IsLands = true }
            .Land("hold", "run", "L", (10, 350)).Land("a", "x", "L", (100, 200)).Land("b", "x", "N", (300, 310)).Land("c", "y", "L", (50, 60))
            .Motor("run", "N").Input("start", "L", "run").Analyse();
        Assert.All(analysis.Standing, s => Assert.Equal([0, 1, 2], s.VoltageAcross));
    }

    [Fact]
    public void Standing_EdgesThatChangeNothingForAnUndecidedMotor_AreNoParkingPlaces()
    {
        CircuitAnalysis analysis = new CircuitBuilder().Ring("lamp", (100, 110)).Watts("lamp", "lamp", "N", 40).Watts("choke", "L", "run", 3).Motor("run", "N", 3).Analyse();
        Assert.Empty(analysis.Parks);
    }

    [Fact]
    public void Standing_MotorBetweenDropOutAndPullIn_MayStandEverywhere()
    {
        // Worked here: half the supply, between 20 % and 80 %: it may turn and it may stand, with no input at all.
        CircuitAnalysis analysis = new CircuitBuilder().Ring("lamp", (100, 110)).Watts("lamp", "lamp", "N", 40).Watts("choke", "L", "run", 3).Motor("run", "N", 3).Analyse();
        Assert.All(analysis.Standing, s => Assert.Equal("where the motor is between drop-out and pull-in", s.Why));
        Assert.All(Enumerable.Range(0, 360), d => Assert.Contains(analysis.Standing, s => Covers(s, Deg(d + 0.5))));
        Assert.Equal(CycleVerdict.Undecided, analysis.Cycle);
        Assert.NotEmpty(analysis.CycleHistory);
    }

    [Fact]
    public void Standing_MoreOrdersThanAreFollowed_IsTakenToBePossibleThere()
    {
        // Thirteen edges within one band, from 99.5° to 100.5°: nothing is called proved, and no cycle to complete.
        CircuitBuilder circuit = new CircuitBuilder { CoastMostDeg = 1 }.Motor("L", "N");
        for (int r = 0; r < 13; r++)
        {
            string name = $"r{(char)('a' + r)}";
            circuit.Ring(name, name, 0.5, (100, 200 + (10 * r))).Watts($"load {name}", name, "N", 7);
        }

        CircuitAnalysis analysis = circuit.Analyse();
        StandingStretch stretch = Assert.Single(analysis.Standing);
        Assert.Equal((99.5, 101.5), (Math.Round(Angles.DegFromRad(stretch.FromRad), 9), Math.Round(Angles.DegFromRad(stretch.ToRad), 9)));
        Assert.Equal(13, stretch.VoltageAcross.Count);
        Assert.Equal(CycleVerdict.Undecided, analysis.Cycle);
    }

    [Fact]
    public void Cycle_ASecondStretchInWhichAnInputCanOpen_DoesNotComplete()
    {
        // One arc of stop in mid-turn once passed for the parking place. Worked here: hold feeds from 3° to 200° and from 220° to home.
        CircuitAnalysis analysis = new CircuitBuilder().Ring("hold", "run", 0, (3, 200), (220, 360)).Motor("run", "N").Input("thermostat", "L", "run")
            .Ring("fan", (190, 210)).Watts("fan", "fan", "N", 12).Analyse();
        Assert.Equal(CycleVerdict.No, analysis.Cycle);
        Assert.False(analysis.CycleCompletes);
        Assert.Equal(
            ["home", "thermostat closes", "at 3.0 s hold ring makes", "at 200.0 s hold ring breaks", "thermostat opens: the wheel stands between 200° and 210° with fan on, until thermostat closes"],
            analysis.CycleHistory);
        Assert.Equal(FindingSeverity.Warning, Assert.Single(analysis.Findings, f => f.Code is "circuit.cycle").Severity);
    }

    [Fact]
    public void Cycle_OnlyArcOfStopFarFromHome_DoesNotComplete()
    {
        // One single arc of stop, in mid-turn, and home held by the ring: it is no parking place at home.
        CircuitAnalysis analysis = new CircuitBuilder().Ring("hold", "run", 0, (220, 200)).Motor("run", "N").Input("thermostat", "L", "run").Analyse();
        Assert.Equal(CycleVerdict.No, analysis.Cycle);
        Assert.Equal(["home", "at 200.0 s hold ring breaks: the wheel stands between 200° and 220°, until thermostat closes"], analysis.CycleHistory);
    }

    [Fact]
    public void Cycle_WheelThatWaitsAtHomeWithSomethingOn_AsksForAttention()
    {
        CircuitAnalysis analysis = new CircuitBuilder().Ring("hold", "run", 0, (10, 360)).Motor("run", "N").Input("start", "L", "run")
            .Ring("fan", (350, 5)).Watts("fan", "fan", "N", 12).Analyse();
        Assert.Equal(FindingSeverity.Warning, Assert.Single(analysis.Findings, f => f.Code is "circuit.cycle").Severity);
    }

    [Fact]
    public void Standing_RandomCircuit_CoversEverythingThatBruteForceFinds() => ReachabilityTests.CoastingCircuits.Sample(
        circuit =>
        {
            if (circuit.Loads[^1].Name is not "motor")
            {
                return;
            }

            CircuitAnalysis analysis = circuit.Analyse();
            StandingOracle possible = new(circuit, possible: true);
            StandingOracle certain = new(circuit, possible: false);
            Assert.Equal([.. possible.Intervals.Order()], Enumerable.Range(0, analysis.Intervals.Count).Where(i => analysis.Intervals[i].IsReachable));
            CheckStretches(circuit, analysis, possible);
            CheckCycle(circuit, analysis, possible, certain);
        },
        iter: Cases,
        threads: 1,
        print: Told);

    [Fact]
    public void Standing_EdgesAnywhereInTheirBands_LieInTheStretchesOfTheBands() =>
        Gen.Select(Gen.Int[-2, 2].Array[6], Gen.Int[0, 3], Gen.Bool).Sample(
            (moved, ring, isHeld) =>
            {
                // Bands of one degree; the edges moved within them by halves of a degree, brute force with the edges where they are.
                CircuitBuilder Circuit(double bandDeg, Func<int, double> by)
                {
                    CircuitBuilder circuit = new() { CoastMostDeg = 1.5, CoastLeastDeg = 0.5 };
                    circuit.Ring("hold", "run", bandDeg, (4 + by(0), 357 + by(1)));
                    circuit.Ring("a", isHeld ? "run" : "a", bandDeg, (20 + by(2), (ring < 2 ? 357.5 : 200) + by(3)));
                    circuit.Ring("b", "b", bandDeg, ((ring % 2 == 0 ? 3.5 : 100) + by(4), 110 + by(5)));
                    return circuit.Watts("fan", "a", "N", 12).Watts("valve", "b", "N", 7).Motor("run", "N").Input("start", "L", "run");
                }

                CircuitAnalysis banded = Circuit(1, _ => 0).Analyse();
                CircuitBuilder exact = Circuit(0, e => moved[e] / 2.0);
                StandingOracle oracle = new(exact, possible: true);
                foreach ((int cell, int inputs) in oracle.Stands)
                {
                    StandingStretch[] here = [.. banded.Standing.Where(s => Covers(s, StandingOracle.MiddleRad(cell)))];
                    Assert.True(here.Length > 0, FormattableString.Invariant($"{cell / 2.0}° is not covered"));
                    Assert.All(oracle.Across(cell, inputs).Sure, c => Assert.Contains(here, s => s.VoltageAcross.Contains(c)));
                }
            },
            iter: 12,
            threads: 1);

    private static void CheckStretches(CircuitBuilder circuit, CircuitAnalysis analysis, StandingOracle oracle)
    {
        // Beyond what brute force finds a stretch may reach by coast and backlash, and before it by least coast and backlash.
        int after = (int)Math.Ceiling(2 * (circuit.CoastMostDeg + circuit.BacklashDeg)) + 1;
        int before = (int)Math.Ceiling(2 * (circuit.CoastLeastDeg + circuit.BacklashDeg)) + 1;
        HashSet<int>[] may = [.. Enumerable.Range(0, StandingOracle.Cells).Select(_ => new HashSet<int>())];
        bool[] near = new bool[StandingOracle.Cells];
        Dictionary<(int, int), (HashSet<int> Sure, HashSet<int> Floating)> across = [];
        foreach ((int cell, int inputs) in oracle.Stands)
        {
            (int, int) key = (oracle.IntervalOf(cell), inputs);
            (HashSet<int> sure, HashSet<int> floating) = across.TryGetValue(key, out (HashSet<int> Sure, HashSet<int> Floating) known) ? known : across[key] = oracle.Across(cell, inputs);
            // It begins exactly at home, the beginning of the first cell; and a coast of one length ends at the beginning of a cell.
            bool mayBeAPoint = cell == 0 || circuit.CoastLeastDeg >= circuit.CoastMostDeg;
            StandingStretch[] here = [.. analysis.Standing.Where(s => Covers(s, StandingOracle.MiddleRad(cell)) || (mayBeAPoint && Covers(s, Deg(cell / 2.0))))];
            Assert.True(here.Length > 0, FormattableString.Invariant($"brute force stands at {cell / 2.0}°, inputs {inputs}"));
            Assert.All(sure, c => Assert.True(here.Any(s => s.VoltageAcross.Contains(c)), FormattableString.Invariant($"voltage across {c} at {cell / 2.0}°")));

            // Where the wheel never comes round to home again, the part of its interval before home is counted all the same; and of
            // an interval in which it can stand at all, that part too over which a wheel at speed is carried by its least coast.
            int first = key.Item1 == 0 ? -CellsLeft(oracle, cell, -1) : 0;
            int last = circuit.CoastLeastDeg > 0 ? CellsLeft(oracle, cell, 1) : 0;
            for (int d = first - before; d <= last + after; d++)
            {
                int at = (cell + d + (3 * StandingOracle.Cells)) % StandingOracle.Cells;
                near[at] = true;
                may[at].UnionWith(sure);
                may[at].UnionWith(floating);
            }
        }

        for (int cell = 0; cell < StandingOracle.Cells; cell++)
        {
            foreach (StandingStretch stretch in analysis.Standing.Where(s => Covers(s, StandingOracle.MiddleRad(cell))))
            {
                Assert.True(near[cell], FormattableString.Invariant($"a stretch {stretch.Why} at {cell / 2.0}°, where brute force never stands"));
                Assert.All(stretch.VoltageAcross, c => Assert.True(may[cell].Contains(c), FormattableString.Invariant($"voltage across {c} at {cell / 2.0}° {stretch}")));
            }
        }
    }

    private static void CheckCycle(CircuitBuilder circuit, CircuitAnalysis analysis, StandingOracle possible, StandingOracle certain)
    {
        CycleVerdict expected = certain.Stands.Count > 0 ? CycleVerdict.No : possible.Stands.Count > 0 ? CycleVerdict.Undecided : CycleVerdict.Yes;
        Assert.True(expected == analysis.Cycle, $"brute force says {expected}, found {analysis.Cycle}: {string.Join("; ", analysis.CycleHistory)}");
        Assert.Equal(expected == CycleVerdict.Yes, analysis.CycleHistory.Count == 0);
        Assert.Equal(expected == CycleVerdict.Yes, analysis.Standing.Count == 0);
    }

    // How many cells of its own interval lie behind or ahead of a cell.
    private static int CellsLeft(StandingOracle oracle, int cell, int way) => Enumerable.Range(0, StandingOracle.Cells).FirstOrDefault(
        d => oracle.IntervalOf((cell + (way * (d + 1)) + (2 * StandingOracle.Cells)) % StandingOracle.Cells) != oracle.IntervalOf(cell), StandingOracle.Cells);

    private static string Told(CircuitBuilder circuit) => string.Join("; ",
    [
        FormattableString.Invariant($"feed {circuit.FeedNet}, lands {circuit.IsLands}, coast {circuit.CoastLeastDeg} to {circuit.CoastMostDeg}, backlash {circuit.BacklashDeg}"),
        .. circuit.Contacts.Select(c => $"{c.Output} {c.WheelNet}-{c.WiperNet} {string.Join(", ", c.Periods.Select(p => FormattableString.Invariant($"{Angles.DegFromRad(p.Closed.StartRad):0}..{Angles.DegFromRad(p.Closed.EndRad):0}")))}"),
        .. circuit.Loads.Select(l => $"{l.Name} {l.From}-{l.To} {l.Rating}"),
        .. circuit.Inputs.Select(i => $"{i.Name} {i.From}-{i.To}"),
    ]);

    // Angles found by different sums differ by roundings, rad.
    private const double SameRad = 1e-9;

    private static double Deg(double deg) => Angles.RadFromDeg(deg);

    private static bool Covers(StandingStretch stretch, double atRad) => Angles.InTurn(atRad - stretch.FromRad + SameRad) <= stretch.ToRad - stretch.FromRad + (2 * SameRad);
}
