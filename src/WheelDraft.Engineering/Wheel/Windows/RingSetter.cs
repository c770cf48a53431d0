using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Sets one ring at a radius: band, edges, tolerance, least copper and least opening.</summary>
internal sealed class RingSetter(RingShop shop, RingDemand ring)
{
    // An adjusting edge inclined more than this to the radius is refused: beyond it the cutter's tolerance counts more than
    // three times, and the acute corner of copper becomes a point that bends.
    private const double MostInclinationRad = 70 * Math.PI / 180;

    private readonly ProgrammePatch _patch = new(ring.Patch, shop.Motion.Direction);
    private readonly RingJudge _judge = new(shop, ring);

    public RingTrial At(double radiusMm)
    {
        double reach = ring.IsWhole ? ring.SidePlayMm + (shop.RunOutMm / 2) : ring.SideGapMm;
        RingTrial trial = new()
        {
            RadiusMm = radiusMm,
            BandFromMm = ring.PathFromMm(radiusMm) - reach,
            BandToMm = ring.IsWhole ? ring.PathToMm(radiusMm) + reach : Math.Max(ring.PathToMm(radiusMm) + reach, ring.WornPathToMm(radiusMm) + ring.WornSideGapMm + ring.CurvedMoreMm(radiusMm)),
        };
        if (trial.BandFromMm <= 0)
        {
            return trial with { Fault = new("wheel.radius", () => $"its contact reaches within {Wording.Mm(reach)} of the axis on a radius of {Wording.Mm(radiusMm)}") };
        }

        if (ring.IsWhole)
        {
            return trial;
        }

        List<PeriodCut> cuts = [];
        foreach (OnPeriod period in ring.Periods)
        {
            PeriodCut? cut = Cut(trial, period, out RingObjection? fault);
            if (cut is null)
            {
                return trial with { Fault = fault };
            }

            cuts.Add(cut);
        }

        trial = trial with { Cuts = cuts };
        return trial with { Fault = CopperFault(trial) ?? OpeningFault(trial) ?? _judge.ToleranceFault(trial) };
    }

    private PeriodCut? Cut(RingTrial trial, OnPeriod period, out RingObjection? fault)
    {
        fault = null;
        double r = trial.RadiusMm;
        CopperEdge make = CopperEdge.Radial(EdgeEnd.Make, _patch, r, period.StartRad);
        CopperEdge off = CopperEdge.Radial(EdgeEnd.Break, _patch, r, period.EndRad);
        if (ring.Adjust is AdjustBrief adjust)
        {
            CopperEdge? sloped = SlopedFor(trial, period, adjust, make, off);
            if (sloped is null)
            {
                fault = new(SlopeWays.Code, () => $"a range of {Wording.Seconds(adjust.RangeS)} over {Wording.Mm(adjust.TravelMm)} of travel needs an edge inclined more than "
                    + $"{Wording.Degrees(MostInclinationRad)} to the radius on a radius of {Wording.Mm(r)}, and a larger ring a steeper one; ask for less range or more travel");
                return null;
            }

            (make, off) = adjust.Edge == AdjustedEdge.On ? (sloped, off) : (make, sloped);
        }

        return new(make, off, make.TouchOf(_patch, r), off.TouchOf(_patch, r));
    }

