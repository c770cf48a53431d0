using System.CommandLine;

namespace WheelDraft.Cli;

/// <summary>One command of the program: what it takes and what it does.</summary>
/// <remarks>Newly made for every run. To add one, write a class and name it in <see cref="CommandList"/>.</remarks>
internal interface ICommand
{
    /// <summary>Its name, words, arguments and options.</summary>
    /// <remarks>An implementation keeps its options in fields, to read them in <see cref="Run"/>. A command with sub-commands
    /// gives them here; <see cref="Run"/> is then called for each and distinguishes them by <c>parsed.CommandResult.Command</c>.</remarks>
    Command Describe();

    /// <summary>Does the work.</summary>
    /// <param name="parsed">Arguments without errors.</param>
    /// <param name="context">Where words and results go.</param>
    /// <returns>One of <see cref="ExitStatus"/>.</returns>
    int Run(ParseResult parsed, CommandContext context);
}
