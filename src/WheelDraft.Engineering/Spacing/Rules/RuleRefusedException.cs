namespace WheelDraft.Engineering;

/// <summary>A distance that the rules do not give: the reason, and a way out.</summary>
internal sealed class RuleRefusedException : Exception
{
    /// <summary>A refusal.</summary>
    /// <param name="code">A stable code: <c>rule.pollution-degree</c>, <c>rule.frequency</c>, <c>rule.voltage</c>,
    /// <c>rule.impulse</c>, <c>rule.group</c>, <c>rule.category</c> or <c>rule.altitude</c>.</param>
    /// <param name="message">What was asked, why no distance is given, what to do instead.</param>
    public RuleRefusedException(string code, string message)
        : base(message) => Code = code;

    /// <summary>A stable code.</summary>
    public string Code { get; }

    /// <summary>The key of the parameter file that decides it; null when that depends on the pair (a voltage, a surface).</summary>
    public string? Key => Code switch
    {
        "rule.pollution-degree" => "environment.pollution_degree",
        "rule.altitude" => "environment.altitude",
        "rule.frequency" => "supply.frequency",
        "rule.category" => "supply.overvoltage_category",
        _ => null,
    };

    /// <summary>The refusal as a finding of severity error.</summary>
    /// <param name="where">The place in the parameter file; null when no one place decides it.</param>
    public Finding ToFinding(TextPlace? where = null) => Finding.Error(Code, Message, where);
}
