using System.Text.Json;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>The command <c>vary</c>: every row is what the design of a file with that value would be.</summary>
public sealed class VaryCommandTests
{
    private const string Demo = "propagation-bench";

    private static JsonElement[] Rows(CliRun run, params string[] keys)
    {
        run.Run(["vary", Demos.PathOf(Demo), "-o", "varied", "--json", .. keys.SelectMany(k => new[] { "--key", k })]);
        using JsonDocument json = JsonDocument.Parse(run.Out);
        return [.. json.RootElement.GetProperty("rows").EnumerateArray().Select(r => r.Clone())];
    }

    // The reference is the same file with the text changed by hand, worked out by itself.
    [Fact]
    public void Vary_ARange_GivesTheDesignOfEachValueInOrder()
    {
        using CliRun run = new();
        JsonElement[] rows = Rows(run, "output.mist.tolerance=0.5 s..1 s/3");
        Assert.Equal(3, rows.Length);
        foreach ((JsonElement row, string value) in rows.Zip(["0.5 s", "0.75 s", "1 s"]))
        {
            Design design = new ChangedDemo(Demo).With("tolerance = \"1.0 s\"", $"tolerance = \"{value}\"").Design();
            Assert.Equal(value, row.GetProperty("values")[0].GetString());
            Assert.Equal(design.Wheel.OuterDiameterMm, row.GetProperty("diameter_mm").GetDouble(), 1e-6);
            Assert.Equal(design.Meets ? "meets" : "misses", row.GetProperty("verdict").GetString());
            Assert.Equal(design.Strips.Friction!.MostNm * 1000, row.GetProperty("torque_mn_m").GetDouble(), 1e-6);
            Assert.Equal(design.Spacing.Rows.Min(r => r.WorstMm / r.Required.RequiredMm), row.GetProperty("least_ratio").GetDouble(), 1e-6);
        }
    }

    [Fact]
    public void Vary_TwoKeys_GivesAllPairsTheSecondFaster()
    {
        using CliRun run = new();
        JsonElement[] rows = Rows(run, "wheel.web=1.2 mm,1.4 mm", "feed.station=0 deg,5 deg");
        Assert.Equal(["1.2 mm/0 deg", "1.2 mm/5 deg", "1.4 mm/0 deg", "1.4 mm/5 deg"], rows.Select(r => string.Join('/', r.GetProperty("values").EnumerateArray().Select(v => v.GetString()))), StringComparer.Ordinal);
        Assert.Contains("<svg xmlns", File.ReadAllText(run.PathOf("varied/draw/vary.svg")), StringComparison.Ordinal);
        Assert.Equal(5, File.ReadAllLines(run.PathOf("varied/vary.csv")).Length);
    }

    [Fact]
    public void Vary_AValueThatCannotBeBuiltOrRead_IsARowWithItsFirstFinding()
    {
        using CliRun run = new();
        JsonElement[] rows = Rows(run, "output.mist.tolerance=1 ms,1 s,-1 s");
        Assert.Equal(["refused", "meets", "refused"], rows.Select(r => r.GetProperty("verdict").GetString()), StringComparer.Ordinal);
        Assert.Equal("wheel.tolerance", rows[0].GetProperty("code").GetString());
        Assert.False(rows[0].TryGetProperty("diameter_mm", out _));
        Assert.Contains("plausible range", rows[2].GetProperty("first_finding").GetString(), StringComparison.Ordinal);
        Assert.False(rows[1].TryGetProperty("first_finding", out _));
    }

    [Theory]
    [InlineData("output.mist.adjust.range=0.8 s,1 s", 2)]
    [InlineData("drive.coast[2]=0 deg..0.5 deg/2", 2)]
    [InlineData("strip.mist strip.shape[6].straight=37 mm,38 mm", 2)]
    [InlineData("output.mist.on[1].for=5 s..6 s/3", 3)]
    [InlineData("output.mist.adjust.lever=2.28,2.29", 2)]
    [InlineData("spacing.to_earthed=basic,reinforced", 2)]
    [InlineData("housing.tolerance=0 mm,0.01 mm", 2)]
    [InlineData("wheel.rim=true,false", 2)]
    public void Vary_AnyKindOfKey_IsReached(string key, int count)
    {
        using CliRun run = new();
        JsonElement[] rows = Rows(run, key);
        Assert.Equal(count, rows.Length);
        Assert.All(rows, r => Assert.False(r.TryGetProperty("code", out JsonElement code) && code.GetString() is "parameters", r.ToString()));
    }

    [Theory]
    [InlineData("output.misty.tolerance=1 s,2 s", "output.mist")]
    [InlineData("output.mist.tolerence=1 s,2 s", "did you mean 'tolerance'")]
    [InlineData("output.mist.on[2].for=1 s,2 s", "items 1 to 1")]
    [InlineData("output.mist.tolerance=1 s..2 s", "how many values")]
    [InlineData("output.mist.tolerance=1 s..2 mm/3", "do not measure the same")]
    [InlineData("output.mist.tolerance", "KEY=FROM..TO/N")]
    [InlineData("output.mist.tolerance=1 s..2 s/20000", "at most 10000")]
    [InlineData("wheel.bore=6 mm,7 mm", "name one of its keys")]
    [InlineData("drive.coast=1 deg,2 deg", "is a list")]
    public void Vary_AWrongKey_IsRefusedWithWhatWouldBeRight(string key, string says)
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run("vary", Demos.PathOf(Demo), "--key", key));
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
        Assert.Equal("", run.Out);
    }

    // 2 s less 0.5 s in fifteen steps is 0.1 s each; 1 in is 25.4 mm by definition; a unit that stands once goes for both.
    [Theory]
    [InlineData("k=0.5 s..2 s/16", 3, "0.8 s")]
    [InlineData("k=1 mm..1 in/2", 1, "25.4 mm")]
    [InlineData("k=0..1 deg/5", 1, "0.25 deg")]
    [InlineData("k=2..1/3", 1, "1.5")]
    [InlineData("k=a, b ,c", 1, "b")]
    [InlineData("k=1,2,3 mm", 0, "1 mm")]
    [InlineData("k=1 1/2 in..2 in/2", 0, "1.5 in")]
    public void ValueRange_OfText_HasTheValues(string text, int at, string value) => Assert.Equal(value, ValueRange.Of(text).Values[at]);
}
