using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The pieces of an outline as the axis sees them: radii and directions.</summary>
internal sealed class TurningPieces
{
    private TurningPieces(Outline outline, PolarPiece[] pieces)
    {
        Outline = outline;
        Pieces = pieces;
        Radii = Distances.Radii(outline, Point.Origin);
    }

    internal Outline Outline { get; }

    internal IReadOnlyList<PolarPiece> Pieces { get; }

    /// <summary>The radii that the shape occupies.</summary>
    internal RadialInterval Radii { get; }

    internal static TurningPieces Of(Outline outline) => new(outline, [.. outline.Pieces.Select(PolarPiece.Of)]);
}

/// <summary>A piece with the radii and directions that it covers, both taken generously.</summary>
internal readonly record struct PolarPiece(Piece Piece, double LeastMm, double GreatestMm, double FromRad, double SweepRad)
{
    /// <summary>An arc whose centre lies no further off the axis than this is about the axis, mm; the offset is then given up.</summary>
    /// <remarks>A fifth of what a certified minimum may be off. Smaller, and arcs that a drawing rounded to micrometres are halved without end.</remarks>
    private const double AboutAxisMm = 1e-4;

    /// <summary>Whether it is an arc about the axis.</summary>
    internal bool IsConcentric => Piece is Arc arc && arc.Centre.RadiusMm <= AboutAxisMm;

    /// <summary>How far the centre of an arc about the axis lies off it, mm.</summary>
    internal double OffAxisMm => Piece is Arc arc ? arc.Centre.RadiusMm : 0;

    internal static PolarPiece Of(Piece piece)
    {
        RadialInterval radii = Distances.Radii(piece, Point.Origin);
        (double from, double sweep) = Directions(piece, radii.LeastMm);
        return new(piece, radii.LeastMm, radii.GreatestMm, from, sweep);
    }

    /// <summary>The piece with the wheel turned.</summary>
    internal Piece Turned(double byRad) => Piece.Placed(Placement.Turn(byRad));

    /// <summary>All places of a concentric arc while the wheel turns from one angle to another: an arc again.</summary>
    internal Arc Swept(double fromRad, double toRad)
    {
        var arc = (Arc)Piece;
        double start = Math.Min(arc.StartRad, arc.EndRad) + fromRad;
        return new Arc(Point.Origin, arc.RadiusMm, start, Math.Min(Angles.TurnRad, Math.Abs(arc.SweepRad) + toRad - fromRad));
    }

    /// <summary>A distance that no two points of the two pieces undercut while the second is turned within a range.</summary>
    internal double LeastWithin(PolarPiece turning, double fromRad, double toRad)
    {
        double radial = Math.Max(0, Math.Max(turning.LeastMm - GreatestMm, LeastMm - turning.GreatestMm));
        double apart = GapBetween(turning.FromRad + fromRad, turning.SweepRad + toRad - fromRad);

        // A point at radius r is at least r sin γ from a ray at an angle γ below a right angle, and r from one beyond.
        double across = Math.Max(LeastMm, turning.LeastMm) * (apart >= Math.PI / 2 ? 1 : Math.Sin(apart));
        return Math.Max(radial, across);
    }

    private double GapBetween(double otherFromRad, double otherSweepRad)
    {
        double ahead = Angles.InTurn(otherFromRad - FromRad);
        double after = ahead - SweepRad;
        double before = Angles.TurnRad - ahead - otherSweepRad;
        return after <= 0 || before <= 0 ? 0 : Math.Min(after, before);
    }

    private static (double FromRad, double SweepRad) Directions(Piece piece, double leastMm)
    {
        if (piece is Arc round && round.Centre.RadiusMm <= Tolerances.TouchMm)
        {
            return (Math.Min(round.StartRad, round.EndRad), Math.Abs(round.SweepRad));
        }

        // A circle about the middle of the piece holds it; seen from the axis it covers twice an arc sine.
        Bounds bounds = piece.Bounds;
        Point centre = bounds.Centre;
        double reach = Math.Sqrt((bounds.Width * bounds.Width) + (bounds.Height * bounds.Height)) / 2;
        if (leastMm == 0 || reach >= centre.RadiusMm)
        {
            return (0, Angles.TurnRad);
        }

        double half = Math.Asin(reach / centre.RadiusMm) + 1e-12;
        return (centre.AngleRad - half, 2 * half);
    }
}
