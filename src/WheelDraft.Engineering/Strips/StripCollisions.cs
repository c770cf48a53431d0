using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Strips that the wheel would run into, over its whole turn.</summary>
/// <remarks>API: <c>StripCollisions.Of(strips, turning, motion)</c>. Over a turn every two points of a fixed and a turning
/// connected body come into line, so they touch exactly when their ranges of radius and of height both overlap.</remarks>
public static class StripCollisions
{
    /// <summary>Every strip that something which turns would run into.</summary>
    /// <param name="strips">The placed strips.</param>
    /// <param name="turning">What turns: the wheel's copper, its fixings, its shaft, its carrier; each connected.</param>
    /// <param name="direction">Which way the wheel turns.</param>
    /// <param name="placeOf">Where a strip stands in the parameter file, by its index.</param>
    public static IReadOnlyList<Finding> Of(
        IReadOnlyList<PlacedStrip> strips,
        IReadOnlyList<Solid> turning,
        Turning direction,
        Func<int, TextPlace?> placeOf)
    {
        ArgumentNullException.ThrowIfNull(strips);
        ArgumentNullException.ThrowIfNull(turning);
        ArgumentNullException.ThrowIfNull(placeOf);
        List<Finding> findings = [];
        foreach (PlacedStrip strip in strips)
        {
            foreach (IGrouping<string, Solid> body in turning.Where(t => t.Turns).GroupBy(t => t.Name, StringComparer.Ordinal))
            {
                if (First(strip, body, direction) is string message)
                {
                    findings.Add(Finding.Error("strip.collision", message, placeOf(strip.Form.Index)));
                }
            }
        }

        return findings;
    }

    private static string? First(PlacedStrip strip, IEnumerable<Solid> body, Turning direction)
    {
        foreach (Solid turns in body)
        {
            RadialSpan reach = RadialSpan.Of(turns.Outline);
            double runOut = turns.Tolerance.RunOutMm;
            double lift = turns.Tolerance.FaceRunOutMm;
            foreach (Solid solid in strip.Solids.Where(s => !(s.IsNose && turns.IsWheelCopper)))
            {
                bool level = solid.FromZMm <= turns.ToZMm + lift && turns.FromZMm - lift <= solid.ToZMm;
                if (!level)
                {
                    continue;
                }

                RadialSpan own = RadialSpan.Of(solid.Outline);
                double from = Math.Max(own.LeastMm, reach.LeastMm - runOut);
                double to = Math.Min(own.MostMm, reach.MostMm + runOut);
                if (from <= to)
                {
                    return Message(strip, solid, own, turns, reach, direction);
                }
            }
        }

        return null;
    }

    private static string Message(PlacedStrip strip, Solid solid, RadialSpan own, Solid turns, RadialSpan reach, Turning direction)
    {
        double radius = Math.Clamp(Math.Max(own.LeastMm, reach.LeastMm), own.LeastMm, own.MostMm);
        double fixedRad = PointAt(solid.Outline, own, radius).AngleRad;
        double turningRad = PointAt(turns.Outline, reach, Math.Clamp(radius, reach.LeastMm, reach.MostMm)).AngleRad;
        double ahead = direction == Turning.Anticlockwise ? fixedRad - turningRad : turningRad - fixedRad;
        string when = reach.IsWholeRing
            ? "at every angle of the wheel"
            : string.Create(CultureInfo.InvariantCulture, $"wheel at {Angles.DegFromRad(Angles.InTurn(ahead)):0.0}°");
        return string.Create(CultureInfo.InvariantCulture, $"The {turns.Name} runs into strip \"{strip.Form.Strip.Name}\": the strip has metal at radius {own.LeastMm:0.00} to {own.MostMm:0.00} mm and height {solid.FromZMm:0.00} to {solid.ToZMm:0.00} mm, the {turns.Name} turns through radius {reach.LeastMm:0.00} to {reach.MostMm:0.00} mm and height {turns.FromZMm:0.00} to {turns.ToZMm:0.00} mm; they meet at radius {radius:0.00} mm, {when}. Lengthen the arm, raise it, or move the seat outward.");
    }

    // A connected outline has a point at every radius between its least and greatest: bisection along the piece that passes it.
    private static Point PointAt(Outline outline, RadialSpan span, double radiusMm)
    {
        foreach (Piece piece in outline.Outer.Pieces)
        {
            double near = piece.ShareNearest(Point.Origin);
            double far = piece.Start.RadiusMm >= piece.End.RadiusMm ? 0 : 1;
            double low = piece.PointAt(near).RadiusMm;
            double high = piece.PointAt(far).RadiusMm;
            if (low <= radiusMm + 1e-9 && radiusMm <= high + 1e-9)
            {
                for (int step = 0; step < 60; step++)
                {
                    double middle = (near + far) / 2;
                    (near, far) = piece.PointAt(middle).RadiusMm < radiusMm ? (middle, far) : (near, middle);
                }

                return piece.PointAt(far);
            }
        }

        return span.Nearest;
    }

    /// <summary>Least and greatest distance of an outline's points from the axis.</summary>
    private readonly record struct RadialSpan(double LeastMm, double MostMm, Point Nearest, bool IsWholeRing)
    {
        internal static RadialSpan Of(Outline outline)
        {
            double least = double.PositiveInfinity;
            double most = 0;
            Point nearest = Point.Origin;
            bool whole = false;
            foreach (Piece piece in outline.Outer.Pieces)
            {
                Point near = piece.PointAt(piece.ShareNearest(Point.Origin));
                if (near.RadiusMm < least)
                {
                    (least, nearest) = (near.RadiusMm, near);
                }

                most = Math.Max(most, Furthest(piece));
                whole |= piece is Arc arc && arc.Centre.RadiusMm < Tolerances.JoinMm && Math.Abs(arc.SweepRad) >= Angles.TurnRad - 1e-9;
            }

            if (Winds(outline.Outer))
            {
                // The axis lies inside: only a hole round it (a bore) keeps copper away from it.
                Contour? bore = outline.Holes.FirstOrDefault(Winds);
                least = bore is null ? 0 : bore.Pieces.Min(p => p.PointAt(p.ShareNearest(Point.Origin)).RadiusMm);
                whole = true;
            }

            return new(least, most, nearest, whole);
        }

        private static double Furthest(Piece piece)
        {
            double most = Math.Max(piece.Start.RadiusMm, piece.End.RadiusMm);
            if (piece is Arc arc)
            {
                double away = arc.Centre.RadiusMm > 0 ? arc.Centre.AngleRad : arc.StartRad;
                most = arc.Span.Contains(away) ? Math.Max(most, arc.Centre.RadiusMm + arc.RadiusMm) : most;
            }

            return most;
        }

        // Whether the contour goes round the axis: the angles that its pieces subtend there add up to a turn, or to nothing.
        private static bool Winds(Contour contour)
        {
            double turned = 0;
            foreach (Piece piece in contour.Pieces)
            {
                int parts = piece is Arc ? 8 : 1;
                for (int k = 0; k < parts; k++)
                {
                    Vector a = piece.PointAt((double)k / parts) - Point.Origin;
                    Vector b = piece.PointAt((double)(k + 1) / parts) - Point.Origin;
                    turned += Math.Atan2(a.Cross(b), a.Dot(b));
                }
            }

            return Math.Abs(turned) > Math.PI;
        }
    }
}
