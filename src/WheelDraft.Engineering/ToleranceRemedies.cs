namespace WheelDraft.Engineering;

/// <summary>Which single change would let an output meet its tolerance: each worked out on the wheel, then tried through all stages.</summary>
/// <remarks>A change goes as little of the way from what the file says to the best there is as will do, by halving, rounded to the safe side. What a
/// trial brings up besides is told with it. Only refusals and findings of the wheel's layout are helped so; friction and flow have words of their own.</remarks>
internal sealed class ToleranceRemedies(Brief brief, IReadOnlyList<Finding> before)
{
    private const string Code = "wheel.tolerance";

    // Halvings between what is and what is best: a thousandth of the way, finer than any grain below.
    private const int Halvings = 10;

    // Outputs that are helped: whose first few are, has seen what helps.
    private const int MostOutputs = 3;

    // The finest cut of the list, mm: nothing is looked for beyond it.
    private const double FinestCutMm = 0.005;

    // A travel longer than four times the one given is another mechanism.
    private const double MostTravel = 4;

    private int _trialsLeft = Math.Max(Halvings, Budgets.ToleranceTrials / Math.Max(1, brief.Outputs.Sum(o => o.On.Periods?.Count ?? 0)));

    /// <summary>Whether any of the findings is one that a change may help.</summary>
    public static bool Concern(IReadOnlyList<Finding> findings) => findings.Any(f => f.Code is Code);

    /// <summary>The findings, with what would help added to those that it helps.</summary>
    public static IReadOnlyList<Finding> Told(Brief brief, IReadOnlyList<Finding> findings)
    {
        if (!Concern(findings))
        {
            return findings;
        }

        ToleranceRemedies remedies = new(brief, findings);
        int helped = 0;
        return [.. findings.Select(f => f.Code is Code && helped++ < MostOutputs ? f with { Message = f.Message + remedies.Words(f) } : f)];
    }

    private string Words(Finding finding)
    {
        int index = Enumerable.Range(0, brief.Outputs.Count).FirstOrDefault(i => finding.Where == PlaceOf(i), -1);
        if (index < 0)
        {
            return "";
        }

        IReadOnlyList<string> found = [.. Changes(index).Select(c => Tried(c, index)).OfType<string>()];
        return found.Count > 0
            ? $" Any one of these alone would meet it, each tried through all of the design: {string.Join("; ", found)}."
            : " Tried one at a time, no finer process, less wear, run-out or side play and no steadier mains would meet it.";
    }

    private TextPlace PlaceOf(int output) => brief.PlaceOf(FormattableString.Invariant($"output[{output}]"));

    /// <summary>What the nearest value that does is called; null where none does.</summary>
    private string? Tried(ToleranceChange change, int output)
    {
        if (change.Now == change.Best || !MeetsOnWheel(change.Applied(change.Best), output))
        {
            return null;
        }

        (double fails, double does) = (change.Now, change.Best);
        for (int i = 0; i < Halvings && _trialsLeft > 0; i++)
        {
            double middle = (fails + does) / 2;
            (fails, does) = MeetsOnWheel(change.Applied(middle), output) ? (fails, middle) : (middle, does);
        }

        // To the whole grain on the safe side, but no further than the best.
        double grains = does / change.Grain;
        double rounded = change.Best < change.Now
            ? Math.Max(change.Best, Math.Floor(grains) * change.Grain)
            : Math.Min(change.Best, Math.Ceiling(grains) * change.Grain);
        return Through(change.Applied(rounded), output) is string besides ? change.Words(rounded) + besides : null;
    }

    private bool MeetsOnWheel(Brief changed, int output)
    {
        _trialsLeft--;
        try
        {
            Motion motion = Motion.Of(changed);
            OpenContactRequirements rules = OpenContactRequirements.Of(changed, _ => changed.Supply.HighestV);
            WheelLayout wheel = WheelSetter.Of(new(changed, motion, Programme.Of(changed, motion), WiperContacts.Of(new StripSprings(changed)), rules.Distances));
            return Keeps(wheel.Findings, output);
        }
        catch (DesignRefusedException refusal)
        {
            return Keeps(refusal.Reasons, output) && refusal.Reasons.All(WasThere);
        }
    }

