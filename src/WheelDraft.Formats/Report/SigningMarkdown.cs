using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Formats.Prose;

namespace WheelDraft.Formats.Report;

/// <summary>What makes a report one that can be signed: what it rests on, what else must be shown, how it is tested, and who answers for it.</summary>
internal static class SigningMarkdown
{
    private const string Blank = "______________________________";

    public static void Write(ProsePage page, Design design)
    {
        page.Heading(2, "Evidence to be shown")
            .Paragraph("The design rests on these; no drawing can prove them.")
            .List(EvidenceAsked.Of(design.Brief));
        Tests(page, design);
        page.Heading(2, "What this report rests on")
            .Paragraph($"{SigningJson.Program} {SigningJson.Version}. Parameter file SHA-256 `{design.Brief.InputSha256}`{(design.Brief.SettledSha256 is string settled ? $", settled `{settled}`, of which the mark is" : "")}. Table values SHA-256 `{PublishedTables.Sha256()}`: "
                + "two reports with the same table hash were worked out by the same values.")
            .Table(["Table", "Known", "Read in"], PublishedTables.All.Select(t => (IReadOnlyList<string>)[t.Citation, t.Confidence, t.ReadIn]));
        Signatures(page, design.Brief.Office);
    }

    private static void Tests(ProsePage page, Design design)
    {
        IReadOnlyList<ImpulseTest> tests = SigningJson.Tests(design);
        if (tests.Count == 0)
        {
            return;
        }

        page.Heading(2, "Test voltages")
            .Paragraph($"Impulse voltages, 1.2/50 µs, by which a test house verifies the clearances of the made timer, by the altitude of the test ({tests[0].Source}; confidence: medium). "
                + "Only a qualified person tests at these voltages.")
            .Table(["Dimensioned for, kV", "At sea level, kV", "At 200 m, kV", "At 500 m, kV"], tests.Select(t => (IReadOnlyList<string>)
            [
                Kv(t.RatedV), Kv(t.AtSeaLevelV), Kv(t.At200MetresV), Kv(t.At500MetresV),
            ]));
    }

    private static void Signatures(ProsePage page, DrawingOfficeBrief office)
    {
        page.Heading(2, "Signatures");
        if (office.Revisions.Count > 0)
        {
            page.Table(["Revision", "Date", "What changed"], office.Revisions.Select(r => (IReadOnlyList<string>)
            [
                r.Revision, r.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "", r.Text,
            ]));
        }

        page.Table(["", "Name", "Date and signature"],
        [
            ["Created by", office.CreatedBy.Length > 0 ? office.CreatedBy : Blank, Blank],
            ["Approved by", office.ApprovedBy.Length > 0 ? office.ApprovedBy : Blank, Blank],
        ]);
    }

    private static string Kv(double v) => Wording.Number(v / 1000, 3);
}
