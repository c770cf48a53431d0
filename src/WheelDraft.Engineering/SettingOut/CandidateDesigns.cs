using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>From choices to a brief without "auto", and to what its design is worth.</summary>
internal sealed class CandidateDesigns
{
    // Rings move a little with their strips where contacts are folds, and strips with their rings: twice is enough, and the design judges.
    private const int Rounds = 2;

    // Arms across the radius, with which folds lie along it.
    private const int FirstApproachDeg = 90;

    // What a riser keeps beyond what is required, mm: friction winds arms up, and folds bulge.
    private const double RiserAirMm = 0.5;

    private readonly Brief _asked;
    private readonly Brief _brief;
    private readonly StripBuilder? _builder;
    private readonly StripMemory _memory = new();
    private readonly Lazy<CircuitAnalysis> _exact;
    private readonly (WheelLayout Wheel, CopperClearances Clearances) _first;

    /// <summary>For a brief.</summary>
    /// <param name="brief">The brief; its order of rings is searched for where it asks for that.</param>
    /// <exception cref="DesignRefusedException">Its wheel cannot be built, whatever is chosen.</exception>
    public CandidateDesigns(Brief brief)
    {
        _asked = brief;
        _exact = new(() => new DesignStages(MeasuredCopper.Resolved(brief)).ExactCircuit());
        Slots = WiperSlot.Of(brief);
        _brief = brief;
        _builder = brief.StripRecipe is StripsBrief recipe ? new(brief, recipe) : null;
        Sense = brief.Drive.Direction == Turning.Clockwise ? 1 : -1;
        _first = new DesignStages(AnySize(WithStrips(brief, (_, slot) => Placed(slot, Sense * FirstApproachDeg)))).WheelOnly();

        // The order of rings is that of the smallest wheel; it is found once.
        if (First.RingOrder is { } order)
        {
            _brief = brief with { Wheel = brief.Wheel with { RingOrder = order, SearchesRingOrder = false } };
        }
    }

    /// <summary>The wipers.</summary>
    public IReadOnlyList<WiperSlot> Slots { get; }

    /// <summary>Sign of an approach with which arms trail.</summary>
    public int Sense { get; }

    /// <summary>The wheel with the right contacts and no strips yet, for the first stations and reaches.</summary>
    public WheelLayout First => _first.Wheel;

    // The disc under a rivet does not change with its arm, so that neither do the rings.
    private bool RingsStay => Slots.All(s => !s.Free.Any || (s.Free.Shape ? _brief.StripRecipe!.Contact is RivetContact : _brief.Strips[s.Strip].Shape.Any(p => p is StripRivet)));

    /// <summary>The brief of some choices: nothing of it is left to the program.</summary>
    public Brief BriefOf(Candidate candidate)
    {
        Brief brief = _brief;
        for (int i = 0; i < Slots.Count; i++)
        {
            brief = Slots[i].FreeStation ? Slots[i].At(brief, candidate.Stations[i]) : brief;
        }

        if (!Slots.Any(s => s.Free.Any))
        {
            return brief;
        }

        if (RingsStay)
        {
            return WithStrips(brief, (i, slot) => Built(slot, candidate.Approaches[i], _first));
        }

        // Strips need to know how far out their riser is, and with folds rings need to know their strips.
        brief = WithStrips(brief, (i, slot) => Placed(slot, candidate.Approaches[i]));
        for (int round = 0; round < Rounds; round++)
        {
            (WheelLayout wheel, CopperClearances clearances) = Stages(brief).WheelOnly();
            brief = WithStrips(brief, (i, slot) => Built(slot, candidate.Approaches[i], (wheel, clearances)));
        }

        return brief;
    }

    /// <summary>Whether the wheel of a brief can be built, whatever its strips.</summary>
    /// <exception cref="DesignRefusedException">It cannot.</exception>
    public static bool CanBeBuilt(Brief brief) => new CandidateDesigns(brief).First.OuterDiameterMm > 0;

    /// <summary>What a candidate is worth.</summary>
    public Merit Judge(Candidate candidate)
    {
        Brief? brief = null;
        try
        {
            brief = BriefOf(candidate);
            return Merit.Of(Stages(MeasuredCopper.Resolved(brief)).Run());
        }
        catch (DesignRefusedException refused)
        {
            return Merit.Of(refused, brief is null ? 0 : TooLargeMm(brief));
        }
    }

    /// <summary>Where the land of an output would end, mm from the axis, if its ring were the innermost; without end where it cannot be built.</summary>
    public double InnermostMm(Candidate candidate, int output)
    {
        try
        {
            Brief brief = AnySize(BriefOf(candidate));
            IEnumerable<string> order = brief.Outputs.Select(o => o.Name).OrderByDescending(n => string.Equals(n, brief.Outputs[output].Name, StringComparison.Ordinal));
            WheelLayout wheel = Stages(brief with { Wheel = brief.Wheel with { SearchesRingOrder = false, RingOrder = [.. order] } }).WheelOnly().Wheel;
            return Math.Round(wheel.Rings[output].LandToMm ?? wheel.OuterDiameterMm, 6);
        }
        catch (DesignRefusedException)
        {
            return double.PositiveInfinity;
        }
    }

