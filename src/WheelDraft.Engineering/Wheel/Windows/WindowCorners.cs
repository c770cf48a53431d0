using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The windows of a ring as contours, their corners rounded by the process's inside radius.</summary>
internal static class WindowCorners
{
    // Rounded corners keep this much from every place that the worn contact may reach in its play, mm: otherwise a worst-case on-time that counts
    // straight edges would be no bound.
    private const double ClearOfPathMm = 0.05;

    /// <summary>By how much a ring's windows must reach further so that rounded corners stay clear of the patch path; 0 when they do, mm.</summary>
    /// <remarks>A fillet of radius f between the line n·p = d and the circle of radius R touches the line at radius
    /// √((R ± f)² − (d + f)² + d²), plus at the inner circle, minus at the outer one.</remarks>
    public static double Intrusion(RingShop shop, RingDemand ring, RingTrial trial)
    {
        double f = shop.Process.InsideRadiusMm;
        double clear = ClearOfPathMm + ring.SidePlayMm + (shop.RunOutMm / 2) + shop.Process.ToleranceMm;
        double most = 0;
        foreach (CopperEdge edge in trial.Cuts.SelectMany(c => new[] { c.Make, c.Break }).Where(e => e.IsSloped))
        {
            double inner = TangentRadius(trial.BandFromMm + f, edge.OffsetMm, f) - (ring.WornPathFromMm(trial.RadiusMm) - clear);
            double outer = ring.WornPathToMm(trial.RadiusMm) + clear - TangentRadius(trial.BandToMm - f, edge.OffsetMm, f);
            most = Math.Max(most, Math.Max(inner, outer));
        }

        return most;
    }

    private static double TangentRadius(double centreMm, double offsetMm, double filletMm) =>
        Math.Sqrt(Math.Max(0, (centreMm * centreMm) - ((offsetMm + filletMm) * (offsetMm + filletMm)) + (offsetMm * offsetMm)));

    /// <summary>The window from one break to the next make, in the programme frame, anticlockwise, corners rounded.</summary>
    public static Contour Window(RingTrial trial, CopperEdge off, CopperEdge make, double turnsRad, double insideRadiusMm)
    {
        (double from, double to) = (trial.BandFromMm, trial.BandToMm);
        Point offInner = Point.Polar(from, off.AngleAt(from));
        Point offOuter = Point.Polar(to, off.AngleAt(to));
        Point makeOuter = Point.Polar(to, make.AngleAt(to) + turnsRad);
        Point makeInner = Point.Polar(from, make.AngleAt(from) + turnsRad);
        Contour sharp = new(
        [
            new Segment(offInner, offOuter),
            Arc.About(Point.Origin, offOuter, makeOuter, Turning.Anticlockwise),
            new Segment(makeOuter, makeInner),
            Arc.About(Point.Origin, makeInner, offInner, Turning.Clockwise),
        ]);
        return sharp.Filleted(insideRadiusMm, Corners.All);
    }
}
