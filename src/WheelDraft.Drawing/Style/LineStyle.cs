using System.Globalization;

namespace WheelDraft.Drawing;

/// <summary>The types of line of technical drawings, numbered as in ISO 128-2:2020 (numbers and uses from memory).</summary>
internal enum LineKind
{
    /// <summary>Type 01, wide: visible edges and outlines.</summary>
    ContinuousWide,

    /// <summary>Type 01, narrow: dimension, extension and leader lines, hatching, bend lines.</summary>
    ContinuousNarrow,

    /// <summary>Type 02, narrow: hidden edges.</summary>
    DashedNarrow,

    /// <summary>Type 04, narrow: centre lines, pitch circles.</summary>
    ChainNarrow,

    /// <summary>Type 04, wide: cutting planes.</summary>
    ChainWide,

    /// <summary>Type 05, narrow: adjacent parts, end positions of moving parts, outlines before forming.</summary>
    DoubleChainNarrow,

    /// <summary>Type 07, narrow: grids and guides.</summary>
    DottedNarrow,
}

/// <summary>How a stroke ends.</summary>
internal enum LineEnds
{
    /// <summary>Half a circle beyond the end point.</summary>
    Round,

    /// <summary>Square, at the end point.</summary>
    Flat,
}

/// <summary>The two widths of line of one drawing, wide to narrow 2 : 1 (ISO 128-2:2020, from memory).</summary>
/// <param name="WideMm">Width of wide lines, mm.</param>
/// <param name="NarrowMm">Width of narrow lines, mm.</param>
internal readonly record struct LineGroup(double WideMm, double NarrowMm)
{
    /// <summary>0.5 and 0.25 mm: sheets up to A3.</summary>
    public static LineGroup Half => new(0.5, 0.25);

    /// <summary>Width of a line of this kind, mm.</summary>
    public double WidthMm(LineKind kind) => kind is LineKind.ContinuousWide or LineKind.ChainWide ? WideMm : NarrowMm;
}

/// <summary>What a line means: its kind, its ink and its width. The theme gives the colour.</summary>
/// <remarks>Joins are round always.</remarks>
internal sealed record LineStyle
{
    // Lines from here on are wide ones, mm.
    private const double WideMm = 0.4;

    private LineStyle(LineKind kind, Ink ink, double widthMm)
    {
        Kind = kind;
        Ink = ink;
        WidthMm = widthMm > 0 && double.IsFinite(widthMm)
            ? widthMm
            : throw new ArgumentOutOfRangeException(nameof(widthMm), widthMm, "A line has a width above 0 mm.");
    }

    /// <summary>Visible edges: continuous, 0.5 mm.</summary>
    public static LineStyle Edge { get; } = Of(LineKind.ContinuousWide, Ink.Outline);

    /// <summary>Thin edges and auxiliary outlines: continuous, 0.25 mm.</summary>
    public static LineStyle Thin { get; } = Of(LineKind.ContinuousNarrow, Ink.Outline);

    /// <summary>Hidden edges: dashed, 0.25 mm.</summary>
    public static LineStyle Hidden { get; } = Of(LineKind.DashedNarrow, Ink.Outline);

    /// <summary>Centre lines and pitch circles: long-dashed dotted, 0.25 mm.</summary>
    public static LineStyle Centre { get; } = Of(LineKind.ChainNarrow, Ink.Centre);

    /// <summary>Adjacent parts and other positions: long-dashed double-dotted, 0.25 mm.</summary>
    public static LineStyle Phantom { get; } = Of(LineKind.DoubleChainNarrow, Ink.Outline);

    /// <summary>Dimension, extension and leader lines: continuous, 0.25 mm.</summary>
    public static LineStyle Dimension { get; } = Of(LineKind.ContinuousNarrow, Ink.Dimension);

    /// <summary>Grid lines of charts: continuous, 0.18 mm.</summary>
    public static LineStyle Grid { get; } = Wide(LineKind.ContinuousNarrow, Ink.Grid, 0.18);

    /// <summary>Kind of line.</summary>
    public LineKind Kind { get; }

    /// <summary>What its colour means.</summary>
    public Ink Ink { get; }

    /// <summary>Width, mm.</summary>
    public double WidthMm { get; }

    /// <summary>How strokes end: continuous lines round, so that corners close; interrupted ones flat, so that gaps keep their length.</summary>
    public LineEnds Ends => IsContinuous ? LineEnds.Round : LineEnds.Flat;

    /// <summary>Whether the line has no gaps.</summary>
    public bool IsContinuous => Kind is LineKind.ContinuousWide or LineKind.ContinuousNarrow;

    /// <summary>A line of the usual group, 0.5 and 0.25 mm.</summary>
    public static LineStyle Of(LineKind kind, Ink ink) => Of(kind, ink, LineGroup.Half);

    /// <summary>A line of a group of widths.</summary>
    public static LineStyle Of(LineKind kind, Ink ink, LineGroup group) => new(kind, ink, group.WidthMm(kind));

    /// <summary>A line of another width, mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The width is not above 0.</exception>
    public static LineStyle Wide(LineKind kind, Ink ink, double widthMm) => new(kind, ink, widthMm);

    /// <summary>The same line, so many times as wide, to hundredths of a millimetre; no narrower than the narrowest, grid lines.</summary>
    public LineStyle Scaled(double factor) => factor == 1 ? this : new(Kind, Ink, Math.Max(Math.Min(WidthMm, Grid.WidthMm), Math.Round(WidthMm * factor, 2)));

    /// <summary>How far an edge of paper reaches beyond a line or a solid mark, mm.</summary>
    public const double HaloMm = 0.3;

    /// <summary>The edge of paper round a solid mark: half of it lies outside.</summary>
    public static LineStyle MarkHalo { get; } = Wide(LineKind.ContinuousNarrow, Ink.Paper, HaloMm);

    /// <summary>Whether an ink is for what stands over fillings of any look: it is drawn with an edge of paper, so that it is seen on all of them.</summary>
    public static bool HasHalo(Ink ink) => ink is Ink.Accent or Ink.Error or Ink.Whisker;

    /// <summary>The edge of paper on both sides of this line, to be drawn before it.</summary>
    public LineStyle Halo => Wide(WidthMm > WideMm ? LineKind.ContinuousWide : LineKind.ContinuousNarrow, Ink.Paper, WidthMm + (2 * HaloMm));

    /// <summary>The lengths of dashes and gaps in turn, mm, beginning with a dash; empty for a continuous line.</summary>
    /// <remarks>In line widths, ISO 128-2:2020 from memory: 02 is 12, 3; 04 is 24, 3, 0.5, 3; 05 is 24, 3, 0.5, 3, 0.5, 3; 07 is 0.5, 3.
    /// Dots are drawn one width long so that they are seen on a screen.</remarks>
    public IReadOnlyList<double> DashesMm()
    {
        double[] widths = Kind switch
        {
            LineKind.DashedNarrow => [12, 3],
            LineKind.ChainNarrow or LineKind.ChainWide => [24, 3, 1, 3],
            LineKind.DoubleChainNarrow => [24, 3, 1, 3, 1, 3],
            LineKind.DottedNarrow => [1, 3],
            _ => [],
        };
        return [.. widths.Select(w => w * WidthMm)];
    }

    /// <summary>A word for logs: kind, ink, width.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Kind} {Ink} {WidthMm} mm");
}
