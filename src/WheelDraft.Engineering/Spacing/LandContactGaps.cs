using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Measures how far the contacts of a lands wheel open.</summary>
/// <remarks>While an output is open its two nets reach as far as its two patches and the lands that they touch. The off-period
/// is cut where the downstream wiper leaves the last land and where the upstream one reaches the next; within each stretch some
/// gaps grow, some shrink and some stand still, so that the least of them has one top, and its least value at an end.</remarks>
internal sealed class LandContactGaps(Brief brief, Motion motion, WheelLayout wheel) : OpenContactMeter
{
    public override OpenContact? Of(int index, PairRequirement? requirement, double workingV, IReadOnlyList<ParkedPosition> parked)
    {
        RingLayout ring = wheel.Rings[index];
        if (ring.IsWhole)
        {
            return null;
        }

        OpenContactRule rule = OpenContactRule.Of(requirement);
        double along = Math.Max(rule.AlongMm(ring.Patch), rule.AlongMm(ring.Return!.Patch));
        LandPlay play = new(brief.Wheel.RunOutMm / 2, brief.Process.ToleranceMm, ring.SidePlayMm);
        IReadOnlyList<LandGap> gaps = [.. Enumerable.Range(0, ring.Periods.Count).Select(i => new LandGap(motion, ring, i, play))];
        IReadOnlyList<OpenPeriod> periods = [.. gaps.Select(g => g.Period(rule.IsNone ? null : along))];
        ParkedGap? park = Parked(periods, parked, (i, from, to) => gaps[i].LeastBetween(from, to));
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
            SidewaysMm = ring.Return.PatchGapMm,
            WorstSidewaysMm = gaps[0].WorstPatchGapMm,
            OpeningMmPerS = ring.RadiusMm * motion.SpeedRadPerS,
            Periods = periods,
            Parked = park,
            NominalMm = parkDecides ? park!.LeastMm : tightest.GreatestMm,
            WorstMm = parkDecides ? park!.WorstMm : tightest.WorstGreatestMm,
            AtRad = Angles.InTurn(parkDecides ? park!.AtRad : tightest.GreatestAtRad),
        };
    }
}

/// <summary>What makes a gap smaller than drawn, mm.</summary>
/// <param name="OffCentreMm">Half the run-out.</param>
/// <param name="CutterMm">Tolerance of a cut edge.</param>
/// <param name="SidePlayMm">Radial play of a wiper.</param>
internal sealed record LandPlay(double OffCentreMm, double CutterMm, double SidePlayMm);

/// <summary>The gap between the two sides of one output in one off-period.</summary>
internal sealed class LandGap
{
    private readonly LandPlay _play;
    private readonly LandWiper _upstream;
    private readonly LandWiper _downstream;
    private readonly double _breakRad;
    private readonly double _makeRad;
    private readonly double _leavesRad;
    private readonly double _reachesRad;
    private readonly double _patchGapMm;
    private readonly double _landGapMm;

    /// <param name="motion">The turning.</param>
    /// <param name="ring">The ring.</param>
    /// <param name="index">The on-period that the off-period follows.</param>
    /// <param name="play">Tolerances.</param>
    public LandGap(Motion motion, RingLayout ring, int index, LandPlay play)
    {
        _play = play;
        int next = (index + 1) % ring.Periods.Count;
        ReturnWiper other = ring.Return!;
        double toReturn = other.IsUpstream ? -other.ApartRad : other.ApartRad;
        LandWiper own = new(motion, ring, ring.Patch, 0);
        LandWiper second = new(motion, ring, other.Patch, toReturn);
        (_upstream, _downstream) = other.IsUpstream ? (second, own) : (own, second);
        _upstream.Over(ring.Periods[index], ring.Periods[next]);
        _downstream.Over(ring.Periods[index], ring.Periods[next]);
        _breakRad = ring.Periods[index].Wanted.EndRad;
        _makeRad = ring.Periods[next].Wanted.StartRad + (next <= index ? Angles.TurnRad : 0);
        while (_makeRad <= _breakRad)
        {
            _makeRad += Angles.TurnRad;
        }

        // The break is when the upstream wiper leaves a land, the make when the downstream one reaches the next.
        _leavesRad = _breakRad + other.ApartRad - _upstream.ReachRad(EdgeEnd.Break) + _downstream.ReachRad(EdgeEnd.Break);
        _reachesRad = _makeRad - other.ApartRad + _downstream.ReachRad(EdgeEnd.Make) - _upstream.ReachRad(EdgeEnd.Make);
        _patchGapMm = other.PatchGapMm;
        _landGapMm = index == next ? double.PositiveInfinity : Distances.Between(ring.Lands[index].Outline, ring.Lands[next].Outline).DistanceMm;
    }

    private double Worn => Math.Max(_upstream.WornMm, _downstream.WornMm);

    /// <summary>The gap between the two patches at the worst tolerance.</summary>
    public double WorstPatchGapMm => Math.Max(0, _patchGapMm - (2 * _play.SidePlayMm) - _upstream.WornMm - _downstream.WornMm);

    /// <summary>The off-period with the greatest gap reached in it.</summary>
    public OpenPeriod Period(double? requiredMm)
    {
        (double greatest, double worst, double at) = (double.NegativeInfinity, 0, _breakRad);
        double? reached = null;
        foreach ((double from, double to) in Stretches())
        {
            double top = Top(from, to);
            (double nominal, double least) = At(top, from, to);
            if (nominal > greatest)
            {
                (greatest, worst, at) = (nominal, least, top);
            }

            if (requiredMm is double required && nominal >= required)
            {
                reached ??= At(from, from, to).NominalMm >= required
                    ? from
                    : RootFinding.Within(a => At(a, from, to).NominalMm - required, from, top) ?? top;
            }
        }

        return new(_breakRad, _makeRad, greatest, worst, at, reached - _breakRad);
    }

