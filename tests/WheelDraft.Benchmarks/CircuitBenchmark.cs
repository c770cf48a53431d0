using System.Diagnostics;
using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Benchmarks;

/// <summary>Time and memory of the circuit's proof: 40 outputs, 8 inputs, 200 intervals, six coupled nets to a block, all faults.</summary>
public static class CircuitBenchmark
{
    /// <summary>Runs it and writes the figures.</summary>
    public static void Run(TextWriter to)
    {
        ArgumentNullException.ThrowIfNull(to);
        CircuitAnalysis.Of(Large(periodsPerOutput: 1, inputs: 2));
        foreach ((int periods, int inputs) in new[] { (1, 4), (1, 8), (3, 8) })
        {
            Measure(to, Large(periods, inputs));
        }

        // Harder than promised: the whole wheel hangs on an input, so with it open every load is in one section.
        Measure(to, Large(3, 8, "in0 out"));
    }

    private static void Measure(TextWriter to, CircuitRequest request)
    {
        // Processor time as well: on a shared machine the clock on the wall also counts the others.
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        Stopwatch watch = Stopwatch.StartNew();
        CircuitAnalysis analysis = CircuitAnalysis.Of(request);
        watch.Stop();
        double processorS = (Process.GetCurrentProcess().TotalProcessorTime - before).TotalSeconds;
        double states = (double)analysis.Positions * (1 << analysis.Inputs.Count) * (analysis.Faults.Count + 1);
        to.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"circuit: {request.Contacts.Count} outputs, {analysis.Inputs.Count} inputs, {analysis.Intervals.Count} intervals ({analysis.Positions} positions), {analysis.Faults.Count} faults, {states:0} states: {watch.Elapsed.TotalSeconds:0.00} s ({processorS:0.00} s of processor), {processorS / states * 1e9:0} ns a state, peak working set {Process.GetCurrentProcess().PeakWorkingSet64 / 1048576.0:0} MiB"));
        to.WriteLine($"  interlocks: {string.Join(", ", analysis.Interlocks.Select(i => $"{i.Name} {i.Verdict}"))}");
    }

    /// <summary>A timer with 40 outputs in eight blocks of five coupled nets and one of its own, each block with an input.</summary>
    public static CircuitRequest Large(int periodsPerOutput, int inputs, string feedNet = "L")
    {
        const int outputs = 40;
        List<ContactSchedule> contacts = [];
        List<LoadBrief> loads = [];
        List<InputBrief> switches = [];
        for (int o = 0; o < outputs; o++)
        {
            string name = string.Create(CultureInfo.InvariantCulture, $"out{o}");
            contacts.Add(o == 0 ? Hold(name, feedNet) : Spread(name, o, periodsPerOutput, feedNet));
            if (o > 0)
            {
                // Every fifth load ties its block's nets to the neighbour's, the others hang on the block's middle net.
                string middle = string.Create(CultureInfo.InvariantCulture, $"mid{o / 5}");
                loads.Add(new LoadBrief(string.Create(CultureInfo.InvariantCulture, $"load{o}"), name, o % 5 == 4 ? "N" : middle, new RatedPower(5 + o, 0.6 + (0.01 * o)), 0.8, 0.2));
            }
        }

        for (int b = 0; b < 8; b++)
        {
            loads.Add(new LoadBrief(string.Create(CultureInfo.InvariantCulture, $"base{b}"), string.Create(CultureInfo.InvariantCulture, $"mid{b}"), "N", new RatedPower(100, 1), 0.8, 0.2));
        }

        for (int i = 0; i < inputs; i++)
        {
            string name = string.Create(CultureInfo.InvariantCulture, $"in{i}");
            switches.Add(i == 0 && feedNet is not "L" ? new InputBrief(name, "L", feedNet, null)
                : i == 0
                ? new InputBrief(name, "L", "out0", null)
                : new InputBrief(name, string.Create(CultureInfo.InvariantCulture, $"mid{i}"), "N", null));
        }

        return new CircuitRequest(BriefOf(loads, switches, feedNet), contacts) { Bridges = Neighbours(outputs) };
    }

    private static ContactSchedule Hold(string name, string feedNet) =>
        ContactSchedule.Exact(name, name, feedNet, CircleArc.Between(Angles.RadFromDeg(3), Angles.RadFromDeg(359)));

    private static ContactSchedule Spread(string name, int o, int periods, string feedNet)
    {
        EdgeBand band = new(Angles.RadFromDeg(0.3), Angles.RadFromDeg(0.3));
        List<MadePeriod> made = [];
        for (int p = 0; p < periods; p++)
        {
            double from = 5 + (((o * 37) + (p * 117)) % 340) + (0.013 * o);
            made.Add(new MadePeriod(CircleArc.Sweep(Angles.RadFromDeg(from), Angles.RadFromDeg(4.4 + (0.07 * o))), band, band));
        }

        return new ContactSchedule(name, name, feedNet, [.. made.OrderBy(m => m.Closed.StartRad)]);
    }

    private static List<BridgedNets> Neighbours(int outputs) => [.. Enumerable.Range(1, outputs - 2).Select(o => new BridgedNets(
        string.Create(CultureInfo.InvariantCulture, $"out{o}"),
        string.Create(CultureInfo.InvariantCulture, $"out{o + 1}")))];

    /// <summary>What every circuit of the benchmarks shares.</summary>
    internal static Brief BriefOf(List<LoadBrief> loads, List<InputBrief> inputs, string feedNet) => new()
    {
        Title = "Benchmark",
        Supply = new SupplyBrief(230, 50, 0.01, OvervoltageCategory.II),
        Environment = new EnvironmentBrief(3, 0, Condensation: false),
        Drive = new DriveBrief(180, Turning.Clockwise, 0, new Coast(0, 0.01)),
        Spacing = new SpacingBrief(SpacingStandard.Iec60664, Insulation.Functional, Insulation.Basic, Insulation.Reinforced, null, 0, GrooveX.Full),
        Wheel = new WheelBrief(WheelConstruction.Windowed, 0.5, "C11000-H02", new BoreBrief(6, null, 0), ShaftKind.Insulating, 1.2),
        Carrier = new CarrierBrief(MaterialGroup.IIIa, 3, 0),
        Process = new ProcessBrief(null, 0, 0.05, 0.5, 0.5, 0.5, 0.15),
        Feed = new FeedBrief(feedNet, 0, new ContactBrief(0.8, 3, 0.8, null, null), 0.1),
        Outputs = [.. Enumerable.Range(0, 40).Select(o => string.Create(CultureInfo.InvariantCulture, $"out{o}")).Select(n => new OutputBrief(n, n, ProgrammeBrief.Always, new ContactBrief(0.4, 2, 0.4, null, null)))],
        Loads = loads,
        Inputs = inputs,
        DriveMotor = new LoadBrief("motor", "out0", "N", new RatedPower(3, 1), 0.8, 0.2),
        Interlocks =
        [
            new InterlockBrief("base0 off early", InterlockClaim.NeverOn, ["base0"]) { Between = CircleArc.Sweep(0, 0.01), Faults = FaultDepth.Single },
            new InterlockBrief("base1 off while in1", InterlockClaim.NeverOn, ["base1"]) { WhileClosed = ["in1"], Faults = FaultDepth.Single },
            new InterlockBrief("load4 with its ring", InterlockClaim.AlwaysOn, ["load4"]) { WhileClosed = ["out4"] },
            new InterlockBrief("never both", InterlockClaim.NeverOn, ["load14", "load24"]) { WhileClosed = ["out14", "out24"], Faults = FaultDepth.Single },
        ],
    };
}
