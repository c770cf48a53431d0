using System.Text;
using System.Text.Json;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>The command <c>settle</c>: every "auto" replaced, nothing else changed, and the same cutting files of both.</summary>
public sealed class SettleCommandTests
{
    private static CliRun Shortest()
    {
        CliRun run = new();
        Assert.Equal(0, run.Run("new", "short.toml", "--like", "shortest"));
        return run;
    }

    [Fact]
    public void Settle_Shortest_LeavesNoAutoAndChangesNothingElse()
    {
        using CliRun run = Shortest();
        Assert.Equal(0, run.Run("settle", "short.toml", "-o", "settled.toml", "--effort", "quick"));
        string before = File.ReadAllText(run.PathOf("short.toml")), after = File.ReadAllText(run.PathOf("settled.toml"));
        Assert.DoesNotContain("\"auto\"", string.Join('\n', after.Split('\n').Where(l => !l.StartsWith('#'))), StringComparison.Ordinal);

        // Parted at its "auto"s the old file is found in the new one piece by piece, in order, and the new strips stand after it.
        int at = 0;
        string head = before[..before.IndexOf("format", StringComparison.Ordinal)];
        foreach (string piece in before[head.Length..].Split("\"auto\""))
        {
            int found = after.IndexOf(piece, at, StringComparison.Ordinal);
            Assert.True(found >= at, piece);
            at = found + piece.Length;
        }

        Assert.StartsWith(head, after, StringComparison.Ordinal);
        Assert.StartsWith("\n[[strip]]\n", after[at..], StringComparison.Ordinal);

        // Settled again it stays as it is.
        Assert.Equal(0, run.Run("settle", "settled.toml", "-o", "again.toml"));
        Assert.Equal(after, File.ReadAllText(run.PathOf("again.toml")));
    }

    [Theory]
    [InlineData("shortest")]
    [InlineData("propagation-bench")]
    [InlineData("kiln-room")]
    [InlineData("tank-doser")]
    public void Make_FileAndSettledFile_GiveTheSameCuttingFilesByteForByte(string name)
    {
        using CliRun run = Shortest();
        string file = name is "shortest" ? run.PathOf("short.toml") : Demos.PathOf(name);
        run.Run("make", file, "-o", "first", "--only", "report,cut", "--effort", "quick");
        File.Copy(run.PathOf("first/settled.toml"), run.PathOf("settled.toml"));
        run.Run("make", "settled.toml", "-o", "second", "--only", "report,cut");
        string[] cuts = [.. Directory.GetFiles(run.PathOf("first/cut")).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal)];
        Assert.Contains("wheel.dxf", cuts, StringComparer.Ordinal);
        Assert.Equal(cuts, Directory.GetFiles(run.PathOf("second/cut")).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.All(cuts.Where(c => c.EndsWith(".dxf", StringComparison.Ordinal)), c => Assert.Equal(File.ReadAllBytes(run.PathOf($"first/cut/{c}")), File.ReadAllBytes(run.PathOf($"second/cut/{c}"))));
        Assert.False(File.Exists(run.PathOf("second/settled.toml")));
    }

    [Fact]
    public void Settle_WordsThatAreNoValueToBeChosen_StayAsTheyAre()
    {
        AutoTexts autos = AutoTexts.In("title = \"auto\"\nwheel = { outer_diameter = \"auto\" }\n[[output]]\nname = \"auto\"\nstation = 'auto'\n");
        Assert.Equal(["output[0].station", "wheel.outer_diameter"], autos.Values.Keys.Order(StringComparer.Ordinal), StringComparer.Ordinal);
    }

