using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Tests.Cli;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>What is over a budget is refused with its place and a cure, or cut short and told so; what each cost before stands at the budget.</summary>
public sealed class BudgetsTests
{
    private const string Demo = "propagation-bench";
    private const string BehindFloor = "[forming]";

    private static ChangedDemo Pb => new(Demo);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static Diagnostic Refusal(ChangedDemo demo) => Assert.Single(demo.Read().Diagnostics);

    // It filled 4 GB.
    [Fact]
    public void Play_TenThousandHours_IsCutShortAndSaysSo()
    {
        Design design = Pb.With("duration = \"240 s\"", "duration = \"10000 h\"").With(", { at = \"60 s\", open = [\"humidity switch\"] }", "").Design();
        ScenarioRun run = design.Circuit.Play(design.Brief.Scenarios[0]);
        Assert.True(run.IsCutShort);
        Assert.Equal(Budgets.RunMoments, run.Moments.Count);
        Assert.True(run.EndS < 36e6);
        Assert.Contains("cut short", run.Moments[^1].What, StringComparison.Ordinal);
        Assert.Contains("36000000 s", run.CutShortWords!, StringComparison.Ordinal);
    }

    [Fact]
    public void RunSheet_ALongRun_IsDrawnInItsBeginningAndSaysSo()
    {
        Design design = Pb.With("duration = \"240 s\"", "duration = \"48 h\"").With(", { at = \"60 s\", open = [\"humidity switch\"] }", "").Design();
        WheelDraft.Drawing.Sheet sheet = WheelDraft.Drawing.RunSheet.Of(design, 0);
        Assert.Contains(sheet.Warnings, w => w.Contains("ends after 1000 moments", StringComparison.Ordinal) && w.Contains("cut short", StringComparison.Ordinal));
    }

    [Fact]
    public void Play_FewMoments_IsNotCutShort()
    {
        Design design = Demos.Of(Demo);
        ScenarioRun run = design.Circuit.Play(design.Brief.Scenarios[0]);
        Assert.False(run.IsCutShort);
        Assert.Null(run.CutShortWords);
        Assert.Equal(240, run.EndS);
    }

    // A thousand were set out and drawn in 1.6 GB.
    [Theory]
    [InlineData(199, null)]
    [InlineData(200, "with these the outputs have more than 200 on-periods")]
    [InlineData(1000, "'on' has 1000 items")]
    public void Read_OnPeriods_AreAtMostTwoHundredInAll(int stirs, string? told)
    {
        string on = string.Join(", ", Enumerable.Range(0, stirs).Select(i => Text($"{{ from = \"{3 + (i * 174.0 / stirs):0.000} s\", for = \"{87.0 / stirs:0.000} s\" }}")));
        ParameterResult read = Pb.WithEvery("(?m)^on = \\[ \\{ from = \"15 s\".*$", _ => $"on = [ {on} ]")
            .WithEvery("(?m)^on = \\[ \\{ from = \"(3|122) s\".*$", m => m.Groups[1].Value is "3" ? "on = \"always\"" : m.Value)
            .Read();
        if (told is null)
        {
            Assert.Empty(read.Diagnostics);
            return;
        }

        Diagnostic found = Assert.Single(read.Diagnostics);
        Assert.Contains(told, found.Wrong, StringComparison.Ordinal);
        Assert.True(found.Place.Line > 1);
    }

