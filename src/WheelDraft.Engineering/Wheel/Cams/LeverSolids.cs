using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A cam's lever as fixed bodies that hold every place it can take: from rest to its stop, or to its latch or greatest lift where no stop is given.</summary>
/// <remarks>What is near the lever in any of its places is near these bodies, whatever angle the wheel stands at: a lever may be blocked, hooked up or stuck in any of them.
/// Arm and bar have round ends, half their width beyond their axes; a roller conducts as its lever does.</remarks>
internal static class LeverSolids
{
    // How far a face on a slide reaches beside what it is touched with, mm, as it is drawn.
    public const double FaceBesideMm = 2;

    /// <summary>Name of a lever as an item.</summary>
    public static string NameOf(CamBrief cam) => $"lever {cam.Name}";

    /// <summary>Name of a cam as the surface that its lever rides on.</summary>
    public static string SurfaceOf(CamBrief cam) => $"cam {cam.Name}";

    /// <summary>How far a lever may go from rest, rad or mm.</summary>
    public static double MostLift(CamLayout cam) => Math.Max(cam.Brief.Stop ?? 0, Math.Max(cam.Brief.Latch ?? 0, cam.TopLift));

    /// <summary>The bodies of a lever whose width is given.</summary>
    public static IEnumerable<Solid> Of(Brief brief, CamLayout cam)
    {
        LeverBodyBrief body = cam.Brief.Body!;
        SolidKind kind = body.Net is { } net ? CamSolids.KindOf(brief, net) : SolidKind.Floating;
        SolidTolerance tolerance = SolidTolerance.None with { FaceMm = brief.Housing.ToleranceMm, CutEdgeMm = SinksMm(brief, cam) };
        return Outlines(cam, body).Select(o => new Solid(NameOf(cam.Brief), body.Net ?? NameOf(cam.Brief), kind, Turns: false, body.LowerMm, body.UpperMm, o)
        {
            OnSurface = cam.Brief.Net is null ? SurfaceOf(cam.Brief) : null,
            Tolerance = tolerance,
        });
    }

    // How much lower or higher than drawn it may ride: what the cut edge and the run-out do to its place, at the end that moves most.
    private static double SinksMm(Brief brief, CamLayout cam)
    {
        double edge = (cam.Brief.CutToleranceMm ?? brief.Process.ToleranceMm) + (brief.Wheel.RunOutMm / 2);
        double longer = cam.Brief.Lever is SwingingLever swing ? Math.Max(1, cam.Brief.Body!.TailMm / swing.ArmMm) : 1;
        return edge / Math.Cos(cam.MostPressureRad) * longer;
    }

    private static Outline[] Outlines(CamLayout cam, LeverBodyBrief body)
    {
        double most = MostLift(cam), half = body.WidthMm / 2;
        switch (cam.Brief.Lever)
        {
            case SwingingLever swing when cam.Shape.RollerAt(0) is Point rest:
                SweptArm arm = SweptArm.Of(swing, (rest - swing.Pivot).AngleRad, most);
                return [arm.Pie(swing.ArmMm, half), .. Roller(cam) > half ? [arm.Band(swing.ArmMm, Roller(cam))] : Array.Empty<Outline>(), .. Tail(arm, body)];
            case SwingingLever swing:
                SweptArm face = SweptArm.Of(swing, (cam.Shape.FaceAt(0)!.Value.Foot - swing.Pivot).AngleRad, most);
                return [face.Beside(swing.ArmMm, body.WidthMm), .. Tail(face, body with { WidthMm = 2 * body.WidthMm })];
            case SlidingLever slide:
                return Slide(cam, slide, body);
            default:
                throw new NotSupportedException("A lever of no known kind.");
        }
    }

    // A tail shorter than this is none, mm: what is round about the pivot reaches further.
    private const double NoTailMm = 1e-3;

    private static double Roller(CamLayout cam) => cam.Brief.RollerRadiusMm ?? 0;

    private static Outline[] Tail(SweptArm arm, LeverBodyBrief body) => body.TailMm > NoTailMm ? [arm.Behind().Pie(body.TailMm, body.WidthMm / 2)] : [];

