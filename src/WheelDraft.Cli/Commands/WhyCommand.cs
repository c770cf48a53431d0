using System.CommandLine;
using WheelDraft.Engineering;
using WheelDraft.Formats.Report;

namespace WheelDraft.Cli;

/// <summary>How a figure came about, step by step.</summary>
internal sealed class WhyCommand : ICommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "Parameter file" };
    private readonly Argument<string[]> _topic = new("TOPIC") { Arity = ArgumentArity.ZeroOrMore, Description = "What to explain; without it, the topics of the file are listed" };

    private readonly Option<bool> _underFaults = DesignFile.UnderFaults();

    /// <inheritdoc/>
    public Command Describe() => new("why", "Shows how a figure came about: an arc, a distance between two nets, a working voltage, a force") { _file, _topic, _underFaults };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        Design design = DesignFile.Read(parsed.GetRequiredValue(_file), context, parsed.GetValue(_underFaults));
        string asked = string.Join(' ', parsed.GetValue(_topic) ?? []);
        IReadOnlyList<WhyTopic> topics = WhyTopic.Of(design);
        WhyTopic? found = topics.FirstOrDefault(t => t.IsAskedBy(asked));
        if (found is null && asked.Length > 0)
        {
            throw new DesignRefusedException("arguments.topic", $"There is no topic '{asked}'; the topics are: {string.Join(", ", topics.Select(t => $"'{t.Name}'"))}.");
        }

        IReadOnlyList<string> lines = found is null ? [.. topics.Select(t => t.Name)] : found.Steps();
        if (context.Json)
        {
            context.WriteJson(json =>
            {
                json.WriteStartObject();
                json.WriteString("topic", asked);
                json.WriteStrings(found is null ? "topics" : "steps", lines);
                json.WriteEndObject();
            });
            return ExitStatus.Done;
        }

        ReadersUnit unit = ReadersUnit.Of(design.Brief);
        foreach ((string line, int i) in lines.Select((l, i) => (l, i)))
        {
            context.Out.WriteLine(found is null ? line : $"{Wording.Number(i + 1, 0),2}. {unit.Words(line)}");
        }

        return ExitStatus.Done;
    }
}
