using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Cli;

/// <summary>What a person wants to know when the work is done: a design in a few lines of a terminal, the verdict first and the first thing to change last.</summary>
internal sealed class DesignSummary(string file, Design design)
{
    private readonly ReadersUnit _unit = ReadersUnit.Of(design.Brief);

    /// <summary>The lines.</summary>
    public IEnumerable<string> Lines() =>
    [
        $"{file}: {design.Brief.Title}: {Verdict()}",
        $"  wheel {Length(design.Wheel.OuterDiameterMm)} across, one turn in {Wording.Seconds(design.Motion.TurnTimeS)}, {(design.Motion.Direction == Turning.Clockwise ? "clockwise" : "anticlockwise")} seen from the wiper side",
        .. design.Wheel.Rings.SelectMany(Output),
        .. Strips(),
        .. Tightest(),
        .. FirstToChange(),
    ];

    /// <summary>"nothing misses", or how much does, and how many warnings there are.</summary>
    private string Verdict()
    {
        int errors = design.Findings.Count(f => f.Severity == FindingSeverity.Error);
        int warnings = design.Findings.Count(f => f.Severity == FindingSeverity.Warning);
        return (errors == 0 ? "nothing misses" : $"something misses, {Counted(errors, "error")}") + (warnings == 0 ? "" : $", {Counted(warnings, "warning")}");
    }

    private IEnumerable<string> Output(RingLayout ring)
    {
        if (ring.IsWhole)
        {
            return [$"  {ring.Name}: always on"];
        }

        OutputBrief output = design.Brief.Outputs.First(o => string.Equals(o.Name, ring.Name, StringComparison.Ordinal));
        return ring.Periods.Select(p =>
        {
            double from = design.Motion.SecondsFromRad(p.Wanted.StartRad), on = design.Motion.SecondsFromRad(p.Wanted.SweepRad);
            string dose = output.FlowLPerS is double flow ? $", {Wording.Number(on * flow * 1000, 1)} mL" : "";
            return $"  {ring.Name}: on {Wording.Seconds(on)}{dose} from {Wording.Seconds(from)}, at worst {Wording.Number(on - p.Limits.ShorterS, 3)} to {Wording.Seconds(on + p.Limits.LongerS)} (±{Wording.Seconds(output.ToleranceS ?? 0)} asked)";
        });
    }

    private IEnumerable<string> Strips()
    {
        StripSpring[] springs = [.. design.Strips.Strips.Select(s => s.Spring).OfType<StripSpring>()];
        return springs.Length == 0
            ? ["  strips: none given that press, so their forces are not worked out"]
            : [FormattableString.Invariant($"  strips: {Counted(springs.Length, "contact")}, each strip within its limits pressing with {Math.Floor(100 * springs.Min(s => s.LeastForceN)) / 100:0.00} to {Math.Ceiling(100 * springs.Max(s => s.MostForceN)) / 100:0.00} N")];
    }

    // The place with the least of what it needs: a distance twice what is asked is further off than one a tenth more, whatever they measure.
    private IEnumerable<string> Tightest()
    {
        // Windows are cut so that open contacts have just what they need: unless they miss, that says nothing where there is other spacing.
        (double WorstMm, double RequiredMm, string What)[] pairs = [.. design.Spacing.Rows.Select(r => (r.WorstMm, r.Required.RequiredMm, $"{(r.Kind == SpacingKind.Clearance ? "clearance" : "creepage")} between {r.FirstItem} and {r.SecondItem}"))];
        IEnumerable<(double WorstMm, double RequiredMm, string What)> open = design.OpenContacts
            .Where(o => o.RequiredMm is double required && (pairs.Length == 0 || Verdicts.On(o.WorstMm, required) == SpacingVerdict.Misses))
            .Select(o => (o.WorstMm, o.RequiredMm!.Value, $"open contact of {o.Output}"));
        return pairs.Concat(open).Where(p => p.RequiredMm > 0).OrderBy(p => p.WorstMm / p.RequiredMm).Take(1)
            .Select(p => $"  tightest: {p.What}, {Length(p.WorstMm)} at worst where {Length(p.RequiredMm)} is required");
    }

    private IEnumerable<string> FirstToChange()
    {
        if (design.Findings.FirstOrDefault(f => f.Severity == FindingSeverity.Error) is not { } first)
        {
            return [];
        }

        string place = first.Where is { } at ? FormattableString.Invariant($"line {at.Line}: ") : "";
        string remedy = first.Code.StartsWith("spacing.", StringComparison.Ordinal) && design.Remedies.FirstOrDefault(r => r.NewMisses.Count == 0) is { } smallest ? $" What would meet: {smallest.Text}" : "";
        return [$"  first to change: {place}{_unit.Words(first.Message + remedy)}"];
    }

    private string Length(double lengthMm) => _unit.Words(Wording.Mm(lengthMm));

    private static string Counted(int count, string what) => $"{Wording.Number(count, 0)} {what}{(count == 1 ? "" : "s")}";
}
