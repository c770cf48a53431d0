using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Raster;

namespace WheelDraft.Formats.Svg;

// The folder "Svg": sheets as scalable pictures for people who publish them. Every arc is an arc command, every group has
// an id, a title and a role, every look is a class; both begin with words of the drawing and the sheet, so that pictures in one page do not meddle with each other. Only what all renderers agree on is used: simple class selectors, no variables,
// no text lengths, no dominant base lines.

/// <summary>How a sheet is written as SVG.</summary>
internal sealed record SvgOptions
{
    /// <summary>Colours.</summary>
    public Theme Theme { get; init; } = Theme.Light;

    /// <summary>Whether texts are live or drawn as strokes.</summary>
    public SvgText Text { get; init; } = SvgText.Live;

    /// <summary>Width at which the picture is shown, mm; null for the true size of the sheet. The height follows.</summary>
    public double? WidthMm { get; init; }

    /// <summary>The drawing's own word, put before the sheet's name in every id and class, so that pictures of several designs can stand in one page;
    /// letters a to z, digits and hyphens; may be empty.</summary>
    public string IdPrefix { get; init; } = "";

    /// <summary>For letters that the stroke alphabet lacks, where texts are strokes; or null.</summary>
    public ScriptFont? Font { get; init; }

    /// <summary>The language that texts are in, as BCP 47 names it.</summary>
    public string Language { get; init; } = ReadersWords.Language;

    /// <summary>A drawing's own word: from its number, or its title where it has none.</summary>
    public static string PrefixFrom(string? drawing, string title) => FileSlugs.Of([string.IsNullOrWhiteSpace(drawing) ? title : drawing])[0] + "-";

    /// <summary>What every id and class of a sheet begins with: the drawing's word and the sheet's name, as a name of CSS, which begins with a letter.</summary>
    internal string PrefixOf(Sheet sheet)
    {
        string prefix = IdPrefix + sheet.Words.Name;
        return char.IsAsciiLetter(prefix[0]) ? prefix : "wd-" + prefix;
    }
}

/// <summary>What texts are in an SVG file.</summary>
public enum SvgText
{
    /// <summary>Text that can be selected, searched and translated; drawn with a sans-serif font of the reader's machine.</summary>
    Live,

    /// <summary>The project's own stroke lettering: the same everywhere.</summary>
    Strokes,
}

/// <summary>Writes a sheet as SVG 1.1.</summary>
internal static class SvgWriter
{
    /// <summary>The whole file as text, lines ending in a line feed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The width asked for is not above 0 and finite.</exception>
    public static string Write(Sheet sheet, SvgOptions? options = null) => File(sheet, options).ToString();

    /// <summary>The whole file in UTF-8.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The width asked for is not above 0 and finite.</exception>
    public static byte[] Bytes(Sheet sheet, SvgOptions? options = null) => Utf8Text.Of(File(sheet, options));

    private static StringBuilder File(Sheet sheet, SvgOptions? options)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        SvgOptions chosen = options ?? new();
        if (chosen.WidthMm is double width && !(width > 0 && double.IsFinite(width)))
        {
            throw new ArgumentOutOfRangeException(nameof(options), width, "A picture has a width above 0 mm.");
        }

        SvgClasses classes = new(chosen.Theme, chosen.PrefixOf(sheet));
        string root = classes.Picture();
        StringBuilder body = new SvgBody(sheet, chosen, classes).Write();
        StringBuilder file = new();
        Open(file, sheet, (chosen, root));
        file.Append("<style>\n").Append(classes.Rules()).Append("</style>\n");
        return file.Append(body).Append("</svg>\n");
    }

    private static void Open(StringBuilder file, Sheet sheet, (SvgOptions Options, string Class) root)
    {
        SvgOptions options = root.Options;
        string id = SvgMarkup.Escaped(options.PrefixOf(sheet));
        string language = SvgMarkup.Escaped(options.Language);
        double scale = (options.WidthMm ?? sheet.WidthMm) / sheet.WidthMm;
        file.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" id=\"").Append(id).Append("\" class=\"").Append(root.Class).Append("\" lang=\"").Append(language).Append("\" xml:lang=\"").Append(language).Append('"')
            .Append(" width=\"").Append(SvgMarkup.Number(sheet.WidthMm * scale)).Append("mm\"")
            .Append(" height=\"").Append(SvgMarkup.Number(sheet.HeightMm * scale)).Append("mm\"")
            .Append(" viewBox=\"0 0 ").Append(SvgMarkup.Number(sheet.WidthMm)).Append(' ').Append(SvgMarkup.Number(sheet.HeightMm)).Append('"')
            .Append(" role=\"img\" aria-labelledby=\"").Append(id).Append("-title ").Append(id).Append("-desc\">\n");
        file.Append("<title id=\"").Append(id).Append("-title\">").Append(SvgMarkup.Escaped(ReadersWords.Read(sheet.Words.Title))).Append("</title>\n");
        file.Append("<desc id=\"").Append(id).Append("-desc\">").Append(SvgMarkup.Escaped(ReadersWords.Read(sheet.Words.Description))).Append("</desc>\n");
    }
}

/// <summary>Numbers and characters of SVG.</summary>
internal static class SvgMarkup
{
    /// <summary>Decimals of lengths in mm: a tenth of a micrometre.</summary>
    internal const int Decimals = 4;

    internal static string Number(double value) => FixedPoint.Short(value, Decimals);

    /// <summary>What content or an attribute of this project's own markup says: the other way round than <see cref="Escaped"/>.</summary>
    internal static string Plain(string markup) => markup.Replace("&lt;", "<", StringComparison.Ordinal).Replace("&gt;", ">", StringComparison.Ordinal)
        .Replace("&quot;", "\"", StringComparison.Ordinal).Replace("&amp;", "&", StringComparison.Ordinal);

    /// <summary>A text as content or attribute; characters that XML forbids become the replacement character.</summary>
    internal static string Escaped(string text)
    {
        StringBuilder escaped = new(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            _ = rune.Value switch
            {
                '&' => escaped.Append("&amp;"),
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '"' => escaped.Append("&quot;"),
                '\t' or '\n' => escaped.Append((char)rune.Value),
                < 0x20 or 0xFFFE or 0xFFFF => escaped.Append('\uFFFD'),
                _ => escaped.Append(rune.ToString()),
            };
        }

        return escaped.ToString();
    }
}
