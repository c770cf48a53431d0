using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Measures how far the contacts of a lands wheel open.</summary>
/// <remarks>While an output is open its two nets reach as far as its two patches and the lands that they touch. The off-period
/// is cut where the downstream wiper leaves the last land and where the upstream one reaches the next; within each stretch some
/// gaps grow, some shrink and some stand still, so that the least of them has one maximum, and its least value at an end. Lands that
/// float and other rings are conductors too: a chain over them may be shorter (<see cref="LandChains"/>).</remarks>
internal sealed class LandContactGaps(Brief brief, Motion motion, WheelLayout wheel) : OpenContactMeter
{
    public override OpenContact? Of(int index, PairRequirement? requirement, double workingV, IReadOnlyList<StandingStretch> standing)
    {
        RingLayout ring = wheel.Rings[index];
        if (ring.IsWhole)
        {
            return null;
        }

        // Between the two patches, and between lands, what a round nose must keep is kept too: as the lands are laid out.
        OpenContactRule rule = OpenContactRule.Of(requirement);
        double? required = rule.IsNone ? null : Math.Max(rule.AlongMm(ring.Patch), rule.AlongMm(ring.Return!.Patch));
        GapPlay play = new(brief.Wheel.RunOutMm / 2, brief.Process.ToleranceMm, ring.SidePlayMm);
        LandChains chains = new(brief with { Housing = brief.Housing with { PlacingMm = brief.Housing.PlacingMm + WoundMm(index) } }, motion, wheel, index, XMm(requirement));
        IReadOnlyList<LandGap> gaps = [.. Enumerable.Range(0, ring.Periods.Count).Select(i => new LandGap(motion, ring, i, play)
        {
            RequiredMm = required,
            Chains = chains,
            PlacingMm = brief.Housing.PlacingMm + WoundMm(index),
        })];
        IReadOnlyList<OpenPeriod> periods = [.. gaps.Select(g => g.Period())];
        double slack = (play.OffCentreMm + play.CutterMm + play.SidePlayMm) / ring.LandFromMm!.Value;
        ParkedGap? park = Parked([.. periods.Select(p => new OpenSpan(p.BreakRad, p.MakeRad) { SoonerRad = slack, LaterRad = slack })], standing, (i, from, to) => gaps[i].LeastBetween(from, to), (i, at) => gaps[i].Touching(at));
        OpenContact open = new()
        {
            Output = ring.Name,
            WiperNet = ring.Net,
            WheelNet = ring.WheelNet,
            Requirement = requirement,
            WorkingV = workingV,
            Along = Tightest([.. periods.Select(p => p.Along), park?.Along]),
            Sideways = gaps[0].BetweenPatches(periods[0].GreatestAtRad),
            OpeningMmPerS = ring.RadiusMm * motion.SpeedRadPerS,
            Periods = periods,
            Parked = park,
            Steps = [],
        };
        return open with { Steps = OpenContactSteps.Of(open, rule, ring) };
    }

    /// <summary>X of the open contact; the full width where nothing is asked.</summary>
    private double XMm(PairRequirement? requirement) => GrooveWidth.LeastMm(
        brief.Environment.PollutionDegree, requirement is null ? GrooveX.Full : brief.Spacing.GrooveX, Math.Max(requirement?.Clearance.RequiredMm ?? 0, Tolerances.JoinMm));
}

/// <summary>The gap between the two sides of one output in one off-period.</summary>
/// <remarks>At the worst each cut edge of a land lies off by the cutter's tolerance, the wheel off its centre, each patch along the motion by its
/// placing and along the radius by its side play, and the patches are worn.</remarks>
internal sealed class LandGap
{
    private readonly GapPlay _play;
    private readonly LandWiper _upstream;
    private readonly LandWiper _downstream;
    private readonly double _breakRad;
    private readonly double _makeRad;
    private readonly double _leavesRad;
    private readonly double _reachesRad;
    private readonly Nearest _betweenPatches;
    private readonly Nearest? _betweenLands;
    private readonly Motion _motion;
    private readonly double _leastRadiusMm;
    private readonly double _greatestRadiusMm;

    /// <summary>How many parts an off-period is cut into for the first look where chains decide.</summary>
    /// <remarks>Whatever it finds is a gap that is there; more parts find hardly more, and cost time.</remarks>
    private const int SearchSteps = 96;

