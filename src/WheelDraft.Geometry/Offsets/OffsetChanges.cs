namespace WheelDraft.Geometry;

/// <summary>Reports what an offset did apart from moving edges.</summary>
internal static class OffsetChanges
{
    internal static List<OffsetChange> Of(Contour[] source, bool grows, double distance, List<OffsetLoop> loops)
    {
        HashSet<(int Contour, int Piece)> left = [.. loops.SelectMany(l => l.Pieces).Select(p => (p.Contour, p.Source))];
        int[] paths = new int[source.Length];
        bool[] joined = new bool[source.Length];
        foreach (OffsetLoop loop in loops)
        {
            int[] parents = [.. loop.Pieces.Select(p => p.Contour).Distinct()];
            foreach (int parent in parents)
            {
                paths[parent]++;
                joined[parent] |= parents.Length > 1;
            }
        }

        List<OffsetChange> changes = [];
        for (int c = 0; c < source.Length; c++)
        {
            Point at = source[c].Pieces[0].Start;
            if (paths[c] == 0)
            {
                changes.Add(new(OffsetChangeKind.ContourVanished, c, -1, at));
                continue;
            }

            if (paths[c] > 1)
            {
                changes.Add(new(OffsetChangeKind.ContourSplit, c, -1, at));
            }

            if (joined[c])
            {
                changes.Add(new(OffsetChangeKind.ContoursJoined, c, -1, at));
            }

            changes.AddRange(OfPieces(source[c], c, distance, left));
        }

        // Pieces of a reversed contour are numbered from its other end.
        return grows ? changes : [.. changes.Select(x => x with { Piece = Renumbered(x, source[x.Contour].Pieces.Count) })];
    }

    private static IEnumerable<OffsetChange> OfPieces(Contour source, int contour, double distance, HashSet<(int Contour, int Piece)> left)
    {
        for (int i = 0; i < source.Pieces.Count; i++)
        {
            Piece piece = source.Pieces[i];

            // An inside arc of exactly the offset shrinks to its centre and comes back from there.
            bool comesBack = piece is Arc { SweepRad: < 0 } arc && Math.Abs(arc.RadiusMm - distance) <= 2 * Tolerances.TouchMm;
            if (!left.Contains((contour, i)) && !comesBack)
            {
                yield return new(OffsetChangeKind.PieceVanished, contour, i, piece.PointAt(0.5));
            }

            Piece before = source.Pieces[(i + source.Pieces.Count - 1) % source.Pieces.Count];
            Corner corner = Corner.Between(before, piece, i);

            // Moved there and back the corner is an arc, whose middle lies this far from the corner.
            double awayMm = distance * ((1 / Math.Cos(corner.TurnRad / 2)) - 1);
            if (corner.IsReEntrant && awayMm > Tolerances.TouchMm)
            {
                yield return new(OffsetChangeKind.CornerRounded, contour, i, corner.At);
            }
        }
    }

    private static int Renumbered(OffsetChange change, int count) => change.Kind switch
    {
        OffsetChangeKind.PieceVanished => count - 1 - change.Piece,
        OffsetChangeKind.CornerRounded => (count - change.Piece) % count,
        _ => change.Piece,
    };
}
