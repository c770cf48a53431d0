using System.CommandLine;
using System.Text.Json;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Formats.Outputs;

namespace WheelDraft.Cli;

/// <summary>Everything from a parameter file into a folder.</summary>
internal sealed class MakeCommand : ICommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "Parameter file" };
    private readonly Option<string> _folder = new("--out", "-o") { HelpName = "DIR", Description = "Folder to write into; out/ and the file's name when left out" };
    private readonly Option<string[]> _only = new Option<string[]>("--only") { HelpName = "KIND,...", Description = $"Only these kinds: {string.Join(", ", Kinds.Select(k => k.Word))}" }.Suggesting(Kinds.Select(k => k.Word));
    private readonly Option<bool> _despite = new("--despite-findings") { Description = "Write cutting files even where something misses" };
    private readonly Option<bool> _takeOver = FolderOptions.TakeOver();
    private readonly Option<string> _dxf = new Option<string>("--dxf") { HelpName = "VERSION", Description = "Version of cutting files: r2000 or r12", DefaultValueFactory = _ => "r2000" }.Suggesting("r2000", "r12");
    private readonly Option<string> _cut = new Option<string>("--cut") { HelpName = "FORMAT,...", Description = "Format of cutting files: dxf, svg (what is cut through, one colour, true size), or both", DefaultValueFactory = _ => "dxf" }.Suggesting("dxf", "svg", "dxf,svg");
    private readonly Option<string> _leadIn = new("--lead-in") { HelpName = "LENGTH", Description = "Lead-ins of this length in the parts' DXF, on layer LEAD: in what falls away, never where a wiper slides or a strip springs; left out: none" };
    private readonly Option<bool> _nominal = new("--nominal") { Description = "Cutting files along the finished edges, for a shop that allows for its kerf itself; their names end in -nominal" };
    private readonly Option<bool> _underFaults = DesignFile.UnderFaults();
    private readonly PictureOptions _pictures = new();
    private readonly SearchOptions _search = new();
    private readonly WordsChoice _words = new();

    private static readonly (string Word, OutputKind Kind)[] Kinds =
    [
        ("report", OutputKind.Report),
        ("cut", OutputKind.Cut),
        ("draw", OutputKind.Draw),
        ("png", OutputKind.Png),
        ("pdf", OutputKind.Pdf),
        ("print", OutputKind.Print),
        ("show", OutputKind.Show),
        ("bench", OutputKind.Bench),
    ];

    /// <inheritdoc/>
    public Command Describe()
    {
        Command command = new("make", "Makes everything from a parameter file: report, cutting files, drawings") { _file, _folder, _only, _despite, _takeOver, _dxf, _cut, _leadIn, _nominal, _underFaults, _words.Option };
        foreach (Option option in _pictures.All.Prepend(_search.Effort))
        {
            command.Add(option);
        }

        return command;
    }

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        string named = parsed.GetRequiredValue(_file);
        string[] formats = FormatsOf(parsed.GetValue(_cut)!);
        OutputRequest asked = new()
        {
            CutAsDxf = formats.Contains("dxf", StringComparer.Ordinal),
            CutAsSvg = formats.Contains("svg", StringComparer.Ordinal),
            Kinds = KindsOf(parsed.GetValue(_only) ?? []),
            DespiteFindings = parsed.GetValue(_despite),
            Dxf = VersionOf(parsed.GetValue(_dxf)!),
            Nominal = parsed.GetValue(_nominal),
            LeadInMm = LeadInOf(parsed.GetValue(_leadIn)),
        };
        PictureChoice pictures = _pictures.Of(parsed);
        (Design design, byte[]? settled) = DesignFile.Work(named, context, _search.Of(parsed, context), parsed.GetValue(_underFaults));
        OutputRequest request = pictures.On(asked, design);
        string folder = parsed.GetValue(_folder) ?? Path.Combine("out", Path.GetFileNameWithoutExtension(named));
        string full = context.PathOf(folder);
        using FileSet files = new(full, context.Stop);
        List<string> warnings = [];
        _words.In(parsed, design.Brief, context, () =>
        {
            if (settled is not null && request.Kinds.Contains(OutputKind.Report))
            {
                files.Add(SettleCommand.FileName, settled);
            }

            using Progress progress = new(context, "files written");
            foreach (OutputFile file in OutputFiles.Of(design, request, warnings.Add))
            {
                files.Add(file.Name, file.Bytes);
                progress.Step();
            }
        });

        bool withheld = request.Kinds.Any(k => k is OutputKind.Cut or OutputKind.Print) && OutputFiles.Withheld(design, request);
        FolderOutcome outcome = files.Commit(FolderOptions.Claim(named, design) with
        {
            TakesOver = parsed.GetValue(_takeOver),
            Replaces = name => OutputFiles.IsReplaced(name, design, request),
        });
        ShowOutcome(design, context, new Written(folder, [.. files.Names, FolderRecord.FileName], withheld, outcome) { Warnings = warnings });
        return design.Meets ? ExitStatus.Done : ExitStatus.Findings;
    }

    private sealed record Written(string Folder, IReadOnlyCollection<string> Names, bool Withheld, FolderOutcome Outcome)
    {
        /// <summary>What drawings had to do without.</summary>
        public IReadOnlyList<string> Warnings { get; init; } = [];
    }

    private static void ShowOutcome(Design design, CommandContext context, Written written)
    {
        FindingWords.Say(design.Findings, context, ReadersUnit.Of(design.Brief));
        FindingWords.SayOfDrawings(written.Warnings, context);
        if (written.Withheld)
        {
            context.Say("Cutting files and the true-size template are withheld because something misses; --despite-findings writes them all the same, marked.");
        }

        FolderOptions.Say(written.Outcome, context);

        if (context.Json)
        {
            context.WriteJson(w => Write(w, design, written));
            return;
        }

        if (!context.Quiet)
        {
            foreach (string line in new DesignSummary(context.InputFile ?? written.Folder, design).Lines().Concat(WrittenLines.Of(written.Folder, written.Names)))
            {
                context.Out.WriteLine(line);
            }
        }
    }

    private static void Write(Utf8JsonWriter json, Design design, Written written)
    {
        json.WriteStartObject();
        json.WriteString("verdict", design.Meets ? "meets" : "misses");
        json.WriteString("folder", written.Folder);
        json.WriteStrings("files", written.Names);
        json.WriteBoolean("cut_withheld", written.Withheld);
        json.WriteStrings("deleted", written.Outcome.Deleted);
        json.WriteStrings("foreign", written.Outcome.Foreign);
        json.WriteStrings("drawing_warnings", written.Warnings);
        json.WriteStrings("findings", design.Findings.Where(f => f.Severity == FindingSeverity.Error).Select(f => f.Message));
        json.WriteEndObject();
    }

    private static IReadOnlyList<OutputKind> KindsOf(string[] words)
    {
        string[] asked = [.. words.SelectMany(w => w.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))];
        if (asked.Length == 0)
        {
            return [.. Kinds.Select(k => k.Kind)];
        }

        string? unknown = asked.FirstOrDefault(a => !Kinds.Any(k => string.Equals(k.Word, a, StringComparison.Ordinal)));
        return unknown is null
            ? [.. asked.Select(a => Kinds.First(k => string.Equals(k.Word, a, StringComparison.Ordinal)).Kind)]
            : throw new DesignRefusedException("arguments.only", $"--only knows no kind '{unknown}'; the kinds are {string.Join(", ", Kinds.Select(k => k.Word))}.");
    }

    private static double LeadInOf(string? text)
    {
        if (text is null)
        {
            return 0;
        }

        RuleArguments arguments = new("arguments.lead-in");
        double mm = arguments.Metres("--lead-in", text) * 1000;
        arguments.ThrowIfFaulty();
        return mm is >= 0.1 and <= 20 ? mm : throw new DesignRefusedException("arguments.lead-in", $"--lead-in \"{text}\" is outside 0.1 mm to 20 mm.");
    }

    private static string[] FormatsOf(string words)
    {
        string[] asked = [.. words.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(w => w.ToLowerInvariant())];
        string? unknown = asked.FirstOrDefault(w => w is not ("dxf" or "svg"));
        return unknown is null && asked.Length > 0 ? asked
            : throw new DesignRefusedException("arguments.cut", $"--cut knows no format '{unknown ?? words}'; it is dxf, svg, or both: --cut dxf,svg.");
    }

    private static DxfVersion VersionOf(string word) => word.ToUpperInvariant() switch
    {
        "R2000" => DxfVersion.R2000,
        "R12" => DxfVersion.R12,
        _ => throw new DesignRefusedException("arguments.dxf", $"--dxf knows no version '{word}'; it is r2000 or r12."),
    };
}
