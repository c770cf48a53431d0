using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Edges of parts on which a mark of the cutter does no harm: nothing slides across them and nothing springs there.</summary>
/// <remarks>On copper of a wheel edges that run round the axis, which lie beside every patch path and never across one; on a strip those from the
/// terminal end to the end of its clamp. A blank may come back over its own beginning: only what is as near to the middle line as the held part is
/// wide belongs to it.</remarks>
internal static class QuietEdges
{
    // An arc runs round the axis when its centre is this near to it, mm.
    private const double RoundingMm = 1e-6;

    /// <summary>Whether a piece of a wheel's copper runs round the axis.</summary>
    public static bool RunsRound(Piece piece) =>
        piece is Arc arc && (Math.Abs(arc.SweepRad) >= Angles.TurnRad - RoundingMm || arc.Centre.DistanceTo(Point.Origin) < RoundingMm);

    /// <summary>Whether a piece of a strip's outline lies where the strip is held.</summary>
    public static bool IsHeld(StripForm form, Piece piece)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(piece);
        double halfMm = HeldWidthMm(form) / 2;
        Bounds box = piece.Bounds;
        return box.MaxX <= form.Clamp.ToMm + RoundingMm && box.MaxY <= halfMm && box.MinY >= -halfMm;
    }

    /// <summary>Where along a straight edge a strip is held, mm along it: from behind its terminal tab to the end of its clamp. None where the edge lies elsewhere.</summary>
    /// <param name="form">The strip.</param>
    /// <param name="edge">The edge.</param>
    /// <param name="behindMm">Where its terminal tab has ended, mm from the terminal end.</param>
    public static IEnumerable<(double From, double To)> HeldOf(StripForm form, Segment edge, double behindMm)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(edge);
        double halfMm = HeldWidthMm(form) / 2, run = edge.End.X - edge.Start.X;
        if (Math.Max(Math.Abs(edge.Start.Y), Math.Abs(edge.End.Y)) > halfMm || Math.Abs(run) < RoundingMm)
        {
            return [];
        }

        double one = (behindMm - edge.Start.X) / run, other = (form.Clamp.ToMm - edge.Start.X) / run;
        double from = Math.Max(0, Math.Min(one, other)), to = Math.Min(1, Math.Max(one, other));
        return to > from && form.Clamp.ToMm > behindMm ? [(from * edge.Length, to * edge.Length)] : [];
    }

    /// <summary>The greatest width of a strip up to the end of its clamp, with room for half a kerf, mm.</summary>
    private static double HeldWidthMm(StripForm form)
    {
        const double kerfRoomMm = 0.5;
        double widest = form.Pieces.Where(p => p.FromMm < form.Clamp.ToMm).Max(p => Math.Max(p.WidthMm, p.WidthEndMm));
        return widest + kerfRoomMm;
    }
}
