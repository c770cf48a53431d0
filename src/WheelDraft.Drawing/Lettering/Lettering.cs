using System.Text;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The project's own stroke alphabet, after the proportions of ISO 3098 type B upright.</summary>
/// <remarks>With d a tenth of the height h: strokes d, capitals 10 d, small letters 7 d, descenders 3 d, between letters 2 d,
/// between words 6 d, between base lines 15 d, with accented capitals 19 d (ISO 3098, type B, as reproduced from NF EN ISO 3098-0).
/// Heights count to the outside of the strokes. The letters are data: see <see cref="Alphabet"/>.</remarks>
internal static class Lettering
{
    /// <summary>Between base lines, in heights of capitals, where capitals may carry accents.</summary>
    public const double LinePitch = 1.9;

    /// <summary>Between base lines, in heights of capitals, where none does.</summary>
    public const double ClosePitch = 1.5;

    // Heavier strokes for titles: half as wide again; more closes the eyes of a and e, less is hardly seen.
    private const double HeavyShare = 0.15;
    private const double RegularShare = 0.1;

    /// <summary>Width of the strokes, mm.</summary>
    public static double StrokeMm(double heightMm, TextWeight weight) =>
        heightMm * (weight == TextWeight.Heavy ? HeavyShare : RegularShare);

    /// <summary>Sets out one line of text as strokes.</summary>
    /// <param name="text">Any characters; one that the alphabet lacks becomes a box and is one of <see cref="Missing"/>.</param>
    /// <param name="heightMm">Height of capitals, mm.</param>
    /// <param name="weight">Weight of the strokes.</param>
    /// <exception cref="ArgumentOutOfRangeException">The height is not above 0.</exception>
    public static LetteredText Layout(string text, double heightMm, TextWeight weight = TextWeight.Regular)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!(heightMm > 0) || !double.IsFinite(heightMm))
        {
            throw new ArgumentOutOfRangeException(nameof(heightMm), heightMm, "Letters have a height above 0 mm.");
        }

        double d = heightMm / 10;
        List<Piece> pieces = [];
        double at = 0;
        foreach ((_, Glyph glyph) in Alphabet.Letters(text))
        {
            Placement placement = Placement.Scaling(d).Then(Placement.Translation(new Vector((at + 0.5) * d, 0.5 * d)));
            pieces.AddRange(glyph.Pieces.Select(p => p.Placed(placement)));
            at += glyph.Advance;
        }

        (double widthMm, Bounds box) = Measure(text, heightMm, weight);
        return new LetteredText(widthMm, box, pieces);
    }

    /// <summary>Width and box of a line of text, as <see cref="Layout"/> gives them, without setting out its strokes.</summary>
    internal static (double WidthMm, Bounds Box) Measure(string text, double heightMm, TextWeight weight)
    {
        double d = heightMm / 10;
        double at = 0;
        double end = 0;
        Bounds? span = null;
        for (int place = 0; Alphabet.Next(text, ref place) is Glyph glyph;)
        {
            if (glyph.Span is Bounds own)
            {
                Bounds moved = new((own.MinX + at + 0.5) * d, (own.MinY + 0.5) * d, (own.MaxX + at + 0.5) * d, (own.MaxY + 0.5) * d);
                span = span?.With(moved) ?? moved;
            }

            end = at + glyph.Width;
            at += glyph.Advance;
        }

        double widthMm = end * d;
        return (widthMm, span?.Grown(StrokeMm(heightMm, weight) / 2) ?? new Bounds(0, 0, widthMm, 0));
    }

    /// <summary>Width of a line of text as strokes, mm, without setting it out.</summary>
    public static double WidthMm(string text, double heightMm, TextWeight weight = TextWeight.Regular)
    {
        ArgumentNullException.ThrowIfNull(text);
        double at = 0;
        double end = 0;
        for (int place = 0; Alphabet.Next(text, ref place) is Glyph glyph;)
        {
            end = at + glyph.Width;
            at += glyph.Advance;
        }

        // Heavy strokes reach half their extra width beyond the regular ones.
        return (end * heightMm / 10) + ((StrokeMm(heightMm, weight) - (heightMm * RegularShare)) / 2);
    }

    /// <summary>Whether the alphabet has a letter of its own for a character.</summary>
    public static bool Has(Rune rune) => Alphabet.Has(rune.Value);

    /// <summary>Characters of a text without a letter of their own, once each, in ordinal order; a soft hyphen is none.</summary>
    public static IReadOnlyList<string> Missing(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        SortedSet<string>? missing = null;
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (!Has(rune) && rune.Value != Alphabet.SoftHyphen)
            {
                (missing ??= new(StringComparer.Ordinal)).Add(rune.ToString());
            }
        }

        return missing is null ? [] : [.. missing];
    }
}

/// <summary>A line of text set out as strokes: the base line begins at the origin.</summary>
/// <param name="WidthMm">From the first stroke's left edge to the last one's right edge, mm, at regular weight; blanks count.</param>
/// <param name="Box">Round all strokes, their width included; an empty text has a box without size.</param>
/// <param name="Pieces">The middle lines of the strokes, to be drawn with round ends.</param>
internal sealed record LetteredText(double WidthMm, Bounds Box, IReadOnlyList<Piece> Pieces);
