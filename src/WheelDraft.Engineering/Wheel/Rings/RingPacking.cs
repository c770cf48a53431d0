namespace WheelDraft.Engineering;

/// <summary>A ring in its place.</summary>
/// <param name="Ring">What it must do, with the side gap that it got.</param>
/// <param name="Trial">Where it is and how it is cut.</param>
/// <param name="Why">What holds it there, in words.</param>
internal sealed record PackedRing(RingDemand Ring, RingTrial Trial, string Why);

/// <summary>All rings in their places.</summary>
internal sealed record PackedWheel(PackedRing? Feed, IReadOnlyList<PackedRing> Rings, double OuterRadiusMm, double WebMm)
{
    /// <summary>The order that was searched for; null where it was not.</summary>
    public OrderFound? Order { get; init; }

    /// <summary>Distances that rings with a radius of their own do not keep.</summary>
    public IReadOnlyList<Finding> Misses { get; init; } = [];

    public IEnumerable<PackedRing> All => Feed is null ? Rings : Rings.Prepend(Feed);
}

/// <summary>Puts the rings of a wheel side by side, from the hub outwards, as close as every rule allows.</summary>
/// <remarks>Order: that of the file, or see <see cref="RingOrder"/>. Rings with a radius of their own stay where they are and the others
/// pass over them.</remarks>
internal sealed class RingPacking(RingShop shop, RingConstruction construction, HubBand hub, IReadOnlyList<KeptBand> kept)
{
    /// <summary>Names of all rings from the inside outwards as the file asks for them, those with a radius of their own among them; null for the usual order.</summary>
    public IReadOnlyList<string>? AskedOrder { get; init; }

    /// <summary>Whether the order is searched for that gives the smallest wheel.</summary>
    public bool SearchesOrder { get; init; }

    // No part is over a metre: a radius beyond half of that is refused.
    private const double MostRadiusMm = 500;

    // How closely a radius grown for a rule is found, mm: far below what is reported (1e-6), far above rounding.
    private const double RadiusResolutionMm = 1e-9;

    // Widening a window by what its corners lack settles in two or three rounds, and so does growing after it; more means that it never will.
    private const int MostWidenings = 50;

    /// <param name="feed">The feed ring; null for a wheel without one.</param>
    /// <param name="rings">The output rings in file order.</param>
    /// <param name="askedDiameterMm">Outer diameter; null for the smallest.</param>
    public PackedWheel Pack(RingDemand? feed, IReadOnlyList<RingDemand> rings, double? askedDiameterMm)
    {
        if (SearchesOrder && Best(feed, rings) is OrderFound found)
        {
            return new RingPacking(shop, construction, hub, kept) { AskedOrder = found.Names }.Pack(feed, rings, askedDiameterMm) with { Order = found };
        }

        PackedWheel smallest = Pack(feed, rings, construction.ApartMm);
        if (askedDiameterMm is not double asked)
        {
            return smallest.OuterRadiusMm <= MostRadiusMm ? smallest : throw TooLarge(smallest);
        }

        double outer = asked / 2;
        if (smallest.OuterRadiusMm > outer + RadiusResolutionMm)
        {
            throw new DesignRefusedException(
                "wheel.diameter",
                $"An outer diameter of {Wording.Mm(asked)} is {Wording.Mm(2 * (smallest.OuterRadiusMm - outer))} too small: the smallest wheel that meets every rule has {Wording.Mm(2 * smallest.OuterRadiusMm)}. {Binds(smallest)}",
                hub.WhereDiameter);
        }

        // The spare goes to the webs evenly: the widest web with which everything still fits.
        double spare = RootFinding.LeastWhere(
            extra => !Fits(feed, rings, construction.ApartMm + extra, outer), 0, outer, RadiusResolutionMm) - RadiusResolutionMm;
        return Pack(feed, rings, construction.ApartMm + Math.Max(0, spare)) with { OuterRadiusMm = outer };
    }

