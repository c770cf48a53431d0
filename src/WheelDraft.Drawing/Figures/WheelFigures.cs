using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Figures of the wheel: what it is, its edges, its section.</summary>
internal static class WheelFigures
{
    // With words beside it the wheel keeps this share of the width, and this size, mm; with less, words go into a key.
    private const double LeastShare = 0.36;
    private const double LeastWheelMm = 50;

    // Narrower figures leave the marks of the plane of section to the section, mm.
    private const double CutMm = 120;

    // What callouts take upright, with some more where one side has most of them, mm.
    private const double WordPitchMm = 5.4;
    private const double NumberPitchMm = 8.4;
    private const double Uneven = 1.25;

    /// <summary>The wheel with its holes and wipers, what is small enlarged.</summary>
    public static Sheet Wheel(FigureTask task)
    {
        WheelCallouts callouts = new(task.Design);
        SheetWords words = new(
            "wheel",
            $"The contact wheel of {task.Title}, seen from the wiper side, wipers where they stand at home. It turns {SheetWordsOf.Turns(task.Design)}, once in {Wording.Seconds(task.Design.Motion.TurnTimeS)}.",
            WheelEdges.Description(task.Design));
        return Drawn(task, words, callouts.WaysWithoutEdges()[0], task.WidthMm >= CutMm ? WheelMatter.DetailsAndCut : WheelMatter.Details);
    }

    /// <summary>The wheel with the angle of every edge.</summary>
    public static Sheet Edges(FigureTask task)
    {
        IReadOnlyList<RingCallout> edges = new WheelCallouts(task.Design).EdgesAndHome();
        SheetWords words = new(
            "wheel-edges",
            $"The edges of the contact wheel of {task.Title}: wheel angles at which contacts make and break, from the home mark, anticlockwise seen from the wiper side.",
            $"The wheel with a leader to every edge: {string.Join("; ", edges.Select(e => e.Text))}.");
        return Drawn(task, words, edges, WheelMatter.Edges);
    }

    /// <summary>Section A-A of the wheel in its carrier.</summary>
    public static Sheet Section(FigureTask task)
    {
        // Upright dimensions on the left, the frames of run-out on the right, mm.
        Design design = task.Design;
        double leftMm = design.Parts.Carrier.Recess is CarrierRecess deep && Math.Abs(deep.DepthMm - design.Brief.Wheel.ThicknessMm) > Tolerances.JoinMm ? 24 : 17;
        const double rightMm = 34;
        const double leastHalfMm = 12;
        const double readableHalfMm = 18;
        SheetWords words = new(
            "section",
            $"Section A-A through the contact wheel of {task.Title}, let into its carrier. {WheelSection.Note(design).Replace("Section A-A: left", "Left", StringComparison.Ordinal)}",
            SectionDescription(design));
        FigurePaper paper = new(task, words);
        double half = Math.Max(design.Wheel.OuterDiameterMm, design.Parts.Carrier.CutBounds.Width) / 2;
        (double left, double right) = new WheelSection(design, SheetView.At(DrawingScale.FullSize, Point.Origin, Point.Origin), paper.Room).FiguresMm;
        double Left(double factor) => Math.Max(leftMm + (half * factor), left);
        double Right(double factor) => Math.Max(rightMm + (half * factor), right);
        DrawingScale scale = DrawingScale.Free(new(-half, -half, half, half), new(0, 0, paper.Room.Width - leftMm - rightMm, FigurePaper.MostHeightMm));
        while (Left(scale.Factor) + Right(scale.Factor) > paper.Room.Width && half * scale.Factor > leastHalfMm)
        {
            scale = new((int)(scale.Paper * 0.97), scale.Model);
        }

        if (task.Size == 1 && half * scale.Factor < readableHalfMm)
        {
            throw new NoRoomException("Its dimensions leave too little room for the section");
        }

        SheetView view = SheetView.At(scale, Point.Origin, new(paper.Room.MinX + Left(scale.Factor), paper.Room.MaxY - WheelSection.OverMm));
        WheelSection section = new(design, view, paper.Room) { IsAlone = true };
        if (!section.Draw(paper.Sheet))
        {
            paper.Sheet.Warn("Radii that find no room in the figure of the section stand in the table of the wheel drawing.");
        }

        string unit = new DrawingNumbers(design.Brief.DrawingUnit).UnitSign;
        paper.Lines("thicknesses", "Thicknesses that find no place beside the section", section.Lost.Count == 0 ? "" : $"Thicknesses, {unit}: {string.Join(", ", section.Lost)}.");

        return paper.Cut();
    }