    private static Outline[] Slide(CamLayout cam, SlidingLever slide, LeverBodyBrief body)
    {
        double most = MostLift(cam), half = body.WidthMm / 2;
        Vector along = Vector.Polar(1, slide.DirectionRad);
        if (cam.Shape.RollerAt(0) is Point rest)
        {
            return [Capsule(rest, rest + (along * (most + body.TailMm)), half), .. Roller(cam) > half ? [Capsule(rest, rest + (along * most), Roller(cam))] : Array.Empty<Outline>()];
        }

        Point foot = cam.Shape.FaceAt(0)!.Value.Foot;
        double beside = Math.Max(cam.Shape.MostAsideMm() + FaceBesideMm, half);
        Point[] plate = [foot - (along.Left * beside), foot + (along.Left * beside), foot + (along.Left * beside) + (along * (most + body.WidthMm)), foot - (along.Left * beside) + (along * (most + body.WidthMm))];
        return [new Outline(Contour.Polygon(plate)), Capsule(foot + (along * half), foot + (along * (most + Math.Max(body.TailMm, body.WidthMm))), half)];
    }

    // Everything within a distance of a stretch.
    private static Outline Capsule(Point from, Point to, double halfMm)
    {
        Vector left = (to - from).Unit().Left * halfMm;
        return new Outline(new Contour(
        [
            new Segment(from - left, to - left), Arc.About(to, to - left, to + left, Turning.Anticlockwise),
            new Segment(to + left, from + left), Arc.About(from, from + left, from - left, Turning.Anticlockwise),
        ]));
    }
}

/// <summary>What an arm sweeps as it is lifted.</summary>
/// <param name="ToHousing">From the frame in which the pivot is the origin, the arm at rest lies along x, and lifting turns it anticlockwise.</param>
/// <param name="SweepRad">How far it turns, in (0, π).</param>
internal sealed record SweptArm(Placement ToHousing, double SweepRad)
{
    /// <summary>An arm that points somewhere at rest.</summary>
    public static SweptArm Of(SwingingLever swing, double restRad, double mostRad)
    {
        Placement mirrored = swing.Lifts == Turning.Anticlockwise ? Placement.Identity : Placement.MirrorInX;
        return new(mirrored.Then(Placement.Turn(restRad)).Then(Placement.Translation(swing.Pivot - Point.Origin)), mostRad);
    }

    /// <summary>The same beyond the pivot.</summary>
    public SweptArm Behind() => this with { ToHousing = Placement.Turn(Math.PI).Then(ToHousing) };

    /// <summary>All that an arm with round ends sweeps: everything within half its width of a slice of a disc.</summary>
    public Outline Pie(double armMm, double halfMm)
    {
        Point rest = new(armMm, 0), top = Point.Polar(armMm, SweepRad);
        return Placed(
            new Segment(new(0, -halfMm), new(armMm, -halfMm)),
            new Arc(rest, halfMm, -Quarter, Quarter),
            new Arc(Point.Origin, armMm + halfMm, 0, SweepRad),
            new Arc(top, halfMm, SweepRad, Quarter),
            new Segment(top + Vector.Polar(halfMm, SweepRad + Quarter), Point.Polar(halfMm, SweepRad + Quarter)),
            new Arc(Point.Origin, halfMm, SweepRad + Quarter, Math.PI - SweepRad));
    }

    /// <summary>All that a roller at the end of the arm sweeps; the whole disc that it can reach where it is as large as its arm.</summary>
    public Outline Band(double armMm, double rollerMm)
    {
        if (rollerMm >= armMm)
        {
            return new Outline(Contour.Circle(Point.Origin, armMm + rollerMm).Placed(ToHousing));
        }

        return Placed(
            new Arc(Point.Origin, armMm + rollerMm, 0, SweepRad),
            new Arc(Point.Polar(armMm, SweepRad), rollerMm, SweepRad, Math.PI),
            new Arc(Point.Origin, armMm - rollerMm, SweepRad, -SweepRad),
            new Arc(new(armMm, 0), rollerMm, Math.PI, Math.PI));
    }

    /// <summary>All that an arm sweeps whose face runs through the pivot, its body on the side to which it is lifted.</summary>
    public Outline Beside(double armMm, double widthMm)
    {
        double far = Math.Sqrt((armMm * armMm) + (widthMm * widthMm)), ahead = Math.Atan2(widthMm, armMm);
        return Placed(
            new Segment(Point.Origin, new(far, 0)),
            new Arc(Point.Origin, far, 0, SweepRad + ahead),
            new Segment(Point.Polar(far, SweepRad + ahead), Point.Polar(widthMm, SweepRad + Quarter)),
            new Segment(Point.Polar(widthMm, SweepRad + Quarter), Point.Origin));
    }

    private const double Quarter = Math.PI / 2;

    private Outline Placed(params Piece[] pieces) => new(new Contour(pieces).Placed(ToHousing));
}
