using System.Text;
using WheelDraft.Formats.Dxf.Reading;

namespace WheelDraft.Tests.Dxf.Reading;

/// <summary>DXF files written by hand: "code value" pairs with bars between them.</summary>
internal static class HandWritten
{
    /// <summary>A file in millimetres with these entities and blocks.</summary>
    internal static byte[] File(string entities, string blocks = "", string header = "9 $ACADVER|1 AC1015|9 $INSUNITS|70 4") =>
        Bytes($"0 SECTION|2 HEADER|{header}|0 ENDSEC|0 SECTION|2 BLOCKS|{blocks}|0 ENDSEC|0 SECTION|2 ENTITIES|{entities}|0 ENDSEC|0 EOF");

    internal static byte[] Bytes(string pairs)
    {
        StringBuilder text = new();
        foreach (string pair in pairs.Split('|', StringSplitOptions.RemoveEmptyEntries))
        {
            int blank = pair.IndexOf(' ', StringComparison.Ordinal);
            text.Append(pair[..blank].PadLeft(3)).Append('\n').Append(pair[(blank + 1)..]).Append('\n');
        }

        return Encoding.Latin1.GetBytes(text.ToString());
    }

    internal static ReadDrawing Read(string entities, string blocks = "", DxfReadOptions? options = null) => DxfReader.Read(File(entities, blocks), options);

    internal static string Line(double x0, double y0, double x1, double y1, string layer = "A") =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"0 LINE|8 {layer}|10 {x0}|20 {y0}|11 {x1}|21 {y1}|");

    internal static string Square(double x, double y, double side, string layer = "A") =>
        Line(x, y, x + side, y, layer) + Line(x + side, y, x + side, y + side, layer) + Line(x, y + side, x + side, y + side, layer) + Line(x, y, x, y + side, layer);

    internal static string Codes(ReadDrawing drawing) => string.Join(' ', drawing.Remarks.Select(r => r.Code));
}
