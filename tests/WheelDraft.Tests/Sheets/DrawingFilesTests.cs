using System.Text;
using WheelDraft.Tests.Cli;
using Xunit;

namespace WheelDraft.Tests.Sheets;

public sealed class DrawingFilesTests
{
    [Fact]
    public void Make_AllKinds_WritesDrawingsPicturesSetAndTemplate()
    {
        using CliRun run = new();
        Assert.Equal(0, Make(run));
        string[] names = [.. Directory.EnumerateFiles(run.PathOf("out"), "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(run.PathOf("out"), f).Replace('\\', '/'))];
        foreach (string name in (string[])["draw/wheel.svg", "draw/timing.svg", "draw/spacing.svg", "draw/wheel.png", "draw/timing.png", "draw/spacing.png", "draw/set.pdf", "print/template.pdf"])
        {
            Assert.Contains(name, names, StringComparer.Ordinal);
        }

        Assert.Equal("%PDF", Encoding.ASCII.GetString(File.ReadAllBytes(run.PathOf("out/print/template.pdf"))[..4]));
        Assert.Equal("\u0089PNG", Encoding.Latin1.GetString(File.ReadAllBytes(run.PathOf("out/draw/wheel.png"))[..4]));
    }

    [Fact]
    public void Make_ThemeAndText_ShapeTheSvg()
    {
        using CliRun run = new();
        Make(run, "--only", "draw");
        string light = File.ReadAllText(run.PathOf("out/draw/wheel.svg"));
        Make(run, "--only", "draw", "--theme", "dark", "--text", "strokes");
        string dark = File.ReadAllText(run.PathOf("out/draw/wheel.svg"));
        Assert.Contains("<text", light, StringComparison.Ordinal);
        Assert.DoesNotContain("<text", dark, StringComparison.Ordinal);
        Assert.Contains("#14181D", dark, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("--theme", "sepia", "light, dark or print")]
    [InlineData("--text", "glyphs", "live or strokes")]
    [InlineData("--only", "drawings", "draw")]
    public void Make_UnknownWord_IsRefusedWithThoseThatAreKnown(string option, string word, string known)
    {
        using CliRun run = new();
        Assert.Equal(2, Make(run, option, word));
        Assert.Contains(known, run.Error, StringComparison.Ordinal);
    }

    private static int Make(CliRun run, params string[] options)
    {
        File.WriteAllText(run.PathOf("demo.toml"), File.ReadAllText(Tests.Demos.PathOf("propagation-bench")) + Briefs.FewDraws);
        return run.Run(["make", "demo.toml", "-o", "out", .. options]);
    }
}
