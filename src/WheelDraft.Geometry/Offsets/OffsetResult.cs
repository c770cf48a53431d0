namespace WheelDraft.Geometry;

/// <summary>A shape moved outwards or inwards, and what that did to it.</summary>
/// <param name="Outlines">The shapes that come out: none when it vanished, several when it fell apart; the largest first.</param>
/// <param name="Changes">What came out differently from how it went in; empty when moving it back gives the source again.</param>
public sealed record OffsetResult(IReadOnlyList<Outline> Outlines, IReadOnlyList<OffsetChange> Changes)
{
    /// <summary>The one shape that came out, with nothing lost.</summary>
    /// <exception cref="InvalidOperationException">Something changed; the first change is in the message.</exception>
    public Outline Faithful =>
        Changes.Count == 0 && Outlines.Count == 1
            ? Outlines[0]
            : throw new InvalidOperationException(Changes.Count == 0 ? "The shape did not stay one." : $"The shape changed: {Changes[0]}.");
}

/// <summary>Something that an offset does not give back.</summary>
/// <param name="Kind">What happened.</param>
/// <param name="Contour">Number of the contour in the source: 0 the outer one, then the holes.</param>
/// <param name="Piece">Number of the piece in it; for a corner the one that starts there; −1 for the whole contour.</param>
/// <param name="At">Where, on the source.</param>
public readonly record struct OffsetChange(OffsetChangeKind Kind, int Contour, int Piece, Point At)
{
    /// <summary>Kind, contour and place in words.</summary>
    public override string ToString() => InWords(At.ToString());

    /// <summary>The same with the place written as the reader needs it.</summary>
    /// <param name="place">The place in words, e.g. rounded coordinates.</param>
    public string InWords(string place)
    {
        string what = Contour == 0 ? "the outer contour" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"hole {Contour}");
        return Kind switch
        {
            OffsetChangeKind.ContourVanished => $"{what} at {place} vanishes",
            OffsetChangeKind.PieceVanished => $"a side of {what} at {place} vanishes",
            OffsetChangeKind.CornerRounded => $"a corner of {what} at {place} is too sharp and would come back rounded",
            OffsetChangeKind.ContourSplit => $"{what} at {place} falls apart",
            _ => $"{what} at {place} joins another contour",
        };
    }
}

/// <summary>What an offset can do to a shape apart from moving its edges.</summary>
public enum OffsetChangeKind
{
    /// <summary>Nothing is left of a contour: a hole closed or the shape is gone.</summary>
    ContourVanished,

    /// <summary>Nothing is left of a piece: a notch closed or a nose is gone.</summary>
    PieceVanished,

    /// <summary>A corner that the offset runs into has a radius smaller than the offset.</summary>
    CornerRounded,

    /// <summary>A contour became several.</summary>
    ContourSplit,

    /// <summary>A contour joined another one.</summary>
    ContoursJoined,
}
