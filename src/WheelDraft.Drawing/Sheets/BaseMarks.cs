using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>What is shown on a base besides its holes, in the housing's plan: nothing of it is cut or scribed.</summary>
internal static class BaseMarks
{
    // Arms of the cross at the shaft axis reach this far, mm.
    private const double CrossMm = 6;

    /// <summary>The cross of the shaft axis.</summary>
    public static IReadOnlyList<IReadOnlyList<Piece>> Axis { get; } =
        [[new Segment(new(-CrossMm, 0), new(CrossMm, 0))], [new Segment(new(0, -CrossMm), new(0, CrossMm))]];

    /// <summary>The rectangles under the clamps.</summary>
    public static IEnumerable<Contour> Clamps(BasePlate plate) => plate.Clamps.Select(c => c.Edge);

    /// <summary>The outlines of the strips that are seated on it.</summary>
    public static IEnumerable<Contour> Strips(Design design, BasePlate plate) => plate.Strips.SelectMany(i => PlanView.Ribbons(design.Strips.Strips[i]));

    /// <summary>The outlines of parts, the motor's case among them, whatever their height.</summary>
    public static IEnumerable<Contour> Parts(Design design) => design.Brief.Parts.SelectMany(p => p.Outline.Contours);

    /// <summary>The outlines of adjusting screws over their travel, threads and heads.</summary>
    public static IEnumerable<Contour> Screws(Design design) => design.Screws.SelectMany(s => s.Solids).Select(s => s.Outline.Outer);

    /// <summary>All of it, for a cutting file's note.</summary>
    public static IReadOnlyList<IReadOnlyList<Piece>> All(Design design, BasePlate plate) =>
        [.. Axis, .. Clamps(plate).Concat(Strips(design, plate)).Concat(Parts(design)).Concat(Screws(design)).Select(c => c.Pieces)];
}
