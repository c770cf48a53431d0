using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>An enlarged view of a tight gap or path, before it is drawn.</summary>
/// <param name="Place">The gap or path.</param>
/// <param name="Letter">The letter under it and at its circle on the plan.</param>
/// <param name="Scale">Its scale.</param>
/// <param name="Middle">The middle of what it shows, in the housing.</param>
/// <param name="RadiusMm">Its circle on the paper.</param>
internal sealed record SpacingDetail(TightPlace Place, string Letter, DrawingScale Scale, Point Middle, double RadiusMm)
{
    // A gap is shown this long at least, mm on the paper.
    private const double GapMm = 15;

    // Round the gap, so that the parts on either side are seen; and the smallest circle that holds its words, mm on the paper.
    private const double RoundMm = 8;
    private const double LeastMm = 17;

    /// <summary>Its circle on the plan, model mm.</summary>
    public double InPlanMm => RadiusMm / Scale.Factor;

    /// <summary>The detail of a place: at the smallest standard scale that shows its gap at 15 mm or more, else the largest.</summary>
    public static SpacingDetail Of(TightPlace place, string letter)
    {
        Point middle = place.First.Towards(place.Second, 0.5);
        double gap = place.First.DistanceTo(place.Second);
        DrawingScale scale = DrawingScale.Iso.LastOrDefault(s => s.Factor * gap >= GapMm, DrawingScale.Iso[0]);
        double reach = ReachOf(place, middle);
        return new(place, letter, scale, middle, Math.Max(LeastMm, (reach * scale.Factor) + RoundMm));
    }

    /// <summary>The detail of a place in a circle of a given size: at the largest standard scale at which its gap or path stands in it.</summary>
    public static SpacingDetail In(TightPlace place, string letter, double radiusMm)
    {
        Point middle = place.First.Towards(place.Second, 0.5);
        double reach = ReachOf(place, middle);
        DrawingScale scale = DrawingScale.Iso.FirstOrDefault(s => (reach * s.Factor) + RoundMm <= radiusMm, DrawingScale.Iso[^1]);
        return new(place, letter, scale, middle, radiusMm);
    }

    private static double ReachOf(TightPlace place, Point middle) => place.Path.SelectMany(p => new[] { p.Start, p.End, p.PointAt(0.5) }).Max(p => p.DistanceTo(middle));
}

/// <summary>Enlarged views of the tightest gaps and paths in rows: everything within a circle round each, in the looks of the plan.</summary>
/// <remarks>Turning parts stand as they do where the distance is least. Each has a letter, as its circle on the plan.</remarks>
internal sealed class SpacingDetails
{
    // The letters of views and details (ISO 128-3, from memory): without I, O and Q.
    private const string Letters = "ABCDEFGHJKLMNPRSTUVWXYZ";

    private const double BesideMm = 6;

    private readonly IReadOnlyList<IReadOnlyList<SpacingDetail>> _rows;

    private SpacingDetails(IReadOnlyList<IReadOnlyList<SpacingDetail>> rows) => _rows = rows;

    /// <summary>Those that are shown, the tightest first.</summary>
    public IEnumerable<SpacingDetail> Shown => _rows.SelectMany(r => r);

    /// <summary>Height that they take, mm; 0 without any.</summary>
    public double HeightMm => _rows.Sum(RowMm);

    /// <summary>The tightest, as many as stand in some rows of a width.</summary>
    public static SpacingDetails Of(TightPlaces places, double widthMm, int mostRows)
    {
        List<List<SpacingDetail>> rows = [];
        double left = 0;
        foreach ((TightPlace place, int i) in places.Numbered.Where(p => p.Path.Count > 0).Select((p, i) => (p, i)))
        {
            SpacingDetail detail = SpacingDetail.Of(place, LetterOf(i));
            double width = (2 * detail.RadiusMm) + BesideMm;
            if (rows.Count == 0 || left < width - BesideMm)
            {
                if (rows.Count == mostRows || width - BesideMm > widthMm)
                {
                    break;
                }

                rows.Add([]);
                left = widthMm;
            }

            rows[^1].Add(detail);
            left -= width;
        }

        return new(rows);
    }

    /// <summary>The letter of a detail by its place, from 0: A to Z, then AA.</summary>
    internal static string LetterOf(int index) =>
        (index < Letters.Length ? "" : LetterOf((index / Letters.Length) - 1)) + Letters[index % Letters.Length];

    /// <summary>Which are shown and how many are not, in words; empty where there is nothing to say.</summary>
    public string Words(TightPlaces places)
    {
        int all = places.Numbered.Count + places.Unnumbered;
        int flat = places.Numbered.Count(p => p.Path.Count == 0);
        SpacingDetail[] shown = [.. Shown];
        string which = shown.Length switch
        {
            0 => "No detail is shown",
            1 => "Detail A shows the tightest",
            _ => $"Details {shown[0].Letter} to {shown[^1].Letter} show the {Invariant.Text($"{shown.Length}")} tightest",
        };
        int rest = all - shown.Length - flat;
        string others = rest > 0 ? Invariant.Text($"; {rest} more {(rest == 1 ? "has" : "have")} no room for one") : "";
        string above = flat > 0 ? Invariant.Text($"; {flat} {(flat == 1 ? "lies" : "lie")} straight above each other in plan and {(flat == 1 ? "has" : "have")} none") : "";
        if (all > 0 && shown.Length == all)
        {
            return all == 1 ? "Detail A shows the one tight or missing distance."
                : all == 2 ? "Details A and B show both tight or missing distances."
                : Invariant.Text($"Details A to {shown[^1].Letter} show all {all} tight or missing distances.");
        }

        return all == 0 ? "" : Invariant.Text($"{which} of {all} tight or missing distances{others}{above}.");
    }

    /// <summary>Draws them, the lower left corner of the lowest row at a point.</summary>
    public void Draw(SheetBuilder sheet, SpacingScene scene, Point lowerLeft)
    {
        double top = lowerLeft.Y + HeightMm;
        foreach (IReadOnlyList<SpacingDetail> row in _rows)
        {
            double x = lowerLeft.X;
            double middle = top - SpacingDetailPen.AboveMm - row.Max(d => d.RadiusMm);
            foreach (SpacingDetail detail in row)
            {
                new SpacingDetailPen(sheet, scene, detail, new Point(x + detail.RadiusMm, middle)).Draw();
                x += (2 * detail.RadiusMm) + BesideMm;
            }

            top -= RowMm(row);
        }
    }

    private static double RowMm(IReadOnlyList<SpacingDetail> row) => SpacingDetailPen.AboveMm + (2 * row.Max(d => d.RadiusMm)) + SpacingDetailPen.CaptionMm;
}
