using System.Globalization;
using System.Text;
using WheelDraft.Cli;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Formats.Parameters;
using WheelDraft.Formats.Report;

namespace WheelDraft.Fuzz;

/// <summary>Parameter files: read, worked out, reported; of a share all sheets and writers, scenarios and explanations.</summary>
internal sealed class ParameterTarget : ITarget
{
    private readonly TomlMutator _mutator = new();

    public string Name => "parameters";

    public string Ending => ".toml";

    public byte[] Mutate(byte[] parent, byte[] donor, Chance chance) => _mutator.Mutate(parent, donor, chance);

    public Outcome Try(byte[] bytes, Depth depth)
    {
        Stage.Now = "reading";
        ParameterResult read = ParameterReader.Read(bytes);
        Promises.Keep(read.Diagnostics, bytes);
        if ((read.Brief is null) != (read.Diagnostics.Count > 0))
        {
            throw new BrokenPromiseException("neither a brief nor faults", "A result holds either a brief or faults.");
        }

        return read.Brief is Brief brief ? WorkOut(FewDraws(brief), bytes, depth) : Outcome.Refused;
    }

    // A million draws of every on-time take longer than all else of a case, and go the same ways as a few.
    private const int Draws = 2000;

    private static Brief FewDraws(Brief brief) => brief with { MonteCarlo = brief.MonteCarlo with { Draws = Math.Min(brief.MonteCarlo.Draws, Draws) } };

    private static Outcome WorkOut(Brief brief, byte[] bytes, Depth depth)
    {
        Stage.Now = "design";
        Design design;
        try
        {
            design = Design.Of(brief);
        }
        catch (DesignRefusedException refused)
        {
            Promises.Keep(refused.Reasons, needsPlace: true);
            return Outcome.RefusedLate;
        }

        byte[] report = Report(design, bytes);
        if (depth.HasFlag(Depth.Twice))
        {
            Stage.Now = "design again";
            Same("report.json", report, ReportJson.Write(Design.Of(FewDraws(ParameterReader.Read(bytes).Brief!))));
        }

        if (depth.HasFlag(Depth.Write))
        {
            Write(design, bytes, depth.HasFlag(Depth.Twice));
        }

        return Outcome.Judged;
    }

    private static byte[] Report(Design design, byte[] bytes)
    {
        Stage.Now = "report";
        using StringWriter words = new(CultureInfo.InvariantCulture);
        CommandContext context = new(new Surroundings { Out = words, Error = words, Folder = "." }) { InputFile = "case.toml" };
        FindingWords.Say(design.Findings, context, ReadersUnit.Of(design.Brief));
        foreach (string line in CheckTable.Of(design).Concat(new DesignSummary("case.toml", design).Lines()))
        {
            words.WriteLine(line);
        }

        Promises.KeepNumbers("the words of check", words.ToString(), bytes);
        byte[] report = ReportJson.Write(design);
        Promises.KeepNumbers("report.json", Encoding.UTF8.GetString(report), bytes);
        return report;
    }

    private static void Write(Design design, byte[] bytes, bool twice)
    {
        OutputRequest request = new() { DespiteFindings = true, PngDpi = 30 };
        Dictionary<string, byte[]> files = new(StringComparer.Ordinal);
        Stage.Now = "writing";
        foreach (OutputFile file in OutputFiles.Of(design, request))
        {
            files.Add(file.Name, file.Bytes);
            KeepText(file, bytes);
        }

        Stage.Now = "explaining";
        foreach (WhyTopic topic in WhyTopic.Of(design))
        {
            Promises.KeepNumbers("why", string.Join('\n', topic.Steps()), bytes);
        }

        Stage.Now = "playing";
        foreach (ScenarioBrief scenario in design.Brief.Scenarios)
        {
            Promises.KeepNumbers("run.csv", Encoding.UTF8.GetString(RunCsv.Write(design, design.Circuit.Play(scenario))), bytes);
        }

        if (twice)
        {
            Stage.Now = "writing again";
            foreach (OutputFile file in OutputFiles.Of(design, request))
            {
                Same(file.Name, files[file.Name], file.Bytes);
            }
        }
    }

    private static void KeepText(OutputFile file, byte[] bytes)
    {
        string kind = Path.GetExtension(file.Name);
        if (kind is not (".png" or ".pdf"))
        {
            // The page's own script says these words where it guards against such numbers.
            string text = Encoding.UTF8.GetString(file.Bytes).Replace("Number.isNaN(", "", StringComparison.Ordinal).Replace("[NaN, NaN]", "", StringComparison.Ordinal);
            Promises.KeepNumbers("a file " + kind, text, bytes);
        }
    }

    private static void Same(string what, byte[] first, byte[] second)
    {
        if (!first.AsSpan().SequenceEqual(second))
        {
            throw new BrokenPromiseException($"two runs differ in {Path.GetExtension(what)}", $"{what} differs between two runs.");
        }
    }
}

