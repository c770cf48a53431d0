using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Figures of what happens when: timing chart, wiring diagram, a moment, runs.</summary>
internal static class ChartFigures
{
    // From net to net in a wiring diagram, mm: a symbol with its leads; more than the usual is no help; less has no room.
    private const double MostColumnMm = 56;
    private const double LeastColumnMm = 16;

    // From here on the chart of a moment stands beside its plan, mm.
    private const double BesideMm = 200;
    private const double ChartShare = 0.44;
    private const double GapMm = 5;

    /// <summary>Contacts, loads and parking over one turn.</summary>
    public static Sheet Timing(FigureTask task)
    {
        FigurePaper paper = new(task, new("timing", $"Timing of one turn of {task.Title}: contacts and loads over time from home, the worst case of each edge as whiskers.{Sentence(task)}", TimingWords.Description(task.Design) + Sentence(task)));
        new TimingChart(task.Design, new TimingRows(task.Design).Sections(), paper.Top(FigurePaper.MostHeightMm)) { Moment = task.Moment }.DrawAlone(paper.Sheet);
        return paper.Cut();
    }

    /// <summary>The wiring diagram, its nets as far apart as the width lets them.</summary>
    public static Sheet Circuit(FigureTask task)
    {
        (Design design, MomentView? moment) = (task.Design, task.Moment);
        string state = moment is null ? "Drawn at rest." : $"{moment.Sentence} {CircuitSheet.Loads(design, moment)}";
        WiringLayout usual = WiringLayout.Of(design.Circuit.Request);
        FigurePaper paper = new(task, new("circuit", $"Wiring of {task.Title}. {(moment is null ? "Drawn at rest, inputs open." : moment.Sentence)}", $"{CircuitSheet.Description(design, usual)} {state}"));
        (WiringPicture picture, double height) = Fitted(task, paper.Room.Width);
        Bounds area = paper.Top(height);
        picture.Draw(paper.Sheet, area);
        paper.Lines("columns", "How columns are read", picture.ColumnCount(area) > 1 ? "Columns go on from left to right; bars of the same name are one net." : "");
        return paper.Cut();
    }

    /// <summary>A moment: the wheel as it has turned, what is live, the programme with a cursor.</summary>
    public static Sheet Moment(FigureTask task)
    {
        Design design = task.Design;
        CircuitMoment at = task.Options.Moment ?? design.Circuit.At(0, 0);
        MomentView moment = new(design, at);
        MomentChart chart = new(design, at.State.Inputs);
        IEnumerable<string> loads = design.Circuit.Loads.Select(l => $"{l} {moment.LoadWords(l)}");
        IEnumerable<string> contacts = design.Brief.Outputs.Select(o => $"{o.Name} {(moment.IsMade(o.Name) ? "closed" : "open")}");
        FigurePaper paper = new(task, new("moment", $"{task.Title}: what is live, and which loads are on. {moment.Sentence}", $"The wheel with its strips, and the programme of a turn with a cursor at {moment.Time}. Contacts: {string.Join("; ", contacts)}. Loads: {string.Join("; ", loads)}."));
        Bounds room = paper.Room;
        paper.Sheet.Group("clock", "Time and angle", "moment").Text($"{moment.Time} after home, {moment.Angle}", new(new(room.MinX, room.MaxY), TextAlong.Start, TextAcross.Top), new TextStyle(FigurePaper.LetterMm, TextWeight.Heavy, Ink.Accent));
        double top = room.MaxY - FigurePaper.LetterMm - 2;
        double share = task.WidthMm >= BesideMm ? 1 - ChartShare : 1;
        double width = share < 1 ? (room.Width * share) - GapMm : room.Width;
        double height = Math.Max(width * 0.8, share < 1 ? chart.HeightMm : 0);
        MomentPlan plan = new(design, new(room.MinX, top - height, room.MinX + width, top));
        plan.Draw(paper.Sheet, moment);
        double chartTop = share < 1 ? top : paper.Below.MaxY;
        chart.Draw(paper.Sheet, moment, new(share < 1 ? room.MinX + width + GapMm : room.MinX, chartTop - chart.HeightMm, room.MaxX, chartTop));
        paper.Legend(new([.. MomentView.Legend, .. chart.Legend]));
        paper.Lines("key", "Wipers whose names find no room", string.Join("; ", plan.Key));
        foreach (string name in plan.Untagged)
        {
            paper.Sheet.Warn($"The figure of the moment has no room for the tag of '{name}'; its state stands in the chart.");
        }

        return paper.Cut();
    }

    /// <summary>A scenario played over time.</summary>
    /// <param name="task">What is drawn.</param>
    /// <param name="index">Which scenario, from 0 in file order.</param>
    public static Sheet Run(FigureTask task, int index)
    {
        IReadOnlyList<ScenarioBrief> scenarios = task.Design.Brief.Scenarios;
        RunRows rows = RunRows.Of(task.Design, index);
        FigurePaper paper = new(task, new($"run-{FileSlugs.Of(scenarios.Select(s => s.Name))[index]}", $"{task.Title}, scenario \"{scenarios[index].Name}\": inputs, contacts and loads over time.", RunChart.Description(task.Design, rows)));
        new RunChart(task.Design, rows, paper.Top(FigurePaper.MostHeightMm)).DrawAlone(paper.Sheet);
        return paper.Cut();
    }

    private static string Sentence(FigureTask task) => task.Moment is MomentView moment ? $" {moment.Sentence}" : "";

    // In one column as long as that is no higher than a page of A4 has room for, else in as many as stand side by side.
    private static (WiringPicture Picture, double HeightMm) Fitted(FigureTask task, double widthMm)
    {
        const double pageMm = 230;
        const double stepMm = 4;
        const int mostColumns = 4;
        WiringPicture single = InColumn(task, widthMm) ?? throw new NoRoomException(Invariant.Text($"the wiring diagram needs a width of {Math.Ceiling(LeastWidthMm(task) * task.Size):0} mm"));
        (WiringPicture Picture, double HeightMm) best = (single, single.HeightMm + 0.01);
        for (int columns = 2; columns <= mostColumns && best.HeightMm * task.Size > pageMm && InColumn(task, widthMm / columns) is WiringPicture folded; columns++)
        {
            double height = folded.HeightMm / columns;
            while (height < best.HeightMm && (!folded.FitsFolded(new(0, 0, widthMm, height)) || folded.ColumnCount(new(0, 0, widthMm, height)) != columns))
            {
                height += stepMm;
            }

            best = height < best.HeightMm ? (folded, height) : best;
        }

        return best;
    }

    private static double LeastWidthMm(FigureTask task) => new WiringPicture(WiringLayout.Of(task.Design.Circuit.Request, LeastColumnMm), task.Moment).WidthMm + (2 * FigurePaper.MarginMm);

    // Its width grows evenly with the distance of its nets; null where they would stand too near each other.
    private static WiringPicture? InColumn(FigureTask task, double widthMm)
    {
        const double nearMm = 20;
        WiringPicture At(double columnMm) => new(WiringLayout.Of(task.Design.Circuit.Request, columnMm), task.Moment) { HasEarthedCase = CircuitSheet.Earthed(task.Design).Length > 0 };
        (double near, double usual) = (At(nearMm).WidthMm, At(2 * nearMm).WidthMm);
        double perColumn = Math.Max((usual - near) / nearMm, 1e-6);
        double column = nearMm + ((widthMm - 0.01 - near) / perColumn);
        return column >= LeastColumnMm ? At(Math.Min(column, MostColumnMm)) : null;
    }
}
