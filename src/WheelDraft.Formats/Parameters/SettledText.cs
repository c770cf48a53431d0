using System.Globalization;
using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Parameters;

/// <summary>Writes into a file's text what was chosen and solved for it.</summary>
/// <param name="text">The text.</param>
/// <param name="autos">Where "auto" stands in it.</param>
/// <param name="asked">What was read from it.</param>
/// <param name="design">A design of it, everything chosen.</param>
internal sealed class SettledText(string text, AutoTexts autos, Brief asked, Design design)
{
    // Lengths that were solved are found to a nanometre; a wheel is written no smaller than it was found.
    private const int Decimals = 9;

    private readonly string _end = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
    private readonly List<(int At, int Length, string Instead)> _edits = [];

    /// <summary>The new text.</summary>
    /// <exception cref="DesignRefusedException">An "auto" does not stand there as a plain text.</exception>
    public string Write()
    {
        foreach ((string path, TextPlace place) in autos.Values)
        {
            if (ValueOf(path) is string value)
            {
                Replace(place, value);
            }
        }

        foreach ((int strip, (TextPlace key, bool isInline)) in autos.Strips)
        {
            Insert(key, string.Concat(Added(strip).Select(a => isInline ? $"{a}, " : a + _end + new string(' ', key.Column - 1))));
        }

        if (autos.FirstInList is TextPlace first)
        {
            Insert(first, string.Concat(Unnamed.Select(i => $"{{ {string.Join(", ", Named(i).Concat(Added(i)).Append($"shape = {Shape(design.Brief.Strips[i], isInline: true)}"))} }}, ")));
        }

        return Edited() + Appended();
    }

    // Strips that the program made for wipers without one.
    private IEnumerable<int> Unnamed => Enumerable.Range(autos.StripKeys.Count, asked.Strips.Count - autos.StripKeys.Count);

    /// <summary>The value of an "auto", as TOML; null for a name that happens to be the word.</summary>
    private string? ValueOf(string path)
    {
        string key = path[(path.LastIndexOf('.') + 1)..];
        int index = IndexIn(path);
        return path.Split('[')[0] switch
        {
            "wheel.order" => $"[{string.Join(", ", (design.Wheel.RingOrder ?? design.Brief.Wheel.RingOrder!).Select(FileText.Quoted))}]",
            "wheel.outer_diameter" => Mm(Up(design.Wheel.OuterDiameterMm)),
            "wheel.fixings.pitch_circle" => Mm(design.Wheel.PitchCircleMm!.Value),
            "feed.radius" => Mm(design.Wheel.Feed!.RadiusMm),
            "feed.station" => Deg(design.Wheel.Feed!.StationRad),
            "drive.motor" => $"\"{Number(design.Brief.Drive.MotorRpm!.Value)} rpm\"",
            "output" => key switch
            {
                "radius" => Mm(design.Wheel.Rings[index].RadiusMm),
                "station" => Deg(design.Wheel.Rings[index].StationRad),
                "return_station" => Deg(design.Wheel.Rings[index].Return!.StationRad),
                _ => null,
            },
            "strip" => Strip(path, index, key),

            // As for the wheel: no smaller than it was found.
            "cam" when key is "base_radius" => Mm(Up(design.Cams[index].BaseRadiusMm)),
            _ => null,
        };
    }

    private string? Strip(string path, int index, string key)
    {
        StripBrief strip = design.Brief.Strips[index];
        return key switch
        {
            "shape" => Shape(strip, autos.Strips[index].IsInline),
            "approach" => Deg(strip.ApproachRad!.Value),
            "deflection" => Mm(strip.DeflectionMm!.Value),
            "straight" => Mm(design.Strips.Strips[index].Form.Pieces.First(p => p.ShapeIndex == IndexIn(path[path.IndexOf("shape[", StringComparison.Ordinal)..])).DevelopedMm),
            _ => null,
        };
    }

    /// <summary>The keys of a strip that its file did not give, each as a line.</summary>
    private IEnumerable<string> Added(int index)
    {
        StripBrief strip = design.Brief.Strips[index];
        (string Key, string? Value)[] all =
        [
            ("material", FileText.Quoted(strip.Material)), ("thickness", Mm(strip.ThicknessMm)), ("grain", strip.Grain is StripGrain.Along ? "\"along\"" : strip.Grain is null ? null : "\"across\""),
            ("clamp", $"[{Mm(strip.Clamp!.Value.FromMm)}, {Mm(strip.Clamp.Value.ToMm)}]"), ("deflection", Mm(strip.DeflectionMm!.Value)), ("approach", Deg(strip.ApproachRad!.Value)), ("seated_on", FileText.Quoted(strip.SeatedOn!)),
        ];
        IReadOnlyList<string> has = index < autos.StripKeys.Count ? autos.StripKeys[index] : [];
        return all.Where(a => a.Value is not null && !has.Contains(a.Key, StringComparer.Ordinal)).Select(a => $"{a.Key} = {a.Value}");
    }

