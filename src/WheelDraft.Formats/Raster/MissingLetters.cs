using System.Globalization;
using WheelDraft.Drawing;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Raster;

/// <summary>Letters that neither the stroke alphabet nor a named font has: told once, with what to do.</summary>
internal static class MissingLetters
{
    private const int ToldAtMost = 12;

    /// <summary>The sentence for the sheets of a design; none where nothing is missing.</summary>
    /// <param name="sheets">The sheets.</param>
    /// <param name="font">Gives the font that the file names, or null; asked only where letters are missing.</param>
    public static IEnumerable<string> Of(IEnumerable<Sheet> sheets, Func<ScriptFont?> font)
    {
        string[] missing = [.. sheets.SelectMany(s => s.Items).OfType<SheetText>().SelectMany(t => t.Missing).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        ScriptFont? named = missing.Length > 0 ? font() : null;
        string[] boxed = [.. missing.Where(m => named?.Of(m) is null)];
        return boxed.Length > 0 ? [Sentence(boxed, named is not null)] : [];
    }

    /// <summary>The sentence for the names of a brief that names no font; null where every letter is there.</summary>
    public static string? Of(Brief brief)
    {
        string[] names =
        [
            brief.Title, .. brief.Outputs.SelectMany(o => new[] { o.Name, o.Net }), .. brief.Loads.Select(l => l.Name), .. brief.Inputs.SelectMany(i => new[] { i.Name, i.ClosedWhen ?? "" }),
            .. brief.Strips.Select(s => s.Name), .. brief.Parts.Select(p => p.Name), .. brief.Scenarios.Select(s => s.Name), .. brief.Surfaces.Select(s => s.Name),
        ];
        string[] boxed = [.. names.SelectMany(n => Lettering.Missing(n)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        return boxed.Length > 0 && brief.Office.Font is null ? Sentence(boxed, fontNamed: false) : null;
    }

    private static string Sentence(string[] boxed, bool fontNamed)
    {
        string more = boxed.Length > ToldAtMost ? string.Create(CultureInfo.InvariantCulture, $" and {boxed.Length - ToldAtMost} more") : "";
        string cure = fontNamed ? "Name a font under [drawing_office] that has them too." : "Name a font file that has them: [drawing_office] font = \"fonts/own.otf\".";
        return $"The lettering has no letters for {string.Join(' ', boxed.Take(ToldAtMost))}{more}: on PNG, PDF and SVG with strokes each is a crossed box; in PDF it is found and copied all the same. {cure}";
    }
}
