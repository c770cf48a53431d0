namespace WheelDraft.Engineering;

// The chapter "Parts": what leaves for the shop, part by part. It knows wheel and strips, and what the shop can do (Fabrication).

/// <summary>The parts of a design that are cut from copper.</summary>
public sealed record CutParts
{
    private CutParts(IReadOnlyList<CutPart> wheel, IReadOnlyList<CutPart> strips) => (Wheel, Strips) = (wheel, strips);

    /// <summary>The wheel's copper, piece by piece.</summary>
    public IReadOnlyList<CutPart> Wheel { get; }

    /// <summary>The strips' blanks, in the order of <see cref="StripSet.Strips"/>.</summary>
    public IReadOnlyList<CutPart> Strips { get; }

    /// <summary>The parts of a wheel and its strips, compensated for kerf.</summary>
    /// <exception cref="DesignRefusedException">One of them cannot be cut by the process.</exception>
    internal static CutParts Of(Brief brief, WheelLayout wheel, StripSet strips) => new(
        [.. wheel.Copper.Select(c => CutPart.Of(c.Outline, brief.Process, wheel.Feed is null ? $"'{c.Name}'" : "the wheel", brief.PlaceOf("process")))],
        [.. strips.Strips.Select(s => CutPart.Of(s.Form.Blank.Outline, brief.Process, $"the blank of strip \"{s.Form.Strip.Name}\"", brief.PlaceOf(FormattableString.Invariant($"strip[{s.Form.Index}]"))))]);

    /// <summary>What the shop could not make of them.</summary>
    internal IEnumerable<Finding> Findings(ProcessBrief process) => Wheel.Concat(Strips).SelectMany(p => CutChecks.Of(p, process));
}
