using System.Globalization;
using System.Text;
using System.Text.Json;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Formats.Parameters;
using WheelDraft.Formats.Raster;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Benchmarks;

/// <summary>Our own times for what the scripts in the folder "others" do with well-known libraries, with the inputs that they need and what must come out.</summary>
internal static class CompareBenchmark
{
    private const int Rounds = 7;

    /// <summary>Writes one JSON object with a member for each script.</summary>
    public static void WriteJson(Stream to)
    {
        byte[] file = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "parameters", "propagation-bench.toml"));
        Design design = Design.Of(ParameterReader.Read(file).Brief!);
        using Utf8JsonWriter json = new(to, new() { Indented = true });
        json.WriteStartObject();
        Dxf(json, design);
        Svg(json, design);
        Png(json, design);
        Figure(json, design);
        json.WriteStartArray("circuit");
        foreach (int inputs in (int[])[2, 4, 6, 8])
        {
            Circuit(json, CircuitBenchmark.Large(periodsPerOutput: 1, inputs));
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    // The wheel's cutting file, written from lines and arcs that are there.
    private static void Dxf(Utf8JsonWriter json, Design design)
    {
        CutDrawing wheel = PartCutFile.Of(design, design.Parts.All.First(p => string.Equals(p.CutName, "wheel", StringComparison.Ordinal)));
        byte[] Written() => Encoding.ASCII.GetBytes(DxfWriter.Write(wheel, DxfVersion.R2000));
        json.WriteStartObject("dxf");
        json.WriteNumber("processor_ms", Clock.LeastProcessorMsOfMany(Written, Rounds));
        json.WriteString("file", Written());
        json.WriteEndObject();
    }

    // The wheel's sheet, drawn before, written as text.
    private static void Svg(Utf8JsonWriter json, Design design)
    {
        Sheet wheel = WheelSheet.Of(design);
        byte[] Written() => SvgWriter.Bytes(wheel);
        json.WriteStartObject("svg");
        json.WriteNumber("processor_ms", Clock.LeastProcessorMsOfMany(Written, Rounds));
        json.WriteString("file", Written());
        json.WriteEndObject();
    }

    // Every sheet of the demo. Letters are strokes in both files, so that both sides paint the same lines and no font is asked for.
    private static void Png(Utf8JsonWriter json, Design design)
    {
        IReadOnlyList<Sheet> sheets = DesignSheets.Of(design);
        using PictureMemory memory = new(4 * sheets.Max(s => PngWriter.PixelsOf(s, new PngOptions().Dpi)));
        json.WriteStartObject("png");
        json.WriteNumber("dpi", new PngOptions().Dpi);
        json.WriteNumber("processor_ms", Clock.LeastProcessorMsOfMany(() => sheets.Sum(s => PngWriter.Write(s, null, memory).Length), Rounds));
        json.WriteStartArray("sheets");
        foreach (Sheet sheet in sheets)
        {
            json.WriteStartObject();
            json.WriteString("name", sheet.Words.Name);
            json.WriteString("svg", SvgWriter.Write(sheet, new() { Text = SvgText.Strokes }));
            json.WriteBase64String("png", PngWriter.Write(sheet));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    // The timing chart from the design to the picture: laid out, drawn, painted, packed.
    private static void Figure(Utf8JsonWriter json, Design design)
    {
        Sheet chart = TimingSheet.Of(design);
        json.WriteStartObject("figure");
        json.WriteNumber("processor_ms", Clock.LeastProcessorMsOfMany(() => PngWriter.Write(TimingSheet.Of(design)).Length, Rounds));
        json.WriteNumber("width_mm", chart.WidthMm);
        json.WriteNumber("height_mm", chart.HeightMm);
        json.WriteNumber("dpi", new PngOptions().Dpi);
        json.WriteNumber("turn_s", design.Motion.TurnTimeS);
        json.WriteString("title", chart.Words.Title);
        json.WriteBase64String("png", PngWriter.Write(chart));
        json.WriteStartArray("rows");
        foreach ((string heading, TimingRow row) in new TimingRows(design).Sections().SelectMany(s => s.Rows.Select(r => (s.Heading, r))))
        {
            json.WriteStartObject();
            json.WriteString("heading", heading);
            json.WriteString("name", row.Name);
            json.WriteStartArray("bars");
            foreach (TimingBar bar in row.Bars)
            {
                json.WriteStartObject();
                json.WriteString("state", TimingPen.Meaning(bar.State));
                json.WriteNumber("from_s", bar.FromS);
                json.WriteNumber("for_s", bar.ForS);
                json.WriteString("words", bar.Words);
                Span(json, "make_s", bar.MakeS);
                Span(json, "break_s", bar.BreakS);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Span(Utf8JsonWriter json, string name, TimingSpan? span)
    {
        if (span is TimingSpan s)
        {
            json.WriteStartArray(name);
            json.WriteNumberValue(s.LeastS);
            json.WriteNumberValue(s.MostS);
            json.WriteEndArray();
        }
    }

    // Every state without fault. Ours solves the orders of edges that only tolerances bring about as well, and finds what can be reached.
    private static void Circuit(Utf8JsonWriter json, CircuitRequest request)
    {
        SoundCircuit Solved() => new(new CircuitModel(request));
        double ms = Clock.LeastProcessorMsOfMany(Solved, Rounds);
        SoundCircuit sound = Solved();
        CircuitModel model = sound.Model;
        json.WriteStartObject();
        json.WriteNumber("processor_ms", ms);
        json.WriteNumber("states", model.Turn.Intervals.Count * model.InputPositions);
        json.WriteNumber("positions", model.Turn.Positions.Count);
        Network(json, CircuitNetwork.Of(model));
        json.WriteStartArray("closed");
        foreach (TurnInterval interval in model.Turn.Intervals)
        {
            ulong[] row = model.Turn.Positions[interval.Position].Closed;
            json.WriteStringValue(string.Concat(model.Contacts.Select((_, c) => BitRow.Has(row, c) ? '1' : '0')));
        }

        json.WriteEndArray();
        Results(json, sound);
        json.WriteEndObject();
    }

    private static void Network(Utf8JsonWriter json, CircuitNetwork network)
    {
        json.WriteNumber("nodes", network.Nets.Count);
        Numbers(json, "held", [.. network.Lines.Select(l => (double[])[l.Node, l.PotentialV.Real, l.PotentialV.Imaginary]), [CircuitModel.Neutral, 0, 0], [CircuitModel.Earth, 0, 0]]);
        Numbers(json, "always_joined", network.WheelNode < 0 ? [] : [[network.WheelNode, network.FeedNode]]);
        Numbers(json, "contacts", network.Contacts.Select(c => (double[])[c.A, c.B]));
        Numbers(json, "inputs", network.Inputs.Select(i => (double[])[i.A, i.B]));
        Numbers(json, "loads", network.Loads.Select(l => (double[])[l.A, l.B, l.ImpedanceOhm.Real, l.ImpedanceOhm.Imaginary, l.OnAtV, l.OffAtV]));
    }

    private static void Numbers(Utf8JsonWriter json, string name, IEnumerable<double[]> rows)
    {
        json.WriteStartArray(name);
        foreach (double[] row in rows)
        {
            json.WriteStartArray();
            Array.ForEach(row, json.WriteNumberValue);
            json.WriteEndArray();
        }

        json.WriteEndArray();
    }

    // By interval, within it by input position, within that by load: 0 off, 1 on, 2 undecided; and the voltage over it, 32 bits each.
    private static void Results(Utf8JsonWriter json, SoundCircuit sound)
    {
        StringBuilder loads = new();
        using MemoryStream volts = new();
        using BinaryWriter to = new(volts);
        for (int interval = 0; interval < sound.Model.Turn.Intervals.Count; interval++)
        {
            for (int inputs = 0; inputs < sound.Model.InputPositions; inputs++)
            {
                CircuitState state = sound.State(interval, inputs);
                state.Loads.ToList().ForEach(l => loads.Append(((int)l).ToString(CultureInfo.InvariantCulture)));
                state.VoltsV.ToList().ForEach(v => to.Write((float)v));
            }
        }

        json.WriteString("load_states", loads.ToString());
        json.WriteBase64String("volts", volts.ToArray());
    }
}
