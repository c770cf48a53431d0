using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A cam in plan, dimensioned, with its lever at rest and at its greatest lift.</summary>
internal sealed class CamPlan
{
    private readonly Design _design;
    private readonly CamLayout _cam;
    private readonly SheetView _plan;
    private readonly DrawingNumbers _numbers;

    /// <param name="design">The design.</param>
    /// <param name="cam">The cam.</param>
    /// <param name="plan">How it lies on the paper.</param>
    public CamPlan(Design design, CamLayout cam, SheetView plan) => (_design, _cam, _plan, _numbers) = (design, cam, plan, new(design.Brief.DrawingUnit));

    /// <summary>What must be seen of a cam and its lever, mm.</summary>
    public static Bounds Seen(CamLayout cam) => cam.Outline.Bounds.With(LeverPen.BoundsOf(cam, 0)).With(LeverPen.BoundsOf(cam, cam.TopLift));

    /// <summary>Draws it.</summary>
    public void Draw(SheetBuilder sheet)
    {
        DrawPlan(sheet);
        LeverPen.Draw(sheet.Group("lever", "The lever, at rest and at its greatest lift", "lever").In(_plan), _cam, 0, LineStyle.Phantom);
        LeverPen.Draw(sheet.Group("lifted", "The lever at its greatest lift", "lever").In(_plan), _cam, _cam.TopLift, LineStyle.Hidden);
        DrawDimensions(sheet);
    }

    private void DrawPlan(SheetBuilder sheet)
    {
        sheet.Group("cam", "The cam", "cam").In(_plan).Area(_cam.Outline, Fill.Of(_cam.Brief.Net is null ? FillKind.Carrier : FillKind.Copper), LineStyle.Edge);
        sheet.Texts.TakeEdges(_cam.Outline.Pieces.Select(p => p.Placed(_plan.ToPaper)));
        ViewPen axes = sheet.Group("axes", "Centre lines, base circle and index mark", "axes").In(_plan);
        axes.CentreCross(Point.Origin, _cam.OuterRadiusMm);
        axes.Line(Contour.Circle(Point.Origin, _cam.BaseRadiusMm), LineStyle.Centre);
        foreach (IReadOnlyList<Piece> mark in PartMarks.Of(_design, _design.Parts.Cams[_cam.Index]).Scribed)
        {
            axes.Line(mark, LineStyle.Thin);
        }
    }

    private void DrawDimensions(SheetBuilder sheet)
    {
        DimensionPen pen = new(sheet.Group("dimensions", "Dimensions", "dimensions"));
        BoreBrief bore = _cam.Brief.Bore ?? _design.Brief.Wheel.Bore;
        double away = LeverAwayRad();
        pen.Add(new CalloutDimension(_plan.Of(Point.Polar(bore.DiameterMm / 2, away + Angles.RadFromDeg(35))), away + Angles.RadFromDeg(35), _numbers.Diameter(bore.DiameterMm) + (bore.FlatMm is double flat ? $", flat {_numbers.Length(flat)}" : "")));
        pen.Add(new CalloutDimension(_plan.Of(Point.Polar(_cam.BaseRadiusMm, away - Angles.RadFromDeg(35))), away - Angles.RadFromDeg(35), $"base circle {_numbers.Radius(_cam.BaseRadiusMm)}"));
        pen.Add(new CalloutDimension(_plan.Of(Point.Polar(_cam.BaseRadiusMm * 0.95, 0)), LeverAwayRad() + Angles.RadFromDeg(Math.Sin(LeverAwayRad()) < 0 ? 60 : -60), "index mark, 0°"));
        if (_cam.Shape.Drops is [{ } drop, ..])
        {
            pen.Add(new CalloutDimension(_plan.Of(drop.Corner), drop.Corner.AngleRad, $"corner of the step, {_numbers.Radius(drop.Corner.RadiusMm)} at {DrawingNumbers.Direction(drop.Corner.AngleRad)}"));
        }

        if (_cam.Brief.Lever is SwingingLever swing)
        {
            pen.Add(new CalloutDimension(_plan.Of(swing.Pivot), swing.Pivot.AngleRad, "pivot"));
        }
    }

    private double LeverAwayRad() => (_cam.Brief.Lever is SwingingLever swing ? swing.Pivot.AngleRad : ((SlidingLever)_cam.Brief.Lever).DirectionRad) + Math.PI;
}
