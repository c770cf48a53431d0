using WheelDraft.Engineering;
using WheelDraft.Formats.Prose;
using WheelDraft.Formats.Raster;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Report;

/// <summary>What of a set is made besides the report, as far as the report speaks of it.</summary>
/// <param name="DespiteFindings">Whether cutting files were asked for in spite of findings of severity error.</param>
/// <param name="Pictures">Names of the sheets that are drawn beside it.</param>
internal sealed record ReportAsked(bool DespiteFindings, IReadOnlyCollection<string> Pictures)
{
    /// <summary>The report alone.</summary>
    public static ReportAsked Nothing { get; } = new(DespiteFindings: false, []);
}

/// <summary>The first page of a report, which can stand alone: what it is, the verdict, the main figures, how the wheel looks and when it switches.</summary>
internal sealed class ReportHead(ProsePage page, Design design, ReportAsked asked)
{
    // Errors shown on the first page; all of them stand under "Findings".
    private const int MostErrors = 5;

    public void Write()
    {
        Brief brief = design.Brief;
        Finding[] errors = [.. design.Findings.Where(f => f.Severity == FindingSeverity.Error)];
        int warnings = design.Findings.Count(f => f.Severity == FindingSeverity.Warning);
        page.Heading(1, brief.DrawingNumber is string number ? $"{brief.Title} ({number})" : brief.Title)
            .Paragraph($"**{(design.Meets ? "Nothing misses." : $"Something misses: {Counted(errors.Length, "finding", "findings")} of severity error; {(asked.DespiteFindings ? "the cutting files were asked for all the same and say on every part that it misses" : "cutting files and template are withheld unless asked for explicitly")}.")}** "
                + $"{Counted(warnings, "warning", "warnings")}.")
            .Paragraph(Cautions.Short(design));
        if (errors.Length > 0)
        {
            page.List(errors.Take(MostErrors).Select(f => $"**error** {f.Message}").Concat(errors.Length > MostErrors ? [$"{Counted(errors.Length - MostErrors, "more error", "more errors")} under Findings."] : []));
        }

        page.Table(["Output", "On from, s", "For, s", "At worst, s", "± asked, s", "Dose, mL"], design.Wheel.Rings.SelectMany(Output))
            .Table(["Main figure", "Value"], Figures());
        Picture("wheel");
        Picture("timing");
        Given();
        page.Heading(2, "Contents").Contents();
    }

    /// <summary>A sheet of the set, where it is drawn.</summary>
    public void Picture(string name)
    {
        if (asked.Pictures.Contains(name, StringComparer.Ordinal))
        {
            page.Picture($"{name switch { "wheel" => "The wheel", "timing" => "When each output is on", "spacing" => "Where live parts come nearest", "assembly" => "Wheel and strips in plan", _ => "The circuit" }} of {design.Brief.Title}", $"draw/{name}.svg");
        }
    }

    private IEnumerable<IReadOnlyList<string>> Output(RingLayout ring)
    {
        OutputBrief output = design.Brief.Outputs.First(o => string.Equals(o.Name, ring.Name, StringComparison.Ordinal));
        return ring.IsWhole ? [[ring.Name, "0", "always", "", "", ""]] : ring.Periods.Select(p =>
        {
            double on = design.Motion.SecondsFromRad(p.Wanted.SweepRad);
            return (IReadOnlyList<string>)
            [
                ring.Name,
                S(design.Motion.SecondsFromRad(p.Wanted.StartRad)),
                S(on),
                $"{S(on - p.Limits.ShorterS)} – {S(on + p.Limits.LongerS)}",
                S(output.ToleranceS!.Value),
                output.FlowLPerS is double flow ? Wording.Number(on * flow * 1000, 1) : "",
            ];
        });
    }

