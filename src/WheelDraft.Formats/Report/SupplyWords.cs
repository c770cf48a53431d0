using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>The supply in a report's words.</summary>
internal static class SupplyWords
{
    /// <summary>Voltage, its tolerance, and the lines where there are three.</summary>
    public static string Voltage(SupplyBrief supply)
    {
        string tolerance = supply.VoltageToleranceShare > 0 ? Wording.Percent(supply.VoltageToleranceShare) : "0 % (assumed)";
        string lines = supply.Lines.Count > 1
            ? $" from each of {string.Join(", ", supply.Lines)} to N, {Wording.Volts(Math.Round(supply.HighestV, 1))} between two of them"
            : "";
        return $"{Wording.Volts(supply.VoltageV)} ± {tolerance}{lines}";
    }

    /// <summary>Which over-voltages clearances count.</summary>
    public static string OverVoltages(SupplyBrief supply) => supply.OverVoltages == Engineering.OverVoltages.Temporary
        ? "temporary over-voltages counted"
        : "temporary over-voltages not counted";
}
