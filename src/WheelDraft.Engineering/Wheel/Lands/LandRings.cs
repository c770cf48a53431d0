namespace WheelDraft.Engineering;

/// <summary>The rings of a lands wheel: bands of lands with bare carrier between them.</summary>
/// <param name="shop">What all rings share.</param>
/// <param name="distances">What lands keep.</param>
/// <param name="edgeMm">Carrier that stays beyond the last land, and between holes.</param>
internal sealed class LandRings(RingShop shop, LandDistances distances, double edgeMm) : RingConstruction
{
    /// <summary>Both bands turn together, so that only the cutter counts, on both edges.</summary>
    public override double ApartMm => distances.LiveMm + (2 * shop.Process.ToleranceMm);

    public override string Between => "carrier";

    public override bool IsWebJudgedElsewhere => true;

    public override string ApartAsked => "the distance needed, both cut edges counted, is";

    public override RingTrial At(RingDemand ring, double radiusMm) => new LandSetter(shop, ring).At(radiusMm);

    public override double ReachMm(RingDemand ring) => LandSetter.ReachMm(shop, ring);

    public override double LeastCutMm(double neededMm) => Math.Min(neededMm, shop.Process.LeastSlotMm);

    public override double BeyondLastMm(double apartMm) => edgeMm + (apartMm - ApartMm);

    public override double OuterRadiusMm(IReadOnlyList<PackedRing> placed, double outermostMm, double apartMm, double hubMm) =>
        outermostMm + BeyondLastMm(apartMm);

    public override string Beside(double apartMm, RingDemand ring) => $"{Wording.Mm(apartMm)} of carrier apart";

    /// <summary>The hub as the innermost land sees it: bore, shaft and fixings, whichever asks for most.</summary>
    public (HubBand Band, IReadOnlyList<KeptBand> Kept) Hub(HubLayout hub, WheelBrief wheel)
    {
        double cutter = shop.Process.ToleranceMm;
        double toFixing = distances.FixingMm + cutter;
        bool inHub = wheel.Fixings is { PitchCircleMm: null };
        List<(string Name, double OuterMm, double KeepMm)> all = [("the bore", wheel.Bore.DiameterMm / 2, edgeMm)];
        if (distances.ShaftMm is double shaft)
        {
            all.Add(("the shaft", wheel.ShaftDiameterMm!.Value / 2, shaft + cutter + (shop.RunOutMm / 2)));
        }

        if (inHub)
        {
            all.Add(("the fixings", hub.Band.OuterRadiusMm, toFixing));
        }

        (string name, double outer, double keep) = all.MaxBy(h => h.OuterMm + h.KeepMm);
        HubBand band = new(name, outer, hub.Band.WhereDiameter) { MoreMm = keep - ApartMm };
        return (band, [.. hub.Kept.Select(k => k with { MoreMm = toFixing - ApartMm })]);
    }
}
