using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf;

/// <summary>What the notes of all cutting files of a design say alike.</summary>
internal static class CutNotes
{
    // Height of the letters, mm, how far under the part they stand, and the pitch of lines.
    private const double HeightMm = 2.5;
    private const double GapMm = 5;
    private const double PitchMm = 4;

    /// <summary>The notes below a part: what it is, with the mark of the parameter file, and in front of everything that the design misses if it does; on a line of its own
    /// what the person answers for.</summary>
    /// <param name="design">The design.</param>
    /// <param name="part">Lower left corner of the part.</param>
    /// <param name="words">What the part is.</param>
    public static IReadOnlyList<CutNote> Under(Design design, Point part, string words)
    {
        Point at = part - new Vector(0, GapMm);
        string input = design.Brief.InputMark.Length > 0 ? $", INPUT {design.Brief.InputMark.ToUpperInvariant()}" : "";
        CutNote note = new(at, HeightMm, $"{(design.Meets ? "" : "MISSES: DO NOT CUT. ")}{words}{input}");
        return design.Brief.Spacing.OwnResponsibility is string own
            ? [note, new(at - new Vector(0, PitchMm), HeightMm, $"BELOW THE RULES ON OWN RESPONSIBILITY: {own}")]
            : [note];
    }
}