    // Sixteen inputs made 75 MB of report, half a minute long.
    [Theory]
    [InlineData(12)]
    [InlineData(17)]
    public void Of_InputsBeyondTheStatesThatCanBeListed_AreRefusedAtTheInputs(int more)
    {
        string inputs = string.Concat(Enumerable.Range(0, more).Select(i => Text($"[[input]]\nname = \"in {i}\"\nbetween = [\"L\", \"run\"]\n")));
        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => Pb.With("[[interlock]]", inputs + "[[interlock]]").Design());
        Finding reason = Assert.Single(refused.Reasons);
        Assert.Equal("circuit.too-many-inputs", reason.Code);
        Assert.Contains("can be one input", reason.Message, StringComparison.Ordinal);
        Assert.True(reason.Where!.Value.Line > 1);
    }

    // A zigzag took 12 s, fifty ribs 20 s and 930 MB.
    [Fact]
    public void Read_AZigzagRib_IsRefusedWithAWayOut()
    {
        string path = string.Join(", ", Enumerable.Range(0, 26).Select(i => Text($"[\"{-60 + (5 * i)} mm\", \"{(i % 2 == 0 ? 30 : 40)} mm\"]")));
        Diagnostic found = Refusal(Pb.With(BehindFloor, $"[[rib]]\nsurface = \"floor\"\npath = [ {path} ]\nheight = \"4 mm\"\nthickness = \"0.5 mm\"\n{BehindFloor}"));
        Assert.Contains("more than 24 straight legs", found.Wrong, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(24, false)]
    [InlineData(50, true)]
    public void Read_RibsAndSlots_HaveAtMostTwentyFourLegsOnASurface(int count, bool refused)
    {
        string ribs = string.Concat(Enumerable.Range(0, count).Select(i => Text($"[[{(i % 2 == 0 ? "rib" : "slot")}]]\nsurface = \"floor\"\npath = [ [\"{i} mm\", \"60 mm\"], [\"{i} mm\", \"70 mm\"] ]\n{(i % 2 == 0 ? "height = \"4 mm\"\nthickness" : "depth = \"2 mm\"\nwidth")} = \"0.5 mm\"\n")));
        Assert.Equal(refused ? 1 : 0, Pb.With(BehindFloor, ribs + BehindFloor).Read().Diagnostics.Count);
    }

    [Fact]
    public void Read_MoreThanAHundredTablesOfAKind_IsRefusedAtTheFirstTooMany()
    {
        Diagnostic found = Refusal(Pb.And(string.Concat(Enumerable.Range(0, 100).Select(i => Text($"\n[[load]]\nname = \"l {i}\"\nbetween = [\"run\", \"N\"]\npower = \"1 W\"\n")))));
        Assert.Contains("102 [[load]]", found.Wrong, StringComparison.Ordinal);
    }

    // A file of the wrong kind has a fault at every line; telling them all filled the memory and the screen.
    [Fact]
    public void Read_AFaultAtEveryLine_TellsFiveHundredAndThatThereAreMore()
    {
        IReadOnlyList<Diagnostic> told = Pb.And(string.Concat(Enumerable.Range(0, 2000).Select(i => Text($"\nunknown{i} = 1")))).Read().Diagnostics;
        Assert.Equal(Budgets.ToldFaults + 1, told.Count);
        Assert.Contains("are not told", told[^1].Wrong, StringComparison.Ordinal);
    }

    // From 1 µm to 1 m took 49 s, or ended as a fault of the program.
    [Theory]
    [InlineData("1 um", "1 m", true)]
    [InlineData("10 mm", "0.19 mm", true)]
    [InlineData("10 mm", "0.2 mm", false)]
    public void Read_AStraightThatTapersToAPoint_IsRefused(string width, string end, bool refused)
    {
        ChangedDemo demo = Pb.With("{ straight = \"38 mm\", width = \"10 mm\", width_end = \"3 mm\" }", $"{{ straight = \"38 mm\", width = \"{width}\", width_end = \"{end}\" }}");
        Assert.Equal(refused ? 1 : 0, demo.Read().Diagnostics.Count(d => d.Wrong.Contains("the straight tapers", StringComparison.Ordinal)));
    }

    [Fact]
    public void Check_AFileWithoutEnd_IsRefusedAtItsBudget()
    {
        Assert.SkipUnless(File.Exists("/dev/zero"), "needs a file without end");
        using CliRun run = new();
        Assert.Equal(3, run.Run("check", "/dev/zero"));
        Assert.Contains("larger than 1 MiB, or has no end", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("big.toml", Budgets.ParameterFileBytes, "larger than 1 MiB")]
    [InlineData("big.dxf", Budgets.DrawingBytes, "larger than 32 MiB")]
    public void Check_AFileOverItsBudget_IsRefused(string name, int most, string told)
    {
        using CliRun run = new();
        using (FileStream file = File.Create(run.PathOf(name)))
        {
            file.SetLength(most + 1L);
        }

        Assert.Equal(3, run.Run(["check", name, .. name.EndsWith(".dxf", StringComparison.Ordinal) ? ["--net", "A=L:230 V", "--net", "B=N:0 V", "--degree", "3", "--group", "IIIa", "--category", "II"] : Array.Empty<string>()]));
        Assert.Contains(told, run.Error, StringComparison.Ordinal);
    }
}
