using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The lift of a lever over a turn as a line in a row of a chart, rest at its foot, the greatest lift at its top.</summary>
internal static class LiftCurve
{
    // A point at every half degree: finer than a line is wide on any paper.
    private const int Points = 720;

    /// <summary>Draws it, with the greatest lift written beside it where there is room.</summary>
    /// <param name="pen">The pen.</param>
    /// <param name="cam">The cam.</param>
    /// <param name="turn">Left and right end of the turn on the paper, mm.</param>
    /// <param name="row">Foot and height of the row, mm.</param>
    public static void Draw(GroupPen pen, CamLayout cam, (double LeftMm, double RightMm) turn, (double FootMm, double HeightMm) row)
    {
        Point At(double programmeRad) => new(
            turn.LeftMm + ((turn.RightMm - turn.LeftMm) * programmeRad / Angles.TurnRad),
            row.FootMm + (row.HeightMm * cam.LiftAt(programmeRad) / cam.TopLift));
        Point[] points = [.. Enumerable.Range(0, Points + 1).Select(i => At(Angles.TurnRad * i / Points) with { X = turn.LeftMm + ((turn.RightMm - turn.LeftMm) * i / Points) })];
        IReadOnlyList<Point> curve = CurveThinning.Of(points);
        pen.Polyline(LineStyle.Wide(LineKind.ContinuousWide, Ink.Outline, 0.5), curve);
        foreach ((Point a, Point b) in curve.Zip(curve.Skip(1)))
        {
            pen.Texts.TakeLine(a, b);
        }

        string top = cam.LiftWords(cam.TopLift);
        pen.TryText(top, points.Where(p => p.Y > row.FootMm + (row.HeightMm * 0.999)).Select(p => new TextSpot(new(p.X, row.FootMm + (row.HeightMm / 2)), TextAlong.Middle, TextAcross.Middle)), TextStyle.Small);
    }
}
