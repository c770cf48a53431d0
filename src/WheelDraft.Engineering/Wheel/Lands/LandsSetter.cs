namespace WheelDraft.Engineering;

/// <summary>Sets out a wheel of lands on a carrier.</summary>
internal sealed class LandsSetter(WheelTask task)
{
    private readonly Brief _brief = task.Brief;
    private readonly RingShop _shop = RingShop.Of(task);

    public WheelLayout Set()
    {
        LandRefusals.Check(_brief);
        LandDistances distances = LandDistances.Of(_brief, task.WorkingV);
        double edge = _brief.Wheel.WebMm > 0 ? _brief.Wheel.WebMm : _brief.Process.LeastWebMm;
        HubLayout hub = HubLayout.Of(_brief, edge);
        LandRings construction = new(_shop, distances, edge);
        (HubBand band, IReadOnlyList<KeptBand> kept) = construction.Hub(hub, _brief.Wheel);
        RingPacking packing = new(_shop, construction, band, kept) { AskedOrder = _brief.Wheel.RingOrder, SearchesOrder = _brief.Wheel.SearchesRingOrder };

        StationSpread stations = Stations(packing, distances);
        IReadOnlyList<RingDemand> rings = Demands(distances, i => (stations.StationsRad[i], stations.StationsRad[_brief.Outputs.Count + i]));
        PackedWheel packed = packing.Pack(feed: null, rings, _brief.Wheel.OuterDiameterMm);
        LandNames names = new(_brief);
        List<RingLayout> layouts = [.. packed.Rings.Select((r, i) => Layout(r, i, stations, names))];
        return new WheelLayout
        {
            OuterDiameterMm = 2 * packed.OuterRadiusMm,
            WebMm = packed.WebMm,
            Feed = null,
            Rings = layouts,
            Copper = [.. layouts.SelectMany(r => r.Lands.Select(l => new CopperPiece(l.Name, r.IsWhole ? r.Net : l.Name, l.Outline) { FloatsAtTimes = !r.IsWhole }))],
            Carrier = hub.Carrier(CarrierRadiusMm(packed), _brief.Wheel.Fixings),
            Bore = hub.Bore,
            Fixings = hub.Fixings,
            PitchCircleMm = hub.PitchCircleMm,
            RingOrder = packed.Order?.Names,
            Findings = [.. packed.Misses, .. LandFindings.Of(_brief, layouts, stations), .. WheelFindings.OfOrder(_brief, packed)],
        };
    }

    /// <summary>Stations first, because lands are as long as wipers stand apart: on rings packed roughly, where any is left open.</summary>
    private StationSpread Stations(RingPacking packing, LandDistances distances)
    {
        int count = _brief.Outputs.Count;
        (double OwnRad, double ReturnRad)[] first = [.. _brief.Outputs.Select((o, i) => LandStations.First(o, task.Programme.Outputs[i], i, count))];
        bool allAsked = _brief.Outputs.All(o => o.StationRad is not null && o.ReturnStationRad is not null);
        return allAsked
            ? new([.. first.Select(f => f.OwnRad), .. first.Select(f => f.ReturnRad)], [])
            : LandStations.Spread(_brief, task.Programme, packing.Pack(feed: null, Demands(distances, i => first[i]), askedDiameterMm: null));
    }

    private IReadOnlyList<RingDemand> Demands(LandDistances distances, Func<int, (double OwnRad, double ReturnRad)> stations) =>
        [.. _brief.Outputs.Select((o, i) => Demand(o, i, stations(i), distances))];

    private RingDemand Demand(OutputBrief output, int index, (double OwnRad, double ReturnRad) stations, LandDistances distances)
    {
        ContactPatch own = task.Contacts.Outputs[index].OverStep(_brief.Carrier.StepMm);
        ContactPatch other = task.Contacts.Returns[index].OverStep(_brief.Carrier.StepMm);
        OpenContactRule rule = task.Rules[index];

        // While the output is open one land may be on either wiper's net: both rules then hold between lands.
        double open = Math.Max(rule.AlongMm(own), rule.AlongMm(other));
        double required = Math.Max(distances.LiveMm, open);
        string why = open > distances.LiveMm
            ? $"{Wording.Mm(required)} required of its open contact"
            : $"{Wording.Mm(required)} required between live nets";
        return new RingDemand
        {
            Name = output.Name,
            Where = _brief.PlaceOf(FormattableString.Invariant($"output[{index}]")),
            Patch = own,
            Periods = task.Programme.Outputs[index].Periods,
            SidePlayMm = output.SidePlayMm,
            AskedRadiusMm = output.RadiusMm,
            ToleranceS = output.ToleranceS,
            Land = new(
                WiperPair.Of(new(own, stations.OwnRad), new(other, stations.ReturnRad), task.Motion),
                required + (2 * _brief.Process.ToleranceMm),
                required + (2 * output.SidePlayMm) + (2 * _shop.PlacingMm) + own.WearMm + other.WearMm,
                why),
        };
    }

    private RingLayout Layout(PackedRing packed, int index, StationSpread stations, LandNames names)
    {
        (RingDemand ring, RingTrial trial) = (packed.Ring, packed.Trial);
        OutputBrief output = _brief.Outputs[index];
        double station = stations.StationsRad[index];
        WiperPair pair = ring.Land!.Pair;
        RingAccount account = new(_shop, ring, trial.RadiusMm);
        StationFrame frame = new(station, task.Motion);
        return new RingLayout
        {
            Name = ring.Name,
            Net = output.Net,
            WheelNet = output.ReturnNet!,
            RadiusMm = trial.RadiusMm,
            StationRad = station,
            Patch = ring.Patch,
            TravelMm = 0,
            SidePlayMm = ring.SidePlayMm,
            PathFromMm = ring.PathFromMm(trial.RadiusMm),
            PathToMm = ring.PathToMm(trial.RadiusMm),
            LandFromMm = trial.BandFromMm,
            LandToMm = trial.BandToMm,
            Return = new(output.ReturnNet!, stations.StationsRad[_brief.Outputs.Count + index], pair.ReturnIsUpstream ? pair.Upstream : pair.Downstream)
            {
                ApartRad = pair.ApartRad,
                IsUpstream = pair.ReturnIsUpstream,
                PatchGapMm = pair.PatchGapMm(trial.RadiusMm),
            },
            Periods = [.. ring.Periods.Select((_, i) => frame.Period(ring, trial, account, i))],
            Lands = new LandShapes(pair, trial, frame).Build(i => names.Next(ring.Name, ring.Periods.Count, i)),
            Why = packed.Why,
        };
    }

    private double CarrierRadiusMm(PackedWheel packed)
    {
        double lands = packed.Rings.Max(r => r.Trial.BandToMm);
        if (_brief.Carrier.DiameterMm is not double asked)
        {
            return packed.OuterRadiusMm;
        }

        return asked / 2 >= lands ? asked / 2 : throw new DesignRefusedException(
            "wheel.carrier",
            $"A carrier of {Wording.Mm(asked)} does not bear the lands, which reach to a diameter of {Wording.Mm(2 * lands)}; at least {Wording.Mm(2 * packed.OuterRadiusMm)} leaves a margin beyond them.",
            _brief.PlaceOf("carrier.diameter"));
    }
}
