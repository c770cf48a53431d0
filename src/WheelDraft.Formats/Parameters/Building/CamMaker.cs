using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Parameters;

/// <summary>Cams and their levers.</summary>
internal static class CamMaker
{
    // Common practice (pressure angle, sliding and swinging followers); the user's own when the key is given.
    private const double SlidingDeg = 30;
    private const double SwingingDeg = 45;

    /// <summary>A cam.</summary>
    public static CamBrief Cam(CheckedTable table)
    {
        CheckedTable press = table.Table("press")!;
        IReadOnlyList<CheckedValue> z = table.Items("z");
        return new CamBrief
        {
            Name = table.Text("name")!,
            RollerRadiusMm = table.Table("follower")!.BaseOrNull("radius"),
            Lever = Lever(table),
            BaseRadiusMm = table.BaseOrNull("base_radius"),
            Profile = [.. table.Tables("profile").Select(Step)],
            PressureAngleRad = table.RadOrNull("pressure_angle") ?? Angles.RadFromDeg(table.Has("slide") ? SlidingDeg : SwingingDeg),
            ThicknessMm = table.Base("thickness"),
            Material = table.Text("material")!,
            Net = table.Text("net"),
            LowerMm = z[0].Quantity!.Value.Value,
            UpperMm = z[1].Quantity!.Value.Value,
            Bore = table.Table("bore") is { } bore ? WheelMaker.Bore(bore) : null,
            CutToleranceMm = table.BaseOrNull("cut_tolerance"),
            PressAtRest = press.BaseOrNull("force") ?? (press.Base("torque") * NmmInNm),
            PressRate = press.Quantity("rate") is { } rate ? Rate(rate) : 0,
            Inertia = table.BaseOrNull("inertia"),
            Body = Body(table),
            Stop = LiftOrNull(LeverTable(table), "stop"),
            Contact = table.Table("contact") is { } contact ? Contact(contact) : null,
            Obstacle = LiftOrNull(table, "obstacle"),
            Latch = LiftOrNull(table, "latch"),
        };
    }

    private static CheckedTable LeverTable(CheckedTable table) => table.Table("lever") ?? table.Table("slide")!;

    private static LeverBodyBrief? Body(CheckedTable table)
    {
        CheckedTable lever = LeverTable(table);
        IReadOnlyList<CheckedValue> z = lever.Has("z") ? lever.Items("z") : table.Items("z");
        return lever.BaseOrNull("width") is double width
            ? new(lever.Text("net"), width, z[0].Quantity!.Value.Value, z[1].Quantity!.Value.Value, lever.BaseOrNull("tail") ?? 0)
            : null;
    }

    private const double NmmInNm = 1000;

    private static double Rate(Quantity rate) => rate.Dimension == Dimension.TorqueRate ? rate.Value / Angles.RadFromDeg(1) : rate.Value;

    private static LeverBrief Lever(CheckedTable table) => table.Table("lever") is { } lever
        ? new SwingingLever(PlanPoints.One(lever, "pivot")!.Value, lever.Base("arm"), lever.Is("lifts", "clockwise") ? Turning.Clockwise : Turning.Anticlockwise)
        : new SlidingLever(table.Table("slide")!.Base("offset"), table.Table("slide")!.Rad("direction"));

    private static CamStep Step(CheckedTable table) => table.Has("drop")
        ? new CamDrop(Amount(table, "at"))
        : new CamRise(Amount(table, "from"), Amount(table, "to"), Lift(table.Quantity("lift")!.Value), Law(table.Text("law")!));

    private static TurnAmount Amount(CheckedTable table, string key) => table.Quantity(key)!.Value is { Dimension: Dimension.Angle } angle
        ? TurnAmount.Radians(angle.AngleRad)
        : TurnAmount.Seconds(table.Base(key));

    private static CamLaw Law(string word) => (CamLaw)Array.IndexOf(CamKeys.Laws, word);

    private static double Lift(Quantity lift) => lift.Dimension == Dimension.Angle ? lift.AngleRad : lift.Value;

    private static double? LiftOrNull(CheckedTable table, string key) => table.Quantity(key) is { } lift ? Lift(lift) : null;

    private static LeverContactBrief Contact(CheckedTable table)
    {
        bool below = table.Has("closed_below");
        return new(table.Text("input")!, LiftOrNull(table, below ? "closed_below" : "closed_above")!.Value, below, LiftOrNull(table, "tolerance") ?? 0);
    }
}
