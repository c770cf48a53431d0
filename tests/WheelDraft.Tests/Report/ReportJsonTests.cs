using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using WheelDraft.Engineering;
using WheelDraft.Formats.Prose;
using WheelDraft.Formats.Report;
using Xunit;

namespace WheelDraft.Tests.Report;

/// <summary>What report.json promises beyond its shape: rounding, ranges, order, what is absent.</summary>
public sealed class ReportJsonTests
{
    public static TheoryData<string> Demos => ReportSchemaTests.Demos;

    // The bench on three lines, its motor from L to L2: 230 √3 V between them (worked by hand), and a contact current for every wiper.
    [Fact]
    public void Write_ThreeLines_HasTheirVoltagesAndCurrents()
    {
        string text = File.ReadAllText(Tests.Demos.PathOf("propagation-bench"))
            .Replace("[supply]\n", "[supply]\nlines = [\"L\", \"L2\", \"L3\"]\nvoltage_tolerance = \"10 %\"\n", StringComparison.Ordinal)
            .Replace("between = [\"run\", \"N\"]", "between = [\"run\", \"L2\"]", StringComparison.Ordinal);
        Design design = Design.Of(WheelDraft.Formats.Parameters.ParameterReader.Read(System.Text.Encoding.UTF8.GetBytes(text)).Brief!);
        JsonObject circuit = ReportSchemaTests.Report(design)["circuit"]!.AsObject();
        JsonNode lines = circuit["working_voltage"]!.AsArray().Single(v => v!["between"]!.ToJsonString() is "[\"L\",\"L2\"]")!;
        Assert.Equal(230 * Math.Sqrt(3), (double)lines["volts"]!, 1e-6);
        JsonNode[] currents = [.. circuit["currents"]!.AsArray().Select(c => c!)];
        Assert.Equal(["(feed)", .. design.Brief.Outputs.Select(o => o.Name)], currents.Select(c => (string)c["contact"]!), StringComparer.Ordinal);
        Assert.True((double)currents[0]["carried_a"]! > 0);
        Assert.NotEmpty(WheelDraft.Formats.Page.ShowPage.Write(design));
        Assert.Contains("398.4 V between two of them", System.Text.Encoding.UTF8.GetString(MarkdownWriter.Write(ReportMarkdown.Page(design))), StringComparison.Ordinal);
    }

