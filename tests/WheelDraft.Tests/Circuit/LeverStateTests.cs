using System.Globalization;
using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Circuits with a cam's lever against brute force over angle × what holds the lever × inputs.</summary>
public sealed class LeverStateTests
{
    private const double Deg = Math.PI / 180;

    // Grid of the brute force, degrees; cases whose edges lie nearer to each other than twice that are passed over.
    private const double GridDeg = 0.25;
    private const int Grid = 1440;

    private static int Cases => int.TryParse(Environment.GetEnvironmentVariable("WHEELDRAFT_CIRCUIT_CASES"), CultureInfo.InvariantCulture, out int asked) ? asked : 25;

    private static readonly bool[] Never = [false];
    private static readonly bool[] Either = [false, true];

    private static readonly string[] Nets = ["run", "a", "b"];

    private sealed record Case(
        (double From, double To, double BackFrom, double BackTo) Profile,
        (double Place, bool Below, double? Obstacle, double? Latch) Lever,
        IReadOnlyList<(int Net, int From, int To)> Rings,
        (string From, string To) Contact,
        (string From, string To) Input,
        IReadOnlyList<int> Loads,
        (int Load, bool WhileClosed, bool WhileFalse, bool WhileOpen) Interlock);

    private const double TopMm = 6;

    private static Gen<Case> Circuits =>
        from start in Gen.Int[5, 60]
        from rise in Gen.Int[30, 70]
        from ride in Gen.Int[20, 80]
        from back in Gen.Int[30, 70]
        from place in Gen.Double[0.5, 5.5]
        from below in Gen.Bool
        from obstacle in Gen.Double[0.5, 5.9]
        from latch in Gen.Double[6.2, 9]
        from has in Gen.Int[0, 3]
        from rings in Gen.Select(Gen.Int[0, 2], Gen.Int[1, 170], Gen.Int[171, 358]).List[1, 3]
        from contact in Gen.Int[0, 3]
        from input in Gen.Int[0, 3]
        from loads in Gen.Int[0, 2].List[1, 2]
        from interlock in Gen.Select(Gen.Int[0, 1], Gen.Bool, Gen.Bool, Gen.Bool)
        select new Case(
            (start, start + rise, start + rise + ride, start + rise + ride + back),
            (place, below, (has & 1) != 0 ? obstacle : null, (has & 2) != 0 ? latch : null),
            [.. rings],
            Between(contact),
            Between(input),
            [.. loads],
            (interlock.Item1, interlock.Item2, interlock.Item3, interlock.Item4));

    private static (string, string) Between(int which) => which switch
    {
        0 => ("L", "run"),
        1 => ("L", "a"),
        2 => ("a", "run"),
        _ => ("a", "b"),
    };

    private static double LiftMm(Case c, double deg)
    {
        double Poly(double u) => u * u * u * (10 + (u * (-15 + (6 * u))));
        return deg < c.Profile.From || deg >= c.Profile.BackTo ? 0
            : deg < c.Profile.To ? TopMm * Poly((deg - c.Profile.From) / (c.Profile.To - c.Profile.From))
            : deg < c.Profile.BackFrom ? TopMm
            : TopMm * (1 - Poly((deg - c.Profile.BackFrom) / (c.Profile.BackTo - c.Profile.BackFrom)));
    }

    // Whether everything stands at a grid point: the lever where cam, obstacle and latch put it, nets joined by what is closed, loads on that hang on L.
    private static bool[] On(Case c, int k, (bool Blocked, bool Latched, bool Input) held, bool? stuck)
    {
        double deg = (k + 0.5) * GridDeg;
        bool contact = stuck ?? Closed(c, deg, held);
        List<(string, string)> joins = [];
        foreach ((int net, int from, int to) in c.Rings)
        {
            if (deg >= from && deg < to)
            {
                joins.Add(("L", Nets[net]));
            }
        }

        joins.AddRange(contact ? [c.Contact] : []);
        joins.AddRange(held.Input ? [c.Input] : []);
        HashSet<string> live = new(StringComparer.Ordinal) { "L" };
        for (bool more = true; more;)
        {
            more = joins.Any(j => (live.Contains(j.Item1) && live.Add(j.Item2)) || (live.Contains(j.Item2) && live.Add(j.Item1)));
        }

        return [.. c.Loads.Select(l => live.Contains(Nets[l])), live.Contains("run")];
    }

    private static bool Closed(Case c, double deg, (bool Blocked, bool Latched, bool Input) held)
    {
        double lift = Math.Max(LiftMm(c, deg), Math.Max(held.Blocked ? c.Lever.Obstacle!.Value : 0, held.Latched ? c.Lever.Latch!.Value : 0));
        return c.Lever.Below ? lift < c.Lever.Place : lift > c.Lever.Place;
    }

