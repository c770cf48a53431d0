using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Cams set out: base radius, falls, torque, contact, what is refused.</summary>
public sealed class CamSetterTests
{
    private const double Deg = Math.PI / 180;

    private static CamBrief Feeler => CamBriefs.RiseAndDrop((36, 90, 210), 5) with
    {
        Contact = new("low", 1, ClosedBelow: true, 0),
        Obstacle = 2.5,
        Latch = 7,
    };

    [Fact]
    public void Set_AutomaticBase_IsTheLeastThatKeepsThePressureAngle()
    {
        CamLayout cam = CamBriefs.Set(Feeler);
        Assert.True(cam.MostPressureRad <= Feeler.PressureAngleRad);
        CamShape smaller = CamShape.Of(cam.Shape.Task, cam.BaseRadiusMm - 0.02)!;
        Assert.True(smaller.MostPressure().PressureRad > Feeler.PressureAngleRad || smaller.LeastRadius().RadiusMm < 4, "a smaller cam would have served");
    }

    [Fact]
    public void Set_GivenBaseTooSmall_IsAnErrorWithTheNumbers()
    {
        double least = CamBriefs.Set(Feeler).BaseRadiusMm;
        CamLayout small = CamBriefs.Set(Feeler with { BaseRadiusMm = least - 1 });
        Assert.Contains(small.Findings, f => f is { Severity: FindingSeverity.Error, Code: "cam.pressure-angle" });
    }

    [Fact]
    public void Set_Undercut_IsRefusedWithABaseThatServes()
    {
        CamBrief steep = CamBriefs.RiseAndReturn((40, 60, 65, 85), 4) with { RollerRadiusMm = 5, PressureAngleRad = 79 * Deg };
        DesignRefusedException refusal = Assert.Throws<DesignRefusedException>(() => CamBriefs.Set(steep with { BaseRadiusMm = 6 }));
        Assert.Equal("cam.undercut", refusal.Reasons[0].Code);
        Assert.Contains("would do", refusal.Message, StringComparison.Ordinal);
    }

    /// <summary>A mass m under a force F falls a height h in √(2 h m / F); with a spring of rate c, m y'' = −(F + c y), integrated step by step.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(0.4)]
    public void Falls_FreeTime_IsThatOfTheEquationOfMotion(double rate)
    {
        CamLayout cam = CamBriefs.Set(Feeler with { PressRate = rate });
        double y = 5, v = 0, t = 0;
        const double step = 1e-7;
        while (y > 0)
        {
            // N over g, in mm/s².
            v -= (1 + (rate * y)) / 20 * 1e6 * step;
            y += v * step;
            t += step;
        }

        Assert.Equal(t, cam.Falls[0].FreeS, 1e-6);
    }

    [Fact]
    public void Falls_Step_IsClearedByTheFollowerAsItRollsOverTheCorner()
    {
        CamLayout cam = CamBriefs.Set(Feeler);
        CamFall fall = cam.Falls[0];
        Assert.Equal(210, fall.HeldToRad / Deg, 1e-9);

        // The corner passes the roller once it is a roller's radius round the cam: asin(r/R), R the corner's own radius, for a step as high as a roller or higher.
        double corner = cam.Shape.Drops[0].Corner.RadiusMm;
        Assert.Equal(Math.Asin(2 / corner) / Deg, (fall.ClearRad - fall.HeldToRad) / Deg, 0.01);
        Assert.Equal(5, cam.LiftAt(210 * Deg), 1e-9);
        Assert.Equal(0, cam.LiftAt(fall.ClearRad + 1e-6), 1e-9);
    }

    /// <summary>Work put in on the way up comes back on the way down: without friction the torque over the turn adds up to the press's own work.</summary>
    [Fact]
    public void Torque_OverTheRise_DoesTheWorkOfTheLift()
    {
        CamLayout cam = CamBriefs.Set(CamBriefs.RiseAndReturn((30, 110, 160, 250), 5) with { PressRate = 0.3 });
        double work = 0;
        const double step = 0.001 * Deg;
        for (double psi = 30 * Deg; psi < 110 * Deg; psi += step)
        {
            work += cam.Torque.At(psi + (step / 2))!.Value.MostNmm * step;
        }

        // F h + c h²/2, N mm.
        Assert.Equal((1 * 5) + (0.3 * 25 / 2), work, 1e-4);
        Assert.Equal(0, cam.Torque.At(140 * Deg)!.Value.MostNmm, 1e-12);
        Assert.True(cam.Torque.At(200 * Deg)!.Value.LeastNmm < 0);
        Assert.True(cam.Torque.DrivesNmm > 0);
    }