    // Nineteen inputs have half a million positions; but each lamp hangs by its own switch, the motor by the humidity switch and the valve by the lid: the sets say so, and every
    // position of each is there.
    [Fact]
    public void Write_InputsThatMatterApart_ListsThePositionsOfEachSet()
    {
        string[] numbers = [.. Enumerable.Range(0, 17).Select(i => i.ToString(CultureInfo.InvariantCulture))];
        string text = File.ReadAllText(Tests.Demos.PathOf("propagation-bench")) + string.Concat(numbers.Select(i =>
            $"\n[[input]]\nname = \"s{i}\"\nbetween = [\"L\", \"leg{i}\"]\nclosed_when = \"switch {i} is on\"\n\n[[load]]\nname = \"lamp {i}\"\nbetween = [\"leg{i}\", \"N\"]\npower = \"7 W\"\npower_factor = 1\n"));
        JsonObject circuit = ReportSchemaTests.Report(Design.Of(WheelDraft.Formats.Parameters.ParameterReader.Read(text).Brief!))["circuit"]!.AsObject();
        Assert.False((bool)circuit["states_complete"]!);
        string[][] sets = [.. circuit["states_apart"]!.AsArray().Select(s => s!.AsArray().Select(i => (string)i!).ToArray())];
        Assert.Equal(["humidity switch", "lid", .. numbers.Select(i => $"s{i}")], sets.Select(Assert.Single), StringComparer.Ordinal);

        // Each position of a set, all others open, stands there once an interval, and nothing else does.
        HashSet<string> wanted = [.. sets.SelectMany(s => Enumerable.Range(0, 1 << s.Length).Select(bits => Closed(s.Where((_, i) => (bits >> i & 1) != 0))))];
        foreach (IGrouping<int, JsonNode> interval in circuit["states"]!.AsArray().Select(s => s!).GroupBy(s => (int)s["interval"]!))
        {
            string[] listed = [.. interval.Select(s => Closed(s["inputs"]!.AsObject().Where(i => string.Equals((string)i.Value!, "closed", StringComparison.Ordinal)).Select(i => i.Key)))];
            Assert.Equal(wanted.Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
        }

        // A lamp burns just where its switch is closed.
        Assert.All(circuit["states"]!.AsArray(), s => Assert.All(numbers, i => Assert.Equal(
            string.Equals((string)s!["inputs"]![$"s{i}"]!, "closed", StringComparison.Ordinal),
            s["on"]!.AsArray().Any(l => string.Equals((string)l!, $"lamp {i}", StringComparison.Ordinal)))));

        static string Closed(IEnumerable<string> inputs) => string.Join(", ", inputs.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Write_Demo_RowsAreOneAPairAndKindInOrdinalOrder(string name)
    {
        JsonArray rows = ReportSchemaTests.Report(ReportSchemaTests.DemoDesign(name))["spacing"]!.AsArray();
        List<string> seen = [];
        foreach (JsonNode? row in rows)
        {
            string[] between = [.. row!["between"]!.AsArray().Select(n => (string)n!)];
            Assert.True(string.CompareOrdinal(between[0], between[1]) < 0);
            string kind = (string)row["kind"]!;
            seen.Add(string.Equals(kind, "open-contact", StringComparison.Ordinal) ? $"{kind} {(string)row["output"]!}" : $"{kind} {between[0]} {between[1]}");
        }

        Assert.Equal(seen.Distinct(StringComparer.Ordinal), seen, StringComparer.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Write_Demo_ListsEveryIntervalWithEveryInputPosition(string name)
    {
        JsonObject circuit = ReportSchemaTests.Report(ReportSchemaTests.DemoDesign(name))["circuit"]!.AsObject();
        JsonArray states = circuit["states"]!.AsArray();
        int inputs = states[0]!["inputs"]!.AsObject().Count;

        // An input that a lever works follows it: what blocks the lever and what latches it are then the free ones, two for each lever of the demos.
        int levers = states[0]!["levers"]?.AsObject().Count ?? 0;
        Assert.Equal(circuit["intervals"]!.AsArray().Count << (inputs - levers + (2 * levers)), states.Count);
        Assert.All(states, s => Assert.DoesNotContain(s!["on"]!.AsArray(), n => string.Equals((string?)n, "motor", StringComparison.Ordinal)));
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Write_Demo_NumbersAreRoundedAndNeverANegativeZero(string name)
    {
        string text = System.Text.Encoding.UTF8.GetString(ReportJson.Write(ReportSchemaTests.DemoDesign(name)));
        string figures = Regex.Replace(text, "\"(?:[^\"\\\\]|\\\\.)*\"", "\"\"", RegexOptions.None, TimeSpan.FromSeconds(60));
        Assert.DoesNotMatch(new Regex("-0(?![.0-9])", RegexOptions.None, TimeSpan.FromSeconds(60)), figures);
        Assert.DoesNotMatch(new Regex("[0-9][eE][+-]?[0-9]", RegexOptions.None, TimeSpan.FromSeconds(60)), figures);
        Assert.DoesNotMatch(new Regex("\\.[0-9]{10,}", RegexOptions.None, TimeSpan.FromSeconds(60)), figures);
    }

    [Fact]
    public void Write_ThermostatInTheMotorsLead_SaysThatTheWheelCanStandAnywhere()
    {
        // It once said "parks nowhere" and gave no figure, though the wheel can stand with 230 V over any gap.
        Brief bench = ReportSchemaTests.DemoDesign("propagation-bench.toml").Brief;
        Design design = Design.Of(bench with
        {
            DriveMotor = bench.DriveMotor! with { From = "lead" },
            Inputs = [.. bench.Inputs, new InputBrief("thermostat", "run", "lead", null)],
        });
        JsonObject circuit = ReportSchemaTests.Report(design)["circuit"]!.AsObject();
        Assert.Equal("no", (string?)circuit["cycle"]);
        Assert.False((bool)circuit["cycle_completes"]!);
        Assert.NotEmpty(circuit["cycle_history"]!.AsArray());
        JsonObject[] standing = [.. circuit["standing"]!.AsArray().Select(s => s!.AsObject())];
        for (double at = 0.5; at < 360; at++)
        {
            Assert.Contains(standing, s => ((at - (double)s["from_deg"]! + 360) % 360) <= (((double)s["to_deg"]! - (double)s["from_deg"]! + 360) % 360));
        }

        Assert.Contains(standing, s => ((string)s["why"]!).Contains("'thermostat'", StringComparison.Ordinal) && s["outputs"]!.AsArray().Count > 0);
        string words = System.Text.Encoding.UTF8.GetString(MarkdownWriter.Write(ReportMarkdown.Page(design)));
        Assert.DoesNotContain("parks nowhere", words, StringComparison.Ordinal);
        Assert.DoesNotContain("always completes", words, StringComparison.Ordinal);
        Assert.Contains("A cycle does not always complete.", words, StringComparison.Ordinal);
        Assert.Contains("It asks what 'lid' senses", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_TwoFixedSolids_HaveNoAngle()
    {
        Brief brief = Briefs.Worked() with
        {
            Parts =
            [
                new("frame", PartKind.Earthed, "E", new(WheelDraft.Geometry.Contour.Circle(new(60, 0), 5)), -40, -12),
                new("screw", PartKind.Live, "mist", new(WheelDraft.Geometry.Contour.Circle(new(80, 0), 2)), -40, -12),
            ],
        };
        JsonArray rows = ReportSchemaTests.Report(Design.Of(brief))["spacing"]!.AsArray();
        JsonNode between = rows.Single(r => string.Equals((string?)r!["between"]![0], "E", StringComparison.Ordinal) && string.Equals((string?)r["between"]![1], "mist", StringComparison.Ordinal))!;
        Assert.Null(between["at_deg"]);
        Assert.Equal(13, (double)between["nominal_mm"]!, 1e-6);
    }

    [Fact]
    public void Write_WheelWithoutStrips_GivesNoFrictionInsteadOfNothing()
    {
        Brief brief = Briefs.Worked();
        JsonObject report = ReportSchemaTests.Report(Design.Of(brief with { Drive = brief.Drive with { Friction = new(0.2, 0.5) } }));
        Assert.False(report.ContainsKey("friction"));
    }

    [Fact]
    public void Write_DesignThatMisses_TellsNothingTwice()
    {
        Design design = Design.Of(ReportSchemaTests.Missing());
        Assert.Equal(design.Findings.Distinct(), design.Findings);
        Finding clearance = Assert.Single(design.Findings, f => f.Code is "spacing.clearance");
        Assert.Contains("0.90 mm", clearance.Message, StringComparison.Ordinal);
        Assert.Contains("IEC 60664-1", clearance.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_PartThatTheWheelTouches_IsToldOnce()
    {
        Brief brief = ReportSchemaTests.Missing();
        Design design = Design.Of(brief with { Parts = [brief.Parts[0] with { FromZMm = -1 }] });
        Assert.Equal("spacing.touch", Assert.Single(design.Findings, f => f.Severity == FindingSeverity.Error).Code);
    }

    [Fact]
    public void Markdown_DesignThatMisses_HasTableRemediesAndSteps()
    {
        string text = System.Text.Encoding.UTF8.GetString(MarkdownWriter.Write(ReportMarkdown.Page(Design.Of(ReportSchemaTests.Missing()))));
        foreach (string part in (string[])["Something misses", "| **misses** |", "### What would meet", "## Appendix: spacing, step by step", "## Not checked", "## Cautions", "### What makes up the worst case"])
        {
            Assert.Contains(part, text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Demos))]
    public void Markdown_Demo_TablesAreWhole(string name)
    {
        string[] lines = System.Text.Encoding.UTF8.GetString(MarkdownWriter.Write(ReportMarkdown.Page(ReportSchemaTests.DemoDesign(name)))).Split('\n');
        for (int i = 1; i < lines.Length; i++)
        {
            if (lines[i].StartsWith('|') && lines[i - 1].StartsWith('|'))
            {
                Assert.Equal(lines[i - 1].Length, lines[i].Length);
            }
        }

        Assert.DoesNotContain(lines, l => l.Contains("NaN", StringComparison.Ordinal) || l.Contains("Infinity", StringComparison.Ordinal));
    }
}
