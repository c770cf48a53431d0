using System.CommandLine;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.BenchLog;
using WheelDraft.Formats.Page;
using WheelDraft.Formats.Parameters;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft compare</c>: is the made wheel what the file says; several logs are a batch. Exit status 1 when something misses.</summary>
internal sealed class CompareCommand : ICommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "Parameter file" };
    private readonly Argument<string[]> _logs = new("LOG") { Arity = ArgumentArity.OneOrMore, Description = "Bench log as CSV; several are as many wheels of one batch" };
    private readonly Option<string?> _folder = new("--out", "-o") { HelpName = "DIR", Description = "Folder for draw/compare.svg and show/compare.html, the page with measured bars over those wanted; of a batch draw/batch.svg too; none when left out" };
    private readonly Option<string?> _home = new("--home") { HelpName = "TIME", Description = "Time in the log at which the wheel stood at home; lets a wheel that sits turned on its shaft be told" };
    private readonly Option<bool> _takeOver = FolderOptions.TakeOver();
    private readonly PictureOptions _pictures = new();
    private readonly WordsChoice _words = new();
    private readonly LogArguments _arguments = new();

    /// <inheritdoc/>
    public Command Describe()
    {
        Command command = new("compare", "Hold bench logs of made wheels against their parameter file") { _file, _logs, _folder, _home, _takeOver };
        foreach (Option option in _arguments.All.Concat(_pictures.OfSvg).Append(_words.Option))
        {
            command.Add(option);
        }

        return command;
    }

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        string named = parsed.GetRequiredValue(_file);
        string[] logs = parsed.GetRequiredValue(_logs);
        SvgOptions svg = _pictures.Svg(parsed);
        double? home = LogArguments.Amount(parsed.GetValue(_home), Dimension.Time, "home", (0, 1e9));
        Design design = DesignFile.Read(named, context);
        BenchDesign asked = new(design.Brief, design.Motion, design.Programme, design.Wheel);
        List<BenchComparison> wheels = [];
        foreach (string log in logs)
        {
            LogReading read = _arguments.Read(log, parsed, context);
            foreach (string taken in read.Taken)
            {
                context.Say($"{log}: {taken}");
            }

            wheels.Add(BenchComparison.Of(asked, BenchTurns.Of(read.Record, _arguments.TurnTimeS(parsed)), home));
        }

        context.InputFile = named;
        BatchStudy? batch = wheels.Count >= BatchStudy.LeastWheels ? BatchStudy.Of(wheels) : null;
        if (parsed.GetValue(_folder) is string folder)
        {
            _words.In(parsed, design.Brief, context, () => Draw(context, (named, folder, parsed.GetValue(_takeOver)), svg with { Language = ReadersWords.Language }, (design, wheels, batch)));
        }

        if (context.Json)
        {
            context.WriteJson(json => CompareJson.Write(json, design, [.. logs.Zip(wheels)], batch));
        }
        else
        {
            Show(context, design, [.. logs.Zip(wheels)], batch);
        }

        return wheels.Any(w => w.Misses) ? ExitStatus.Findings : ExitStatus.Done;
    }

    private static void Draw(CommandContext context, (string Named, string Folder, bool TakesOver) place, SvgOptions svg, (Design Design, List<BenchComparison> Wheels, BatchStudy? Batch) what)
    {
        using FileSet files = new(context.PathOf(place.Folder), context.Stop);
        for (int i = 0; i < what.Wheels.Count; i++)
        {
            string name = what.Wheels.Count == 1 ? "draw/compare.svg" : FormattableString.Invariant($"draw/compare-{i + 1}.svg");
            files.Add(name, SvgWriter.Bytes(CompareSheet.Of(what.Design, what.Wheels[i]), svg));
            files.Add(name.Replace("draw/", "show/", StringComparison.Ordinal).Replace(".svg", ".html", StringComparison.Ordinal), ShowPage.Write(what.Design, what.Wheels[i]));
        }

        if (what.Batch is BatchStudy batch)
        {
            files.Add("draw/batch.svg", SvgWriter.Bytes(BatchSheet.Of(what.Design, batch), svg));
        }

        FolderOptions.Say(files.Commit(FolderOptions.Claim(place.Named, what.Design) with { TakesOver = place.TakesOver }), context);
        context.Say($"wrote {string.Join(", ", files.Names.Order(StringComparer.Ordinal).Select(n => Path.Combine(place.Folder, n)))}");
    }

    private static void Show(CommandContext context, Design design, IReadOnlyList<(string Log, BenchComparison Wheel)> wheels, BatchStudy? batch)
    {
        foreach ((string log, BenchComparison wheel) in wheels)
        {
            context.Out.WriteLine($"{log}: {(wheel.Misses ? "misses" : "meets")}");
            foreach (string line in TextTable.Lines([CompareWords.Head, .. CompareWords.Rows(design, wheel)]))
            {
                context.Out.WriteLine(line);
            }

            foreach (string note in CompareWords.Notes(design, wheel))
            {
                context.Out.WriteLine($"  {note}");
            }
        }

        if (batch is not null)
        {
            context.Out.WriteLine(FormattableString.Invariant($"batch of {wheels.Count} wheels"));
            foreach (string line in TextTable.Lines([BatchWords.Head, .. batch.Figures.Select(f => BatchWords.Row(design, f))]))
            {
                context.Out.WriteLine(line);
            }

            foreach (string note in BatchWords.Notes(design, batch))
            {
                context.Out.WriteLine($"  {note}");
            }
        }
        else if (wheels.Count > 1)
        {
            context.Say(FormattableString.Invariant($"capability takes {BatchStudy.LeastWheels} wheels or more"));
        }
    }
}
