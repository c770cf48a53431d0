using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>The figures behind a verdict as tables of a terminal; what they come to follows in <see cref="DesignSummary"/>.</summary>
internal static class CheckTable
{
    public static IEnumerable<string> Of(Design design)
    {
        ReadersUnit unit = ReadersUnit.Of(design.Brief);
        List<string[]> rows = [["output", $"radius {unit.Sign}", "on-time s", "worst s", "asked s", $"gap {unit.Sign}", $"required {unit.Sign}"]];
        foreach (RingLayout ring in design.Wheel.Rings)
        {
            OpenContact? open = design.OpenContacts.FirstOrDefault(o => string.Equals(o.Output, ring.Name, StringComparison.Ordinal));
            OutputBrief output = design.Brief.Outputs.First(o => string.Equals(o.Name, ring.Name, StringComparison.Ordinal));
            if (ring.IsWhole)
            {
                rows.Add([ring.Name, unit.Number(ring.RadiusMm), "always", "", "", "", ""]);
            }

            foreach (RingPeriod period in ring.Periods)
            {
                rows.Add(
                [
                    ring.Name,
                    unit.Number(ring.RadiusMm),
                    N(design.Motion.SecondsFromRad(period.Wanted.SweepRad)),
                    $"-{N(period.Limits.ShorterS)} +{N(period.Limits.LongerS)}",
                    $"±{N(output.ToleranceS ?? 0)}",
                    open is null ? "" : unit.Number(open.WorstMm),
                    open?.RequiredMm is double required ? unit.Number(required) : "none",
                ]);
            }
        }

        foreach (string line in TextTable.Lines(rows).Concat(SpacingLines.Of(design.Spacing.Rows, unit)).Concat(Interlocks(design)))
        {
            yield return line;
        }
    }

    private static IEnumerable<string> Interlocks(Design design) => design.Circuit.Interlocks.Select(i => $"  interlock '{i.Name}' {Verdict(i)}");

    private static string Verdict(InterlockResult interlock) => interlock.Verdict switch
    {
        InterlockVerdict.Fails => "fails",
        InterlockVerdict.Undecided => "is undecided",
        _ when !interlock.Applies => "holds for nothing: its conditions are never met",
        _ when interlock.AsksContactsOf.Count > 0 => $"holds, and says nothing of a stuck contact of {string.Join(", ", interlock.AsksContactsOf)}",
        _ => "holds",
    };

    private static string N(double value) => Wording.Number(value, 3);
}
