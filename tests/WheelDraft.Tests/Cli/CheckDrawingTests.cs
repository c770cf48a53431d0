using System.Diagnostics;
using System.Text;
using System.Text.Json.Nodes;
using WheelDraft.Tests.Dxf.Reading;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>Any drawing judged: nets from layers, limits of a process, what is wrong with the drawing itself.</summary>
public sealed class CheckDrawingTests
{
    private static readonly string[] Rules = ["--degree", "3", "--group", "IIIa", "--category", "II"];

    private static CliRun With(string entities)
    {
        CliRun run = new();
        File.WriteAllBytes(run.PathOf("board.dxf"), HandWritten.File(entities));
        return run;
    }

    /// <summary>Two squares of 10 mm with 3 mm between them.</summary>
    private static string Pair(double apartMm = 3) => HandWritten.Square(0, 0, 10, "CU1") + HandWritten.Square(10 + apartMm, 0, 10, "CU2");

    [Fact]
    public void Check_TwoNets_MeasuresAndTellsTheRule()
    {
        // IEC 60664-1:2020: 230 V and category II give 2.5 kV (Table F.1), so 1.5 mm (F.2); 250 V, degree 3, group IIIa give 4 mm (F.5).
        using CliRun run = With(Pair());
        Assert.Equal(1, run.Run(["check", "board.dxf", "--net", "CU1=L:230 V", "--net", "CU2=N:0 V", .. Rules, "--json"]));
        JsonArray rows = JsonNode.Parse(run.Out)!["spacing"]!.AsArray();
        JsonNode air = rows.Single(r => string.Equals((string?)r!["kind"], "clearance", StringComparison.Ordinal))!;
        JsonNode surface = rows.Single(r => string.Equals((string?)r!["kind"], "creepage", StringComparison.Ordinal))!;
        Assert.Equal((3.0, 1.5, "meets"), ((double)air["worst_mm"]!, (double)air["required_mm"]!, (string)air["verdict"]!));
        Assert.Equal((3.0, 4.0, "misses"), ((double)surface["worst_mm"]!, (double)surface["required_mm"]!, (string)surface["verdict"]!));
        Assert.Equal(["L", "N"], air["between"]!.AsArray().Select(n => (string)n!), StringComparer.Ordinal);
        Assert.Null(air["at_deg"]);
    }

