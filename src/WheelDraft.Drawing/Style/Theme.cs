using System.Globalization;

namespace WheelDraft.Drawing;

/// <summary>A colour of eight bits a channel.</summary>
/// <param name="Red">0 to 255.</param>
/// <param name="Green">0 to 255.</param>
/// <param name="Blue">0 to 255.</param>
internal readonly record struct Rgb(byte Red, byte Green, byte Blue)
{
    /// <summary>From a number as 0xRRGGBB.</summary>
    public static Rgb Of(int hex) => new((byte)((hex >> 16) & 255), (byte)((hex >> 8) & 255), (byte)(hex & 255));

    /// <summary>Seven characters, #rrggbb.</summary>
    public string Hex => string.Create(CultureInfo.InvariantCulture, $"#{Red:x2}{Green:x2}{Blue:x2}");

    /// <summary>Relative luminance, 0 to 1 (WCAG 2.2, definition of relative luminance).</summary>
    public double Luminance => (0.2126 * Linear(Red)) + (0.7152 * Linear(Green)) + (0.0722 * Linear(Blue));

    /// <summary>Contrast with another colour, 1 to 21 (WCAG 2.2, definition of contrast ratio).</summary>
    public double ContrastWith(Rgb other)
    {
        double a = Luminance;
        double b = other.Luminance;
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    /// <summary>A share of this colour on another: 1 is this one.</summary>
    public Rgb Over(Rgb ground, double share) => new(Mix(Red, ground.Red, share), Mix(Green, ground.Green, share), Mix(Blue, ground.Blue, share));

    private static byte Mix(byte own, byte ground, double share) => (byte)Math.Round((own * share) + (ground * (1 - share)));

    private static double Linear(byte channel)
    {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
    }
}

/// <summary>The colours of one manner of showing: the one place where meaning becomes colour, shared by every writer.</summary>
/// <remarks>Hues after Okabe and Ito, Color Universal Design (2008), http://jfly.iam.u-tokyo.ac.jp/color/, darkened or
/// lightened where a line must be read on its ground. Patterns and labels say the same again.</remarks>
public sealed class Theme
{
    // Okabe and Ito's eight, as published.
    private static readonly Rgb Orange = Rgb.Of(0xE69F00);
    private static readonly Rgb SkyBlue = Rgb.Of(0x56B4E9);
    private static readonly Rgb BluishGreen = Rgb.Of(0x009E73);
    private static readonly Rgb Yellow = Rgb.Of(0xF0E442);
    private static readonly Rgb Blue = Rgb.Of(0x0072B2);
    private static readonly Rgb Vermillion = Rgb.Of(0xD55E00);
    private static readonly Rgb ReddishPurple = Rgb.Of(0xCC79A7);

    // WCAG 2.2: 4.5 to 1 for text (1.4.3), 3 to 1 for what must be seen to understand a picture (1.4.11).
    private const double TextContrast = 4.5;
    private const double MarkContrast = 3;

    private readonly Rgb _ink;
    private readonly double _fillShare;
    private readonly bool _grey;

    private Theme(string name, Rgb paper, Rgb ink, double fillShare, bool grey)
    {
        Name = name;
        Paper = paper;
        _ink = ink;
        _fillShare = fillShare;
        _grey = grey;
    }

    /// <summary>Dark lines on white, coloured areas: screens and manuals.</summary>
    public static Theme Light { get; } = new("light", Rgb.Of(0xFFFFFF), Rgb.Of(0x000000), 0.55, grey: false);

    /// <summary>Light lines on near-black: dark pages.</summary>
    public static Theme Dark { get; } = new("dark", Rgb.Of(0x14181D), Rgb.Of(0xF2F2F2), 0.4, grey: false);

    /// <summary>Black on white, areas in greys and patterns: paper, copies, black-and-white printers.</summary>
    public static Theme Print { get; } = new("print", Rgb.Of(0xFFFFFF), Rgb.Of(0x000000), 0.5, grey: true);

    /// <summary>All themes.</summary>
    public static IReadOnlyList<Theme> All { get; } = [Light, Dark, Print];

    /// <summary>Its name on the command line: light, dark or print.</summary>
    public string Name { get; }

    /// <summary>The ground of the sheet.</summary>
    internal Rgb Paper { get; }

    /// <summary>The theme of a name, or null.</summary>
    public static Theme? Named(string name) => All.FirstOrDefault(t => string.Equals(t.Name, name, StringComparison.Ordinal));

    /// <summary>The colour of lines, texts and solid marks.</summary>
    internal Rgb Of(Ink ink) => ink switch
    {
        Ink.Paper => Paper,
        Ink.Quiet => _ink.Over(Paper, 0.72),
        Ink.Centre => _ink.Over(Paper, 0.8),
        Ink.Grid => _ink.Over(Paper, 0.28),
        Ink.Outline or Ink.Text or Ink.Dimension or Ink.Frame => _ink,
        _ when _grey => _ink,
        _ => Readable(Hue(ink), Paper, TextContrast),
    };

    // A lit lamp is brighter than what is filled otherwise, as far as lines and letters over it are still seen: on dark paper they are light.
    private double LitShare => Paper.Luminance > _ink.Luminance ? _fillShare + 0.4 : _fillShare + 0.02;

    /// <summary>The colour of an area, below its pattern.</summary>
    internal Rgb Of(Fill fill) => fill.Kind switch
    {
        FillKind.Solid => Of(fill.SolidInk),
        FillKind.Paper or FillKind.Window or FillKind.Unjoined or FillKind.Waste => Paper,
        FillKind.Recess => _ink.Over(Paper, 0.04),
        FillKind.AtZero => _ink.Over(Paper, 0.16),
        FillKind.Band => _ink.Over(Paper, 0.07),
        FillKind.Carrier => _ink.Over(Paper, 0.10),
        FillKind.Insulation => _ink.Over(Paper, 0.06),
        FillKind.Part => _ink.Over(Paper, 0.16),
        FillKind.Lit when _grey => _ink.Over(Paper, 0.42),
        FillKind.Copper when _grey => _ink.Over(Paper, 0.26),
        _ when _grey => _ink.Over(Paper, 0.08),
        FillKind.CopperPale => Orange.Over(Paper, _fillShare * 0.35),
        FillKind.Lit => Yellow.Over(Paper, LitShare),
        FillKind.LitAtInputs => Yellow.Over(Paper, _fillShare * 0.5),
        _ => Hue(fill.Kind).Over(Paper, _fillShare),
    };

    /// <summary>The colour of a filling's pattern.</summary>
    internal Rgb OfPattern(Fill fill) => fill.Kind switch
    {
        >= FillKind.Net1 and <= FillKind.Net8 => Readable(Of(Ink.Net1 + (fill.Kind - FillKind.Net1)), Of(fill), MarkContrast),
        FillKind.Error => Readable(Of(Ink.Error), Of(fill), MarkContrast),
        FillKind.Warning => Readable(Of(Ink.Warning), Of(fill), MarkContrast),
        FillKind.Whisker => Readable(Of(Ink.Whisker), Of(fill), MarkContrast),
        FillKind.Live => Readable(Of(Ink.Live), Of(fill), MarkContrast),
        _ => Readable(_ink.Over(Paper, 0.6), Of(fill), MarkContrast),
    };

    private static Rgb Hue(Ink ink) => ink switch
    {
        Ink.Copper => Vermillion,
        Ink.Accent => ReddishPurple,
        Ink.Whisker => Vermillion,
        Ink.Meets => BluishGreen,
        Ink.Warning => Orange,
        Ink.Error or Ink.Live => Vermillion,
        _ => Hue(FillKind.Net1 + (ink - Ink.Net1)),
    };

    private static Rgb Hue(FillKind kind) => kind switch
    {
        FillKind.Copper => Orange,
        FillKind.Whisker => Vermillion,
        FillKind.Meets => BluishGreen,
        FillKind.Warning => Yellow,
        FillKind.Error or FillKind.Live => Vermillion,
        FillKind.Net1 => Vermillion,
        FillKind.Net2 => Blue,
        FillKind.Net3 => BluishGreen,
        FillKind.Net4 => ReddishPurple,
        FillKind.Net5 => Orange,
        FillKind.Net6 => SkyBlue,
        FillKind.Net7 => Yellow,
        _ => Rgb.Of(0x7F7F7F),
    };

    /// <summary>A hue moved towards the ink in steps until it is seen on a ground.</summary>
    private Rgb Readable(Rgb hue, Rgb ground, double leastContrast)
    {
        Rgb colour = hue;
        for (int step = 19; step >= 0 && colour.ContrastWith(ground) < leastContrast; step--)
        {
            colour = hue.Over(_ink, step / 20.0);
        }

        return colour;
    }
}
