using System.Text;
using WheelDraft.Drawing;

namespace WheelDraft.Formats.Svg;

/// <summary>The classes that a picture uses, with their rules: each look once, in order of name.</summary>
/// <remarks>All begin with the picture's own prefix, so that neither a page that it is put into nor another picture of the set meets them;
/// one class says all of a look, which keeps the elements short.</remarks>
internal sealed class SvgClasses
{
    private const string Fonts = "Helvetica,Arial,'Liberation Sans','DejaVu Sans',sans-serif";

    private readonly SortedDictionary<string, string> _rules = new(StringComparer.Ordinal);
    private readonly Theme _theme;
    private readonly string _prefix;

    /// <summary>No classes yet.</summary>
    /// <param name="theme">Colours.</param>
    /// <param name="prefix">The picture's own: letters a to z, digits and hyphens, beginning with a letter.</param>
    internal SvgClasses(Theme theme, string prefix) => (_theme, _prefix) = (theme, prefix);

    /// <summary>The whole picture: what it would else take over from the page round it.</summary>
    internal string Picture() =>
        Use("picture", "fill:none;stroke:none;font-style:normal;font-variant:normal;letter-spacing:normal;word-spacing:normal;text-transform:none");

    internal string Paper() => Use("paper", $"fill:{_theme.Paper.Hex}");

    internal string Area(Fill fill)
    {
        string name = fill.Kind == FillKind.Solid ? $"solid-{Word(fill.SolidInk.ToString())}" : $"fill-{Word(fill.Kind.ToString())}";
        return Use(name, $"fill:{_theme.Of(fill).Hex};fill-rule:evenodd");
    }

    internal string PatternLines(Fill fill) =>
        Use($"pattern-{Word(fill.Kind.ToString())}", $"fill:none;stroke:{_theme.OfPattern(fill).Hex};stroke-width:{SvgMarkup.Number(fill.Pattern.StrokeMm)}");

    internal string PatternDots(Fill fill) => Use($"dots-{Word(fill.Kind.ToString())}", $"fill:{_theme.OfPattern(fill).Hex}");

    internal string Line(LineStyle style)
    {
        bool flat = style.Ends == LineEnds.Flat;
        return Use($"line-{Look(style.Ink, style.WidthMm)}{(flat ? "-flat" : "")}", $"fill:none;stroke-linejoin:round;stroke-linecap:{(flat ? "butt" : "round")};{Stroke(style.Ink, style.WidthMm)}");
    }

    /// <summary>An edge on the same element as a filling: only its own colour and width, not the absence of a filling.</summary>
    internal string Edge(LineStyle style) => Use($"edge-{Look(style.Ink, style.WidthMm)}", $"stroke-linejoin:round;{Stroke(style.Ink, style.WidthMm)}");

    internal string Letters(TextStyle style) =>
        Use($"letters-{Look(style.Ink, style.StrokeMm)}", $"fill:none;stroke-linejoin:round;stroke-linecap:round;{Stroke(style.Ink, style.StrokeMm)}");

    internal string Outlines(TextStyle style) => Use($"outlines-{Word(style.Ink.ToString())}", $"fill:{_theme.Of(style.Ink).Hex}");

    internal string Text(TextStyle style)
    {
        bool heavy = style.Weight == TextWeight.Heavy;
        return Use(
            $"text-{Look(style.Ink, style.HeightMm)}{(heavy ? "-heavy" : "")}",
            $"font-family:{Fonts};font-size:{SvgMarkup.Number(style.FontSizeMm)}px;font-weight:{(heavy ? "bold" : "normal")};fill:{_theme.Of(style.Ink).Hex}");
    }

    internal string Rules()
    {
        StringBuilder rules = new();
        foreach ((string name, string rule) in _rules)
        {
            rules.Append('.').Append(name).Append('{').Append(rule).Append("}\n");
        }

        return rules.ToString();
    }

    private static string Look(Ink ink, double sizeMm) => $"{Word(ink.ToString())}-{Hundredths(sizeMm)}";

    private string Stroke(Ink ink, double widthMm) => $"stroke:{_theme.Of(ink).Hex};stroke-width:{SvgMarkup.Number(widthMm)}";

    private string Use(string look, string rule)
    {
        string name = $"{_prefix}-{look}";
        _rules[name] = rule;
        return name;
    }

    /// <summary>A length as part of a name: hundredths of a millimetre, or finer with a hyphen.</summary>
    private static string Hundredths(double lengthMm) => FixedPoint.Short(lengthMm * 100, 2).Replace('.', '-');

    /// <summary>A name of two words as a class: <c>CopperPale</c> gives <c>copper-pale</c>.</summary>
    private static string Word(string name)
    {
        StringBuilder word = new();
        foreach (char c in name)
        {
            if (char.IsAsciiLetterUpper(c) && word.Length > 0)
            {
                word.Append('-');
            }

            word.Append(char.ToLowerInvariant(c));
        }

        return word.ToString();
    }
}
