using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.BenchLog;

/// <summary>A parameter file from what was measured: whole and commented; what was not measured says ENTER and what, so that a check names it.</summary>
/// <remarks>Values that begin with ENTER are no quantities and no words of the format: the reader refuses every one of them in one run.</remarks>
internal sealed class LearnedFile
{
    private readonly StringBuilder _text = new();

    private LearnedFile()
    {
    }

    /// <summary>From a log.</summary>
    /// <param name="learned">What was learned.</param>
    /// <param name="source">Name of the log.</param>
    /// <param name="taken">What was taken for what.</param>
    public static byte[] Of(LearnedProgramme learned, string source, IReadOnlyList<string> taken)
    {
        LearnedFile file = new();
        BenchTurns turns = learned.Turns;
        file.Head($"Learned from {source}", [.. taken, learned.HomeWords]);
        file.Drive(
            Invariant($"\"{learned.TurnTimeS:0.##} s\""),
            turns.IsTurnFound ? Invariant($"measured: {Spread(turns.TurnTime)}; at the frequency that the mains had, which the log does not say") : "as given",
            HolderWords(turns));
        file.Board();
        foreach (LearnedOutput output in learned.Outputs)
        {
            file.Output(output);
        }

        file.Foot();
        return file.Bytes();
    }

    /// <summary>From a table of angles.</summary>
    /// <param name="rows">Its rows.</param>
    /// <param name="source">Name of the table.</param>
    /// <param name="areTurned">Whether the angles are those of the turn, read with a meter, and not those of the copper.</param>
    public static byte[] Of(IReadOnlyList<MeasuredStretch> rows, string source, bool areTurned)
    {
        LearnedFile file = new();
        file.Head($"Learned from {source}", [areTurned
            ? "angles are taken as turned from home until the contact makes and breaks, read with a meter"
            : "angles are taken as those of the copper's edges from the home mark, anticlockwise seen from the wiper side, whatever way the wheel turns; on_deg is where copper begins"]);
        file.Drive("\"ENTER: one turn, timed over several turns, e.g. 180 s\"", "a table of angles does not tell it", ["what holds the motor was not measured"]);
        file.Board(rows.FirstOrDefault(r => string.Equals(r.Output, "feed", StringComparison.OrdinalIgnoreCase)));
        foreach (IGrouping<string, MeasuredStretch> output in rows.Where(r => !string.Equals(r.Output, "feed", StringComparison.OrdinalIgnoreCase)).GroupBy(r => r.Output, StringComparer.OrdinalIgnoreCase))
        {
            file.Output([.. output], areTurned);
        }

        file.Foot();
        return file.Bytes();
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);

    private static string Spread(MeanReading reading) => Invariant($"mean of {reading.Count}, standard deviation {reading.SpreadS:0.###} s, uncertainty of the mean {reading.UncertaintyS:0.###} s");

    private static List<string> HolderWords(BenchTurns turns) => turns.MotorHolders switch
    {
        [var one] => [$"'{one}' holds the motor: the wheel came to stand at its break, {Times(turns.Stops)}"],
        { Count: > 1 } several => [$"the wheel came to stand, {Times(turns.Stops)}, at a break that {string.Join(" and ", several.Select(s => $"'{s}'"))} share: which of them holds the motor cannot be told"],
        _ when turns.Stops > 0 => [$"the wheel stood {Times(turns.Stops)}, not always at the same break: what holds the motor cannot be told"],
        _ => ["the wheel never stood in the log: what holds the motor cannot be told"],
    };

    private static string Times(int count) => count == 1 ? "once" : Invariant($"{count} times");

    private void Line(string text = "") => _text.Append(text).Append('\n');

    private void Key(string key, string value, string comment)
    {
        const int column = 40;
        string pair = $"{key} = {value}";
        Line(comment.Length == 0 ? pair : pair.Length < column ? pair.PadRight(column) + "# " + comment : $"{pair}   # {comment}");
    }

    private void Ask(string key, string what, string comment = "") => Key(key, Text($"ENTER: {what}"), comment);

