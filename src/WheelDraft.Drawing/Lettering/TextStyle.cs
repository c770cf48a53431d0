namespace WheelDraft.Drawing;

/// <summary>Weight of letters.</summary>
internal enum TextWeight
{
    /// <summary>Strokes of a tenth of the height (ISO 3098 type B).</summary>
    Regular,

    /// <summary>Heavier strokes: titles, what matters.</summary>
    Heavy,
}

/// <summary>Where along a text its anchor lies.</summary>
internal enum TextAlong
{
    /// <summary>At the start of its first letter.</summary>
    Start,

    /// <summary>In the middle.</summary>
    Middle,

    /// <summary>At the end of its last letter.</summary>
    End,
}

/// <summary>Where across a text its anchor lies.</summary>
internal enum TextAcross
{
    /// <summary>On the line that letters stand on.</summary>
    Baseline,

    /// <summary>Half-way up the capitals.</summary>
    Middle,

    /// <summary>At the top of the capitals.</summary>
    Top,
}

/// <summary>Size, weight and ink of a text.</summary>
/// <param name="HeightMm">Height of capitals, mm; ISO 3098: 1.8, 2.5, 3.5, 5, 7, 10, 14, 20.</param>
/// <param name="Weight">Weight of the strokes.</param>
/// <param name="Ink">What its colour means.</param>
internal sealed record TextStyle(double HeightMm, TextWeight Weight = TextWeight.Regular, Ink Ink = Ink.Text)
{
    /// <summary>2.5 mm: dimensions, tables, notes.</summary>
    public static TextStyle Small { get; } = new(2.5);

    /// <summary>2.5 mm, of less weight in colour: captions, units.</summary>
    public static TextStyle Caption { get; } = new(2.5, TextWeight.Regular, Ink.Quiet);

    /// <summary>3.5 mm: labels.</summary>
    public static TextStyle Label { get; } = new(3.5);

    /// <summary>5 mm, heavy: titles.</summary>
    public static TextStyle Title { get; } = new(5, TextWeight.Heavy);

    /// <summary>Width of the strokes, mm.</summary>
    public double StrokeMm => Lettering.StrokeMm(HeightMm, Weight);

    /// <summary>The size at which a sans-serif font stands about as high, mm: what SVG calls font-size.</summary>
    public double FontSizeMm => HeightMm / LiveWidths.CapitalShare;
}
