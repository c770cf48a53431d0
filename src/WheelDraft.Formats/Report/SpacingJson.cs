using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>Spacing rows in the report.</summary>
internal static class SpacingJson
{
    public static void Write(JsonSheet json, Design design) => json.Objects("spacing", design.OpenContacts, o => json.Text("items", o.Output));
}
