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