    /// <summary>The order of all rings in which the smallest wheel results; null where none can be built, so that the usual one says why.</summary>
    private OrderFound? Best(RingDemand? feed, IReadOnlyList<RingDemand> rings)
    {
        double web = construction.ApartMm;
        List<PackedRing> stay = [.. RingOrder.All(feed, rings).Where(r => r.AskedRadiusMm is not null).Select(r => new PackedRing(r, Settle(r, r.AskedRadiusMm!.Value, out _), ""))];
        List<KeptBand> bands = [.. kept, .. stay.Select(s => new KeptBand(s.Ring.Name, s.Trial.BandFromMm, s.Trial.BandToMm, s.Ring.Where))];
        OrderSearch search = new(construction, web, hub.OuterRadiusMm + hub.MoreMm)
        {
            Place = (ring, from) => Place(ring, from, web, bands, "", []),
            OuterRadiusMm = placed => OuterRadius([.. stay, .. placed], bands, web),
        };
        if (search.Find([.. RingOrder.Usual(shop, feed, rings)]) is not OrderFound found)
        {
            return null;
        }

        // Rings with a radius of their own stand among the others where they are.
        IEnumerable<(RingDemand Ring, double AtMm)> all = found.Places.Concat(stay.Select(s => (s.Ring, s.Trial.RadiusMm)));
        return found with { Names = [.. all.OrderBy(p => p.AtMm).Select(p => ReferenceEquals(p.Ring, feed) ? FeedBrief.NameInOrder : p.Ring.Name)] };
    }

    // One line a ring, from the shaft outwards.
    private static string Binds(PackedWheel wheel) =>
        "What holds the rings:" + string.Concat(wheel.All.OrderBy(r => r.Trial.RadiusMm)
            .Select(r => $"\n  {(ReferenceEquals(r, wheel.Feed) ? "the feed" : $"'{r.Ring.Name}'")} on a radius of {Wording.Mm(r.Trial.RadiusMm)}: {r.Why}"));

    private DesignRefusedException TooLarge(PackedWheel wheel) => new(
        "wheel.diameter",
        $"The smallest wheel that meets every rule has a diameter of {Wording.Mm(2 * wheel.OuterRadiusMm)}, and no part is over {Wording.Mm(2 * MostRadiusMm)}. A smaller [wheel] web, smaller distances or wider tolerances bring the rings in. {Binds(wheel)}",
        hub.WhereDiameter);

    private bool Fits(RingDemand? feed, IReadOnlyList<RingDemand> rings, double webMm, double outerMm)
    {
        try
        {
            return Pack(feed, rings, webMm).OuterRadiusMm <= outerMm;
        }
        catch (DesignRefusedException)
        {
            return false; // a web this wide finds no place between rings that stay where they are
        }
    }

    private PackedWheel Pack(RingDemand? feed, IReadOnlyList<RingDemand> rings, double webMm)
    {
        List<Finding> reasons = [];
        List<Finding> misses = [];
        Dictionary<RingDemand, PackedRing> placed = new(ReferenceEqualityComparer.Instance);
        List<KeptBand> bands = [.. kept];
        foreach (RingDemand ring in RingOrder.All(feed, rings).Where(r => r.AskedRadiusMm is not null))
        {
            string name = ReferenceEquals(ring, feed) ? "the feed" : $"ring '{ring.Name}'";
            RingTrial trial = Settle(ring, ring.AskedRadiusMm!.Value, out RingDemand settled);
            if (trial.Fault is { } fault)
            {
                (construction.MissesInsteadOfRefusing(fault.Code) ? misses : reasons).Add(Finding.Error(fault.Code, Sentence(fault.Words + RingJudge.Alone(shop, settled, trial)) + WayOut(settled, trial), ring.Where));
            }

            if (trial.Miss is { } miss)
            {
                misses.Add(Missed(miss.Code, Sentence(miss.Words) + WayOut(settled, trial), ring.Where));
            }

            placed[ring] = new(settled, trial, "its own radius in the file");
            bands.Add(new(name, trial.BandFromMm, trial.BandToMm, ring.Where));
        }

        CheckKept(bands, reasons, misses);
        if (reasons.Count > 0)
        {
            throw new DesignRefusedException(reasons);
        }

        double bound = hub.OuterRadiusMm + hub.MoreMm;
        string behind = hub.Name;
        IReadOnlyList<RingDemand>? order = AskedOrder is null ? null : RingOrder.Of(AskedOrder, feed, rings);
        foreach (RingDemand ring in order ?? RingOrder.Usual(shop, feed, rings))
        {
            PackedRing? packed = placed.GetValueOrDefault(ring) ?? Place(ring, bound + webMm, webMm, bands, behind, reasons);
            if (packed is not null)
            {
                placed[ring] = packed;
                bound = Math.Max(bound, packed.Trial.BandToMm);
                behind = ReferenceEquals(ring, feed) ? "the feed" : $"'{ring.Name}'";
            }
        }

        reasons.AddRange(reasons.Count == 0 && order is not null ? RingOrder.Broken([.. order.Select(r => placed[r])], feed) : []);
        return reasons.Count == 0
            ? new(feed is null ? null : placed[feed], [.. rings.Select(r => placed[r])], OuterRadius([.. placed.Values], bands, webMm), webMm) { Misses = misses }
            : throw new DesignRefusedException(reasons);
    }

