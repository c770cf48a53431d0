using System.Globalization;
using System.Text.RegularExpressions;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;

namespace WheelDraft.Formats.Dxf.Checking;

/// <summary>What a cutting file says of itself on layer NOTE.</summary>
/// <param name="Part">The part of the design that it names.</param>
/// <param name="KerfMm">The kerf that it is compensated for, mm; 0 for a nominal file.</param>
/// <param name="Input">The mark of the parameter file that it was made from, in capitals; null when it has none.</param>
internal sealed partial record CutFileNote(Part Part, double KerfMm, string? Input)
{
    // None of the patterns can take long; the limit is there because what is read comes from elsewhere.
    private const int MostMs = Budgets.PatternMs;

    /// <summary>The note of a drawing; null when no text of it names a part of the design.</summary>
    public static CutFileNote? Of(ReadDrawing drawing, Design design)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(design);
        foreach (string text in TextsOf(drawing))
        {
            // The longest name that fits: "ARM" also stands at the end of "LOWER ARM".
            Part? part = design.Parts.All.Where(p => CutNotes.Heads(design, p).Any(h => text.Contains(h, StringComparison.Ordinal))).MaxBy(p => p.Name.Length);
            if (part is not null)
            {
                return new(part, KerfIn(text, design, part), InputIn(text));
            }
        }

        return null;
    }

    /// <summary>The texts of a drawing as they were written.</summary>
    internal static IEnumerable<string> TextsOf(ReadDrawing drawing) => drawing.Texts.Select(t => Decoded(t.Text));

    /// <summary>The mark of the parameter file in a text; null without one.</summary>
    internal static string? InputIn(string text) => MarkOfInput().Match(text) is { Success: true } mark ? mark.Groups["mark"].Value : null;

    /// <summary>The kerf that a text says a file is compensated for, mm; 0 where it says none.</summary>
    /// <remarks>The words that the design's own file has stand for its kerf to the last digit; others are read as they were rounded.</remarks>
    internal static double KerfIn(string text, Design design, Part part)
    {
        if (part.KerfMm is double own && text.Contains(CutNotes.KerfWords(design, part), StringComparison.Ordinal))
        {
            return own;
        }

        Match told = Compensated().Match(text);
        return told.Success ? double.Parse(told.Groups["kerf"].ValueSpan, CultureInfo.InvariantCulture) * (told.Groups["unit"].Value is "in" ? 25.4 : 1) : 0;
    }

    // Characters beyond ASCII stand as \U+nnnn in the format, those with a meaning of their own too.
    private static string Decoded(string text) =>
        Escape().Replace(text, m => ((char)int.Parse(m.Groups["code"].ValueSpan, NumberStyles.HexNumber, CultureInfo.InvariantCulture)).ToString());

    [GeneratedRegex(@"\\U\+(?<code>[0-9A-Fa-f]{4})", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, MostMs)]
    private static partial Regex Escape();

    [GeneratedRegex(@"COMPENSATED FOR A KERF OF (?<kerf>[0-9]{1,6}(\.[0-9]{1,9})?) (?<unit>mm|in)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, MostMs)]
    private static partial Regex Compensated();

    [GeneratedRegex(@", INPUT (?<mark>[0-9A-F]{4,64})", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, MostMs)]
    private static partial Regex MarkOfInput();
}
