using System.CommandLine;
using System.Text.Json;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Raster;
using WheelDraft.Formats.Report;
using WheelDraft.Formats.Svg;
using WheelDraft.Geometry;

namespace WheelDraft.Cli;

/// <summary>The circuit played over time: a table here, CSV and chart in a folder.</summary>
internal sealed class RunCommand : ICommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "Parameter file" };
    private readonly Option<string> _scenario = new("--scenario") { HelpName = "NAME", Description = "Play only this scenario; every one when left out" };
    private readonly Option<string> _folder = new("--out", "-o") { HelpName = "DIR", Description = "Folder for CSV and chart; out/ and the file's name when left out" };

    private readonly Option<bool> _takeOver = FolderOptions.TakeOver();
    private readonly PictureOptions _pictures = new();
    private readonly WordsChoice _words = new();

    /// <inheritdoc/>
    public Command Describe()
    {
        Command command = new("run", "Plays the circuit over time: timeline table, CSV and chart") { _file, _scenario, _folder, _takeOver };
        foreach (Option option in _pictures.OfSvg)
        {
            command.Add(option);
        }

        command.Add(_words.Option);

        return command;
    }

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        string named = parsed.GetRequiredValue(_file);
        SvgOptions asked = _pictures.Svg(parsed);
        Design design = DesignFile.Read(named, context);
        SvgOptions svg = asked with { Font = ScriptFont.Of(design.Brief), IdPrefix = SvgOptions.PrefixFrom(design.Brief.DrawingNumber, design.Brief.Title) };
        int[] chosen = Chosen(design.Brief.Scenarios, parsed.GetValue(_scenario));
        string folder = parsed.GetValue(_folder) ?? Path.Combine("out", Path.GetFileNameWithoutExtension(named));
        IReadOnlyList<string> slugs = FileSlugs.Of(design.Brief.Scenarios.Select(s => s.Name));
        using FileSet files = new(context.PathOf(folder), context.Stop);
        List<ScenarioRun> runs = [];
        List<string> warnings = [];
        List<Sheet> charts = [];
        foreach (int index in chosen)
        {
            runs.Add(design.Circuit.Play(design.Brief.Scenarios[index]));
            files.Add($"run-{slugs[index]}.csv", RunCsv.Write(design, runs[^1]));
        }

        _words.In(parsed, design.Brief, context, () =>
        {
            SvgOptions read = svg with { Language = ReadersWords.Language };
            foreach (int index in chosen)
            {
                Sheet chart = RunSheet.Of(design, index);
                files.Add($"draw/run-{slugs[index]}.svg", SvgWriter.Bytes(chart, read));
                charts.Add(chart);
            }
        });
        warnings.AddRange(charts.SelectMany(c => c.Warnings));

        warnings.AddRange(MissingLetters.Of(charts, () => svg.Font));
        FolderOptions.Say(files.Commit(FolderOptions.Claim(named, design) with { TakesOver = parsed.GetValue(_takeOver) }), context);
        FindingWords.Say(design.Findings, context, ReadersUnit.Of(design.Brief));
        FindingWords.SayOfDrawings(warnings, context);
        if (context.Json)
        {
            context.WriteJson(json => Write(json, design, runs));
        }
        else
        {
            ShowRuns(context, design, runs);
            foreach (string name in files.Names)
            {
                context.Out.WriteLine(Path.Combine(folder, name));
            }
        }

        return design.Meets ? ExitStatus.Done : ExitStatus.Findings;
    }

    private static int[] Chosen(IReadOnlyList<ScenarioBrief> scenarios, string? name)
    {
        if (scenarios.Count == 0)
        {
            throw new DesignRefusedException("arguments.scenario", "The file has no scenario to play; one looks like [[scenario]] name = \"one cycle\", steps = [ { at = \"0 s\", close = [\"thermostat\"] } ], duration = \"240 s\".");
        }

        int[] found = [.. Enumerable.Range(0, scenarios.Count).Where(i => name is null || string.Equals(scenarios[i].Name, name, StringComparison.OrdinalIgnoreCase))];
        return found.Length > 0
            ? found
            : throw new DesignRefusedException("arguments.scenario", $"There is no scenario '{name}'; the file has {string.Join(", ", scenarios.Select(s => $"'{s.Name}'"))}.");
    }

    private static void ShowRuns(CommandContext context, Design design, IReadOnlyList<ScenarioRun> runs)
    {
        foreach (ScenarioRun run in runs)
        {
            context.Out.WriteLine($"{run.Scenario.Name}: {Wording.Seconds(run.EndS)} of {Wording.Seconds(run.Scenario.DurationS)}{(run.IsCertain ? "" : "; the motor is undecided at times and taken as standing")}{(run.IsCutShort ? "; cut short" : "")}");
            List<string[]> rows = [["time s", "angle °", "turns", "what happens", "on"]];
            rows.AddRange(run.Moments.Select(m => (string[])
            [
                Wording.Number(m.TimeS, 3),
                Wording.Number(Angles.DegFromRad(m.AngleRad), 2),
                Wording.Number(m.Turns, 0),
                m.What,
                On(design, m),
            ]));
            int[] widths = [.. Enumerable.Range(0, rows[0].Length).Select(c => rows.Max(r => r[c].Length))];
            foreach (string[] row in rows)
            {
                context.Out.WriteLine(("  " + string.Join("  ", row.Select((cell, c) => c < 3 ? cell.PadLeft(widths[c]) : cell.PadRight(widths[c])))).TrimEnd());
            }

            context.Out.WriteLine("  on in all: " + string.Join(", ", design.Circuit.Loads.Select((l, i) => $"{l} {Wording.Seconds(run.OnTimeS(i))}")));
        }
    }

    private static string On(Design design, RunMoment moment)
    {
        IEnumerable<string> words = design.Circuit.Loads
            .Select((l, i) => (Name: l, State: moment.Loads[i]))
            .Where(l => l.State != LoadState.Off)
            .Select(l => l.State == LoadState.On ? l.Name : $"{l.Name} undecided");
        string on = string.Join(", ", words);
        return on.Length == 0 ? "-" : on;
    }

    private static void Write(Utf8JsonWriter json, Design design, IReadOnlyList<ScenarioRun> runs)
    {
        json.WriteStartObject();
        json.WriteStartArray("runs");
        foreach (ScenarioRun run in runs)
        {
            json.WriteStartObject();
            json.WriteString("scenario", run.Scenario.Name);
            Number(json, "end_s", run.EndS);
            json.WriteBoolean("certain", run.IsCertain);
            json.WriteBoolean("cut_short", run.IsCutShort);
            json.WriteStartObject("on_s");
            foreach ((string load, int i) in design.Circuit.Loads.Select((l, i) => (l, i)))
            {
                Number(json, load, run.OnTimeS(i));
            }

            json.WriteEndObject();
            json.WriteStartArray("moments");
            foreach (RunMoment moment in run.Moments)
            {
                Write(json, design, moment);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Design design, RunMoment moment)
    {
        json.WriteStartObject();
        Number(json, "time_s", moment.TimeS);
        Number(json, "at_deg", Angles.DegFromRad(moment.AngleRad));
        json.WriteNumber("turns", moment.Turns);
        json.WriteString("event", moment.What);
        json.WriteBoolean("turning", moment.IsTurning);
        json.WriteStrings("closed", moment.Closed);
        json.WriteStrings("inputs_closed", moment.ClosedInputs);
        json.WriteStartObject("loads");
        for (int i = 0; i < moment.Loads.Count; i++)
        {
            json.WriteString(design.Circuit.Loads[i], RunCsv.StateWord(moment.Loads[i]));
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Number(Utf8JsonWriter json, string key, double value) => json.WriteNumber(key, Math.Round(value, 6) + 0.0);
}
