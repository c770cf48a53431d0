using System.CommandLine;

namespace WheelDraft.Cli;

/// <summary>A page on this machine that redraws whenever the parameter file is saved.</summary>
internal sealed class WatchCommand : ICommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "Parameter file" };
    private WatchedDesign? _now;

    /// <inheritdoc/>
    public Command Describe() => new("watch", "Shows a parameter file on a local page that redraws when the file is saved") { _file };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        string named = parsed.GetRequiredValue(_file);
        string path = context.PathOf(named);

        // A file that cannot be read now is a mistyped name; one that goes later is an editor at work.
        _ = ParameterFile.BytesToWatch(named, context);
        _now = WatchedDesign.Read(path, null);
        using FileWatch watch = new(path, () => Reread(path));
        WatchServer.Run(Path.GetFileName(path), () => Volatile.Read(ref _now)!, address => ShowAddress(address, context), context.Stop);
        return ExitStatus.Interrupted;
    }

    private static void ShowAddress(string address, CommandContext context)
    {
        if (context.Json)
        {
            context.WriteJson(json =>
            {
                json.WriteStartObject();
                json.WriteString("address", address);
                json.WriteEndObject();
            });
        }
        else
        {
            context.Out.WriteLine(address);
        }

        context.Out.Flush();
        context.Say("Open this address in a browser; Ctrl-C ends.");
    }

    private void Reread(string path)
    {
        WatchedDesign before = Volatile.Read(ref _now)!;
        Volatile.Write(ref _now, WatchedDesign.Read(path, before));
        before.GiveWay();
    }
}
