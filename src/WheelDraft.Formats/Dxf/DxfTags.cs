using System.Globalization;
using System.Text;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf;

/// <summary>A DXF file in the making: pairs of a group code and a value, a line each.</summary>
internal sealed class DxfTags
{
    /// <summary>Decimals of angles in degrees: 1e-10° is far below a nanometre on any wheel.</summary>
    internal const int AngleDecimals = 10;

    /// <summary>Decimals of bulges: all that a double of that size holds, so that radii come out exact.</summary>
    private const int BulgeDecimals = 15;

    private readonly StringBuilder _text = new();
    private readonly int _decimals;

    internal DxfTags(int decimals) => _decimals = decimals;

    internal DxfTags Add(int code, string value)
    {
        _text.Append(code.ToString(CultureInfo.InvariantCulture).PadLeft(3)).Append('\n').Append(value).Append('\n');
        return this;
    }

    internal DxfTags Add(int code, int value) => Add(code, value.ToString(CultureInfo.InvariantCulture));

    internal DxfTags Handle(int code, int value) => Add(code, value.ToString("X", CultureInfo.InvariantCulture));

    internal DxfTags Length(int code, double value) => Add(code, FixedPoint.Real(value, _decimals));

    internal DxfTags Angle(int code, double angleDeg) => Add(code, FixedPoint.Real(angleDeg, AngleDecimals));

    /// <summary>The bulge of the piece from a vertex; none is written for a straight piece.</summary>
    internal DxfTags Bulge(double bulge) => bulge == 0 ? this : Add(42, FixedPoint.Real(bulge, BulgeDecimals));

    internal DxfTags Point(int code, double x, double y) => Length(code, x).Length(code + 10, y);

    internal DxfTags PointInPlane(int code, Point at) => Point(code, at.X, at.Y).Add(code + 20, "0.0");

    internal DxfTags Extents(Bounds bounds) =>
        Add(9, "$EXTMIN").PointInPlane(10, new(bounds.MinX, bounds.MinY))
            .Add(9, "$EXTMAX").PointInPlane(10, new(bounds.MaxX, bounds.MaxY));

    /// <summary>A text value in ASCII: other characters as <c>\U+nnnn</c>, control codes of the format made harmless.</summary>
    internal DxfTags Text(int code, string text)
    {
        StringBuilder ascii = new();
        string visible = text.Replace("%%", "%\\U+0025", StringComparison.Ordinal).Replace("^", "\\U+005E", StringComparison.Ordinal);
        foreach (Rune rune in visible.EnumerateRunes())
        {
            // Control characters would break the pairs of lines; what needs more than four digits is shown as a box.
            ascii.Append(
                Rune.IsControl(rune) ? " "
                : rune.IsAscii ? rune.ToString()
                : string.Create(CultureInfo.InvariantCulture, $"\\U+{(rune.IsBmp ? rune.Value : 0x25A1):X4}"));
        }

        return Add(code, ascii.ToString());
    }

    public override string ToString() => _text.ToString();
}

/// <summary>Names and colours of the layers.</summary>
internal static class CutLayerNames
{
    internal static string NameOf(CutLayer layer) => layer switch
    {
        CutLayer.Mark => "MARK",
        CutLayer.Fold => "FOLD",
        CutLayer.Recess => "RECESS",
        CutLayer.Lead => "LEAD",
        CutLayer.Window => "WINDOW",
        CutLayer.Outline => "OUTLINE",
        CutLayer.Tab => "TAB",
        CutLayer.Note => "NOTE",
        _ => throw new ArgumentOutOfRangeException(nameof(layer), layer, "Not a layer of cutting files."),
    };

    /// <summary>Index in the format's fixed list of colours; only to distinguish layers on a screen.</summary>
    internal static int ColourOf(CutLayer layer) => layer switch
    {
        CutLayer.Mark => 6,
        CutLayer.Fold => 3,
        CutLayer.Recess => 4,
        CutLayer.Lead => 2,
        CutLayer.Window => 5,
        CutLayer.Outline => 7,
        CutLayer.Tab => 1,
        _ => 8,
    };
}
