using System.Collections.Concurrent;
using System.Text;
using SkiaSharp;
using WheelDraft.Drawing;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Raster;

/// <summary>A step of an outline: its letter as in SVG path data (M, L, Q, C, Z), then its points.</summary>
internal readonly record struct OutlineStep(char Verb, IReadOnlyList<Geometry.Point> Points);

/// <summary>A letter from a font: its outline in font sizes, y up from the line, and how far the next one stands.</summary>
internal sealed record ScriptGlyph(double AdvanceSizes, IReadOnlyList<OutlineStep> Outline);

/// <summary>A font that the parameter file names, for letters that the stroke alphabet lacks. One letter a character, left to right: nothing is joined or shaped.</summary>
internal sealed class ScriptFont
{
    // The size at which outlines are asked for: fine enough that rounding there is far below a pixel.
    private const int AskedSize = 1000;

    private readonly SKTypeface _typeface;
    private readonly ConcurrentDictionary<int, ScriptGlyph?> _glyphs = new();
    private readonly Lock _asking = new();

    private ScriptFont(SKTypeface typeface) => _typeface = typeface;

    /// <summary>The font of a brief, or null where it names none.</summary>
    /// <exception cref="InvalidDataException">It is no font after all.</exception>
    public static ScriptFont? Of(Brief brief)
    {
        if (brief.Office.Font is not { Bytes.Length: > 0 } font)
        {
            return null;
        }

        using SKData data = SKData.CreateCopy(font.Bytes.Span);
        return new(SKTypeface.FromData(data) ?? throw new InvalidDataException($"'{font.Path}' is not a font that can be drawn from."));
    }

    /// <summary>The glyph of a letter that the stroke alphabet lacks, or null where the font lacks it too or the alphabet has it.</summary>
    public ScriptGlyph? Of(string letter)
    {
        Rune rune = Rune.GetRuneAt(letter, 0);
        return rune.Utf16SequenceLength < letter.Length || Lettering.Has(rune) ? null : _glyphs.GetOrAdd(rune.Value, Read);
    }

    private ScriptGlyph? Read(int codePoint)
    {
        lock (_asking)
        {
            using SKFont font = new(_typeface, AskedSize) { Hinting = SKFontHinting.None, Subpixel = true, LinearMetrics = true };
            ushort glyph = font.GetGlyph(codePoint);
            if (glyph == 0)
            {
                return null;
            }

            using SKPath? path = font.GetGlyphPath(glyph);
            return new(font.GetGlyphWidths((ushort[])[glyph])[0] / AskedSize, path is null ? [] : [.. Steps(path)]);
        }
    }

    private static List<OutlineStep> Steps(SKPath path)
    {
        List<OutlineStep> steps = [];
        using SKPath.RawIterator along = path.CreateRawIterator();
        SKPoint[] points = new SKPoint[4];
        for (SKPathVerb verb = along.Next(points); verb != SKPathVerb.Done; verb = along.Next(points))
        {
            (char letter, int from, int to) = verb switch
            {
                SKPathVerb.Move => ('M', 0, 1),
                SKPathVerb.Line => ('L', 1, 2),
                SKPathVerb.Quad or SKPathVerb.Conic => ('Q', 1, 3),
                SKPathVerb.Cubic => ('C', 1, 4),
                _ => ('Z', 0, 0),
            };
            steps.Add(new(letter, [.. points[from..to].Select(p => new Geometry.Point(p.X / AskedSize, -p.Y / AskedSize))]));
        }

        return steps;
    }
}

/// <summary>A text some of whose letters come from a font: its strokes and its outlines, on the paper.</summary>
/// <param name="Strokes">Middle lines of the letters of the stroke alphabet.</param>
/// <param name="Outlines">Outlines to be filled.</param>
internal sealed record ScriptText(IReadOnlyList<Geometry.Piece> Strokes, IReadOnlyList<OutlineStep> Outlines)
{
    // Sizes of a font in tenths of the height of capitals, as everywhere that live text is scaled.
    private const double TenthsPerSize = 10 / LiveWidths.CapitalShare;

    /// <summary>How far the next letter stands, tenths of the height.</summary>
    public static double AdvanceTenths(ScriptGlyph glyph) => glyph.AdvanceSizes * TenthsPerSize;

    /// <summary>Width of a text, mm: letters of the font as wide as that has them.</summary>
    public static double WidthMm(string text, double heightMm, ScriptFont font)
    {
        double end = 0;
        double at = 0;
        foreach ((string letter, Glyph glyph) in Alphabet.Letters(text))
        {
            ScriptGlyph? script = font.Of(letter);
            end = at + (script is null ? glyph.Width : AdvanceTenths(script));
            at += script is null ? glyph.Advance : AdvanceTenths(script);
        }

        return end * heightMm / 10;
    }

    /// <summary>A text drawn with a font's help; null where it needs none.</summary>
    public static ScriptText? Of(SheetText text, ScriptFont? font)
    {
        if (font is null || text.Missing.Count == 0)
        {
            return null;
        }

        double tenth = text.Style.HeightMm / 10;
        Geometry.Placement frame = text.FrameFor(WidthMm(text.Text, text.Style.HeightMm, font));
        List<Geometry.Piece> strokes = [];
        List<OutlineStep> outlines = [];
        double at = 0;
        foreach ((string letter, Glyph glyph) in Alphabet.Letters(text.Text))
        {
            ScriptGlyph? script = font.Of(letter);
            if (script is null)
            {
                Geometry.Placement placed = Geometry.Placement.Scaling(tenth).Then(Geometry.Placement.Translation(new((at + 0.5) * tenth, 0.5 * tenth))).Then(frame);
                strokes.AddRange(glyph.Pieces.Select(p => p.Placed(placed)));
            }
            else
            {
                Geometry.Placement placed = Geometry.Placement.Scaling(TenthsPerSize * tenth).Then(Geometry.Placement.Translation(new(at * tenth, 0))).Then(frame);
                outlines.AddRange(script.Outline.Select(s => s with { Points = [.. s.Points.Select(placed.Of)] }));
            }

            at += script is null ? glyph.Advance : AdvanceTenths(script);
        }

        return new(strokes, outlines);
    }
}
