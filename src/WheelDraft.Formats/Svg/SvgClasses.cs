using System.Text;
using WheelDraft.Drawing;

namespace WheelDraft.Formats.Svg;

/// <summary>The classes that a picture uses, with their rules: each look once, in order of name.</summary>
/// <remarks>All begin with <c>wd-</c>, so that they do not meddle with a page that the picture is put into.</remarks>
internal sealed class SvgClasses
{
    private const string Fonts = "Helvetica,Arial,'Liberation Sans','DejaVu Sans',sans-serif";

    private readonly SortedDictionary<string, string> _rules = new(StringComparer.Ordinal);
    private readonly Theme _theme;

    internal SvgClasses(Theme theme) => _theme = theme;

    internal string Paper() => Use("wd-paper", $"fill:{_theme.Paper.Hex}");

    internal string Area(Fill fill)
    {
        string name = fill.Kind == FillKind.Solid ? $"wd-solid-{Word(fill.SolidInk.ToString())}" : $"wd-fill-{Word(fill.Kind.ToString())}";
        return Use(name, $"fill:{_theme.Of(fill).Hex};fill-rule:evenodd");
    }

    internal string PatternLines(Fill fill) =>
        Use($"wd-pattern-{Word(fill.Kind.ToString())}", $"fill:none;stroke:{_theme.OfPattern(fill).Hex};stroke-width:{SvgMarkup.Number(fill.Pattern.StrokeMm)}");

    internal string PatternDots(Fill fill) => Use($"wd-dots-{Word(fill.Kind.ToString())}", $"fill:{_theme.OfPattern(fill).Hex}");

    internal string Line(LineStyle style) => string.Join(
        ' ',
        Use("wd-line", "fill:none;stroke-linejoin:round;stroke-linecap:round"),
        style.Ends == LineEnds.Flat ? Use("wd-line-flat", "stroke-linecap:butt") + " " + Stroke(style.Ink) : Stroke(style.Ink),
        Width(style.WidthMm));

    /// <summary>An edge on the same element as a filling: only its own colour and width, not the absence of a filling.</summary>
    internal string Edge(LineStyle style) => string.Join(' ', Use("wd-edge", "stroke-linejoin:round"), Stroke(style.Ink), Width(style.WidthMm));

    internal string Letters(TextStyle style) => string.Join(
        ' ', Use("wd-letters", "fill:none;stroke-linejoin:round;stroke-linecap:round"), Stroke(style.Ink), Width(style.StrokeMm));

    internal string Text(TextStyle style)
    {
        string size = Use($"wd-text-{Hundredths(style.HeightMm)}", $"font-size:{SvgMarkup.Number(style.FontSizeMm)}px");
        string all = string.Join(' ', Use("wd-text", $"font-family:{Fonts}"), size, Use($"wd-ink-{Word(style.Ink.ToString())}", $"fill:{_theme.Of(style.Ink).Hex}"));
        return style.Weight == TextWeight.Heavy ? all + " " + Use("wd-heavy", "font-weight:bold") : all;
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

    private string Stroke(Ink ink) => Use($"wd-stroke-{Word(ink.ToString())}", $"stroke:{_theme.Of(ink).Hex}");

    private string Width(double widthMm) => Use($"wd-width-{Hundredths(widthMm)}", $"stroke-width:{SvgMarkup.Number(widthMm)}");

    private string Use(string name, string rule)
    {
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
