namespace WheelDraft.Geometry;

/// <summary>Angles in radians and degrees, and their remainders in one turn.</summary>
public static class Angles
{
    /// <summary>One turn, radians.</summary>
    public const double TurnRad = 2 * Math.PI;

    /// <summary>Degrees to radians.</summary>
    public static double RadFromDeg(double angleDeg) => angleDeg * (Math.PI / 180);

    /// <summary>Radians to degrees.</summary>
    public static double DegFromRad(double angleRad) => angleRad * (180 / Math.PI);

    /// <summary>The same direction in [0, 2π).</summary>
    /// <remarks>Never 2π: an angle a hair below zero, which plain arithmetic would round up to a whole turn, gives 0.</remarks>
    public static double InTurn(double angleRad)
    {
        double rest = Math.IEEERemainder(angleRad, TurnRad);
        if (rest < 0)
        {
            rest += TurnRad;
        }

        return rest >= TurnRad ? 0 : rest + 0.0;
    }

    /// <summary>The same direction in (−π, π].</summary>
    public static double Signed(double angleRad)
    {
        double rest = Math.IEEERemainder(angleRad, TurnRad);
        return rest <= -Math.PI ? rest + TurnRad : rest;
    }
}
