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

    /// <summary>The results kept so far.</summary>
    public string Results => _out.ToString();

    /// <summary>The messages kept so far.</summary>
    public string Messages => _error.ToString();

    /// <summary>Says the messages alone.</summary>
    public void SayMessages()
    {
        context.Terminal.Write(Messages);
        context.Terminal.Flush();
    }

    /// <summary>Says them where the first context does: messages, then results.</summary>
    public void Say()
    {
        SayMessages();
        context.Results.Write(Results);
        context.HasShownCodes |= Context.HasShownCodes;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _out.Dispose();
        _error.Dispose();
    }
}
