namespace WheelDraft.Drawing;

/// <summary>A size of paper as it lies before the reader.</summary>
internal sealed record PaperSize
{
    /// <summary>A size of any measures.</summary>
    /// <param name="name">Its name, as A4 or Letter.</param>
    /// <param name="widthMm">Width, mm, above 0 and at most 10,000.</param>
    /// <param name="heightMm">Height, mm, above 0 and at most 10,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A measure is out of range.</exception>
    public PaperSize(string name, double widthMm, double heightMm)
    {
        const double largestMm = 10_000;
        foreach (double side in (double[])[widthMm, heightMm])
        {
            if (!(side > 0 && side <= largestMm))
            {
                throw new ArgumentOutOfRangeException(nameof(widthMm), side, "A sheet measures above 0 and at most 10,000 mm.");
            }
        }

        Name = name;
        WidthMm = widthMm;
        HeightMm = heightMm;
    }

    /// <summary>A4 upright, 210 by 297 mm (ISO 216; ISO 5457 allows A4 upright only).</summary>
    public static PaperSize A4 { get; } = new("A4", 210, 297);

    /// <summary>A3 lying, 420 by 297 mm.</summary>
    public static PaperSize A3 { get; } = new("A3", 420, 297);

    /// <summary>A2 lying, 594 by 420 mm.</summary>
    public static PaperSize A2 { get; } = new("A2", 594, 420);

    /// <summary>A1 lying, 841 by 594 mm.</summary>
    public static PaperSize A1 { get; } = new("A1", 841, 594);

    /// <summary>A0 lying, 1189 by 841 mm.</summary>
    public static PaperSize A0 { get; } = new("A0", 1189, 841);

    /// <summary>American Letter upright, 8.5 by 11 in (ANSI/ASME Y14.1).</summary>
    public static PaperSize Letter { get; } = new("Letter", 215.9, 279.4);

    /// <summary>The ISO sizes that drawings use, from A4 upwards.</summary>
    public static IReadOnlyList<PaperSize> Iso { get; } = [A4, A3, A2, A1, A0];

    /// <summary>Its name, as A4.</summary>
    public string Name { get; }

    /// <summary>Width, mm.</summary>
    public double WidthMm { get; }

    /// <summary>Height, mm.</summary>
    public double HeightMm { get; }

    /// <summary>The same sheet turned by a quarter.</summary>
    public PaperSize Turned => new(Name, HeightMm, WidthMm);

    /// <summary>Name and measures. Written here because a size that printed its turned self would never end.</summary>
    public override string ToString() => Invariant.Text($"{Name} {WidthMm} x {HeightMm} mm");
}
