using System.Globalization;

namespace WheelDraft.Cli;

/// <summary>A count on one line of the terminal, gone when the work is done: see <see cref="OverwrittenLine"/>.</summary>
internal sealed class Progress(CommandContext context, string what) : IDisposable
{
    private readonly OverwrittenLine _line = new(context);
    private int _done;

    /// <summary>How long work runs before it is reported.</summary>
    public TimeSpan Patience
    {
        get => _line.Patience;
        init => _line = new(context) { Patience = value };
    }

    /// <summary>One more is done.</summary>
    public void Step() => Reach(_done + 1);

    /// <summary>So many are done.</summary>
    public void Reach(int done)
    {
        _done = done;
        _line.Show(() => string.Create(CultureInfo.InvariantCulture, $"{_done} {what}"));
    }

    /// <inheritdoc/>
    public void Dispose() => _line.Clear();
}