    // Strips that the file does not name: at its end, or where its strips are a list in brackets before the first of them.
    private string Appended()
    {
        StringBuilder more = new();
        foreach (int i in autos.FirstInList is null ? Unnamed : [])
        {
            more.Append(_end).Append("[[strip]]").Append(_end);
            foreach (string line in Named(i).Concat(Added(i)).Append($"shape = {Shape(design.Brief.Strips[i], isInline: false)}"))
            {
                more.Append(line).Append(_end);
            }
        }

        return more.Length > 0 && text.Length > 0 && text[^1] != '\n' ? _end + more : more.ToString();
    }

    private IEnumerable<string> Named(int index)
    {
        StripBrief strip = design.Brief.Strips[index];
        yield return $"name = {FileText.Quoted(strip.Name)}";
        yield return strip.Task is ServesOutput serves ? $"output = {FileText.Quoted(serves.Output)}" : "feed = true";
        if (strip.Task is ServesOutput { IsReturn: true })
        {
            yield return "wiper = \"return\"";
        }
    }

    private string Shape(StripBrief strip, bool isInline)
    {
        IEnumerable<string> pieces = strip.Shape.Select(Piece);
        return isInline ? $"[ {string.Join(", ", pieces)} ]" : $"[{_end}{string.Concat(pieces.Select(p => $"  {p},{_end}"))}]";
    }

    // A straight "auto" is solved, and written as long as it came out.
    private string Piece(StripPiece piece) => piece switch
    {
        StripTab tab => $"{{ tab = {FileText.Quoted(tab.Size)} }}",
        StripStraight s => $"{{ straight = {Mm(s.LengthMm ?? SolvedMm(s))}{Optional("width", s.WidthMm)}{Optional("width_end", s.WidthEndMm)} }}",
        StripBend b => $"{{ bend = {Deg(b.AngleRad)}, radius = {Mm(b.RadiusMm)}{(b.IsContact ? ", contact = true" : "")} }}",
        StripSweep w => $"{{ sweep = {Deg(w.AngleRad)}, radius = {Mm(w.RadiusMm)}{Optional("width", w.WidthMm)} }}",
        StripRivet r => $"{{ rivet = {Mm(r.HeightMm)}, radius = {Mm(r.DomeRadiusMm)}, diameter = {Mm(r.DiameterMm)} }}",
        _ => "",
    };

    private double SolvedMm(StripStraight piece) => design.Strips.Strips.First(s => s.Form.Strip.Shape.Any(p => ReferenceEquals(p, piece))).Form.AutoLengthMm!.Value;

    private static string Optional(string key, double? mm) => mm is double value ? $", {key} = {Mm(value)}" : "";

    // The number in the first brackets of a path.
    private static int IndexIn(string path)
    {
        int open = path.IndexOf('[', StringComparison.Ordinal), close = path.IndexOf(']', StringComparison.Ordinal);
        return open < 0 ? -1 : int.Parse(path.AsSpan(open + 1, close - open - 1), CultureInfo.InvariantCulture);
    }

    private static string Mm(double mm) => $"\"{Number(mm)} mm\"";

    private static double Up(double mm) => Math.Ceiling((mm * 1e9) - 1e-3) / 1e9;

    private static string Deg(double rad) => $"\"{Number(Angles.DegFromRad(rad))} deg\"";

    private static string Number(double value) => Wording.Number(value, Decimals);

    private int Offset(TextPlace place)
    {
        int line = text.Length > 0 && text[0] == '\uFEFF' && place.Line == 1 ? 1 : 0;
        for (int i = 1; i < place.Line; i++)
        {
            line = text.IndexOf('\n', line) + 1;
        }

        return line + place.Column - 1;
    }

    private void Replace(TextPlace place, string value)
    {
        const string plain = "\"auto\"";
        int at = Offset(place);
        if (at + plain.Length > text.Length || text.Substring(at, plain.Length) is not (plain or "'auto'"))
        {
            throw new DesignRefusedException("settle.layout", "This \"auto\" does not stand as a plain text in quotes; write it so and try again.", place);
        }

        _edits.Add((at, plain.Length, value));
    }

    private void Insert(TextPlace place, string words) => _edits.Add((Offset(place), 0, words));

    private string Edited()
    {
        StringBuilder made = new(text);
        foreach ((int at, int length, string instead) in _edits.OrderByDescending(e => e.At).ThenByDescending(e => e.Length))
        {
            made.Remove(at, length).Insert(at, instead);
        }

        return made.ToString();
    }
}
