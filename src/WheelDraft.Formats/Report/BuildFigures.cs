using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>Figures of the building guide that no stage of a design needs.</summary>
internal static class BuildFigures
{
    /// <summary>Torque that the motor should have at the wheel, N m: twice the greatest friction (common practice, no source).</summary>
    public static double WantedTorqueNm(FrictionTorque friction) => 2 * friction.MostNm;

    /// <summary>The most that any one wiper's contact carries, A; not finite without a bound.</summary>
    public static double MostCurrentA(Design design) => design.Circuit.Loads.Count == 0 ? 0 : CurrentWords.Wipers(design.Circuit).Max(w => w.Current.CarriedA);

    /// <summary>What a fixing of the wheel goes through, mm: a windowed wheel's copper is let into its carrier, lands lie beside the fixings.</summary>
    public static double GripMm(Design design) => design.Brief.Carrier.ThicknessMm + (design.Wheel.Feed is null ? 0 : design.Brief.Carrier.StepMm);
}