    private static string SectionDescription(Design design)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        string recess = design.Parts.Carrier.Recess is CarrierRecess r ? $" in a recess of {numbers.LengthWithUnit(r.DepthMm, 3)}" : "";
        return $"Copper {numbers.LengthWithUnit(design.Brief.Wheel.ThicknessMm, 3)} thick{recess} on a carrier {numbers.LengthWithUnit(design.Brief.Carrier.ThicknessMm, 3)} thick, bore {numbers.Diameter(design.Brief.Wheel.Bore.DiameterMm, 3)}. Ring radii from the axis outwards: {string.Join("; ", design.Wheel.AllRings.OrderBy(w => w.RadiusMm).Select(w => $"{(w.IsFeed ? "feed" : w.Name)} {numbers.LengthWithUnit(w.RadiusMm)}"))}.";
    }

    private enum WheelMatter
    {
        // What is small is enlarged.
        Details,

        // And the plane of section is marked.
        DetailsAndCut,

        // Neither: the angles of edges.
        Edges,
    }

    private static Sheet Drawn(FigureTask task, SheetWords words, IReadOnlyList<RingCallout> callouts, WheelMatter matter)
    {
        Sheet? worded = task.Options.Callouts == CalloutMarks.Words && ScaleOf(task, callouts, matter) is DrawingScale scale && scale.Factor * WheelPicture.ReachMm(task.Design) >= Math.Max(LeastWheelMm, LeastShare * task.WidthMm)
            ? With(task, words, callouts, matter)
            : null;
        return worded is { Warnings.Count: 0 } ? worded : With(task, words, CalloutKey.Numbered(callouts), matter);
    }

    private static DrawingScale? ScaleOf(FigureTask task, IReadOnlyList<RingCallout> callouts, WheelMatter matter)
    {
        CalloutMarks marks = callouts.Any(c => c.Number is not null) ? CalloutMarks.Numbers : CalloutMarks.Words;
        double beside = WheelPicture.RoundMm(matter is WheelMatter.DetailsAndCut).BesideMm + CalloutRing.ColumnMm(marks, callouts.Select(c => c.Text));
        double reach = WheelPicture.ReachMm(task.Design);
        double width = task.WidthMm - (2 * (FigurePaper.MarginMm + beside));
        return width > 0 ? DrawingScale.Free(new(0, 0, reach, reach), new(0, 0, width, width)) : null;
    }

    private static Sheet With(FigureTask task, SheetWords words, IReadOnlyList<RingCallout> callouts, WheelMatter matter)
    {
        bool numbers = callouts.Any(c => c.Number is not null);
        DrawingScale scale = ScaleOf(task, callouts, matter) ?? throw new NoRoomException("Callouts leave no room for the wheel.");
        FigurePaper paper = new(task, words);
        (double above, double below, _) = WheelPicture.RoundMm(matter is WheelMatter.DetailsAndCut);
        double wheel = above + (WheelPicture.ReachMm(task.Design) * scale.Factor) + below;
        double column = Math.Ceiling(callouts.Count / 2.0) * (numbers ? NumberPitchMm : WordPitchMm) * Uneven;
        WheelPicture picture = new(task.Design, paper.Top(Math.Max(wheel, column)), scale, callouts) { IsCut = matter is WheelMatter.DetailsAndCut };
        SheetView view = picture.DrawAlone(paper.Sheet);
        int missing = matter is not WheelMatter.Edges ? new WheelDetails(task.Design) { Size = task.Size }.DrawRows(paper.Sheet, view, paper.Below) : 0;
        if (missing > 0)
        {
            paper.Sheet.Warn(Invariant.Text($"{missing} small places of the wheel are not shown enlarged in its figure: no room."));
        }

        paper.Table("key", CalloutKey.Table(picture.Key));
        return paper.Cut();
    }
}
