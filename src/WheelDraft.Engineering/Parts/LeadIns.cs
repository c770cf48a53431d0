using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Where the cutter starts on a contour.</summary>
/// <param name="Of">The contour as the part has it.</param>
/// <param name="Contour">The same contour, begun where the lead-in ends.</param>
/// <param name="Line">From the start, in what falls away, square to the contour.</param>
internal sealed record LeadIn(Contour Of, Contour Contour, Segment Line);

/// <summary>Puts lead-ins on the contours of a part.</summary>
/// <remarks>A start leaves a mark. On copper of a wheel it stands on an edge that runs round the axis, which lies beside every patch path and never across
/// one; on a strip's outline between terminal end and clamp, where nothing slides or springs; on a hole anywhere. A contour where no place has
/// room for a quarter of the length goes without.</remarks>
internal static class LeadIns
{
    // Halved so often before a contour goes without.
    private const int Shortenings = 2;

    // A start is as far from the contour as its lead-in is long within this, mm.
    private const double RoundingMm = 1e-6;

    /// <summary>The lead-ins of a part.</summary>
    /// <param name="strips">The strips of the design.</param>
    /// <param name="part">The part.</param>
    /// <param name="lengthMm">Their length, mm, above 0; shorter where a hole has no room.</param>
    public static IReadOnlyList<LeadIn> Of(StripSet strips, Part part, double lengthMm)
    {
        ArgumentNullException.ThrowIfNull(strips);
        ArgumentNullException.ThrowIfNull(part);
        List<LeadIn> all = [];
        foreach (Outline shape in part.Shapes.Select(s => s.ToCut))
        {
            foreach (Contour contour in shape.Contours)
            {
                bool outer = ReferenceEquals(contour, shape.Outer);
                IEnumerable<int> places = Enumerable.Range(0, contour.Pieces.Count).Where(i => Allowed(strips, part, contour.Pieces[i], outer)).OrderByDescending(i => Math.Round(contour.Pieces[i].Length, 6)).ThenBy(i => i);
                if (places.Select(i => At(part, contour, i, lengthMm)).FirstOrDefault(l => l is not null) is LeadIn lead)
                {
                    all.Add(lead);
                }
            }
        }

        return all;
    }

    private static bool Allowed(StripSet strips, Part part, Piece piece, bool outer)
    {
        if (part.Role == PartRole.Wheel)
        {
            return QuietEdges.RunsRound(piece);
        }

        return !outer || part.Role != PartRole.Strip || QuietEdges.IsHeld(strips.Strips[part.StripIndex].Form, piece);
    }

    private static LeadIn? At(Part part, Contour contour, int piece, double lengthMm)
    {
        Point end = contour.Pieces[piece].PointAt(0.5);
        Vector along = contour.Pieces[piece].TangentAt(0.5);

        // The material lies on the left all along, so what falls away is on the right; of several lands none may be met.
        Vector away = new(along.Y, -along.X);
        double length = lengthMm;
        for (int i = 0; i <= Shortenings; i++, length /= 2)
        {
            Point start = end + (away * length);
            if (part.Shapes.All(s => !s.ToCut.Contains(start) && Distances.ToEdge(start, s.ToCut).DistanceMm >= length - RoundingMm))
            {
                return new(contour, BegunAt(contour, piece), new(start, end));
            }
        }

        return null;
    }

    private static Contour BegunAt(Contour contour, int piece)
    {
        if (contour.Pieces is [Arc circle])
        {
            return new([new Arc(circle.Centre, circle.RadiusMm, circle.StartRad + (circle.SweepRad / 2), circle.SweepRad)]);
        }

        int count = contour.Pieces.Count;
        return new([contour.Pieces[piece].Part(0.5, 1), .. Enumerable.Range(1, count - 1).Select(i => contour.Pieces[(piece + i) % count]), contour.Pieces[piece].Part(0, 0.5)]);
    }
}
