using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>What is on a part besides the lines that are cut; the part's own place, mm.</summary>
/// <param name="Folds">Fold lines, at mid-allowance.</param>
/// <param name="Scribed">What is scribed, each a run of pieces.</param>
internal sealed record PartMarks(IReadOnlyList<Segment> Folds, IReadOnlyList<IReadOnlyList<Piece>> Scribed)
{
    // The home line of a carrier that copper covers is scribed over this share of its radius, from the rim.
    private const double HomeLineShare = 0.1;

    /// <summary>What is only shown, neither cut nor scribed.</summary>
    public IReadOnlyList<IReadOnlyList<Piece>> Shown { get; init; } = [];

    /// <summary>The marks of a part. Lands are too small for any: theirs stand on the carrier. The carrier of a windowed wheel has the home line
    /// alone, so that the copper goes in the right way round.</summary>
    public static PartMarks Of(Design design, Part part) => part.Role switch
    {
        PartRole.Strip => OfStrip(design, design.Strips.Strips[part.StripIndex].Form),
        PartRole.Base => new([], []) { Shown = BaseMarks.All(design, design.Parts.Bases.First(b => ReferenceEquals(b.Part, part))) },
        PartRole.Cam => new([], [HomeLine(CamOf(design, part).BaseRadiusMm)]),
        PartRole.Wheel when design.Wheel.Feed is null => new([], []),
        PartRole.Carrier when design.Wheel.Feed is not null => new([], [HomeLine(part.CutBounds.Width / 2)]),
        _ => new([], WheelMarks.Of(design).Strokes),
    };

    /// <summary>The part that a placed strip is cut as.</summary>
    public static Part BlankOf(Design design, PlacedStrip strip) => design.Parts.Strips.First(p => ReferenceEquals(design.Strips.Strips[p.StripIndex], strip));

    private static CamLayout CamOf(Design design, Part part) => design.Cams[Enumerable.Range(0, design.Cams.Count).First(i => ReferenceEquals(design.Parts.Cams[i], part))];

    private static IReadOnlyList<Piece> HomeLine(double radiusMm) => [new Segment(Point.Polar(radiusMm * (1 - HomeLineShare), 0), Point.Polar(radiusMm, 0))];

    private static PartMarks OfStrip(Design design, StripForm form) => new(form.Blank.FoldLines, StripMarks.Of(design, form).Strokes);
}
