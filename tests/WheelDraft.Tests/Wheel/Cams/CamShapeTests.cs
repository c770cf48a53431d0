using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Cam geometry against worked tables and against followers that are swept or leant on the finished outline.</summary>
public sealed class CamShapeTests
{
    private const double Deg = Math.PI / 180;

    private static CamProfile Rise(double lift, double sweepDeg, CamLaw law) => new(
    [
        new(0, sweepDeg * Deg, 0, lift, law), new(sweepDeg * Deg, 60 * Deg, lift, lift, null),
        new((sweepDeg + 60) * Deg, 100 * Deg, lift, 0, CamLaw.Cycloidal), new((sweepDeg + 160) * Deg, (200 - sweepDeg) * Deg, 0, 0, null),
    ]);

    // The first stretch alone: the return of the table is not known.
    private static PitchCurve First(CamShape shape) => (PitchCurve)shape.Curves[0];

    /// <summary>Sliding roller follower, lift 20 mm cycloidal in 60°, by prime radius: greatest pressure angle, deg, and least convex radius of the pitch curve, mm.</summary>
    /// <remarks>Calculated outside this project from the formulas of METU Mechanisms ch. 8.4 (tan φ = (s' − e)/(s + √(Rp² − e²)); ρ = (R² + s'²)^1.5/(R² + 2 s'² − R s'')).</remarks>
    [Theory]
    [InlineData(30, 44.43, 16.03)]
    [InlineData(40, 37.84, 21.21)]
    [InlineData(50, 32.78, 26.88)]
    [InlineData(60, 28.82, 32.985)]
    public void MostPressure_CycloidalRise_IsTheWorkedValue(double primeMm, double pressureDeg, double radiusMm)
    {
        CamShape shape = CamShape.Of(new(Rise(20, 60, CamLaw.Cycloidal), new SlidingLever(0, 90 * Deg), 5, 1), primeMm - 5)!;
        double most = Enumerable.Range(0, 6001).Max(i => First(shape).PressureRad(i * 0.01 * Deg));
        Assert.Equal(pressureDeg, most / Deg, 0.005);
        Assert.Equal(radiusMm, 1 / First(shape).Sharpest().Sharpness, 0.005);
    }

    /// <summary>The same with the path 10 mm beside the axis, on the side that the cam turns to: 25.74° at most on the rise, 11.54° at rest.</summary>
    [Fact]
    public void PressureRad_PathBesideTheAxis_IsTheWorkedValue()
    {
        CamShape shape = CamShape.Of(new(Rise(20, 60, CamLaw.Cycloidal), new SlidingLever(10, 90 * Deg), 5, 1), 45)!;
        double most = Enumerable.Range(0, 6001).Max(i => First(shape).PressureRad(i * 0.01 * Deg));
        Assert.Equal(25.74, most / Deg, 0.005);
        Assert.Equal(11.54, shape.PressureRad(350 * Deg)!.Value / Deg, 0.005);
    }

    /// <summary>Swinging roller follower: distance of centres 80 mm, arm 60 mm, from 40° to 60° from the line of centres, cycloidal in 90°.</summary>
    /// <remarks>11.8806°, 16.4455° and 6.1865° at 20°, 45° and 70°, calculated outside this project and confirmed there by brute force.</remarks>
    [Theory]
    [InlineData(20, 11.8806)]
    [InlineData(45, 16.4455)]
    [InlineData(70, 6.1865)]
    public void PressureRad_SwingingLever_IsTheWorkedValue(double atDeg, double pressureDeg)
    {
        // The lever turns in the cam's sense when it is lifted, as the worked values have it.
        double rest = Math.Sqrt((80 * 80) + (60 * 60) - (2 * 80 * 60 * Math.Cos(40 * Deg)));
        CamProfile profile = Rise(20 * Deg, 90, CamLaw.Cycloidal);
        double[] both = [.. new[] { 1.0, -1.0 }.Select(sigma => CamShape.Of(new(profile, new SwingingLever(new Point(80, 0), 60, Turning.Anticlockwise), 5, sigma), rest - 5)!.PressureRad(atDeg * Deg)!.Value / Deg)];
        Assert.Contains(both, b => Math.Abs(b - pressureDeg) < 0.5e-4);
    }

