using System.Text;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Formats.Report;

namespace WheelDraft.Formats.Dxf.Checking;

/// <summary>A judged drawing as JSON: rows and findings as in report.json.</summary>
internal static class DrawingCheckJson
{
    /// <summary>The whole document, with a last LF.</summary>
    public static string Write(DrawingCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        using JsonSheet json = new();
        json.Object(() =>
        {
            json.Whole("format", 1);
            json.Text("verdict", check.Meets ? "meets" : "misses");
            json.Plain("unit_mm", check.Drawing.UnitMm);
            json.Objects("layers", check.Drawing.Layers, l =>
            {
                json.Text("name", l.Name);
                json.Whole("contours", l.Contours.Count);
                json.Whole("open", l.OpenPaths.Count);
                json.Whole("areas", l.Areas.Count);
            });
            json.Flag("measured", check.IsMeasured);
            json.Flag("complete", check.IsComplete);
            json.Objects("left_out", check.NotCounted, l =>
            {
                json.Text("layer", l.Layer);
                json.Text("entity", l.Entity);
                json.Text("what", Word(l.What));
                json.Whole("count", l.Count);
                json.Whole("line", l.Line);
                json.Text("why", l.Why);
            });
            json.Objects("spacing", check.Spacing.Rows, r => SpacingJson.Row(json, r));
            if (check.Cut is CutFigures cut)
            {
                json.Object("process", () => Cut(json, cut));
            }

            json.Objects("findings", check.Findings, f => ReportJson.Finding(json, f));
        });
        return Encoding.UTF8.GetString(json.Finish());
    }

    private static string Word(LeftOutKind what) => what switch
    {
        LeftOutKind.Shape => "shape",
        LeftOutKind.Words => "words",
        LeftOutKind.Annotation => "annotation",
        LeftOutKind.PaperSpace => "paper-space",
        LeftOutKind.OpenLine => "open-line",
        LeftOutKind.Frame => "frame",
        _ => "ignored",
    };

    private static void Cut(JsonSheet json, CutFigures cut)
    {
        void Pair(string name, double? least, double needed)
        {
            if (least is double there)
            {
                json.Mm($"least_{name}_mm", there);
            }

            json.Mm($"needed_{name}_mm", needed);
        }

        json.Text("name", cut.Process);
        Pair("web", cut.LeastWebMm, cut.NeededWebMm);
        Pair("slot", cut.LeastSlotMm, cut.NeededSlotMm);
        Pair("hole", cut.LeastHoleMm, cut.NeededHoleMm);
    }
}