    /// <param name="motion">The turning.</param>
    /// <param name="ring">The ring.</param>
    /// <param name="index">The on-period that the off-period follows.</param>
    /// <param name="play">Tolerances.</param>
    public LandGap(Motion motion, RingLayout ring, int index, GapPlay play)
    {
        (_play, _motion) = (play, motion);
        int next = (index + 1) % ring.Periods.Count;
        ReturnWiper other = ring.Return!;
        double toReturn = other.IsUpstream ? -other.ApartRad : other.ApartRad;
        LandWiper own = new(motion, ring, ring.Wipers[0], 0);
        LandWiper second = new(motion, ring, ring.Wipers[1], toReturn);
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
        _betweenPatches = Distances.Between(other.Patch.At(ring.RadiusMm, other.StationRad), ring.Patch.At(ring.RadiusMm, ring.StationRad)) with { DistanceMm = other.PatchGapMm };
        (_leastRadiusMm, _greatestRadiusMm) = (ring.LandFromMm!.Value, ring.LandToMm!.Value);
        _betweenLands = index == next ? null : Distances.Between(ring.Lands[index].Outline, ring.Lands[next].Outline);
    }

    /// <summary>What every gap must keep, mm; null when nothing is asked.</summary>
    public double? RequiredMm { get; init; }

    /// <summary>Ways over floating lands and other rings.</summary>
    public required LandChains Chains { get; init; }

    /// <summary>How far each patch may stand off along the motion, mm.</summary>
    public double PlacingMm { get; init; }

    private double Worn => Math.Max(_upstream.WornMm, _downstream.WornMm);

    private double WorstPatchGapMm => Math.Max(0, _betweenPatches.DistanceMm - (2 * (_play.SidePlayMm + PlacingMm)) - _upstream.WornMm - _downstream.WornMm);

    /// <summary>The gap between the two patches, given at a programme angle; it always stays the same.</summary>
    public OpenGap BetweenPatches(double atRad) => new(RequiredMm, _betweenPatches.DistanceMm, WorstPatchGapMm, atRad)
    {
        OnCopper = _betweenPatches.OnFirst,
        OnNose = _betweenPatches.OnSecond,
    };

    /// <summary>The gap at the beginning or end of the off-period, where a patch and a land touch.</summary>
    public OpenGap Touching(double atRad)
    {
        List<(double From, double To)> stretches = [.. Stretches()];
        (double from, double to) = atRad > _breakRad ? stretches[^1] : stretches[0];
        return (Along(atRad, from, to) ?? BetweenPatches(atRad)) with { NominalMm = 0, WorstMm = 0 };
    }

    /// <summary>The off-period with the greatest gap reached in it.</summary>
    public OpenPeriod Period()
    {
        (double greatest, double worst, double at) = (double.NegativeInfinity, 0, _breakRad);
        OpenGap? along = null;
        double? reached = null;
        foreach ((double from, double to) in Stretches())
        {
            double top = Top(from, to);
            (double nominal, double least) = At(top, from, to);
            if (nominal > greatest)
            {
                (greatest, worst, at) = (nominal, least, top);
                along = Along(top, from, to);
            }

            if (RequiredMm is double required && least >= required)
            {
                reached ??= At(from, from, to).WorstMm >= required
                    ? from
                    : RootFinding.Within(a => At(a, from, to).WorstMm - required, from, top) ?? top;
            }
        }

        OpenPeriod direct = new(_breakRad, _makeRad, greatest, worst, at, reached - _breakRad) { Along = along };
        return Chains.At(at, worst) is null ? Chained(direct) : OverChains(direct);
    }

    /// <summary>An off-period whose greatest gap no chain undercuts; only when it is reached may still depend on a chain.</summary>
    private OpenPeriod Chained(OpenPeriod direct) => direct.ReachedAfterRad is double after && RequiredMm is double required
        && Chains.At(_breakRad + after, required) is not null
            ? direct with { ReachedAfterRad = Reached(direct.GreatestAtRad, required) }
            : direct;

