using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Report;

/// <summary>The machine-readable report of a design, format 1.</summary>
/// <remarks>Its keys are documented by report.schema.json beside this file. A figure that was not evaluated is absent, never 0.</remarks>
internal static class ReportJson
{
    /// <summary>The whole report.</summary>
    public static byte[] Write(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        using JsonSheet json = new();
        json.Object(() =>
        {
            json.Whole("format", 1);
            json.Text("title", design.Brief.Title);
            if (design.Brief.DrawingNumber is string number)
            {
                json.Text("drawing", number);
            }

            SigningJson.Office(json, design.Brief.Office);
            json.Text("input_sha256", design.Brief.InputSha256);
            if (design.Brief.SettledSha256 is string settled)
            {
                json.Text("settled_sha256", settled);
            }

            json.Text("verdict", design.Meets ? "meets" : "misses");
            Motion(json, design);
            WheelJson.Write(json, design);
            TimingJson.Write(json, design);
            SolidsJson.Write(json, design);
            SpacingJson.Write(json, design);
            SpacingJson.WriteAllPairs(json, design.Spacing);
            StripsJson.Write(json, design);
            CamsJson.Write(json, design);
            CircuitJson.Write(json, design);
            BuildJson.Write(json, design);
            RemediesJson.Write(json, design.Remedies);
            json.Objects("findings", design.Findings, f => Finding(json, f));
            json.Objects("assumptions", design.Assumptions, a =>
            {
                json.Text("key", a.Key);
                json.Text("words", a.Words);
            });
            json.Texts("not_evaluated", NotEvaluated.Of(design));
            json.Texts("not_checked", NotEvaluated.NotChecked);
            SigningJson.Write(json, design);
            json.Texts("cautions", Cautions.For(design));
        });
        return json.Finish();
    }

    private static void Motion(JsonSheet json, Design design) => json.Object("motion", () =>
    {
        json.Plain("turn_time_s", design.Motion.TurnTimeS);
        json.Text("direction", design.Motion.Direction == Turning.Clockwise ? "clockwise" : "anticlockwise");
        json.Plain("degrees_per_second", design.Motion.SpeedDegPerS);
    });

    internal static void Finding(JsonSheet json, Finding finding)
    {
        json.Text("severity", finding.Severity switch
        {
            FindingSeverity.Error => "error",
            FindingSeverity.Warning => "warning",
            _ => "note",
        });
        json.Text("code", finding.Code);
        json.Text("message", finding.Message);
        if (finding.Where is TextPlace where)
        {
            json.Object("where", () =>
            {
                json.Whole("line", where.Line);
                json.Whole("column", where.Column);
            });
        }
    }
}
