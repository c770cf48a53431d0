namespace WheelDraft.Engineering;

/// <summary>What the person should know about a layout although it can be cut.</summary>
internal static class WheelFindings
{
    public static IEnumerable<Finding> Of(Brief brief, PackedWheel packed, IReadOnlyList<RingLayout> rings, StationSpread stations)
    {
        foreach ((RingLayout ring, int index) in rings.Select((r, i) => (r, i)))
        {
            if (ring.Periods.Count == 1 && ring.WindowToMm < packed.OuterRadiusMm)
            {
                yield return Finding.Warning(
                    "wheel.spoke",
                    $"The copper outside ring '{ring.Name}' hangs by a single spoke, its on-period; every annulus must be fixed to the carrier by itself.",
                    brief.PlaceOf(FormattableString.Invariant($"output[{index}]")));
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
        if (brief.Places.ContainsKey("monte_carlo"))
        {
            yield return Finding.Note(
                "tolerance.draws",
                $"[monte_carlo] asks for {Wording.Number(brief.MonteCarlo.Draws, 0)} {(brief.MonteCarlo.Distribution == DrawDistribution.Uniform ? "uniform" : "normal")} draws from seed {Wording.Number(brief.MonteCarlo.Seed, 0)}, but no draws are made yet: "
                    + "limits are worst cases and the root of the sum of squares, and no share of draws within the tolerance is given.",
                brief.PlaceOf("monte_carlo"));
        }

        foreach (string moved in stations.Spread)
        {
            yield return Finding.Note("wheel.stations", moved, null);
        }

        if (MaterialTable.Find(brief.Wheel.Material).Found is null)
        {
            yield return Finding.Warning(
                "wheel.material",
                $"The wheel's material \"{brief.Wheel.Material}\" is not in the list, so that its values are not known: contact resistance, softening and wear of its rings are given as for {MaterialTable.All[0].Designation}, and are not judged for what it is.",
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
