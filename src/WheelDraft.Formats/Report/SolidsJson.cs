using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>The conductive solids in the report, at programme angle 0.</summary>
internal static class SolidsJson
{
    public static void Write(JsonSheet json, Design design) => json.Objects("solids", design.Solids, solid =>
    {
        json.Text("name", solid.Name);
        json.Text("net", solid.Net);
        json.Text("kind", solid.Kind switch
        {
            SolidKind.Live => "live",
            SolidKind.Earthed => "earthed",
            SolidKind.Touchable => "touchable",
            _ => "floating",
        });
        json.Flag("turns", solid.Turns);
        if (solid.IsLowered)
        {
            json.Flag("while_open", true);
        }

        json.MmList("z_mm", solid.FromZMm, solid.ToZMm);
        json.RawList("outline", Vertices(solid.Outline.Outer));
        json.RawList("holes", solid.Outline.Holes.Select(OutlineJson.Vertices));
    });

    private static IEnumerable<string> Vertices(Geometry.Contour contour) => [OutlineJson.Vertices(contour)[1..^1]];
}