    [Fact]
    public void Of_RollerCams_TouchTheirRollerAllRound()
    {
        int made = 0, undercut = 0;
        CamCases.Rollers.Sample(
            c =>
            {
                if (CamShape.Of(c.Task, c.BaseMm) is not { } shape || shape.MostPressure().PressureRad > 60 * Deg)
                {
                    return;
                }

                if (shape.IsUndercut)
                {
                    undercut++;
                    Assert.True(UndercutBySweeping(shape), "undercut, and yet the swept roller is tangent everywhere");
                    return;
                }

                Assert.False(UndercutBySweeping(shape), "not undercut, and yet the swept roller is not tangent somewhere");
                CamOutline? outline = CamOutline.Of(shape);
                if (outline is null)
                {
                    return;
                }

                made++;
                Assert.True(outline.OffMm <= 0.002);
                TouchesAllRound(shape, outline);
            },
            iter: CamCases.Count);
        Assert.True(made > CamCases.Count / 3, FormattableString.Invariant($"only {made} cams were made, {undercut} undercut"));
    }

    // The roller at every twentieth of a degree: its axis is its radius from the outline, within 3 µm.
    private static void TouchesAllRound(CamShape shape, CamOutline outline)
    {
        double roller = shape.Task.RollerMm!.Value;
        BulgedOutline cut = new(DxfOutline.OfCut(outline.Contour));
        for (int i = 0; i < 7200; i++)
        {
            double programme = i * 0.05 * Deg;
            double lift = shape.LiftAt(programme);
            Point at = Placement.Turn(-shape.Task.Sigma * programme).Of(Roller(shape.Task.Lever, shape.BaseMm + roller, lift));
            double apart = cut.DistanceMm(at.X, at.Y) - roller;
            Assert.True(Math.Abs(apart) < 0.003, FormattableString.Invariant($"at {programme / Deg}° the roller is {apart * 1000} µm from the outline"));
        }
    }

    // Where the roller's axis is, from the lever alone.
    private static Point Roller(LeverBrief lever, double restMm, double lift)
    {
        if (lever is SlidingLever slide)
        {
            Vector along = Vector.Polar(1, slide.DirectionRad);
            return Point.Origin + (along * (lift + Math.Sqrt((restMm * restMm) - (slide.OffsetMm * slide.OffsetMm)))) + (along.Left * -slide.OffsetMm);
        }

        SwingingLever swing = (SwingingLever)lever;
        double c = swing.Pivot.RadiusMm, angle = Math.Acos(((c * c) + (swing.ArmMm * swing.ArmMm) - (restMm * restMm)) / (2 * c * swing.ArmMm));
        double sense = swing.Lifts == Turning.Anticlockwise ? 1 : -1;
        return swing.Pivot + Vector.Polar(swing.ArmMm, swing.Pivot.AngleRad + Math.PI + (sense * (angle + lift)));
    }

    // The contact point of a roller moves backward somewhere, or the roller cuts into what it left a moment before: by sweeping, at every hundredth of a degree of each motion.
    private static bool UndercutBySweeping(CamShape shape)
    {
        double roller = shape.Task.RollerMm!.Value, sigma = shape.Task.Sigma;
        Point At(CamStretch s, double psi) => Placement.Turn(-sigma * psi).Of(Roller(shape.Task.Lever, shape.BaseMm + roller, s.At(psi).Lift));
        foreach (CamStretch stretch in shape.Task.Profile.Stretches.Where(s => s.Law is not null))
        {
            Point? before = null;
            const double h = 1e-5;
            int n = (int)(stretch.SweepRad / (0.01 * Deg));
            for (int i = 1; i < n; i++)
            {
                double psi = stretch.FromRad + (stretch.SweepRad * i / n);
                Point here = At(stretch, psi);
                Vector way = (At(stretch, psi + h) - At(stretch, psi - h)).Unit();
                Point contact = here + (way.Left * (-sigma * roller));
                if (before is { } last && (contact - last).Dot(way) < 0)
                {
                    return true;
                }

                before = contact;
            }
        }

        return false;
    }

