using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Figures of strips and of the assembly.</summary>
internal static class PartFigures
{
    // Beside a strip its widths stand upright, and beside its side view its heights with their words, mm.
    private const double BesideBlankMm = 13;
    private const double BesideSideMm = 22;

    // Round the plan for leaders to its labels; of the width it keeps this share, or its labels go into a key.
    private const double LeaderMm = 11;
    private const double LeastShare = 0.42;
    private const double StationShare = 1.12;
    private const double WordPitchMm = 5.4;
    private const double NumberPitchMm = 8.4;
    private const double Uneven = 1.25;

    /// <summary>The blank of a strip.</summary>
    /// <param name="task">What is drawn.</param>
    /// <param name="index">Which strip, from 0 in file order.</param>
    public static Sheet Blank(FigureTask task, int index)
    {
        (PlacedStrip strip, string slug) = Strip(task.Design, index);
        FigurePaper paper = new(task, new($"strip-{slug}-blank", $"Blank of strip '{strip.Form.Strip.Name}' of {task.Title}, wiper side up, with fold lines at mid-allowance; between the chain lines it is held.", BlankDescription(task.Design, strip)));
        StripViews.DrawBlankAlone(paper.Sheet, (task.Design, strip), paper.Top(FigurePaper.MostHeightMm), BesideBlankMm);
        return paper.Cut();
    }

    /// <summary>A formed strip from the side.</summary>
    /// <param name="task">What is drawn.</param>
    /// <param name="index">Which strip, from 0 in file order.</param>
    public static Sheet Side(FigureTask task, int index)
    {
        (PlacedStrip strip, string slug) = Strip(task.Design, index);
        string pressed = strip.Spring is null ? "" : " Full line: free of the wheel; chain line: pressed on the copper.";
        FigurePaper paper = new(task, new($"strip-{slug}-side", $"Strip '{strip.Form.Strip.Name}' of {task.Title}, formed, from the side.{pressed}", new StripWords(task.Design, strip).Description()));
        StripViews.DrawSideAlone(paper.Sheet, (task.Design, strip), paper.Top(FigurePaper.MostHeightMm), BesideSideMm);
        return paper.Cut();
    }

    /// <summary>Wheel and strips in plan.</summary>
    public static Sheet Plan(FigureTask task)
    {
        IReadOnlyList<RingCallout> labels = [.. new AssemblyLabels(task.Design, new PlanView(task.Design, task.Moment), task.Moment).All().Select(l => l with { Item = null })];
        Sheet? worded = task.Options.Callouts == CalloutMarks.Words && ScaleOf(task, labels) is DrawingScale scale && scale.Factor * Seen(task).Width >= LeastShare * task.WidthMm
            ? Plan(task, labels)
            : null;
        return worded is { Warnings.Count: 0 } ? worded : Plan(task, CalloutKey.Numbered(labels));
    }

    /// <summary>The timer from the side.</summary>
    public static Sheet Elevation(FigureTask task)
    {
        // Upright dimensions on either side, the wheel's diameter above, mm.
        const double besideMm = 10;
        const double aboveMm = 12;
        Design design = task.Design;
        (double low, double high) = SideElevation.HeightsOf(design);
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        Bounds seen = new PlanView(design, null).Model with { MinY = low, MaxY = high };
        SheetWords words = new(
            "assembly-side",
            $"{task.Title} from the side, strips pressed on the wheel.",
            $"From below: {(design.Parts.Bases.Count > 0 ? "the base, " : "")}the carrier, the copper let into it, and over it {string.Join(", ", design.Strips.Strips.Select(s => $"strip {s.Form.Strip.Name}"))}. Overall {numbers.LengthWithUnit(high - low)} high, {numbers.LengthWithUnit(high)} of it over the copper face.");
        FigurePaper paper = new(task, words);
        Bounds all = AssemblySide.WithBases(design, seen);
        DrawingScale scale = DrawingScale.Free(all, new(0, 0, paper.Room.Width - (2 * besideMm), FigurePaper.MostHeightMm));
        AssemblySide.Draw(paper.Sheet, design, SheetView.At(scale, new(all.Centre.X, all.MaxY), new(paper.Room.Centre.X, paper.Room.MaxY - aboveMm)), seen);
        return paper.Cut();
    }

