namespace WheelDraft.Engineering;

/// <summary>Sets out a windowed wheel.</summary>
internal sealed class WindowedSetter(WheelTask task)
{
    // What a window keeps beyond the patch path where no rule asks for a distance, mm (methods: windowed wheel).
    private const double PlainGapMm = 0.2;

    private readonly Brief _brief = task.Brief;
    private readonly RingShop _shop = RingShop.Of(task);

    public WheelLayout Set()
    {
        HubLayout hub = HubLayout.Of(_brief, _brief.Wheel.WebMm);
        RingDemand feed = FeedDemand();
        bool copied = CopiedWheel.IsOne(_brief);
        IReadOnlyList<RingDemand> rings = [.. _brief.Outputs.Select((o, i) => Demand(o, i))];
        rings = copied ? new CopiedWheel(_brief, _shop, hub).Narrowed(feed, rings) : rings;
        RingPacking packing = new(_shop, new WindowedRings(_shop, _brief.Wheel, copied), hub.Band, hub.Kept) { AskedOrder = _brief.Wheel.RingOrder, SearchesOrder = _brief.Wheel.SearchesRingOrder };
        PackedWheel packed = packing.Pack(feed, rings, _brief.Wheel.OuterDiameterMm);
        StationSpread stations = StationSpread.Of(_brief, packed);
        RingLayout feedRing = Layout(packed.Feed!, _brief.Feed!.Net, stations.StationsRad[0], packed) with { IsFeed = true };
        List<RingLayout> layouts = [.. packed.Rings.Select((r, i) => Layout(r, _brief.Outputs[i].Net, stations.StationsRad[i + 1], packed))];
        WheelCopper copper = new(_brief, _shop, packed, hub);
        return new WheelLayout
        {
            OuterDiameterMm = 2 * packed.OuterRadiusMm,
            WebMm = packed.WebMm,
            Feed = feedRing,
            Rings = layouts,
            Copper = [new(ItemNames.Wheel, _brief.Feed.Net, copper.Build([feedRing, .. layouts]))],
            Carrier = hub.Carrier(_brief.Carrier.DiameterMm / 2 ?? packed.OuterRadiusMm, _brief.Wheel.Fixings),
            Bore = hub.Bore,
            Fixings = hub.Fixings,
            PitchCircleMm = hub.PitchCircleMm,
            RingOrder = packed.Order?.Names,
            Findings = [.. packed.Misses, .. WheelFindings.Of(_brief, packed, layouts, stations), .. WheelFindings.OfOrder(_brief, packed)],
        };
    }

    private RingDemand FeedDemand() => new()
    {
        Name = _brief.Feed!.Net,
        Where = _brief.PlaceOf("feed"),
        Patch = task.Contacts.Feed!,
        Periods = [],
        SidePlayMm = _brief.Feed.SidePlayMm,
        AskedRadiusMm = _brief.Feed.RadiusMm,
    };

    private RingDemand Demand(OutputBrief output, int index)
    {
        OutputProgramme programme = task.Programme.Outputs[index];
        ContactPatch patch = task.Contacts.Outputs[index];
        ContactPatch forEdges = patch.OverStep(_brief.Carrier.StepMm);
        double play = (_brief.Wheel.RunOutMm / 2) + _brief.Process.ToleranceMm + output.SidePlayMm;
        (double worn, string why) = SideGap(task.Rules[index], forEdges, play);
        return new RingDemand
        {
            Name = output.Name,
            Where = _brief.PlaceOf(FormattableString.Invariant($"output[{index}]")),
            Patch = forEdges,
            Periods = programme.Periods,
            SidePlayMm = output.SidePlayMm,
            AskedRadiusMm = output.RadiusMm,
            ToleranceS = output.ToleranceS,
            Adjust = output.Adjust,
            SideGapMm = worn + forEdges.SidewaysWearMm,
            WornSideGapMm = worn,
            CurvedRule = forEdges.Section is null || task.Rules[index].IsNone ? null : task.Rules[index],
            SideGapWhy = why,
        };
    }

    /// <summary>How far windows reach beyond the path of the worn patch: what is required, and play, so that a worn contact keeps
    /// what is required too.</summary>
    private (double GapMm, string Why) SideGap(OpenContactRule rule, ContactPatch patch, double playMm)
    {
        double required = rule.SidewaysMm(patch);
        string worn = patch.WearMm <= 0 ? "" : patch.IsDisc
            ? $", and {Wording.Mm(patch.WearMm)} by which the contact grows sideways as it wears"
            : $", and what its corners reach further out as it wears{(patch.SidewaysWearMm > 0 ? $", {Wording.Mm(patch.SidewaysWearMm)} and a little" : "")}";
        string why = rule.IsNone
            ? $"no separation asked of its open contact{worn}"
            : $"{Wording.Mm(required)} required of its open contact{(required > rule.RequiredMm ? $", more than the rule because the nose is {(patch.IsDisc ? "a dome" : "round across its turned fold")}" : "")}, and {Wording.Mm(playMm)} of play and tolerance{worn}";
        double gap = playMm + (rule.IsNone ? PlainGapMm : required);
        double corner = CopiedWheel.LeastSideGapMm(_brief.Process, playMm);
        return gap >= corner ? (gap, why) : (corner, $"the inside radius of the window's corners, and {Wording.Mm(playMm)} of play and tolerance{worn}");
    }

    private RingLayout Layout(PackedRing packed, string net, double stationRad, PackedWheel wheel)
    {
        RingDemand ring = packed.Ring;
        RingTrial trial = packed.Trial;
        RingAccount account = new(_shop, ring, trial.RadiusMm);
        bool open = !_brief.Wheel.Rim && !ring.IsWhole && trial.BandToMm >= wheel.All.Max(r => r.Trial.BandToMm);
        return new RingLayout
        {
            Name = ring.Name,
            Net = net,
            WheelNet = _brief.Feed!.Net,
            RadiusMm = trial.RadiusMm,
            StationRad = stationRad,
            Patch = ring.Patch,
            TravelMm = ring.TravelMm,
            SidePlayMm = ring.SidePlayMm,
            PathFromMm = ring.PathFromMm(trial.RadiusMm),
            PathToMm = ring.PathToMm(trial.RadiusMm),
            SideGapMm = ring.IsWhole ? null : ring.SideGapMm,
            WindowFromMm = ring.IsWhole ? null : trial.BandFromMm,
            WindowToMm = ring.IsWhole ? null : open ? wheel.OuterRadiusMm : trial.BandToMm,
            Periods = [.. ring.Periods.Select((_, i) => new StationFrame(stationRad, task.Motion).Period(ring, trial, account, i))],
            Adjust = ring.Adjust is null ? null : AdjustFigures.Of(_shop, ring, trial),
            Why = packed.Why,
        };
    }
}
