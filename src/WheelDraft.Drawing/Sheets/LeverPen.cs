using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Draws a cam's lever at a lift: its roller or face, its arm and pivot, or its path.</summary>
internal static class LeverPen
{
    /// <summary>Draws it with its pivot.</summary>
    public static void Draw(ViewPen pen, CamLayout cam, double lift, LineStyle style)
    {
        Body(pen, cam, lift, style);
        Pivot(pen, cam);
    }

    /// <summary>Draws what moves of it.</summary>
    public static void Body(ViewPen pen, CamLayout cam, double lift, LineStyle style)
    {
        foreach (IReadOnlyList<Piece> line in Lines(cam, lift))
        {
            pen.Line(line, style);
        }
    }

    /// <summary>Draws what stands still of it.</summary>
    public static void Pivot(ViewPen pen, CamLayout cam)
    {
        if (cam.Brief.Lever is SwingingLever swing)
        {
            pen.CentreCross(swing.Pivot, 1);
        }
    }

    /// <summary>What it takes, mm.</summary>
    public static Bounds BoundsOf(CamLayout cam, double lift) => Lines(cam, lift).SelectMany(l => l).Select(p => p.Bounds).Aggregate((a, b) => a.With(b));

    /// <summary>Its lines in plan, mm.</summary>
    public static IEnumerable<IReadOnlyList<Piece>> Lines(CamLayout cam, double lift)
    {
        if (cam.Shape.RollerAt(lift) is Point roller)
        {
            double radius = cam.Brief.RollerRadiusMm!.Value;
            yield return Contour.Circle(roller, radius).Pieces;
            Point end = cam.Brief.Lever is SwingingLever swing ? swing.Pivot : roller + (Vector.Polar(1, ((SlidingLever)cam.Brief.Lever).DirectionRad) * (4 * radius));
            yield return [new Segment(roller, end)];
            yield break;
        }

        (Point foot, double normal) = cam.Shape.FaceAt(lift)!.Value;
        Vector along = Vector.Polar(1, normal).Left;
        if (cam.Brief.Lever is SwingingLever arm)
        {
            Vector way = (foot - arm.Pivot).Unit();
            yield return [new Segment(arm.Pivot, arm.Pivot + (way * arm.ArmMm))];
            yield break;
        }

        double half = cam.Shape.MostAsideMm() + LeverSolids.FaceBesideMm;
        yield return [new Segment(foot - (along * half), foot + (along * half))];
        yield return [new Segment(foot, foot + (Vector.Polar(1, normal) * half))];
    }
}
