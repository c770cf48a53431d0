using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Report;

/// <summary>A figure that can be asked "why", and the steps that led to it.</summary>
/// <param name="Name">What is asked: <c>arc mist</c>, <c>spacing L mist</c>.</param>
/// <param name="Steps">The steps, in order, a sentence each.</param>
internal sealed record WhyTopic(string Name, Func<IReadOnlyList<string>> Steps)
{
    /// <summary>The same asked the other way round, for topics of two nets; null for others.</summary>
    public string? AlsoNamed { get; init; }

    /// <summary>Whether somebody asked for this one; letters of either case are alike.</summary>
    public bool IsAskedBy(string words) =>
        string.Equals(Name, words, StringComparison.OrdinalIgnoreCase) || string.Equals(AlsoNamed, words, StringComparison.OrdinalIgnoreCase);

    /// <summary>All that can be asked of a design, in the order of the report.</summary>
    public static IReadOnlyList<WhyTopic> Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        return
        [
            .. design.Wheel.Rings.Select(r => new WhyTopic($"arc {r.Name}", () => [.. ArcSteps(design, r)])),
            .. design.Wheel.Rings.Where(r => !r.IsWhole).Select(r => new WhyTopic($"spread {r.Name}", () => [.. SpreadReasons.Of(design, r)])),
            .. design.OpenContacts.Where(o => o.Requirement is not null).Select(o => new WhyTopic($"open-contact {o.Output}", () => [.. OpenSteps(o)])),
            .. design.Spacing.Rows.GroupBy(r => (r.Nets.First, r.Nets.Second)).Select(g => OfTwo("spacing", g.Key, () => [.. g.SelectMany(SpacingSteps)])),
            .. design.Circuit.WorkingVoltages.Select(v => OfTwo("voltage", (v.First, v.Second), () => [.. VoltageSteps(design, v)])),
            .. design.Strips.Strips.SelectMany(StripTopics),
        ];
    }

    private static WhyTopic OfTwo(string what, (string First, string Second) nets, Func<IReadOnlyList<string>> steps) =>
        new($"{what} {nets.First} {nets.Second}", steps) { AlsoNamed = $"{what} {nets.Second} {nets.First}" };

    private static IEnumerable<WhyTopic> StripTopics(PlacedStrip strip)
    {
        string name = strip.Form.Strip.Name;
        yield return new($"blank {name}", () => StripReasons.BlankLength(strip.Form));
        if (strip.Spring is not null)
        {
            yield return new($"force {name}", () => StripReasons.Force(strip));
            yield return new($"stress {name}", () => StripReasons.Stress(strip));
        }
    }

    private static IEnumerable<string> SpacingSteps(SpacingRow row)
    {
        string kind = row.Kind == SpacingKind.Clearance ? "Clearance" : "Creepage";
        yield return $"{kind}, {SpacingJson.Grade(row.Nets.Grade)} insulation, between {row.FirstItem} and {row.SecondItem}.";
        foreach (string step in row.Steps)
        {
            yield return $"{kind}: {step}";
        }

        yield return $"{kind}: {Wording.Mm(row.WorstMm)} at the worst tolerance against {Wording.Mm(row.Required.RequiredMm)} required ({row.Required.BasisInFull}): {SpacingJson.Word(row.Verdict)}.";
    }

    private static IEnumerable<string> VoltageSteps(Design design, WorkingVoltage pair)
    {
        double supply = design.Brief.Supply.VoltageV;
        if (design.Circuit.Loads.Count == 0)
        {
            yield return $"The file has no loads and no motor, so the highest voltage of the supply, {Wording.Volts(Math.Round(design.Brief.Supply.HighestV, 1))}, counts between any two nets.";
            yield break;
        }

        IReadOnlyList<string> lines = design.Brief.Supply.Lines;
        yield return lines.Count > 1
            ? $"The supply holds {string.Join(", ", lines)} at {Wording.Volts(supply)} r.m.s. to N, each 120° behind the one before: {Wording.Volts(Math.Round(design.Brief.Supply.HighestV, 1))} between two of them."
            : $"The supply holds {lines[0]} at {Wording.Volts(supply)} r.m.s. to N.";
        yield return $"Voltages are those at the nominal supply, as the tables ask; every state that the wheel and the inputs can bring about is solved.";
        yield return $"Between {pair.First} and {pair.Second} it is highest {pair.Where}: {Wording.Volts(pair.VoltageV)} r.m.s., {Wording.Volts(pair.VoltageV * Math.Sqrt(2))} peak.";
        if (pair.VoltageV < supply)
        {
            yield return $"For basic and higher grades of insulation the supply voltage of {Wording.Volts(supply)} counts all the same; for functional insulation the solved one.";
        }
    }

    private static IEnumerable<string> ArcSteps(Design design, RingLayout ring)
    {
        Motion motion = design.Motion;
        yield return $"One turn takes {Wording.Seconds(motion.TurnTimeS)} at the nominal frequency, so {Wording.Number(motion.SpeedDegPerS, 6)}° a second, {(motion.Sigma > 0 ? "anticlockwise" : "clockwise")} seen from the wiper side.";
        if (ring.IsWhole)
        {
            yield return "It is always on: copper all the way round, no window.";
        }

        yield return $"Radius {Wording.Mm(ring.RadiusMm)}: {ring.Why}.";
        yield return ring.Patch.IsDisc
            ? $"The contact patch is a disc of {Wording.Mm(2 * ring.Patch.HalfLengthMm)}; it covers radii {Wording.Mm(ring.PathFromMm)} to {Wording.Mm(ring.PathToMm)}."
            : $"The contact patch is {Wording.Mm(2 * ring.Patch.HalfLengthMm)} across and {Wording.Mm(2 * ring.Patch.HalfWidthMm)} along its fold, the fold {Wording.Degrees(ring.Patch.AngleRad)} from the radius; it covers radii {Wording.Mm(ring.PathFromMm)} to {Wording.Mm(ring.PathToMm)} over its travel.";
        foreach (RingPeriod period in ring.Periods)
        {
            OnPeriod on = period.Wanted;
            double begins = period.Make.AngleAt(ring.RadiusMm);
            double ends = period.Break.AngleAt(ring.RadiusMm);
            yield return $"On-period {Wording.Number(on.Index + 1, 0)}: from {Wording.Seconds(motion.SecondsFromRad(on.StartRad))} for {Wording.Seconds(motion.SecondsFromRad(on.SweepRad))}, so programme angles {Wording.Degrees(on.StartRad)} to {Wording.Degrees(on.EndRad)}.";
            yield return $"The patch reaches the make edge {Wording.Degrees(begins - on.StartRad)} before its middle does: copper begins at {Wording.Degrees(begins)} on the ring radius.";
            yield return $"Its last point leaves the break edge {Wording.Degrees(on.EndRad - ends)} after its middle{(period.Break.IsSloped || period.Make.IsSloped ? " (a sloped edge)" : "")}: copper ends at {Wording.Degrees(ends)}.";
            yield return $"The wiper at station {Wording.Degrees(ring.StationRad)} stands over wheel angle station {(motion.Sigma > 0 ? "−" : "+")} programme angle: copper from {Wording.Degrees(period.CopperRad.StartRad)} to {Wording.Degrees(Angles.InTurn(period.CopperRad.EndRad))}, anticlockwise from the home mark.";
            yield return $"Worst case of the on-time, each alone: {string.Join(", ", period.Limits.Contributors.Where(c => c.WorstS > 0).Select(c => $"{c.Name} {Wording.Seconds(c.WorstS)}"))}; all together at their worst {Wording.Seconds(period.Limits.LongerS)} longer or {Wording.Seconds(period.Limits.ShorterS)} shorter.";
            yield return $"It starts at worst between {Wording.Seconds(period.Bands.StartMinS)} and {Wording.Seconds(period.Bands.StartMaxS)} after home; its make lies within {Wording.Degrees(period.Bands.Make.EarlierRad)} before and {Wording.Degrees(period.Bands.Make.LaterRad)} after its angle, its break within {Wording.Degrees(period.Bands.Break.EarlierRad)} before and {Wording.Degrees(period.Bands.Break.LaterRad)} after{(ring.Adjust is null ? "" : ", over the whole travel")}.";
        }
    }

    private static IEnumerable<string> OpenSteps(OpenContact open)
    {
        foreach (string step in open.Steps)
        {
            yield return step;
        }

        yield return "This is a contact gap: never a means of isolation.";
    }
}
