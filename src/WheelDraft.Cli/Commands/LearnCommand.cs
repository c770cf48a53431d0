using System.CommandLine;
using System.Text.Json;
using WheelDraft.Engineering;
using WheelDraft.Formats.BenchLog;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft learn</c>: a parameter file from a bench log or a table of measured angles. An existing file is never overwritten: exit status 3.</summary>
internal sealed class LearnCommand : ICommand
{
    // A table of angles has a row an edge pair; more than this is something else.
    private const int MostAngleBytes = 1 << 20;

    private readonly Argument<string> _log = new("LOG") { Description = "Bench log as CSV, or a table output,on_deg,off_deg of an old wheel" };
    private readonly Option<string> _file = new("--out", "-o") { HelpName = "FILE", Description = "Parameter file to write", Required = true };
    private readonly Option<string> _angles = new Option<string>("--angles") { HelpName = "KIND", Description = "What a table of angles holds: copper (edges of the copper, from the home mark, anticlockwise) or turned (turned from home, read with a meter)", DefaultValueFactory = _ => "copper" }.Suggesting("copper", "turned");
    private readonly LogArguments _arguments = new();

    /// <inheritdoc/>
    public Command Describe()
    {
        Command command = new("learn", "Write a parameter file from a bench log, or from the measured angles of an old wheel") { _log, _file, _angles };
        foreach (Option option in _arguments.All)
        {
            command.Add(option);
        }

        return command;
    }

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        string log = parsed.GetRequiredValue(_log), file = parsed.GetRequiredValue(_file);
        string angles = parsed.GetRequiredValue(_angles);
        if (angles is not ("copper" or "turned"))
        {
            throw new DesignRefusedException("arguments.angles", $"--angles knows copper and turned, not '{angles}'");
        }

        context.InputFile = log;
        if (TableOfAngles(log, context) is byte[] table)
        {
            IReadOnlyList<MeasuredStretch> rows = AnglesReader.Read(table);
            FileSet.WriteNew(context.PathOf(file), LearnedFile.Of(rows, Path.GetFileName(log), angles is "turned"));
            Tell(context, file, json => json.WriteNumber("stretches", rows.Count), [FormattableString.Invariant($"{rows.Count} stretches of copper from {log}")]);
            return ExitStatus.Done;
        }

        LogReading read = _arguments.Read(log, parsed, context);
        LearnedProgramme learned = LearnedProgramme.Of(BenchTurns.Of(read.Record, _arguments.TurnTimeS(parsed)));
        FileSet.WriteNew(context.PathOf(file), LearnedFile.Of(learned, Path.GetFileName(log), read.Taken));
        Tell(context, file, json => Write(json, learned, read.Taken), Words(learned, read.Taken));
        return ExitStatus.Done;
    }

    private static byte[]? TableOfAngles(string named, CommandContext context)
    {
        using FileStream file = LogArguments.Open(named, context);
        byte[] beginning = new byte[MostAngleBytes + 1];
        int read = file.ReadAtLeast(beginning, beginning.Length, throwOnEndOfStream: false);
        return !AnglesReader.IsTable(beginning.AsSpan(0, read)) ? null
            : read <= MostAngleBytes ? beginning[..read]
            : throw new DesignRefusedException("log.angles", "A table of angles of more than 1 MiB is none.");
    }

    private static void Tell(CommandContext context, string file, Action<Utf8JsonWriter> figures, IEnumerable<string> words)
    {
        if (context.Json)
        {
            context.WriteJson(json =>
            {
                json.WriteStartObject();
                json.WriteString("file", file);
                figures(json);
                json.WriteEndObject();
            });
        }
        else
        {
            foreach (string line in words)
            {
                context.Out.WriteLine(line);
            }
        }

        context.Say($"wrote {file}; next: wheeldraft check {file}, which names what is left to enter");
    }

    private static IEnumerable<string> Words(LearnedProgramme learned, IReadOnlyList<string> taken)
    {
        foreach (string line in taken)
        {
            yield return line;
        }

        BenchTurns turns = learned.Turns;
        yield return FormattableString.Invariant($"turn time {turns.TurnTime.MeanS:0.###} s, standard deviation {turns.TurnTime.SpreadS:0.###} s over {turns.TurnTime.Count} turns, uncertainty {turns.TurnTime.UncertaintyS:0.###} s{(turns.IsTurnFound ? turns.IsTurnSure ? "" : "; seen to repeat only once" : ", as given")}");
        if (turns.Unexplained > 0)
        {
            yield return FormattableString.Invariant($"{turns.Unexplained} edges fit into no turn and were left out");
        }

        yield return turns.Stops == 0 ? "the wheel never stood: what holds the motor cannot be told"
            : turns.MotorHolders.Count == 1 ? FormattableString.Invariant($"the wheel stood {turns.Stops} times, at the break of '{turns.MotorHolders[0]}', which holds the motor")
            : FormattableString.Invariant($"the wheel stood {turns.Stops} times; what holds the motor cannot be told{(turns.MotorHolders.Count > 1 ? ": " + string.Join(", ", turns.MotorHolders) : "")}");
        yield return learned.HomeWords;
        List<string[]> rows = [["output", "from s", "for s", "spread s", "n", "uncertainty s"]];
        rows.AddRange(learned.Outputs.SelectMany(o => o.Periods.Count == 0
            ? [[o.Name, o.IsAlwaysOn ? "always" : "never", "-", "-", "-", "-"]]
            : o.Periods.Select(p => (string[])
            [
                o.Name, Wording.Fixed(p.FromS, 2), Wording.Fixed(p.ForS, 2), Wording.Fixed(p.Measured.On.SpreadS, 3), Wording.Number(p.Measured.On.Count, 0), Wording.Fixed(p.Measured.On.UncertaintyS, 3),
            ])));
        foreach (string line in TextTable.Lines(rows))
        {
            yield return line;
        }
    }

    private static void Write(Utf8JsonWriter json, LearnedProgramme learned, IReadOnlyList<string> taken)
    {
        BenchTurns turns = learned.Turns;
        json.WriteStrings("taken", taken);
        Number(json, "turn_time_s", turns.TurnTime.MeanS);
        Number(json, "turn_time_spread_s", turns.TurnTime.SpreadS);
        Number(json, "turn_time_uncertainty_s", turns.TurnTime.UncertaintyS);
        json.WriteNumber("turns", turns.TurnTime.Count);
        json.WriteBoolean("turn_time_found", turns.IsTurnFound);
        json.WriteNumber("stops", turns.Stops);
        json.WriteStrings("motor_held_by", turns.MotorHolders);
        json.WriteNumber("unexplained_edges", turns.Unexplained);
        json.WriteString("home", learned.HomeWords);
        json.WriteStartArray("outputs");
        foreach (LearnedOutput output in learned.Outputs)
        {
            json.WriteStartObject();
            json.WriteString("output", output.Name);
            json.WriteBoolean("always", output.IsAlwaysOn);
            json.WriteStartArray("on");
            foreach (LearnedPeriod period in output.Periods)
            {
                json.WriteStartObject();
                Number(json, "from_s", period.FromS);
                Number(json, "for_s", period.Measured.On.MeanS);
                Number(json, "spread_s", period.Measured.On.SpreadS);
                Number(json, "uncertainty_s", period.Measured.On.UncertaintyS);
                json.WriteNumber("readings", period.Measured.On.Count);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Number(Utf8JsonWriter json, string key, double value) => json.WriteNumber(key, Math.Round(value, 6) + 0.0);
}
