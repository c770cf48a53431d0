using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Figures of the wheel: what it is, its edges, its section.</summary>
internal static class WheelFigures
{
    // With words beside it the wheel keeps this share of the width; with less, words go into a key.
    private const double LeastShare = 0.42;

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
        return Drawn(task, words, callouts.WaysWithoutEdges()[0], withDetails: true);
    }

    /// <summary>The wheel with the angle of every edge.</summary>
    public static Sheet Edges(FigureTask task)
    {
        IReadOnlyList<RingCallout> edges = new WheelCallouts(task.Design).EdgesAndHome();
        SheetWords words = new(
            "wheel-edges",
            $"The edges of the contact wheel of {task.Title}: wheel angles at which contacts make and break, from the home mark, anticlockwise seen from the wiper side.",
            $"The wheel with a leader to every edge: {string.Join("; ", edges.Select(e => e.Text))}.");
        return Drawn(task, words, edges, withDetails: false);
    }

    /// <summary>Section A-A of the wheel in its carrier.</summary>
    public static Sheet Section(FigureTask task)
    {
        // Upright dimensions on the left, the frames of run-out on the right, mm.
        const double leftMm = 24;
        const double rightMm = 34;
        Design design = task.Design;
        SheetWords words = new(
            "section",
            $"Section A-A through the contact wheel of {task.Title}, let into its carrier. {WheelSection.Note(design).Replace("Section A-A: left", "Left", StringComparison.Ordinal)}",
            SectionDescription(design));
        FigurePaper paper = new(task, words);
        double half = Math.Max(design.Wheel.OuterDiameterMm, design.Parts.Carrier.CutBounds.Width) / 2;
        DrawingScale scale = DrawingScale.Free(new(-half, -half, half, half), new(0, 0, paper.Room.Width - leftMm - rightMm, FigurePaper.MostHeightMm));
        SheetView view = SheetView.At(scale, Point.Origin, new(paper.Room.MinX + leftMm + (half * scale.Factor), paper.Room.MaxY - WheelSection.OverMm));
        if (!new WheelSection(design, view, paper.Room).Draw(paper.Sheet))
        {
            paper.Sheet.Warn("Radii that find no room in the figure of the section stand in the table of the wheel drawing.");
        }

        return paper.Cut();
    }

    private static string SectionDescription(Design design)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        string recess = design.Parts.Carrier.Recess is CarrierRecess r ? $" in a recess of {numbers.LengthWithUnit(r.DepthMm, 3)}" : "";
        return $"Copper {numbers.LengthWithUnit(design.Brief.Wheel.ThicknessMm, 3)} thick{recess} on a carrier {numbers.LengthWithUnit(design.Brief.Carrier.ThicknessMm, 3)} thick, bore {numbers.Diameter(design.Brief.Wheel.Bore.DiameterMm, 3)}. Ring radii from the axis outwards: {string.Join("; ", design.Wheel.AllRings.OrderBy(w => w.RadiusMm).Select(w => $"{(w.IsFeed ? "feed" : w.Name)} {numbers.LengthWithUnit(w.RadiusMm)}"))}.";
    }

    private static Sheet Drawn(FigureTask task, SheetWords words, IReadOnlyList<RingCallout> callouts, bool withDetails)
    {
        Sheet? worded = task.Options.Callouts == CalloutMarks.Words && ScaleOf(task, callouts) is DrawingScale scale && scale.Factor * WheelPicture.ReachMm(task.Design) >= LeastShare * task.WidthMm
            ? With(task, words, callouts, withDetails)
            : null;
        return worded is { Warnings.Count: 0 } ? worded : With(task, words, CalloutKey.Numbered(callouts), withDetails);
    }

    private static DrawingScale? ScaleOf(FigureTask task, IReadOnlyList<RingCallout> callouts)
    {
        CalloutMarks marks = callouts.Any(c => c.Number is not null) ? CalloutMarks.Numbers : CalloutMarks.Words;
        double beside = WheelPicture.RoundMm.BesideMm + CalloutRing.ColumnMm(marks, callouts.Select(c => c.Text));
        double reach = WheelPicture.ReachMm(task.Design);
        double width = task.WidthMm - (2 * (FigurePaper.MarginMm + beside));
        return width > 0 ? DrawingScale.Free(new(0, 0, reach, reach), new(0, 0, width, width)) : null;
    }

    private static Sheet With(FigureTask task, SheetWords words, IReadOnlyList<RingCallout> callouts, bool withDetails)
    {
        bool numbers = callouts.Any(c => c.Number is not null);
        DrawingScale scale = ScaleOf(task, callouts) ?? throw new NoRoomException("Callouts leave no room for the wheel.");
        FigurePaper paper = new(task, words);
        (double above, double below, _) = WheelPicture.RoundMm;
        double wheel = above + (WheelPicture.ReachMm(task.Design) * scale.Factor) + below;
        double column = Math.Ceiling(callouts.Count / 2.0) * (numbers ? NumberPitchMm : WordPitchMm) * Uneven;
        WheelPicture picture = new(task.Design, paper.Top(Math.Max(wheel, column)), scale, callouts);
        SheetView view = picture.DrawAlone(paper.Sheet);
        int missing = withDetails ? new WheelDetails(task.Design).DrawRows(paper.Sheet, view, paper.Below) : 0;
        if (missing > 0)
        {
            paper.Sheet.Warn(Invariant.Text($"{missing} small places of the wheel are not shown enlarged in its figure: no room."));
        }

        paper.Table("key", CalloutKey.Table(picture.Key));
        return paper.Cut();
    }
}
