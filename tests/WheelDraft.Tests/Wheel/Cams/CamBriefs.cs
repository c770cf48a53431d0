using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests;

/// <summary>Cams for tests: a sliding roller over a turn of 360 s, one degree a second.</summary>
internal static class CamBriefs
{
    private const double Deg = Math.PI / 180;

    /// <summary>Rises from one angle to the next by a law, rides, returns by the same law; lifts in mm.</summary>
    public static CamBrief RiseAndReturn((double From, double To, double BackFrom, double BackTo) deg, double liftMm, CamLaw law = CamLaw.Polynomial345) => new()
    {
        Name = "cam",
        RollerRadiusMm = 2,
        Lever = new SlidingLever(0, Math.PI / 2),
        Profile = [Rise(deg.From, deg.To, liftMm, law), Rise(deg.BackFrom, deg.BackTo, 0, law)],
        PressureAngleRad = 30 * Deg,
        ThicknessMm = 3,
        Material = "acetal",
        LowerMm = 5,
        UpperMm = 8,
        CutToleranceMm = 0,
        PressAtRest = 1,
        Inertia = 20,
    };

    /// <summary>Rises, rides, and falls over a step.</summary>
    public static CamBrief RiseAndDrop((double From, double To, double DropAt) deg, double liftMm) => RiseAndReturn((deg.From, deg.To, 0, 0), liftMm) with
    {
        Profile = [Rise(deg.From, deg.To, liftMm, CamLaw.ModifiedSine), new CamDrop(TurnAmount.Radians(deg.DropAt * Deg))],
    };

    private static CamRise Rise(double fromDeg, double toDeg, double liftMm, CamLaw law) =>
        new(TurnAmount.Radians(fromDeg * Deg), TurnAmount.Radians(toDeg * Deg), liftMm, law);

    /// <summary>A cam with its contact, set out over the brief of a circuit.</summary>
    public static CamLayout Set(CamBrief cam, Brief? over = null)
    {
        Brief brief = (over ?? new CircuitBuilder().Input("low", "L", "run").Request().Brief) with { Cams = [cam] };
        return CamSetter.Of(brief, Motion.Of(brief))[0];
    }
}
