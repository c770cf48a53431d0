using WheelDraft.Engineering;
using WheelDraft.Formats.Prose;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Report;

/// <summary>The circuit for people: what is on when, where the wheel rests, what is proved, what a fault does.</summary>
internal static class CircuitMarkdown
{
    // Pairs of nets whose working voltage stands in the body of the report.
    private const int MostVoltages = 20;

    public static void Write(ProsePage page, Design design)
    {
        CircuitAnalysis circuit = design.Circuit;
        page.Heading(2, "Circuit");
        if (circuit.Loads.Count == 0)
        {
            page.Paragraph("No loads and no motor are given: there is nothing to solve, and working voltages are the highest of the supply.");
            return;
        }

        Truth(page, design);
        Resting(page, design);
        Interlocks(page, circuit);
        Faults(page, circuit);
        Currents(page, design);
        page.Heading(3, "Working voltages")
            .Paragraph($"At nominal supply voltage, as the tables ask, and whatever its tolerance: the largest r.m.s. voltage between two nets over every reachable state and angle, {(circuit.Request.VoltagesUnderFaults ? "each single fault of the table above included, as asked" : "single open loads included")}.{(circuit.WorkingVoltages.Count > MostVoltages ? $" The {Wording.Number(circuit.WorkingVoltages.Count, 0)} pairs stand in the appendix; the highest is {Wording.Number(circuit.WorkingVoltages.Max(v => v.VoltageV), 1)} V." : "")}");
        if (circuit.WorkingVoltages.Count <= MostVoltages)
        {
            Voltages(page, circuit);
        }
    }

    /// <summary>Working voltages where they are too many for the body of the report.</summary>
    public static void Appendix(ProsePage page, CircuitAnalysis circuit)
    {
        if (circuit.Loads.Count > 0 && circuit.WorkingVoltages.Count > MostVoltages)
        {
            Voltages(page.Heading(2, "Appendix: working voltages"), circuit);
        }
    }

    private static void Voltages(ProsePage page, CircuitAnalysis circuit) =>
        page.Table(["Nets", "V", "Found"], circuit.WorkingVoltages.OrderBy(v => v.First, NaturalOrder.Names).ThenBy(v => v.Second, NaturalOrder.Names).Select(v => (IReadOnlyList<string>)[$"{v.First} – {v.Second}", Wording.Number(v.VoltageV, 1), v.Where]));

    private static void Currents(ProsePage page, Design design)
    {
        CircuitAnalysis circuit = design.Circuit;
        string bound = circuit.Currents.IsBound
            ? " There are too many states to look at each: every figure is that of all loads on at once, at the highest voltage of the supply."
            : "";
        static string Amperes(double amperes) => double.IsFinite(amperes) ? Wording.Number(amperes, 3) : "without a bound";
        page.Heading(3, "Currents of contacts")
            .Paragraph($"The largest over every reachable state without fault, at the upper end of the supply voltage (nominal + {Wording.Percent(design.Brief.Supply.VoltageToleranceShare)}); loads are impedances, so currents rise with it. What a contact breaks is the current just before it opens; inrush is not counted. Where closed contacts or inputs lie side by side nothing decides how the current divides, and each is given as if all flowed through it.{bound}")
            .Table(["Contact", "Carries, A", "Found", "Breaks, A", "Found", "Breaks a coil", "Side by side"], CurrentWords.Wipers(circuit).Select(w => (IReadOnlyList<string>)
            [
                w.Name,
                Amperes(w.Current.CarriedA),
                w.Current.CarriedWhere.Length > 0 ? w.Current.CarriedWhere : "-",
                Amperes(w.Current.BrokenA),
                w.Current.BrokenWhere.Length > 0 ? w.Current.BrokenWhere : "-",
                w.Current.BreaksInductive ? "yes" : "no",
                w.Current.IsShared ? "yes" : "no",
            ]));
    }

    private static string Deg(double angleRad) => Wording.Number(Angles.DegFromRad(Angles.InTurn(angleRad)), 3);

