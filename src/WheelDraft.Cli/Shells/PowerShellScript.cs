using System.Globalization;
using System.Text;

namespace WheelDraft.Cli;

/// <summary>The completion script for PowerShell, 5.1 or later.</summary>
internal static class PowerShellScript
{
    /// <summary>The script, LF line ends.</summary>
    public static string Write(CommandWords program)
    {
        StringBuilder script = new("# Completion of wheeldraft for PowerShell. Written by: wheeldraft completion powershell\n\n");
        script.Append("Register-ArgumentCompleter -Native -CommandName wheeldraft -ScriptBlock {\n    param($word, $line, $cursor)\n");
        script.Append("    # Words of each command: those below it, else its options; then what each option takes. Nothing offered means files.\n    $parts = @{\n");
        foreach (CommandWords command in program.All)
        {
            script.Append(CultureInfo.InvariantCulture, $"        {Quoted(command.Path)} = {List(command.Parts.Count > 0 ? command.Parts.Select(p => p.Name) : command.Arguments.TakeLast(1).SelectMany(a => a.Choices))}\n");
        }

        script.Append("    }\n    $options = @{\n");
        foreach (CommandWords command in program.All)
        {
            script.Append(CultureInfo.InvariantCulture, $"        {Quoted(command.Path)} = {List(command.Options.SelectMany(o => o.Names))}\n");
        }

        script.Append("    }\n    $values = @{\n");
        foreach ((CommandWords command, OptionWords option) in program.All.SelectMany(c => c.Options.Where(o => o.Value is not null).Select(o => (c, o))))
        {
            foreach (string name in option.Names)
            {
                script.Append(CultureInfo.InvariantCulture, $"        {Quoted(command.Path + " " + name)} = {List(option.Value!.Choices)}\n");
            }
        }

        return script.Append("""
                }
                $path = ''
                $before = ''
                foreach ($element in ($line.CommandElements | Select-Object -Skip 1)) {
                    if ($element.Extent.EndOffset -ge $cursor) { break }
                    $before = "$element"
                    $longer = "$path $before".Trim()
                    if ($options.ContainsKey($longer)) { $path = $longer }
                }
                $offered = if ($values.ContainsKey("$path $before")) { $values["$path $before"] } elseif ($word.StartsWith('-')) { $options[$path] } else { $parts[$path] }
                $offered | Where-Object { $_ -like "$word*" } | ForEach-Object {
                    $text = if ($_.Contains(' ')) { "'$_'" } else { $_ }
                    [System.Management.Automation.CompletionResult]::new($text, $_, 'ParameterValue', $_)
                }
            }

            """).ToString().ReplaceLineEndings("\n");
    }

    private static string List(IEnumerable<string> words) => $"@({string.Join(", ", words.Select(Quoted))})";

    private static string Quoted(string words) => $"'{words.Replace("'", "''", StringComparison.Ordinal)}'";
}
