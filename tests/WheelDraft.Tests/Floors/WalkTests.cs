using System.Reflection;
using System.Text.RegularExpressions;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Floors;

/// <summary>The walk in DEVELOPERS.md, one output from its line to its polyline, goes along files and members that are there.</summary>
public sealed partial class WalkTests
{
    private static string Walk { get; } = Section("## A walk");

    [Fact]
    public void Walk_EveryStep_NamesAFileAndAMemberThatAreThere()
    {
        Match[] steps = [.. Step().Matches(Walk).OfType<Match>()];
        Assert.True(steps.Length > 10, "The walk has lost its steps.");
        foreach (Match step in steps)
        {
            string file = Path.Combine(Sources.Root, "src", "WheelDraft." + step.Groups["file"].Value);
            Assert.True(File.Exists(file), file);
            Assert.Matches($@"\b{step.Groups["type"].Value}\b", File.ReadAllText(file));
            Assert.Contains(Types(step.Groups["type"].Value), t => Members(t).Contains(step.Groups["member"].Value, StringComparer.Ordinal));
        }
    }

    [Fact]
    public void Walk_ItsFigures_AreThoseOfTheDemo()
    {
        Design bench = Demos.Of("propagation-bench");
        RingLayout ring = bench.Wheel.Rings.Single(r => r.Name is "mist");
        OnPeriod on = Assert.Single(ring.Periods).Wanted;
        Assert.Contains($"from {Wording.Number(Angles.DegFromRad(on.Arc.StartRad), 3)}° over {Wording.Number(Angles.DegFromRad(on.Arc.SweepRad), 3)}°", Walk, StringComparison.Ordinal);
        Assert.Contains($"radius {Wording.Number(ring.RadiusMm, 3)} mm", Walk, StringComparison.Ordinal);
        Assert.Contains("on = [ { from = \"122 s\", for = \"5.5 s\" } ]", File.ReadAllText(Path.Combine(Sources.Root, "parameters", "propagation-bench.toml")), StringComparison.Ordinal);
    }

    private static string Section(string heading)
    {
        string text = File.ReadAllText(Path.Combine(Sources.Root, "DEVELOPERS.md")).ReplaceLineEndings("\n");
        int begins = text.IndexOf(heading, StringComparison.Ordinal);
        int ends = text.IndexOf("\n## ", begins + 1, StringComparison.Ordinal);
        return text[begins..ends];
    }

    private static string[] Assemblies { get; } = ["WheelDraft.Geometry", "WheelDraft.Engineering", "WheelDraft.Drawing", "WheelDraft.Formats", "wheeldraft"];

    private static IEnumerable<Type> Types(string name) =>
        Assemblies
            .SelectMany(a => Assembly.Load(a).GetTypes())
            .Where(t => string.Equals(t.Name, name, StringComparison.Ordinal));

    private static IEnumerable<string> Members(Type type) =>
        type.GetMembers(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance).Select(m => m.Name);

    [GeneratedRegex(@"\| `(?<file>[\w/]+\.cs)` \| `(?<type>\w+)\.(?<member>\w+)` \|", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 60_000)]
    private static partial Regex Step();
}
