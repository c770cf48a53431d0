using System.Globalization;

namespace WheelDraft.Cli;

/// <summary>The words of one piece of work that runs beside others, kept until it is its turn to be heard.</summary>
internal sealed class AsideWords(CommandContext context) : IDisposable
{
    private readonly StringWriter _out = new(CultureInfo.InvariantCulture) { NewLine = context.Out.NewLine };
    private readonly StringWriter _error = new(CultureInfo.InvariantCulture) { NewLine = context.Error.NewLine };
    private CommandContext? _own;

    /// <summary>A context whose words are kept here.</summary>
    public CommandContext Context => _own ??= context.Beside(_out, _error);

    /// <summary>Says them where the first context does: messages, then results.</summary>
    public void Say()
    {
        context.Terminal.Write(_error.ToString());
        context.Terminal.Flush();
        context.Results.Write(_out.ToString());
        context.HasShownCodes |= Context.HasShownCodes;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _out.Dispose();
        _error.Dispose();
    }
}
