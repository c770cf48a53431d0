using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>What would make missing rows meet, in the report; nothing where nothing misses.</summary>
internal static class RemediesJson
{
    public static void Write(JsonSheet json, IReadOnlyList<Remedy> remedies)
    {
        if (remedies.Count == 0)
        {
            return;
        }

        json.Objects("remedies", remedies, r =>
        {
            json.RawList("between", JsonSheet.Quoted(r.Row.Nets.First), JsonSheet.Quoted(r.Row.Nets.Second));
            json.Text("kind", r.Row.Kind == SpacingKind.Clearance ? "clearance" : "creepage");
            json.Text("change", r.Kind switch { RemedyKind.Move => "move", RemedyKind.Rib => "rib", RemedyKind.Slot => "slot", _ => "material" });
            json.Text("words", r.Text);
            if (r.Kind != RemedyKind.Material)
            {
                json.Mm("amount_mm", r.AmountMm);
            }

            if (double.IsFinite(r.WorstAfterMm))
            {
                json.Mm("worst_after_mm", r.WorstAfterMm);
            }

            json.Texts("new_misses", r.NewMisses);
        });
    }
}
