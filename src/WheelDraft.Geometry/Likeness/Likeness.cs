namespace WheelDraft.Geometry;

/// <summary>Where a contour departs from the one that it should be: corner by corner while the two still go by the same corners, else by the
/// farthest that either lies from the other.</summary>
/// <remarks>The farthest distance is taken over points of both ways round (the Hausdorff distance of sampled curves): 17 on each piece, middles
/// and ends among them, so that an arc drawn for a line or a corner out of place shows its full size.</remarks>
public static class Likeness
{
    // Points looked at on a piece, counted in steps from its start.
    private const int Steps = 16;

    /// <summary>Every departure.</summary>
    /// <param name="wanted">What it should be.</param>
    /// <param name="found">What it is, travelled either way from any corner.</param>
    /// <param name="toleranceMm">What is no departure yet, mm, above 0.</param>
    /// <returns>None when both are the same curve, however it is cut into pieces.</returns>
    public static IReadOnlyList<ContourDeparture> Departures(Contour wanted, Contour found, double toleranceMm)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentNullException.ThrowIfNull(found);
        if (!(toleranceMm > 0) || !double.IsFinite(toleranceMm))
        {
            throw new ArgumentOutOfRangeException(nameof(toleranceMm), toleranceMm, "A tolerance is above 0 and finite.");
        }

        if (Circle(wanted) is Arc should && Circle(found) is Arc circle)
        {
            return OfCircles(should, circle, toleranceMm);
        }

        // An arc that bulges the wrong way can turn the sign of the area: which way the contour is travelled is known by its corners alone.
        IReadOnlyList<ContourDeparture>? best = null;
        foreach (Contour way in (Contour[])[found, found.Reversed()])
        {
            IReadOnlyList<ContourDeparture>? these = AsAWhole(wanted, way, toleranceMm) ?? CornerByCorner(wanted, way, toleranceMm);
            best = these is not null && (best is null || these.Count < best.Count) ? these : best;
        }

