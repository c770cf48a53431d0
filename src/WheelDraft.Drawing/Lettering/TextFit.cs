using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>A text brought into a width: lines and the style that they are written in.</summary>
/// <param name="Lines">At least one.</param>
/// <param name="Style">The style, as asked for or smaller.</param>
/// <param name="PitchMm">Between base lines, mm.</param>
internal sealed record FittedText(IReadOnlyList<string> Lines, TextStyle Style, double PitchMm)
{
    /// <summary>From the top of the first line's capitals to the last base line, mm.</summary>
    public double HeightMm => Style.HeightMm + ((Lines.Count - 1) * PitchMm);
}

/// <summary>Measures texts, breaks them into lines and chooses smaller letters where they are too long.</summary>
/// <remarks>Widths are the greater of strokes and live text. Nothing is ever cut off but by <see cref="Shortened"/>.</remarks>
internal static class TextFit
{
    /// <summary>The least height of letters that fitting goes down to, mm: legible on paper at reading distance.</summary>
    public const double LeastHeightMm = 2.5;

    // The smallest height of ISO 3098-0, for fields that cannot grow.
    private const double SmallestHeightMm = 1.8;

    // Live text reaches 0.32 heights above its capitals (accents; heavy strokes 0.37) and 0.34 below the line: what lines in a field need at least.
    private const double MostAboveAndBelow = 0.76;
    private const double FieldPitch = 1.7;

    // Heights of ISO 3098-0.
    private static readonly double[] HeightsMm = [20, 14, 10, 7, 5, 3.5, LeastHeightMm];

    /// <summary>The most that a line of text takes, mm; 0 for an empty one.</summary>
    public static double WidthMm(string text, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        if (string.IsNullOrEmpty(text))
        {
            return 0;
        }

        string read = ReadersWords.Read(text);
        return Math.Max(LiveWidths.WidthMm(read, style), Lettering.WidthMm(read, style.HeightMm, style.Weight));
    }

    /// <summary>The text in at most the given lines: in smaller letters if needed, in more lines if even the least are too long.</summary>
    /// <param name="text">Words.</param>
    /// <param name="widthMm">The width, mm.</param>
    /// <param name="style">The style to begin with.</param>
    /// <param name="mostLines">Lines wanted at most; more only at the least height.</param>
    public static FittedText Into(string text, double widthMm, TextStyle style, int mostLines = 1)
    {
        ArgumentNullException.ThrowIfNull(style);
        IReadOnlyList<string> lines = [];
        TextStyle fitted = style;
        foreach (double height in HeightsMm.Where(h => h < style.HeightMm).Prepend(style.HeightMm))
        {
            fitted = style with { HeightMm = height };
            lines = Wrap(text, widthMm, fitted);
            if (lines.Count <= mostLines)
            {
                break;
            }
        }

        return new FittedText(lines, fitted, fitted.HeightMm * PitchFor(lines));
    }

    /// <summary>The beginning of a name that must keep to one line and its size, with an ellipsis for the rest; the whole where it fits.</summary>
    /// <remarks>Only where the same name stands in full elsewhere: in a table, a report, the description of the picture.</remarks>
    public static string Shortened(string name, double widthMm, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(name);
        string whole = ReadersWords.Read(name);
        string text = ReadersWords.AsItStands(whole);
        for (int length = whole.Length; length > 1 && WidthMm(text, style) > widthMm;)
        {
            // A character of two halves goes as a whole.
            length -= length > 2 && char.IsLowSurrogate(whole[length - 1]) ? 2 : 1;
            text = ReadersWords.AsItStands(whole[..length].TrimEnd() + "…");
        }

        return text;
    }

    /// <summary>The text in a small field: one line, smaller if need be, then more lines, and as a last resort letters of 1.8 mm.</summary>
    internal static FittedText IntoField(string text, double widthMm, double heightMm, TextStyle style)
    {
        FittedText fitted = Into(text, widthMm, style);
        if (fitted.Lines.Count == 1)
        {
            return fitted;
        }

        fitted = WithRegularLines(text, widthMm, style with { HeightMm = LeastHeightMm });
        return fitted.HeightMm + (fitted.Style.HeightMm * MostAboveAndBelow) <= heightMm
            ? fitted
            : WithRegularLines(text, widthMm, style with { HeightMm = SmallestHeightMm });
    }

    /// <summary>The text broken into lines at blanks; a word longer than the width is broken by <see cref="WordBreaks"/>, with a hyphen wherever letters are parted.</summary>
    public static IReadOnlyList<string> Wrap(string text, double widthMm, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(text);
        List<string> lines = [];
        string line = "";
        foreach (string word in ReadersWords.Read(text).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).SelectMany(w => WordBreaks.Parts(w, Fits)))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && !Fits(longer))
            {
                lines.Add(ReadersWords.AsItStands(line));
                longer = word;
            }

            line = longer;
        }

        return line.Length > 0 || lines.Count == 0 ? [.. lines, ReadersWords.AsItStands(line)] : lines;

        bool Fits(string part) => WidthMm(ReadersWords.AsItStands(part), style) <= widthMm;
    }

    private static FittedText WithRegularLines(string text, double widthMm, TextStyle style)
    {
        TextStyle regular = style with { Weight = TextWeight.Regular };
        return new FittedText(Wrap(text, widthMm, regular), regular, regular.HeightMm * FieldPitch);
    }

    private static double PitchFor(IReadOnlyList<string> lines) =>
        lines.Any(l => l.Any(c => c > '~')) ? Lettering.LinePitch : Lettering.ClosePitch;
}
