using System.CommandLine;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>How a search for what is "auto" is made.</summary>
internal sealed class SearchOptions
{
    /// <summary>How much work.</summary>
    public Option<string> Effort { get; } = new Option<string>("--effort") { HelpName = "MUCH", Description = "Work put into what is \"auto\": quick (the first design without error), usual, or long (ten times as much)", DefaultValueFactory = _ => "usual" }.Suggesting("quick", "usual", "long");

    /// <summary>Whether Ctrl-C gives the best so far.</summary>
    public Option<bool> KeepBest { get; } = new("--keep-best") { Description = "Let Ctrl-C end the search with the best that it has, instead of leaving nothing" };

    /// <summary>The request.</summary>
    /// <exception cref="DesignRefusedException">The word is none of them.</exception>
    public SearchRequest Of(System.CommandLine.ParseResult parsed, CommandContext context) => new()
    {
        Effort = parsed.GetValue(Effort) switch
        {
            "quick" => SearchEffort.Quick,
            "usual" => SearchEffort.Usual,
            "long" => SearchEffort.Long,
            string other => throw new DesignRefusedException("arguments.effort", $"--effort knows no word '{other}'; it is quick, usual or long."),
            null => SearchEffort.Usual,
        },
        Stop = context.Stop,
    };
}
