using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>One wiper, as far as the spread of stations looks at it.</summary>
/// <param name="Words">Whose it is, in words.</param>
/// <param name="Key">The key of its station in the parameter file.</param>
/// <param name="Net">Its net.</param>
/// <param name="RadiusMm">Radius of its ring.</param>
/// <param name="AskedRad">Station asked for; null for auto.</param>
/// <param name="StartRad">Where the spread starts from, a whole degree.</param>
/// <param name="ApproachRad">Direction of its arm from the contact, from the outward radial.</param>
internal sealed record WiperArm(string Words, string Key, string Net, double RadiusMm, double? AskedRad, double StartRad, double ApproachRad)
{
    /// <summary>Place in the list of the other wiper on the same ring; null when there is none.</summary>
    public int? Partner { get; init; }

    /// <summary>How far the two may stand apart at most, rad.</summary>
    public double MostApartRad { get; init; } = Math.PI;

    /// <summary>The direction of an arm: that of the strip which serves; outward where the file gives none.</summary>
    public static double Approach(Brief brief, Func<StripBrief, bool> serves) => brief.Strips.FirstOrDefault(serves)?.ApproachRad ?? 0;

    /// <summary>The start of an equal spread: whole degrees in file order.</summary>
    public static double EqualRad(int index, int count) => Angles.RadFromDeg(Math.Round(360.0 * index / count) % 360);
}

/// <summary>Stations of all wipers; those left to "auto" spread so that strips of different nets stay apart.</summary>
/// <remarks>Whole degrees: equal spread in file order, then coordinate ascent on the smallest distance between wipers of
/// different nets until nothing improves, ties to the lower angle. A good spread, not an optimum. A wiper is taken as a
/// straight line in the plan from its contact along its approach (outward where the file gives none) to beyond the rim.</remarks>
/// <param name="StationsRad">Stations in the order of the wipers.</param>
/// <param name="Spread">One sentence for each station that was found here.</param>
internal sealed record StationSpread(IReadOnlyList<double> StationsRad, IReadOnlyList<string> Spread)
{
    // How far an arm is taken to reach beyond the rim, mm: enough to distinguish neighbours where they leave the wheel.
    private const double BeyondRimMm = 10;

    // Rounds of ascent before giving up on improvement; each round only ever improves, so this is never met in practice.
    private const int MostRounds = 50;

    // Stations of one ring's wipers at least this far apart, rad: the step of the spread itself.
    private const double LeastApartRad = Math.PI / 180;

    // Angles that differ by rounding only, rad.
    private const double SameRad = 1e-9;

    /// <summary>The wipers of a windowed wheel: the feed, then the outputs in file order.</summary>
    public static StationSpread Of(Brief brief, PackedWheel packed)
    {
        int count = packed.Rings.Count + 1;
        WiperArm feed = new("the feed", "station", brief.Feed!.Net, packed.Feed!.Trial.RadiusMm, brief.Feed.StationRad, 0,
            WiperArm.Approach(brief, s => s.Task is ServesFeed));
        IEnumerable<WiperArm> outputs = brief.Outputs.Select((o, i) => new WiperArm(
            $"'{o.Name}'", "station", o.Net, packed.Rings[i].Trial.RadiusMm, o.StationRad, WiperArm.EqualRad(i + 1, count),
            WiperArm.Approach(brief, s => s.Task is ServesOutput serves && string.Equals(serves.Output, o.Name, StringComparison.OrdinalIgnoreCase))));
        return Of([feed, .. outputs], packed.OuterRadiusMm);
    }

    /// <summary>Any wipers.</summary>
    public static StationSpread Of(IReadOnlyList<WiperArm> wipers, double outerRadiusMm)
    {
        double[] stations = [.. wipers.Select(w => w.AskedRad ?? w.StartRad)];
        int[] free = [.. Enumerable.Range(0, wipers.Count).Where(i => wipers[i].AskedRad is null)];
        bool better = free.Length > 0;
        for (int round = 0; round < MostRounds && better; round++)
        {
            better = false;
            foreach (int i in free)
            {
                better |= Improve(wipers, stations, i, outerRadiusMm);
            }
        }

        return new(stations, [.. free.Select(i =>
            $"Station of {wipers[i].Words} spread to {Wording.Degrees(stations[i])}: a good spread, not an optimum; write {wipers[i].Key} = \"{Wording.Number(Angles.DegFromRad(stations[i]), 3)} deg\" to keep it.")]);
    }

    private static bool Improve(IReadOnlyList<WiperArm> wipers, double[] stations, int moved, double outerRadiusMm)
    {
        bool better = false;
        double best = Least(wipers, stations, moved, stations[moved], outerRadiusMm);
        for (int deg = 0; deg < 360; deg++)
        {
            double at = Angles.RadFromDeg(deg);
            if (!IsAllowed(wipers[moved], stations, at))
            {
                continue;
            }

            double least = Least(wipers, stations, moved, at, outerRadiusMm);
            if (least > best + 1e-9)
            {
                (best, stations[moved], better) = (least, at, true);
            }
        }

        return better;
    }

    private static bool IsAllowed(WiperArm wiper, double[] stations, double atRad)
    {
        if (wiper.Partner is not int partner)
        {
            return true;
        }

        double apart = Math.Abs(Angles.Signed(atRad - stations[partner]));
        return apart >= LeastApartRad - SameRad && apart <= Math.Max(wiper.MostApartRad, LeastApartRad) + SameRad;
    }

    /// <summary>The smallest distance from one arm to those of other nets.</summary>
    private static double Least(IReadOnlyList<WiperArm> wipers, double[] stations, int moved, double stationRad, double outerRadiusMm)
    {
        Piece arm = Arm(wipers[moved], stationRad, outerRadiusMm);
        double least = double.PositiveInfinity;
        for (int i = 0; i < wipers.Count; i++)
        {
            if (i != moved && !string.Equals(wipers[i].Net, wipers[moved].Net, StringComparison.OrdinalIgnoreCase))
            {
                least = Math.Min(least, Distances.Between(arm, Arm(wipers[i], stations[i], outerRadiusMm)).DistanceMm);
            }
        }

        return least;
    }

    private static Segment Arm(WiperArm wiper, double stationRad, double outerRadiusMm)
    {
        Point contact = Point.Polar(wiper.RadiusMm, stationRad);
        return new(contact, contact + Vector.Polar(outerRadiusMm - wiper.RadiusMm + BeyondRimMm, stationRad + wiper.ApproachRad));
    }
}
