using System.Diagnostics;
using System.Globalization;

namespace WheelDraft.Cli;

/// <summary>A count on one line of the terminal that is written over itself, and is gone when the work is done.</summary>
/// <remarks>Shows nothing where standard error is not a terminal, or with --quiet, or for work of less than half a second.</remarks>
internal sealed class Progress(CommandContext context, string what) : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

    /// <summary>How long work runs before it is reported.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromMilliseconds(500);

    private readonly long _begun = Stopwatch.GetTimestamp();
    private long _shown;
    private int _done;
    private int _width;

    /// <summary>One more is done.</summary>
    public void Step() => Reach(_done + 1);

    /// <summary>So many are done.</summary>
    public void Reach(int done)
    {
        _done = done;
        if (!context.ShowsProgress || Stopwatch.GetElapsedTime(_begun) < Patience || (_shown > 0 && Stopwatch.GetElapsedTime(_shown) < Pause))
        {
            return;
        }

        _shown = Stopwatch.GetTimestamp();
        string line = string.Create(CultureInfo.InvariantCulture, $"{_done} {what}");
        context.Terminal.Write('\r' + line);
        context.Terminal.Flush();
        _width = Math.Max(_width, line.Length);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_width > 0)
        {
            context.Terminal.Write('\r' + new string(' ', _width) + '\r');
            context.Terminal.Flush();
        }
    }
}
