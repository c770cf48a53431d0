using System.Globalization;
using System.Text;

namespace WheelDraft.Cli;

/// <summary>The completion script for fish.</summary>
internal static class FishScript
{
    /// <summary>The script, LF line ends.</summary>
    public static string Write(CommandWords program)
    {
        StringBuilder script = new("# Completion of wheeldraft for fish. Written by: wheeldraft completion fish\n\ncomplete -c wheeldraft -f\n");
        foreach (CommandWords command in program.All)
        {
            string where = Where(command);
            foreach (CommandWords part in command.Parts)
            {
                script.Append(CultureInfo.InvariantCulture, $"complete -c wheeldraft -n {Quoted(where)} -a {Quoted(part.Name)} -d {Quoted(part.About)}\n");
            }

            foreach (ValueWords argument in command.Arguments.TakeLast(1))
            {
                script.Append(argument.Kind is ValueKind.Free ? "" : string.Create(CultureInfo.InvariantCulture, $"complete -c wheeldraft -n {Quoted(where)}{Values(argument)}\n"));
            }

            foreach (OptionWords option in command.Options)
            {
                script.Append(CultureInfo.InvariantCulture, $"complete -c wheeldraft -n {Quoted(where)}{string.Concat(option.Names.Select(n => n.StartsWith("--", StringComparison.Ordinal) ? $" -l {n[2..]}" : $" -s {n[1..]}"))}{(option.Value is ValueWords value ? (value.Kind is ValueKind.File ? " -r" : " -x") + Values(value) : "")} -d {Quoted(option.Brief)}\n");
            }
        }

        return script.ToString();
    }

    // After all words of its path, and before one of a command below it.
    private static string Where(CommandWords command)
    {
        string seen = string.Join("; and ", command.Path.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(w => $"__fish_seen_subcommand_from {w}"));
        string below = command.Parts.Count == 0 ? "" : $"not __fish_seen_subcommand_from {string.Join(' ', command.Parts.Select(p => p.Name))}";
        return seen.Length > 0 && below.Length > 0 ? $"{seen}; and {below}" : seen + below;
    }

    private static string Values(ValueWords value) => value.Kind switch
    {
        ValueKind.File => " -F",
        ValueKind.Folder => " -a '(__fish_complete_directories)'",
        ValueKind.Choice => $" -a {Quoted(string.Join(' ', value.Choices.Select(Word)))}",
        _ => "",
    };

    private static string Word(string word) => word.Contains(' ', StringComparison.Ordinal) ? $"\"{word}\"" : word;

    private static string Quoted(string words) => $"'{words.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("'", "\\'", StringComparison.Ordinal)}'";
}
