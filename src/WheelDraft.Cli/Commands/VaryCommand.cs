using System.CommandLine;
using System.Text.Json;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Formats.Raster;
using WheelDraft.Formats.Report;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft vary</c>: one or two keys over a range or a list, every point a full design: a table here, CSV and chart in a folder.</summary>
internal sealed class VaryCommand : ICommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "Parameter file" };
    private readonly Option<string[]> _keys = new("--key")
    {
        HelpName = "KEY=VALUES",
        Description = "A key and its values, once or twice: 'output.mist.tolerance=0.5 s..2 s/16' is 16 values from 0.5 s to 2 s, both among them; 'wheel.web=1 mm,1.5 mm' a list. Tables of a kind go by their name, items of a list by their number from 1: drive.coast[2]",
    };

    private readonly Option<string> _folder = new("--out", "-o") { HelpName = "DIR", Description = "Folder for vary.csv and draw/vary.svg; out/ and the file's name when left out" };
    private readonly Option<bool> _takeOver = FolderOptions.TakeOver();
    private readonly PictureOptions _pictures = new();

    /// <inheritdoc/>
    public Command Describe()
    {
        Command command = new("vary", "Varies one or two keys over a range or a list: table, CSV and chart of diameter, times, distances, forces and verdict") { _file, _keys, _folder, _takeOver };
        foreach (Option option in _pictures.OfSvg)
        {
            command.Add(option);
        }

        return command;
    }

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        string named = parsed.GetRequiredValue(_file);
        SvgOptions asked = _pictures.Svg(parsed);
        VariedKey[] keys = Keys(parsed.GetValue(_keys) ?? []);
        byte[] bytes = ParameterFile.Bytes(named, context);
        Brief brief = DesignFile.ReadBrief(named, bytes, context);
        VariedDesigns varied = new(keys, Points(bytes, keys, context));
        SvgOptions svg = asked with { Font = ScriptFont.Of(brief), IdPrefix = SvgOptions.PrefixFrom(brief.DrawingNumber, brief.Title) };
        string folder = parsed.GetValue(_folder) ?? Path.Combine("out", Path.GetFileNameWithoutExtension(named));
        using FileSet files = new(context.PathOf(folder), context.Stop);
        Sheet chart = VarySheet.Of(brief, varied);
        files.Add("vary.csv", VaryCsv.Write(varied));
        files.Add("draw/vary.svg", SvgWriter.Bytes(chart, svg));
        FolderOptions.Say(files.Commit(FolderOptions.Claim(named, brief) with { TakesOver = parsed.GetValue(_takeOver) }), context);
        FindingWords.SayOfDrawings([.. chart.Warnings, .. MissingLetters.Of([chart], () => svg.Font)], context);
        if (context.Json)
        {
            context.WriteJson(json => Write(json, varied));
        }
        else
        {
            Show(context, varied, ReadersUnit.Of(brief));
            foreach (string name in files.Names)
            {
                context.Out.WriteLine(Path.Combine(folder, name));
            }
        }

        return varied.Points.All(p => p.First is null) ? ExitStatus.Done : ExitStatus.Findings;
    }

    private static VariedKey[] Keys(string[] asked)
    {
        if (asked.Length is not (1 or 2))
        {
            throw new DesignRefusedException("arguments.key", "--key stands once or twice: vary FILE --key 'output.mist.tolerance=0.5 s..2 s/16'; with a second one the chart is a map.");
        }

        VariedKey[] keys = [.. asked.Select(ValueRange.Of)];
        long count = keys.Aggregate(1L, (n, k) => n * k.Values.Count);
        return count <= Budgets.DesignsVaried ? keys
            : throw new DesignRefusedException("arguments.key", FormattableString.Invariant($"--key: these are {count} designs; a table has at most {Budgets.DesignsVaried}. Ask for fewer values."));
    }

    private static VariedPoint[] Points(byte[] bytes, VariedKey[] keys, CommandContext context)
    {
        string[][] values = [.. keys[0].Values.SelectMany(v => keys.Length > 1 ? keys[1].Values.Select(w => (string[])[v, w]) : [[v]])];

        // A wrong name of a key is the same in every design: it is told once, before any work.
        ParameterReader.Read(bytes, null, Changes(keys, values[0]));
        using Progress progress = new(context, $"of {Wording.Number(values.Length, 0)} designs");
        BandMemory bands = new();
        return Cores.InOrder(values, v => Point(bytes, keys, v, bands), progress.Step, context.Stop);
    }

    private static ValueChange[] Changes(VariedKey[] keys, string[] values) => [.. keys.Zip(values, (k, v) => new ValueChange(k.Name, v))];

    private static VariedPoint Point(byte[] bytes, VariedKey[] keys, string[] values, BandMemory bands)
    {
        ParameterResult read = ParameterReader.Read(bytes, null, Changes(keys, values));
        return VariedPoint.Of(values, read.Brief, read.Diagnostics.Select(d => Finding.Error("parameters", d.Message, d.Place)).FirstOrDefault(), bands);
    }

    private static void Show(CommandContext context, VariedDesigns varied, ReadersUnit unit)
    {
        const int mostWords = 90;
        List<string[]> rows = [[.. varied.Keys.Select(k => k.Name), $"diameter {unit.Sign}", "on-time s", "least ratio", "force N", "torque mN m", "verdict"]];
        rows.AddRange(varied.Points.Select(p => (string[])
        [
            .. p.Values,
            p.Merits is { } m ? unit.Number(m.DiameterMm) : "-",
            Figure(p.Merits?.WorstOnTimeS, 3), Figure(p.Merits?.Tightest?.Ratio, 3),
            p.Merits?.LeastForceN is double least ? $"{Figure(least, 2)} to {Figure(p.Merits.MostForceN, 2)}" : "-",
            Figure(1000 * p.Merits?.TorqueNm, 1), p.Verdict,
        ]));
        string[] lines = [.. TextTable.Lines(rows, varied.Keys.Count)];
        context.Out.WriteLine(lines[0]);
        foreach ((string line, VariedPoint point) in lines.Skip(1).Zip(varied.Points))
        {
            string first = point.First is null ? "" : unit.Words(point.First.Message).ReplaceLineEndings(" ");
            context.Out.WriteLine(first.Length == 0 ? line : $"{line}: {(first.Length > mostWords ? first[..mostWords] + "…" : first)}");
        }
    }

    private static string Figure(double? value, int decimals) => value is double number && double.IsFinite(number) ? Wording.Number(number, decimals) : "-";

    private static void Write(Utf8JsonWriter json, VariedDesigns varied)
    {
        json.WriteStartObject();
        json.WriteStrings("keys", varied.Keys.Select(k => k.Name));
        json.WriteStartArray("rows");
        foreach (VariedPoint point in varied.Points)
        {
            json.WriteStartObject();
            json.WriteStrings("values", point.Values);
            json.WriteString("verdict", point.Verdict);
            if (point.Merits is { } m)
            {
                json.WriteNumber("errors", m.Errors);
                Number(json, "diameter_mm", m.DiameterMm);
                Number(json, "worst_on_time_s", m.WorstOnTimeS);
                Number(json, "least_ratio", m.Tightest?.Ratio);
                Number(json, "least_margin_mm", m.Tightest?.SpareMm);
                if (m.Tightest is { } tight)
                {
                    json.WriteString("tightest", tight.What);
                }

                Number(json, "least_force_n", m.LeastForceN);
                Number(json, "most_force_n", m.MostForceN);
                Number(json, "torque_mn_m", 1000 * m.TorqueNm);
            }

            if (point.First is { } first)
            {
                json.WriteString("first_finding", first.Message);
                json.WriteString("code", first.Code);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    // A figure that was not worked out is absent, never 0.
    private static void Number(Utf8JsonWriter json, string key, double? value)
    {
        if (value is double number && double.IsFinite(number))
        {
            json.WriteNumber(key, Math.Round(number, 6) + 0.0);
        }
    }
}