    /// <summary>The other wiper of the same land; null without one.</summary>
    public int? PartnerOf(int slot) => Enumerable.Range(0, Slots.Count).Where(i => i != slot && Slots[i].Output >= 0 && Slots[i].Output == Slots[slot].Output).Select(i => (int?)i).FirstOrDefault();

    /// <summary>The same designs with the rings in the order that is best for the stations of a candidate; null where that is the order they have, or where it goes with nothing or is given.</summary>
    public CandidateDesigns? InBestOrder(Candidate candidate)
    {
        if (!_asked.Wheel.SearchesRingOrder || _asked.Wheel.Construction != WheelConstruction.Lands)
        {
            return null;
        }

        IReadOnlyList<string>? best = Searching(candidate).RingOrder;
        return best is null || best.SequenceEqual(_brief.Wheel.RingOrder ?? [], StringComparer.Ordinal) ? null : new(this, best);
    }

    /// <summary>What the search of the order of rings told, for the stations of a candidate where it goes with them; nothing where the order is given.</summary>
    public IEnumerable<Finding> OrderNotes(Candidate candidate)
    {
        WheelLayout of = _asked.Wheel.SearchesRingOrder && _asked.Wheel.Construction == WheelConstruction.Lands ? Searching(candidate) : First;
        return of.Findings.Where(f => f.Code is "wheel.order-found");
    }

    private WheelLayout Searching(Candidate candidate) => Stages(AnySize(BriefOf(candidate) with { Wheel = _asked.Wheel })).WheelOnly().Wheel;

    private CandidateDesigns(CandidateDesigns like, IReadOnlyList<string> order)
    {
        Slots = like.Slots;
        Sense = like.Sense;
        (_asked, _builder, _memory, _exact, _first) = (like._asked, like._builder, like._memory, like._exact, like._first);
        _brief = like._brief with { Wheel = like._brief.Wheel with { RingOrder = order } };
    }

    // Stations and strips change neither times nor loads.
    private DesignStages Stages(Brief brief) => new(brief) { OnlyJudges = true, Memory = _memory, Exact = _exact };

    // On a wheel of lands a given diameter may be too small for the stations that are tried first, and right for others.
    private static Brief AnySize(Brief brief) => brief.Wheel.Construction == WheelConstruction.Lands ? brief with { Wheel = brief.Wheel with { OuterDiameterMm = null } } : brief;

    // How much larger a refused wheel would have to be than it may be: what leads a search to one that can be built.
    private double TooLargeMm(Brief brief)
    {
        if (brief.Wheel.OuterDiameterMm is not double asked || brief.Wheel.Construction != WheelConstruction.Lands)
        {
            return 0;
        }

        try
        {
            return Math.Max(0, Math.Round(Stages(AnySize(brief)).WheelOnly().Wheel.OuterDiameterMm - asked, 6));
        }
        catch (DesignRefusedException)
        {
            return asked;
        }
    }

    private Brief WithStrips(Brief brief, Func<int, WiperSlot, StripBrief> strip)
    {
        StripBrief[] strips = [.. brief.Strips];
        for (int i = 0; i < Slots.Count; i++)
        {
            if (Slots[i].Free.Any)
            {
                strips[Slots[i].Strip] = strip(i, Slots[i]);
            }
        }

        return brief with { Strips = strips };
    }

    private StripBrief Placed(WiperSlot slot, int approachDeg)
    {
        StripBrief asked = _brief.Strips[slot.Strip];
        double approach = asked.ApproachRad ?? Angles.RadFromDeg(approachDeg);
        return slot.Free.Shape ? _builder!.Placeholder(slot.Strip, Angles.DegFromRad(approach)) : asked with { ApproachRad = approach, DeflectionMm = asked.DeflectionMm ?? (slot.Free.Deflection ? 1.5 : null), Left = default };
    }

    private StripBrief Built(WiperSlot slot, int approachDeg, (WheelLayout Wheel, CopperClearances Clearances) stage)
    {
        StripBrief asked = _brief.Strips[slot.Strip];
        double approach = asked.ApproachRad is double given ? Angles.DegFromRad(given) : approachDeg;
        RingLayout ring = slot.Ring(stage.Wheel);
        if (!slot.Free.Shape)
        {
            StripBrief kept = asked with { ApproachRad = Angles.RadFromDeg(approach), Left = default };
            return slot.Free.Deflection ? _builder!.Pressing(kept, slot.Strip) : kept;
        }

        string net = slot.IsReturn ? ring.Return!.Net : ring.Net;
        double play = slot.Output < 0 ? _brief.Feed!.SidePlayMm : _brief.Outputs[slot.Output].SidePlayMm;
        double keeps = stage.Clearances.ToWheelMm(net) + (_brief.Wheel.RunOutMm / 2) + (2 * _brief.Process.ToleranceMm) + play + (ring.TravelMm / 2) + _brief.Housing.ToleranceMm + RiserAirMm;
        double outer = Math.Max(stage.Wheel.OuterDiameterMm, _brief.Carrier.DiameterMm ?? 0) / 2;
        return _builder!.Build(slot.Strip, StripSite.Of(ring.RadiusMm, outer + keeps, approach, _brief.StripRecipe!.Foot.WidthMm));
    }
}
