using System.Diagnostics;
using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Benchmarks;

/// <summary>Time and memory of the circuit's proof where inputs are many: the feed behind one of them, or parts that share nothing but lines and N.</summary>
/// <remarks>Each circuit in a process of its own, because the peak of memory is the process's.</remarks>
public static class InputBenchmark
{
    private static readonly Timer[] Timers =
    [
        new("feed behind an input", Parts: 5, InputsOfEach: 2, RingsOfEach: 3, IsFedByInput: true),
        new("feed behind an input", Parts: 3, InputsOfEach: 4, RingsOfEach: 2, IsFedByInput: true),
        new("feed behind an input", Parts: 1, InputsOfEach: 14, RingsOfEach: 1, IsFedByInput: true),
        new("independent parts", Parts: 3, InputsOfEach: 4, RingsOfEach: 2, IsFedByInput: false),
        new("independent parts", Parts: 4, InputsOfEach: 4, RingsOfEach: 0, IsFedByInput: false),
        new("independent parts", Parts: 4, InputsOfEach: 4, RingsOfEach: 10, IsFedByInput: false),
        new("independent parts", Parts: 6, InputsOfEach: 4, RingsOfEach: 6, IsFedByInput: false),
        new("independent parts, a start past the feed", Parts: 6, InputsOfEach: 4, RingsOfEach: 6, IsFedByInput: false, HasStart: true),
    ];

    /// <summary>Runs all, each in a process of its own, and writes the figures.</summary>
    public static void Run(TextWriter to)
    {
        ArgumentNullException.ThrowIfNull(to);
        for (int i = 0; i < Timers.Length; i++)
        {
            using Process process = Process.Start(new ProcessStartInfo(Environment.ProcessPath!, ["inputs-timer", i.ToString(CultureInfo.InvariantCulture)]) { RedirectStandardOutput = true, UseShellExecute = false })!;
            to.Write(process.StandardOutput.ReadToEnd());
            process.WaitForExit();
        }
    }

    /// <summary>Measures one timer and writes its figures.</summary>
    public static void Measure(int index, TextWriter to)
    {
        ArgumentNullException.ThrowIfNull(to);
        CircuitAnalysis.Of(CircuitBenchmark.Large(periodsPerOutput: 1, inputs: 2));
        TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
        long emptyBytes = Process.GetCurrentProcess().PeakWorkingSet64;
        CircuitAnalysis analysis = CircuitAnalysis.Of(Timers[index].Request());
        double processorS = (Process.GetCurrentProcess().TotalProcessorTime - before).TotalSeconds;
        double peakMiB = Process.GetCurrentProcess().PeakWorkingSet64 / 1048576.0;
        to.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"circuit, {Timers[index].Name}: {analysis.Inputs.Count} inputs, {analysis.Intervals.Count} intervals, {analysis.Faults.Count} faults: {processorS:0.00} s of processor, peak working set {peakMiB:0} MiB (before it {emptyBytes / 1048576.0:0} MiB); {string.Join(", ", analysis.Interlocks.Select(i => i.Verdict))}"));
    }

    private sealed record Timer(string Name, int Parts, int InputsOfEach, int RingsOfEach, bool IsFedByInput, bool HasStart = false)
    {
        // Of each part: rings that feed its middle net through a load, inputs that lead loads from there to N, and a ring of the motor's.
        public CircuitRequest Request()
        {
            string feed = IsFedByInput ? "feed" : "L";
            List<ContactSchedule> contacts = [Hold(feed)];
            List<LoadBrief> loads = [];
            List<InputBrief> inputs = IsFedByInput ? [new InputBrief("door", "L", feed, null)] : HasStart ? [new InputBrief("start", "L", "out0", null)] : [];
            for (int p = 0; p < Parts; p++)
            {
                string middle = Numbered("mid", p);
                loads.Add(Watts(Numbered("base", p), RingsOfEach == 0 ? "L" : middle, RingsOfEach == 0 ? middle : "N", 60 + p));
                for (int r = 0; r < RingsOfEach; r++)
                {
                    string ring = Numbered("ring", p, r);
                    contacts.Add(Ring(ring, (p * RingsOfEach) + r, Parts * RingsOfEach, feed));
                    loads.Add(Watts($"{ring} coil", ring, middle, 40 + r));
                }

                for (int i = 0; i < InputsOfEach - (IsFedByInput && p == 0 ? 1 : 0); i++)
                {
                    string leg = Numbered("leg", p, i);
                    inputs.Add(new InputBrief(leg, middle, leg, null));
                    loads.Add(Watts($"{leg} lamp", leg, "N", 5 + i));
                }
            }

            Brief brief = CircuitBenchmark.BriefOf(loads, inputs, feed) with
            {
                Outputs = [.. contacts.Select(c => new OutputBrief(c.Output, c.WiperNet, ProgrammeBrief.Always, new ContactBrief(0.4, 2, 0.4, null, null)))],
                Interlocks = [.. Enumerable.Range(0, Parts).Select(p => new InterlockBrief(Numbered("lamp dark while ", p), InterlockClaim.NeverOn, [$"{Numbered("leg", p, 0)} lamp"]) { WhileOpen = [Numbered("leg", p, 0)], Faults = FaultDepth.Single })],
            };
            return new CircuitRequest(brief, contacts) { Bridges = [new BridgedNets("mid0", Parts > 1 ? "mid1" : "leg0-0")] };
        }

        private static string Numbered(string kind, int index) => string.Create(CultureInfo.InvariantCulture, $"{kind}{index}");

        private static string Numbered(string kind, int part, int index) => string.Create(CultureInfo.InvariantCulture, $"{kind}{part}-{index}");

        private static LoadBrief Watts(string name, string from, string to, double powerW) => new(name, from, to, new RatedPower(powerW, 0.8), 0.6, 0.2);

        // The motor's ring: with no other ring it never opens, so that the turn has one interval.
        private ContactSchedule Hold(string feed) =>
            ContactSchedule.Exact("out0", "out0", feed, RingsOfEach == 0 ? CircleArc.Full : CircleArc.Between(Angles.RadFromDeg(3), Angles.RadFromDeg(359)));

        private static ContactSchedule Ring(string name, int index, int of, string feed)
        {
            double from = 10 + (330.0 * index / of);
            return ContactSchedule.Exact(name, name, feed, CircleArc.Sweep(Angles.RadFromDeg(from), Angles.RadFromDeg(400.0 / of % 300)));
        }
    }
}
