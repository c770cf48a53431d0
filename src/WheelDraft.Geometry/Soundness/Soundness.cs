using System.Globalization;

namespace WheelDraft.Geometry;

/// <summary>Whether contours can be cut as they are: none crosses or touches itself or another, none lies on another.</summary>
public static class Soundness
{
    /// <summary>All places where contours meet themselves or each other.</summary>
    /// <param name="contours">Closed contours.</param>
    /// <param name="toleranceMm">How near counts as meeting, mm.</param>
    /// <returns>The faults in order of contours and pieces; none when every contour is simple and apart from the others.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is not above 0 and finite.</exception>
    public static IReadOnlyList<ContourFault> Faults(IEnumerable<Contour> contours, double toleranceMm = Tolerances.TouchMm)
    {
        ArgumentNullException.ThrowIfNull(contours);
        Contour[] all = [.. contours];
        List<Side> sides = [];
        for (int c = 0; c < all.Length; c++)
        {
            for (int i = 0; i < all[c].Pieces.Count; i++)
            {
                sides.Add(new(c, i, all[c].Pieces.Count, all[c].Pieces[i]));
            }
        }

        NearPairs pairs = new([.. sides.Select(s => s.Piece)]);
        List<ContourFault> faults = [];
        for (int first = 0; first < sides.Count; first++)
        {
            foreach (int second in pairs.After(first, toleranceMm))
            {
                faults.AddRange(Between(sides[first], sides[second], toleranceMm));
            }
        }

        return faults;
    }

    /// <summary>All places where the contours of a shape meet, and holes that lie outside it or in each other.</summary>
    /// <param name="outline">The shape.</param>
    /// <param name="toleranceMm">How near counts as meeting, mm.</param>
    public static IReadOnlyList<ContourFault> Faults(Outline outline, double toleranceMm = Tolerances.TouchMm)
    {
        ArgumentNullException.ThrowIfNull(outline);
        List<ContourFault> faults = [.. Faults(outline.Contours, toleranceMm)];
        HashSet<(int, int)> meeting = [.. faults.Select(f => (f.First, f.Second))];
        Contour[] all = [.. outline.Contours];
        for (int hole = 1; hole < all.Length; hole++)
        {
            Point at = all[hole].Pieces[0].Start;
            if (!meeting.Contains((0, hole)) && all[0].Winding(at) == 0)
            {
                faults.Add(new(ContourFaultKind.HoleOutside, 0, 0, hole, 0, at));
            }

            for (int other = 1; other < all.Length; other++)
            {
                if (other != hole && all[other].Bounds.Contains(at) && !meeting.Contains((Math.Min(hole, other), Math.Max(hole, other))) && all[other].Winding(at) != 0)
                {
                    faults.Add(new(ContourFaultKind.HoleInHole, other, 0, hole, 0, at));
                }
            }
        }

        return faults;
    }

    private static IEnumerable<ContourFault> Between(Side first, Side second, double tolerance)
    {
        Meeting meeting = Intersections.Of(first.Piece, second.Piece, tolerance);
        foreach (CommonStretch stretch in meeting.Stretches)
        {
            Point middle = stretch.From.At.Towards(stretch.To.At, 0.5);
            yield return new(ContourFaultKind.Overlaps, first.Contour, first.Number, second.Contour, second.Number, first.Piece.NearestTo(middle));
        }

        foreach (CommonPoint point in meeting.Points)
        {
            if (!IsJoint(first, second, point.At))
            {
                yield return new(ContourFaultKind.Meets, first.Contour, first.Number, second.Contour, second.Number, point.At);
            }
        }
    }

    /// <summary>Neighbours in a contour meet where they join, and may meet nowhere else.</summary>
    private static bool IsJoint(Side first, Side second, Point at)
    {
        bool Joins(Side before, Side after) =>
            before.Contour == after.Contour
            && (before.Number + 1) % before.Count == after.Number
            && (at.DistanceTo(before.Piece.End) <= Tolerances.JoinMm || at.DistanceTo(after.Piece.Start) <= Tolerances.JoinMm);
        return Joins(first, second) || Joins(second, first);
    }

    private readonly record struct Side(int Contour, int Number, int Count, Piece Piece);
}

/// <summary>A place where contours cannot be cut as they are.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="First">Number of the one contour.</param>
/// <param name="FirstPiece">Number of the piece in it.</param>
/// <param name="Second">Number of the other contour; the same when a contour meets itself.</param>
/// <param name="SecondPiece">Number of the piece in it.</param>
/// <param name="At">Where.</param>
public readonly record struct ContourFault(ContourFaultKind Kind, int First, int FirstPiece, int Second, int SecondPiece, Point At)
{
    /// <summary>The fault in words.</summary>
    public override string ToString() => InWords(At.ToString());

    /// <summary>The same with the place written as the reader needs it.</summary>
    /// <param name="place">The place in words, e.g. rounded coordinates.</param>
    public string InWords(string place)
    {
        string who = First == Second
            ? string.Create(CultureInfo.InvariantCulture, $"Contour {First} {{0}} itself, pieces {FirstPiece} and {SecondPiece}")
            : string.Create(CultureInfo.InvariantCulture, $"Contour {First} piece {FirstPiece} {{0}} contour {Second} piece {SecondPiece}");
        return Kind switch
        {
            ContourFaultKind.Meets => $"{who.Replace("{0}", "meets", StringComparison.Ordinal)}, at {place}.",
            ContourFaultKind.Overlaps => $"{who.Replace("{0}", "lies on", StringComparison.Ordinal)}, at {place}.",
            ContourFaultKind.HoleOutside => string.Create(CultureInfo.InvariantCulture, $"Hole {Second} lies outside its shape, at {place}."),
            _ => string.Create(CultureInfo.InvariantCulture, $"Hole {Second} lies in hole {First}, at {place}."),
        };
    }
}

/// <summary>What can be wrong with contours.</summary>
public enum ContourFaultKind
{
    /// <summary>Two pieces cross or touch.</summary>
    Meets,

    /// <summary>Two pieces have a stretch in common: a duplicate, a spike or a slot without width.</summary>
    Overlaps,

    /// <summary>A hole lies outside its shape.</summary>
    HoleOutside,

    /// <summary>A hole lies in another hole.</summary>
    HoleInHole,
}
