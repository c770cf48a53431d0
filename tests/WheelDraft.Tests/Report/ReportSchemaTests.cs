using System.Text.Json.Nodes;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Formats.Report;
using WheelDraft.Tests.Parameters;
using Xunit;

namespace WheelDraft.Tests.Report;

/// <summary>report.json against its schema: every demo, and designs that miss.</summary>
public sealed class ReportSchemaTests
{
    private static readonly JsonObject Schema = JsonNode.Parse(ReportSchema.Text())!.AsObject();

    public static TheoryData<string> Demos => [.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "parameters"), "*.toml").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];

    internal static Design DemoDesign(string name) =>
        Design.Of(ParameterReader.Read(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "parameters", name))).Brief!);

    internal static JsonObject Report(Design design) => JsonNode.Parse(ReportJson.Write(design))!.AsObject();

    /// <summary>A wheel with an earthed part 0.9 mm above its face: 1.5 mm and a margin are asked.</summary>
    internal static Brief Missing() => Briefs.Worked() with
    {
        Parts = [new("frame", PartKind.Earthed, "E", new(WheelDraft.Geometry.Contour.Circle(new(18, 0), 2)), 0.9, 4)],
    };

    [Theory]
    [MemberData(nameof(Demos))]
    public void Write_Demo_IsWhatTheSchemaSays(string name) => Assert.Equal("", Fault(Report(DemoDesign(name))));

    [Fact]
    public void Write_DesignThatMisses_IsWhatTheSchemaSaysAndOffersRemedies()
    {
        JsonObject report = Report(Design.Of(Missing()));
        Assert.Equal("", Fault(report));
        Assert.Equal("misses", (string?)report["verdict"]);
        Assert.NotEmpty(report["remedies"]!.AsArray());
    }

    [Fact]
    public void Schema_KeyThatItDoesNotKnow_IsRefused()
    {
        JsonObject report = Report(Design.Of(Briefs.Worked()));
        report["motion"]!["rpm"] = 1;
        Assert.NotEmpty(Fault(report));
    }

    [Fact]
    public void Write_Twice_GivesTheSameBytes() =>
        Assert.Equal(ReportJson.Write(Design.Of(Briefs.Worked())), ReportJson.Write(Design.Of(Briefs.Worked())));

    /// <summary>The keys at the top that the schema refuses by themselves; empty when it accepts all.</summary>
    private static string Fault(JsonObject report)
    {
        if (new SchemaCheck(Schema).Accepts(report))
        {
            return "";
        }

        JsonObject parts = Schema["properties"]!.AsObject();
        return "refused: " + string.Join(", ", report.Where(p => parts[p.Key] is not JsonObject part || !AcceptsPart(part, p.Value)).Select(p => p.Key));
    }

    private static bool AcceptsPart(JsonObject part, JsonNode? value)
    {
        JsonObject alone = part.DeepClone().AsObject();
        alone["$defs"] = Schema["$defs"]!.DeepClone();
        return new SchemaCheck(alone).Accepts(value);
    }
}
