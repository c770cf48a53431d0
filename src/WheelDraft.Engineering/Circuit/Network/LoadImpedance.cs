using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>Loads as impedances at supply voltage and frequency.</summary>
internal static class LoadImpedance
{
    /// <summary>The impedance of a load, ohm, lagging positive.</summary>
    /// <param name="rating">What the load draws at supply voltage.</param>
    /// <param name="supplyV">Supply voltage, r.m.s.</param>
    public static Complex Of(LoadRating rating, double supplyV) => rating switch
    {
        RatedPower p => Lagging(supplyV * supplyV * p.PowerFactor / p.PowerW, p.PowerFactor),
        RatedCurrent c => Lagging(supplyV / c.CurrentA, c.PowerFactor),
        RatedImpedance z => new Complex(z.ResistanceOhm, z.ReactanceOhm),
        _ => throw new NotSupportedException("A load is rated by power, by current or as an impedance."),
    };

    private static Complex Lagging(double magnitudeOhm, double powerFactor) =>
        new(magnitudeOhm * powerFactor, magnitudeOhm * Math.Sqrt(Math.Max(0, 1 - (powerFactor * powerFactor))));
}
