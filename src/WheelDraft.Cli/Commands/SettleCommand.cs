using System.CommandLine;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft settle</c>: the file with every "auto" replaced by what was chosen; making that gives the same cutting files.</summary>
internal sealed class SettleCommand : ICommand
{
    /// <summary>What make calls the settled file.</summary>
    public const string FileName = "settled.toml";

    private readonly Argument<string> _file = new("FILE") { Description = "Parameter file" };
    private readonly Option<string?> _new = new("-o") { HelpName = "FILE", Description = "The new file: every \"auto\" replaced, everything else as it was; a file that is there is never overwritten. Left out: standard output" };
    private readonly Option<bool> _underFaults = DesignFile.UnderFaults();
    private readonly SearchOptions _search = new();

    /// <inheritdoc/>
    public Command Describe() => new("settle", "Writes the file with every \"auto\" replaced by what was chosen") { _file, _new, _underFaults, _search.Effort, _search.KeepBest };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        string named = parsed.GetRequiredValue(_file);
        SearchRequest request = _search.Of(parsed, context) with { KeepsBest = parsed.GetValue(_search.KeepBest), AlwaysExplains = true };
        (Design design, byte[]? settled) = DesignFile.Work(named, context, request, parsed.GetValue(_underFaults));
        byte[] bytes = settled ?? ParameterFile.Bytes(named, context);
        string? written = parsed.GetValue(_new);
        if (written is not null)
        {
            FileSet.WriteNew(context.PathOf(written), bytes);
        }

        Tell(design, settled is not null, context);
        if (context.Json)
        {
            context.WriteJson(json =>
            {
                json.WriteStartObject();
                json.WriteString("verdict", design.Meets ? "meets" : "misses");
                json.WriteBoolean("changed", settled is not null);
                json.WriteNumber("diameter_mm", Math.Round(design.Wheel.OuterDiameterMm, 6));
                json.WriteStrings("chosen", Chosen(design));
                json.WriteStrings("findings", design.Findings.Where(f => f.Severity == FindingSeverity.Error).Select(f => f.Message));
                json.WriteEndObject();
            });
        }
        else if (written is null)
        {
            context.Out.Write(System.Text.Encoding.UTF8.GetString(bytes));
        }

        return design.Meets ? ExitStatus.Done : ExitStatus.Findings;
    }

    private static void Tell(Design design, bool changed, CommandContext context)
    {
        ReadersUnit unit = ReadersUnit.Of(design.Brief);
        foreach (string words in changed ? Chosen(design) : ["Nothing in the file is \"auto\"; it is written as it is."])
        {
            context.Say(unit.Words(words));
        }

        FindingWords.Say(design.Findings, context, unit);
    }

    private static IEnumerable<string> Chosen(Design design) =>
        design.Findings.Where(f => f.Code is "setting-out.chosen" or "wheel.order-found" or "drive.motor-chosen" or "setting-out.contradiction").Select(f => f.Message);
}
