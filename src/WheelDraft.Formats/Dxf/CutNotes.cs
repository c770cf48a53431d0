using WheelDraft.Engineering;

namespace WheelDraft.Formats.Dxf;

/// <summary>What the notes of all cutting files of a design say alike.</summary>
internal static class CutNotes
{
    /// <summary>A note, with the mark of the parameter file, and in front of everything that the design misses if it does.</summary>
    public static string Of(Design design, string words)
    {
        string input = design.Brief.InputMark.Length > 0 ? $", INPUT {design.Brief.InputMark.ToUpperInvariant()}" : "";
        return $"{(design.Meets ? "" : "MISSES: DO NOT CUT. ")}{words}{input}";
    }
}
