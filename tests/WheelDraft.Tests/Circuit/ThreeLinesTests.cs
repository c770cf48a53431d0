using System.Numerics;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Supplies of three lines, by published formulas, and nets that nothing feeds.</summary>
public sealed class ThreeLinesTests
{
    private static CircuitBuilder Three(bool isLands = true) => new() { Lines = ["L1", "L2", "L3"], FeedNet = "L1", IsLands = isLands };

    // Any text-book of three-phase circuits, e.g. W. H. Hayt and J. E. Kemmerly, Engineering Circuit Analysis, chapter "Polyphase
    // circuits" (from memory): line to line is √3 times line to neutral.
    [Fact]
    public void WorkingVoltage_LinesAndNeutral_AreRootThreeApart()
    {
        CircuitAnalysis analysis = Three().Ohms("a", "L1", "N", 100).Ohms("b", "L2", "N", 100).Ohms("c", "L3", "N", 100).Analyse();
        Assert.Equal(230 * Math.Sqrt(3), analysis.WorkingVoltageV("L1", "L2"), 1e-9);
        Assert.Equal(230 * Math.Sqrt(3), analysis.WorkingVoltageV("L2", "L3"), 1e-9);
        Assert.Equal(230 * Math.Sqrt(3), analysis.WorkingVoltageV("L1", "L3"), 1e-9);
        Assert.Equal(230, analysis.WorkingVoltageV("L2", "N"), 1e-9);
        Assert.DoesNotContain(analysis.Findings, f => f.Severity == FindingSeverity.Error);
    }

    // Millman's theorem (J. Millman, "A useful network theorem", Proc. IRE 28, 1940, 413, from memory): the star point of loads without a neutral
    // is at Σ Y V / Σ Y. With equal loads that is zero; with one line's load open, midway between the other two: half a line voltage each.
    [Theory]
    [InlineData(100, 0, 100, 0, 100, 0)]
    [InlineData(50, 0, 100, 30, 400, -120)]
    [InlineData(20, 60, 300, 0, 80, 10)]
    public void State_StarWithOpenNeutral_FollowsMillman(double ra, double xa, double rb, double xb, double rc, double xc)
    {
        CircuitAnalysis analysis = Three().Ohms("a", "L1", "star", ra, xa).Ohms("b", "L2", "star", rb, xb).Ohms("c", "L3", "star", rc, xc).Analyse();
        Complex[] v = [.. Enumerable.Range(0, 3).Select(i => Complex.FromPolarCoordinates(230, -i * 2 * Math.PI / 3))];
        Complex[] y = [1 / new Complex(ra, xa), 1 / new Complex(rb, xb), 1 / new Complex(rc, xc)];
        Complex star = ((y[0] * v[0]) + (y[1] * v[1]) + (y[2] * v[2])) / (y[0] + y[1] + y[2]);
        CircuitState state = analysis.State(0, 0);
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal((v[i] - star).Magnitude, state.VoltsV[i], 1e-9);
        }