    /// <summary>Null when the change does not do after all; else what it brings up besides, in words.</summary>
    private string? Through(Brief changed, int output)
    {
        IReadOnlyList<Finding> found;
        string across = "";
        try
        {
            Design design = new DesignStages(changed).Run();
            found = [.. design.Findings.Where(f => f.Severity == FindingSeverity.Error)];
            across = $", the wheel then {Wording.Mm(Math.Round(design.Wheel.OuterDiameterMm, 1))} across";
        }
        catch (DesignRefusedException refusal)
        {
            found = refusal.Reasons;
        }

        string[] others = [.. found.Where(f => !WasThere(f)).Select(f => f.Code).Distinct(StringComparer.Ordinal)];
        return !Keeps(found, output) ? null
            : others.Length > 0 ? $"{across} (and with new findings: {string.Join(", ", others)})" : across;
    }

    private bool Keeps(IReadOnlyList<Finding> findings, int output) => !findings.Any(f => f.Code is Code && f.Where == PlaceOf(output));

    private bool WasThere(Finding finding) => before.Any(b => string.Equals(b.Code, finding.Code, StringComparison.Ordinal) && b.Where == finding.Where);

    private IEnumerable<ToleranceChange> Changes(int index)
    {
        OutputBrief output = brief.Outputs[index];
        Brief With(OutputBrief changed) => brief with { Outputs = [.. brief.Outputs.Select((o, i) => i == index ? changed : o)] };

        // 0 for the radius of the file, 1 for none.
        yield return new(output.RadiusMm is null ? 1 : 0, 1, 1, _ => "its radius left to \"auto\"", _ => With(output with { RadiusMm = null }));
        yield return new(brief.Process.ToleranceMm, Math.Min(brief.Process.ToleranceMm, FinestCutMm), FinestCutMm, CutWords, t => brief with { Process = brief.Process with { ToleranceMm = t } });
        yield return new(output.Contact.WornLengthMm, output.Contact.LengthMm, 0.01, l => $"a worn_length of {Wording.Mm(l)}", l => With(output with { Contact = output.Contact with { WornLengthMm = l } }));
        yield return new(brief.Supply.FrequencyToleranceShare, 0, 0.0001, f => $"a frequency_tolerance of {Wording.Percent(f)}", f => brief with { Supply = brief.Supply with { FrequencyToleranceShare = f } });
        yield return new(brief.Wheel.RunOutMm, 0, 0.01, r => $"a run_out of {Wording.Mm(r)}", r => brief with { Wheel = brief.Wheel with { RunOutMm = r } });
        yield return new(output.SidePlayMm, 0, 0.01, p => $"a side_play of {Wording.Mm(p)}", p => With(output with { SidePlayMm = p }));
        yield return new(brief.Housing.PlacingMm, 0, 0.01, p => $"a placing of {Wording.Mm(p)}", p => brief with { Housing = brief.Housing with { PlacingMm = p } });
        if (output.Adjust is AdjustBrief adjust)
        {
            yield return new(adjust.TravelMm, MostTravel * adjust.TravelMm, 0.1, t => $"a travel of {Wording.Mm(t)} for the same range, {Wording.Number(t / (adjust.ScrewPitchMm * adjust.Lever), 1)} turns of its {adjust.Screw} screw", t => With(output with { Adjust = adjust with { TravelMm = t } }));
            yield return new(adjust.RangeS, adjust.RangeS / MostTravel, 0.01, r => $"a range of {Wording.Seconds(r)} over the same travel", r => With(output with { Adjust = adjust with { RangeS = r } }));
        }
    }

    private string CutWords(double toleranceMm)
    {
        double thick = brief.Wheel.ThicknessMm;
        string[] fine =
        [
            .. CuttingProcesses.All.Where(p => p.ThinnestMm <= thick && thick <= (p.ThickestMm ?? double.PositiveInfinity) && p.Tolerance.At(thick) <= toleranceMm).Select(p => p.Name),
        ];
        return $"a process that cuts to {Wording.Mm(toleranceMm)} ({(fine.Length > 0 ? string.Join(" or ", fine) : "finer than any in the list")})";
    }
}

/// <summary>One value of the file that may be changed.</summary>
/// <param name="Now">What the file says.</param>
/// <param name="Best">As far as it may go.</param>
/// <param name="Grain">To what it is rounded.</param>
/// <param name="Words">A value in words.</param>
/// <param name="Applied">The brief with a value in its place.</param>
internal sealed record ToleranceChange(double Now, double Best, double Grain, Func<double, string> Words, Func<double, Brief> Applied);
