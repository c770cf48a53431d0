using WheelDraft.Engineering;

namespace WheelDraft.Tests.Wheel.Timing;

/// <summary>The greatest and least on-time over the box by trying: directions of the centre in a fan and then by golden section, side
/// play at its ends and, for the least, by thirds between them.</summary>
internal static class BoxSearch
{
    private const int Fan = 48;
    private const double Golden = 0.6180339887498949;

    internal static double Greatest(DrawnRing d, TouchOracle oracle, double moved) => -Lowest(way =>
    {
        double[] sides = [-d.Ring.SidePlayMm, d.Ring.SidePlayMm];
        double off = sides.Max(s => oracle.TouchRad(EdgeEnd.Break, At(d, way, 1, 1) with { BreakSideMm = s, BreakPlacing = -1 }, moved));
        double make = sides.Min(s => oracle.TouchRad(EdgeEnd.Make, At(d, way, 1, 1) with { MakeSideMm = s, MakePlacing = 1 }, moved));
        return -Seconds(d, off - make, -d.Shop.FrequencyShare);
    });

    internal static double Least(DrawnRing d, TouchOracle oracle, double moved) => Lowest(way =>
    {
        double off = OverSide(d, s => oracle.TouchRad(EdgeEnd.Break, At(d, way, -1, 0) with { BreakSideMm = s, BreakPlacing = 1 }, moved));
        double make = -OverSide(d, s => -oracle.TouchRad(EdgeEnd.Make, At(d, way, -1, 0) with { MakeSideMm = s, MakePlacing = -1 }, moved));
        return Seconds(d, off - make, d.Shop.FrequencyShare);
    });

    private static double Seconds(DrawnRing d, double rad, double frequencyShare) =>
        Math.Max(0, rad) / (2 * Math.PI) * d.Shop.Motion.TurnTimeS / (1 + frequencyShare);

    private static Member At(DrawnRing d, double way, double cut, double wear)
    {
        double e = d.Shop.RunOutMm / 2;
        double t = d.Shop.Process.ToleranceMm * cut;
        return new(0, t, t, e * Math.Cos(way), e * Math.Sin(way), 0, 0, wear);
    }

    private static double OverSide(DrawnRing d, Func<double, double> of)
    {
        (double low, double high) = (-d.Ring.SidePlayMm, d.Ring.SidePlayMm);
        double least = Math.Min(of(low), of(high));
        for (int i = 0; i < 60 && high - low > 1e-12; i++)
        {
            (double a, double b) = (low + ((high - low) / 3), high - ((high - low) / 3));
            (double atA, double atB) = (of(a), of(b));
            least = Math.Min(least, Math.Min(atA, atB));
            (low, high) = atA < atB ? (low, b) : (a, high);
        }

        return least;
    }

    private static double Lowest(Func<double, double> of)
    {
        double step = 2 * Math.PI / Fan;
        double best = Enumerable.Range(0, Fan).Select(i => i * step).MinBy(of);
        (double low, double high) = (best - step, best + step);
        double least = of(best);
        for (int i = 0; i < 50; i++)
        {
            (double a, double b) = (high - (Golden * (high - low)), low + (Golden * (high - low)));
            (double atA, double atB) = (of(a), of(b));
            least = Math.Min(least, Math.Min(atA, atB));
            (low, high) = atA < atB ? (low, b) : (a, high);
        }

        return least;
    }
}
