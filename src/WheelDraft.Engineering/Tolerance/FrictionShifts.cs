namespace WheelDraft.Engineering;

// The chapter "Tolerance": what wheel and strips together make of times. It stands above both and changes neither.

/// <summary>What friction does to the outputs of a design.</summary>
/// <param name="Shifts">The outputs whose strips are wound up, in file order.</param>
internal sealed record FrictionShifts(IReadOnlyList<FrictionShift> Shifts)
{
    /// <summary>Of a wheel and its strips.</summary>
    public static FrictionShifts Of(Brief brief, Motion motion, WheelLayout wheel, StripSet strips) =>
        new([.. brief.Outputs.Select((_, i) => FrictionShift.Of(brief, motion, wheel.Rings[i], strips, i)).OfType<FrictionShift>()]);

    /// <summary>The greatest shift of an output, mm, by its index; 0 where nothing is known of one.</summary>
    public double MostMm(int output) => Shifts.FirstOrDefault(s => s.Output == output)?.MostMm ?? 0;
}
