using System.Buffers.Binary;
using System.Text.Json.Nodes;
using WheelDraft.Engineering;
using WheelDraft.Formats.Outputs;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>The options of <c>make</c> that shape drawings, end to end.</summary>
public sealed class MakePicturesTests
{
    [Fact]
    public void Make_Frame_DrawsThatMomentAsSvgAndPng()
    {
        using CliRun run = Bench();
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "draw,png", "--frame", "45 s"));
        string moment = File.ReadAllText(run.PathOf("made/draw/moment.svg"));
        Assert.Contains("45.0 s after home", moment, StringComparison.Ordinal);
        Assert.Contains("45.0 s, 90.0°", File.ReadAllText(run.PathOf("made/draw/timing.svg")), StringComparison.Ordinal);
        Assert.True(File.Exists(run.PathOf("made/draw/moment.png")));
    }

    [Theory]
    [InlineData("45")]
    [InlineData("45.0 s")]
    [InlineData("0.75 min")]
    [InlineData("90 deg")]
    public void Make_FrameToldOtherwise_IsTheSameMoment(string frame)
    {
        using CliRun run = Bench();
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "draw", "--frame", frame));
        Assert.Contains(">45.0 s after home", File.ReadAllText(run.PathOf("made/draw/moment.svg")), StringComparison.Ordinal);
    }

    [Fact]
    public void Make_FrameWithInputClosed_LightsWhatItFeeds()
    {
        // At 125 s mist is closed; its valve is fed once the lid is.
        using CliRun run = Bench();
        run.Run("make", "bench.toml", "-o", "open", "--only", "draw", "--frame", "125 s");
        run.Run("make", "bench.toml", "-o", "closed", "--only", "draw", "--frame", "125 s", "--closed", "LID");
        Assert.Contains("mist valve off", File.ReadAllText(run.PathOf("open/draw/moment.svg")), StringComparison.Ordinal);
        Assert.Contains("mist valve on", File.ReadAllText(run.PathOf("closed/draw/moment.svg")), StringComparison.Ordinal);
    }

    [Fact]
    public void Make_WithoutFrameLater_DeletesTheEarlierMomentAndSaysSo()
    {
        using CliRun run = Bench();
        run.Run("make", "bench.toml", "-o", "made", "--only", "draw", "--frame", "45 s");
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "draw"));
        Assert.False(File.Exists(run.PathOf("made/draw/moment.svg")));
        Assert.Contains("draw/moment.svg", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_AnotherMomentAsSvgOnly_LeavesNoPictureOfTheEarlierOne()
    {
        using CliRun run = Bench();
        run.Run("make", "bench.toml", "-o", "made", "--only", "draw,png", "--frame", "45 s");
        Assert.True(File.Exists(run.PathOf("made/draw/moment.png")));
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "draw", "--frame", "60 s"));
        Assert.True(File.Exists(run.PathOf("made/draw/moment.svg")));
        Assert.False(File.Exists(run.PathOf("made/draw/moment.png")));
    }

    [Fact]
    public void Make_FilmAndStory_AreOneFileEach()
    {
        using CliRun run = Bench();
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "report", "--film", "svg", "--film-width", "640", "--closed", "lid"));
        Assert.Contains("width=\"640\"", File.ReadAllText(run.PathOf("made/film/turn.svg")), StringComparison.Ordinal);
        Assert.False(File.Exists(run.PathOf("made/film/turn.png")));
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "report", "--story", "One dry hour begins", "--film", "svg"));
        Assert.Contains("the wheel turns", File.ReadAllText(run.PathOf("made/film/story-one-dry-hour-begins.svg")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--film", "gif", "knows no 'gif'")]
    [InlineData("--film-width", "100", "no whole number from 240 to 1920")]
    [InlineData("--film-width", "640", "says how wide")]
    [InlineData("--story", "two hours", "there is no scenario 'two hours'")]
    public void Make_FilmThatCannotBe_IsRefused(string option, string value, string words)
    {
        using CliRun run = Bench();
        Assert.Equal(2, run.Run("make", "bench.toml", "-o", "made", "--only", "report", option, value));
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Make_Frames_DrawsANumberedFilmAndDeletesALongerOne()
    {
        using CliRun run = Bench();
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "report", "--frames", "5"));
        File.WriteAllText(run.PathOf("made/frames/notes.txt"), "the person's own");
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "report", "--frames", "3"));
        Assert.Equal(["frame-0001.png", "frame-0002.png", "frame-0003.png", "notes.txt"], Directory.GetFiles(run.PathOf("made/frames")).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.Contains("frames/frame-0004.png, frames/frame-0005.png", run.Error, StringComparison.Ordinal);

        // The size of screens, as its header tells (PNG specification, 11.2.1): even numbers, which films need.
        byte[] png = File.ReadAllBytes(run.PathOf("made/frames/frame-0001.png"));
        Assert.Equal((1920, 1080), (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20))));
        Assert.NotEqual(png, File.ReadAllBytes(run.PathOf("made/frames/frame-0002.png")));
    }

    [Fact]
    public void Film_OfManyCircuits_HasTheNextSizeOfScreens()
    {
        OutputBrief[] outputs = [.. Enumerable.Range(0, 30).Select(i => Briefs.Output(FormattableString.Invariant($"circuit {i + 1}"), 3, (5 + (5 * i), 4)))];
        Design design = Design.Of(Briefs.Plain(outputs));
        OutputFile frame = Assert.Single(OutputFiles.Of(design, new() { Kinds = [], Film = new(design, 1) }));
        Assert.Equal("frames/frame-0001.png", frame.Name);
        Assert.Equal((3840, 2160), (BinaryPrimitives.ReadInt32BigEndian(frame.Bytes.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(frame.Bytes.AsSpan(20))));
    }

    [Fact]
    public void Make_WidthAndDpi_SetTheSizesOfPictures()
    {
        using CliRun run = Bench();
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "draw,png", "--width", "16 cm", "--dpi", "100"));
        Assert.Contains(" width=\"160mm\"", File.ReadAllText(run.PathOf("made/draw/assembly.svg")), StringComparison.Ordinal);
        byte[] png = File.ReadAllBytes(run.PathOf("made/draw/assembly.png"));
        Assert.Equal(Math.Ceiling(420 / 25.4 * 100), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)));
    }

    [Fact]
    public void Make_CalloutNumbers_GivesEachLeaderAGroupOfItsOwn()
    {
        using CliRun run = Bench();
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "draw", "--callouts", "numbers"));
        Assert.Contains("<g id=\"pb-01-wheel-callout-1\"", File.ReadAllText(run.PathOf("made/draw/wheel.svg")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--frame: a moment lies in one turn", "--frame", "181 s")]
    [InlineData("--frame: a moment lies in one turn", "--frame", "361 deg")]
    [InlineData("--frame: ", "--frame", "soon")]
    [InlineData("--frame: ", "--frame", "5 mm")]
    [InlineData("--frame: --only asks for no drawing", "--frame", "5 s", "--only", "report")]
    [InlineData("--frames: \"0\" is no whole number from 1 to 3600", "--frames", "0")]
    [InlineData("--frames: \"4000\" is no whole number", "--frames", "4000")]
    [InlineData("--frames: \"2.5\" is no whole number", "--frames", "2.5")]
    [InlineData("--closed: there is no input 'door'; the inputs are humidity switch, lid", "--frame", "5 s", "--closed", "door")]
    [InlineData("--closed: says how inputs stand in --frame, --frames or --film", "--closed", "lid")]
    [InlineData("--width: \"0 mm\" is outside", "--width", "0 mm")]
    [InlineData("--dpi: \"5\" is no whole number from 10 to 1200", "--dpi", "5")]
    [InlineData("--callouts: knows no 'letters'; it is words or numbers", "--callouts", "letters")]
    [InlineData("--theme: knows no 'sepia'; it is light, dark or print", "--theme", "sepia")]
    [InlineData("--text: knows no 'outlines'; it is live or strokes", "--text", "outlines")]
    public void Make_OptionThatCannotBe_IsRefusedWithAWayOut(string words, params string[] options)
    {
        using CliRun run = Bench();
        Assert.Equal(2, run.Run(["make", "bench.toml", "-o", "made", .. options]));
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(run.PathOf("made")));
    }

    [Fact]
    public void Make_TextWithoutLetters_SaysThatABoxStandsForThem()
    {
        using CliRun run = Bench();
        string file = run.PathOf("bench.toml");
        File.WriteAllText(file, File.ReadAllText(file).Replace("title = \"Propagation bench controller\"", "title = \"Bench \u6C34\"", StringComparison.Ordinal));
        Assert.Equal(0, run.Run("make", "bench.toml", "-o", "made", "--only", "draw"));
        Assert.Contains("no letters for \u6C34", run.Error, StringComparison.Ordinal);
        run.Run("make", "bench.toml", "-o", "made", "--only", "draw", "--json");
        Assert.NotEmpty(JsonNode.Parse(run.Out)!["drawing_warnings"]!.AsArray());
    }

    private static CliRun Bench()
    {
        CliRun run = new();
        File.WriteAllText(run.PathOf("bench.toml"), File.ReadAllText(Demos.PathOf("propagation-bench")) + Briefs.FewDraws);
        return run;
    }
}
