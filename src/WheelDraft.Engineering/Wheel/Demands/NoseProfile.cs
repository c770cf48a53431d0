namespace WheelDraft.Engineering;

/// <summary>The section of a nose across its fold, or through its dome: an arc, and tangents to it where legs are known.</summary>
/// <param name="RadiusMm">Radius of the arc.</param>
/// <param name="LoweredMm">How far its lowest line lies below the copper face.</param>
/// <param name="Legs">The legs; null for the arc alone.</param>
internal sealed record NoseProfile(double RadiusMm, double LoweredMm, NoseSection? Legs)
{
    // How closely the greatest reach is found, mm, on the safe side: far below what is cut or measured.
    private const double CertifiedMm = 1e-6;

    /// <summary>In plan from the axis of the nose to where its section has a clearance from an edge of the copper, mm.</summary>
    /// <remarks>The edge is a point at the height of the face. Its distance from a section that is convex is the greatest over all directions n of
    /// n·p less how far the section reaches that way; on the arc that is a circle's, beyond it that of the tangent, a straight line.</remarks>
    public double FromAxisMm(double clearanceMm)
    {
        double reach = clearanceMm + RadiusMm;

        // A nose that rides deeper than its radius faces the copper's edge with its widest part.
        double above = Math.Max(0, RadiusMm - LoweredMm);
        double round = Math.Sqrt((reach * reach) - (above * above));
        if (Legs is null || Math.Acos(Math.Clamp((RadiusMm - LoweredMm) / reach, -1, 1)) <= Legs.SlopeRad)
        {
            return round;
        }

        (double sin, double cos) = Math.SinCos(Legs.SlopeRad);
        return Math.Max(round, (reach - ((RadiusMm - LoweredMm) * cos)) / sin);
    }

    /// <summary>The greatest over the section of what a place of it gains in plan and √(c² − h²), mm, where h is its height over the face.</summary>
    /// <remarks>Branch and bound over the plan offset from the axis; at most 1e-6 mm too much, never too little.</remarks>
    /// <param name="clearanceMm">c, above 0.</param>
    /// <param name="gainMm">What a place gains, by its plan offset and by its distance along a leg from where that begins; grows with both.</param>
    public double MostMm(double clearanceMm, Func<double, double, double> gainMm)
    {
        double Value(double at, double heightOf)
        {
            double height = HeightMm(heightOf);
            return height >= clearanceMm ? 0 : gainMm(at, AlongLegMm(at)) + Math.Sqrt((clearanceMm * clearanceMm) - (height * height));
        }

        double best = Value(0, 0);
        Stack<(double From, double To)> open = new([(0, Math.Min(EndMm, FromAxisMm(clearanceMm)))]);
        while (open.TryPop(out (double From, double To) part))
        {
            double middle = (part.From + part.To) / 2;
            best = Math.Max(best, Value(middle, middle));
            if (Value(part.To, part.From) > best + CertifiedMm && middle > part.From && middle < part.To)
            {
                open.Push((part.From, middle));
                open.Push((middle, part.To));
            }
        }

        return best + CertifiedMm;
    }

    private double TangentMm => Legs is null ? RadiusMm : RadiusMm * Math.Sin(Legs.SlopeRad);

    private double EndMm => Legs is null ? RadiusMm : double.PositiveInfinity;

    private double AlongLegMm(double atMm) => Legs is null || atMm <= TangentMm ? 0 : (atMm - TangentMm) / Math.Cos(Legs.SlopeRad);

    // Of the underside over the copper face; nothing below it.
    private double HeightMm(double atMm)
    {
        double arc = Math.Min(atMm, TangentMm);
        double leg = Legs is null || atMm <= TangentMm ? 0 : (atMm - TangentMm) * Math.Tan(Legs.SlopeRad);
        return Math.Max(0, RadiusMm - Math.Sqrt(Math.Max(0, (RadiusMm * RadiusMm) - (arc * arc))) + leg - LoweredMm);
    }
}
