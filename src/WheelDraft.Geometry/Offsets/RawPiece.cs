namespace WheelDraft.Geometry;

/// <summary>A piece of the source moved aside, or an arc round one of its corners.</summary>
/// <param name="Piece">The moved piece.</param>
/// <param name="Contour">Number of the contour it comes from.</param>
/// <param name="Source">Number of the piece it comes from; −1 for an arc round a corner.</param>
internal sealed record RawPiece(Piece Piece, int Contour, int Source)
{
    /// <summary>All pieces of contours that run with the material on the left, moved to the right.</summary>
    internal static List<RawPiece> Of(IReadOnlyList<Contour> contours, double distance)
    {
        List<RawPiece> raw = [];
        for (int c = 0; c < contours.Count; c++)
        {
            IReadOnlyList<Piece> pieces = contours[c].Pieces;
            for (int i = 0; i < pieces.Count; i++)
            {
                if (Round(pieces[(i + pieces.Count - 1) % pieces.Count], pieces[i], distance) is Arc corner)
                {
                    raw.Add(new(corner, c, -1));
                }

                if (Moved(pieces[i], distance) is Piece moved)
                {
                    raw.Add(new(moved, c, i));
                }
            }
        }

        return raw;
    }

    /// <summary>The piece moved to the right; nothing when an arc shrinks to its centre or past it.</summary>
    private static Piece? Moved(Piece piece, double distance)
    {
        if (piece is Segment segment)
        {
            Vector right = segment.Direction.Left * -distance;
            return new Segment(segment.Start + right, segment.End + right);
        }

        Arc arc = (Arc)piece;
        double radius = arc.SweepRad > 0 ? arc.RadiusMm + distance : arc.RadiusMm - distance;
        return radius * Math.Abs(arc.SweepRad) > Tolerances.ShortestPieceMm
            ? new Arc(arc.Centre, radius, arc.StartRad, arc.SweepRad)
            : null;
    }

    /// <summary>The arc round a corner that sticks out; nothing where the path goes straight on or turns right.</summary>
    private static Arc? Round(Piece before, Piece after, double distance)
    {
        Corner corner = Corner.Between(before, after, 0);
        return corner.TurnRad * distance > Tolerances.ShortestPieceMm
            ? new Arc(corner.At, distance, corner.Arriving.AngleRad - (Math.PI / 2), corner.TurnRad)
            : null;
    }
}
