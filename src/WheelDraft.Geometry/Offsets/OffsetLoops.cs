namespace WheelDraft.Geometry;

/// <summary>A closed path of an offset and the raw pieces that it is made of.</summary>
internal sealed record OffsetLoop(Contour Contour, IReadOnlyList<RawPiece> Pieces);

/// <summary>Cuts raw pieces where they meet, keeps the right parts and joins them to closed paths.</summary>
internal static class OffsetLoops
{
    internal static List<OffsetLoop> Of(IReadOnlyList<RawPiece> raw, Func<Point, bool> isKept)
    {
        List<Strand> strands = [];
        List<double>[] cuts = Cuts(raw);
        for (int i = 0; i < raw.Count; i++)
        {
            Piece piece = raw[i].Piece;
            for (int k = 1; k < cuts[i].Count; k++)
            {
                Strand strand = new(i, cuts[i][k - 1], cuts[i][k]);
                if (isKept(piece.PointAt((strand.From + strand.To) / 2)))
                {
                    strands.Add(strand);
                }
            }
        }

        StrandGraph graph = new(raw, strands);
        List<OffsetLoop> loops = [];
        foreach (OffsetLoop loop in graph.Loops())
        {
            // Two edges that run into each other within the touching tolerance leave a sliver without width.
            if (Math.Abs(loop.Contour.SignedAreaMm2) > 4 * Tolerances.TouchMm * loop.Contour.Length)
            {
                loops.Add(loop);
            }
        }

        return loops;
    }

    /// <summary>Shares at which each piece is cut, its two ends among them, in order.</summary>
    private static List<double>[] Cuts(IReadOnlyList<RawPiece> raw)
    {
        List<double>[] cuts = [.. raw.Select(_ => new List<double>())];
        NearPairs pairs = new([.. raw.Select(r => r.Piece)]);
        for (int first = 0; first < raw.Count; first++)
        {
            foreach (int second in pairs.After(first, Tolerances.TouchMm))
            {
                Add(Intersections.Of(raw[first].Piece, raw[second].Piece), cuts[first], cuts[second]);
            }
        }

        for (int i = 0; i < raw.Count; i++)
        {
            cuts[i] = Tidied(cuts[i], raw[i].Piece.Length);
        }

        return cuts;
    }

    private static void Add(Meeting meeting, List<double> first, List<double> second)
    {
        foreach (CommonPoint p in meeting.Points)
        {
            first.Add(p.ShareOnFirst);
            second.Add(p.ShareOnSecond);
        }

        foreach (CommonStretch s in meeting.Stretches)
        {
            first.Add(s.From.ShareOnFirst);
            first.Add(s.To.ShareOnFirst);
            second.Add(s.From.ShareOnSecond);
            second.Add(s.To.ShareOnSecond);
        }
    }

    private static List<double> Tidied(List<double> shares, double length)
    {
        shares.Sort();
        List<double> tidy = [0];
        double least = StrandGraph.NodeMm / length;
        foreach (double share in shares)
        {
            if (share > tidy[^1] + least && share < 1 - least)
            {
                tidy.Add(share);
            }
        }

        tidy.Add(1);
        return tidy;
    }
}

/// <summary>A part of a raw piece between two cuts.</summary>
/// <param name="Raw">Number of the raw piece.</param>
/// <param name="From">Share where it starts.</param>
/// <param name="To">Share where it ends; above 1 where it runs on through the start of a whole circle.</param>
internal readonly record struct Strand(int Raw, double From, double To);