    private static (PlacedStrip Strip, string Slug) Strip(Design design, int index) =>
        (design.Strips.Strips[index], FileSlugs.Of(design.Strips.Strips.Select(s => s.Form.Strip.Name))[index]);

    private static string BlankDescription(Design design, PlacedStrip strip)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        StripForm form = strip.Form;
        string folds = form.Folds.Count == 0 ? "no fold" : $"folds at {string.Join(", ", form.Folds.Select(f => numbers.LengthWithUnit(f.AtMm)))} from the terminal end";
        string holes = form.Strip.Holes.Count == 0 ? "" : $"; holes {string.Join(", ", form.Strip.Holes.Select(h => $"{numbers.Diameter(h.DiameterMm)} at {numbers.LengthWithUnit(h.AtMm)}"))}";
        return $"A flat blank of {form.Material.Designation}, {numbers.LengthWithUnit(form.LengthMm)} long on its centre line and {numbers.LengthWithUnit(form.Strip.ThicknessMm, 3)} thick: {folds}{holes}.";
    }

    private static Bounds Seen(FigureTask task)
    {
        PlanView plan = new(task.Design, task.Moment);
        double stations = plan.CarrierMm * StationShare;
        return plan.Model.With(new Bounds(-stations, -stations, stations, stations));
    }

    private static DrawingScale? ScaleOf(FigureTask task, IReadOnlyList<RingCallout> labels)
    {
        CalloutMarks marks = labels.Any(l => l.Number is not null) ? CalloutMarks.Numbers : CalloutMarks.Words;
        double width = task.WidthMm - (2 * (FigurePaper.MarginMm + LeaderMm + CalloutRing.ColumnMm(marks, labels.Select(l => l.Text))));
        return width > 0 ? DrawingScale.Free(Seen(task), new(0, 0, width, FigurePaper.MostHeightMm)) : null;
    }

    private static Sheet Plan(FigureTask task, IReadOnlyList<RingCallout> labels)
    {
        (Design design, MomentView? moment) = (task.Design, task.Moment);
        bool numbers = labels.Any(l => l.Number is not null);
        PlanView plan = new(design, moment);
        AssemblyLabels words = new(design, plan, moment);
        DrawingScale scale = ScaleOf(task, labels) ?? throw new NoRoomException("Labels leave no room for the plan.");
        FigurePaper paper = new(task, new("assembly", $"{task.Title}: wheel and strips in plan, seen from the wiper side. {moment?.Sentence ?? "Drawn at home."}", new AssemblyWords(design, moment).Description()));
        Bounds seen = Seen(task);
        double column = Math.Ceiling(labels.Count / 2.0) * (numbers ? NumberPitchMm : WordPitchMm) * Uneven;
        Bounds area = paper.Top(Math.Max((seen.Height * scale.Factor) + 8, column));
        SheetView view = SheetView.At(scale, seen.Centre, area.Centre);
        plan.Draw(paper.Sheet, view);
        words.DrawStations(paper.Sheet, view);
        if (moment is not null)
        {
            plan.DrawIndex(paper.Sheet, view);
        }

        CalloutRing ring = new(view.Of(seen).Grown(2), area) { Marks = numbers ? CalloutMarks.Numbers : CalloutMarks.Words };
        RingCallout[] at = [.. labels.Select(l => l with { At = view.Of(l.At) })];
        IReadOnlyList<RingCallout> placed = numbers ? CalloutKey.Numbered(ring.InOrder(at)) : at;
        if (!ring.TryDraw(paper.Sheet.Group("labels", "Labels", "labels"), placed))
        {
            paper.Sheet.Warn("The figure of the assembly lacks its labels: they find no room.");
        }

        paper.Legend(words.Legend());
        paper.Table("key", CalloutKey.Table(numbers ? placed : []));
        return paper.Cut();
    }
}