    /// <summary>The least gap over part of the off-period.</summary>
    public (double LeastMm, double WorstMm, double AtRad) LeastBetween(double fromRad, double toRad)
    {
        (double least, double worst, double at) = (double.PositiveInfinity, double.PositiveInfinity, fromRad);
        foreach ((double from, double to) in Stretches().Where(s => s.From <= toRad && s.To >= fromRad))
        {
            foreach (double end in new[] { Math.Max(from, fromRad), Math.Min(to, toRad) })
            {
                (double nominal, double lower) = At(end, from, to);
                if (nominal < least)
                {
                    (least, at) = (nominal, end);
                }

                worst = Math.Min(worst, lower);
            }
        }

        return (least, worst, at);
    }

    private IEnumerable<(double From, double To)> Stretches()
    {
        double[] cuts = [_breakRad, Math.Min(_leavesRad, _reachesRad), Math.Max(_leavesRad, _reachesRad), _makeRad];
        return cuts.Zip(cuts.Skip(1)).Where(s => s.Second > s.First);
    }

    private (bool DownstreamOnLast, bool UpstreamOnNext) On(double fromRad, double toRad) => (toRad <= _leavesRad, fromRad >= _reachesRad);

    private double Grows(double atRad, double fromRad, double toRad)
    {
        (bool last, bool next) = On(fromRad, toRad);
        return Math.Min(last ? _upstream.ToEnd(atRad) : double.PositiveInfinity, next ? _downstream.ToNextEnd(atRad) : double.PositiveInfinity);
    }

    private double Shrinks(double atRad, double fromRad, double toRad)
    {
        (bool last, bool next) = On(fromRad, toRad);
        return Math.Min(last ? _upstream.ToBeginning(atRad) : double.PositiveInfinity, next ? _downstream.ToNextBeginning(atRad) : double.PositiveInfinity);
    }

    private double Top(double fromRad, double toRad)
    {
        // With both wipers on bare carrier the gap stands still; in the middle it is told apart from the ends, where a wiper still
        // touches a land.
        if (On(fromRad, toRad) is (false, false))
        {
            return (fromRad + toRad) / 2;
        }

        double Excess(double at) => Grows(at, fromRad, toRad) - Shrinks(at, fromRad, toRad);
        return RootFinding.Within(Excess, fromRad, toRad) ?? (Excess(toRad) < 0 ? toRad : fromRad);
    }

    private (double NominalMm, double WorstMm) At(double atRad, double fromRad, double toRad)
    {
        (bool last, bool next) = On(fromRad, toRad);
        double noses = Math.Min(Grows(atRad, fromRad, toRad), Shrinks(atRad, fromRad, toRad));
        double lands = last && next ? _landGapMm : double.PositiveInfinity;
        double worst = Math.Min(noses - _play.OffCentreMm - _play.CutterMm - Worn, lands - (2 * _play.CutterMm));
        return (Math.Min(_patchGapMm, Math.Min(noses, lands)), Math.Max(0, Math.Min(WorstPatchGapMm, worst)));
    }
}

/// <summary>One wiper on a ring of lands, and its distances to the ends of the lands before and after an off-period.</summary>
internal sealed class LandWiper
{
    private readonly Contour _patch;
    private readonly ProgrammePatch _programme;
    private readonly RingLayout _ring;
    private readonly double _laterRad;
    private Segment? _beginning;
    private Segment? _end;
    private Segment? _nextBeginning;
    private Segment? _nextEnd;

    /// <param name="motion">The turning.</param>
    /// <param name="ring">The ring.</param>
    /// <param name="patch">The wiper's patch.</param>
    /// <param name="laterRad">How much later than the output's own wiper a wheel point passes it.</param>
    public LandWiper(Motion motion, RingLayout ring, ContactPatch patch, double laterRad)
    {
        Placement toProgramme = motion.Sigma < 0 ? Placement.Identity : Placement.MirrorInX;
        _patch = patch.Shape.Placed(toProgramme).Placed(Placement.Translation(new(ring.RadiusMm, 0)));
        _programme = new(patch, motion.Direction);
        (_ring, _laterRad) = (ring, laterRad);
        WornMm = patch.WearMm;
    }

    /// <summary>How much the patch grows to either side over its life, mm.</summary>
    public double WornMm { get; }

    /// <summary>How far the patch reaches beyond its station.</summary>
    public double ReachRad(EdgeEnd end) => _programme.ReachRad(end, _ring.RadiusMm);

    /// <summary>Takes the land before the off-period and the one after it.</summary>
    public void Over(RingPeriod last, RingPeriod next)
    {
        (_beginning, _end) = (Line(last.Make), Line(last.Break));
        (_nextBeginning, _nextEnd) = (Line(next.Make), Line(next.Break));
    }

    public double ToBeginning(double atRad) => To(_beginning!, atRad);

    public double ToEnd(double atRad) => To(_end!, atRad);

    public double ToNextBeginning(double atRad) => To(_nextBeginning!, atRad);

    public double ToNextEnd(double atRad) => To(_nextEnd!, atRad);

    private Segment Line(CopperEdge edge)
    {
        double at = edge.AngleAt(_ring.RadiusMm) + _laterRad;
        return new(Point.Polar(_ring.LandFromMm!.Value, at), Point.Polar(_ring.LandToMm!.Value, at));
    }

    private double To(Segment edge, double atRad)
    {
        Piece inPatchFrame = edge.Placed(Placement.Turn(-atRad));
        return _patch.Pieces.Min(p => Distances.Between(p, inPatchFrame).DistanceMm);
    }
}
