using System.CommandLine;

namespace WheelDraft.Cli;

/// <summary>Words that a shell offers for a value; the program itself says what is right.</summary>
internal static class Suggestions
{
    /// <summary>The option, for which a shell offers these words.</summary>
    public static Option<T> Suggesting<T>(this Option<T> option, params IEnumerable<string> words)
    {
        option.CompletionSources.Add(_ => words);
        return option;
    }

    /// <summary>The argument, for which a shell offers these words; the help goes on calling it by its name.</summary>
    public static Argument<T> Suggesting<T>(this Argument<T> argument, Func<IEnumerable<string>> words)
    {
        argument.HelpName = argument.Name;
        argument.CompletionSources.Add(_ => words());
        return argument;
    }
}
