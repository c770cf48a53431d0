namespace WheelDraft.Engineering;

/// <summary>A ring set at a radius: its edges, or why it cannot be there.</summary>
internal sealed record RingTrial
{
    public required double RadiusMm { get; init; }

    public required double BandFromMm { get; init; }

    public required double BandToMm { get; init; }

    public IReadOnlyList<PeriodCut> Cuts { get; init; } = [];

    /// <summary>Why the ring cannot be here; null when it can.</summary>
    public RingObjection? Fault { get; init; }

    /// <summary>Which required distance it does not keep here though it could be cut; null when it keeps all.</summary>
    /// <remarks>A ring that may move goes where there is none; one with a radius of its own stays, and the design has a finding.</remarks>
    public RingObjection? Miss { get; init; }

    /// <summary>Whatever speaks against this radius; null when nothing does.</summary>
    public RingObjection? Objection => Fault ?? Miss;
}

/// <summary>What speaks against a ring at a radius.</summary>
/// <remarks>A search for a radius asks only whether there is one, many times over: its words are made when somebody reads them.</remarks>
/// <param name="Code">The code of its finding.</param>
/// <param name="Say">Makes its words.</param>
internal sealed record RingObjection(string Code, Func<string> Say)
{
    /// <summary>In words, as the middle of a sentence.</summary>
    public string Words => Say();
}
