using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Figures of cams: the cam with its lever, and what the lever does over a turn.</summary>
internal static class CamFigures
{
    // Round the plan for dimensions and leaders, mm.
    private const double AroundMm = 18;

    // Left of diagrams for their figures, and how high each is, mm.
    private const double FiguresMm = 14;
    private const double DiagramsMm = 110;

    /// <summary>A cam in plan.</summary>
    /// <param name="task">What is drawn.</param>
    /// <param name="index">Which cam, from 0 in file order.</param>
    public static Sheet Plan(FigureTask task, int index)
    {
        CamLayout cam = task.Design.Cams[index];
        FigurePaper paper = new(task, new(
            task.Design.Parts.Cams[index].FileName,
            $"Cam '{cam.Brief.Name}' of {task.Title}, seen from the wiper side at home; chain line: its lever at rest, dashed: at its greatest lift.",
            new CamWords(task.Design, cam).Description()));
        Bounds seen = CamPlan.Seen(cam);
        DrawingScale scale = DrawingScale.Free(seen, new(0, 0, paper.Room.Width - (2 * AroundMm), FigurePaper.MostHeightMm / 2));
        Bounds area = paper.Top((seen.Height * scale.Factor) + (2 * AroundMm));
        new CamPlan(task.Design, cam, SheetView.At(scale, seen.Centre, area.Centre)).Draw(paper.Sheet);
        return paper.Cut();
    }

    /// <summary>Lift, velocity, acceleration and pressure angle over a turn.</summary>
    /// <param name="task">What is drawn.</param>
    /// <param name="index">Which cam, from 0 in file order.</param>
    public static Sheet Motion(FigureTask task, int index)
    {
        CamLayout cam = task.Design.Cams[index];
        FigurePaper paper = new(task, new(
            $"{task.Design.Parts.Cams[index].FileName}-motion",
            $"What cam '{cam.Brief.Name}' of {task.Title} does with its lever over one turn.",
            $"Four diagrams over one turn of {Wording.Seconds(task.Design.Motion.TurnTimeS)}, one above the other: lift of the lever, at most {cam.LiftWords(cam.TopLift)}; its velocity; its acceleration; the pressure angle, at most {Wording.Degrees(cam.MostPressureRad)}."));
        Bounds area = paper.Top(DiagramsMm);
        CamDiagrams.Draw(paper.Sheet, task.Design, cam, area with { MinX = area.MinX + FiguresMm, MaxX = area.MaxX - 3, MaxY = area.MaxY - 2 });
        return paper.Cut();
    }
}
