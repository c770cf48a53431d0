namespace WheelDraft.Engineering;

/// <summary>What the person should know about a layout although it can be cut.</summary>
internal static class WheelFindings
{
    public static IEnumerable<Finding> Of(Brief brief, PackedWheel packed, IReadOnlyList<RingLayout> rings, StationSpread stations)
    {
        foreach ((RingLayout ring, int index) in rings.Select((r, i) => (r, i)))
        {
            if (Spoke(brief, packed, rings, index) is Finding spoke)
            {
                yield return spoke;
            }

            foreach (Finding upright in Nose(brief, ring, index))
            {
                yield return upright;
            }
        }

        foreach (Finding common in Common(brief, stations))
        {
            yield return common;
        }
    }

    /// <summary>What came of the search for an order of rings; nothing where none was asked for.</summary>
    public static IEnumerable<Finding> OfOrder(Brief brief, PackedWheel packed)
    {
        if (packed.Order is not OrderFound found)
        {
            yield break;
        }

        string usual = found.UsualMm is not double width ? "the usual order cannot be built"
            : width <= found.DiameterMm + OrderFound.SameMm ? "the usual order"
            : $"the usual order would take {Wording.Mm(width)}";
        string proof = found.IsProved && brief.Feed is null ? "proved the smallest wheel of all orders with its wipers at these stations, each either tried or ruled out by a bound"
            : found.IsProved ? "proved the smallest wheel of all orders, each either tried or ruled out by a bound; nothing else, strips least of all, was looked at for it"
            : $"the smallest that was found; no order gives less than {Wording.Mm(Math.Floor(found.LeastMm * 1000) / 1000)}";
        yield return Finding.Note("wheel.order-found", $"Rings from the inside: {string.Join(", ", found.Names)} ({usual}): a wheel of {Wording.Mm(found.DiameterMm)}, {proof}.", brief.PlaceOf("wheel.order"));
    }

    // A spoke at least as wide as its ring's radius holds what lies outside it as a sheet does (common practice, no source).
    private static Finding? Spoke(Brief brief, PackedWheel packed, IReadOnlyList<RingLayout> rings, int index)
    {
        RingLayout ring = rings[index];
        if (ring.Periods.Count != 1 || ring.WindowToMm is not double from || from >= packed.OuterRadiusMm)
        {
            return null;
        }

        double width = Spokes.NarrowestMm(ring) - (2 * brief.Process.ToleranceMm);
        if (width >= ring.RadiusMm || IsFixedBeyond(brief, from))
        {
            return null;
        }

        double to = rings.Where(r => r.WindowFromMm >= from).Min(r => r.WindowFromMm) ?? packed.OuterRadiusMm;
        return Finding.Warning(
            "wheel.spoke",
            $"The copper outside ring '{ring.Name}' hangs by a single spoke {Wording.Mm(width)} wide at worst, less than the ring's radius of {Wording.Mm(ring.RadiusMm)} (common practice, no source), and bends out of true. "
                + $"Fix it to the carrier by itself: let into it and glued, or by two or more flush rivets on a circle of {Wording.Mm(from + to)} in diameter, where the copper between windows is {Wording.Mm(to - from)} wide"
                + (to - from < LeastRivetMm(brief) ? $", too narrow for rivets, which take {Wording.Mm(LeastRivetMm(brief))}: a wider [wheel] web, or a larger outer_diameter, makes room" : "")
                + ". [wheel] fixings takes further circles as more.",
            brief.PlaceOf(FormattableString.Invariant($"output[{index}]")));
    }

    // A rivet's hole, no smaller than the process can cut nor than rivets come, and the least copper beside it.
    private static double LeastRivetMm(Brief brief)
    {
        const double smallestRivetMm = 1; // common practice, no source
        return Math.Max(smallestRivetMm, brief.Process.LeastHoleMm) + (2 * brief.Process.LeastWebMm);
    }

    private static bool IsFixedBeyond(Brief brief, double radiusMm) =>
        brief.Wheel.Fixings is FixingsBrief fixings
        && ((fixings is { Count: > 1, PitchCircleMm: double circle } && circle / 2 > radiusMm) || fixings.More.Any(c => c.Count > 1 && c.PitchCircleMm / 2 > radiusMm));

    /// <summary>That a contact's nose is not known.</summary>
    public static IEnumerable<Finding> Nose(Brief brief, RingLayout ring, int index)
    {
        if (ring.Patch.NoseRadiusMm is null || ring.Return is { Patch.NoseRadiusMm: null })
        {
            yield return Finding.Note(
                "wheel.nose",
                $"The contact of '{ring.Name}' is taken as an upright nose on its patch: give a strip or nose_radius for its true section.",
                brief.PlaceOf(FormattableString.Invariant($"output[{index}]")));
        }
    }

    /// <summary>What goes for every construction.</summary>
    public static IEnumerable<Finding> Common(Brief brief, StationSpread stations)
    {
        foreach (string moved in stations.Spread)
        {
            yield return Finding.Note("wheel.stations", moved, null);
        }

        if (MaterialTable.Find(brief.Wheel.Material).Found is null)
        {
            yield return Finding.Warning(
                "wheel.material",
                $"The wheel's material \"{brief.Wheel.Material}\" is not in the list, so that its values are not known: for the resistance, softening and warmth of its contacts and its copper the worst of the list stands, and whether it bears bending, wear and cutting is not judged. The list: {string.Join(", ", MaterialTable.All.Select(m => m.Alloy).Distinct(StringComparer.Ordinal))}, each with its temper.",
                brief.PlaceOf("wheel.material"));
        }

        if (brief.Wheel.Fixings is { GivenHeadMm: null } fixings)
        {
            yield return Finding.Note(
                "wheel.heads",
                $"Heads and nuts of the fixings are taken as {Wording.Mm(fixings.HeadMm)} across, twice their holes (common practice, no source); give head what yours measure.",
                brief.PlaceOf("wheel.fixings"));
        }

        if (brief.Wheel.Bore.FlatMm is not null && brief.Process.InsideRadiusMm > 0)
        {
            yield return Finding.Note(
                "wheel.bore",
                $"The corners of the bore's flat carry the process's inside radius of {Wording.Mm(brief.Process.InsideRadiusMm)}; a shaft with sharp corners needs them filed.",
                brief.PlaceOf("wheel.bore"));
        }
    }
}
