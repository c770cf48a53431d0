using WheelDraft.Formats.Parameters;
using WheelDraft.Tests.Cli;
using Xunit;

namespace WheelDraft.Tests.Parameters;

/// <summary>Words and units as people write them: read, or refused with what would be right.</summary>
public sealed class PeoplesWordsTests
{
    [Theory]
    [InlineData("direction = \"clockwise\"", "direction = \"counterclockwise\"", "write \"anticlockwise\"")]
    [InlineData("direction = \"clockwise\"", "direction = \"CCW\"", "write \"anticlockwise\"")]
    [InlineData("name = \"photo-etch\"", "name = \"scroll saw\"", "write \"fretsaw\"")]
    [InlineData("voltage = \"24 V\"", "voltage = \"24 V DC\"", "needs alternating current")]
    [InlineData("voltage = \"24 V\"", "voltage = \"24 VDC\"", "needs alternating current")]
    [InlineData("frequency = \"50 Hz\"", "frequency = \"DC\"", "needs alternating current")]
    [InlineData("frequency = \"50 Hz\"", "frequency = \"0 Hz\"", "needs alternating current")]
    [InlineData("[drive_motor]", "[motor]", "write [drive_motor]")]
    public void Read_WordOfThePeoples_IsRefusedWithWhatIsRight(string good, string bad, string right)
    {
        ParameterResult read = new ChangedDemo("tank-doser").With(good, bad).Read();
        Assert.Contains(read.Diagnostics, d => d.Message.Contains(right, StringComparison.Ordinal));
    }

    [Fact]
    public void Read_MaterialGroupIII_WasAnsweredByTheOneThatAsksLess()
    {
        Diagnostic said = Assert.Single(new ChangedDemo("tank-doser").With("material_group = \"II\"", "material_group = \"III\"").Read().Diagnostics);
        Assert.DoesNotContain("\"II\"", said.Message, StringComparison.Ordinal);
        Assert.Contains("\"IIIa\"", said.Message, StringComparison.Ordinal);
        Assert.Contains("\"IIIb\" where you do not know", said.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("turn_time = \"900 s\"")]
    [InlineData("turn_time = \"15 min\"")]
    [InlineData("turn_time = \"14 min 60 s\"")]
    [InlineData("speed = \"1/15 rpm\"")] // 60 s / 900 s
    public void Read_TurnInAnyForm_IsTheSame(string form) =>
        Assert.Equal(900, new ChangedDemo("tank-doser").WithEvery(@"turn_time = ""[^""]*""", _ => form).Read().Brief!.Drive.TurnTimeS, 1e-9);

    [Theory]
    [InlineData("5 %", 1.25)] // of the shorter of its two on-periods: 25 mL at 60 mL/min take 25 s
    [InlineData("1.5 mL", 1.5)] // at 60 mL/min
    [InlineData("1500 ms", 1.5)]
    public void Read_ToleranceAsShareOrVolume_IsATime(string tolerance, double seconds) =>
        Assert.Equal(seconds, new ChangedDemo("tank-doser").With("tolerance = \"4 s\"", $"tolerance = \"{tolerance}\"").Read().Brief!.Outputs.Single(o => o.Name is "buffer").ToleranceS!.Value, 1e-9);

    [Fact]
    public void Read_ToleranceAsVolumeWithoutFlow_IsRefused()
    {
        Diagnostic said = Assert.Single(new ChangedDemo("tank-doser").With("tolerance = \"6 s\"", "tolerance = \"6 mL\"").Read().Diagnostics);
        Assert.Contains("no 'flow'", said.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_AFolder_NamesTheFileInIt()
    {
        using CliRun run = new();
        Directory.CreateDirectory(run.PathOf("wheels"));
        File.WriteAllText(run.PathOf("wheels/mine.toml"), "format = 1\n");
        Assert.Equal(3, run.Run("make", "wheels"));
        Assert.Contains($"'wheels' is a folder; give the parameter file itself, e.g. {Path.Combine("wheels", "mine.toml")}", run.Error, StringComparison.Ordinal);
    }
}
