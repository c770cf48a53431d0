using System.Text;
using System.Text.Json.Nodes;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Formats.Prose;
using WheelDraft.Formats.Report;
using Xunit;

namespace WheelDraft.Tests.Report;

/// <summary>What a report counts on without being told: it once said nothing of a contact without worn_length.</summary>
public sealed class AssumptionsTests
{
    [Fact]
    public void Assumptions_WornLengthLeftOut_IsOneByName()
    {
        Design design = Demos.Of("propagation-bench");
        Assert.Contains(design.Assumptions, a => a.Key is "output[1].worn_length" && a.Words.Contains("'stir'", StringComparison.Ordinal));
        Assert.DoesNotContain(design.Assumptions, a => a.Key is "output[2].worn_length");
    }

    [Theory]
    [InlineData("wheel.run_out", "run_out = \"0.10 mm\"\nface", "face")]
    [InlineData("wheel.face_run_out", "face_run_out = \"0.10 mm\"\n", "")]
    [InlineData("drive.backlash", "backlash = \"0.5 deg\"\n", "")]
    [InlineData("drive.coast", "coast = [\"0 deg\", \"0.5 deg\"]\n", "")]
    [InlineData("drive.torque", "torque = \"0.25 N m\"\n", "")]
    [InlineData("drive.friction", "friction = [0.2, 0.5]\n", "")]
    [InlineData("spacing.margin", "margin = \"0.2 mm\"\n", "")]
    [InlineData("environment.altitude", "altitude = \"300 m\"\n", "")]
    [InlineData("carrier.step", "step = \"0 mm\"\n", "")]
    [InlineData("load[0].pull_in", "pull_in = \"80 %\"\n", "")]
    [InlineData("load[0].drop_out", "drop_out = \"20 %\"\n", "")]
    public void Assumptions_KeyGiven_IsNoneAndLeftOut_IsOne(string key, string given, string without)
    {
        string text = File.ReadAllText(Demos.PathOf("propagation-bench")).ReplaceLineEndings("\n");
        Assert.Contains(given, text, StringComparison.Ordinal);
        Assert.DoesNotContain(Of(text), a => string.Equals(a.Key, key, StringComparison.Ordinal));
        Assert.Single(Of(text.Replace(given, without, StringComparison.Ordinal)), a => string.Equals(a.Key, key, StringComparison.Ordinal));
    }

    [Fact]
    public void Assumptions_OfABriefWithoutKeys_AreInTheOrderOfTheFileAndEachOnce()
    {
        Brief brief = Briefs.Plain(Briefs.Output("fan", 30, (20, 60))) with { Places = new Dictionary<string, TextPlace>(StringComparer.Ordinal) };
        string[] keys = [.. Assumptions.Of(brief).Select(a => a.Key)];
        Assert.Equal(keys.Distinct(StringComparer.Ordinal), keys, StringComparer.Ordinal);
        string[] tables = [.. keys.Select(k => k.Split('.', '[')[0]).Distinct(StringComparer.Ordinal)];
        Assert.Equal(["supply", "environment", "drive", "spacing", "wheel", "carrier", "housing", "feed", "output"], tables, StringComparer.Ordinal);
        Assert.Contains("output[0].nose_radius", keys, StringComparer.Ordinal);
    }

    [Fact]
    public void Assumptions_MetalShaftAndFixings_SayHowFarTheyStandOut()
    {
        string[] told = [.. Demos.Of("kiln-room").Assumptions.Select(a => a.Words)];
        Assert.Contains("the metal shaft stands from 20 mm under the carrier to 5 mm above the copper face", told, StringComparer.Ordinal);
        Assert.Contains("screws or rivets stand 1.5 mm above the copper face, and a nut under the carrier by as much as the hole is wide", told, StringComparer.Ordinal);
    }

    [Fact]
    public void Reports_TellThemAndThatAMotorMayFeedItsNet()
    {
        Design design = Demos.Of("propagation-bench");
        JsonNode report = JsonNode.Parse(ReportJson.Write(design))!;
        Assert.Equal(design.Assumptions.Select(a => a.Key), report["assumptions"]!.AsArray().Select(a => (string)a!["key"]!), StringComparer.Ordinal);
        Assert.Contains(report["not_checked"]!.AsArray(), n => ((string)n!).Contains("feeds back", StringComparison.Ordinal));
        string page = Encoding.UTF8.GetString(MarkdownWriter.Write(ReportMarkdown.Page(design)));
        Assert.Contains("## Assumed", page, StringComparison.Ordinal);
        Assert.All(design.Assumptions, a => Assert.Contains(a.Key.Replace("_", "\\_", StringComparison.Ordinal), page.Contains("\\_", StringComparison.Ordinal) ? page : page.Replace("_", "\\_", StringComparison.Ordinal), StringComparison.Ordinal));
    }

    private static IReadOnlyList<Assumption> Of(string text) => Assumptions.Of(ParameterReader.Read(Encoding.UTF8.GetBytes(text)).Brief!);
}