    // A basic string of TOML escapes what JSON escapes.
    private static string Text(string value) => $"\"{JsonEncodedText.Encode(value, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";

    private void Head(string title, IReadOnlyList<string> notes)
    {
        Line($"# {OneLine(title)}.");
        Line("# What was measured stands here; whatever says ENTER was not: enter it, then run wheeldraft check, which names all that is left.");
        Line("# What every key means: wheeldraft keys, or e.g. wheeldraft keys station");
        Line("#");
        foreach (string note in notes)
        {
            Line($"# - {OneLine(note)}");
        }

        Key("format", "1", "format of this file; always 1");
        Key("title", Text(Shortened(OneLine(title))), "on drawings and reports");
        Key("drawing", "\"1\"", "drawing number, goes into title blocks; yours");
        Key("drawing_units", "\"mm\"", "mm or in");
        Line();
        Line("[supply]");
        Ask("voltage", "from the plate, r.m.s., e.g. 230 V");
        Ask("frequency", "that of the mains when it was measured, e.g. 50 Hz", "the times below hold for it");
        Key("frequency_tolerance", "\"1 %\"", "a synchronous grid nearly always keeps it (EN 50160); an island or a generator does not");
        Ask("overvoltage_category", "I, II, III or IV", "II for what a plug feeds");
        Line();
        Line("[environment]");
        Ask("pollution_degree", "a number without quotes: 1, 2 or 3", "3 where it is damp or dusty");
        Ask("condensation", "true or false, without quotes", "frost or dew on live parts");
        Line();
    }

