using System.Diagnostics;

namespace WheelDraft.Cli;

/// <summary>One line of the terminal that is written over itself, not too often, and is gone when the work is done.</summary>
/// <remarks>Shows nothing where standard error is not a terminal, or with --quiet, or for work that is done before patience ends.</remarks>
internal sealed class OverwrittenLine(CommandContext context)
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

    private long _begun = Stopwatch.GetTimestamp();
    private long _shown;
    private int _width;

    /// <summary>How long work runs before it is reported.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromMilliseconds(500);

    /// <summary>Other work begins.</summary>
    public void Begin() => (_begun, _shown) = (Stopwatch.GetTimestamp(), 0);

    /// <summary>Shows a line where it is time for one.</summary>
    public void Show(Func<string> words)
    {
        if (!context.ShowsProgress || Stopwatch.GetElapsedTime(_begun) < Patience || (_shown > 0 && Stopwatch.GetElapsedTime(_shown) < Pause))
        {
            return;
        }

        _shown = Stopwatch.GetTimestamp();
        string line = words();
        context.Terminal.Write('\r' + line.PadRight(_width));
        context.Terminal.Flush();
        _width = Math.Max(_width, line.Length);
    }

    /// <summary>Takes the line away.</summary>
    public void Clear()
    {
        if (_width > 0)
        {
            context.Terminal.Write('\r' + new string(' ', _width) + '\r');
            context.Terminal.Flush();
            _width = 0;
        }
    }
}
