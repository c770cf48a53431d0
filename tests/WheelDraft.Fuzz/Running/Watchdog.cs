using System.Diagnostics;

namespace WheelDraft.Fuzz;

/// <summary>Measures the case at work from another thread, and ends the process when it does not end: the ledger then holds the case.</summary>
/// <remarks>Processor time counts, so that a busy machine makes no case slow; wall time only where a case waits for something.</remarks>
internal sealed class Watchdog : IDisposable
{
    /// <summary>Exit status after a case that did not end.</summary>
    public const int HungStatus = 70;

    /// <summary>Most processor time of a case that is worked out once: two seconds, unless a run is told otherwise.</summary>
    public static TimeSpan MostTime { get; set; } = TimeSpan.FromSeconds(2);

    // Given up: long enough to tell a slow case from one that never ends.
    private static readonly TimeSpan EndTime = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan EndWall = TimeSpan.FromSeconds(60);

    private readonly Timer _timer;
    private readonly Lock _gate = new();
    private TimeSpan _begun;
    private long _wall;
    private bool _running;

    public Watchdog() => _timer = new Timer(_ => Look(), null, 100, 100);

    /// <summary>A case begins.</summary>
    public void Begin()
    {
        lock (_gate)
        {
            (_begun, _wall, _running) = (Environment.CpuUsage.TotalTime, Stopwatch.GetTimestamp(), true);
        }
    }

    /// <summary>It has ended; the processor time that it took.</summary>
    public TimeSpan End()
    {
        lock (_gate)
        {
            _running = false;
            return Environment.CpuUsage.TotalTime - _begun;
        }
    }

    public void Dispose() => _timer.Dispose();

    private void Look()
    {
        lock (_gate)
        {
            if (_running && (Environment.CpuUsage.TotalTime - _begun > EndTime || Stopwatch.GetElapsedTime(_wall) > EndWall))
            {
                Console.Error.WriteLine($"hung: {Stage.Now}");
                Environment.Exit(HungStatus);
            }
        }
    }
}
