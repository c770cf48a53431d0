using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>Which papers a design's sheets may have.</summary>
internal static class SheetPapers
{
    /// <summary>Those of a list that are no larger than the file allows; where none is, the largest that it allows, lying and upright.</summary>
    /// <param name="design">The design.</param>
    /// <param name="sizes">The papers that suit a sheet, the smallest first.</param>
    public static IEnumerable<PaperSize> Of(Design design, IEnumerable<PaperSize> sizes)
    {
        if (PaperSize.Iso.FirstOrDefault(s => string.Equals(s.Name, design.Brief.Office.LargestSheet, StringComparison.Ordinal)) is not PaperSize largest)
        {
            return sizes;
        }

        PaperSize[] allowed = [.. sizes.Where(s => s.WidthMm * s.HeightMm <= largest.WidthMm * largest.HeightMm)];
        return allowed.Length > 0 ? allowed : [largest, largest.Turned];
    }

    /// <summary>What is drawn on the first paper on which it finds room; on the last where it finds none.</summary>
    /// <param name="sizes">The papers, at least one.</param>
    /// <param name="on">Sets it out on a paper.</param>
    /// <param name="isRoomy">Whether it finds room there.</param>
    public static T FirstRoomy<T>(IEnumerable<PaperSize> sizes, Func<PaperSize, T> on, Predicate<T> isRoomy)
        where T : class
    {
        T? last = null;
        foreach (PaperSize size in sizes)
        {
            last = on(size);
            if (isRoomy(last))
            {
                break;
            }
        }

        return last ?? throw new ArgumentException("There is no paper.", nameof(sizes));
    }
}

/// <summary>The table of revisions, on the first sheet of a set.</summary>
internal static class RevisionTable
{
    /// <summary>It, the present revision last as in the file; nothing where the file has none.</summary>
    public static IEnumerable<SheetTable> Of(Design design)
    {
        IReadOnlyList<RevisionBrief> revisions = design.Brief.Office.Revisions;
        if (revisions.Count > 0)
        {
            yield return new SheetTable(
                [new("Rev."), new("Date"), new("Change")],
                [.. revisions.Select(r => (IReadOnlyList<string>)[r.Revision, r.Date?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) ?? "", r.Text])])
            {
                Title = "Revisions",
            };
        }
    }
}
