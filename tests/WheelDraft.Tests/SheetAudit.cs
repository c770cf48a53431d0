using WheelDraft.Drawing;
using WheelDraft.Geometry;

namespace WheelDraft.Tests;

/// <summary>Looks at a finished sheet: which texts overlap, which leave the paper.</summary>
internal static class SheetAudit
{
    extension(Sheet sheet)
    {
        /// <summary>All texts, in drawing order.</summary>
        public IEnumerable<SheetText> Texts => sheet.Items.OfType<SheetText>();
    }

    /// <summary>Pairs of texts whose boxes overlap, in drawing order.</summary>
    public static IReadOnlyList<(SheetText First, SheetText Second)> OverlappingTexts(Sheet sheet)
    {
        SheetText[] texts = [.. sheet.Texts];
        Bounds[] rounds = [.. texts.Select(t => t.Bounds)];
        List<(SheetText First, SheetText Second)> pairs = [];
        for (int i = 0; i < texts.Length; i++)
        {
            for (int k = i + 1; k < texts.Length; k++)
            {
                if (rounds[i].Overlaps(rounds[k]) && texts[i].Box.Overlaps(texts[k].Box))
                {
                    pairs.Add((texts[i], texts[k]));
                }
            }
        }

        return pairs;
    }

    /// <summary>Texts that do not lie wholly on the paper, in drawing order.</summary>
    public static IReadOnlyList<SheetText> TextsOffPaper(Sheet sheet)
    {
        Bounds paper = new(0, 0, sheet.WidthMm, sheet.HeightMm);
        return [.. sheet.Texts.Where(t => !t.Box.IsInside(paper))];
    }

    /// <summary>Items that do not lie wholly on the paper, in drawing order.</summary>
    public static IReadOnlyList<SheetItem> ItemsOffPaper(Sheet sheet)
    {
        Bounds paper = new(0, 0, sheet.WidthMm, sheet.HeightMm);
        return [.. sheet.Items.Where(i => !paper.Contains(new(i.Bounds.MinX, i.Bounds.MinY)) || !paper.Contains(new(i.Bounds.MaxX, i.Bounds.MaxY)))];
    }
}
