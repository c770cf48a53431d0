namespace WheelDraft.Geometry;

/// <summary>Arcs cut into exact parts so short that their bounds hold little else.</summary>
/// <remarks>The bounds of a long arc of a wheel hold many of its rings; in parts of about the spacing of the pieces each
/// meets a few neighbours only, so that searches stay near n log n. Straight pieces stay whole.</remarks>
internal static class Parts
{
    // An eighth of a turn: the bounds of longer arcs are mostly empty in any surroundings.
    private const double LongestRad = Math.PI / 4;

    // Far more parts than pieces cost more to sort than they save.
    private const int Most = 64;

    /// <summary>How long parts may be among pieces, mm: twice the spacing they would have if spread evenly.</summary>
    internal static double LongestMm(IReadOnlyCollection<Bounds> pieces)
    {
        if (pieces.Count == 0)
        {
            return double.PositiveInfinity;
        }

        Bounds all = pieces.Aggregate((a, b) => a.With(b));
        return 2 * Math.Max(all.Width, all.Height) / Math.Sqrt(pieces.Count);
    }

    /// <summary>The parts of a piece, in order.</summary>
    internal static IEnumerable<Piece> Of(Piece piece, double longestMm)
    {
        if (piece is not Arc arc)
        {
            return [piece];
        }

        // A whole number of eighths must not be cut once more for rounding.
        double eighths = Math.Ceiling((Math.Abs(arc.SweepRad) / LongestRad) - 1e-9);
        int cuts = (int)Math.Clamp(Math.Max(eighths, Math.Ceiling(arc.Length / longestMm)), 1, Most);
        return Enumerable.Range(0, cuts).Select(cut => piece.Part((double)cut / cuts, (cut + 1.0) / cuts));
    }
}
