using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Stations of all wipers; those left to "auto" spread so that strips of different nets stay apart.</summary>
/// <remarks>Whole degrees: equal spread in file order, then coordinate ascent on the smallest distance between wipers of
/// different nets until nothing improves, ties to the lower angle. A good spread, not an optimum. A wiper is taken as a
/// straight line in the plan from its contact along its approach (outward where the file gives none) to beyond the rim.</remarks>
internal sealed record StationSpread(double FeedRad, IReadOnlyList<double> OutputsRad, IReadOnlyList<string> Spread)
{
    // How far an arm is taken to reach beyond the rim, mm: enough to tell neighbours apart where they leave the wheel.
    private const double BeyondRimMm = 10;

    // Rounds of ascent before giving up on improvement; each round only ever improves, so this is never met in practice.
    private const int MostRounds = 50;

    public static StationSpread Of(Brief brief, PackedWheel packed)
    {
        int count = packed.Rings.Count + 1;
        List<double?> asked = [brief.Feed!.StationRad, .. brief.Outputs.Select(o => o.StationRad)];
        List<string> nets = [brief.Feed.Net, .. brief.Outputs.Select(o => o.Net)];
        List<double> radii = [.. packed.All.Select(r => r.Trial.RadiusMm)];
        List<double> approach = [Approach(brief, s => s.Task is ServesFeed), .. brief.Outputs.Select(o =>
            Approach(brief, s => s.Task is ServesOutput serves && string.Equals(serves.Output, o.Name, StringComparison.OrdinalIgnoreCase)))];
        double[] stations = new double[count];
        int[] free = [.. Enumerable.Range(0, count).Where(i => asked[i] is null)];
        for (int i = 0; i < count; i++)
        {
            stations[i] = asked[i] ?? Angles.RadFromDeg(Math.Round(360.0 * i / count) % 360);
        }

        if (free.Length == 0)
        {
            return new(stations[0], stations[1..], []);
        }

        Piece Arm(int i, double stationRad) =>
            new Segment(Point.Polar(radii[i], stationRad), Point.Polar(radii[i], stationRad)
                + Vector.Polar(packed.OuterRadiusMm - radii[i] + BeyondRimMm, stationRad + approach[i]));

        double Least(int moved, double stationRad)
        {
            Piece arm = Arm(moved, stationRad);
            double least = double.PositiveInfinity;
            for (int i = 0; i < count; i++)
            {
                if (i != moved && !string.Equals(nets[i], nets[moved], StringComparison.OrdinalIgnoreCase))
                {
                    least = Math.Min(least, Distances.Between(arm, Arm(i, stations[i])).DistanceMm);
                }
            }

            return least;
        }

        bool better = true;
        for (int round = 0; round < MostRounds && better; round++)
        {
            better = false;
            foreach (int i in free)
            {
                double best = Least(i, stations[i]);
                for (int deg = 0; deg < 360; deg++)
                {
                    double at = Angles.RadFromDeg(deg);
                    double least = Least(i, at);
                    if (least > best + 1e-9)
                    {
                        (best, stations[i], better) = (least, at, true);
                    }
                }
            }
        }

        List<string> said = [.. free.Select(i =>
            $"Station of {(i == 0 ? "the feed" : $"'{brief.Outputs[i - 1].Name}'")} spread to {Wording.Degrees(stations[i])}: a good spread, not an optimum; write station = \"{Wording.Number(Angles.DegFromRad(stations[i]), 3)} deg\" to keep it.")];
        return new(stations[0], stations[1..], said);
    }

    private static double Approach(Brief brief, Func<StripBrief, bool> serves) =>
        brief.Strips.FirstOrDefault(serves)?.ApproachRad ?? 0;
}
