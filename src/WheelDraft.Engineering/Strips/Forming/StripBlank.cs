using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The flat blank of a strip: along x, its terminal end at x = 0, its centre line on y = 0 up to the first sweep.</summary>
/// <param name="Outline">Edge and holes, exact lines and arcs.</param>
/// <param name="LengthMm">Developed length along the centre line.</param>
public sealed record StripBlank(Outline Outline, double LengthMm)
{
    /// <summary>The fold lines, at mid-allowance, from edge to edge, from the terminal end to the tip.</summary>
    public required IReadOnlyList<Segment> FoldLines { get; init; }

    /// <summary>Places to scribe or punch: the axis of a rivet, the dimple of a tab that has no hole.</summary>
    public required IReadOnlyList<BlankMark> Marks { get; init; }

    /// <summary>The two lines between which it is held, from edge to edge.</summary>
    public required IReadOnlyList<Segment> ClampLines { get; init; }
}

/// <summary>A place to scribe or punch on a blank.</summary>
/// <param name="At">Where.</param>
/// <param name="DiameterMm">Diameter of what comes there.</param>
/// <param name="Means">What comes there.</param>
public sealed record BlankMark(Point At, double DiameterMm, BlankMarkKind Means);

/// <summary>What a mark on a blank stands for.</summary>
public enum BlankMarkKind
{
    /// <summary>The axis of the contact rivet: drill for the shank of the rivet that is bought.</summary>
    Rivet,

    /// <summary>The dimple of a tab, pressed from the back.</summary>
    Dimple,
}
