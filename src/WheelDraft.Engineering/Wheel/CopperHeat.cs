namespace WheelDraft.Engineering;

/// <summary>What currents do to the wheel: warmth of its copper, and contacts of wipers of which no strip is given.</summary>
/// <remarks>Steady state. The copper is warm all over from the loss in its narrow places, which leaves through its open face; each
/// narrow place is warmer still by J² ρ L² / (8 k), the middle of a neck without cooling of its own whose ends are at the same temperature
/// (H. S. Carslaw and J. C. Jaeger, Conduction of Heat in Solids, 1959, wires heated by electric current, from memory), its conductivity
/// by Wiedemann and Franz from its resistivity. Losses in contacts are left to the strips.</remarks>
internal sealed class CopperHeat(Brief brief, WheelLayout wheel, CircuitCurrents currents)
{
    // Still air on one face (common practice, no source), as for strips.
    private const double CoolingWPerMm2K = 10e-6;

    // Lorenz number, V²/K², and the temperature at which it is taken, K: that of the resistivity.
    private const double LorenzV2PerK2 = 2.45e-8;
    private const double RoomK = 293;

    // The file does not say what the carrier bears. What IEC 60335-1, Table 3 allows for wood stands for it (from memory); plastics for carriers bear more.
    private const double MostRiseK = 65;

    // Forces of bare copper alloy wipers (common practice, no source): up to 3 N at 16 A, 5 to 10 N from 25 A on.
    private const double UsualForceN = 3;
    private const double MostForceN = 10;

    private readonly Material? _copper = MaterialTable.Find(brief.Wheel.Material).Found;

    private double RhoOhmMm => (_copper?.ResistivityNanoOhmM.Value ?? MaterialTable.All.Max(m => m.ResistivityNanoOhmM.Value)) * 1e-6;

    /// <summary>What misses.</summary>
    public static IEnumerable<Finding> Findings(Brief brief, WheelLayout wheel, CircuitCurrents currents) =>
        !brief.FeedsAnything ? [] : new CopperHeat(brief, wheel, currents).All();

    private IEnumerable<Finding> All() => [.. Copper(), .. Contacts()];

    private IEnumerable<Finding> Copper()
    {
        IReadOnlyList<CopperSection> sections = CopperSection.Of(brief, wheel, currents);
        if (sections.Count == 0 || sections.Any(s => !double.IsFinite(s.CurrentA)))
        {
            yield break;
        }

        (CopperSection worst, double rise) = Warmest(sections);
        if (!(rise <= MostRiseK))
        {
            string by = rise > StripElectrics.MostRiseK || !double.IsFinite(rise) ? FormattableString.Invariant($"more than {StripElectrics.MostRiseK} K, at which no figure can be relied on") : Wording.Number(rise, 0) + " K";
            yield return Finding.Error(
                "wheel.heat",
                $"At {Wording.Number(worst.CurrentA, 3)} A through {worst.Where}, {Wording.Mm(worst.WidthMm)} wide at worst and {Wording.Mm(brief.Wheel.ThicknessMm)} thick, the wheel's copper may warm by {by}; {Wording.Number(MostRiseK, 0)} K are taken as what a carrier bears "
                    + "(IEC 60335-1 Table 3 for wood, from memory; the file does not say what yours bears). Thicker copper, a wider web, longer on-periods, or relays for the loads keep it cooler.",
                brief.PlaceOf("wheel.thickness"));
        }
    }

    /// <summary>The warmest narrow place and its rise, K.</summary>
    internal (CopperSection Worst, double RiseK) Warmest(IReadOnlyList<CopperSection> sections)
    {
        double t = brief.Wheel.ThicknessMm;
        double face = wheel.Copper.Sum(c => c.Outline.AreaMm2);
        double loss = sections.Sum(s => s.CurrentA == 0 ? 0 : s.CurrentA * s.CurrentA * RhoOhmMm * s.LengthMm / (s.WidthMm * t));
        CopperSection worst = sections.MaxBy(NeckK)!;
        return (worst, (loss / (CoolingWPerMm2K * face)) + NeckK(worst));

        double NeckK(CopperSection s)
        {
            double density = s.CurrentA == 0 ? 0 : s.CurrentA / (s.WidthMm * t);
            double along = density * RhoOhmMm * s.LengthMm;
            return along * along / (8 * LorenzV2PerK2 * RoomK);
        }
    }

    private IEnumerable<Finding> Contacts()
    {
        for (int i = 0; i < wheel.Rings.Count; i++)
        {
            if (!HasStrip(wheel.Rings[i].Name) && Contact($"the contact of '{wheel.Rings[i].Name}'", wheel.Rings[i].Patch, currents.Contacts[i].CarriedA, FormattableString.Invariant($"output[{i}]")) is Finding found)
            {
                yield return found;
            }
        }

        if (wheel.Feed is RingLayout feed && currents.Feed is ContactCurrent fed && !brief.Strips.Any(s => s.Task is ServesFeed) && Contact("the feed's contact", feed.Patch, fed.CarriedA, "feed") is Finding ofFeed)
        {
            yield return ofFeed;
        }
    }

    private static double AreaMm2(ContactPatch patch) => patch.IsDisc ? Math.PI * patch.HalfLengthMm * patch.HalfLengthMm : 4 * patch.HalfLengthMm * patch.HalfWidthMm;

    private bool HasStrip(string output) => brief.Strips.Any(s => s.Task is ServesOutput serves && string.Equals(serves.Output, output, StringComparison.OrdinalIgnoreCase));

    // Without a strip the force is not known: how much is needed follows from the current, and that is judged by practice and by the patch.
    private Finding? Contact(string what, ContactPatch patch, double currentA, string key)
    {
        if (!double.IsFinite(currentA) || currentA == 0)
        {
            return null;
        }

        Material with = _copper ?? MaterialTable.All.MaxBy(m => m.ResistivityNanoOhmM.Value)!;
        double atOneN = StripElectrics.ConstrictionOhmOf(with, _copper, 1);
        MaterialValue soft = StripElectrics.Softest(with, _copper);
        double needed = Math.Pow(StripElectrics.FilmFactor * atOneN * currentA / soft.Value, 2);
        string ask = $"At {Wording.Number(currentA, 3)} A {what}, of which no strip is given, stays below its softening voltage of {Wording.Number(soft.Value * 1000, 0)} mV ({soft.SourceInWords}) with films only from {Wording.Number(needed, 1)} N on, copper against copper of one kind";
        double spotMm2 = needed / with.HardnessMpa.Value;
        return needed > MostForceN || spotMm2 > AreaMm2(patch)
            ? Finding.Error("wheel.softening", $"{ask}: more than a wiper presses ({Wording.Number(MostForceN, 0)} N, common practice, no source){(spotMm2 > AreaMm2(patch) ? ", and more spot than its patch has" : "")}. It would sink in and weld; let a relay carry the load.", brief.PlaceOf(key))
            : needed > UsualForceN ? Finding.Warning("wheel.softening", $"{ask}: more than the {Wording.Number(UsualForceN, 0)} N that are usual (common practice, no source). Give it a strip, so that its force is judged, or let a relay carry the load.", brief.PlaceOf(key))
            : null;
    }
}
