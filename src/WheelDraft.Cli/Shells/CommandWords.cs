using System.CommandLine;
using System.CommandLine.Completions;

namespace WheelDraft.Cli;

// The folder "Shells": what shells and the manual page need to know of the command line, read from the commands themselves, and its writers. No command is
// named here.

/// <summary>A command as a shell sees it.</summary>
/// <param name="Path">Its words, without the program's: <c>rule creepage</c>; empty for the program itself.</param>
/// <param name="About">What it does.</param>
/// <param name="Options">Its own options, and those of every command.</param>
/// <param name="Arguments">Its arguments, in their order.</param>
/// <param name="Parts">The commands below it.</param>
internal sealed record CommandWords(string Path, string About, IReadOnlyList<OptionWords> Options, IReadOnlyList<ValueWords> Arguments, IReadOnlyList<CommandWords> Parts)
{
    /// <summary>The last word: <c>creepage</c>.</summary>
    public string Name => Path[(Path.LastIndexOf(' ') + 1)..];

    /// <summary>This command and all below it that run by themselves, each after what it is part of.</summary>
    public IEnumerable<CommandWords> All => Parts.SelectMany(p => p.All).Prepend(this);

    /// <summary>The program's commands.</summary>
    /// <param name="root">The root of the command line.</param>
    public static CommandWords Of(RootCommand root)
    {
        OptionWords[] everywhere = [.. root.Options.Where(o => o.Recursive).Select(OptionWords.Of)];
        OptionWords[] here = [.. root.Options.Where(o => !o.Recursive).Select(OptionWords.Of)];
        return new("", root.Description ?? "", [.. here, .. everywhere], [], [.. root.Subcommands.Select(c => Of(c, "", everywhere))]);
    }

    private static CommandWords Of(Command command, string above, OptionWords[] everywhere)
    {
        string path = (above + " " + command.Name).TrimStart();
        return new(path, command.Description ?? "", [.. command.Options.Select(OptionWords.Of), .. everywhere], [.. command.Arguments.Select(a => ValueWords.Of(a.Name, a, a.Arity))], [.. command.Subcommands.Select(c => Of(c, path, everywhere))]);
    }
}

/// <summary>An option as a shell sees it.</summary>
/// <param name="Names">Its names, the long one first.</param>
/// <param name="About">What it does.</param>
/// <param name="Value">Its value; null for a switch.</param>
internal sealed record OptionWords(IReadOnlyList<string> Names, string About, ValueWords? Value)
{
    /// <summary>An option.</summary>
    public static OptionWords Of(Option option) => new(
        [.. option.Aliases.Prepend(option.Name).Where(n => n.Length > 1 && n[0] == '-' && n is not "-?").Distinct(StringComparer.Ordinal).OrderByDescending(n => n.Length)],
        option.Description ?? "",
        option.ValueType == typeof(bool) || option.Arity.MaximumNumberOfValues == 0 ? null : ValueWords.Of(option.HelpName ?? "VALUE", option, option.Arity));

    /// <summary>What it does in a clause, for a list.</summary>
    public string Brief => About.Split("; ")[0].Split(". ")[0].TrimEnd('.');
}

/// <summary>What kind of word a value is.</summary>
internal enum ValueKind
{
    /// <summary>Anything.</summary>
    Free,

    /// <summary>One of some words.</summary>
    Choice,

    /// <summary>The name of a file.</summary>
    File,

    /// <summary>The name of a folder.</summary>
    Folder,
}

/// <summary>A value as a shell sees it.</summary>
/// <param name="Name">What the help calls it.</param>
/// <param name="Kind">What kind of word it is.</param>
/// <param name="Choices">The words that are offered.</param>
/// <param name="IsMany">Whether there may be several.</param>
internal sealed record ValueWords(string Name, ValueKind Kind, IReadOnlyList<string> Choices, bool IsMany)
{
    /// <summary>The value of an option or argument.</summary>
    /// <param name="name">What the help calls it: <c>I|II|III</c> are its words, <c>FILE</c> and <c>DIR</c> say what it names.</param>
    /// <param name="symbol">The option or argument.</param>
    /// <param name="arity">How many it takes.</param>
    public static ValueWords Of(string name, Symbol symbol, ArgumentArity arity)
    {
        string[] offered = [.. symbol.GetCompletions(CompletionContext.Empty).Select(c => c.InsertText ?? c.Label).Distinct(StringComparer.Ordinal)];
        string[] named = name.Contains('|', StringComparison.Ordinal) ? [.. name.Split('|').Where(w => w.Length < 4 || w.Any(char.IsAsciiLetterLower))] : [];
        string[] choices = offered.Length > 0 ? offered : named;
        ValueKind kind = name.Split('|').Contains("FILE", StringComparer.Ordinal) || name is "LOG" ? ValueKind.File
            : name is "DIR" ? ValueKind.Folder
            : choices.Length > 0 ? ValueKind.Choice
            : ValueKind.Free;
        return new(name, kind, choices, arity.MaximumNumberOfValues > 1);
    }
}