    /// <summary>The greatest gap where chains undercut that between both sides: the best place of a fine search, which is a gap that is there.</summary>
    private OpenPeriod OverChains(OpenPeriod direct)
    {
        (double nominal, double worst, double at) best = (0, double.NegativeInfinity, _breakRad);
        LandChain? over = null;
        void Try(double at)
        {
            (double nominal, double worst, LandChain? chain) = All(at);
            if (worst > best.worst)
            {
                (best, over) = ((nominal, worst, at), chain);
            }
        }

        double step = (_makeRad - _breakRad) / SearchSteps;
        for (int i = 1; i < SearchSteps; i++)
        {
            Try(_breakRad + (i * step));
        }

        for (; step * _greatestRadiusMm > SpacingTolerances.CertifiedMm; step /= 2)
        {
            double middle = best.at;
            Try(Math.Max(_breakRad, middle - (step / 2)));
            Try(Math.Min(_makeRad, middle + (step / 2)));
        }

        double? reached = RequiredMm is double required && best.worst >= required ? Reached(best.at, required) : null;
        (double from, double to) = Stretches().First(s => best.at <= s.To);
        return direct with
        {
            GreatestMm = best.nominal,
            WorstGreatestMm = best.worst,
            GreatestAtRad = best.at,
            ReachedAfterRad = reached,
            Along = over is null ? Along(best.at, from, to) : Gap(over),
        };
    }

    /// <summary>After the break, a place from which the gap is there at once: the first of a fine search.</summary>
    private double Reached(double byRad, double required)
    {
        double step = (_makeRad - _breakRad) / SearchSteps;
        double at = _breakRad;
        while (at + step < byRad && All(at).WorstMm < required)
        {
            at += step;
        }

        // The last step halved: its upper end has the gap.
        (double bad, double good) = All(at).WorstMm < required ? (at, byRad) : (Math.Max(_breakRad, at - step), at);
        while ((good - bad) * _greatestRadiusMm > SpacingTolerances.CertifiedMm)
        {
            double middle = (bad + good) / 2;
            (bad, good) = All(middle).WorstMm < required ? (middle, good) : (bad, middle);
        }

        return good - _breakRad;
    }

    /// <summary>The gap at a programme angle, chains included.</summary>
    private (double NominalMm, double WorstMm, LandChain? Chain) All(double atRad)
    {
        (double from, double to) = Stretches().First(s => atRad <= s.To);
        (double nominal, double worst) = At(atRad, from, to);
        return Chains.At(atRad, worst) is { } chain ? (Math.Min(nominal, chain.NominalMm), chain.WorstMm, chain) : (nominal, worst, null);
    }

    private OpenGap Gap(LandChain chain) => new(RequiredMm, chain.NominalMm, chain.WorstMm, chain.AtRad)
    {
        OnNose = chain.OnFirst,
        OnCopper = chain.OnLast,
        Over = chain.Over,
    };

    /// <summary>The least gap over part of the off-period.</summary>
    public ParkedGap LeastBetween(double fromRad, double toRad)
    {
        List<OpenGap> along = [];
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
                along.AddRange(Along(end, from, to) is OpenGap there ? [there] : []);
            }
        }

        ParkedGap direct = new(fromRad, toRad, least, worst, at) { Along = along.MinBy(g => g.ToSpareMm) };
        return Chains.Least(fromRad, toRad, worst + LandChains.WithinMm) is { } chain && chain.WorstMm < worst
            ? direct with { LeastMm = Math.Min(least, chain.NominalMm), WorstMm = Math.Min(worst, chain.WorstMm), AtRad = chain.AtRad, Along = Gap(chain) }
            : direct;
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
        // With both wipers on bare carrier the gap stands still; the middle is kept apart from the ends, where a wiper still
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
        double lands = last && next && _betweenLands is Nearest between ? between.DistanceMm : double.PositiveInfinity;
        double worst = Math.Min(WorstNoseMm(noses), lands - (2 * _play.CutterMm));
        return (Math.Min(_betweenPatches.DistanceMm, Math.Min(noses, lands)), Math.Max(0, Math.Min(WorstPatchGapMm, worst)));
    }

    /// <summary>A gap between a patch and an edge of a land at the worst.</summary>
    /// <remarks>An edge is radial: moved along the radius by its side play a patch comes nearer to it by no more than that times the gap over
    /// the least radius, because that is the sine of the angle under which both stand.</remarks>
    private double WorstNoseMm(double gapMm) =>
        gapMm - _play.OffCentreMm - _play.CutterMm - Worn - PlacingMm - (_play.SidePlayMm * Math.Min(1, (gapMm + _play.SidePlayMm) / _leastRadiusMm));

    /// <summary>The gap with less at worst of that between a nose and a land and that between two lands; null where neither is.</summary>
    private OpenGap? Along(double atRad, double fromRad, double toRad)
    {
        (bool last, bool next) = On(fromRad, toRad);
        List<OpenGap> gaps = [];
        IEnumerable<Nearest> noses = [.. last ? _upstream.Last(atRad) : [], .. next ? _downstream.Next(atRad) : []];
        foreach (Nearest nose in noses)
        {
            gaps.Add(Gap(nose, WorstNoseMm(nose.DistanceMm), atRad));
        }

        if (last && next && _betweenLands is Nearest lands)
        {
            Placement turned = _motion.WheelAt(atRad);
            gaps.Add(Gap(new(lands.DistanceMm, turned.Of(lands.OnSecond), turned.Of(lands.OnFirst)), lands.DistanceMm - (2 * _play.CutterMm), atRad));
        }

        return gaps.MinBy(g => g.WorstMm);
    }

    private OpenGap Gap(Nearest noseToLand, double worstMm, double atRad) => new(RequiredMm, noseToLand.DistanceMm, Math.Max(0, worstMm), atRad)
    {
        OnNose = noseToLand.OnFirst,
        OnCopper = noseToLand.OnSecond,
    };
}

