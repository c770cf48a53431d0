using System.Globalization;
using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Bench;

/// <summary>What make writes into bench/.</summary>
public sealed class BenchFilesTests
{
    public static TheoryData<string> Names => [.. Demos.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void Inspection_EveryEdge_IsThereWithConsistentFigures(string demo)
    {
        Design design = Demos.Of(demo);
        string[][] rows = [.. Text(design, "inspection.csv").TrimEnd('\n').Split('\n').Select(l => l.Split(','))];
        Assert.All(rows, r => Assert.Equal(14, r.Length));
        string[][] edges = [.. rows.Where(r => r[1].EndsWith("on the ring", StringComparison.Ordinal))];
        Assert.Equal(2 * design.Wheel.Rings.Sum(r => r.Periods.Count), edges.Length);
        foreach (string[] row in rows.Skip(1).Where(r => r[8].Length > 0))
        {
            (double radius, double deg, double x, double y) = (Value(row[4]), Value(row[5]), Value(row[8]), Value(row[9]));
            Assert.Equal(radius, Math.Sqrt((x * x) + (y * y)), 1e-3);
            Assert.Equal(x, radius * Math.Cos(deg * Math.PI / 180), 1e-2);
            Assert.Equal(y, radius * Math.Sin(deg * Math.PI / 180), 1e-2);
        }

        // On the ring radius the two edges of every period are the ends of its copper, whichever way the wheel turns.
        foreach (RingLayout ring in design.Wheel.Rings.Where(r => r.Return is null))
        {
            double[] found = [.. edges.Where(e => string.Equals(e[3], ring.Name, StringComparison.Ordinal)).Select(e => Value(e[5])).Order()];
            double[] copper = [.. ring.Periods.SelectMany(p => new[] { p.CopperRad.StartRad, p.CopperRad.EndRad }).Select(a => Angles.DegFromRad(Angles.InTurn(a))).Order()];
            Assert.All(found.Zip(copper), p => Assert.Equal(p.Second, p.First, 1e-3));
        }
    }

    [Fact]
    public void Plan_Interlock_SaysWhatToSetWhatMustNotAndWhatMust()
    {
        string plan = Text(Demos.Of("propagation-bench"), "bench-plan.md");
        Assert.Contains("Open the switch 'lid'", plan, StringComparison.Ordinal);
        Assert.Contains("Must not happen: 'mist valve' lit", plan, StringComparison.Ordinal);

        // The valve is on from 122 s for 5.5 s of 180 s, that is from 244° to 255°, and only with the lid closed.
        Assert.Contains("'mist valve' lit between 244° and 255° with these switches closed and no others: lid", plan, StringComparison.Ordinal);
        Assert.Contains("isolating transformer", plan, StringComparison.Ordinal);
        Assert.Contains("[  ]", plan, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_ExtraLowVoltage_SpeaksOfASafetyTransformer()
    {
        string plan = Text(Demos.Of("tank-doser"), "bench-plan.md");
        Assert.Contains("A safety transformer of 24 V", plan, StringComparison.Ordinal);
        Assert.DoesNotContain("One hand, no jewellery", plan, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_Bench_WritesFourFiles() => Assert.Equal(
        ["bench/bench-plan.md", "bench/bench-plan.pdf", "bench/bench-log.csv", "bench/inspection.csv"],
        OutputFiles.Of(Demos.Of("tank-doser"), new OutputRequest { Kinds = [OutputKind.Bench] }).Select(f => f.Name), StringComparer.Ordinal);

    private static string Text(Design design, string name) =>
        Encoding.UTF8.GetString(OutputFiles.Of(design, new OutputRequest { Kinds = [OutputKind.Bench] }).First(f => string.Equals(f.Name, "bench/" + name, StringComparison.Ordinal)).Bytes);

    private static double Value(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
