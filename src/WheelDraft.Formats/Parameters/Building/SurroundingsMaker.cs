using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Parameters;

/// <summary>Supply, environment, drive and spacing rules.</summary>
internal static class SurroundingsMaker
{
    /// <summary>The supply.</summary>
    public static SupplyBrief Supply(CheckedTable table)
    {
        Quantity tolerance = table.Quantity("frequency_tolerance")!.Value;
        decimal share = tolerance.Dimension == Dimension.Share
            ? tolerance.InBaseUnit
            : tolerance.InBaseUnit / table.Quantity("frequency")!.Value.InBaseUnit;
        SupplyBrief supply = new(table.Base("voltage"), table.Base("frequency"), (double)share, table.Text("overvoltage_category") switch
        {
            "I" => OvervoltageCategory.I,
            "II" => OvervoltageCategory.II,
            "III" => OvervoltageCategory.III,
            _ => OvervoltageCategory.IV,
        })
        {
            VoltageToleranceShare = table.BaseOrNull("voltage_tolerance") ?? 0,
            OverVoltages = table.Is("over_voltages", "temporary") ? OverVoltages.Temporary : OverVoltages.None,
        };
        return table.Has("lines") ? supply with { Lines = table.Texts("lines") } : supply;
    }

    /// <summary>The surroundings.</summary>
    public static EnvironmentBrief Environment(CheckedTable table) =>
        new((int)table.Number("pollution_degree")!.Value, (double)(table.Quantity("altitude")!.Value.InBaseUnit / 1000), table.Flag("condensation")!.Value);

    /// <summary>The drive.</summary>
    public static DriveBrief Drive(CheckedTable root)
    {
        CheckedTable table = root.Table("drive")!;
        IReadOnlyList<CheckedValue> coast = table.Items("coast");
        IReadOnlyList<CheckedValue> friction = table.Items("friction");
        return new DriveBrief(
            TurnTime.Of(root)!.Value,
            table.Is("direction", "clockwise") ? Turning.Clockwise : Turning.Anticlockwise,
            table.Rad("backlash"),
            coast is [var least, var most] ? new Coast(least.Quantity!.Value.AngleRad, most.Quantity!.Value.AngleRad) : default)
        {
            Poles = (int?)table.Number("poles"),
            GearRatio = table.Number("gear_ratio"),
            MotorRpm = table.BaseOrNull("motor"),
            ChoosesMotor = table.Is("motor", "auto"),
            TorqueNm = table.BaseOrNull("torque"),
            Friction = friction is [{ Content: double low }, { Content: double high }] ? new FrictionBand(low, high) : null,
        };
    }

    /// <summary>How exactly the fixed parts are made.</summary>
    public static Housing Housing(CheckedTable table) => new(table.Base("tolerance"), table.Base("placing"));

    /// <summary>The spacing rules.</summary>
    public static SpacingBrief Spacing(CheckedTable table) => new(
        table.Is("standard", "IEC 60664-1") ? SpacingStandard.Iec60664 : SpacingStandard.Iec60335,
        table.Insulation("between_live")!.Value,
        table.Insulation("to_earthed")!.Value,
        table.Insulation("to_touchable")!.Value,
        table.Insulation("open_contact"),
        table.Base("margin"),
        table.Is("groove_x", "third") ? GrooveX.Third : GrooveX.Full)
    {
        ClearanceMm = table.BaseOrNull("clearance"),
        CreepageMm = table.BaseOrNull("creepage"),
        OwnResponsibility = table.Text("own_responsibility"),
    };
}
