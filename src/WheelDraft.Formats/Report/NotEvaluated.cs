using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>What a design asks that was not evaluated, and what no design is checked for.</summary>
public static class NotEvaluated
{
    /// <summary>In words, in fixed order.</summary>
    public static IReadOnlyList<string> Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        Brief brief = design.Brief;
        List<string> all = [];
        void When(bool present, string words)
        {
            if (present)
            {
                all.Add(words);
            }
        }

        When(brief.Scenarios.Count > 0, "[[scenario]]: played by the command run");
        When(brief.Strips.Count == 0, "strips: none are given, so spacing to arms and terminals is not measured");
        return all;
    }
}