    // A key that the strip did not have stands before its shape, the comment of the shape stays where it was, Windows line ends stay.
    [Fact]
    public void Settle_AStripWithSomethingGiven_KeepsItAndAddsTheRest()
    {
        using CliRun run = Shortest();
        string text = File.ReadAllText(run.PathOf("short.toml")).Replace("\n", "\r\n", StringComparison.Ordinal) + "[[strip]]\r\nname = \"blade\"\r\noutput = \"mist\"\r\nshape = \"auto\"   # its own remark\r\napproach = \"75 deg\"\r\n";
        File.WriteAllText(run.PathOf("some.toml"), text);
        Assert.Equal(0, run.Run("settle", "some.toml", "-o", "out.toml", "--effort", "quick"));
        string after = File.ReadAllText(run.PathOf("out.toml"));
        Assert.DoesNotContain("\n", after.Replace("\r\n", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("seated_on = \"floor\"\r\nshape = [\r\n", after, StringComparison.Ordinal);
        Assert.Contains("]   # its own remark\r\napproach = \"75 deg\"\r\n", after, StringComparison.Ordinal);
        Brief brief = ParameterReader.Read(after).Brief!;
        Assert.Equal(75, WheelDraft.Geometry.Angles.DegFromRad(brief.Strips.First(s => s.Name is "blade").ApproachRad!.Value), 1e-9);
        Assert.Equal(4, brief.Strips.Count);
    }

    [Fact]
    public void SettingOut_WhateverTheNumberOfCores_ChoosesTheSame()
    {
        using CliRun run = Shortest();
        byte[] bytes = File.ReadAllBytes(run.PathOf("short.toml"));
        Brief brief = ParameterReader.Read(bytes).Brief!;
        byte[] all = SettledFile.Of(bytes, brief, new SearchRequest { Effort = SearchEffort.Quick }, null)!.Bytes;
        byte[] one = SettledFile.Of(bytes, brief, new SearchRequest { Effort = SearchEffort.Quick, MostCores = 1 }, null)!.Bytes;
        Assert.Equal(Encoding.UTF8.GetString(all), Encoding.UTF8.GetString(one));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void SettingOut_StoppedHalfWay_GivesTheBestSoFarOnlyWhenAsked(bool keeps)
    {
        using CliRun run = Shortest();
        Brief brief = ParameterReader.Read(File.ReadAllBytes(run.PathOf("short.toml"))).Brief!;
        using CancellationTokenSource stop = new();
        int told = 0;
        SearchRequest request = new()
        {
            KeepsBest = keeps,
            Stop = stop.Token,
            Tell = _ =>
            {
                told++;
                if (told == 2)
                {
                    stop.Cancel();
                }
            },
        };
        if (!keeps)
        {
            Assert.Throws<OperationCanceledException>(() => SettingOut.Of(brief, request));
            return;
        }

        SettledBrief best = SettingOut.Of(brief, request);
        Assert.Contains(best.Told, f => f.Message.Contains("stopped before its end", StringComparison.Ordinal));
        Assert.False(SettingOut.IsNeeded(best.Brief));
        Assert.NotNull(Design.Judged(best.Brief));
    }

    [Fact]
    public void Settle_WithARoomForFeet_KeepsThemInIt()
    {
        using CliRun run = Shortest();
        string text = File.ReadAllText(run.PathOf("short.toml")).Replace("seated_on = \"floor\" }", "seated_on = \"floor\", room = { circle = { at = [\"0 mm\", \"0 mm\"], diameter = \"150 mm\" } } }", StringComparison.Ordinal);
        Brief brief = ParameterReader.Read(text).Brief!;
        Design design = Design.Of(SettingOut.Of(brief, new SearchRequest { Effort = SearchEffort.Quick }).Brief);
        Assert.DoesNotContain(design.Findings, f => f.Severity == FindingSeverity.Error);

        // Feet and tabs lie level on the floor, below every other part of a strip: no corner of theirs is further out than the room.
        Assert.All(design.Strips.Strips, s => Assert.True(s.Solids.OrderBy(p => p.FromZMm).First().Outline.Bounds is var b && Math.Max(Math.Abs(b.MaxX), Math.Abs(b.MinX)) <= 75.001 && Math.Max(Math.Abs(b.MaxY), Math.Abs(b.MinY)) <= 75.001));

        // Where it is too small that is an error, and one of the wishes that contradict each other.
        Brief small = ParameterReader.Read(text.Replace("150 mm", "70 mm", StringComparison.Ordinal)).Brief!;
        Design missed = Design.Of(SettingOut.Of(small, new SearchRequest { Effort = SearchEffort.Quick }).Brief);
        Assert.Contains(missed.Findings, f => f.Severity == FindingSeverity.Error && f.Message.Contains("room", StringComparison.Ordinal));
    }

    [Fact]
    public void Settle_DeflectionLeftToTheProgram_PressesWithTheMiddleOfTheForces()
    {
        using CliRun run = Shortest();
        Assert.Equal(0, run.Run("settle", "short.toml", "-o", "out.toml", "--effort", "quick"));
        Brief whole = ParameterReader.Read(File.ReadAllText(run.PathOf("out.toml"))).Brief!;

        // The riser is solved for the deflection, and is the second straight.
        StripPiece[] Shape(StripBrief s) => [.. s.Shape.Select((p, i) => i == 3 ? (StripStraight)p with { LengthMm = null } : p)];
        Brief left = whole with { Strips = [.. whole.Strips.Select(s => s with { Shape = Shape(s), DeflectionMm = null, Left = new(Shape: false, Approach: false, Deflection: true) })] };
        Design design = Design.Of(SettingOut.Of(left, new SearchRequest { Effort = SearchEffort.Quick }).Brief);

        // From the shape alone, to a twentieth of a millimetre of deflection: 1 to 1.6 N are asked for.
        Assert.All(design.Strips.Strips, s => Assert.Equal(1.3, s.Spring!.ForceN, 0.026 * s.Spring.StiffnessNPerMm + 1e-6));
        Assert.All(design.Brief.Strips.Zip(left.Strips), p => Assert.Equal(p.Second.Shape, p.First.Shape));
    }

    [Fact]
    public void Settle_Json_TellsWhatWasChosenAndHow()
    {
        using CliRun run = Shortest();
        Assert.Equal(0, run.Run("settle", "short.toml", "-o", "out.toml", "--json", "--effort", "quick"));
        using JsonDocument json = JsonDocument.Parse(run.Out);
        Assert.Equal("meets", json.RootElement.GetProperty("verdict").GetString());
        string[] chosen = [.. json.RootElement.GetProperty("chosen").EnumerateArray().Select(c => c.GetString()!)];
        Assert.Contains(chosen, c => c.Contains("proved the smallest wheel of all orders", StringComparison.Ordinal));
        Assert.Contains(chosen, c => c.Contains("Aims in this order: no error (none)", StringComparison.Ordinal));
        Assert.Contains(chosen, c => c.Contains("rpm", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("much", "quick, usual or long")]
    public void Settle_AWrongWord_IsRefused(string effort, string says)
    {
        using CliRun run = Shortest();
        Assert.Equal(2, run.Run("settle", "short.toml", "--effort", effort));
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
    }
}
