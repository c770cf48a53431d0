namespace WheelDraft.Engineering;

/// <summary>A narrow place of the wheel's copper through which current flows.</summary>
/// <param name="Where">What it is, in words.</param>
/// <param name="CurrentA">The most that flows through it, A.</param>
/// <param name="WidthMm">Its width as it is at worst, mm.</param>
/// <param name="LengthMm">How far the current runs along it, mm.</param>
internal sealed record CopperSection(string Where, double CurrentA, double WidthMm, double LengthMm)
{
    /// <summary>The narrow places of a wheel, from the inside out.</summary>
    /// <remarks>On the safe side: all current takes the narrowest spoke, and one way round half of each web.</remarks>
    public static IReadOnlyList<CopperSection> Of(Brief brief, WheelLayout wheel, CircuitCurrents currents)
    {
        CutLoad cut = new(brief.Process.ToleranceMm, [.. currents.Contacts.Select(c => c.CarriedA)]);
        return wheel.Feed is RingLayout feed ? Windowed(cut, wheel, feed, currents.Feed?.CarriedA ?? double.PositiveInfinity) : Lands(cut, wheel);
    }

    private sealed record CutLoad(double ToleranceMm, IReadOnlyList<double> CarriedA)
    {
        public CopperSection Section(string where, double currentA, double widthMm, double lengthMm) =>
            new(where, currentA, Math.Max(0, widthMm - (2 * ToleranceMm)), lengthMm);
    }

    private static List<CopperSection> Lands(CutLoad cut, WheelLayout wheel) =>
        [.. wheel.Rings.Select((r, i) => (Ring: r, Index: i)).Where(r => r.Ring is { LandFromMm: not null, LandToMm: not null })
            .Select(r => cut.Section($"the land of '{r.Ring.Name}'", cut.CarriedA[r.Index], r.Ring.LandToMm!.Value - r.Ring.LandFromMm!.Value, Math.PI * r.Ring.RadiusMm))];

    private static List<CopperSection> Windowed(CutLoad cut, WheelLayout wheel, RingLayout feed, double feedA)
    {
        List<CopperSection> sections = [];
        double Beyond(double fromMm, bool outward) => Math.Min(feedA, wheel.Rings.Select((r, i) => (r.RadiusMm, A: cut.CarriedA[i])).Where(r => outward ? r.RadiusMm >= fromMm : r.RadiusMm <= fromMm).Sum(r => r.A));

        RingLayout[] cutRings = [.. wheel.Rings.Where(r => r.WindowFromMm is not null).OrderBy(r => r.RadiusMm)];
        for (int i = 0; i < cutRings.Length; i++)
        {
            RingLayout ring = cutRings[i];
            bool outward = ring.RadiusMm > feed.RadiusMm;
            double all = Beyond(ring.RadiusMm, outward);
            sections.Add(cut.Section($"the narrowest spoke of ring '{ring.Name}'", all, Spokes.NarrowestMm(ring), ring.WindowToMm!.Value - ring.WindowFromMm!.Value));

            // The web on the feed's side carries what goes on to this ring and those behind it; beside the feed its own ring is part of it.
            RingLayout? before = outward ? cutRings[..i].LastOrDefault(r => r.RadiusMm > feed.RadiusMm) : cutRings[(i + 1)..].FirstOrDefault(r => r.RadiusMm < feed.RadiusMm);
            if (before is not null)
            {
                (RingLayout inner, RingLayout outer) = outward ? (before, ring) : (ring, before);
                double middle = (inner.WindowToMm!.Value + outer.WindowFromMm!.Value) / 2;
                sections.Add(cut.Section($"the web between rings '{inner.Name}' and '{outer.Name}'", all, outer.WindowFromMm.Value - inner.WindowToMm.Value, Math.PI * middle));
            }
        }

        return sections;
    }
}
