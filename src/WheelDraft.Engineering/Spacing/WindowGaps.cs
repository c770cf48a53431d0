using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What makes a gap smaller than drawn, mm.</summary>
/// <param name="OffCentreMm">Half the run-out: the wheel's centre may lie as far off the axis, in any direction.</param>
/// <param name="CutterMm">Tolerance of a cut edge.</param>
/// <param name="SidePlayMm">Radial play of a wiper.</param>
internal sealed record GapPlay(double OffCentreMm, double CutterMm, double SidePlayMm)
{
    /// <summary>How far the wiper may stand from its station along the motion, mm.</summary>
    public double PlacingMm { get; init; }

    /// <summary>What brings copper and wiper nearer along the motion, mm.</summary>
    public double AlongMm => OffCentreMm + CutterMm + PlacingMm;
}

/// <summary>The gaps of one output of a windowed wheel: along the motion in each of its off-periods, and sideways.</summary>
/// <remarks>Worst figures are those of the worn patch, anywhere within its travel and side play, from the edges: the true shape of all
/// that it covers there. Cutter tolerance and centre offset then take from that distance what they are, because they bring the copper
/// nearer in every direction. Corners of a window are taken sharp: fillets keep outside the path of the worn patch.</remarks>
internal sealed class WindowGaps
{
    // Sides of a window that differ by no more than rounding are alike: the inner one is reported.
    private const double SameMm = 1e-9;

    // Parts of the travel over which the worst of an off-period's greatest gap is found: each counts all places of the wiper in it at
    // once, so fewer parts would show a smaller gap than there is.
    private const int TravelParts = 8;

    private readonly Motion _motion;
    private readonly RingLayout _ring;
    private readonly GapPlay _play;
    private readonly ContactPatch _worn;
    private readonly double? _alongRequiredMm;
    private readonly OpenGap _sideways;

    public WindowGaps(Motion motion, RingLayout ring, OpenContactRule rule, GapPlay play)
    {
        (_motion, _ring, _play, _worn) = (motion, ring, play, ring.Patch.Worn);
        _alongRequiredMm = rule.IsNone ? null : rule.AlongMm(ring.Patch);
        _sideways = SidewaysGap(rule.IsNone ? null : rule.SidewaysMm(ring.Patch, InnerEndMm - play.SidePlayMm, OuterEndMm + play.SidePlayMm));
    }

    private double InnerEndMm => _ring.RadiusMm - (_ring.TravelMm / 2);

    private double OuterEndMm => _ring.RadiusMm + (_ring.TravelMm / 2);

    /// <summary>The gap sideways, given at a programme angle; it is the same all through the off-periods.</summary>
    public OpenGap Sideways(double atRad) => _sideways with { AtRad = atRad };

    /// <summary>The off-period that follows an on-period, with the greatest gap reached in it.</summary>
    public OpenPeriod Period(int index)
    {
        (double from, double to) = Bounds(index);
        List<(EdgeGap Gap, double TopRad)> worst = [.. WornParts(index).Select(g => (g, g.Top(from, to)))];
        double greatest = WorstMm(worst.Min(w => w.Gap.Nearest(w.TopRad).DistanceMm));
        OpenGap along = Drawn(index).Select(g => Gap(g.Nearest(g.Top(from, to)), greatest, g.Top(from, to))).MinBy(g => g.NominalMm)!;
        double? reached = _alongRequiredMm is double required && Keeps(along) && Keeps(_sideways)
            ? worst.Max(w => w.Gap.Reaches(required + _play.AlongMm, from, w.TopRad)) - from
            : null;
        return new(from, to, Math.Min(along.NominalMm, _sideways.NominalMm), Math.Min(along.WorstMm, _sideways.WorstMm), along.AtRad, reached) { Along = along };
    }

    /// <summary>The off-period that follows an on-period, with how much sooner and later the contact may open and close.</summary>
    public OpenSpan Span(int index)
    {
        (double from, double to) = Bounds(index);
        RingPeriod next = _ring.Periods[(index + 1) % _ring.Periods.Count];
        return new(from, to)
        {
            SoonerRad = Math.Max(0, Shift(_ring.Periods[index].Break)),
            LaterRad = Math.Max(0, Shift(next.Make)),
        };
    }

