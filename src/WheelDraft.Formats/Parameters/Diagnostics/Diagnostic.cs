using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>One thing that is wrong with a parameter file.</summary>
/// <param name="Place">Where, line and column from 1; columns count characters, a tab as one.</param>
/// <param name="Wrong">What is wrong.</param>
/// <param name="Right">What would be right.</param>
public sealed record Diagnostic(TextPlace Place, string Wrong, string Right)
{
    /// <summary>What is wrong and what would be right.</summary>
    public string Message => $"{Wrong}; {Right}";

    /// <summary>The line that a person and an editor read: <c>FILE:LINE:COLUMN: what is wrong; what would be right</c>.</summary>
    /// <param name="file">The file as the person named it.</param>
    public string ToString(string file) => string.Create(CultureInfo.InvariantCulture, $"{file}:{Place.Line}:{Place.Column}: {Message}");
}
