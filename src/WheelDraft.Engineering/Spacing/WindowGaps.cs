using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What makes a gap smaller than drawn, mm.</summary>
/// <param name="OffCentreMm">Half the run-out.</param>
/// <param name="CutterMm">Tolerance of a cut edge.</param>
/// <param name="SidePlayMm">Radial play of a wiper.</param>
internal sealed record GapPlay(double OffCentreMm, double CutterMm, double SidePlayMm);

/// <summary>The gaps of one output of a windowed wheel: along the motion in each of its off-periods, and sideways.</summary>
internal sealed class WindowGaps
{
    // Sides of a window that differ by no more than rounding are alike: the inner one is told.
    private const double SameMm = 1e-9;

    private readonly Motion _motion;
    private readonly RingLayout _ring;
    private readonly GapPlay _play;
    private readonly double? _alongRequiredMm;
    private readonly OpenGap _sideways;

    public WindowGaps(Motion motion, RingLayout ring, OpenContactRule rule, GapPlay play)
    {
        (_motion, _ring, _play) = (motion, ring, play);
        _alongRequiredMm = rule.IsNone ? null : rule.AlongMm(ring.Patch);
        _sideways = SidewaysGap(rule.IsNone ? null : rule.SidewaysMm(ring.Patch));
    }

    /// <summary>The gap sideways, told at a programme angle; it is the same all through the off-periods.</summary>
    public OpenGap Sideways(double atRad) => _sideways with { AtRad = atRad };

    /// <summary>The off-period that follows an on-period, with the greatest gap reached in it.</summary>
    public OpenPeriod Period(int index)
    {
        (double from, double to) = Span(index);
        List<EdgeGap> travel = [.. Edges(index)];
        OpenGap along = travel.Select(gap => Along(gap, gap.Top(from, to))).MinBy(g => g.NominalMm)!;
        double? reached = _alongRequiredMm is double required && along.NominalMm >= required && Verdicts.On(_sideways.NominalMm, _sideways.RequiredMm!.Value) != SpacingVerdict.Misses
            ? travel.Max(gap => gap.Reaches(required, from, gap.Top(from, to))) - from
            : null;
        return new(from, to, Math.Min(along.NominalMm, _sideways.NominalMm), Math.Min(along.WorstMm, _sideways.WorstMm), along.AtRad, reached) { Along = along };
    }

    /// <summary>The least gap between two programme angles of an off-period: at one of them, for between edges it grows and then shrinks.</summary>
    public ParkedGap LeastBetween(int index, double fromRad, double toRad)
    {
        OpenGap least = Edges(index).SelectMany(_ => new[] { fromRad, toRad }, Along).MinBy(g => g.NominalMm)!;
        return new(fromRad, toRad, Math.Min(least.NominalMm, _sideways.NominalMm), Math.Min(least.WorstMm, _sideways.WorstMm), least.AtRad) { Along = least };
    }

    /// <summary>The gap at the beginning or end of an off-period, where patch and copper touch.</summary>
    public OpenGap Touching(int index, double atRad) => Along(new EdgeGap(_motion, _ring, _ring.RadiusMm, index), atRad) with { NominalMm = 0, WorstMm = 0 };

    private (double FromRad, double ToRad) Span(int index)
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

    /// <summary>The ring radius at both ends of travel and in the middle: the contact path there bounds the rest.</summary>
    private IEnumerable<EdgeGap> Edges(int index)
    {
        double half = _ring.TravelMm / 2;
        IEnumerable<double> radii = half == 0 ? [_ring.RadiusMm] : [_ring.RadiusMm - half, _ring.RadiusMm, _ring.RadiusMm + half];
        return radii.Select(r => new EdgeGap(_motion, _ring, r, index));
    }

    /// <summary>The gap along the motion less its own tolerances and wear.</summary>
    private OpenGap Along(EdgeGap edges, double atRad)
    {
        Nearest nearest = edges.Nearest(atRad);
        double worst = nearest.DistanceMm - _play.OffCentreMm - _play.CutterMm - _ring.Patch.WearMm;
        return new(_alongRequiredMm, nearest.DistanceMm, Math.Max(0, worst), atRad) { OnNose = nearest.OnFirst, OnCopper = nearest.OnSecond };
    }

    private OpenGap SidewaysGap(double? requiredMm)
    {
        double inward = _ring.PathFromMm - _ring.WindowFromMm!.Value;
        double outward = _ring.WindowToMm!.Value - _ring.PathToMm;

        // A window open to the outside has no copper beyond the patch.
        bool isOpen = _ring.SideGapMm is double gap && outward + SameMm < gap;
        bool isOutward = !isOpen && outward + SameMm < inward;
        double half = _ring.TravelMm / 2;
        Point nose = isOutward ? _ring.Patch.FarthestFromAxis(_ring.RadiusMm + half) : _ring.Patch.NearestToAxis(_ring.RadiusMm - half);
        Point copper = Point.Polar(isOutward ? _ring.WindowToMm.Value : _ring.WindowFromMm.Value, nose.AngleRad);
        Placement toHousing = Placement.Turn(_ring.StationRad);
        double nominal = isOpen ? inward : Math.Min(inward, outward);
        double worst = nominal - _play.OffCentreMm - _play.CutterMm - _play.SidePlayMm - _ring.Patch.SidewaysWearMm;
        return new(requiredMm, nominal, Math.Max(0, worst), 0) { OnNose = toHousing.Of(nose), OnCopper = toHousing.Of(copper) };
    }
}

/// <summary>The gap along the motion between a patch and the two edges of the window that it is in.</summary>
internal sealed class EdgeGap
{
    private readonly Contour _patch;
    private readonly Segment _break;
    private readonly Segment _make;
    private readonly Placement _toHousing;

    /// <param name="motion">The turning.</param>
    /// <param name="ring">The ring.</param>
    /// <param name="radiusMm">Where the wiper is on its travel.</param>
    /// <param name="index">The on-period that the window follows.</param>
    public EdgeGap(Motion motion, RingLayout ring, double radiusMm, int index)
    {
        Placement toProgramme = motion.Sigma < 0 ? Placement.Identity : Placement.MirrorInX;
        _patch = ring.Patch.Shape.Placed(toProgramme).Placed(Placement.Translation(new(radiusMm, 0)));
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
