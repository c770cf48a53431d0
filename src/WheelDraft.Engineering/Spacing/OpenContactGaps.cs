using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Measures how far the contacts of a wheel open.</summary>
internal abstract class OpenContactMeter
{
    /// <summary>The meter for a wheel's construction.</summary>
    public static OpenContactMeter Of(Brief brief, Motion motion, WheelLayout wheel) =>
        brief.Wheel.Construction == WheelConstruction.Lands ? new LandContactGaps(brief, motion, wheel) : new OpenContactGaps(brief, motion, wheel);

    /// <summary>How far one output's contact opens; null when it never does.</summary>
    /// <param name="index">Which output.</param>
    /// <param name="requirement">What is asked of its open contact; null for nothing.</param>
    /// <param name="workingV">Working voltage across it.</param>
    /// <param name="parked">Where the wheel may park: programme angles; an arc without sweep is one position.</param>
    public abstract OpenContact? Of(int index, PairRequirement? requirement, double workingV, IReadOnlyList<ParkedPosition> parked);

    /// <summary>The tightest gap over all parked positions; null when the contact is closed in all of them.</summary>
    /// <param name="periods">The off-periods.</param>
    /// <param name="parked">The parked positions.</param>
    /// <param name="leastBetween">The least gap within an off-period, by its index, between two programme angles.</param>
    private protected static ParkedGap? Parked(
        IReadOnlyList<OpenPeriod> periods,
        IReadOnlyList<ParkedPosition> parked,
        Func<int, double, double, (double LeastMm, double WorstMm, double AtRad)> leastBetween)
    {
        ParkedGap? worst = null;
        foreach (ParkedPosition interval in parked)
        {
            ParkedGap? gap = Parked(periods, interval, leastBetween);
            worst = worst is null || (gap is not null && gap.WorstMm < worst.WorstMm) ? gap ?? worst : worst;
        }

        return worst;
    }

    private static ParkedGap? Parked(
        IReadOnlyList<OpenPeriod> periods,
        ParkedPosition interval,
        Func<int, double, double, (double LeastMm, double WorstMm, double AtRad)> leastBetween)
    {
        double sweep = interval.ToRad - interval.FromRad;
        for (int i = 0; i < periods.Count; i++)
        {
            double ahead = Angles.InTurn(interval.FromRad - periods[i].BreakRad);
            double open = periods[i].MakeRad - periods[i].BreakRad;
            bool begins = ahead < open;
            if (begins && ahead + sweep <= open)
            {
                double from = periods[i].BreakRad + ahead;
                (double least, double lower, double at) = leastBetween(i, from, from + sweep);
                return new(interval.FromRad, interval.FromRad + sweep, least, lower, at);
            }

            bool makesWithin = begins && ahead + sweep > open;
            bool breaksWithin = Angles.InTurn(periods[i].BreakRad - interval.FromRad) < sweep;
            if (makesWithin || breaksWithin)
            {
                return new(interval.FromRad, interval.FromRad + sweep, 0, 0, makesWithin ? periods[i].MakeRad : periods[i].BreakRad);
            }
        }

        return null; // closed all the time while parked
    }
}

/// <summary>Measures how far the contacts of a windowed wheel open.</summary>
internal sealed class OpenContactGaps(Brief brief, Motion motion, WheelLayout wheel) : OpenContactMeter
{
    private readonly double _offCentre = brief.Wheel.RunOutMm / 2;
    private readonly double _cutter = brief.Process.ToleranceMm;

    public override OpenContact? Of(int index, PairRequirement? requirement, double workingV, IReadOnlyList<ParkedPosition> parked)
    {
        RingLayout ring = wheel.Rings[index];
        if (ring.IsWhole)
        {
            return null;
        }

        OpenContactRule rule = OpenContactRule.Of(requirement);
        double sideways = SidewaysGap(ring);
        double along = rule.AlongMm(ring.Patch);
        List<OpenPeriod> periods = [.. Enumerable.Range(0, ring.Periods.Count).Select(i => Period(ring, i, sideways, rule.IsNone ? null : along))];
        ParkedGap? park = Parked(periods, parked, (i, from, to) => LeastBetween(ring, i, sideways, (from, to)));
        OpenPeriod tightest = periods.MinBy(p => p.WorstGreatestMm)!;
        bool parkDecides = park is not null && park.WorstMm < tightest.WorstGreatestMm;
        return new OpenContact
        {
            Output = ring.Name,
            WiperNet = ring.Net,
            WheelNet = ring.WheelNet,
            Requirement = requirement,
            WorkingV = workingV,
            RequiredMm = rule.IsNone ? null : along,
            SidewaysMm = sideways,
            WorstSidewaysMm = WorstSideways(ring, sideways),
            OpeningMmPerS = ring.RadiusMm * motion.SpeedRadPerS,
            Periods = periods,
            Parked = park,
            NominalMm = parkDecides ? park!.LeastMm : tightest.GreatestMm,
            WorstMm = parkDecides ? park!.WorstMm : tightest.WorstGreatestMm,
            AtRad = Angles.InTurn(parkDecides ? park!.AtRad : tightest.GreatestAtRad),
        };
    }

