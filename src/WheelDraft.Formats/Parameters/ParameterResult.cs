using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>What came of reading a parameter file: a brief, or everything that is wrong with the file.</summary>
public sealed class ParameterResult
{
    internal ParameterResult(Brief? brief, IReadOnlyList<Diagnostic> diagnostics) => (Brief, Diagnostics) = (brief, diagnostics);

    /// <summary>The brief; null exactly when there are diagnostics.</summary>
    public Brief? Brief { get; }

    /// <summary>What is wrong, in the order of the file; empty when all is well.</summary>
    public IReadOnlyList<Diagnostic> Diagnostics { get; }
}
