using System.Globalization;
using System.Text;

namespace WheelDraft.Cli;

/// <summary>The completion script for zsh.</summary>
internal static class ZshScript
{
    /// <summary>The script, LF line ends.</summary>
    public static string Write(CommandWords program)
    {
        StringBuilder script = new("#compdef wheeldraft\n# Completion of wheeldraft for zsh. Written by: wheeldraft completion zsh\n");
        foreach (CommandWords command in program.All)
        {
            One(script, command);
        }

        // Loaded by hand it registers itself; from a folder of $fpath it is the function.
        return script.Append("\nif [[ $zsh_eval_context[-1] == loadautofunc ]]; then\n    _wheeldraft \"$@\"\nelse\n    compdef _wheeldraft wheeldraft\nfi\n").ToString();
    }

    private static void One(StringBuilder script, CommandWords command)
    {
        script.Append(CultureInfo.InvariantCulture, $"\n{Function(command.Path)}() {{\n");
        if (command.Parts.Count > 0)
        {
            script.Append("    local curcontext=\"$curcontext\" state line\n    local -a parts\n");
        }

        script.Append("    _arguments -s").Append(command.Parts.Count > 0 ? " -C" : "");
        foreach (OptionWords option in command.Options)
        {
            script.Append(" \\\n        ").Append(Option(option));
        }

        if (command.Parts.Count == 0)
        {
            foreach (ValueWords argument in command.Arguments)
            {
                script.Append(CultureInfo.InvariantCulture, $" \\\n        {Quoted($"{(argument.IsMany ? "*" : "")}:{Bare(argument.Name)}:{Action(argument)}")}");
            }

            script.Append("\n}\n");
            return;
        }

        script.Append(" \\\n        '1: :->part' \\\n        '*:: :->words'\n    case $state in\n        part)\n            parts=(\n");
        foreach (CommandWords part in command.Parts)
        {
            script.Append(CultureInfo.InvariantCulture, $"                {Quoted($"{part.Name}:{part.About.Replace(":", "\\:", StringComparison.Ordinal)}")}\n");
        }

        script.Append("            )\n            _describe -t commands command parts ;;\n        words)\n            case $words[1] in\n");
        foreach (CommandWords part in command.Parts)
        {
            script.Append(CultureInfo.InvariantCulture, $"                {part.Name}) {Function(part.Path)} ;;\n");
        }

        script.Append("            esac ;;\n    esac\n}\n");
    }

    private static string Option(OptionWords option)
    {
        string value = option.Value is ValueWords words ? $":{Bare(words.Name)}:{Action(words)}" : "";
        string about = $"[{Bare(option.Brief)}]{value}";
        return option.Names.Count == 1 ? Quoted($"{(option.Value is { IsMany: true } ? "*" : "")}{option.Names[0]}{about}")
            : $"{Quoted($"({string.Join(' ', option.Names)})")}{{{string.Join(',', option.Names)}}}{Quoted(about)}";
    }

    private static string Action(ValueWords value) => value.Kind switch
    {
        ValueKind.File => "_files",
        ValueKind.Folder => "_files -/",
        ValueKind.Choice => $"({string.Join(' ', value.Choices.Select(c => c.Replace("\\", "\\\\", StringComparison.Ordinal).Replace(" ", "\\ ", StringComparison.Ordinal)))})",
        _ => " ",
    };

    private static string Function(string path) => "_wheeldraft" + (path.Length == 0 ? "" : "_" + path.Replace(' ', '_').Replace('-', '_'));

    // What stands in a specification may not hold its own marks.
    private static string Bare(string words) => words.Replace("[", "(", StringComparison.Ordinal).Replace("]", ")", StringComparison.Ordinal).Replace(":", "\\:", StringComparison.Ordinal);

    private static string Quoted(string words) => $"'{words.Replace("'", "'\\''", StringComparison.Ordinal)}'";
}
