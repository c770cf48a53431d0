using System.Diagnostics;
using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>Shows on a terminal how far work inside a design is, on a line that is written over itself and cleared at its end.</summary>
internal sealed class ShareLine(CommandContext context)
{
    private static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(500);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(100);

    private string _what = "";
    private long _begun;
    private long _shown;
    private int _width;

    /// <summary>Attention to long work for a command: its progress, and its end by Ctrl-C.</summary>
    public static LongWork For(CommandContext context) => new(new ShareLine(context).Show, context.Stop);

    private void Show(string what, double share)
    {
        if (!context.ShowsProgress)
        {
            return;
        }

        if (!string.Equals(what, _what, StringComparison.Ordinal))
        {
            (_what, _begun, _shown) = (what, Stopwatch.GetTimestamp(), 0);
        }

        if (share >= 1)
        {
            Clear();
        }
        else if (Stopwatch.GetElapsedTime(_begun) >= Patience && (_shown == 0 || Stopwatch.GetElapsedTime(_shown) >= Pause))
        {
            _shown = Stopwatch.GetTimestamp();
            string line = string.Create(CultureInfo.InvariantCulture, $"{what}: {100 * share:0} %");
            context.Terminal.Write('\r' + line.PadRight(_width));
            context.Terminal.Flush();
            _width = Math.Max(_width, line.Length);
        }
    }

    private void Clear()
    {
        if (_width > 0)
        {
            context.Terminal.Write('\r' + new string(' ', _width) + '\r');
            context.Terminal.Flush();
            _width = 0;
        }
    }
}
