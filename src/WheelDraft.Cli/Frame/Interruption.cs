using System.Runtime.InteropServices;

namespace WheelDraft.Cli;

/// <summary>Turns Ctrl-C, a termination signal and a closed terminal into a clean stop within a second.</summary>
/// <remarks>The first signal cancels; work that does not look up in time is cut off, but never while a set of files is being put in place
/// (<see cref="FileSet"/> holds <see cref="TemporaryFiles.Gate"/> then); its temporary files go first.</remarks>
internal sealed class Interruption : IDisposable
{
    /// <summary>Time that work has to stop by itself; below the promised second, with room for leaving.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(600);

    private readonly CancellationTokenSource _stop;
    private readonly PosixSignalRegistration _interrupt;
    private readonly PosixSignalRegistration _terminate;
    private readonly PosixSignalRegistration _hangUp;
    private Timer? _cut;

    /// <summary>Watches for the signals until disposed.</summary>
    public Interruption(CancellationTokenSource stop)
    {
        _stop = stop;
        _interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, OnSignal);
        _terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, OnSignal);
        _hangUp = PosixSignalRegistration.Create(PosixSignal.SIGHUP, OnSignal);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _interrupt.Dispose();
        _terminate.Dispose();
        _hangUp.Dispose();
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
        lock (TemporaryFiles.Gate)
        {
            TemporaryFiles.DiscardAll();
            Environment.Exit(ExitStatus.Interrupted);
        }
    }
}
