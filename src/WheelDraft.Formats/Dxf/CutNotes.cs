using WheelDraft.Engineering;

namespace WheelDraft.Formats.Dxf;

/// <summary>What the notes of all cutting files of a design say alike.</summary>
internal static class CutNotes
{
    /// <summary>A note with the mark of the parameter file; when the design misses, the note begins with that.</summary>
    public static string Of(Design design, string words)
    {
        string input = design.Brief.InputMark.Length > 0 ? $", INPUT {design.Brief.InputMark.ToUpperInvariant()}" : "";
        return $"{(design.Meets ? "" : "MISSES: DO NOT CUT. ")}{words}{input}";
    }
}