/// <summary>One wiper on a ring of lands, and its distances to the ends of the lands before and after an off-period.</summary>
internal sealed class LandWiper
{
    private readonly Contour _patch;
    private readonly ProgrammePatch _programme;
    private readonly RingLayout _ring;
    private readonly double _laterRad;
    private readonly Placement _toHousing;
    private Segment? _beginning;
    private Segment? _end;
    private Segment? _nextBeginning;
    private Segment? _nextEnd;

    /// <param name="motion">The turning.</param>
    /// <param name="ring">The ring.</param>
    /// <param name="wiper">The wiper.</param>
    /// <param name="laterRad">How much later than the output's own wiper a wheel point passes it.</param>
    public LandWiper(Motion motion, RingLayout ring, RingWiper wiper, double laterRad)
    {
        Placement toProgramme = motion.Sigma < 0 ? Placement.Identity : Placement.MirrorInX;
        _patch = wiper.Patch.Shape.Placed(toProgramme).Placed(Placement.Translation(new(ring.RadiusMm, 0)));
        _programme = new(wiper.Patch, motion.Direction);
        (_ring, _laterRad) = (ring, laterRad);
        WornMm = wiper.Patch.WearMm;

        // The mirror is its own way back.
        _toHousing = toProgramme.Then(Placement.Turn(wiper.StationRad));
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

    public double ToBeginning(double atRad) => To(_beginning!, atRad).DistanceMm;

    public double ToEnd(double atRad) => To(_end!, atRad).DistanceMm;

    public double ToNextBeginning(double atRad) => To(_nextBeginning!, atRad).DistanceMm;

    public double ToNextEnd(double atRad) => To(_nextEnd!, atRad).DistanceMm;

    /// <summary>From the patch to both ends of the land before the off-period, the points in the housing.</summary>
    public IEnumerable<Nearest> Last(double atRad) => [InHousing(To(_beginning!, atRad)), InHousing(To(_end!, atRad))];

    /// <summary>The same, to the land after it.</summary>
    public IEnumerable<Nearest> Next(double atRad) => [InHousing(To(_nextBeginning!, atRad)), InHousing(To(_nextEnd!, atRad))];

    private Nearest InHousing(Nearest nearest) => new(nearest.DistanceMm, _toHousing.Of(nearest.OnFirst), _toHousing.Of(nearest.OnSecond));

    private Segment Line(CopperEdge edge)
    {
        double at = edge.AngleAt(_ring.RadiusMm) + _laterRad;
        return new(Point.Polar(_ring.LandFromMm!.Value, at), Point.Polar(_ring.LandToMm!.Value, at));
    }

    private Nearest To(Segment edge, double atRad)
    {
        Piece inPatchFrame = edge.Placed(Placement.Turn(-atRad));
        return _patch.Pieces.Select(p => Distances.Between(p, inPatchFrame)).MinBy(n => n.DistanceMm);
    }
}
