using WheelDraft.Engineering;
using WheelDraft.Formats.Prose;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Report;

/// <summary>The report for people to read and sign.</summary>
internal static class ReportMarkdown
{
    /// <summary>The whole report.</summary>
    /// <param name="design">The design.</param>
    /// <param name="asked">What else of the set is made, as far as the report speaks of it.</param>
    public static ProsePage Page(Design design, ReportAsked? asked = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        ProsePage page = new(ReadersUnit.Of(design.Brief));
        ReportHead head = new(page, design, asked ?? ReportAsked.Nothing);
        head.Write();
        Findings(page, design);
        Wheel(page, design);
        LandsMarkdown.Write(page, design);
        Timing(page, design);
        Contributors(page, design);
        SpreadMarkdown.Write(page, design);
        Friction(page, design);
        Adjusting(page, design);
        OpenContacts(page, design);
        SpacingMarkdown.Write(page, design);
        head.Picture("spacing");
        StripsMarkdown.Write(page, design);
        head.Picture("assembly");
        CamsMarkdown.Write(page, design);
        CircuitMarkdown.Write(page, design);
        head.Picture("circuit");
        CuttingMarkdown.Write(page, design);
        Scope(page, design);
        SpacingMarkdown.Appendix(page, design.Spacing);
        SpacingMarkdown.AllPairs(page, design.Spacing);
        CircuitMarkdown.Appendix(page, design.Circuit);
        return page;
    }

    private static string S(double seconds) => Wording.Number(seconds, 3);

    private static string Deg(double angleRad) => Wording.Number(Angles.DegFromRad(angleRad), 3);

    private static void Findings(ProsePage page, Design design)
    {
        page.Heading(2, "Findings");
        if (design.Findings.Count == 0)
        {
            page.Paragraph("None.");
            return;
        }

        page.List(design.Findings.OrderBy(f => f.Severity).Select(f =>
            $"{(f.Severity == FindingSeverity.Error ? "**error**" : f.Severity == FindingSeverity.Warning ? "warning" : "note")} `{f.Code}`{(f.Where is TextPlace p ? $", line {Wording.Number(p.Line, 0)}" : "")}: {f.Message}"))
            .Paragraph("`wheeldraft explain CODE` tells more about a code.");
    }

    private static void Wheel(ProsePage page, Design design)
    {
        WheelLayout wheel = design.Wheel;
        page.Heading(2, "Wheel")
            .Paragraph($"Outer diameter {Wording.Mm(wheel.OuterDiameterMm)}, bore {Wording.Mm(design.Brief.Wheel.Bore.DiameterMm)}, copper {Wording.Mm(design.Brief.Wheel.ThicknessMm)} {design.Brief.Wheel.Material}, {(wheel.Feed is null ? "lands" : "webs of")} {Wording.Mm(wheel.WebMm)}{(wheel.Feed is null ? " apart from ring to ring" : "")}. "
                + "Lengths in mm, angles in degrees; radii and angles are those of the finished copper, before any kerf.")
            .Table(["Ring", "Net", "Radius", "Station", "Patch", "Patch path", wheel.Feed is null ? "Lands" : "Windows", "What holds it there"], wheel.AllRings.Select(r => (IReadOnlyList<string>)
            [
                r.IsFeed ? "feed" : r.Name,
                r.Net,
                page.Mm(r.RadiusMm),
                Deg(r.StationRad),
                r.Patch.IsDisc ? $"disc {page.Mm(2 * r.Patch.HalfLengthMm)}" : $"{page.Mm(2 * r.Patch.HalfLengthMm)} × {page.Mm(2 * r.Patch.HalfWidthMm)} at {Deg(r.Patch.AngleRad)}°",
                $"{page.Mm(r.PathFromMm)} – {page.Mm(r.PathToMm)}",
                Band(page, r),
                r.Why,
            ]));
        page.Heading(3, "Edges")
            .Paragraph("Programme angles from home; wheel angles anticlockwise on the ring radius.")
            .Table(["Ring", "Makes at", "Copper begins", "Copper ends", "Breaks at", "Wheel angle from", "to"], wheel.Rings.SelectMany(r => r.Periods.Select(p => (IReadOnlyList<string>)
            [
                r.Name,
                Deg(p.Wanted.StartRad),
                Deg(Angles.InTurn(p.Make.AngleAt(r.RadiusMm))),
                Deg(Angles.InTurn(p.Break.AngleAt(r.RadiusMm))),
                Deg(Angles.InTurn(p.Wanted.EndRad)),
                Deg(p.CopperRad.StartRad),
                Deg(Angles.InTurn(p.CopperRad.EndRad)),
            ])));
    }