    private PackedRing? Place(RingDemand ring, double bandFromMm, double webMm, List<KeptBand> bands, string behind, List<Finding> reasons)
    {
        double from = bandFromMm;
        string why = $"beside {behind}, {construction.Beside(webMm, ring)}";
        while (true)
        {
            RingTrial trial = SettleBehind(ring, from, out RingDemand settled);
            // A ring that has grown may want a wider window for its corners, and with that a larger radius again.
            for (int round = 0; trial.Objection is { } fault; round++)
            {
                double grown = round < MostWidenings ? Grown(settled, trial.RadiusMm) : double.NaN;
                if (double.IsNaN(grown))
                {
                    reasons.Add(Hopeless(settled, trial));
                    return null;
                }

                why = $"no smaller radius meets its {Rule(Binding(settled, grown) ?? fault.Code)}";
                trial = Settle(settled, grown, out settled);
            }

            KeptBand? hit = bands.Where(b => b.FromMm < trial.BandToMm + webMm + b.MoreMm - RadiusResolutionMm && trial.BandFromMm < b.ToMm + webMm + b.MoreMm - RadiusResolutionMm)
                .OrderByDescending(b => b.ToMm).FirstOrDefault();
            if (hit is null)
            {
                return new(settled, trial, why);
            }

            from = hit.ToMm + webMm + hit.MoreMm;
            why = $"outside {hit.Name}, which stays where it is";
        }
    }

    /// <summary>Sets a ring with its band starting at a radius; where fillets ask for a wider window, the window grows inwards and out.</summary>
    private RingTrial SettleBehind(RingDemand ring, double bandFromMm, out RingDemand settled)
    {
        return Settled(ring, demand => demand.RadiusFromPath(bandFromMm + construction.ReachMm(demand)), out settled);
    }

    private RingTrial Settle(RingDemand ring, double radiusMm, out RingDemand settled) => Settled(ring, _ => radiusMm, out settled);

    private RingTrial Settled(RingDemand ring, Func<RingDemand, double> radiusMm, out RingDemand settled)
    {
        settled = ring;
        RingTrial trial = construction.At(settled, radiusMm(settled));
        for (int i = 0; i < MostWidenings; i++)
        {
            double more = construction.LackMm(settled, trial);
            if (more <= RadiusResolutionMm)
            {
                return trial;
            }

            settled = settled with { SideGapMm = settled.SideGapMm + more, SideGapWhy = construction.LackWhy(settled, trial) };
            trial = construction.At(settled, radiusMm(settled));
        }

        return trial with { Fault = new(SlopeWays.Code, () => "its sloped edge leaves no room for rounded corners beside the patch path, the less the larger the ring; ask for less range or more travel") };
    }

    private double Grown(RingDemand ring, double fromMm)
    {
        double low = fromMm;
        for (double high = Math.Max(fromMm * 1.05, fromMm + 0.5); ; high *= 1.25)
        {
            high = Math.Min(high, MostRadiusMm);
            if (construction.At(ring, high).Objection is null)
            {
                return RootFinding.LeastWhere(r => construction.At(ring, r).Objection is null, low, high, RadiusResolutionMm);
            }

            if (high >= MostRadiusMm)
            {
                return double.NaN;
            }

            low = high;
        }
    }

    private void CheckKept(List<KeptBand> bands, List<Finding> reasons, List<Finding> misses)
    {
        List<KeptBand> sorted = [.. bands.OrderBy(b => b.FromMm)];
        double bound = hub.OuterRadiusMm;
        string name = hub.Name;
        double? more = null;
        foreach (KeptBand band in sorted)
        {
            // The hub keeps its own distance from what comes next; between two bands the more careful one decides.
            double needed = construction.ApartMm + (more is double before ? Math.Max(before, band.MoreMm) : hub.MoreMm);
            double web = band.FromMm - bound;
            if (web < needed - RadiusResolutionMm)
            {
                bool cannotBeCut = web < construction.LeastCutMm(needed) - RadiusResolutionMm;
                string words = $"Between {name} and {band.Name} {(web > 0 ? $"{Wording.Mm(web)} of {construction.Between} stays" : $"no {construction.Between} stays (they overlap by {Wording.Mm(-web)})")}; {construction.ApartAsked} {Wording.Mm(needed)}. Move {band.Name} outward by {Wording.Mm(needed - web)} or leave its radius to 'auto'.";
                (cannotBeCut ? reasons : misses).Add(cannotBeCut || !construction.IsWebJudgedElsewhere ? Finding.Error("wheel.web", words, band.Where) : Missed("wheel.web", words, band.Where));
            }

            bound = Math.Max(bound, band.ToMm);
            name = band.Name;
            more = band.MoreMm;
        }
    }