        // Single open loads count: the two left share 230 √3 V, so the star lies where it divides that.
        double open = new[] { (0, 1), (1, 2), (0, 2) }.Max(p => (((y[p.Item1] * v[p.Item1]) + (y[p.Item2] * v[p.Item2])) / (y[p.Item1] + y[p.Item2])).Magnitude);
        Assert.Equal(Math.Max(star.Magnitude, open), analysis.WorkingVoltageV("N", "star"), 1e-9);
    }

    // Common practice, no source: the line current of a balanced delta is √3 times that of one load. Worked here: each load has 230 √3 V over
    // 100 ohm, so the line has √3 · 230 √3 / 100 = 6.9 A.
    [Fact]
    public void Currents_DeltaBehindOneContact_AreTheLineCurrent()
    {
        CircuitAnalysis analysis = Three().Land("ring", "u", "L1", (10, 200)).Ohms("a", "u", "L2", 100).Ohms("b", "L2", "L3", 100).Ohms("c", "L3", "u", 100).Analyse();
        Assert.Equal(3 * 230 / 100.0, analysis.Currents.Contacts[0].CarriedA, 1e-9);
        Assert.Equal(3 * 230 / 100.0, analysis.Currents.Contacts[0].BrokenA, 1e-9);
    }

    [Fact]
    public void Load_BetweenTwoLines_IsRatedLineToLine()
    {
        // 400 W at 398.4 V are 396.75 ohm; half a line voltage, 199 V, is half of it: neither on nor off.
        CircuitAnalysis analysis = Three().Land("ring", "u", "L1", (10, 200)).Watts("a", "u", "L2", 400).Analyse();
        int on = Enumerable.Range(0, analysis.Intervals.Count).First(i => analysis.Intervals[i].Closed.Count > 0);
        Assert.Equal(400 / (230 * Math.Sqrt(3)), analysis.Currents.Contacts[0].CarriedA, 1e-9);
        Assert.Equal(LoadState.On, analysis.State(on, 0).Loads[0]);

        // The same two in series from L1 to L2 with ratings of their own.
        CircuitAnalysis half = Three().Ohms("a", "L1", "m", 100).RateAt(400).Ohms("b", "m", "L2", 100).RateAt(230).Analyse();
        Assert.Equal([LoadState.Undecided, LoadState.On], half.State(0, 0).Loads);
    }

    [Fact]
    public void Shorts_LineToLineAndLineToNeutral_AreErrorsWithTheirPath()
    {
        CircuitAnalysis analysis = Three().Land("change", "L2", "L1", (10, 20)).Land("drop", "N", "L3", (30, 40)).Ohms("a", "L1", "N", 100).Analyse();
        string[] shorts = [.. analysis.Findings.Where(f => f.Code is "circuit.short").Select(f => f.Message)];
        Assert.Equal(2, shorts.Length);
        Assert.Contains(shorts, m => m.StartsWith("L1 is joined to L2 by change ring, from 10.0 s", StringComparison.Ordinal));
        Assert.Contains(shorts, m => m.StartsWith("L3 is joined to N or E by drop ring, from 30.0 s", StringComparison.Ordinal));
        Assert.All(analysis.Findings.Where(f => f.Code is "circuit.short"), f => Assert.Equal(FindingSeverity.Error, f.Severity));
    }

    [Fact]
    public void Interlock_UnderAShortOfOneLine_IsNotCalledProved()
    {
        // The valve on L1 shorts out and L1's fuse opens: the heater on L2 is fed all the same.
        CircuitAnalysis analysis = Three().Land("mist", "m", "L1", (10, 20)).Watts("valve", "m", "N", 7).Watts("heater", "h", "N", 100).Input("stat", "h", "L2")
            .Interlock(new InterlockBrief("no heat while misting", InterlockClaim.NeverOn, ["heater"]) { WhileClosed = ["mist"], WhileOpen = ["stat"], Faults = FaultDepth.Single })
            .Analyse();
        FaultEffect shorted = analysis.Faults.Single(f => f.Fault is { Kind: CircuitFaultKind.LoadShorted, Subject: "valve" });
        Assert.Contains(shorted.Effects, e => e.Load is "heater" && e.Change.HasFlag(LoadChange.Undecided));
        Assert.NotEqual(InterlockVerdict.Holds, analysis.Interlocks[0].Verdict);
    }

    [Fact]
    public void Faults_OneLineOpen_IsAmongThem()
    {
        CircuitAnalysis analysis = Three().Ohms("a", "L1", "N", 100).Ohms("b", "L2", "N", 100).Analyse();
        FaultEffect open = analysis.Faults.Single(f => f.Fault is { Kind: CircuitFaultKind.LineOpen, Subject: "L2" });
        Assert.Equal(["b"], open.Effects.Select(e => e.Load), StringComparer.Ordinal);
        Assert.DoesNotContain(new CircuitBuilder().Always("x").Ohms("a", "x", "N", 100).Analyse().Faults, f => f.Fault.Kind == CircuitFaultKind.LineOpen);
    }

    // What was wrong: no line led to these nets, every potential was 0 V, and 1.5 mm of creepage passed for the 6.3 mm of 400 V.
    [Fact]
    public void WorkingVoltage_NetsThatNoLineLeadsTo_AreErrorsAndNotZeroVolts()
    {
        CircuitAnalysis analysis = new CircuitBuilder { IsLands = true }.Ohms("a", "L1", "N", 100).Ohms("b", "L2", "N", 100).Watts("lamp", "L", "N", 7).Analyse();
        Finding[] errors = [.. analysis.Findings.Where(f => f.Code is "circuit.no-source")];
        Assert.Equal(2, errors.Length);
        Assert.All(errors, f => Assert.Equal(FindingSeverity.Error, f.Severity));
        Assert.Contains("'L1' of load 'a'", errors[0].Message, StringComparison.Ordinal);
        Assert.Equal(230, analysis.WorkingVoltageV("L1", "L2"));
        Assert.Equal(230, analysis.WorkingVoltageV("L1", "N"));
        Assert.Equal(230, analysis.WorkingVoltageV("E", "L2"));
    }

    [Fact]
    public void WorkingVoltage_WheelFedFromANetThatNothingTiesToALine_IsTheHighest()
    {
        CircuitAnalysis one = new CircuitBuilder { FeedNet = "P" }.Ring("mist", (10, 20)).Watts("valve", "mist", "N", 7).Analyse();
        Assert.Contains(one.Findings, f => f.Code is "circuit.no-source" && f.Message.Contains("'P' of the feed", StringComparison.Ordinal));
        Assert.Equal(230, one.WorkingVoltageV("P", "mist"));

        CircuitAnalysis three = new CircuitBuilder { Lines = ["L1", "L2", "L3"], FeedNet = "P" }.Ring("mist", (10, 20)).Watts("valve", "mist", "N", 7).Analyse();
        Assert.Equal(230 * Math.Sqrt(3), three.WorkingVoltageV("N", "mist"), 1e-9);
        Assert.Equal(230 * Math.Sqrt(3), three.WorkingVoltageV("L2", "P"), 1e-9);

        // A load or an input that leads on is enough.
        CircuitAnalysis fed = new CircuitBuilder { FeedNet = "P" }.Ring("mist", (10, 20)).Watts("valve", "mist", "N", 7).Input("main", "L", "P").Analyse();
        Assert.DoesNotContain(fed.Findings, f => f.Code is "circuit.no-source");
    }

    [Fact]
    public void WorkingVoltage_NetOfALivePartOnly_IsTheHighestWithANote()
    {
        PartBrief bar = new("bus bar", PartKind.Live, "aux", new Outline(Contour.Circle(Point.Origin, 1)), -10, -5);
        PartBrief knob = new("knob", PartKind.Touchable, "knob", bar.Outline, 5, 10);
        CircuitBuilder Circuit(double tailOhm) => new CircuitBuilder { Lines = ["L1", "L2", "L3"], FeedNet = "L1", Parts = [bar, knob] }
            .Always("x").Ohms("lamp", "x", "a", 50).Ohms("coil", "a", "b", 0, 100).Ohms("capacitor", "b", "N", 0, tailOhm);
        CircuitAnalysis analysis = Circuit(-1000).Analyse();
        Finding note = analysis.Findings.Single(f => f.Code is "circuit.outside-net");
        Assert.Equal(FindingSeverity.Note, note.Severity);
        Assert.Contains("'aux' of part 'bus bar'", note.Message, StringComparison.Ordinal);
        Assert.Equal(230 * Math.Sqrt(3), analysis.WorkingVoltageV("L1", "aux"), 1e-9);
        Assert.Equal(230 * Math.Sqrt(3), analysis.WorkingVoltageV("N", "aux"), 1e-9);
        Assert.Equal(230, analysis.WorkingVoltageV("L1", "knob"), 1e-9);

        // Near resonance (worked here: 50 + j100 − j100, 4.6 A): 460 V to what a person can touch, and not the supply's 230.
        Assert.Equal(460, Circuit(-100).Analyse().WorkingVoltageV("b", "knob"), 1e-7);
    }

    [Fact]
    public void WorkingVoltage_WithoutLoadsInputsAndMotor_IsTheHighestWithANote()
    {
        CircuitAnalysis analysis = new CircuitBuilder { Lines = ["L1", "L2", "L3"], FeedNet = "L1" }.Ring("a", (10, 20)).Ring("b", (30, 40)).Analyse();
        Assert.All(analysis.WorkingVoltages, v => Assert.Equal(230 * Math.Sqrt(3), v.VoltageV, 1e-9));
        Assert.Contains(analysis.Findings, f => f is { Code: "circuit.none", Severity: FindingSeverity.Note });
        Assert.DoesNotContain(analysis.Findings, f => f.Code is "circuit.no-source");
    }

    [Fact]
    public void Resonance_WithoutResistance_IsAnErrorForItsVoltagesHaveNoBound()
    {
        CircuitAnalysis analysis = new CircuitBuilder().Always("x").Ohms("coil", "x", "m", 0, 100).Ohms("capacitor", "m", "N", 0, -100).Analyse();
        Assert.Contains(analysis.Findings, f => f is { Code: "circuit.resonance", Severity: FindingSeverity.Error });
    }
}
