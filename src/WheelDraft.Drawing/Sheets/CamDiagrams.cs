using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Diagrams of a lever over one turn, one above the other: lift, velocity, acceleration, pressure angle.</summary>
internal static class CamDiagrams
{
    private const double GapMm = 5;

    // A point at every quarter of a degree.
    private const int Points = 1440;

    /// <summary>Draws them in an area; the axis of programme angles stands under the last.</summary>
    public static void Draw(SheetBuilder sheet, Design design, CamLayout cam, Bounds area)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        string unit = cam.Brief.Swings ? "°" : numbers.UnitSign;
        double perUnit = cam.Brief.Swings ? 180 / Math.PI : 1 / (design.Brief.DrawingUnit == DrawingUnit.Inch ? 25.4 : 1);
        (string Name, Func<CamMoment, double?> Of)[] all =
        [
            ($"lift, {unit}", m => m.Lift * perUnit),
            ($"velocity, {unit}/s", m => m.PressureRad is null ? null : m.VelocityPerS * perUnit),
            ($"acceleration, {unit}/s²", m => m.PressureRad is null ? null : m.AccelerationPerS2 * perUnit),
            ("pressure angle, °", m => m.PressureRad * 180 / Math.PI),
        ];
        CamMoment[] moments = [.. Enumerable.Range(0, Points + 1).Select(i => CamMoment.Of(design.Motion, cam, Angles.TurnRad * i / Points))];
        ChartAxis axis = new(0, 360, area.MinX, area.MaxX) { Steps = StepKind.Degrees };
        double foot = area.MinY + 12;
        double high = (area.MaxY - foot - ((all.Length - 1) * GapMm)) / all.Length;
        GroupPen axes = sheet.Group("diagram-axis", "Programme angle", "axes");
        axis.DrawGrid(axes, foot, area.MaxY);
        axis.Draw(axes, foot, AxisSide.Below, "programme angle from home, ° →");
        for (int i = 0; i < all.Length; i++)
        {
            double bottom = foot + ((all.Length - 1 - i) * (high + GapMm));
            One(sheet.Group(Invariant.Text($"diagram-{i + 1}"), all[i].Name, "diagram"), axis, (all[i].Name, [.. moments.Select(all[i].Of)]), (bottom, high));
        }
    }

    private static void One(GroupPen pen, ChartAxis axis, (string Name, double?[] Values) curve, (double FootMm, double HighMm) place)
    {
        double[] known = [.. curve.Values.OfType<double>()];
        double least = Math.Min(0, known.Min()), most = Math.Max(0, known.Max());
        double span = most - least > 1e-12 ? most - least : 1;
        double Y(double value) => place.FootMm + ((value - least) / span * place.HighMm);
        pen.Line(new Point(axis.LeftMm, place.FootMm), new Point(axis.LeftMm, place.FootMm + place.HighMm), LineStyle.Thin);
        pen.Line(new Point(axis.LeftMm, Y(0)), new Point(axis.RightMm, Y(0)), LineStyle.Thin);
        foreach (IReadOnlyList<Point> run in Runs(axis, curve.Values, Y).Select(CurveThinning.Of))
        {
            pen.Polyline(LineStyle.Wide(LineKind.ContinuousWide, Ink.Outline, 0.35), run);
            foreach ((Point a, Point b) in run.Zip(run.Skip(1)))
            {
                pen.Texts.TakeLine(a, b);
            }
        }

        foreach (double value in new[] { least, most }.Where(v => v != 0).Append(0))
        {
            pen.Text(DrawingNumbers.Trimmed(value, 3), new(new(axis.LeftMm - 1.5, Y(value)), TextAlong.End, TextAcross.Middle), TextStyle.Small);
        }

        pen.TryText(
            curve.Name,
            from share in (double[])[0.99, 0.8, 0.6, 0.4, 0.2, 0.01]
            from up in (double[])[0.9, 0.75, 0.5, 0.25]
            select new TextSpot(new(axis.LeftMm + (share * (axis.RightMm - axis.LeftMm)), place.FootMm + (up * place.HighMm)), share > 0.5 ? TextAlong.End : TextAlong.Start, TextAcross.Top),
            TextStyle.Caption);
    }

    // What is not known, over a step, is left out.
    private static IEnumerable<List<Point>> Runs(ChartAxis axis, double?[] values, Func<double, double> y)
    {
        List<Point> run = [];
        for (int i = 0; i < values.Length; i++)
        {
            if (values[i] is double value)
            {
                run.Add(new(axis.Of(360.0 * i / (values.Length - 1)), y(value)));
            }

            if ((values[i] is null || i + 1 == values.Length) && run.Count > 1)
            {
                yield return run;
                run = [];
            }
            else if (values[i] is null)
            {
                run.Clear();
            }
        }
    }
}