    private static string Band(ProsePage page, RingLayout ring) =>
        ring.WindowFromMm is double window ? $"{page.Mm(window)} – {page.Mm(ring.WindowToMm!.Value)}"
        : ring.LandFromMm is double land ? $"{page.Mm(land)} – {page.Mm(ring.LandToMm!.Value)}{(ring.IsWhole ? ", whole ring" : "")}"
        : "whole ring";

    private static void Timing(ProsePage page, Design design)
    {
        page.Heading(2, "Timing")
            .Paragraph("On-times at the nominal supply frequency and mid travel. Worst: the least and greatest of the on-time over every combination of deviations at once. Starts: the soonest and latest after home, placing of the wipers and backlash counted. Doses count the flow's tolerance.")
            .Table(["Output", "From, s", "Starts at worst, s", "For, s", "Worst, s", "± asked, s", "Largest contributor", "Dose, mL"], design.Wheel.Rings.SelectMany(r => Rows(design, r)));
    }

    /// <summary>Share of each contributor in the worst case.</summary>
    private static void Contributors(ProsePage page, Design design)
    {
        IReadOnlyList<(RingLayout Ring, RingPeriod Period)> all = [.. design.Wheel.Rings.SelectMany(r => r.Periods.Select(p => (r, p)))];
        if (all.Count == 0)
        {
            return;
        }

        IReadOnlyList<string> names = [.. all[0].Period.Limits.Contributors.Select(c => c.Name)];
        page.Heading(3, "What makes up the worst case")
            .Paragraph("What each deviation changes alone at worst, longer and shorter in seconds, and what all do together at their worst: no sum, because they act on each other.")
            .Table(["Output", "From, s", .. names, "All together, s"], all.Select(a => (IReadOnlyList<string>)
            [
                a.Ring.Name,
                S(design.Motion.SecondsFromRad(a.Period.Wanted.StartRad)),
                .. a.Period.Limits.Contributors.Select(c => LongerAndShorter(c.LongerS, c.ShorterS)),
                LongerAndShorter(a.Period.Limits.LongerS, a.Period.Limits.ShorterS),
            ]));
    }

    private static void Friction(ProsePage page, Design design)
    {
        if (design.FrictionShifts.Count > 0)
        {
            page.Heading(3, "Friction")
                .Paragraph("Friction winds an arm up in the way the copper goes. Make and break come later by it, and an on-time may be longer or shorter by the difference between the least and the greatest friction: on top of the worst case above.")
                .Table(["Output", "Along the motion, mm", "Along the radius, mm", "Both edges later, s", "On-time ±, s"], design.FrictionShifts.Select(s => (IReadOnlyList<string>)
                [
                    design.Brief.Outputs[s.Output].Name, $"{page.Mm(s.LeastMm)} – {page.Mm(s.MostMm)}", $"± {page.Mm(s.MostRadialMm)}", $"{S(s.LaterMinS)} – {S(s.LaterMaxS)}", S(s.OnTimeS),
                ]));
        }
    }

    private static string LongerAndShorter(double longerS, double shorterS) =>
        longerS == 0 && shorterS == 0 ? "-" : $"+{S(longerS)} −{S(shorterS)}";

    private static IEnumerable<IReadOnlyList<string>> Rows(Design design, RingLayout ring)
    {
        OutputBrief output = design.Brief.Outputs.First(o => string.Equals(o.Name, ring.Name, StringComparison.Ordinal));
        if (ring.IsWhole)
        {
            yield return [ring.Name, "0", "", "always", "", "", "", ""];
        }

        foreach (RingPeriod p in ring.Periods)
        {
            double on = design.Motion.SecondsFromRad(p.Wanted.SweepRad);
            TimingShare most = p.Limits.Contributors.MaxBy(c => c.WorstS);
            yield return
            [
                ring.Name,
                S(design.Motion.SecondsFromRad(p.Wanted.StartRad)),
                $"{S(p.Bands.StartMinS)} – {S(p.Bands.StartMaxS)}",
                S(on),
                $"{S(on - p.Limits.ShorterS)} – {S(on + p.Limits.LongerS)}",
                S(output.ToleranceS!.Value),
                $"{most.Name} {S(most.WorstS)} s",
                DoseLimits.Of(output, on, p.Limits) is DoseLimits dose ? $"{Wording.Number(dose.NominalMl, 2)} ({Wording.Number(dose.LeastMl, 2)} – {Wording.Number(dose.MostMl, 2)})" : "",
            ];
        }
    }

