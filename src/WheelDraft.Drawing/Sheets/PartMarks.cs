using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>What is on a part besides the lines that are cut; the part's own place, mm.</summary>
/// <param name="Folds">Fold lines, at mid-allowance.</param>
/// <param name="Scribed">What is scribed, each a run of pieces.</param>
internal sealed record PartMarks(IReadOnlyList<Segment> Folds, IReadOnlyList<IReadOnlyList<Piece>> Scribed)
{
    /// <summary>What is only shown, neither cut nor scribed.</summary>
    public IReadOnlyList<IReadOnlyList<Piece>> Shown { get; init; } = [];

    /// <summary>The marks of a part. Lands are too small for any: theirs stand on the carrier.</summary>
    public static PartMarks Of(Design design, Part part) => part.Role switch
    {
        PartRole.Strip => OfStrip(design, design.Strips.Strips[part.StripIndex].Form),
        PartRole.Base => new([], []) { Shown = BaseMarks.All(design, design.Parts.Bases.First(b => ReferenceEquals(b.Part, part))) },
        PartRole.Wheel when design.Parts.Carrier is not null => new([], []),
        _ => new([], WheelMarks.Of(design).Strokes),
    };

    private static PartMarks OfStrip(Design design, StripForm form) => new(form.Blank.FoldLines, StripMarks.Of(design, form).Strokes);
}