    private static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));

    private static string Shortened(string title)
    {
        const int most = 60;
        return title.Length <= most ? title : title[..most];
    }

    private void Drive(string turnTime, string how, IReadOnlyList<string> notes)
    {
        Line("[drive]");
        foreach (string note in notes)
        {
            Line($"# {OneLine(note)}");
        }

        Key("turn_time", turnTime, how);
        Ask("direction", "clockwise or anticlockwise, seen from the wiper side", "no log tells it");
        Line();
    }

    private void Board(MeasuredStretch? feed = null)
    {
        Line("[spacing]");
        Ask("standard", "IEC 60664-1 or IEC 60335-1");
        Ask("between_live", "functional, basic, supplementary or reinforced", "functional is usual");
        Ask("to_earthed", "functional, basic, supplementary or reinforced", "basic on the mains");
        Ask("to_touchable", "functional, basic, supplementary or reinforced", "reinforced on the mains");
        Ask("open_contact", "functional or none", "rule for an open wiper to the copper of the wheel");
        Key("margin", "\"0.2 mm\"", "on top of the rule; yours to choose");
        Line();
        Line("[wheel]");
        Key("construction", "\"windowed\"", "one copper piece; for separate lands write lands, drop [feed] and give each output return_station and return_net");
        Key("outer_diameter", "\"auto\"", "the smallest that meets every rule; or what has room");
        Ask("thickness", "of the copper, e.g. 0.5 mm");
        Ask("material", "alloy and temper, e.g. C11000-H02");
        Key("bore", "{ diameter = \"ENTER: of the shaft, e.g. 6 mm\" }", "flat = \"5 mm\" beside it for a D bore");
        Ask("shaft", "insulating, live, earthed, touchable or floating");
        Ask("run_out", "radial, total indicator reading, e.g. 0.1 mm");
        Ask("face_run_out", "axial, total, e.g. 0.1 mm");
        Ask("web", "least copper between windows, e.g. 1.2 mm");
        Line();
        Line("[carrier]");
        Ask("material_group", "I, II, IIIa or IIIb", "by its comparative tracking index; IIIa unless its maker says better");
        Ask("thickness", "of the carrier alone, e.g. 3 mm");
        Line();
        Line("[process]");
        Ask("name", "how it is cut, e.g. fibre-laser, photo-etch, router or fretsaw");
        Line();
        Line("[feed]                                  # the wiper that brings the wheel its net");
        Key("net", "\"L\"", "the line; yours to name");
        Measured("station", feed, "station_deg", "deg", "where it touches, anticlockwise from the right, e.g. 0 deg");
        Measured("contact_length", feed, "contact_length_mm", "mm", "patch along the motion, e.g. 0.8 mm");
        Measured("contact_width", feed, "contact_width_mm", "mm", "patch along the radius, e.g. 3 mm");
        Ask("side_play", "radial, plus and minus, e.g. 0.1 mm");
        if (feed?.Also.ContainsKey("radius_mm") == true)
        {
            Measured("radius", feed, "radius_mm", "mm", "");
        }

        Line();
    }

    private void Measured(string key, MeasuredStretch? row, string column, string unit, string ask)
    {
        if (row is not null && row.Also.TryGetValue(column, out double value))
        {
            Key(key, Invariant($"\"{value:0.######} {unit}\""), "measured");
        }
        else
        {
            Ask(key, ask);
        }
    }

    private void Output(LearnedOutput output)
    {
        Line("[[output]]");
        Key("name", Text(output.Name), "");
        if (output.IsAlwaysOn)
        {
            Key("on", "\"always\"", "it never opened in the log");
        }
        else if (output.Periods.Count == 0)
        {
            Ask("on", "a list, e.g. [ { from = '122 s', for = '5.5 s' } ]", "it never made and broke within the log");
        }
        else
        {
            Line("on = [");
            foreach (LearnedPeriod period in output.Periods)
            {
                Line(Invariant($"  {{ from = \"{period.FromS:0.##} s\", for = \"{period.ForS:0.##} s\" }},   # {Spread(period.Measured.On)}"));
            }

            Line("]");
        }

        if (!output.IsAlwaysOn)
        {
            Ask("tolerance", "wanted limit on the on-time, plus and minus, e.g. 1 s");
        }

        Patch(null);
    }

    private void Output(IReadOnlyList<MeasuredStretch> rows, bool areTurned)
    {
        Line("[[output]]");
        Key("name", Text(rows[0].Output), "");
        string stretches = string.Join(", ", rows.Select(r => Invariant($"{{ from = \"{Turn(r.OnDeg):0.####} deg\", to = \"{Turn(r.OffDeg):0.####} deg\" }}")));
        Key(areTurned ? "on" : "copper", $"[ {stretches} ]", "measured");
        if (!areTurned)
        {
            Key("measured_to", "\"0.5 deg\"", "how exactly each edge was read: half a degree is usual");
        }

        Ask("tolerance", "wanted limit on the on-time, plus and minus, e.g. 1 s");
        MeasuredStretch first = rows.FirstOrDefault(r => r.Also.Keys.Any(k => AnglesReader.MayHave.Contains(k, StringComparer.Ordinal))) ?? rows[0];
        if (!areTurned || first.Also.ContainsKey("radius_mm"))
        {
            Measured("radius", first, "radius_mm", "mm", "from the axis to the middle of its track, e.g. 24 mm");
        }

        Patch(first);
    }

    private static double Turn(double deg) => deg - (360 * Math.Floor(deg / 360));

    private void Patch(MeasuredStretch? row)
    {
        Measured("station", row, "station_deg", "deg", "where its wiper touches, anticlockwise from the right, e.g. 120 deg");
        Measured("contact_length", row, "contact_length_mm", "mm", "patch along the motion, e.g. 0.4 mm");
        Measured("contact_width", row, "contact_width_mm", "mm", "patch along the radius, e.g. 2 mm");
        Ask("side_play", "radial, plus and minus, e.g. 0.1 mm");
        Line();
    }

    private void Foot()
    {
        Line("# What the timer feeds lets working voltages and interlocks be worked out; for each load, and for the motor, e.g.:");
        Line("# [[load]]");
        Line("# name = \"valve\"");
        Line("# between = [\"mist\", \"N\"]");
        Line("# power = \"7 W\"");
        Line("# [drive_motor]");
        Line("# between = [\"run\", \"N\"]");
        Line("# power = \"3 W\"");
    }

    private byte[] Bytes() => Encoding.UTF8.GetBytes(_text.ToString());
}