    private static void Adjusting(ProsePage page, Design design)
    {
        foreach (RingLayout ring in design.Wheel.Rings.Where(r => r.Adjust is not null))
        {
            AdjustLayout adjust = ring.Adjust!;
            double? flow = design.Brief.Outputs.First(o => string.Equals(o.Name, ring.Name, StringComparison.Ordinal)).FlowLPerS;
            page.Heading(3, $"Adjusting '{ring.Name}'")
                .Paragraph($"Screw {adjust.Asked.Screw}, {Wording.Number(adjust.Turns, 2)} turns over {Wording.Mm(adjust.Asked.TravelMm)} of travel; moving the wiper {(adjust.Asked.Longer == LongerWay.In ? "in" : "out")} lengthens the on-time. "
                    + $"The sloped edge runs straight from radius {Wording.Mm(adjust.EdgeInner.RadiusMm)} at {Deg(adjust.EdgeInner.ProgrammeRad)}° to radius {Wording.Mm(adjust.EdgeOuter.RadiusMm)} at {Deg(adjust.EdgeOuter.ProgrammeRad)}°. Greatest departure from linear {Wording.Seconds(adjust.LinearityS)}.")
                .Table(["Wiper moved out, mm", "On-time, s", "Worst, s", "Seconds a turn", "Millilitres a turn"], adjust.Steps.Select(s => (IReadOnlyList<string>)
                [
                    page.Mm(s.OffsetMm),
                    S(s.OnS),
                    $"{S(s.OnS - s.ShorterS)} – {S(s.OnS + s.LongerS)}",
                    Wording.Number(s.SecondsPerTurn, 4),
                    flow is double f ? Wording.Number(s.SecondsPerTurn * f * 1000, 3) : "",
                ]));
        }
    }

    private static void OpenContacts(ProsePage page, Design design)
    {
        page.Heading(2, "Open contacts")
            .Paragraph("The gap between the nose and the wheel's copper while an output is open; with lands, between all that is joined to its one wiper and all that is joined to the other, 'sideways' being the gap between the two patches. Each gap is judged against what it must keep itself; 'worst' is that of the gap with less to spare. A contact gap is never a means of isolation.")
            .Table(["Output", "Required, mm", "Sideways, mm", "Greatest, mm", "Worst, mm", "Reached after the break, at worst", "Where the wheel can stand, mm at worst", "Opens at"], design.OpenContacts.Select(o => (IReadOnlyList<string>)
            [
                o.Output,
                o.RequiredMm is double required ? Required(page, o, required) : "none asked",
                $"{page.Mm(o.Sideways.NominalMm)} (worst {page.Mm(o.Sideways.WorstMm)})",
                page.Mm(o.Periods.Min(p => p.GreatestMm)),
                page.Mm(o.WorstMm),
                string.Join(", ", o.Periods.Select(p => p.ReachedAfterRad is double after
                    ? $"{Deg(after)}° ({S(design.Motion.SecondsFromRad(after))} s)"
                    : o.RequiredMm is null ? "-" : "never")),
                o.Parked is ParkedGap park ? Standing(page, park) : "closed, or no voltage",
                $"{Wording.Number(o.OpeningMmPerS, 3)} mm/s",
            ]));
    }

    private static string Standing(ProsePage page, ParkedGap gap) =>
        $"{page.Mm(gap.WorstMm)} ({gap.Why}, {(gap.IsWholeTurn ? "all round" : $"{Deg(gap.FromRad)}° to {Deg(Angles.InTurn(gap.ToRad))}°")})";

    private static string Required(ProsePage page, OpenContact open, double deciding) =>
        open.Along?.RequiredMm is double along && open.Sideways.RequiredMm is double sideways && !string.Equals(page.Mm(along), page.Mm(sideways), StringComparison.Ordinal)
            ? $"{page.Mm(along)} along the motion, {page.Mm(sideways)} sideways"
            : page.Mm(deciding);

    private static void Scope(ProsePage page, Design design)
    {
        if (design.Assumptions.Count > 0)
        {
            page.Heading(2, "Assumed")
                .Paragraph("The parameter file does not say these; every figure above counts on them. Give the key to say otherwise.")
                .Table(["Key", "Taken to be so"], design.Assumptions.Select(a => (IReadOnlyList<string>)[a.Key, a.Words]));
        }

        IReadOnlyList<string> missing = NotEvaluated.Of(design);
        if (missing.Count > 0)
        {
            page.Heading(2, "Not evaluated").List(missing);
        }

        page.Heading(2, "Not checked")
            .Paragraph("No report of this program looks at these; they are for the person who signs.")
            .List(NotEvaluated.NotChecked)
            .Heading(2, "Cautions")
            .List(Cautions.For(design));
        SigningMarkdown.Write(page, design);
    }
}
