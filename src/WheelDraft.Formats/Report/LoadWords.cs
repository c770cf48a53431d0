using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>What a load draws, in words.</summary>
internal static class LoadWords
{
    public static string Of(LoadRating rating) => rating switch
    {
        RatedPower power => $"{Wording.Number(power.PowerW, 3)} W{Factor(power.PowerFactor)}",
        RatedCurrent current => $"{Wording.Number(current.CurrentA, 3)} A{Factor(current.PowerFactor)}",
        RatedImpedance z => $"{Wording.Number(z.ResistanceOhm, 3)} Ω{(z.ReactanceOhm == 0 ? "" : $", {Wording.Number(z.ReactanceOhm, 3)} Ω reactance")}",
        _ => throw new NotSupportedException($"A rating of kind {rating.GetType().Name}."),
    };

    private static string Factor(double powerFactor) => powerFactor == 1 ? "" : $" at power factor {Wording.Number(powerFactor, 3)}";
}
