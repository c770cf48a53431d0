namespace WheelDraft.Engineering;

/// <summary>The worst cases of one ring's on-times with its wiper at one place of its travel.</summary>
/// <remarks>Longest: the patch worn, both edges cut outward, the supply slow; shortest: the patch new, both edges cut inward, the
/// supply fast; side play and centre wherever they do most. A larger patch covers a smaller one, so that its on-time is never
/// shorter, and a line further out is never left sooner: these corners of the box are exact. Placing counts only where one
/// wiper makes and another breaks.</remarks>
internal sealed class RingTiming
{
    // How near a bound comes to what some combination gives, s: half of the microsecond that is promised.
    private const double CloseS = 5e-7;

    private readonly Motion _motion;
    private readonly Deviations _deviations;
    private readonly double _placingRad;
    private readonly EdgePlay _make;
    private readonly EdgePlay _off;

    /// <param name="shop">What all rings share.</param>
    /// <param name="ring">The ring.</param>
    /// <param name="deviations">What may depart from the drawing.</param>
    /// <param name="radiusMm">Its radius.</param>
    /// <param name="movedMm">How far its wiper is moved outward from mid travel.</param>
    public RingTiming(RingShop shop, RingDemand ring, Deviations deviations, double radiusMm, double movedMm = 0)
    {
        (_motion, _deviations) = (shop.Motion, deviations);
        _placingRad = ring.Land is null ? 0 : 2 * ring.PlacingRad(deviations.PlacingMm, radiusMm);
        _make = new(ring.MakePatch, EdgeEnd.Make, shop.Motion, deviations, radiusMm, movedMm);
        _off = new(ring.BreakPatch, EdgeEnd.Break, shop.Motion, deviations, radiusMm, movedMm);
    }

    /// <summary>The nominal on-time at this place of the travel, rad.</summary>
    public double OnRad(OnPeriod period, PeriodCut cut) =>
        period.SweepRad + _make.MovedRad(cut.Make) + _off.MovedRad(cut.Break);

    /// <summary>How much longer and shorter than nominal at worst, s.</summary>
    public (double LongerS, double ShorterS) Limits(OnPeriod period, PeriodCut cut)
    {
        double on = OnRad(period, cut);
        double still = period.SweepRad - _make.NominalRad(cut.Make) - _off.NominalRad(cut.Break);
        CentreSearch centre = new(_deviations.CentreMm, cut.Break.NormalRad + cut.Make.NormalRad, _motion.RadFromSeconds(CloseS));
        double most = still + _placingRad + centre.Greatest(
            _off.Worn(cut.Break), _deviations.BreakCutMm, _make.Worn(cut.Make), _deviations.MakeCutMm);
        double least = still - _placingRad + centre.Least(
            _off.New(cut.Break), -_deviations.BreakCutMm, _make.New(cut.Make), -_deviations.MakeCutMm);
        double onS = _motion.SecondsFromRad(on);
        return (NotBelowZero(Slow(most) - onS), NotBelowZero(onS - Fast(least)));
    }

    /// <summary>Whether the worst case of an on-time is beyond a limit, s; or is not known, where an edge is out of reach.</summary>
    public bool Exceeds(OnPeriod period, PeriodCut cut, double limitS)
    {
        // Each edge at its own worst is never less than both together: as a rule this decides.
        double onS = _motion.SecondsFromRad(OnRad(period, cut));
        double still = period.SweepRad - _make.NominalRad(cut.Make) - _off.NominalRad(cut.Break);
        double most = still + _placingRad + _off.LatestRad(cut.Break, _deviations.BreakCutMm) + _make.LatestRad(cut.Make, _deviations.MakeCutMm);
        double least = still - _placingRad + _off.SoonestRad(cut.Break, _deviations.BreakCutMm) + _make.SoonestRad(cut.Make, _deviations.MakeCutMm);
        if (Slow(most) - onS <= limitS && onS - Fast(least) <= limitS)
        {
            return false;
        }

        (double longer, double shorter) = Limits(period, cut);
        return !(longer <= limitS) || !(shorter <= limitS);
    }