    /// <summary>The least gap between two programme angles of an off-period.</summary>
    public ParkedGap LeastBetween(int index, double fromRad, double toRad)
    {
        EdgeGap worn = new(_motion, _ring, _worn.Swept(InnerEndMm - _play.SidePlayMm, OuterEndMm + _play.SidePlayMm), index);
        LeastOverStretch least = LeastOverStretch.Of(at => worn.Nearest(at).DistanceMm, fromRad, toRad, _ring.WindowToMm!.Value);
        OpenGap along = Gap(Nearest(index, least.AtRad), WorstMm(least.LowerMm), least.AtRad);
        return new(fromRad, toRad, Math.Min(along.NominalMm, _sideways.NominalMm), Math.Min(along.WorstMm, _sideways.WorstMm), least.AtRad) { Along = along };
    }

    /// <summary>The gap at the beginning or end of an off-period, where patch and copper touch.</summary>
    public OpenGap Touching(int index, double atRad) => Gap(Nearest(index, atRad), 0, atRad) with { NominalMm = 0 };

    private static bool Keeps(OpenGap gap) => Verdicts.On(gap.WorstMm, gap.RequiredMm!.Value) != SpacingVerdict.Misses;

    private (double FromRad, double ToRad) Bounds(int index)
    {
        int next = (index + 1) % _ring.Periods.Count;
        double from = _ring.Periods[index].Wanted.EndRad;
        double to = _ring.Periods[next].Wanted.StartRad + (next <= index ? Angles.TurnRad : 0);
        while (to <= from)
        {
            to += Angles.TurnRad;
        }

        return (from, to);
    }

    // How far the moment at which the new patch leaves or reaches an edge may lie on the side of the copper: copper cut short and shifted
    // away, the wiper anywhere within its travel and play. The time for that is least at one end of both or in the middle.
    private double Shift(CopperEdge edge)
    {
        ProgrammePatch patch = new(_ring.Patch, _motion.Direction);
        CopperEdge shorter = edge with { OffsetMm = edge.OffsetMm - _play.AlongMm };
        double sense = edge.End == EdgeEnd.Break ? 1 : -1;
        double drawn = edge.TouchOf(patch, _ring.RadiusMm).AtRad;
        return new[] { InnerEndMm - _play.SidePlayMm, _ring.RadiusMm, OuterEndMm + _play.SidePlayMm }
            .Max(r => sense * (drawn - shorter.TouchOf(patch, r).AtRad));
    }

    /// <summary>The patch as drawn at both ends of travel and in the middle.</summary>
    private IEnumerable<EdgeGap> Drawn(int index)
    {
        IEnumerable<double> radii = _ring.TravelMm == 0 ? [_ring.RadiusMm] : [InnerEndMm, _ring.RadiusMm, OuterEndMm];
        return radii.Select(r => new EdgeGap(_motion, _ring, _ring.Patch.Swept(r, r), index));
    }

    /// <summary>The worn patch over each part of the travel, side play added.</summary>
    private IEnumerable<EdgeGap> WornParts(int index)
    {
        int parts = _ring.TravelMm == 0 ? 1 : TravelParts;
        double step = _ring.TravelMm / parts;
        return Enumerable.Range(0, parts).Select(i =>
            new EdgeGap(_motion, _ring, _worn.Swept(InnerEndMm + (i * step) - _play.SidePlayMm, InnerEndMm + ((i + 1) * step) + _play.SidePlayMm), index));
    }

    private Nearest Nearest(int index, double atRad) => Drawn(index).Select(g => g.Nearest(atRad)).MinBy(n => n.DistanceMm);

    private double WorstMm(double wornMm) => Math.Max(0, wornMm - _play.AlongMm);

    private OpenGap Gap(Nearest drawn, double worstMm, double atRad) =>
        new(_alongRequiredMm, drawn.DistanceMm, worstMm, atRad) { OnNose = drawn.OnFirst, OnCopper = drawn.OnSecond };