    [Fact]
    public void PressureRad_RandomCams_IsThatOfBruteForce()
    {
        CamCases.Rollers.Sample(
            c =>
            {
                if (CamShape.Of(c.Task, c.BaseMm) is not { } shape)
                {
                    return;
                }

                double rest = shape.BaseMm + c.Task.RollerMm!.Value, most = 0;
                for (int i = 0; i < 720; i++)
                {
                    double psi = i * 0.5 * Deg;
                    if (shape.PressureRad(psi) is not double pressure)
                    {
                        continue;
                    }

                    (CamStretch stretch, double at) = c.Task.Profile.Find(psi);
                    if (at - stretch.FromRad < 1e-4 || stretch.ToRad - at < 1e-4)
                    {
                        continue;
                    }

                    const double h = 1e-5;
                    Point InWheel(double angle) => Placement.Turn(-c.Task.Sigma * angle).Of(Roller(c.Task.Lever, rest, stretch.At(angle).Lift));
                    Vector tangent = (InWheel(at + h) - InWheel(at - h)).Unit();
                    double lift = stretch.At(at).Lift;
                    Vector path = (Roller(c.Task.Lever, rest, lift + h) - Roller(c.Task.Lever, rest, lift - h)).Unit().Turned(-c.Task.Sigma * at);
                    double expected = Math.Asin(Math.Min(1, Math.Abs(tangent.Dot(path))));
                    Assert.Equal(expected / Deg, pressure / Deg, 0.001);
                    most = Math.Max(most, pressure);
                }

                Assert.True(shape.MostPressure().PressureRad >= most - 1e-9);
            },
            iter: CamCases.Count);
    }

    [Fact]
    public void Of_FlatFollowers_LeanOnTheirFaceAllRound()
    {
        int made = 0;
        CamCases.Flats.Sample(
            c =>
            {
                if (CamShape.Of(c.Task, c.BaseMm) is not { } shape || shape.IsUndercut || CamOutline.Of(shape) is not { } outline)
                {
                    return;
                }

                made++;
                Assert.True(outline.OffMm <= 0.002);
                BulgedOutline cut = new(DxfOutline.OfCut(outline.Contour));
                for (int i = 0; i < 7200; i++)
                {
                    double psi = i * 0.05 * Deg;
                    (double distance, double normal) = Face(c.Task.Lever, c.BaseMm, shape.LiftAt(psi));
                    double apart = cut.SupportMm(normal - (c.Task.Sigma * psi)) - distance;
                    Assert.True(Math.Abs(apart) < 0.003, FormattableString.Invariant($"at {psi / Deg}° the face is {apart * 1000} µm from the outline"));
                }
            },
            iter: CamCases.Count);
        Assert.True(made > CamCases.Count / 3, FormattableString.Invariant($"only {made} cams were made"));
    }

    // Distance and normal of the face, from the lever alone: through the pivot along the arm, or square to the slide.
    private static (double DistanceMm, double NormalRad) Face(LeverBrief lever, double restMm, double lift)
    {
        if (lever is SlidingLever slide)
        {
            return (restMm + lift, slide.DirectionRad);
        }

        SwingingLever swing = (SwingingLever)lever;
        double sense = swing.Lifts == Turning.Anticlockwise ? 1 : -1;
        Vector along = Vector.Polar(1, swing.Pivot.AngleRad + Math.PI + (sense * (Math.Asin(restMm / swing.Pivot.RadiusMm) + lift)));
        Vector foot = (swing.Pivot - Point.Origin) - (along * (swing.Pivot - Point.Origin).Dot(along));
        return (foot.Length, foot.AngleRad);
    }
}
