using WheelDraft.Geometry;

namespace WheelDraft.Tests.Geometry;

/// <summary>The least web by brute force: from points close together along the edge the largest disc that touches there and stays inside, against every
/// piece by its own formula; a web is where such a disc touches on the far side of its diameter.</summary>
internal static class InscribedDiscs
{
    private const double StepMm = 0.008;
    private const double StepRad = 0.003;

    // Where the far side of the disc only slides on, its diameter changes by less between two neighbours that are nearly antipodal.
    private const double SmoothMm = 5e-4;
    private const double AntipodalMm = 1e-7;

    /// <summary>The least web, mm; infinite without any.</summary>
    internal static double LeastWebMm(Outline outline)
    {
        double least = double.PositiveInfinity;
        (Piece Piece, Bounds Box)[] all = [.. outline.Contours.SelectMany(c => c.Pieces).Select(p => (p, p.Bounds))];
        foreach (Contour contour in outline.Contours)
        {
            for (int i = 0; i < contour.Pieces.Count; i++)
            {
                Piece piece = contour.Pieces[i];
                int steps = Math.Max(8, (int)Math.Ceiling(piece.Length / StepMm));
                least = Math.Min(least, Along(Enumerable.Range(0, steps + 1).Select(k => (piece.PointAt((double)k / steps), Inward(piece.TangentAt((double)k / steps)))), all));

                // A corner that pokes into the material has a fan of normals.
                Piece next = contour.Pieces[(i + 1) % contour.Pieces.Count];
                (Vector from, Vector to) = (Inward(piece.TangentAt(1)), Inward(next.TangentAt(0)));
                double turn = Math.Atan2((from.X * to.Y) - (from.Y * to.X), (from.X * to.X) + (from.Y * to.Y));
                if (turn < -1e-9)
                {
                    int fans = (int)Math.Ceiling(-turn / StepRad);
                    double at = Math.Atan2(from.Y, from.X);
                    least = Math.Min(least, Along(Enumerable.Range(0, fans + 1).Select(k => (piece.End, Towards(at + (turn * k / fans)))), all));
                }
            }
        }

        return least;
    }

    private static Vector Towards(double rad) => new(Math.Cos(rad), Math.Sin(rad));

    // The material lies on the left.
    private static Vector Inward(Vector along) => new(-along.Y / along.Length, along.X / along.Length);

    private static double Along(IEnumerable<(Point At, Vector Inward)> samples, (Piece Piece, Bounds Box)[] all)
    {
        double least = double.PositiveInfinity;
        (Point Q, double Side, double Mm)? before = null;
        foreach ((Point p, Vector n) in samples)
        {
            if (Largest(p, n, all) is not (Point q, double r))
            {
                before = null;
                continue;
            }

            Vector pq = q - p;
            double side = ((n.X * pq.Y) - (n.Y * pq.X)) / pq.Length;
            bool ahead = (pq.X * n.X) + (pq.Y * n.Y) > 0.9 * pq.Length;
            if (ahead && Math.Abs(side) < AntipodalMm / pq.Length)
            {
                least = Math.Min(least, 2 * r);
            }
            else if (ahead && before is var (lastQ, lastSide, lastMm) && lastQ.DistanceTo(q) < 40 * StepMm && Math.Abs(lastMm - pq.Length) < SmoothMm && (side > 0) != (lastSide > 0) && Math.Abs(side) < 0.05 && Math.Abs(lastSide) < 0.05)
            {
                least = Math.Min(least, Math.Min(pq.Length, lastMm));
            }

            before = (q, side, pq.Length);
        }

        return least;
    }

    // A disc that reaches a piece is at least half as wide as the piece is far: those that lie farther off than the least so far is wide are passed over.
    private static (Point Q, double RadiusMm)? Largest(Point p, Vector n, (Piece Piece, Bounds Box)[] all)
    {
        (Point Q, double RadiusMm)? best = null;
        Bounds here = Bounds.Of(p);
        List<(Point Q, double R)> found = [];
        foreach ((Piece piece, Bounds box) in all)
        {
            if (best is var (_, least) && box.DistanceTo(here) > (2 * least) + 1e-9)
            {
                continue;
            }

            found.Clear();
            AddPoint(found, p, n, piece.Start);
            AddPoint(found, p, n, piece.End);
            if (piece is Arc arc)
            {
                AddArc(found, p, n, arc);
            }
            else
            {
                AddSegment(found, p, n, piece);
            }

            foreach ((Point q, double r) in found)
            {
                if (r > 1e-9 && q.DistanceTo(p) > 1e-7 && (best is null || r < best.Value.RadiusMm))
                {
                    best = (q, r);
                }
            }
        }

        return best;
    }

    private static void AddPoint(List<(Point Q, double R)> found, Point p, Vector n, Point q)
    {
        Vector pq = q - p;
        double ahead = (pq.X * n.X) + (pq.Y * n.Y);
        if (ahead > 1e-12)
        {
            found.Add((q, pq.Length * pq.Length / (2 * ahead)));
        }
    }

    private static void AddSegment(List<(Point Q, double R)> found, Point p, Vector n, Piece s)
    {
        Vector along = s.End - s.Start, to = p - s.Start;
        double length = along.Length;
        Vector m = new(-along.Y / length, along.X / length);
        double off = (to.X * m.X) + (to.Y * m.Y);
        (m, off) = off < 0 ? (new Vector(-m.X, -m.Y), -off) : (m, off);
        double facing = 1 - ((n.X * m.X) + (n.Y * m.Y));
        if (facing > 1e-12 && off > 1e-9)
        {
            double r = off / facing;
            Point foot = p + (n * r) - (m * r);
            double share = (((foot - s.Start).X * along.X) + ((foot - s.Start).Y * along.Y)) / (length * length);
            if (share is >= 0 and <= 1)
            {
                found.Add((foot, r));
            }
        }
    }

    private static void AddArc(List<(Point Q, double R)> found, Point p, Vector n, Arc arc)
    {
        Vector po = p - arc.Centre;
        double toward = (n.X * po.X) + (n.Y * po.Y);

        // On the circle itself no disc larger than it fits; it touches all of it.
        if (Math.Abs(po.Length - arc.RadiusMm) < 1e-9)
        {
            if (toward < 0)
            {
                Point across = p + (n * (2 * arc.RadiusMm));
                found.Add((arc.PointAt(arc.ShareNearest(across)), arc.RadiusMm));
            }

            return;
        }

        foreach (double way in (double[])[1, -1])
        {
            double r = ((arc.RadiusMm * arc.RadiusMm) - (po.Length * po.Length)) / (2 * (toward - (way * arc.RadiusMm)));
            Vector centre = p + (n * r) - arc.Centre;
            if (r > 1e-9 && double.IsFinite(r) && centre.Length > 1e-12 && Math.Abs(centre.Length - Math.Abs(arc.RadiusMm + (way * r))) < 1e-6)
            {
                Point foot = arc.Centre + (centre * ((way > 0 || arc.RadiusMm > r ? 1 : -1) * arc.RadiusMm / centre.Length));
                if (arc.PointAt(arc.ShareNearest(foot)).DistanceTo(foot) < 1e-7)
                {
                    found.Add((foot, r));
                }
            }
        }
    }
}