    private static IEnumerable<(bool Blocked, bool Latched, bool Input)> Holds(Case c) =>
        from blocked in c.Lever.Obstacle is null ? Never : Either
        from latched in c.Lever.Latch is null ? Never : Either
        from input in Either
        select (blocked, latched, input);

    private static HashSet<int> Reached(Case c, HashSet<int> from, bool? stuck)
    {
        HashSet<int> reached = [.. from];
        Queue<int> open = new(from);
        while (open.TryDequeue(out int k))
        {
            int next = (k + 1) % Grid;
            if (Holds(c).Any(h => On(c, k, h, stuck)[^1]) && reached.Add(next))
            {
                open.Enqueue(next);
            }
        }

        return reached;
    }

    private static CircuitAnalysis Analyse(Case c)
    {
        CamBrief cam = CamBriefs.RiseAndReturn(c.Profile, TopMm) with
        {
            Contact = new("low", c.Lever.Place, c.Lever.Below, 0),
            Obstacle = c.Lever.Obstacle,
            Latch = c.Lever.Latch,
        };
        CircuitBuilder circuit = new CircuitBuilder().Input("low", c.Contact.From, c.Contact.To).Input("hand", c.Input.From, c.Input.To).Motor("run", "N");
        for (int r = 0; r < c.Rings.Count; r++)
        {
            circuit.Ring(FormattableString.Invariant($"ring{r}"), Nets[c.Rings[r].Net], 0, (c.Rings[r].From, c.Rings[r].To));
        }

        for (int l = 0; l < c.Loads.Count; l++)
        {
            circuit.Watts(FormattableString.Invariant($"load{l}"), Nets[c.Loads[l]], "N", 7);
        }

        circuit.Interlock(new InterlockBrief("claim", InterlockClaim.NeverOn, [FormattableString.Invariant($"load{c.Interlock.Load % c.Loads.Count}")])
        {
            WhileClosed = c.Interlock.WhileClosed ? ["low"] : [],
            WhileOpen = !c.Interlock.WhileClosed && c.Interlock.WhileOpen ? ["low"] : [],
            WhileFalse = c.Interlock.WhileFalse ? ["low"] : [],
            Faults = FaultDepth.Single,
        });
        return circuit.Lever(CamBriefs.Set(cam, circuit.Request().Brief).Contact!).Analyse();
    }

    private static bool IsNear(CircuitAnalysis circuit) => circuit.Intervals.Count > 1 && circuit.Intervals.Any(i => i.LengthRad < 2.1 * GridDeg * Deg);

    [Fact]
    public void Analysis_RandomCircuitsWithACam_EqualsBruteForce()
    {
        int judged = 0;
        Circuits.Sample(
            c =>
            {
                CircuitAnalysis circuit = Analyse(c);
                if (IsNear(circuit) || (c.Lever.Obstacle is double o && Math.Abs(o - c.Lever.Place) < 1e-6))
                {
                    return;
                }

                judged++;

                // Where the wheel stands in the stretch that contains home is not told apart: all of it counts as home.
                CircuitInterval home = circuit.Intervals[0];
                HashSet<int> atHome = [.. Within(home)];
                HashSet<int> reached = Reached(c, atHome, null);
                foreach ((CircuitInterval interval, int i) in circuit.Intervals.Select((v, i) => (v, i)))
                {
                    double middle = Angles.DegFromRad(Angles.InTurn(interval.FromRad + (interval.LengthRad / 2)));
                    int k = (int)(middle / GridDeg) % Grid;

                    // The wheel is in a stretch as soon as it has passed the edge before it.
                    Assert.Equal(Within(interval).Any(reached.Contains), interval.IsReachable);
                    foreach ((bool Blocked, bool Latched, bool Input) held in Holds(c))
                    {
                        int inputs = (held.Blocked ? Bit(circuit, "cam blocked") : 0) | (held.Latched ? Bit(circuit, "cam latched") : 0) | (held.Input ? Bit(circuit, "hand") : 0);
                        Assert.Equal(On(c, k, held, null), circuit.State(i, inputs).Loads.Select(l => l == LoadState.On));
                        Assert.Equal(Closed(c, (k + 0.5) * GridDeg, held), circuit.IsLeverClosed(0, i, inputs));
                    }
                }

                Assert.Equal(Breaks(c, reached, null), circuit.Interlocks[0].Verdict == InterlockVerdict.Fails && circuit.Interlocks[0].Fault is null);
                foreach ((CircuitFaultKind kind, double lift) in new[] { (CircuitFaultKind.LeverStuckUp, TopMm), (CircuitFaultKind.LeverStuckDown, 0.0) })
                {
                    bool stuck = c.Lever.Below ? lift < c.Lever.Place : lift > c.Lever.Place;
                    FaultEffect effect = circuit.Faults.Single(f => f.Fault.Kind == kind);
                    Assert.Equal(Breaks(c, Reached(c, reached, stuck), stuck), effect.BreaksInterlocks.Count > 0);
                }
            },
            iter: Cases);
        Assert.True(judged > Cases / 2, FormattableString.Invariant($"only {judged} cases had edges far enough from each other"));
    }

