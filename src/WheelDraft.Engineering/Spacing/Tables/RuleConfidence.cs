namespace WheelDraft.Engineering;

/// <summary>How well a table value or a rule is known, best first; a result is as well known as its weakest part.</summary>
public enum RuleConfidence
{
    /// <summary>Read in a public text and agreeing with a second one.</summary>
    High,

    /// <summary>Read in one text only, or in a damaged one.</summary>
    Medium,

    /// <summary>Texts disagree, or the source is weak.</summary>
    Low,

    /// <summary>From memory; no text was found to confirm it.</summary>
    FromMemory,
}