    private OpenGap SidewaysGap(double? requiredMm)
    {
        (double windowFrom, double windowTo) = (_ring.WindowFromMm!.Value, _ring.WindowToMm!.Value);
        double inward = _ring.PathFromMm - windowFrom;
        double outward = windowTo - _ring.PathToMm;

        // A wiper off its station along the motion stays on its circle and takes nothing here.
        // A window open to the outside has no copper beyond the patch.
        bool isOpen = _ring.SideGapMm is double gap && outward + SameMm < gap;
        bool isOutward = !isOpen && outward + SameMm < inward;
        Point nose = isOutward ? _ring.Patch.FarthestFromAxis(OuterEndMm) : _ring.Patch.NearestToAxis(InnerEndMm);
        Point copper = Point.Polar(isOutward ? windowTo : windowFrom, nose.AngleRad);
        double worstInward = _worn.LeastRadiusMm(InnerEndMm - _play.SidePlayMm) - windowFrom;
        double worstOutward = isOpen ? double.PositiveInfinity : windowTo - _worn.GreatestRadiusMm(OuterEndMm + _play.SidePlayMm);
        Placement toHousing = Placement.Turn(_ring.StationRad);
        return new(requiredMm, isOpen ? inward : Math.Min(inward, outward), Math.Max(0, Math.Min(worstInward, worstOutward) - _play.OffCentreMm - _play.CutterMm), 0)
        {
            OnNose = toHousing.Of(nose),
            OnCopper = toHousing.Of(copper),
        };
    }
}

/// <summary>The gap along the motion between what a patch covers and the two edges of the window that it is in.</summary>
internal sealed class EdgeGap
{
    private readonly Contour _patch;
    private readonly Segment _break;
    private readonly Segment _make;
    private readonly Placement _toHousing;

    /// <param name="motion">The turning.</param>
    /// <param name="ring">The ring.</param>
    /// <param name="patch">The patch, or all that it covers, in the wiper's frame with the axis as origin.</param>
    /// <param name="index">The on-period that the window follows.</param>
    public EdgeGap(Motion motion, RingLayout ring, Contour patch, int index)
    {
        Placement toProgramme = motion.Sigma < 0 ? Placement.Identity : Placement.MirrorInX;
        _patch = patch.Placed(toProgramme);
        _break = Line(ring.Periods[index].Break, ring);
        _make = Line(ring.Periods[(index + 1) % ring.Periods.Count].Make, ring);

        // The mirror is its own way back.
        _toHousing = toProgramme.Then(Placement.Turn(ring.StationRad));
    }

    /// <summary>The lesser gap to the two edges at a programme angle, from the patch to the edge, its points in the housing.</summary>
    public Nearest Nearest(double atRad)
    {
        (Nearest toBreak, Nearest toMake) = (To(_break, atRad), To(_make, atRad));
        Nearest least = toBreak.DistanceMm <= toMake.DistanceMm ? toBreak : toMake;
        return new(least.DistanceMm, _toHousing.Of(least.OnFirst), _toHousing.Of(least.OnSecond));
    }

    /// <summary>The programme angle at which both gaps are equal: the greatest gap of the off-period.</summary>
    /// <remarks>The gap to the break edge grows and that to the make edge shrinks while both lie within half a turn; past half
    /// a turn both are far beyond any sideways gap.</remarks>
    public double Top(double fromRad, double toRad) =>
        RootFinding.Within(at => To(_break, at).DistanceMm - To(_make, at).DistanceMm, fromRad, toRad) ?? ((fromRad + toRad) / 2);

    /// <summary>The programme angle at which the gap to the break edge reaches a length, between the break and the top.</summary>
    public double Reaches(double gapMm, double fromRad, double topRad) =>
        RootFinding.Within(at => To(_break, at).DistanceMm - gapMm, fromRad, topRad) ?? topRad;

    private static Segment Line(CopperEdge edge, RingLayout ring)
    {
        (double from, double to) = (ring.WindowFromMm!.Value, ring.WindowToMm!.Value);
        return new(Point.Polar(from, edge.AngleAt(from)), Point.Polar(to, edge.AngleAt(to)));
    }

    private Nearest To(Segment edge, double atRad)
    {
        Piece inPatchFrame = edge.Placed(Placement.Turn(-atRad));
        return _patch.Pieces.Select(p => Distances.Between(p, inPatchFrame)).MinBy(n => n.DistanceMm);
    }
}
