using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Tolerances that are given as a share or a volume, as times.</summary>
internal static class ToleranceMaker
{
    /// <summary>The brief with every tolerance a time.</summary>
    /// <remarks>A share is one of the output's shortest on-period: the same limit goes for all of them, and so none gets more than its share. A volume is
    /// what flows in the time.</remarks>
    /// <param name="brief">A brief in which such outputs have no tolerance yet.</param>
    /// <param name="outputs">The outputs as checked, in the same order.</param>
    public static Brief Resolve(Brief brief, IReadOnlyList<CheckedTable> outputs)
    {
        Quantity?[] asked = [.. outputs.Select(o => o.Quantity("tolerance"))];
        return asked.All(t => t is null or { Dimension: Dimension.Time })
            ? brief
            : brief with { Outputs = [.. brief.Outputs.Select((o, i) => asked[i] is { } t && Seconds(t, o, brief, i) is double seconds ? o with { ToleranceS = seconds } : o)] };
    }

    private static double? Seconds(Quantity asked, OutputBrief output, Brief brief, int index) => asked.Dimension switch
    {
        Dimension.Volume => asked.Value / output.FlowLPerS,
        Dimension.Share => asked.Value * ShortestS(brief, index),
        _ => null,
    };

    private static double? ShortestS(Brief brief, int index)
    {
        Motion motion = Motion.Of(brief);
        try
        {
            OutputProgramme programme = Programme.Of(brief, motion).Outputs[index];
            return programme.IsAlways ? null : motion.SecondsFromRad(programme.Periods.Min(p => p.SweepRad));
        }
        catch (DesignRefusedException)
        {
            return null; // a programme that cannot be is refused, with its place, as soon as the brief is worked out
        }
    }
}
