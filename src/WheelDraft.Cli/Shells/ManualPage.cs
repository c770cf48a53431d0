using System.Globalization;
using System.Text;

namespace WheelDraft.Cli;

/// <summary>The manual page, for man: roff with the usual macros.</summary>
internal static class ManualPage
{
    /// <summary>The page, LF line ends.</summary>
    /// <param name="program">The program's commands.</param>
    /// <param name="version">Its version.</param>
    public static string Write(CommandWords program, string version)
    {
        StringBuilder page = new();
        page.Append(CultureInfo.InvariantCulture, $".TH WHEELDRAFT 1 \"\" \"WheelDraft {Text(version)}\" \"User commands\"\n");
        page.Append(".SH NAME\nwheeldraft \\- set out rotary contact timers\n.SH SYNOPSIS\n.B wheeldraft\n.I COMMAND\n.RI [ ARGUMENTS ]\n.RI [ OPTIONS ]\n.SH DESCRIPTION\n");
        page.Append(Text(program.About)).Append("\n.PP\nMains voltage kills. This is a drafting aid: it checks geometry against rules as given and certifies nothing. Local codes, and a licensed or qualified person, decide.\n.SH COMMANDS\n");
        foreach (CommandWords command in program.All.Skip(1).Where(c => c.Parts.Count == 0))
        {
            page.Append(CultureInfo.InvariantCulture, $".SS \"{Text($"wheeldraft {command.Path}{string.Concat(command.Arguments.Select(a => " " + a.Name))}")}\"\n{Sentence(command.About)}\n");
            Options(page, command.Options.Except(program.Options));
        }

        page.Append(".SH OPTIONS OF EVERY COMMAND\n");
        Options(page, program.Options);
        return page.Append("""
            .SH EXIT STATUS
            .TP
            .B 0
            done, and nothing misses
            .TP
            .B 1
            done, with findings of severity error
            .TP
            .B 2
            input that is wrong or cannot be built
            .TP
            .B 3
            a file could not be opened, read or written
            .TP
            .B 130
            interrupted
            .SH ENVIRONMENT
            .TP
            .B NO_COLOR
            where set, nothing is coloured
            .SH SEE ALSO
            .B wheeldraft guide
            writes the guide as web pages;
            .B wheeldraft keys
            lists every key of the parameter file,
            .B wheeldraft explain
            every code of a finding.

            """).ToString().ReplaceLineEndings("\n");
    }

    private static void Options(StringBuilder page, IEnumerable<OptionWords> options)
    {
        foreach (OptionWords option in options)
        {
            string names = string.Join(", ", option.Names.OrderBy(n => n.Length).Select(n => $"\\fB{Text(n)}\\fR"));
            page.Append(CultureInfo.InvariantCulture, $".TP\n{names}{(option.Value is ValueWords value ? $" \\fI{Text(value.Name)}\\fR" : "")}\n{Sentence(option.About)}\n");
        }
    }

    // One full stop.
    private static string Sentence(string words) => Text(words.TrimEnd('.')) + ".";

    // Hyphens are typed as such; a line must not begin with a dot or an apostrophe.
    private static string Text(string words)
    {
        string text = words.Replace("\\", "\\e", StringComparison.Ordinal).Replace("-", "\\-", StringComparison.Ordinal).Replace("\"", "\\(dq", StringComparison.Ordinal).Replace("'", "\\(aq", StringComparison.Ordinal);
        return text.StartsWith('.') ? "\\&" + text : text;
    }
}
