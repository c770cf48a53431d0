using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Sets the lands of one ring at a radius: band, edges, gaps, tolerance.</summary>
/// <remarks>With Δ the angle from the upstream to the downstream wiper, a land reaches from the make less the downstream patch's
/// reach to the break less the upstream patch's: its angle is on-time + Δ − both reaches, and the gap behind it is
/// off-time − Δ + both reaches. Edges are given in the programme frame of the output's own wiper.</remarks>
internal sealed class LandSetter(RingShop shop, RingDemand ring)
{
    private readonly WiperPair _pair = ring.Land!.Pair;
    private readonly WiperPair _worn = ring.Land!.Pair.Worn;
    private readonly RingJudge _judge = new(shop, ring);

    public RingTrial At(double radiusMm)
    {
        double reach = ReachMm(shop, ring);
        RingTrial trial = new()
        {
            RadiusMm = radiusMm,
            BandFromMm = ring.PathFromMm(radiusMm) - reach,
            BandToMm = ring.PathToMm(radiusMm) + reach,
        };
        if (trial.BandFromMm <= 0)
        {
            return trial with { Fault = new("wheel.radius", () => $"the contacts of '{ring.Name}' reach within {Wording.Mm(reach)} of the axis on a radius of {Wording.Mm(radiusMm)}") };
        }

        if (ring.IsWhole)
        {
            return trial;
        }

        if (OrderFault(radiusMm) is { } fault)
        {
            return trial with { Fault = fault };
        }

        IReadOnlyList<PeriodCut> cuts = [.. ring.Periods.Select(p => Cut(radiusMm, p))];
        trial = trial with { Cuts = cuts };
        return trial with
        {
            Fault = LandFault(trial) ?? GapFault(trial) ?? RejoinFault(trial) ?? _judge.ToleranceFault(trial),
            Miss = GapMiss(trial) ?? WipersMiss(trial),
        };
    }

    /// <summary>How far lands reach beyond the path of the new patch: whatever play and wear there is, the patch stays on the land,
    /// and so is nowhere nearer to the lands of the next ring than its own lands are.</summary>
    public static double ReachMm(RingShop shop, RingDemand ring) => ring.SidePlayMm + (shop.RunOutMm / 2) + shop.Process.ToleranceMm + ring.SidewaysWearMm;

    private PeriodCut Cut(double radiusMm, OnPeriod period)
    {
        ProgrammePatch upstream = new(_pair.Upstream, shop.Motion.Direction);
        ProgrammePatch downstream = new(_pair.Downstream, shop.Motion.Direction);
        CopperEdge make = CopperEdge.Radial(EdgeEnd.Make, downstream, radiusMm, period.StartRad);
        CopperEdge off = CopperEdge.Radial(EdgeEnd.Break, upstream, radiusMm, period.EndRad);

        // Each edge is found in the frame of the wiper that it makes or breaks at; a wheel point passes the upstream station by Δ
        // sooner than the downstream one.
        return new(
            make.Later(_pair.ReturnIsUpstream ? 0 : -_pair.ApartRad),
            off.Later(_pair.ReturnIsUpstream ? _pair.ApartRad : 0),
            make.TouchOf(downstream, radiusMm),
            off.TouchOf(upstream, radiusMm));
    }

    private static double LandRad(PeriodCut cut, double radiusMm) => cut.Break.AngleAt(radiusMm) - cut.Make.AngleAt(radiusMm);

    private static double GapRad(RingTrial trial, int index)
    {
        int next = (index + 1) % trial.Cuts.Count;
        return (next == 0 ? Angles.TurnRad : 0) + trial.Cuts[next].Make.AngleAt(trial.RadiusMm) - trial.Cuts[index].Break.AngleAt(trial.RadiusMm);
    }

    private string Apart => $"its wipers stand {Wording.Degrees(_pair.ApartRad)} apart";

    private static string Within(double apartRad) =>
        apartRad > 0 ? $"bring station and return_station within {Wording.Number(Math.Floor(Angles.DegFromRad(apartRad) * 100) / 100, 2)}° of each other, or " : "";

