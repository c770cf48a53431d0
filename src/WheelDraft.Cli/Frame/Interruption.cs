using System.Runtime.InteropServices;

namespace WheelDraft.Cli;

/// <summary>Turns Ctrl-C and a termination signal into a clean stop within a second.</summary>
/// <remarks>The first signal cancels; work that does not look up in time is cut off, but never while a set of files is being put in place
/// (<see cref="FileSet"/> holds <see cref="FileSet.Gate"/> then).</remarks>
internal sealed class Interruption : IDisposable
{
    /// <summary>Time that work has to stop by itself; below the promised second, with room for leaving.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(600);

    private readonly CancellationTokenSource _stop;
    private readonly PosixSignalRegistration _interrupt;
    private readonly PosixSignalRegistration _terminate;
    private Timer? _cut;

    /// <summary>Watches for the signals until disposed.</summary>
    public Interruption(CancellationTokenSource stop)
    {
        _stop = stop;
        _interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, OnSignal);
        _terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, OnSignal);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _interrupt.Dispose();
        _terminate.Dispose();
        _cut?.Dispose();
    }

    private void OnSignal(PosixSignalContext signal)
    {
        signal.Cancel = true;
        _cut ??= new Timer(_ => CutOff(), null, Patience, Timeout.InfiniteTimeSpan);
        _stop.Cancel();
    }

    private static void CutOff()
    {
        lock (FileSet.Gate)
        {
            Environment.Exit(ExitStatus.Interrupted);
        }
    }
}
