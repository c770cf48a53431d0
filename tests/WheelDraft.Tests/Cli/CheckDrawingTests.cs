using System.Diagnostics;
using System.Text;
using System.Text.Json.Nodes;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;
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
    public void Check_FortyThousandEdges_AreMeasuredByBounds()
    {
        // 10,000 squares of 1 mm in a grid of 2 mm, every other one on the other net: the least distance is 1 mm. Tried all with all, 400 million
        // pairs of edges would take minutes; the limit here is generous for a busy machine.
        StringBuilder entities = new();
        for (int i = 0; i < 10_000; i++)
        {
            (int x, int y) = (2 * (i % 100), 2 * (i / 100));
            entities.Append(System.Globalization.CultureInfo.InvariantCulture, $"0 LWPOLYLINE|8 {((x + y) % 4 == 0 ? "CU1" : "CU2")}|90 4|70 1|10 {x}|20 {y}|10 {x + 1}|20 {y}|10 {x + 1}|20 {y + 1}|10 {x}|20 {y + 1}|");
        }

        using CliRun run = With(entities.ToString());
        Stopwatch watch = Stopwatch.StartNew();
        Assert.Equal(1, run.Run(["check", "board.dxf", "--net", "CU1=L:230 V", "--net", "CU2=N:0 V", .. Rules, "--json"]));
        Assert.All(JsonNode.Parse(run.Out)!["spacing"]!.AsArray(), r => Assert.Equal(1, (double)r!["nominal_mm"]!, 1e-9));
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(60), FormattableString.Invariant($"took {watch.Elapsed.TotalSeconds} s"));
        TestContext.Current.SendDiagnosticMessage(FormattableString.Invariant($"40,000 edges: {watch.Elapsed.TotalSeconds:0.0} s"));
    }

    private static int Judge(CliRun run, params string[] more) => run.Run(["check", "board.dxf", "--net", "CU1=L:230 V", "--net", "CU2=N:0 V", .. Rules, .. more]);

    private static double Nominal(CliRun run) =>
        (double)JsonNode.Parse(run.Out)!["spacing"]!.AsArray().Single(r => string.Equals((string?)r!["kind"], "clearance", StringComparison.Ordinal))!["nominal_mm"]!;

    [Fact]
    public void Check_NothingUnderstoodIsLost_WithoutSayingSo()
    {
        // An unread region between the nets may be copper: "nothing misses" alone would be too much.
        using CliRun run = With(Pair(5) + "0 REGION|5 9|8 SHIELD|1 x|0 MLINE|8 X|0 MLINE|8 X");
        Assert.Equal(0, Judge(run));
        Assert.DoesNotContain("nothing misses\n", run.Out, StringComparison.Ordinal);
        Assert.Contains("nothing misses among what was counted", run.Out, StringComparison.Ordinal);
        Assert.Contains("not counted: layer SHIELD: 1 REGION, first at line", run.Out, StringComparison.Ordinal);
        Assert.Contains("layer X: 2 MLINE", run.Out, StringComparison.Ordinal);
        Judge(run, "--json");
        JsonNode json = JsonNode.Parse(run.Out)!;
        Assert.False((bool)json["complete"]!);
        Assert.Equal(["SHIELD 1 REGION shape", "X 2 MLINE shape"], json["left_out"]!.AsArray().Select(l => $"{l!["layer"]} {l["count"]} {l["entity"]} {l["what"]}"), StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("0 REGION|5 9A|8 CU1|1 x", "REGION (handle 9A) on layer CU1")]
    [InlineData("0 TEXT|5 9B|8 CU2|10 0|20 0|1 x", "TEXT (handle 9B) on layer CU2")]
    [InlineData("0 ELLIPSE|5 9C|8 CU1|10 0|20 0|11 1|21 0|40 0.5", "ELLIPSE (handle 9C) on layer CU1")]
    public void Check_NotUnderstoodOnALayerOfANet_IsWrongInputWithKindHandleAndLayer(string entity, string told)
    {
        using CliRun run = With(Pair(5) + entity);
        Assert.Equal(2, Judge(run));
        Assert.Contains(told, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_DimensionsOnALayerOfANet_AreListedOnly()
    {
        using CliRun run = With(Pair(5) + "0 DIMENSION|8 CU1|2 *D1");
        Assert.Equal(0, Judge(run));
        Assert.Contains("layer CU1: 1 DIMENSION", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_OneNetOnly_IsWrongInputAndNeverNothingMisses()
    {
        using CliRun run = With(Pair(5));
        Assert.Equal(2, run.Run(["check", "board.dxf", "--net", "CU1=L:230 V", .. Rules]));
        Assert.Contains("one net only ('L')", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, run.Run(["check", "board.dxf", "--net", "CU1=L:230 V", "--net", "CU2=L:230 V", .. Rules]));
    }

    [Fact]
    public void Check_NothingMeasured_IsWrongInput()
    {
        using CliRun run = With(HandWritten.Square(0, 0, 10, "CU1") + HandWritten.Line(20, 0, 30, 0, "CU2"));
        Assert.Equal(2, Judge(run));
        Assert.Contains("No distance was measured", run.Error, StringComparison.Ordinal);
        using CliRun empty = With("");
        Assert.Equal(2, empty.Run("check", "board.dxf"));
        Assert.Contains("nothing to check", empty.Error, StringComparison.Ordinal);
        using CliRun open = With(HandWritten.Line(20, 0, 30, 0));
        Assert.Equal(2, open.Run("check", "board.dxf", "--process", "fibre-laser", "--thickness", "0.5 mm"));
        Assert.Contains("Nothing was measured against the process", open.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_LoopsOnly_SaysThatNothingWasMeasured()
    {
        using CliRun run = With(Pair());
        Assert.Equal(0, run.Run("check", "board.dxf"));
        Assert.DoesNotContain("nothing misses", run.Out, StringComparison.Ordinal);
        Assert.Contains("so none were measured", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_FloatingCopperBetweenNets_SplitsTheDistance()
    {
        // 5 mm apart with 4 mm of metal on no net between: 0.5 and 0.5 mm are left through air, not 5, and both are below X = 1.5 mm of
        // pollution degree 3, so that they count as nothing (IEC 60664-1:2007 clause 5.2.2.7, from memory).
        using CliRun run = With(Pair(5) + "0 LWPOLYLINE|8 SHIELD|90 4|70 1|10 10.5|20 0|10 14.5|20 0|10 14.5|20 10|10 10.5|20 10");
        Assert.Equal(1, Judge(run, "--json"));
        Assert.Equal(0, Nominal(run), 1e-9);
        Assert.Equal(0, Judge(run, "--ignore", "shield"));
        Assert.Contains("not counted: layer SHIELD: 1 closed shape", run.Out, StringComparison.Ordinal);
        Assert.Contains("among what was counted", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_CopperOnNoNetThatTouchesOne_IsPartOfIt()
    {
        using CliRun run = With(Pair(5) + HandWritten.Square(9, 2, 3, "PAD"));
        Assert.Equal(1, Judge(run, "--json"));
        Assert.Equal(3, Nominal(run), 1e-9);
        Assert.DoesNotContain("spacing.touch", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_CopperOnNoNetThatTouchesTwo_JoinsThem()
    {
        using CliRun run = With(Pair(5) + HandWritten.Square(9, 2, 4, "PAD") + HandWritten.Square(12, 3, 4, "PAD"));
        Assert.Equal(1, Judge(run));
        Assert.Contains("touches the nets L, N", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_FrameRoundAllNets_IsNoPlate()
    {
        using CliRun run = With(Pair(5) + HandWritten.Square(-50, -50, 200, "FRAME"));
        Assert.Equal(0, Judge(run));
        Assert.Contains("layer FRAME: 1 closed contour round all nets", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_HoleLayer_CutsOnlyWhatIsCopper()
    {
        // A disc of radius 9 with a window of radius 5 on its own layer, in it a disc of radius 2 of the other net: 3 mm.
        const string drawing = "0 CIRCLE|8 CU1|10 0|20 0|40 9|0 CIRCLE|8 CUTS|10 0|20 0|40 5|0 CIRCLE|8 CUTS|10 40|20 0|40 5|0 CIRCLE|8 CU2|10 0|20 0|40 2|";
        using CliRun run = With(drawing);
        Assert.Equal(1, Judge(run, "--hole", "CUTS", "--json"));
        Assert.Equal(3, Nominal(run), 1e-9);
        Assert.Equal(1, Judge(run, "--ignore", "CUTS"));
        Assert.Contains("touch at", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, Judge(run, "--hole", "CUTS", "--ignore", "cuts"));
        Assert.Contains("it is one of them", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_HoleAcrossAnEdge_IsToldAndNotCut()
    {
        using CliRun run = With("0 CIRCLE|8 CU1|10 0|20 0|40 9|0 CIRCLE|8 CUTS|10 9|20 0|40 5|0 CIRCLE|8 CU2|10 9.5|20 0|40 0.1|");
        Assert.Equal(1, Judge(run, "--hole", "CUTS", "--json"));
        Assert.Equal(0.4, Nominal(run), 1e-9);
        Assert.Contains("drawing.hole-crossing", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_NestedContoursOfOneLayer_AlternateCopperHoleCopper()
    {
        // Rings of copper 9 to 6 and a disc of 4 on one net; the other net's small disc stands in the gap, 0.5 mm from both.
        using CliRun run = With("0 CIRCLE|8 CU1|10 0|20 0|40 9|0 CIRCLE|8 CU1|10 0|20 0|40 6|0 CIRCLE|8 CU1|10 0|20 0|40 4|0 CIRCLE|8 CU2|10 5|20 0|40 0.5|");
        Assert.Equal(1, Judge(run, "--json"));
        Assert.Equal(0.5, Nominal(run), 1e-9);
    }

    [Fact]
    public void Check_OurOwnWheelWithItsWindows_IsMeasuredToTheirEdges()
    {
        // Outside computation: the least distance from the middle of a window to any edge, over the file's own contours as the tests' reader has them.
        using CliRun run = MakeCommandTests.Bench();
        run.Run("make", "bench.toml", "-o", "made", "--only", "cut");
        string text = File.ReadAllText(run.PathOf("made/cut/wheel.dxf"));
        ReadDrawing wheel = DxfReader.Read(Encoding.ASCII.GetBytes(text));
        Contour window = wheel.Layers.Single(l => l.Name is "WINDOW").Contours.MaxBy(c => Math.Abs(c.Contour.SignedAreaMm2))!.Contour;
        Point middle = Enumerable.Range(0, 10_000).Select(i => new Point(window.Bounds.MinX + (window.Bounds.Width * (i % 100) / 99), window.Bounds.MinY + (window.Bounds.Height * (i / 100) / 99)))
            .Where(p => window.Winding(p) != 0).MaxBy(p => window.Pieces.Min(q => Distances.Between(p, q).DistanceMm));
        double toEdge = window.Pieces.Min(q => Distances.Between(middle, q).DistanceMm);
        string disc = FormattableString.Invariant($"  0\nCIRCLE\n  8\nPROBE\n 10\n{middle.X:0.000000}\n 20\n{middle.Y:0.000000}\n 40\n0.1\n");
        int at = text.LastIndexOf("  0\nENDSEC", text.LastIndexOf("  2\nOBJECTS", StringComparison.Ordinal), StringComparison.Ordinal);
        File.WriteAllText(run.PathOf("probe.dxf"), text.Insert(at, disc));
        run.Run(["check", "probe.dxf", "--net", "OUTLINE=L:230 V", "--net", "PROBE=N:0 V", .. Rules, "--json"]);
        Assert.Equal(toEdge - 0.1, Nominal(run), 2e-6);
    }

    [Fact]
    public void Check_ChordsAndJoinedEnds_CountAgainstTheDistance()
    {
        // The upper end of the ellipse's bulge may lie a chord's tolerance further out than the chords.
        using CliRun run = With("0 ELLIPSE|8 CU1|10 0|20 0|11 5|21 0|40 0.5|41 0|42 6.283185307179586|0 CIRCLE|8 CU2|10 12.5|20 0|40 0.5|");
        Assert.Equal(0, Judge(run, "--chord", "0.1 mm", "--json"));
        JsonNode air = JsonNode.Parse(run.Out)!["spacing"]!.AsArray()[0]!;
        Assert.Equal(0.1, (double)air["nominal_mm"]! - (double)air["worst_mm"]!, 1e-6);
        Assert.InRange((double)air["worst_mm"]!, 6.8, 7);
    }

    [Fact]
    public void Check_UnitNotStated_NamesTheCure()
    {
        using CliRun run = new();
        File.WriteAllBytes(run.PathOf("board.dxf"), HandWritten.File(Pair(0.2), header: "9 $ACADVER|1 AC1015"));
        Assert.Equal(2, Judge(run));
        Assert.Contains("--unit mm|in|", run.Error, StringComparison.Ordinal);
        Assert.Equal(0, Judge(run, "--unit", "in"));
        Judge(run, "--unit", "in", "--json");
        Assert.Equal(0.2 * 25.4, Nominal(run), 1e-9);
    }

    [Fact]
    public void Check_AHundredThousandEntities_AreReadAndMeasured()
    {
        // A chain of 100,000 lines round a ring of radius 100: their least distance to a disc of radius 10 in the middle is 90 mm less the sagitta.
        const int lines = 100_000;
        StringBuilder entities = new();
        for (int i = 0; i < lines; i++)
        {
            (double sin, double cos) = Math.SinCos(i * 2 * Math.PI / lines);
            (double sin1, double cos1) = Math.SinCos((i + 1) % lines * 2 * Math.PI / lines);
            entities.Append(System.Globalization.CultureInfo.InvariantCulture, $"0 LINE|8 CU1|10 {1000 * cos:0.######}|20 {1000 * sin:0.######}|11 {1000 * cos1:0.######}|21 {1000 * sin1:0.######}|");
        }

        using CliRun run = With(entities + "0 CIRCLE|8 CU1|10 0|20 0|40 100|0 CIRCLE|8 CU2|10 0|20 0|40 10|");
        Stopwatch watch = Stopwatch.StartNew();
        Assert.Equal(0, Judge(run, "--json"));
        Assert.Equal(90, Nominal(run), 1e-6);
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(100), FormattableString.Invariant($"took {watch.Elapsed.TotalSeconds} s"));
    }

    [Fact]
    public void Check_NoSuchDrawing_IsFileTrouble()
    {
        using CliRun run = new();
        Assert.Equal(3, run.Run("check", "nowhere.dxf"));
    }
}
