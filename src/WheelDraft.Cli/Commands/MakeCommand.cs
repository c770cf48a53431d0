using System.CommandLine;
using System.Text.Json;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Formats.Outputs;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Cli;

/// <summary>Everything from a parameter file into a folder.</summary>
internal sealed class MakeCommand : ICommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "Parameter file" };
    private readonly Option<string> _folder = new("--out", "-o") { HelpName = "DIR", Description = "Folder to write into; out/ and the file's name when left out" };
    private readonly Option<string[]> _only = new("--only") { HelpName = "KIND,...", Description = $"Only these kinds: {string.Join(", ", Kinds.Select(k => k.Word))}", AllowMultipleArgumentsPerToken = true };
    private readonly Option<bool> _despite = new("--despite-findings") { Description = "Write cutting files even where something misses" };
    private readonly Option<string> _dxf = new("--dxf") { HelpName = "VERSION", Description = "Version of cutting files: r2000 or r12", DefaultValueFactory = _ => "r2000" };
    private readonly Option<string> _theme = new("--theme") { HelpName = "THEME", Description = "Colours of drawings: light, dark or print", DefaultValueFactory = _ => "light" };
    private readonly Option<string> _text = new("--text") { HelpName = "KIND", Description = "Texts of SVG drawings: live (can be searched and translated) or strokes (the same everywhere)", DefaultValueFactory = _ => "live" };

    private static readonly (string Word, OutputKind Kind)[] Kinds =
    [
        ("report", OutputKind.Report),
        ("cut", OutputKind.Cut),
        ("draw", OutputKind.Draw),
        ("png", OutputKind.Png),
        ("pdf", OutputKind.Pdf),
        ("print", OutputKind.Print),
        ("show", OutputKind.Show),
    ];

    /// <inheritdoc/>
    public Command Describe() =>
        new("make", "Makes everything from a parameter file: report, cutting files, drawings") { _file, _folder, _only, _despite, _dxf, _theme, _text };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        string named = parsed.GetRequiredValue(_file);
        OutputRequest request = new()
        {
            Kinds = KindsOf(parsed.GetValue(_only) ?? []),
            DespiteFindings = parsed.GetValue(_despite),
            Dxf = VersionOf(parsed.GetValue(_dxf)!),
            Theme = ThemeOf(parsed.GetValue(_theme)!),
            Text = TextOf(parsed.GetValue(_text)!),
        };
        Design design = DesignFile.Read(named, context);
        string folder = parsed.GetValue(_folder) ?? Path.Combine("out", Path.GetFileNameWithoutExtension(named));
        FileSet files = new();
        foreach (OutputFile file in OutputFiles.Of(design, request))
        {
            context.Stop.ThrowIfCancellationRequested();
            files.Add(file.Name, file.Bytes);
        }

        bool withheld = request.Kinds.Contains(OutputKind.Cut) && OutputFiles.Withheld(design, request);
        string full = context.PathOf(folder);
        IReadOnlyList<string> deleted = files.Commit(full, withheld ? StaleCutFiles(full) : [], context.Stop);
        Tell(design, context, new Written(folder, files.Names, withheld, deleted));
        return design.Meets ? ExitStatus.Done : ExitStatus.Findings;
    }

    private sealed record Written(string Folder, IReadOnlyCollection<string> Names, bool Withheld, IReadOnlyList<string> Deleted);

    private static void Tell(Design design, CommandContext context, Written written)
    {
        FindingWords.Say(design.Findings, context);
        if (written.Withheld)
        {
            context.Say("Cutting files are withheld because something misses; --despite-findings writes them all the same."
                + (written.Deleted.Count > 0 ? $" Those of an earlier run are deleted: {string.Join(", ", written.Deleted)}." : ""));
        }

        if (context.Json)
        {
            context.WriteJson(w => Write(w, design, written));
            return;
        }

        foreach (string name in written.Names)
        {
            context.Out.WriteLine(Path.Combine(written.Folder, name));
        }
    }

    private static void Write(Utf8JsonWriter json, Design design, Written written)
    {
        json.WriteStartObject();
        json.WriteString("verdict", design.Meets ? "meets" : "misses");
        json.WriteString("folder", written.Folder);
        Strings(json, "files", written.Names);
        json.WriteBoolean("cut_withheld", written.Withheld);
        Strings(json, "deleted", written.Deleted);
        Strings(json, "findings", design.Findings.Where(f => f.Severity == FindingSeverity.Error).Select(f => f.Message));
        json.WriteEndObject();
    }

    private static void Strings(Utf8JsonWriter json, string key, IEnumerable<string> values)
    {
        json.WriteStartArray(key);
        foreach (string value in values)
        {
            json.WriteStringValue(value);
        }

        json.WriteEndArray();
    }

    private static List<string> StaleCutFiles(string folder)
    {
        string cut = Path.Combine(folder, OutputFiles.CutFolder);
        return Directory.Exists(cut)
            ? [.. Directory.EnumerateFiles(cut).Select(f => Path.GetFileName(f)!).Where(OutputFiles.IsCutFile).Order(StringComparer.Ordinal).Select(n => $"{OutputFiles.CutFolder}/{n}")]
            : [];
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

    private static DxfVersion VersionOf(string word) => word.ToUpperInvariant() switch
    {
        "R2000" => DxfVersion.R2000,
        "R12" => DxfVersion.R12,
        _ => throw new DesignRefusedException("arguments.dxf", $"--dxf knows no version '{word}'; it is r2000 or r12."),
    };

    private static Theme ThemeOf(string word) => Theme.Named(word)
        ?? throw new DesignRefusedException("arguments.theme", $"--theme knows no theme '{word}'; the themes are {string.Join(", ", Theme.All.Select(t => t.Name))}.");

    private static SvgText TextOf(string word) => word switch
    {
        "live" => SvgText.Live,
        "strokes" => SvgText.Strokes,
        _ => throw new DesignRefusedException("arguments.text", $"--text knows no kind '{word}'; it is live or strokes."),
    };
}