    /// <summary>The contact changes where the lift passes its place, found here by stepping through the turn.</summary>
    [Fact]
    public void Contact_Edges_AreWhereTheLiftPassesItsPlace()
    {
        CamLayout cam = CamBriefs.Set(CamBriefs.RiseAndReturn((30, 110, 160, 250), 5) with { Contact = new("low", 1.7, ClosedBelow: false, 0.2) });
        MadePeriod period = Assert.Single(cam.Contact!.Free.Periods);
        double First(Func<double, bool> holds, double from) => Enumerable.Range(0, 100_000).Select(i => from + (i * 0.001)).First(d => holds(cam.LiftAt(d * Deg)));
        Assert.Equal(First(l => l > 1.7, 30), period.Closed.StartRad / Deg, 0.002);
        Assert.Equal(First(l => l < 1.7, 160), period.Closed.EndRad / Deg, 0.002);
        Assert.Equal(First(l => l > 1.7, 30) - First(l => l > 1.5, 30), period.Make.EarlierRad / Deg, 0.003);
        Assert.Equal(First(l => l > 1.9, 30) - First(l => l > 1.7, 30), period.Make.LaterRad / Deg, 0.003);
    }

    [Fact]
    public void Contact_PlaceWithinToleranceOfARide_IsAnError()
    {
        CamLayout cam = CamBriefs.Set(Feeler with { Contact = new("low", 2.4, ClosedBelow: true, 0.2) });
        Finding found = Assert.Single(cam.Findings, f => string.Equals(f.Code, "cam.contact-undecided", StringComparison.Ordinal));
        Assert.Contains("obstacle", found.Message, StringComparison.Ordinal);
        Assert.Equal(FindingSeverity.Error, found.Severity);
    }

    [Fact]
    public void Set_ObstacleBelowTheContactsPlace_ChangesNothing()
    {
        LeverSchedule lever = CamBriefs.Set(Feeler with { Contact = new("low", 3, ClosedBelow: true, 0) }).Contact!;
        Assert.Equal(LeverHold.AsFree, lever.Blocked);
        Assert.Equal(LeverHold.Open, lever.Latched);
        Assert.True(lever.ClosedAtRest);
        Assert.False(lever.ClosedAtTop);
    }

    [Fact]
    public void Set_UniformMotion_WarnsOfItsCornerAndHowMuchIsLost()
    {
        CamLayout cam = CamBriefs.Set(CamBriefs.RiseAndReturn((30, 110, 160, 250), 5, CamLaw.Uniform));
        Assert.Contains(cam.Findings, f => f is { Severity: FindingSeverity.Warning, Code: "cam.strikes" } && f.Message.Contains("below its profile", StringComparison.Ordinal));
    }

    [Fact]
    public void Set_LightPress_LetsTheLeverLeaveItsCam()
    {
        CamBrief light = CamBriefs.RiseAndReturn((30, 110, 160, 250), 5) with { PressAtRest = 1e-6, Inertia = 9000 };
        Brief fast = new CircuitBuilder { TurnTimeS = 1 }.Input("low", "L", "run").Request().Brief;
        Assert.Contains(CamBriefs.Set(light, fast).Findings, f => f is { Severity: FindingSeverity.Error, Code: "cam.lifts-off" });
    }

    [Fact]
    public void Set_NoRestAfterTheDrop_IsRefused()
    {
        CamBrief crowded = Feeler with { Profile = [new CamRise(TurnAmount.Radians(36 * Deg), TurnAmount.Radians(90 * Deg), 5, CamLaw.ModifiedSine), new CamDrop(TurnAmount.Radians(36 * Deg))] };
        Assert.Equal("cam.outline", Assert.Throws<DesignRefusedException>(() => CamBriefs.Set(crowded)).Reasons[0].Code);
    }