    private static double SidewaysGap(RingLayout ring)
    {
        double inward = ring.PathFromMm - ring.WindowFromMm!.Value;
        // A window open to the outside has no copper beyond the patch.
        double outward = ring.WindowToMm!.Value - ring.PathToMm;
        return ring.SideGapMm is double gap && outward + 1e-9 < gap ? inward : Math.Min(inward, outward);
    }

    private OpenPeriod Period(RingLayout ring, int index, double sidewaysMm, double? requiredMm)
    {
        int next = (index + 1) % ring.Periods.Count;
        double from = ring.Periods[index].Wanted.EndRad;
        double to = ring.Periods[next].Wanted.StartRad + (next <= index ? Angles.TurnRad : 0);
        while (to <= from)
        {
            to += Angles.TurnRad;
        }

        List<EdgeGap> travel = [.. Travel(ring).Select(r => new EdgeGap(motion, ring, r, ring.Periods[index].Break, ring.Periods[next].Make))];
        (double alongMost, double at) = (double.PositiveInfinity, from);
        foreach (EdgeGap gap in travel)
        {
            double top = gap.Top(from, to);
            if (gap.Least(top) < alongMost)
            {
                (alongMost, at) = (gap.Least(top), top);
            }
        }

        double greatest = Math.Min(alongMost, sidewaysMm);

        double? reached = requiredMm is double required && greatest >= required
            ? travel.Max(gap => gap.Reaches(required, from, gap.Top(from, to))) - from
            : null;
        return new(from, to, greatest, Worst(ring, alongMost, sidewaysMm), at, reached);
    }

    /// <summary>The ring radius at both ends of travel and in the middle: the contact path there bounds the rest.</summary>
    private static IEnumerable<double> Travel(RingLayout ring) => ring.TravelMm == 0
        ? [ring.RadiusMm]
        : [ring.RadiusMm - (ring.TravelMm / 2), ring.RadiusMm, ring.RadiusMm + (ring.TravelMm / 2)];

    /// <summary>The lesser of the gaps along the motion and sideways, each less its own tolerances and wear.</summary>
    private double Worst(RingLayout ring, double alongMm, double sidewaysMm) =>
        Math.Max(0, Math.Min(alongMm - _offCentre - _cutter - ring.Patch.WearMm, WorstSideways(ring, sidewaysMm)));

    private double WorstSideways(RingLayout ring, double sidewaysMm) =>
        sidewaysMm - _offCentre - _cutter - ring.SidePlayMm - ring.Patch.SidewaysWearMm;

    private (double LeastMm, double WorstMm, double AtRad) LeastBetween(RingLayout ring, int index, double sidewaysMm, (double FromRad, double ToRad) span)
    {
        int next = (index + 1) % ring.Periods.Count;
        (double least, double at) = (double.PositiveInfinity, span.FromRad);
        foreach (double radius in Travel(ring))
        {
            EdgeGap gap = new(motion, ring, radius, ring.Periods[index].Break, ring.Periods[next].Make);
            foreach (double there in new[] { span.FromRad, span.ToRad })
            {
                if (gap.Least(there) < least)
                {
                    (least, at) = (gap.Least(there), there);
                }
            }
        }

        return (Math.Min(least, sidewaysMm), Worst(ring, least, sidewaysMm), at);
    }
}

/// <summary>The gap along the motion between a patch and the two edges of the window that it is in.</summary>
internal sealed class EdgeGap
{
    private readonly Contour _patch;
    private readonly Segment _break;
    private readonly Segment _make;

    public EdgeGap(Motion motion, RingLayout ring, double radiusMm, CopperEdge off, CopperEdge make)
    {
        Placement toProgramme = motion.Sigma < 0 ? Placement.Identity : Placement.MirrorInX;
        _patch = ring.Patch.Shape.Placed(toProgramme).Placed(Placement.Translation(new(radiusMm, 0)));
        _break = Line(off, ring);
        _make = Line(make, ring);
    }

    /// <summary>The lesser gap to the two edges at a programme angle, mm.</summary>
    public double Least(double atRad) => Math.Min(To(_break, atRad), To(_make, atRad));

    /// <summary>The programme angle at which both gaps are equal: the greatest gap of the off-period.</summary>
    /// <remarks>The gap to the break edge grows and that to the make edge shrinks while both lie within half a turn; past half
    /// a turn both are far beyond any sideways gap.</remarks>
    public double Top(double fromRad, double toRad) =>
        RootFinding.Within(at => To(_break, at) - To(_make, at), fromRad, toRad) ?? ((fromRad + toRad) / 2);

    /// <summary>The programme angle at which the gap to the break edge reaches a length, between the break and the top.</summary>
    public double Reaches(double gapMm, double fromRad, double topRad) =>
        RootFinding.Within(at => To(_break, at) - gapMm, fromRad, topRad) ?? topRad;

    private static Segment Line(CopperEdge edge, RingLayout ring)
    {
        (double from, double to) = (ring.WindowFromMm!.Value, ring.WindowToMm!.Value);
        return new(Point.Polar(from, edge.AngleAt(from)), Point.Polar(to, edge.AngleAt(to)));
    }

    private double To(Segment edge, double atRad)
    {
        Piece inPatchFrame = edge.Placed(Placement.Turn(-atRad));
        return _patch.Pieces.Min(p => Distances.Between(p, inPatchFrame).DistanceMm);
    }
}