    private static void Truth(ProsePage page, Design design)
    {
        CircuitAnalysis circuit = design.Circuit;
        page.Heading(3, "What is on, by interval")
            .Paragraph("Programme angles and times from home. Where inputs matter the cell says when the load is on.")
            .Table(["From", "To", "From, s", "Contacts closed", .. circuit.Loads], circuit.Intervals.Select((interval, i) => (IReadOnlyList<string>)
            [
                $"{Deg(interval.FromRad)}°",
                interval.LengthRad >= Angles.TurnRad ? "all the turn" : $"{Deg(interval.FromRad + interval.LengthRad)}°",
                Wording.Number(design.Motion.SecondsFromRad(interval.FromRad), 3),
                (interval.Closed.Count == 0 ? "none" : string.Join(", ", interval.Closed)) + (interval.IsReachable ? "" : " (never reached)"),
                .. circuit.Loads.Select((_, load) => Words(circuit.Truth(i, load))),
            ]));
    }

    private static string Words(TruthEntry entry) => entry.Truth switch
    {
        LoadTruth.On => "on",
        LoadTruth.Off => "off",
        LoadTruth.Undecided => entry.Condition.Length == 0 ? "undecided" : $"undecided; on with {entry.Condition}",
        _ => $"on with {entry.Condition}",
    };

    private static void Resting(ProsePage page, Design design)
    {
        CircuitAnalysis circuit = design.Circuit;
        page.Heading(3, "Where the wheel can stand");
        string parks = circuit.Parks.Count > 0
            ? $"The wheel parks at {string.Join(", ", circuit.Parks.Select(p => Angles.InTurn(p.FromRad) == Angles.InTurn(p.ToRad) ? $"{Deg(p.FromRad)}°" : $"{Deg(p.FromRad)}° to {Deg(p.ToRad)}°"))}."
            : circuit.Standing.Count > 0 ? "No break of the wheel's own parks it; inputs and the motor's state decide where it stands."
            : "The wheel stands nowhere while it has supply.";
        string stalls = circuit.StalledIntervals.Count == 0 ? ""
            : $" It may stand for good from {string.Join(", ", circuit.StalledIntervals.Select(i => $"{Deg(circuit.Intervals[i].FromRad)}°"))}.";
        string unexplored = circuit.Unexplored.Count == 0 ? "" : $" Not followed in every order: {string.Join("; ", circuit.Unexplored)}.";
        page.Paragraph($"{parks}{stalls}{unexplored}");
        if (circuit.Standing.Count > 0)
        {
            page.Table(["From", "To", "Why", "Open contacts with voltage across them"], circuit.Standing.Select(s => (IReadOnlyList<string>)
            [
                .. s.ToRad - s.FromRad >= Angles.TurnRad ? (string[])["0°", "360°"] : [$"{Deg(s.FromRad)}°", $"{Deg(s.ToRad)}°"],
                s.Why,
                s.VoltageAcross.Count == 0 ? "none" : string.Join(", ", s.VoltageAcross.Select(o => design.Brief.Outputs[o].Name)),
            ]));
            page.Paragraph("Ends on the unsafe side: edges in their worst case, the most coast, backlash. Faults are not counted: a stalled motor, or a wheel that slips on its shaft, stands anywhere; where the supply is lost nothing is live, and when it comes back the motor goes on wherever it is fed.");
        }

        Cycle(page, circuit);
        if (circuit.Standing.Count > 0 && Running(circuit.Standing) is { Count: > 0 } running)
        {
            page.Paragraph($"It cannot stand from {string.Join(", nor from ", running.Select(r => $"{Deg(r.FromRad)}° to {Deg(r.ToRad)}°"))}: there it runs on whatever the inputs do.");
        }
    }

    // The parts of the turn that no stretch of standing touches.
    private static List<(double FromRad, double ToRad)> Running(IReadOnlyList<StandingStretch> standing)
    {
        List<(double FromRad, double ToRad)> running = [];
        double reached = standing.Max(s => s.ToRad) - Angles.TurnRad;
        foreach (StandingStretch stretch in standing.OrderBy(s => s.FromRad))
        {
            if (stretch.FromRad > reached)
            {
                running.Add((reached, stretch.FromRad));
            }

            reached = Math.Max(reached, stretch.ToRad);
        }

        return running;
    }

