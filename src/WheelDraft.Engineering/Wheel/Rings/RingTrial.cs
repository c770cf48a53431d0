namespace WheelDraft.Engineering;

/// <summary>A ring set at a radius: its edges, or why it cannot be there.</summary>
internal sealed record RingTrial
{
    public required double RadiusMm { get; init; }

    public required double BandFromMm { get; init; }

    public required double BandToMm { get; init; }

    public IReadOnlyList<PeriodCut> Cuts { get; init; } = [];

    /// <summary>Why the ring cannot be here: code and words; null when it can.</summary>
    public (string Code, string Words)? Fault { get; init; }

    /// <summary>Which required distance it does not keep here though it could be cut: code and words; null when it keeps all.</summary>
    /// <remarks>A ring that may move goes where there is none; one with a radius of its own stays, and the design has a finding.</remarks>
    public (string Code, string Words)? Miss { get; init; }

    /// <summary>Whatever speaks against this radius; null when nothing does.</summary>
    public (string Code, string Words)? Objection => Fault ?? Miss;
}