    /// <summary>The two patches must be apart, and a land must meet and leave them one after the other.</summary>
    private RingObjection? OrderFault(double radiusMm)
    {
        double r = LeastRadiusMm(radiusMm);
        double leads = _worn.ReachRad(false, EdgeEnd.Make, r) - _worn.ReachRad(true, EdgeEnd.Make, r);
        double lags = _worn.ReachRad(true, EdgeEnd.Break, r) - _worn.ReachRad(false, EdgeEnd.Break, r);
        double apart = _pair.ApartRad - PlacingRad(radiusMm);
        if (apart > Math.Max(leads, lags) && (_worn with { ApartRad = apart }).PatchGapMm(r) > 0)
        {
            return null;
        }

        return new("wheel.wipers", () => $"the two contact patches of '{ring.Name}' touch or overlap on a radius of {Wording.Mm(radiusMm)}: {Apart}, and "
            + $"its contacts when worn reach over {Wording.Degrees(Footprint(isUpstream: true, radiusMm))} and {Wording.Degrees(Footprint(isUpstream: false, radiusMm))}; "
            + "move return_station away from station, or take a larger ring");
    }

    /// <summary>The least radius that a wiper may ride on: there its patch takes the greatest angle.</summary>
    private double LeastRadiusMm(double radiusMm) => radiusMm - ring.SidePlayMm - (shop.RunOutMm / 2);

    /// <summary>By how much the two wipers may stand nearer to each other, or further apart, than their stations.</summary>
    private double PlacingRad(double radiusMm) => 2 * ring.PlacingRad(shop.PlacingMm, radiusMm);

    private double Footprint(bool isUpstream, double radiusMm) =>
        _worn.ReachRad(isUpstream, EdgeEnd.Make, radiusMm) + _worn.ReachRad(isUpstream, EdgeEnd.Break, radiusMm);

    private RingObjection? LandFault(RingTrial trial)
    {
        for (int i = 0; i < trial.Cuts.Count; i++)
        {
            double landRad = LandRad(trial.Cuts[i], trial.RadiusMm);
            double least = RingJudge.Chord(trial.BandFromMm, landRad);
            if (least < shop.Process.LeastWebMm)
            {
                OnPeriod period = ring.Periods[i];
                return new("wheel.on-time", () => $"{_judge.Where(period)} is on for {Wording.Seconds(shop.Motion.SecondsFromRad(period.SweepRad))} ({Wording.Degrees(period.SweepRad)}); {Apart}, and the patches take "
                    + $"{Wording.Degrees(period.SweepRad + _pair.ApartRad - landRad)} on a radius of {Wording.Mm(trial.RadiusMm)}: {(least > 0 ? $"{Wording.Mm(least)} of land is" : "no land is")} left where the "
                    + $"process needs {Wording.Mm(shop.Process.LeastWebMm)}; a longer on-time, wipers further apart, a shorter contact_length or a larger ring would do");
            }
        }

        return null;
    }

    /// <summary>A patch never touches two lands, and the cutter must get between them.</summary>
    private RingObjection? GapFault(RingTrial trial)
    {
        double r = LeastRadiusMm(trial.RadiusMm);
        double bridging = Math.Max(Footprint(isUpstream: true, r), Footprint(isUpstream: false, r)) + (2 * shop.Process.ToleranceMm / trial.BandFromMm);
        double slot = ChordRad(trial.BandFromMm, shop.Process.LeastSlotMm);
        string why = bridging >= slot ? "so that no patch touches two lands" : $"for the process's least slot of {Wording.Mm(shop.Process.LeastSlotMm)}";
        return FirstNarrow(trial, Math.Max(bridging, slot), "wheel.off-time", why);
    }

    private RingObjection? GapMiss(RingTrial trial) =>
        FirstNarrow(trial, ChordRad(trial.BandFromMm, ring.Land!.GapMm), "wheel.lands", $"to keep {Wording.Mm(ring.Land.GapMm)} between lands: {ring.Land.Why}");

