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

        When(brief.Strips.Count > 0, "[[strip]]: forms, springs and their spacing");
        When(brief.Loads.Count > 0 || brief.DriveMotor is not null || brief.Inputs.Count > 0, "[[load]], [[input]] and [drive_motor]: the circuit; working voltages are the supply's");
        When(brief.Interlocks.Count > 0, "[[interlock]]: no claim was proved");
        When(brief.Scenarios.Count > 0, "[[scenario]]: not played");
        When(brief.Ribs.Count > 0 || brief.Slots.Count > 0, "[[rib]] and [[slot]]: paths over surfaces");
        return all;
    }
}
