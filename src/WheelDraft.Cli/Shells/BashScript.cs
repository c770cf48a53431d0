using System.Globalization;
using System.Text;

namespace WheelDraft.Cli;

/// <summary>The completion script for bash, 4.0 or later.</summary>
internal static class BashScript
{
    /// <summary>The script, LF line ends.</summary>
    public static string Write(CommandWords program)
    {
        StringBuilder script = new("# Completion of wheeldraft for bash. Written by: wheeldraft completion bash\n\n");
        script.Append("_wheeldraft_words() { local IFS=$'\\n'; mapfile -t COMPREPLY < <(compgen -W \"$1\" -- \"$2\"); }\n");
        script.Append("_wheeldraft_files() { local IFS=$'\\n'; mapfile -t COMPREPLY < <(compgen \"$1\" -- \"$2\"); compopt -o filenames 2>/dev/null; }\n\n");
        script.Append("_wheeldraft() {\n    local current=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} path='' word\n    COMPREPLY=()\n");
        script.Append("    for word in \"${COMP_WORDS[@]:1:COMP_CWORD-1}\"; do\n        case \"$path $word\" in\n");
        script.Append(CultureInfo.InvariantCulture, $"            {string.Join(" | ", program.All.Skip(1).Select(c => Quoted(Parent(c) + " " + c.Name)))}) path=\"${{path:+$path }}$word\" ;;\n        esac\n    done\n");
        script.Append("    case \"$path:$before\" in\n");
        foreach ((CommandWords command, OptionWords option) in program.All.SelectMany(c => c.Options.Where(o => o.Value is not null).Select(o => (c, o))))
        {
            script.Append(CultureInfo.InvariantCulture, $"        {string.Join(" | ", option.Names.Select(n => Quoted(command.Path + ":" + n)))}) {Offer(option.Value!)}; return ;;\n");
        }

        script.Append("    esac\n    case \"$path:$current\" in\n");
        foreach (CommandWords command in program.All)
        {
            script.Append(CultureInfo.InvariantCulture, $"        {Quoted(command.Path + ":-")}*) _wheeldraft_words {Lines(command.Options.SelectMany(o => o.Names))} \"$current\" ;;\n");
            script.Append(CultureInfo.InvariantCulture, $"        {Quoted(command.Path + ":")}*) {(command.Parts.Count > 0 ? $"_wheeldraft_words {Lines(command.Parts.Select(p => p.Name))} \"$current\"" : command.Arguments.Count > 0 ? Offer(command.Arguments[^1]) : ":")} ;;\n");
        }

        return script.Append("    esac\n}\n\ncomplete -F _wheeldraft wheeldraft\n").ToString();
    }

    private static string Parent(CommandWords command) => command.Path.Length == command.Name.Length ? "" : command.Path[..^(command.Name.Length + 1)];

    private static string Offer(ValueWords value) => value.Kind switch
    {
        ValueKind.File => "_wheeldraft_files -f \"$current\"",
        ValueKind.Folder => "_wheeldraft_files -d \"$current\"",
        ValueKind.Choice => $"_wheeldraft_words {Lines(value.Choices)} \"$current\"",
        _ => ":",
    };

    private static string Lines(IEnumerable<string> words) => "$'" + string.Join("\\n", words.Select(w => w.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("'", "\\'", StringComparison.Ordinal))) + "'";

    private static string Quoted(string words) => $"'{words.Replace("'", "'\\''", StringComparison.Ordinal)}'";
}
