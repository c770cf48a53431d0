using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Figures of spacing: the overview, and each tight or missing distance enlarged.</summary>
internal static class SpacingFigures
{
    // Round the plan, mm; names of nets without a look of their own take at most this share of the width.
    private const double AirMm = 4;
    private const double LeaderMm = 12;
    private const double NameShare = 0.22;
    // Narrower figures leave verdicts to the key, mm.
    private const double VerdictMm = 120;
    private const double PitchMm = 5.4;
    private const double Uneven = 1.25;

    // A larger circle shows no more, mm.
    private const double MostRadiusMm = 40;

    /// <summary>The plan of everything conductive, each tight or missing distance numbered.</summary>
    public static Sheet Overview(FigureTask task)
    {
        Design design = task.Design;
        TightPlaces places = TightPlaces.Of(design);
        SpacingScene scene = new(design);
        string tight = places.Numbered.Count == 0 ? SpacingWords.Nothing(places) : "Numbers: distances that miss what is required at worst, or have less than 1.1 times as much.";
        FigurePaper paper = new(task, new("spacing", $"Spacing of {task.Title}: everything conductive in plan, the wheel at home. {ReadersUnit.Of(design.Brief).Words(tight)}", SpacingWords.Description(design, places)));
        IReadOnlyList<(Point At, string Words)> named = SpacingPicture.Named(scene, task.WidthMm * NameShare);
        Bounds extent = SpacingPicture.ExtentOf(design);
        bool hasVerdicts = task.WidthMm >= VerdictMm;
        string[] words = [.. places.Numbered.Select(p => TightPen.Words(p, hasVerdicts)), .. named.Select(n => n.Words)];
        double beside = words.Length == 0 ? AirMm : LeaderMm + words.Max(DimensionForm.TextWidthMm);
        DrawingScale scale = DrawingScale.Free(extent, new(0, 0, paper.Room.Width - (2 * beside), FigurePaper.MostHeightMm));
        Bounds area = paper.Top(Math.Max((extent.Height * scale.Factor) + (2 * AirMm), Math.Ceiling(words.Length / 2.0) * PitchMm * Uneven));
        SheetView view = SheetView.At(scale, extent.Centre, area.Centre);
        SpacingPicture.DrawParts(paper.Sheet, scene, view);
        TightPen pen = new(paper.Sheet, view) { HasVerdicts = hasVerdicts };
        foreach (TightPlace place in places.Numbered)
        {
            pen.Draw(place);
        }

        if (words.Length > 0)
        {
            pen.DrawNumbers(places.Numbered, named, view.Of(extent), area);
        }

        pen.DrawCircles(Lettered(places).Select(p => SpacingDetail.In(p.Place, p.Letter, RadiusMm(task))));
        paper.Legend(SpacingPicture.Legend(scene, places, true));
        paper.Table("key", SpacingWords.Key(design, places));
        return paper.Cut();
    }

    /// <summary>The numbered distances that have a figure of their own, each with its letter.</summary>
    public static IEnumerable<(TightPlace Place, string Letter)> Lettered(TightPlaces places) =>
        places.Numbered.Where(p => p.Path.Count > 0).Select((p, i) => (p, SpacingDetails.LetterOf(i)));

    /// <summary>The name of a detail's figure.</summary>
    public static string NameOf(string letter) => $"spacing-{letter.ToLowerInvariant()}";

    /// <summary>A tight or missing distance, enlarged: its circle is as large as the width lets it, so it always finds room at its own scale.</summary>
    public static Sheet Detail(FigureTask task, TightPlace place, string letter)
    {
        Design design = task.Design;
        SpacingScene scene = new(design);
        SpacingDetail detail = SpacingDetail.In(place, letter, RadiusMm(task));
        TightFigures figures = place.Figures;
        ReadersUnit unit = ReadersUnit.Of(design.Brief);
        string what = $"{figures.Between}, {figures.Kind}";
        string measured = $"{Wording.Mm(figures.WorstMm)} at worst, {Wording.Mm(figures.RequiredMm)} required";
        FigurePaper paper = new(task, new(
            NameOf(letter),
            unit.Words($"Detail {letter} of the spacing of {task.Title}, {detail.Scale}: {what}, {measured}."),
            unit.Words($"The parts within a circle round distance {DrawingNumbers.Trimmed(place.Number, 0)}, {what}, between net {place.Nets[0]} and net {place.Nets[1]}: {measured}; it {Verdict(place)}{(place.TurnedRad is null ? "" : ", the wheel turned to where it is least")}.")));
        Point centre = new(paper.Room.Centre.X, paper.Room.MaxY - SpacingDetailPen.AboveMm - detail.RadiusMm);
        new SpacingDetailPen(paper.Sheet, scene, detail, centre).Draw();
        paper.Legend(SpacingPicture.Legend(scene, TightPlaces.Of(design), true));
        return paper.Cut();
    }

    private static string Verdict(TightPlace place) => place.Verdict == SpacingVerdict.Tight ? "is tight" : SpacingWords.Verdict(place.Verdict);

    private static double RadiusMm(FigureTask task) => Math.Min(MostRadiusMm, (task.WidthMm / 2) - FigurePaper.MarginMm - 1);
}
