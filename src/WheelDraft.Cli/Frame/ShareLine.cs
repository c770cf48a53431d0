using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>Shows on a terminal how far work inside a design is: see <see cref="OverwrittenLine"/>.</summary>
internal sealed class ShareLine(CommandContext context)
{
    private readonly OverwrittenLine _line = new(context);
    private string _what = "";

    /// <summary>Attention to long work for a command: its progress, and its end by Ctrl-C.</summary>
    public static LongWork For(CommandContext context) => new(new ShareLine(context).Show, context.Stop);

    private void Show(string what, double share)
    {
        if (!string.Equals(what, _what, StringComparison.Ordinal))
        {
            _what = what;
            _line.Begin();
        }

        if (share >= 1)
        {
            _line.Clear();
        }
        else
        {
            _line.Show(() => string.Create(CultureInfo.InvariantCulture, $"{what}: {100 * share:0} %"));
        }
    }
}
