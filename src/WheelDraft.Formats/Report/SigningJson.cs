using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>What a report rests on, and who answers for it, in report.json.</summary>
internal static class SigningJson
{
    /// <summary>Name of the program.</summary>
    public const string Program = "WheelDraft";

    /// <summary>Version of the program: the one of src/Directory.Build.props, without what a build may add to it.</summary>
    public static string Version { get; } = typeof(SigningJson).Assembly.GetName().Version!.ToString(3);

    /// <summary>The impulse tests of a design's clearances.</summary>
    public static IReadOnlyList<ImpulseTest> Tests(Design design) => ImpulseTest.Of(
    [
        .. design.Spacing.Rows.Where(r => r.Kind == SpacingKind.Clearance).Select(r => r.Required),
        .. design.OpenContacts.Select(o => o.Requirement?.Clearance).OfType<Requirement>(),
    ]);

    /// <summary>Program, tables, tests and evidence.</summary>
    public static void Write(JsonSheet json, Design design)
    {
        json.Object("program", () =>
        {
            json.Text("name", Program);
            json.Text("version", Version);
        });
        json.Object("rule_data", () =>
        {
            json.Text("sha256", PublishedTables.Sha256());
            json.Objects("tables", PublishedTables.All, t =>
            {
                json.Text("table", t.Citation);
                json.Text("confidence", t.Confidence);
                json.Text("read_in", t.ReadIn);
            });
        });
        json.Objects("impulse_tests", Tests(design), t =>
        {
            json.Plain("dimensioned_for_v", t.RatedV);
            json.Plain("at_sea_level_v", t.AtSeaLevelV);
            json.Plain("at_200_m_v", t.At200MetresV);
            json.Plain("at_500_m_v", t.At500MetresV);
            json.Text("source", t.Source);
        });
        json.Texts("evidence_asked", EvidenceAsked.Of(design.Brief));
    }

    /// <summary>The drawing office; left out when the file says nothing of it.</summary>
    public static void Office(JsonSheet json, DrawingOfficeBrief office)
    {
        if (office == new DrawingOfficeBrief())
        {
            return;
        }

        json.Object("drawing_office", () =>
        {
            json.Text("owner", office.Owner);
            json.Text("created_by", office.CreatedBy);
            json.Text("approved_by", office.ApprovedBy);
            json.Text("revision", office.Revision);
            json.Objects("revisions", office.Revisions, r =>
            {
                json.Text("revision", r.Revision);
                if (r.Date is DateOnly date)
                {
                    json.Text("date", date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
                }

                json.Text("text", r.Text);
            });
        });
    }
}
