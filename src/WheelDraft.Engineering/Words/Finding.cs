namespace WheelDraft.Engineering;

/// <summary>Something that the person should know about the design.</summary>
/// <param name="Severity">How much it matters.</param>
/// <param name="Code">A stable code, chapter and matter: <c>spacing.creepage</c>, <c>wheel.spoke</c>.</param>
/// <param name="Message">What was found, what is needed, units, where, which rule.</param>
/// <param name="Where">The place in the parameter file that decides it; null when no one place does.</param>
public sealed record Finding(FindingSeverity Severity, string Code, string Message, TextPlace? Where)
{
    /// <summary>A finding that withholds the cutting files.</summary>
    public static Finding Error(string code, string message, TextPlace? where = null) => new(FindingSeverity.Error, code, message, where);

    /// <summary>A finding that asks for attention.</summary>
    public static Finding Warning(string code, string message, TextPlace? where = null) => new(FindingSeverity.Warning, code, message, where);

    /// <summary>A finding for information.</summary>
    public static Finding Note(string code, string message, TextPlace? where = null) => new(FindingSeverity.Note, code, message, where);
}

/// <summary>How much a finding matters.</summary>
public enum FindingSeverity
{
    /// <summary>Something misses: exit status 1, cutting files withheld.</summary>
    Error,

    /// <summary>Attention is asked.</summary>
    Warning,

    /// <summary>For information.</summary>
    Note,
}

/// <summary>A design that cannot be built as asked: every reason found, with numbers and a way out.</summary>
/// <remarks>Thrown by the stages of <c>Design</c>; a command turns it into located messages and exit status 2.</remarks>
public sealed class DesignRefusedException : Exception
{
    /// <summary>For the given reasons.</summary>
    /// <param name="reasons">At least one, each of severity error.</param>
    public DesignRefusedException(IReadOnlyList<Finding> reasons)
        : base(string.Join(Environment.NewLine, (reasons ?? []).Select(r => r.Message))) => Reasons = reasons ?? [];

    /// <summary>For one reason.</summary>
    public DesignRefusedException(string code, string message, TextPlace? where = null)
        : this([Finding.Error(code, message, where)])
    {
    }

    /// <summary>The reasons, in the order found.</summary>
    public IReadOnlyList<Finding> Reasons { get; }
}
