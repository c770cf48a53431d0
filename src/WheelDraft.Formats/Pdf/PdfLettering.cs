using System.Globalization;
using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Formats.Raster;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Pdf;

/// <summary>The stroke alphabet as fonts embedded in a PDF: each letter that the document uses once, as a procedure that strokes it.</summary>
/// <remarks>Type 3 fonts (ISO 32000-1, 9.6.5) whose letters take colour from the page, with tables that say which characters they are; so what is seen is the text
/// itself, found, copied and read aloud. At most 255 letters to a font, as a code is a byte; as many fonts as it takes.</remarks>
internal sealed class PdfLettering(ScriptFont? script)
{
    private const int MostLetters = 255;

    private readonly Dictionary<(string Text, TextWeight Weight), (PdfStrokeFont Font, int Code)> _letters = [];
    private readonly List<PdfStrokeFont> _fonts = [];

    /// <summary>Where on the page a text's line begins.</summary>
    public Point StartOf(SheetText text) =>
        script is null || text.Missing.Count == 0 ? text.StrokeStart : text.FrameFor(ScriptText.WidthMm(text.Text, text.Style.HeightMm, script)).Of(Point.Origin);

    /// <summary>A text as runs of codes, each in one font.</summary>
    public IEnumerable<(string Font, string Codes)> Runs(string text, TextWeight weight)
    {
        PdfStrokeFont? font = null;
        StringBuilder codes = new();
        foreach ((string letter, Glyph glyph) in Alphabet.Letters(text))
        {
            (PdfStrokeFont own, int code) = Letter(letter, glyph, weight);
            if (font is not null && own != font)
            {
                yield return (font.Name, codes.ToString());
                codes.Clear();
            }

            font = own;
            codes.Append(code.ToString("X2", CultureInfo.InvariantCulture));
        }

        if (font is not null)
        {
            yield return (font.Name, codes.ToString());
        }
    }

    /// <summary>Writes the fonts; what a page's resources say of them.</summary>
    public string Write(PdfFile file) => string.Concat(_fonts.Select(f => $"/{f.Name} {PdfFile.To(f.Write(file))}"));

    private (PdfStrokeFont Font, int Code) Letter(string letter, Glyph glyph, TextWeight weight)
    {
        if (!_letters.TryGetValue((letter, weight), out (PdfStrokeFont Font, int Code) known))
        {
            PdfStrokeFont? font = _fonts.Find(f => f.Weight == weight && f.Count < MostLetters);
            if (font is null)
            {
                font = new(string.Create(CultureInfo.InvariantCulture, $"F{_fonts.Count + 1}"), weight);
                _fonts.Add(font);
            }

            known = (font, script?.Of(letter) is ScriptGlyph outline ? font.Add(letter, outline) : font.Add(letter, glyph));
            _letters.Add((letter, weight), known);
        }

        return known;
    }
}

/// <summary>One font of strokes; its unit is a tenth of the height of capitals.</summary>
internal sealed class PdfStrokeFont(string name, TextWeight weight)
{
    private readonly List<(string Text, double Advance, string Procedure)> _letters = [];

    public string Name => name;

    public TextWeight Weight => weight;

    public int Count => _letters.Count;

    /// <summary>Takes a letter; its code, from 1.</summary>
    public int Add(string text, Glyph glyph) => Add(text, glyph.Advance, Strokes(glyph));

    /// <summary>Takes a letter of a font of outlines; its code, from 1.</summary>
    public int Add(string text, ScriptGlyph glyph) => Add(text, ScriptText.AdvanceTenths(glyph), Outline(glyph));

    private int Add(string text, double advance, string drawn)
    {
        _letters.Add((text, advance, $"{PdfPath.Number(advance)} 0 d0{drawn}"));
        return _letters.Count;
    }

    public int Write(PdfFile file)
    {
        string procedures = string.Concat(_letters.Select((l, i) => string.Create(CultureInfo.InvariantCulture, $"/g{i + 1} {file.AddStream(l.Procedure)} 0 R")));
        string names = string.Concat(_letters.Select((_, i) => string.Create(CultureInfo.InvariantCulture, $"/g{i + 1}")));
        string widths = string.Join(' ', _letters.Select(l => PdfPath.Number(l.Advance)));
        int unicode = file.AddStream(Characters());
        return file.Add(
            $"<</Type/Font/Subtype/Type3/Name/{name}/FontBBox[-3 -5 15 17]/FontMatrix[0.1 0 0 0.1 0 0]/Resources<<>>/FirstChar 1/LastChar {PdfPath.Number(_letters.Count)}"
            + $"/Widths[{widths}]/Encoding<</Type/Encoding/Differences[1{names}]>>/CharProcs<<{procedures}>>/ToUnicode {PdfFile.To(unicode)}>>");
    }

    private string Strokes(Glyph glyph)
    {
        StringBuilder drawn = new();
        if (glyph.Pieces.Count > 0)
        {
            // Middle lines are half a stroke in from the letter's left edge and the line that it stands on.
            Placement inked = Placement.Translation(new Vector(0.5, 0.5));
            double strokeTenths = Lettering.StrokeMm(10, weight);
            drawn.Append('\n').Append(PdfPath.Number(strokeTenths)).Append(" w 1 J 1 j\n");
            PdfPath.Append(drawn, StrokeRun.Of([.. glyph.Pieces.Select(p => p.Placed(inked))]));
            drawn.Append('S');
        }

        return drawn.ToString();
    }

    private static string Outline(ScriptGlyph glyph)
    {
        StringBuilder drawn = new("\n");
        Point last = Point.Origin;
        foreach (OutlineStep step in glyph.Outline)
        {
            // To tenths of the height of capitals, this font's unit. PDF has no quadratic curves: the cubic that is the same one.
            Point[] p = [.. step.Points.Select(q => Point.Origin + ((q - Point.Origin) * ScriptText.AdvanceTenths(glyph with { AdvanceSizes = 1 })))];
            Point[] drawnTo = step.Verb == 'Q' ? [last + ((p[0] - last) * (2.0 / 3)), p[1] + ((p[0] - p[1]) * (2.0 / 3)), p[1]] : p;
            foreach (Point point in drawnTo)
            {
                PdfPath.At(drawn, point);
            }

            drawn.Append(step.Verb switch { 'M' => "m\n", 'L' => "l\n", 'Z' => "h\n", _ => "c\n" });
            last = p.Length > 0 ? p[^1] : last;
        }

        return drawn.Append('f').ToString();
    }

    /// <summary>Which characters the codes are (ISO 32000-1, 9.10.3). Every blank is a plain one, so that "230 V" is found as it is typed.</summary>
    private string Characters()
    {
        const int mostInBlock = 100;
        StringBuilder map = new("/CIDInit/ProcSet findresource begin 12 dict begin begincmap/CMapName/Letters def/CMapType 2 def 1 begincodespacerange<00><FF>endcodespacerange\n");
        foreach ((string Text, int Code)[] block in _letters.Select((l, i) => (l.Text, i + 1)).Chunk(mostInBlock))
        {
            map.Append(CultureInfo.InvariantCulture, $"{block.Length} beginbfchar\n");
            foreach ((string text, int code) in block)
            {
                string plain = text is "\u00A0" or "\u2009" or "\u202F" ? " " : text;
                map.Append(CultureInfo.InvariantCulture, $"<{code:X2}><{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(plain))}>\n");
            }

            map.Append("endbfchar\n");
        }

        return map.Append("endcmap CMapName currentdict/CMap defineresource pop end end").ToString();
    }
}
