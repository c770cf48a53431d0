namespace WheelDraft.Engineering;

/// <summary>A change that would make a missing row meet, found by recomputing with it.</summary>
/// <param name="Row">The row that misses.</param>
/// <param name="Kind">What kind of change.</param>
/// <param name="Text">The change in words, with its size.</param>
/// <param name="AmountMm">Its size: a shift, a height or a length, mm; 0 for another material.</param>
/// <param name="WorstAfterMm">The row's worst figure with it, mm.</param>
/// <param name="NewMisses">Rows that would miss with it and do not now, as <c>first – second, kind</c>; empty when it costs nothing elsewhere.</param>
public sealed record Remedy(SpacingRow Row, RemedyKind Kind, string Text, double AmountMm, double WorstAfterMm, IReadOnlyList<string> NewMisses);

/// <summary>What kind of change.</summary>
public enum RemedyKind
{
    /// <summary>An item moved.</summary>
    Move,

    /// <summary>A rib put between.</summary>
    Rib,

    /// <summary>A slot cut between.</summary>
    Slot,

    /// <summary>A better insulating material.</summary>
    Material,
}
