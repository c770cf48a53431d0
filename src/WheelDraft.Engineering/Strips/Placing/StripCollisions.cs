using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Strips that the wheel would run into, over its whole turn.</summary>
/// <remarks>API: <c>StripCollisions.Of(strips, turning, motion)</c>. Over a turn every two points of a fixed and a turning
/// connected body come into line, so they touch exactly when their ranges of radius and of height both overlap. At worst the wheel runs
/// out in both, and the strip lies off its place by its side play, its travel and its wear; edges are cut as large as they may be.</remarks>
internal static class StripCollisions
{
    /// <summary>Every strip of a design that its wheel, or what turns with it, would run into.</summary>
    internal static IReadOnlyList<Finding> Of(Brief brief, WheelLayout wheel, IReadOnlyList<PlacedStrip> strips, IReadOnlyList<Solid> solids) =>
        Of(strips, [.. solids.Where(s => s.Turns), WheelSolids.Carrier(brief, wheel)], brief.Drive.Direction, i => brief.PlaceOf(FormattableString.Invariant($"strip[{i}]")));

    /// <summary>Whether a spacing finding says again that the wheel runs into a strip, which a collision says with radius and height.</summary>
    internal static bool Repeats(Finding finding, IReadOnlyList<Finding> collisions) =>
        (finding.Code is "spacing.collision" || (finding.Code is "spacing.touch" && finding.Message.Contains(", wheel at ", StringComparison.Ordinal)))
        && finding.Where is TextPlace where && collisions.Any(c => c.Where == where);

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
            RadialInterval reach = Distances.Radii(turns.Outline, Point.Origin);
            foreach (Solid solid in strip.AllSolids.Where(s => !(s.IsNose && RidesOn(turns)) && !s.RidesOn(turns)))
            {
                double apart = turns.Tolerance.InPlanMm + solid.Tolerance.InPlanMm;
                double lift = turns.Tolerance.FaceRunOutMm + solid.Tolerance.FaceRunOutMm;
                bool level = solid.FromZMm <= turns.ToZMm + lift && turns.FromZMm - lift <= solid.ToZMm;
                if (!level)
                {
                    continue;
                }

                RadialInterval own = Distances.Radii(solid.Outline, Point.Origin);
                double from = Math.Max(own.LeastMm, reach.LeastMm - apart);
                double to = Math.Min(own.GreatestMm, reach.GreatestMm + apart);
                if (from <= to)
                {
                    return Message(strip, solid, own, turns, reach, direction);
                }
            }
        }

        return null;
    }

    // A nose rides on the copper, and on a carrier that is flush with it or lower.
    private static bool RidesOn(Solid turns) => turns.IsWheelCopper || turns.ToZMm <= 1e-9;

    private static string Message(PlacedStrip strip, Solid solid, RadialInterval own, Solid turns, RadialInterval reach, Turning direction)
    {
        double radius = Math.Clamp(Math.Max(own.LeastMm, reach.LeastMm), own.LeastMm, own.GreatestMm);
        double fixedRad = PointAt(solid.Outline, own, radius).AngleRad;
        double turningRad = PointAt(turns.Outline, reach, Math.Clamp(radius, reach.LeastMm, reach.GreatestMm)).AngleRad;
        double ahead = direction == Turning.Anticlockwise ? fixedRad - turningRad : turningRad - fixedRad;
        string when = GoesRound(turns.Outline)
            ? "at every angle of the wheel"
            : string.Create(CultureInfo.InvariantCulture, $"wheel at {Angles.DegFromRad(Angles.InTurn(ahead)):0.0}°");
        return string.Create(CultureInfo.InvariantCulture, $"The {turns.Name} runs into strip \"{strip.Form.Strip.Name}\": the strip has metal at radius {own.LeastMm:0.00} to {own.GreatestMm:0.00} mm and height {solid.FromZMm:0.00} to {solid.ToZMm:0.00} mm, the {turns.Name} turns through radius {reach.LeastMm:0.00} to {reach.GreatestMm:0.00} mm and height {turns.FromZMm:0.00} to {turns.ToZMm:0.00} mm; they meet at radius {radius:0.00} mm, {when}. Lengthen the arm, raise it, or move the seat outward.");
    }

    // A body round the axis, whatever its bore, is met at every angle.
    private static bool GoesRound(Outline outline) => Distances.Radii(new Outline(outline.Outer), Point.Origin).LeastMm == 0;

    // A connected outline has a point at every radius between its least and greatest: bisection along the piece that passes it.
    private static Point PointAt(Outline outline, RadialInterval span, double radiusMm)
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

        return span.AtLeast;
    }
}