    private static void Cycle(ProsePage page, CircuitAnalysis circuit)
    {
        page.Paragraph(circuit.Cycle switch
        {
            CycleVerdict.Yes => "A cycle once begun always completes: from every state that can be reached the wheel comes home, whatever the inputs do.",
            CycleVerdict.No => "**A cycle does not always complete.** The shortest history that leaves the wheel standing:",
            _ => "**Whether a cycle always completes can be neither proved nor refuted:**",
        });
        if (circuit.CycleHistory.Count > 0)
        {
            page.Numbered(circuit.CycleHistory);
        }
    }

    private static void Interlocks(ProsePage page, CircuitAnalysis circuit)
    {
        if (circuit.Interlocks.Count == 0)
        {
            return;
        }

        page.Heading(3, "Interlocks");
        foreach (InterlockResult interlock in circuit.Interlocks)
        {
            page.Paragraph(interlock.Verdict switch
            {
                InterlockVerdict.Holds when !interlock.Applies => $"**'{interlock.Name}' holds for nothing**: its conditions are met in no reachable state without fault.",
                InterlockVerdict.Holds => $"'{interlock.Name}' holds in every reachable state{(interlock.Faults == FaultDepth.Single ? ", and in every one with any single fault of the table below" : ", nothing being faulty")}.",
                InterlockVerdict.Fails => $"**'{interlock.Name}' fails**{(interlock.Fault is CircuitFault fault ? $" with one fault: {fault.Words}" : "")}. The shortest history:",
                _ => $"**'{interlock.Name}' can be neither proved nor refuted.** The shortest history that leaves it open:",
            });
            if (interlock.Verdict != InterlockVerdict.Holds)
            {
                page.Numbered(interlock.History);
            }

            if (Kind(interlock) is { Length: > 0 } kind)
            {
                page.Paragraph(kind);
            }

            if (interlock.FaultsThatBreakIt.Count > 0)
            {
                page.Paragraph($"Single faults that break it: {string.Join(", ", interlock.FaultsThatBreakIt.Select(f => f.Words))}.");
            }
        }
    }

    // What was proved: of an input's contact, or of what the input means.
    private static string Kind(InterlockResult interlock)
    {
        string contacts = interlock.AsksContactsOf.Count == 0 ? ""
            : $"It asks the contact of {string.Join(", ", interlock.AsksContactsOf.Select(i => $"'{i}'"))} and not what it senses: it says nothing of a sensor that is stuck.";
        string meaning = interlock.AsksMeaningOf.Count == 0 ? ""
            : $"It asks what {string.Join(", ", interlock.AsksMeaningOf.Distinct(StringComparer.Ordinal).Select(i => $"'{i}'"))} senses, whatever the contact does: {(interlock.Faults == FaultDepth.Single ? "one that is stuck counts against it" : "one that is stuck would count against it, but no fault was asked for; the table of single faults shows which break it")}.";
        return string.Join(' ', new[] { contacts, meaning }.Where(w => w.Length > 0));
    }

    private static void Faults(ProsePage page, CircuitAnalysis circuit)
    {
        if (circuit.Faults.Count == 0)
        {
            return;
        }

        page.Heading(3, "Single faults")
            .Table(["Fault", "What it does", "What becomes dangerous", "Interlocks that hold", "Noticed"], circuit.Faults.Select(f => (IReadOnlyList<string>)
            [
                f.Fault.Words,
                Effects(f),
                f.Dangers.Count == 0 ? "-" : $"**{string.Join("; ", f.Dangers)}**",
                f.CaughtBy.Count == 0 ? "-" : string.Join(", ", f.CaughtBy),
                $"{(f.IsNoticed ? "yes" : "no")}: {f.Notice}",
            ]));
    }

    private static string Effects(FaultEffect fault)
    {
        IEnumerable<string> effects = fault.Effects.Select(e => $"{e.Load}: {LoadChangeWords.Of(e.Change)}");
        IEnumerable<string> all = fault.ShortPath.Count > 0 ? effects.Append($"short circuit by {string.Join(" – ", fault.ShortPath)}") : effects;
        return string.Join("; ", all.DefaultIfEmpty("nothing"));
    }
}
