namespace WheelDraft.Geometry;

/// <summary>A corner of a contour: where one piece ends and the next starts in another direction.</summary>
/// <param name="Number">Number of the piece that starts here.</param>
/// <param name="At">The corner point.</param>
/// <param name="Arriving">Direction of travel into it, length 1.</param>
/// <param name="Leaving">Direction of travel out of it, length 1.</param>
/// <param name="TurnRad">How far the travel turns, radians in [−π, π]: positive to the left.</param>
public readonly record struct Corner(int Number, Point At, Vector Arriving, Vector Leaving, double TurnRad)
{
    // Rounding of a tangent point is 1e-12 mm; on a piece of 1 mm that turns by 1e-12. A thousand times that is still smooth.
    private const double SmoothRad = 1e-9;

    // Nearer to straight back than this, rounding decides the sign of the turn, and the curvatures must.
    private const double StraightBackRad = 1e-6;

    /// <summary>Whether the travel turns left: with the material on the left, the material's corner sticks out.</summary>
    public bool IsConvex => TurnRad > SmoothRad;

    /// <summary>Whether the travel turns right: with the material on the left, the void pokes into the material.</summary>
    public bool IsReEntrant => TurnRad < -SmoothRad;

    /// <summary>Whether the two pieces are tangent here, so that there is nothing to round.</summary>
    public bool IsSmooth => Math.Abs(TurnRad) <= SmoothRad;

    internal static Corner Between(Piece before, Piece after, int number)
    {
        Vector arriving = before.TangentAt(1);
        Vector leaving = after.TangentAt(0);
        double turn = Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving));
        double bend = before.CurvaturePerMm + after.CurvaturePerMm;
        if (Math.Abs(turn) > Math.PI - StraightBackRad && bend != 0)
        {
            // A cusp. Where the way out runs to the left of the way in, the void lies between the two.
            turn = bend > 0 ? -Math.Abs(turn) : Math.Abs(turn);
        }

        return new(number, after.Start, arriving, leaving, turn);
    }
}

/// <summary>Which corners of a contour are meant, with the material on the left of the travel.</summary>
/// <remarks>A hole of an <see cref="Outline"/> is travelled clockwise, so all corners of a rectangular window are re-entrant.</remarks>
public enum Corners
{
    /// <summary>Every corner.</summary>
    All,

    /// <summary>Corners of the material that stick out: the travel turns left.</summary>
    Convex,

    /// <summary>Corners of the void that poke into the material: the travel turns right.</summary>
    ReEntrant,
}