    /// <summary>A snail: it creeps up over most of the turn at one speed, rides for three degrees, and drops. The outline is swept as any other.</summary>
    [Theory]
    [InlineData(2.0, false)]
    [InlineData(2.0, true)]
    [InlineData(null, false)]
    public void Set_UniformRiseAShortRideAndADrop_IsASnail(double? roller, bool swings)
    {
        double unit = swings ? 0.02 : 1;
        CamBrief snail = CamBriefs.RiseAndDrop((10, 300, 303), 6 * unit) with
        {
            Profile = [new CamRise(TurnAmount.Radians(10 * Deg), TurnAmount.Radians(300 * Deg), 6 * unit, CamLaw.Uniform), new CamDrop(TurnAmount.Radians(303 * Deg))],
            RollerRadiusMm = roller,
            Lever = swings ? new SwingingLever(new Point(45, 10), 42, Turning.Clockwise) : new SlidingLever(0, Math.PI / 2),
            BaseRadiusMm = 12,
            PressureAngleRad = 45 * Deg,
        };
        CamLayout cam = CamBriefs.Set(snail);
        Assert.Contains(cam.Findings, f => string.Equals(f.Code, "cam.strikes", StringComparison.Ordinal));
        BulgedOutline cut = new(DxfOutline.OfCut(cam.Outline.Outer));
        double lost = 0;
        for (int i = 0; i < 7200; i++)
        {
            double psi = i * 0.05 * Deg, lift = cam.LiftAt(psi);
            double apart = cam.Shape.RollerAt(lift) is Point at
                ? cut.DistanceMm(Placement.Turn(-cam.Shape.Task.Sigma * psi).Of(at).X, Placement.Turn(-cam.Shape.Task.Sigma * psi).Of(at).Y) - roller!.Value
                : cam.Shape.FaceAt(lift)!.Value is var face ? cut.SupportMm(face.NormalRad - (cam.Shape.Task.Sigma * psi)) - face.Foot.RadiusMm : 0;
            lost = psi is > 8 * Deg and < 12 * Deg or > 295 * Deg and < 303.1 * Deg ? Math.Max(lost, Math.Abs(apart)) : lost;
            Assert.True(psi is > 8 * Deg and < 12 * Deg or > 295 * Deg and < 303.1 * Deg || Math.Abs(apart) < 0.003, FormattableString.Invariant($"at {psi / Deg}° the follower is {apart * 1000} µm from the outline"));
        }

        // Where the uniform motion begins and ends the outline has a corner; the warning says how much is lost there.
        Assert.InRange(lost, 0, 0.2);
    }

    /// <summary>The cutting file alone, as text: its outline read by this test, and the lever of the demo leant on it.</summary>
    [Fact]
    public void CuttingFile_OfTheDemo_LiftsTheLeverAsAsked()
    {
        Design design = Demos.Of("fry-feeder");
        CamLayout cam = design.Cams[0];
        string dxf = DxfWriter.Write(PartCutFile.Of(design, design.Parts.Cams[0]), DxfVersion.R2000);
        BulgedOutline cut = new(DxfOutline.Read(dxf));
        SwingingLever swing = (SwingingLever)cam.Brief.Lever;
        double c = swing.Pivot.RadiusMm, rest = cam.BaseRadiusMm + 2;
        double arm = Math.Acos(((c * c) + (swing.ArmMm * swing.ArmMm) - (rest * rest)) / (2 * c * swing.ArmMm));
        for (int i = 0; i < 7200; i++)
        {
            double psi = i * 0.05 * Deg, lift = cam.LiftAt(psi);
            Point roller = swing.Pivot + Vector.Polar(swing.ArmMm, swing.Pivot.AngleRad + Math.PI + arm + lift);

            // Clockwise: the wheel's frame turns the other way under it.
            Point at = Placement.Turn(psi).Of(roller);
            Assert.True(Math.Abs(cut.DistanceMm(at.X, at.Y) - 2) < 0.003, FormattableString.Invariant($"at {psi / Deg}° off by {(cut.DistanceMm(at.X, at.Y) - 2) * 1000} µm"));
        }
    }
}
