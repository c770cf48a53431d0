using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Checking;

/// <summary>Something in which a cutting file is not what the design asks.</summary>
/// <param name="Code">What it is, as findings name it.</param>
/// <param name="Layer">The layer; null for the drawing as a whole.</param>
/// <param name="Message">In words, with place and size.</param>
internal sealed record CutDifference(string Code, string? Layer, string Message)
{
    /// <summary>Where, in the design's own place of the part, mm.</summary>
    public Point? At { get; init; }

    /// <summary>How far off, mm; null where it has no size.</summary>
    public double? SizeMm { get; init; }

    /// <summary>Where it begins in the file; null for what is not in it.</summary>
    public DxfSource? Source { get; init; }

    /// <summary>Whether the part comes out the same all the same: it only lies elsewhere.</summary>
    public bool IsHarmless { get; init; }

    /// <summary>As a finding; the place is a line of the drawing.</summary>
    public Finding Finding => new(IsHarmless ? FindingSeverity.Warning : FindingSeverity.Error, Code, Message, Source is DxfSource s ? new TextPlace(s.Line, 1) : null);
}
