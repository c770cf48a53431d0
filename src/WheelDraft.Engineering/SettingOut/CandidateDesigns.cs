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

    private readonly Brief _brief;
    private readonly StripBuilder? _builder;
    private readonly (WheelLayout Wheel, CopperClearances Clearances) _first;

    /// <summary>For a brief.</summary>
    /// <param name="brief">The brief; its order of rings is searched for where it asks for that.</param>
    /// <exception cref="DesignRefusedException">Its wheel cannot be built, whatever is chosen.</exception>
    public CandidateDesigns(Brief brief)
    {
        Slots = WiperSlot.Of(brief);
        _brief = brief;
        _builder = brief.StripRecipe is StripsBrief recipe ? new(brief, recipe) : null;
        Sense = brief.Drive.Direction == Turning.Clockwise ? 1 : -1;
        _first = new DesignStages(WithStrips(brief, (_, slot) => Placed(slot, Sense * FirstApproachDeg))).WheelOnly();

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
            (WheelLayout wheel, CopperClearances clearances) = new DesignStages(brief).WheelOnly();
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
        try
        {
            return Merit.Of(Design.Of(BriefOf(candidate)));
        }
        catch (DesignRefusedException refused)
        {
            return Merit.Of(refused);
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
        return _builder!.Build(slot.Strip, new(Math.Round(ring.RadiusMm, 6), Math.Round(outer + keeps, 6), approach));
    }
}