    private IEnumerable<IReadOnlyList<string>> Figures()
    {
        yield return ["Wheel", $"{Wording.Mm(design.Wheel.OuterDiameterMm)} across, one turn in {Wording.Seconds(design.Motion.TurnTimeS)}, {(design.Motion.Direction == Turning.Clockwise ? "clockwise" : "anticlockwise")} seen from the wiper side"];
        StripSpring[] springs = [.. design.Strips.Strips.Select(s => s.Spring).OfType<StripSpring>()];
        if (springs.Length > 0)
        {
            yield return ["Contacts", $"press with {Wording.Number(Math.Floor(100 * springs.Min(s => s.LeastForceN)) / 100, 2)} to {Wording.Number(Math.Ceiling(100 * springs.Max(s => s.MostForceN)) / 100, 2)} N within the limits of their making"];
        }

        foreach (SpacingKind kind in design.Spacing.Rows.Select(r => r.Kind).Distinct().Order())
        {
            SpacingRow row = design.Spacing.Rows.Where(r => r.Kind == kind).MinBy(r => r.WorstMm / r.Required.RequiredMm)!;
            yield return [$"Tightest {(kind == SpacingKind.Clearance ? "clearance" : "creepage")}", $"{row.FirstItem} to {row.SecondItem}: {Wording.Mm(row.WorstMm)} at worst, {Wording.Mm(row.Required.RequiredMm)} required"];
        }

        foreach (InterlockResult interlock in design.Circuit.Interlocks)
        {
            yield return [$"'{interlock.Name}'", interlock.Verdict switch
            {
                InterlockVerdict.Holds when !interlock.Applies => "holds for nothing: its conditions are never met",
                InterlockVerdict.Holds => interlock.Faults == FaultDepth.Single ? "holds, any single fault included" : "holds while nothing is faulty",
                InterlockVerdict.Fails => "**fails**",
                _ => "**neither proved nor refuted**",
            }];
        }
    }

    private void Given()
    {
        Brief brief = design.Brief;
        List<IReadOnlyList<string>> rows =
        [
            ["Supply", $"{SupplyWords.Voltage(brief.Supply)}, {Wording.Number(brief.Supply.FrequencyHz, 2)} Hz ± {Wording.Percent(brief.Supply.FrequencyToleranceShare)}, overvoltage category {brief.Supply.Category}, {SupplyWords.OverVoltages(brief.Supply)}"],
            ["Surroundings", $"pollution degree {Wording.Number(brief.Environment.PollutionDegree, 0)}, {Wording.Number(brief.Environment.AltitudeM, 0)} m above the sea{(brief.Environment.Condensation ? ", frost or dew on live parts" : "")}"],
            ["Turn", $"{S(design.Motion.TurnTimeS)} s, {Wording.Number(design.Motion.SpeedDegPerS, 4)}° a second{Gear(brief.Drive)}"],
            ["Rules", $"{(brief.Spacing.Standard == SpacingStandard.Iec60664 ? "IEC 60664-1" : "IEC 60335-1")}, carrier of material group {brief.Carrier.Group}{(brief.Carrier.Cti is double cti ? $" (comparative tracking index {Wording.Number(cti, 0)})" : "")}, margin {Wording.Mm(brief.Spacing.MarginMm)}, open contacts {(brief.Spacing.OverOpenContact is Insulation grade ? SpacingJson.Grade(grade) : "without a rule")} unless an output says otherwise"],
            ["Process", $"{brief.Process.Name ?? "own figures"}: kerf {Wording.Mm(brief.Process.KerfMm)}, a cut edge ± {Wording.Mm(brief.Process.ToleranceMm)}"],
        ];
        if (brief.Office.Owner.Length > 0)
        {
            rows.Add(["Owner", brief.Office.Owner]);
        }

        if (brief.Office.Revision.Length > 0)
        {
            rows.Add(["Revision", brief.Office.Revision]);
        }

        if (brief.Date is DateOnly date)
        {
            rows.Add(["Date", date.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)]);
        }

        page.Table(["What", "Given"], rows);
        if (MissingLetters.Of(brief) is string boxed)
        {
            page.Paragraph(boxed);
        }
    }

    private static string Gear(DriveBrief drive) => drive.Poles is int poles && drive.GearRatio is double ratio
        ? $", from {Wording.Number(poles, 0)} poles and a gear ratio of {Wording.Number(ratio, 4)}"
        : "";

    private static string S(double seconds) => Wording.Number(seconds, 3);

    private static string Counted(int count, string one, string several) => $"{Wording.Number(count, 0)} {(count == 1 ? one : several)}";
}