    private double Slow(double rad) => _motion.SecondsFromRad(rad) / (1 - _deviations.FrequencyShare);

    // A contact that never closes is on for no time, and not for less.
    private double Fast(double rad) => _motion.SecondsFromRad(Math.Max(0, rad)) / (1 + _deviations.FrequencyShare);

    private static double NotBelowZero(double value) => value < 0 ? 0 : value;
}

/// <summary>One end of a ring's copper, and all that may move the moment at which its wiper touches it last.</summary>
internal sealed class EdgePlay
{
    private readonly Deviations _deviations;
    private readonly double _radiusMm;
    private readonly double _wiperMm;
    private readonly EdgePatchPoints _new;
    private readonly EdgePatchPoints _worn;
    private KnownEdge? _known;

    /// <param name="patch">The patch that makes or breaks, new.</param>
    /// <param name="end">Which end.</param>
    /// <param name="motion">The turning.</param>
    /// <param name="deviations">What may depart from the drawing.</param>
    /// <param name="radiusMm">Ring radius.</param>
    /// <param name="movedMm">How far the wiper is moved outward from it.</param>
    public EdgePlay(ContactPatch patch, EdgeEnd end, Motion motion, Deviations deviations, double radiusMm, double movedMm)
    {
        (_deviations, _radiusMm, _wiperMm) = (deviations, radiusMm, radiusMm + movedMm);
        _new = new ProgrammePatch(patch, motion.Direction).PointsFor(end);
        _worn = deviations.Wears ? new ProgrammePatch(patch.Worn, motion.Direction).PointsFor(end) : _new;
    }

    /// <summary>The moment of the new patch at mid travel, the edge where it is drawn: from the edge's normal, frame of a break, rad.</summary>
    public double NominalRad(CopperEdge edge) => For(edge).NominalRad;

    /// <summary>By how much moving the wiper to its place lengthens the on-time at this end, rad.</summary>
    public double MovedRad(CopperEdge edge) => For(edge).MovedRad;

    /// <summary>The edge met by the worn patch, anywhere in its side play.</summary>
    public EdgeCurves Worn(CopperEdge edge) => For(edge).Worn;

    /// <summary>The edge met by the new patch, anywhere in its side play.</summary>
    public EdgeCurves New(CopperEdge edge) => For(edge).New;

    /// <summary>The latest moment over all deviations of this edge alone, rad.</summary>
    public double LatestRad(CopperEdge edge, double cutMm)
    {
        KnownEdge known = For(edge);
        return known.LatestRad ??= known.Worn.Latest(cutMm + _deviations.CentreMm);
    }

    /// <summary>The soonest moment over all deviations of this edge alone, rad.</summary>
    public double SoonestRad(CopperEdge edge, double cutMm)
    {
        KnownEdge known = For(edge);
        return known.SoonestRad ??= known.New.Soonest(-cutMm - _deviations.CentreMm);
    }

    private KnownEdge For(CopperEdge edge)
    {
        // All radial edges of a ring are met alike.
        if (_known is null || _known.OffsetMm != edge.OffsetMm)
        {
            double play = _deviations.SidePlayMm;
            double nominal = new EdgeCurves(_new, _radiusMm, _radiusMm, edge.OffsetMm).Latest(0);
            _known = new(
                edge.OffsetMm,
                nominal,
                _wiperMm == _radiusMm ? 0 : new EdgeCurves(_new, _wiperMm, _wiperMm, edge.OffsetMm).Latest(0) - nominal,
                new(_worn, _wiperMm - play, _wiperMm + play, edge.OffsetMm),
                new(_new, _wiperMm - play, _wiperMm + play, edge.OffsetMm));
        }

        return _known;
    }

    private sealed record KnownEdge(double OffsetMm, double NominalRad, double MovedRad, EdgeCurves Worn, EdgeCurves New)
    {
        public double? LatestRad { get; set; }

        public double? SoonestRad { get; set; }
    }
}
