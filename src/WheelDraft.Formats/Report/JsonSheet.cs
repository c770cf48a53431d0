using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Report;

/// <summary>Writes one JSON document: numbers rounded before they are written, never a negative zero, keys with their units.</summary>
internal sealed class JsonSheet : IDisposable
{
    // Figures are rounded to a nanometre and to 1e-7 of a degree: below what anyone can make or measure, above the
    // differences between platforms' sines.
    private const int LengthDecimals = 6;
    private const int AngleDecimals = 7;
    private const int PlainDecimals = 6;

    private readonly ArrayBufferWriter<byte> _bytes = new();
    private readonly Utf8JsonWriter _json;

    public JsonSheet() => _json = new(_bytes, new JsonWriterOptions
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    public byte[] Finish()
    {
        _json.Flush();
        return [.. _bytes.WrittenSpan, (byte)'\n'];
    }

    public void Dispose() => _json.Dispose();

    public void Object(Action fill)
    {
        _json.WriteStartObject();
        fill();
        _json.WriteEndObject();
    }

    public void Object(string key, Action fill)
    {
        _json.WritePropertyName(key);
        Object(fill);
    }

    public void Array<T>(string key, IEnumerable<T> items, Action<T> write)
    {
        _json.WriteStartArray(key);
        foreach (T item in items)
        {
            write(item);
        }

        _json.WriteEndArray();
    }

    public void Objects<T>(string key, IEnumerable<T> items, Action<T> fill) => Array(key, items, item => Object(() => fill(item)));

    public void Text(string key, string value) => _json.WriteString(key, value);

    public void TextValue(string value) => _json.WriteStringValue(value);

    public void Texts(string key, IEnumerable<string> values) => Array(key, values, TextValue);

    public void Whole(string key, long value) => _json.WriteNumber(key, value);

    public void Flag(string key, bool value) => _json.WriteBoolean(key, value);

    public void Mm(string key, double value) => Raw(key, Figure(value, LengthDecimals));

    public void Deg(string key, double angleRad) => Raw(key, DegFigure(angleRad));

    public void Plain(string key, double value) => Raw(key, Figure(value, PlainDecimals));

    /// <summary>An angle that is no direction in the turn (a fold, a fold line from the radius): signed, in degrees, from radians.</summary>
    public void SignedDeg(string key, double angleRad) => Raw(key, ExtentFigure(angleRad));

    /// <summary>Several lengths on one line.</summary>
    public void MmList(string key, params IEnumerable<double> values) => Raw(key, List(values.Select(v => Figure(v, LengthDecimals))));

    public void RawList(string key, params IEnumerable<string> values) => Raw(key, List(values));

    /// <summary>A figure that is already written.</summary>
    public void RawAngle(string key, string figure) => Raw(key, figure);

    public void RawValue(string json) => _json.WriteRawValue(json);

    /// <summary>A length in mm as it stands in the document.</summary>
    public static string MmFigure(double value) => Figure(value, LengthDecimals);

    /// <summary>An angle in degrees within [0, 360), from radians.</summary>
    public static string DegFigure(double angleRad)
    {
        double deg = Math.Round(Angles.DegFromRad(Angles.InTurn(angleRad)), AngleDecimals);
        return Figure(deg >= 360 ? 0 : deg, AngleDecimals);
    }

    /// <summary>An extent in degrees, not reduced to one turn, from radians.</summary>
    public static string ExtentFigure(double angleRad) => Figure(Angles.DegFromRad(angleRad), AngleDecimals);

    /// <summary>A number with at most the given decimals.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is not finite: what was not evaluated is left out, never written.</exception>
    public static string Figure(double value, int decimals) => FixedPoint.Short(value, decimals);

    /// <summary>An object on one line, of keys and values that are already written.</summary>
    public static string Line(IEnumerable<(string Key, string Json)> members) =>
        string.Join(", ", members.Select(m => $"{Quoted(m.Key)}: {m.Json}")) is { Length: > 0 } inside ? "{ " + inside + " }" : "{}";

    /// <summary>A text as it stands in the document.</summary>
    public static string Quoted(string text) => "\"" + JavaScriptEncoder.UnsafeRelaxedJsonEscaping.Encode(text) + "\"";

    public static string List(IEnumerable<string> figures) => "[" + string.Join(", ", figures) + "]";

    private void Raw(string key, string json)
    {
        _json.WritePropertyName(key);
        _json.WriteRawValue(json);
    }
}