    /// <summary>The slope at which the on-time changes by the range over the travel, both edges counted.</summary>
    private CopperEdge? SlopedFor(RingTrial trial, OnPeriod period, AdjustBrief adjust, CopperEdge make, CopperEdge off)
    {
        double r = trial.RadiusMm;
        double wanted = shop.Motion.RadFromSeconds(adjust.RangeS) * (adjust.Longer == LongerWay.In ? 1 : -1);
        EdgeEnd end = adjust.Edge == AdjustedEdge.On ? EdgeEnd.Make : EdgeEnd.Break;
        double at = end == EdgeEnd.Make ? period.StartRad : period.EndRad;

        CopperEdge Edge(double normalRad) => CopperEdge.Sloped(end, _patch, r, at, normalRad);

        double Excess(double normalRad)
        {
            CopperEdge sloped = Edge(normalRad);
            (CopperEdge first, CopperEdge last) = end == EdgeEnd.Make ? (sloped, off) : (make, sloped);
            return OnRad(first, last, ring.InnerEndMm(r)) - OnRad(first, last, ring.OuterEndMm(r)) - wanted;
        }

        bool Reaches(double normalRad) =>
            Math.Abs(Edge(normalRad).OffsetMm) < trial.BandFromMm
            && Math.Abs(Edge(normalRad).OffsetMm) < ring.PathFromMm(r);

        // A larger angle of the normal leans the edge back along the radius: the on-time grows outward. Both ends of the
        // bracket are drawn in until the line reaches the whole window.
        double low = (Math.PI / 2) - MostInclinationRad;
        double high = (Math.PI / 2) + MostInclinationRad;
        for (int i = 0; i < 60 && !Reaches(low); i++)
        {
            low += ((Math.PI / 2) - low) / 8;
        }

        for (int i = 0; i < 60 && !Reaches(high); i++)
        {
            high -= (high - (Math.PI / 2)) / 8;
        }

        return RootFinding.Within(Excess, low, high) is double found ? Edge(found) : null;
    }

    private double OnRad(CopperEdge make, CopperEdge off, double radiusMm) =>
        off.TouchOf(_patch, radiusMm).AtRad - make.TouchOf(_patch, radiusMm).AtRad;

    private RingObjection? CopperFault(RingTrial trial)
    {
        for (int i = 0; i < trial.Cuts.Count; i++)
        {
            PeriodCut cut = trial.Cuts[i];
            double least = Math.Min(
                RingJudge.Chord(trial.BandFromMm, cut.Break.AngleAt(trial.BandFromMm) - cut.Make.AngleAt(trial.BandFromMm)),
                RingJudge.Chord(trial.BandToMm, cut.Break.AngleAt(trial.BandToMm) - cut.Make.AngleAt(trial.BandToMm)));
            if (least < shop.Process.LeastWebMm)
            {
                OnPeriod period = ring.Periods[i];
                double patchRad = period.SweepRad - (cut.Break.AngleAt(trial.RadiusMm) - cut.Make.AngleAt(trial.RadiusMm));
                return new("wheel.on-time", () => $"{_judge.Where(period)} is on for {Wording.Seconds(shop.Motion.SecondsFromRad(period.SweepRad))}, of which the contact patch alone takes "
                    + $"{Wording.Seconds(shop.Motion.SecondsFromRad(patchRad))} on a radius of {Wording.Mm(trial.RadiusMm)}: {(least > 0 ? $"{Wording.Mm(least)} of copper is" : "no copper is")} left where the "
                    + $"process needs {Wording.Mm(shop.Process.LeastWebMm)}; a longer on-time, a shorter contact_length or a larger ring would do");
            }
        }

        return null;
    }

    private RingObjection? OpeningFault(RingTrial trial)
    {
        // A window's corners carry the inside radius, so it is at least two radii wide, as well as the process's least slot.
        double needed = Math.Max(shop.Process.LeastSlotMm, 2 * shop.Process.InsideRadiusMm);
        for (int i = 0; i < trial.Cuts.Count; i++)
        {
            int next = (i + 1) % trial.Cuts.Count;
            double turn = next == 0 ? Angles.TurnRad : 0;
            double least = Math.Min(
                RingJudge.Chord(trial.BandFromMm, turn + trial.Cuts[next].Make.AngleAt(trial.BandFromMm) - trial.Cuts[i].Break.AngleAt(trial.BandFromMm)),
                RingJudge.Chord(trial.BandToMm, turn + trial.Cuts[next].Make.AngleAt(trial.BandToMm) - trial.Cuts[i].Break.AngleAt(trial.BandToMm)));
            if (least < needed)
            {
                double offRad = turn + ring.Periods[next].StartRad - ring.Periods[i].EndRad;
                return new("wheel.off-time", () => $"after {_judge.Where(ring.Periods[i])} the output is off for {Wording.Seconds(shop.Motion.SecondsFromRad(offRad))}: the window would be "
                    + $"{Wording.Mm(Math.Max(0, least))} wide on a radius of {Wording.Mm(trial.RadiusMm)} where the process needs {Wording.Mm(needed)}; a longer off-time or a larger ring would do");
            }
        }

        return null;
    }
}
