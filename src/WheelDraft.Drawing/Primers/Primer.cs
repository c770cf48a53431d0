namespace WheelDraft.Drawing;

// The folder "Primers": small pictures that each teach one idea, for the guide: what a creepage distance is, why a patch lengthens an on-time. They show no
// design and no figures; their few words are English, as the guide is.

/// <summary>A picture that teaches one idea.</summary>
/// <param name="Name">Its name, once among all: letters a to z and hyphens.</param>
/// <param name="Caption">What it shows, in a sentence that stands for it where it cannot be seen.</param>
/// <param name="HeightMm">Height of its paper, mm.</param>
/// <param name="Draw">Draws it.</param>
internal sealed record Primer(string Name, string Caption, double HeightMm, Action<PrimerPen> Draw)
{
    /// <summary>Width of all of them, mm: that of a column of text.</summary>
    public const double WidthMm = 100;

    /// <summary>All pictures.</summary>
    public static IReadOnlyList<Primer> All { get; } = [.. SpacingPrimers.All, .. RingPrimers.All, .. ShopPrimers.All];

    /// <summary>The finished picture.</summary>
    public Sheet ToSheet()
    {
        SheetBuilder sheet = new(new SheetWords(Name, Caption, Caption), new PaperSize("figure", WidthMm, HeightMm));
        Draw(new PrimerPen(sheet.Group("picture", Caption, "picture")));
        return sheet.Build();
    }
}
