using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>Spacing rows in the report: one a net pair and kind, then one an output for its open contact.</summary>
internal static class SpacingJson
{
    public static void Write(JsonSheet json, Design design) =>
        json.Array<Action>("spacing", [.. design.Spacing.Rows.Select(r => (Action)(() => Row(json, r))), .. design.OpenContacts.Select(o => (Action)(() => Open(json, design, o)))], row => json.Object(row));

    /// <summary>Every pair of items, one row a kind; steps are listed with the pair that decides.</summary>
    public static void WriteAllPairs(JsonSheet json, SpacingTable table) => json.Objects("all_pairs", table.AllPairs, row =>
    {
        Figures(json, row);
        json.Text("basis", row.Required.BasisInFull);
        json.Text("verdict", Word(row.Verdict));
    });

    /// <summary>The word of a verdict.</summary>
    public static string Word(SpacingVerdict verdict) => verdict switch
    {
        SpacingVerdict.Misses => "misses",
        SpacingVerdict.Tight => "tight",
        _ => "meets",
    };

    /// <summary>One row for a pair of nets.</summary>
    public static void Row(JsonSheet json, SpacingRow row)
    {
        Figures(json, row);
        json.Text("basis", row.Required.BasisInFull);
        json.Text("confidence", row.Required.ConfidenceInWords);
        json.Texts("steps", row.Steps);
        json.Text("verdict", Word(row.Verdict));
    }

    private static void Figures(JsonSheet json, SpacingRow row)
    {
        json.RawList("between", Quoted(row.Nets.First), Quoted(row.Nets.Second));
        json.RawList("items", Quoted(row.FirstItem), Quoted(row.SecondItem));
        json.Text("kind", row.Kind == SpacingKind.Clearance ? "clearance" : "creepage");
        json.Text("insulation", Grade(row.Nets.Grade));
        json.Plain("working_v", row.Nets.WorkingV);
        json.Mm("required_mm", row.Required.RequiredMm);
        json.Mm("nominal_mm", row.NominalMm);
        json.Mm("worst_mm", row.WorstMm);
        if (row.AtRad is double at)
        {
            json.Deg("at_deg", at);
        }

        Points(json, row.OnFirst, row.OnSecond);
        if (row.Bounds is GapBounds bounds)
        {
            json.MmList("bounds_mm", bounds.LowerMm, bounds.UpperMm);
        }
    }

    private static void Open(JsonSheet json, Design design, OpenContact open)
    {
        string[] nets = [.. new[] { open.WheelNet, open.WiperNet }.Order(StringComparer.Ordinal)];
        json.RawList("between", nets.Select(Quoted));
        json.RawList("items", Quoted("wheel"), Quoted($"{open.Output} nose"));
        json.Text("kind", "open-contact");
        json.Text("output", open.Output);
        json.Plain("working_v", open.WorkingV);
        if (open.RequiredMm is double required)
        {
            json.Mm("required_mm", required);
        }

        json.Mm("nominal_mm", open.NominalMm);
        json.Mm("worst_mm", open.WorstMm);
        json.Deg("at_deg", open.AtRad);
        Points(json, SpacePoint.At(open.Deciding.OnCopper, 0), SpacePoint.At(open.Deciding.OnNose, 0));
        json.Text("decides", open.SidewaysDecides ? "sideways" : "along");
        Gap(json, "along", open.Along);
        Gap(json, "sideways", open.Sideways);
        json.Plain("opening_mm_per_s", open.OpeningMmPerS);
        json.Objects("off_periods", open.Periods, p => Period(json, design, p));
        if (open.Parked is ParkedGap parked)
        {
            json.Object("parked", () =>
            {
                json.Deg("from_deg", parked.IsWholeTurn ? 0 : parked.FromRad);
                json.RawAngle("to_deg", parked.IsWholeTurn ? "360" : JsonSheet.DegFigure(parked.ToRad));
                json.Mm("least_mm", parked.LeastMm);
                json.Mm("worst_mm", parked.WorstMm);
                json.Text("why", parked.Why);
            });
        }

        if (open.DecidingRule is Requirement deciding)
        {
            json.Text("basis", deciding.BasisInFull);
            json.Texts("steps", open.Steps);
            json.Text("verdict", Word(Verdicts.On(open.WorstMm, open.RequiredMm!.Value)));
        }
        else
        {
            json.Text("basis", "contact gap without specified separation: micro-interruption unless tested");
        }
    }

    private static void Points(JsonSheet json, SpacePoint first, SpacePoint second) =>
        json.Array("points", [first, second], p => json.RawValue(JsonSheet.List([JsonSheet.MmFigure(p.X), JsonSheet.MmFigure(p.Y), JsonSheet.MmFigure(p.Z)])));

    private static void Gap(JsonSheet json, string name, OpenGap? gap)
    {
        if (gap is null)
        {
            return;
        }

        if (gap.RequiredMm is double required)
        {
            json.Mm($"{name}_required_mm", required);
        }

        json.Mm($"{name}_mm", gap.NominalMm);
        json.Mm($"{name}_worst_mm", gap.WorstMm);
        if (gap.Over.Count > 0)
        {
            json.Texts($"{name}_over", gap.Over);
        }
    }

    private static void Period(JsonSheet json, Design design, OpenPeriod period)
    {
        json.Deg("break_deg", period.BreakRad);
        json.Deg("make_deg", period.MakeRad);
        json.Mm("greatest_mm", period.GreatestMm);
        json.Mm("greatest_worst_mm", period.WorstGreatestMm);
        json.Deg("greatest_at_deg", period.GreatestAtRad);
        if (period.ReachedAfterRad is double after)
        {
            json.Deg("reached_after_deg", after);
            json.Plain("reached_after_s", design.Motion.SecondsFromRad(after));
        }
    }

    /// <summary>The word of a grade.</summary>
    public static string Grade(Insulation grade) => grade switch
    {
        Insulation.Functional => "functional",
        Insulation.Basic => "basic",
        Insulation.Supplementary => "supplementary",
        _ => "reinforced",
    };

    private static string Quoted(string text) => JsonSheet.Quoted(text);
}
