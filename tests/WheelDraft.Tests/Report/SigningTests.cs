using System.Text;
using System.Text.Json.Nodes;
using WheelDraft.Engineering;
using WheelDraft.Formats.Prose;
using WheelDraft.Formats.Report;
using Xunit;

namespace WheelDraft.Tests.Report;

/// <summary>What a person needs who puts a name under a report.</summary>
public sealed class SigningTests
{
    [Fact]
    public void Write_Report_NamesProgramTablesAndTheirHash()
    {
        JsonObject report = ReportSchemaTests.Report(Design.Of(Briefs.Worked()));
        Assert.Equal("WheelDraft", (string?)report["program"]!["name"]);
        Assert.Matches("^[0-9]+\\.[0-9]+\\.[0-9]+$", (string)report["program"]!["version"]!);
        Assert.Equal(PublishedTables.Sha256(), (string?)report["rule_data"]!["sha256"]);
        Assert.Equal(PublishedTables.All.Count, report["rule_data"]!["tables"]!.AsArray().Count);
    }

    [Fact]
    public void Sha256_OneValueChanged_IsAnother()
    {
        // The hash is made of the values' own text, so it is enough that every value stands in it.
        string all = string.Join('\n', PublishedTables.All.Select(t => t.Values));
        foreach (ImpulseClearanceRow row in Iec60664TableF2.Rows)
        {
            Assert.Contains(FormattableString.Invariant($"{row.ImpulseV} {row.Degree1} {row.Degree2} {row.Degree3}"), all, StringComparison.Ordinal);
        }

        foreach (CreepageRow row in Iec60664TableF5.Rows.Concat(Iec60335Table17.Rows).Concat(Iec60335Table18.Rows))
        {
            Assert.Contains(FormattableString.Invariant($"{row.VoltageV} {row.Degree1} {row.Degree2I} {row.Degree2II} {row.Degree2III} {row.Degree3I} {row.Degree3II} {row.Degree3III}"), all, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Of_Clearances_AreTestedByTheRowOfTheirImpulseVoltage()
    {
        // Basic and reinforced at 230 V, category II: 2.5 kV and, one preferred step up, 4 kV; IEC 60664-1:2020 Table F.6 asks
        // 2.92 and 4.923 kV at sea level.
        Brief brief = Briefs.Worked() with
        {
            Parts =
            [
                new("frame", PartKind.Earthed, "E", new(WheelDraft.Geometry.Contour.Circle(new(60, 0), 5)), -40, -12),
                new("knob", PartKind.Touchable, "knob", new(WheelDraft.Geometry.Contour.Circle(new(-60, 0), 5)), -40, -12),
            ],
        };
        JsonArray tests = ReportSchemaTests.Report(Design.Of(brief))["impulse_tests"]!.AsArray();
        Assert.Equal([2500d, 4000d], tests.Select(t => (double)t!["dimensioned_for_v"]!));
        Assert.Equal([2920d, 4923d], tests.Select(t => (double)t!["at_sea_level_v"]!));
    }

    [Fact]
    public void Write_DrawingOffice_StandsInReportAndLeavesLinesToSignOn()
    {
        Brief brief = Briefs.Worked() with
        {
            Office = new() { Owner = "Cutting Garden Works", CreatedBy = "M. R.", Revision = "B", Revisions = [new("A", new DateOnly(2026, 10, 2), "first issue")] },
        };
        Design design = Design.Of(brief);
        string page = Encoding.UTF8.GetString(MarkdownWriter.Write(ReportMarkdown.Page(design)));
        Assert.Contains("| Created by  | M. R.", page, StringComparison.Ordinal);
        Assert.Contains("| Approved by | ____", page, StringComparison.Ordinal);
        Assert.Contains("| A        | 2026-10-02 | first issue", page, StringComparison.Ordinal);
        Assert.Equal("B", (string?)ReportSchemaTests.Report(design)["drawing_office"]!["revision"]);
        Assert.Null(ReportSchemaTests.Report(Design.Of(Briefs.Worked()))["drawing_office"]);
    }

    [Theory]
    [InlineData(MaterialGroup.I, "at least 600")]
    [InlineData(MaterialGroup.II, "at least 400")]
    [InlineData(MaterialGroup.IIIa, "at least 175")]
    [InlineData(MaterialGroup.IIIb, "at least 100")]
    public void Of_Carrier_AsksForItsTrackingIndex(MaterialGroup group, string words)
    {
        // Groups by comparative tracking index: IEC 60112 and IEC 60664-1:2007 clause 4.8.1.3 (the clause number from memory).
        Brief brief = Briefs.Worked();
        Assert.Contains(words, EvidenceAsked.Of(brief with { Carrier = brief.Carrier with { Group = group } })[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Steps_EveryRequirement_NamesStandardAndTableOrClause()
    {
        Design design = Design.Of(Briefs.Worked());
        IEnumerable<string> steps = design.OpenContacts.SelectMany(o => o.Requirement is PairRequirement asked ? [.. asked.Clearance.Steps, .. asked.Creepage!.Steps] : Array.Empty<string>());
        // The person's own keys and what the circuit found name their place in the file or the circuit instead.
        IEnumerable<string> byRule = steps.Where(s => !s.StartsWith("Working voltage", StringComparison.Ordinal) && !s.Contains("margin", StringComparison.OrdinalIgnoreCase));
        Assert.All(byRule, s => Assert.Matches("IEC 60664-1|decides", s));
    }
}