    private static IEnumerable<int> Within(CircuitInterval interval) =>
        Enumerable.Range(0, Grid).Where(k => Angles.InTurn(((k + 0.5) * GridDeg * Deg) - interval.FromRad) < interval.LengthRad);

    private static int Bit(CircuitAnalysis circuit, string input) => 1 << circuit.Inputs.ToList().IndexOf(input);

    private static bool Breaks(Case c, HashSet<int> reached, bool? stuck) => reached.Any(k => Holds(c).Any(h =>
    {
        double deg = (k + 0.5) * GridDeg;
        bool closed = stuck ?? Closed(c, deg, h);
        bool meaning = Closed(c, 359.9, h);
        bool asked = (!c.Interlock.WhileClosed || closed) && (c.Interlock.WhileClosed || !c.Interlock.WhileOpen || !closed) && (!c.Interlock.WhileFalse || !meaning);
        return asked && On(c, k, h, stuck)[c.Interlock.Load % c.Loads.Count];
    }));

    /// <summary>The feeder of the demo: blocked, the wheel finishes its turn and does not begin another; free, it goes on; latched, it is off.</summary>
    [Fact]
    public void Demo_BlockedFeeler_StopsTheNextTurn()
    {
        Design design = Demos.Of("fry-feeder");
        CircuitAnalysis circuit = design.Circuit;
        InterlockResult begins = circuit.Interlocks.Single(i => string.Equals(i.Name, "no turn begins while the tray is full", StringComparison.Ordinal));
        Assert.Equal(InterlockVerdict.Holds, begins.Verdict);
        Assert.True(begins.Applies);

        ScenarioBrief blocked = new("blocked in mid-turn", [new ScenarioStep(30, [], []) { Block = ["feeler cam"] }], 1000);
        ScenarioRun run = circuit.Play(blocked);
        Assert.Equal(0, run.Moments[^1].Turns);
        Assert.InRange(Angles.DegFromRad(run.Moments[^1].AngleRad), 355.4, 356);
        Assert.False(run.Moments[^1].IsTurning);
        Assert.True(circuit.Play(new("free", [], 1000)).Moments[^1].Turns >= 8);
        Assert.InRange(circuit.Play(new("freed again", [new ScenarioStep(30, [], []) { Block = ["feeler cam"] }, new ScenarioStep(500, [], []) { Free = ["feeler cam"] }], 1000)).Moments[^1].Turns, 4, 5);
        Assert.Equal(0, circuit.Play(new("latched", [new ScenarioStep(30, [], []) { Latch = ["feeler cam"] }], 1000)).Moments[^1].Turns);
        Assert.Equal(1, circuit.Play(new("let go", [new ScenarioStep(30, [], []) { Latch = ["feeler cam"] }, new ScenarioStep(200, [], []) { Unlatch = ["feeler cam"] }, new ScenarioStep(230, [], []) { Block = ["feeler cam"] }], 1000)).Moments[^1].Turns);
    }

    /// <summary>Stuck down it calls for turn after turn although the tray is full: a danger that the fault table tells.</summary>
    [Fact]
    public void Demo_StuckLever_IsJudgedAsAFault()
    {
        CircuitAnalysis circuit = Demos.Of("fry-feeder").Circuit;
        FaultEffect down = circuit.Faults.Single(f => f.Fault.Kind == CircuitFaultKind.LeverStuckDown);
        Assert.Equal("lever of feeler cam stuck down", down.Fault.Words);
        Assert.Contains("no turn begins while the tray is full", down.BreaksInterlocks, StringComparer.Ordinal);
        Assert.Contains(down.Dangers, d => d.Contains("never stops", StringComparison.Ordinal));
        FaultEffect up = circuit.Faults.Single(f => f.Fault.Kind == CircuitFaultKind.LeverStuckUp);
        Assert.Empty(up.BreaksInterlocks);
        Assert.Contains(circuit.Faults, f => f.Fault.Kind == CircuitFaultKind.CamSlippedClosed && f.BreaksInterlocks.Count > 0);
    }
}
