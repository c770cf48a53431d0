using System.Diagnostics;
using System.Globalization;

namespace WheelDraft.Fuzz;

/// <summary>Starts workers on an instrumented copy of the program, starts them again after a case that ended one, and counts.</summary>
internal sealed class Supervisor(string folder, ulong seed, int seconds)
{
    // The promise: no case takes more memory. The runtime itself refuses to go beyond.
    private const string MemoryLimit = "0x20000000";

    // A worker that dies this often has met something that fuzzing cannot go round.
    private const int MostDeaths = 2000;

    private readonly Failures _failures = new(folder);

    /// <summary>Runs targets, each so many cases, side by side.</summary>
    /// <returns>Whether every case was run and none failed in a way that is not known.</returns>
    public bool Run(IReadOnlyList<IReadOnlyList<(string Target, long Cases)>> lanes)
    {
        string program = Instruments.CopyTo(Path.Combine(folder, "program"));
        long begun = Stopwatch.GetTimestamp();
        Parallel.ForEach(lanes, lane =>
        {
            foreach ((string target, long cases) in lane)
            {
                One(program, new WorkOrder(folder, target, seed, cases));
            }
        });
        bool good = lanes.SelectMany(l => l).Where(t => t.Cases > 0).Aggregate(true, (sofar, t) => Tell(new WorkOrder(folder, t.Target, seed, t.Cases)) && sofar);
        TellFailures();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{Stopwatch.GetElapsedTime(begun).TotalSeconds:0} s, seed {seed}"));
        return good;
    }

    private void One(string program, WorkOrder order)
    {
        for (int deaths = 0; deaths < MostDeaths; deaths++)
        {
            (int status, string words) = RunWorker(program, order);
            if (status == 0)
            {
                return;
            }

            using Ledger ledger = new(order.LedgerPath);
            string shape = status == Watchdog.HungStatus ? words.Trim() : "crash: " + string.Join(' ', words.Split('\n').Where(l => l.Contains("WheelDraft", StringComparison.Ordinal)).Take(2).Select(Promises.Shape));
            ledger.Add(_failures.IsKnown(shape) ? Count.Known : Count.Failed);
            ledger.Add(Count.Done);
            using Targets targets = new();
            _failures.Add(targets.Named(order.Target), ledger[Count.Number], (shape, words), ledger.Case);
            ledger[Count.Number]++;
        }
    }

    private (int Status, string Words) RunWorker(string program, WorkOrder order)
    {
        ProcessStartInfo start = new("dotnet", [program, "work", order.Folder, order.Target, order.Seed.ToString(CultureInfo.InvariantCulture), order.Cases.ToString(CultureInfo.InvariantCulture), seconds.ToString(CultureInfo.InvariantCulture)]) { RedirectStandardError = true, UseShellExecute = false };
        start.Environment["DOTNET_GCHeapHardLimit"] = MemoryLimit;
        start.Environment["DOTNET_TieredPGO"] = "0";
        start.Environment["DOTNET_DbgEnableMiniDump"] = "0";
        using Process process = Process.Start(start)!;
        string words = process.StandardError.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, words);
    }

    private static bool Tell(WorkOrder order)
    {
        using Ledger l = new(order.LedgerPath);
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{order.Target}: {l[Count.Done]} of {order.Cases} cases; {l[Count.Refused]} refused, {l[Count.RefusedLate]} refused when worked out, {l[Count.Judged]} judged ({l[Count.Written]} written in full, {l[Count.Twice]} twice); {l[Count.Branches]} branches, {l[Count.Kept]} kept; longest {l[Count.LongestUs] / 1e6:0.00} s, most allocated {l[Count.MostAllocated] / 1048576} MiB in all; {l[Count.Failed]} failed, {l[Count.Known]} of a known kind"));
        return l[Count.Done] == order.Cases && l[Count.Failed] == 0;
    }

    private void TellFailures()
    {
        if (!File.Exists(Failures.LogOf(folder)))
        {
            return;
        }

        foreach (IGrouping<string, string[]> alike in File.ReadAllLines(Failures.LogOf(folder)).Select(l => l.Split('\t')).Where(l => l.Length > 3).GroupBy(l => $"{l[0]}: {l[2]}", StringComparer.Ordinal).OrderByDescending(g => g.Count()))
        {
            string known = _failures.IsKnown(alike.First()[2]) ? "known " : "";
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {alike.Count()} times {known}{alike.Key}: {alike.First()[3]} (case {alike.First()[1]})"));
        }
    }
}