    // What was wrong: two lines of 230 V were judged at 230 V between them. By hand: 120° apart 230 √3 = 398.4 V, row 400 V: 6.3 mm; opposite, as
    // those of a split phase, 460 V, row 500 V: 8.0 mm (IEC 60664-1 Table F.5, degree 3, group IIIa). Without a phase nobody knows: the sum.
    [Theory]
    [InlineData("CU1=L:230 V@0", "CU2=mist:230 V@0", 4.0)]
    [InlineData("CU1=L1:230 V@0", "CU2=L2:230 V@120", 6.3)]
    [InlineData("CU1=L2:230 V@120", "CU2=L3:230 V@240", 6.3)]
    [InlineData("CU1=L1:230 V@0", "CU2=L2:230 V@-120", 6.3)]
    [InlineData("CU1=L1:230 V@0", "CU2=L2:230 V@180", 8.0)]
    [InlineData("CU1=L1:230 V", "CU2=L2:230 V", 8.0)]
    [InlineData("CU1=L1:230 V@0", "CU2=L2:230 V", 8.0)]
    [InlineData("CU1=L1:230 V", "CU2=N:0 V", 4.0)]
    public void Check_TwoLines_AreJudgedByWhatLiesBetweenThem(string first, string second, double creepageMm)
    {
        using CliRun run = With(Pair());
        run.Run(["check", "board.dxf", "--net", first, "--net", second, .. Rules, "--json"]);
        JsonArray rows = JsonNode.Parse(run.Out)!["spacing"]!.AsArray();
        JsonNode surface = rows.Single(r => string.Equals((string?)r!["kind"], "creepage", StringComparison.Ordinal))!;
        Assert.Equal(creepageMm, (double)surface["required_mm"]!);
        bool isUnknown = creepageMm > 7 && !second.Contains("@180", StringComparison.Ordinal);
        Assert.Equal(isUnknown, run.Out.Contains("drawing.phase", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("CU1=L:230 V@", "no phase")]
    [InlineData("CU1=L:230 V@north", "no phase")]
    [InlineData("CU1=L:230 V@720", "no phase")]
    public void Check_WrongPhase_IsRefused(string net, string words)
    {
        using CliRun run = With(Pair());
        Assert.Equal(2, run.Run(["check", "board.dxf", "--net", net, "--net", "CU2=N:0 V", .. Rules]));
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_TwoNetsFarApart_Meet()
    {
        using CliRun run = With(Pair(5));
        Assert.Equal(0, run.Run(["check", "board.dxf", "--net", "CU1=L:230 V", "--net", "CU2=N:0 V", .. Rules]));
        Assert.Contains("nothing misses", run.Out, StringComparison.Ordinal);
        Assert.Contains("creepage", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_Findings_AreLocatedInTheDrawing()
    {
        using CliRun run = With(Pair(1));
        Assert.Equal(1, run.Run(["check", "board.dxf", "--net", "CU1=L:230 V", "--net", "CU2=N:0 V", .. Rules]));
        Assert.Matches("board\\.dxf:[0-9]+:1: error: Clearance 1\\.00 mm", run.Error);
    }

    [Fact]
    public void Check_RingWithHole_IsMeasuredAcrossTheHole()
    {
        // A disc of radius 2 in the hole, radius 5, of a ring: 3 mm.
        using CliRun run = With("0 CIRCLE|8 CU1|10 0|20 0|40 9|0 CIRCLE|8 CU1|10 0|20 0|40 5|0 CIRCLE|8 CU2|10 0|20 0|40 2|");
        run.Run(["check", "board.dxf", "--net", "CU1=L:230 V", "--net", "CU2=N:0 V", .. Rules, "--json"]);
        Assert.Equal(3, (double)JsonNode.Parse(run.Out)!["spacing"]![0]!["nominal_mm"]!, 1e-9);
    }

    [Theory]
    [InlineData("--degree", "decides")]
    [InlineData("--group", "decides")]
    [InlineData("--category", "decides")]
    public void Check_RuleNotGiven_SaysWhatItDecides(string left, string word)
    {
        using CliRun run = With(Pair());
        string[] rules = [.. Rules.Chunk(2).Where(r => !string.Equals(r[0], left, StringComparison.Ordinal)).SelectMany(r => r)];
        Assert.Equal(2, run.Run(["check", "board.dxf", "--net", "CU1=L:230 V", "--net", "CU2=N:0 V", .. rules]));
        Assert.Contains(left, run.Error, StringComparison.Ordinal);
        Assert.Contains(word, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("CU1", "LAYER=NAME:VOLTAGE")]
    [InlineData("CU1=L:230", "unit")]
    [InlineData("CU1=L:12 mm", "voltage")]
    [InlineData("CU1=L:5 kV", "1000 V")]
    [InlineData("CU9=L:230 V", "'CU1', 'CU2'")]
    public void Check_NetNotUnderstood_IsWrongInput(string net, string word)
    {
        using CliRun run = With(Pair());
        Assert.Equal(2, run.Run(["check", "board.dxf", "--net", net, "--net", "CU2=N:0 V", .. Rules]));
        Assert.Contains(word, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_PollutionDegreeFour_IsRefusedWithTheReason()
    {
        using CliRun run = With(Pair());
        Assert.Equal(2, run.Run("check", "board.dxf", "--net", "CU1=L:230 V", "--net", "CU2=N:0 V", "--degree", "4", "--group", "IIIa", "--category", "II"));
        Assert.Contains("ollution degree 4", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_OpenDoubledAndCrossing_AreTold()
    {
        using CliRun run = With(HandWritten.Square(0, 0, 10) + HandWritten.Line(20, 0, 30, 0) + HandWritten.Line(0, 0, 10, 0) + HandWritten.Square(5, 5, 10));
        Assert.Equal(1, run.Run("check", "board.dxf"));
        foreach (string code in (string[])["[drawing.open]", "[drawing.duplicate]", "[drawing.crossing]"])
        {
            Assert.Contains(code, run.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Check_Process_MeasuresWebsSlotsAndHoles()
    {
        // Stock of 0.5 mm by fibre laser: web, slot and hole of 0.5 mm each. A hole of 0.3 mm, 0.4 mm from the edge.
        using CliRun run = With(HandWritten.Square(0, 0, 10) + "0 CIRCLE|8 A|10 0.55|20 5|40 0.15|");
        Assert.Equal(1, run.Run("check", "board.dxf", "--process", "fibre-laser", "--thickness", "0.5 mm", "--json"));
        JsonNode process = JsonNode.Parse(run.Out)!["process"]!;
        Assert.Equal(0.4, (double)process["least_web_mm"]!, 1e-6);
        Assert.Equal(0.3, (double)process["least_hole_mm"]!, 1e-6);
        Assert.Equal(0.5, (double)process["needed_web_mm"]!, 1e-6);
        string[] codes = [.. JsonNode.Parse(run.Out)!["findings"]!.AsArray().Select(f => (string)f!["code"]!)];
        Assert.Contains("drawing.web", codes, StringComparer.Ordinal);
        Assert.Contains("drawing.hole", codes, StringComparer.Ordinal);
    }

    [Fact]
    public void Check_OurOwnCuttingFile_IsClean()
    {
        using CliRun run = MakeCommandTests.Bench();
        run.Run("make", "bench.toml", "-o", "made", "--only", "cut");
        Assert.Equal(0, run.Run("check", "made/cut/wheel.dxf", "--process", "fibre-laser", "--thickness", "0.5 mm"));
        Assert.Contains("least web 1.2 mm", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_ProcessWithoutThickness_SaysWhatItDecides()
    {
        using CliRun run = With(Pair());
        Assert.Equal(2, run.Run("check", "board.dxf", "--process", "fibre-laser"));
        Assert.Contains("--thickness", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_Spline_IsRefusedByNameUnlessAChordIsGiven()
    {
        string ellipse = "0 ELLIPSE|8 A|10 0|20 0|30 0|11 5|21 0|31 0|40 0.5|41 0|42 6.283185307179586|";
        using CliRun run = With(ellipse);
        Assert.Equal(2, run.Run("check", "board.dxf"));
        Assert.Contains("ELLIPSE", run.Error, StringComparison.Ordinal);
        Assert.Equal(0, run.Run("check", "board.dxf", "--chord", "0.01 mm"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("not a drawing")]
    [InlineData("  0\nSECTION\n  2\nENTITIES\n  0\nLINE\n")]
    public void Check_HostileFile_IsWrongInput(string text)
    {
        using CliRun run = new();
        File.WriteAllText(run.PathOf("bad.dxf"), text);
        Assert.Equal(2, run.Run("check", "bad.dxf"));
        Assert.Empty(run.Out);
        Assert.DoesNotContain("fault of the program", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_DrawingTooLargeToMeasure_IsRefusedInBoundedTime()
    {
        StringBuilder entities = new();
        for (int i = 0; i < 3000; i++)
        {
            entities.Append(System.Globalization.CultureInfo.InvariantCulture, $"0 CIRCLE|8 {(i % 2 == 0 ? "CU1" : "CU2")}|10 {3 * (i % 60)}|20 {3 * (i / 60)}|40 1|");
        }

        using CliRun run = With(entities.ToString());
        Stopwatch watch = Stopwatch.StartNew();
        Assert.Equal(2, run.Run(["check", "board.dxf", "--net", "CU1=L:230 V", "--net", "CU2=N:0 V", .. Rules]));
        Assert.Contains("3,000", run.Error, StringComparison.Ordinal);
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(60), $"took {watch.Elapsed}");
    }

    [Fact]
    public void Check_NoSuchDrawing_IsFileTrouble()
    {
        using CliRun run = new();
        Assert.Equal(3, run.Run("check", "nowhere.dxf"));
    }
}