    private RingObjection? FirstNarrow(RingTrial trial, double neededRad, string code, string why)
    {
        for (int i = 0; i < trial.Cuts.Count; i++)
        {
            double gap = GapRad(trial, i);
            if (gap < neededRad)
            {
                OnPeriod period = ring.Periods[i];
                double off = gap + _pair.ApartRad - (period.SweepRad + _pair.ApartRad - LandRad(trial.Cuts[i], trial.RadiusMm));
                return new(code, () => $"after {_judge.Where(period)} the output is off for {Wording.Seconds(shop.Motion.SecondsFromRad(off))} ({Wording.Degrees(off)}) and {Apart}: on a radius of {Wording.Mm(trial.RadiusMm)} "
                    + $"{(gap > 0 ? $"the gap to the next land is {Wording.Degrees(gap)} ({Wording.Mm(Math.Max(0, RingJudge.Chord(trial.BandFromMm, gap)))})" : $"the lands overlap by {Wording.Degrees(-gap)}")}, "
                    + $"{Wording.Degrees(neededRad)} are needed {why}; {Within(_pair.ApartRad - (neededRad - gap))}ask for a longer off-time or a larger ring");
            }
        }

        return null;
    }

    /// <summary>A land so long that it reaches round to the upstream wiper while the downstream one is still on it would join both again.</summary>
    private RingObjection? RejoinFault(RingTrial trial)
    {
        double r = trial.RadiusMm;
        double least = LeastRadiusMm(r);
        double play = ((2 * shop.Process.ToleranceMm) + shop.RunOutMm) / trial.BandFromMm;
        double needed = _pair.ApartRad + PlacingRad(r) + _worn.ReachRad(false, EdgeEnd.Break, least) + _worn.ReachRad(true, EdgeEnd.Make, least) + play;
        for (int i = 0; i < trial.Cuts.Count; i++)
        {
            double rest = Angles.TurnRad - LandRad(trial.Cuts[i], r);
            if (rest <= needed)
            {
                return new("wheel.off-time", () => $"{Apart}, and the land of {_judge.Where(ring.Periods[i])} leaves only {Wording.Degrees(rest)} of the turn free on a radius of {Wording.Mm(r)}: it would reach the one wiper again "
                    + $"before it has left the other, and close the output in the middle of its off-time; {Wording.Degrees(needed)} are needed; {Within(_pair.ApartRad - ((needed - rest) / 2))}ask for a longer off-time");
            }
        }

        return null;
    }

    private RingObjection? WipersMiss(RingTrial trial)
    {
        double r = trial.RadiusMm;
        double gap = _pair.PatchGapMm(r);
        double needed = ring.Land!.WipersMm;
        if (gap >= needed)
        {
            return null;
        }

        bool Does(double apartRad) => (_pair with { ApartRad = apartRad }).PatchGapMm(r) >= needed;

        // A hundredth of a degree is as fine as a station is worth writing.
        double? apart = Does(Math.PI) ? RootFinding.LeastWhere(Does, _pair.ApartRad, Math.PI, Angles.RadFromDeg(0.01)) : null;
        return new("wheel.wipers", () => $"{Apart} on the ring of '{ring.Name}', so that the patches are {Wording.Mm(gap)} apart on a radius of {Wording.Mm(r)}; {Wording.Mm(needed)} are needed ({ring.Land.Why}, and their play); "
            + (apart is double least ? $"put them at least {Wording.Number(Math.Ceiling(Angles.DegFromRad(least) * 100) / 100, 2)}° apart or take a larger ring" : "take a larger ring"));
    }

    /// <summary>The angle at which two radial edges are so far apart at a radius; half a turn when they never are.</summary>
    private static double ChordRad(double radiusMm, double chordMm) =>
        chordMm >= 2 * radiusMm ? Math.PI : 2 * Math.Asin(chordMm / (2 * radiusMm));
}