    /// <summary>Distances between pieces of copper are judged, land by land, with all other spacing; those between wipers are judged here only.</summary>
    private static Finding Missed(string code, string words, TextPlace where) =>
        code is "wheel.wipers" ? Finding.Error(code, words, where) : Finding.Warning(code, words, where);

    private double OuterRadius(IReadOnlyList<PackedRing> rings, List<KeptBand> bands, double webMm)
    {
        double outermost = bands.Select(b => b.ToMm).Concat(rings.Select(r => r.Trial.BandToMm)).Max();
        return construction.OuterRadiusMm(rings, outermost, webMm, hub.OuterRadiusMm);
    }

    // What still speaks against a radius a little smaller: growing past one rule may bring in another, and the last one binds.
    private string? Binding(RingDemand ring, double grownMm) => construction.At(ring, grownMm - (2 * RadiusResolutionMm)).Objection?.Code;

    // A ring that no radius suits. Most rules ease as a ring grows, so the largest ring says how far off it is; a slope grows steeper.
    private Finding Hopeless(RingDemand ring, RingTrial here)
    {
        RingTrial largest = construction.At(ring, MostRadiusMm);
        RingObjection worst = largest.Objection ?? here.Objection!;
        if (here.Objection is { Code: SlopeWays.Code } steep)
        {
            return Finding.Error(steep.Code, Sentence(steep.Words) + SlopeWays.Of(construction, ring, here.RadiusMm), ring.Where);
        }

        if (worst.Code is SlopeWays.Code)
        {
            RingObjection own = here.Objection!;
            return Finding.Error(own.Code, $"{Sentence(own.Words + RingJudge.Alone(shop, ring, here))} A larger ring would do, but there the adjusting edge is too steep.{SlopeWays.Of(construction, ring, here.RadiusMm)}", ring.Where);
        }

        return Finding.Error(worst.Code, Sentence(worst.Words + RingJudge.Alone(shop, ring, largest)) + Impossible(ring), ring.Where);
    }

    private string WayOut(RingDemand ring, RingTrial trial)
    {
        if (trial.Objection is { Code: SlopeWays.Code })
        {
            return SlopeWays.Of(construction, ring, trial.RadiusMm);
        }

        double grown = Grown(ring, trial.RadiusMm);
        return double.IsNaN(grown) ? Impossible(ring) : $" A radius of {Wording.Mm(Math.Ceiling(grown * 100) / 100)} would do.";
    }

    private string Impossible(RingDemand ring)
    {
        double frequency = ring.Periods.Count == 0 ? 0 : ring.Periods.Max(p => shop.Motion.SecondsFromRad(p.SweepRad)) * shop.FrequencyShare;
        return ring.ToleranceS is double asked && frequency >= asked
            ? $" The supply frequency alone takes {Wording.Seconds(frequency)}: no ring and no cutter can meet this; ask for more than that."
            : $" No ring up to a radius of {Wording.Mm(MostRadiusMm)} meets it; ask for less, or choose a finer process.";
    }

    private static string Rule(string code) => code switch
    {
        "wheel.tolerance" => "tolerance",
        "wheel.on-time" => "shortest on-time",
        "wheel.off-time" => "shortest off-time",
        SlopeWays.Code => "adjusting range",
        "wheel.lands" => "distance between lands",
        "wheel.wipers" => "distance between its wipers",
        _ => "rules",
    };

    private static string Sentence(string words) => char.ToUpperInvariant(words[0]) + words[1..] + ".";
}

/// <summary>What lies inside all rings.</summary>
/// <param name="Name">The bore or the fixings, in words.</param>
/// <param name="OuterRadiusMm">How far it reaches.</param>
/// <param name="WhereDiameter">Where the outer diameter stands in the file.</param>
internal sealed record HubBand(string Name, double OuterRadiusMm, TextPlace WhereDiameter)
{
    /// <summary>How much more than the distance between rings it keeps from the first ring, mm; less when negative.</summary>
    public double MoreMm { get; init; }
}

/// <summary>A band of radii that stays where it is.</summary>
internal sealed record KeptBand(string Name, double FromMm, double ToMm, TextPlace Where)
{
    /// <summary>How much more than the distance between rings it keeps on both sides, mm; less when negative.</summary>
    public double MoreMm { get; init; }
}