        return best ?? Farthest(wanted, found, toleranceMm);
    }

    private static Arc? Circle(Contour contour) => contour.Pieces is [Arc arc] ? arc : null;

    private static List<ContourDeparture> OfCircles(Arc wanted, Arc found, double toleranceMm)
    {
        List<ContourDeparture> all = [];
        double movedMm = wanted.Centre.DistanceTo(found.Centre);
        if (movedMm > toleranceMm)
        {
            all.Add(new(DepartureKind.Moved, wanted.Centre, found.Centre, movedMm));
        }

        double widerMm = Math.Abs(found.RadiusMm - wanted.RadiusMm);
        if (widerMm > toleranceMm)
        {
            all.Add(new(DepartureKind.Radius, wanted.Centre, found.Centre, widerMm));
        }

        return all;
    }

    /// <summary>The contour elsewhere, unchanged in itself; null when it is not.</summary>
    private static IReadOnlyList<ContourDeparture>? AsAWhole(Contour wanted, Contour found, double toleranceMm)
    {
        Vector by = new Point(found.Bounds.MinX, found.Bounds.MinY) - new Point(wanted.Bounds.MinX, wanted.Bounds.MinY);
        if (by.Length <= toleranceMm || wanted.Pieces.Count != found.Pieces.Count)
        {
            return null;
        }

        Contour back = found.Placed(Placement.Translation(-by));
        return CornerByCorner(wanted, back, toleranceMm) is { Count: 0 }
            ? [new(DepartureKind.Moved, wanted.Bounds.Centre, found.Bounds.Centre, by.Length)]
            : null;
    }

    /// <summary>Corners and bulges that differ; null when fewer than half of the corners are where they should be.</summary>
    private static List<ContourDeparture>? CornerByCorner(Contour wanted, Contour found, double toleranceMm)
    {
        int count = wanted.Pieces.Count;
        if (count != found.Pieces.Count || count < 2)
        {
            return null;
        }

        (int shift, int there) = BestShift(wanted, found, toleranceMm);
        if (2 * there < count)
        {
            return null;
        }

        List<ContourDeparture> all = [];
        for (int i = 0; i < count; i++)
        {
            Piece should = wanted.Pieces[i], piece = found.Pieces[(i + shift) % count];
            double movedMm = should.Start.DistanceTo(piece.Start);
            if (movedMm > toleranceMm)
            {
                all.Add(new(DepartureKind.Corner, should.Start, piece.Start, movedMm));
            }

            // How high an arc stands over its chord is its bulge times half the chord.
            double higherMm = Math.Abs(should.Bulge - piece.Bulge) * should.Start.DistanceTo(should.End) / 2;
            if (higherMm > toleranceMm)
            {
                bool turned = Math.Abs(should.Bulge + piece.Bulge) < Math.Abs(should.Bulge) / 2;
                all.Add(new(turned ? DepartureKind.OtherWay : DepartureKind.Bulge, should.PointAt(0.5), piece.PointAt(0.5), higherMm));
            }
        }

        return all;
    }

    private static (int Shift, int There) BestShift(Contour wanted, Contour found, double toleranceMm)
    {
        int count = wanted.Pieces.Count;
        (int Shift, int There) best = (0, -1);
        for (int shift = 0; shift < count && best.There < count; shift++)
        {
            int there = 0;
            for (int i = 0; i < count; i++)
            {
                there += wanted.Pieces[i].Start.DistanceTo(found.Pieces[(i + shift) % count].Start) <= toleranceMm ? 1 : 0;
            }

            best = there > best.There ? (shift, there) : best;
        }

        return best;
    }

    private static IReadOnlyList<ContourDeparture> Farthest(Contour wanted, Contour found, double toleranceMm)
    {
        ContourDeparture from = From(wanted, found), back = From(found, wanted);
        ContourDeparture worst = from.SizeMm >= back.SizeMm ? from : back with { At = back.Found, Found = back.At };
        return worst.SizeMm > toleranceMm ? [worst] : [];
    }

    private static ContourDeparture From(Contour contour, Contour other)
    {
        ContourDeparture worst = default;
        foreach (Piece piece in contour.Pieces)
        {
            for (int step = 0; step <= Steps; step++)
            {
                Point at = piece.PointAt((double)step / Steps);
                (Point near, double distanceMm) = NearestOf(other.Pieces, at);
                worst = distanceMm > worst.SizeMm ? new(DepartureKind.Shape, at, near, distanceMm) : worst;
            }
        }

        return worst;
    }

    /// <summary>The nearest point on any of some pieces, and how far it is; infinitely far where there are none.</summary>
    public static (Point At, double DistanceMm) NearestOf(IReadOnlyList<Piece> pieces, Point p)
    {
        (Point At, double DistanceMm) best = (p, double.PositiveInfinity);
        Bounds here = Bounds.Of(p);
        foreach (Piece piece in pieces)
        {
            if (piece.Bounds.DistanceTo(here) < best.DistanceMm)
            {
                Point near = piece.NearestTo(p);
                double distanceMm = near.DistanceTo(p);
                best = distanceMm < best.DistanceMm ? (near, distanceMm) : best;
            }
        }

        return best;
    }
}

/// <summary>A place where a contour is not what it should be.</summary>
/// <param name="Kind">In what way.</param>
/// <param name="At">The place on the contour as it should be; for a circle its centre.</param>
/// <param name="Found">The place that answers to it on the contour as it is.</param>
/// <param name="SizeMm">How far off, mm: between the two places, or the change of a radius or of an arc's height.</param>
public readonly record struct ContourDeparture(DepartureKind Kind, Point At, Point Found, double SizeMm);

/// <summary>In what way a contour departs.</summary>
public enum DepartureKind
{
    /// <summary>It differs over a stretch: the farthest place is told.</summary>
    Shape,

    /// <summary>A corner is elsewhere.</summary>
    Corner,

    /// <summary>An arc bulges to the other side.</summary>
    OtherWay,

    /// <summary>An arc is flatter or rounder, or a line has become one.</summary>
    Bulge,

    /// <summary>A circle is larger or smaller.</summary>
    Radius,

    /// <summary>All of it is elsewhere, unchanged.</summary>
    Moved,
}
