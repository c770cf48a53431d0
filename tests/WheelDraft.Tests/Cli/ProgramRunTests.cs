using System.CommandLine;
using WheelDraft.Cli;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Cli;

public sealed class ProgramRunTests
{
    [Fact]
    public void Run_Help_ListsCommandsAndGivesZero()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("--help"));
        Assert.Contains("--quiet", run.Out, StringComparison.Ordinal);
        Assert.Empty(run.Error);
    }

    [Fact]
    public void Run_NoCommand_IsWrongInputShortlyOnError()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run([new Probe()], []));
        Assert.Empty(run.Out);
        Assert.Equal("wheeldraft: no command was given; after 'wheeldraft' say probe\nTry: wheeldraft --help\n", run.Error);
    }

    [Fact]
    public void Run_MistypedCommand_SuggestsTheNearest()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run([new Probe()], ["prob"]));
        Assert.Equal("wheeldraft: unknown command 'prob'; did you mean 'probe'?\nTry: wheeldraft --help\n", run.Error);
    }

    [Fact]
    public void Run_UnknownOption_SuggestsTheNearest()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run([new Probe()], ["probe", "x", "--jsn"]));
        Assert.Equal("wheeldraft: unknown option '--jsn'; did you mean '--json'?\nTry: wheeldraft probe --help\n", run.Error);
    }

    [Fact]
    public void Run_MissingArgument_IsWrongInput()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run([new Probe()], ["probe"]));
        Assert.EndsWith("Try: wheeldraft probe --help\n", run.Error, StringComparison.Ordinal);
        Assert.Equal(2, run.Error.Count(c => c == '\n'));
    }

    [Fact]
    public void Run_ArgumentWithAtSign_IsNoResponseFile()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run([new Probe()], ["probe", "@nothing"]));
        Assert.Equal("@nothing\n", run.Out);
    }

    [Theory]
    [InlineData("findings", 1)]
    [InlineData("refused", 2)]
    [InlineData("fault", 2)]
    [InlineData("file", 3)]
    [InlineData("io", 3)]
    [InlineData("access", 3)]
    [InlineData("stopped", 130)]
    public void Run_WhateverHappens_GivesAnAgreedStatusAndNoStackTrace(string what, int status)
    {
        using CliRun run = new();
        Assert.Equal(status, run.Run([new Probe()], ["probe", what]));
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
        Assert.Equal(string.Equals(what, "findings", StringComparison.Ordinal), run.Error.Length == 0);
    }

    [Fact]
    public void Run_RefusedDesign_TellsFileLineAndColumn()
    {
        using CliRun run = new();
        run.Run([new Probe()], ["probe", "refused"]);
        Assert.Equal("wheel.toml:3:9: too small [wheel.small]\nwheeldraft explain CODE tells more about a code in brackets.\n", run.Error);
    }

    [Fact]
    public void Run_FaultOfTheProgram_DoesNotLookLikeWrongInput()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run([new Probe()], ["probe", "fault", "--json"]));
        Assert.Contains("a fault of the program itself, not of your file: InvalidOperationException while it worked on wheel.toml: odd", run.Error, StringComparison.Ordinal);
        Assert.Contains("Please report it", run.Error, StringComparison.Ordinal);
        System.Text.Json.Nodes.JsonNode fault = System.Text.Json.Nodes.JsonNode.Parse(run.Out)!["faults"]!.AsArray().Single()!;
        Assert.Equal("internal", (string?)fault["code"]);
        Assert.Contains("not of your file", (string?)fault["message"], StringComparison.Ordinal);
    }

    [Fact]
    public void Run_StoppedBeforeItBegan_IsInterrupted()
    {
        using CliRun run = new();
        Assert.Equal(130, run.RunStopped([new Probe()], ["probe", "x"]));
    }

    [Fact]
    public void Run_Quiet_SaysNothingInPassing()
    {
        using CliRun run = new();
        run.Run([new Probe()], ["probe", "said"]);
        Assert.Equal("in passing\n", run.Error);
        run.Run([new Probe()], ["probe", "said", "--quiet"]);
        Assert.Empty(run.Error);
    }

    [Fact]
    public void Run_Json_WritesOneIndentedDocument()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run([new Probe()], ["--json", "probe", "Ø"]));
        Assert.Equal("{\n  \"word\": \"Ø\"\n}\n", run.Out);
    }

    private sealed class Probe : ICommand
    {
        private readonly Argument<string> _word = new("WORD");

        public Command Describe() => new("probe", "Tries the frame") { _word };

        public int Run(ParseResult parsed, CommandContext context)
        {
            string word = parsed.GetRequiredValue(_word);
            context.InputFile = "wheel.toml";
            switch (word)
            {
                case "findings": return ExitStatus.Findings;
                case "refused": throw new DesignRefusedException("wheel.small", "too small", new TextPlace(3, 9));
                case "fault": throw new InvalidOperationException("odd");
                case "file": throw new FileTroubleException("no such file");
                case "io": throw new IOException("broken");
                case "access": throw new UnauthorizedAccessException("locked");
                case "stopped": throw new OperationCanceledException();
                case "said": context.Say("in passing"); break;
                default: break;
            }

            if (context.Json)
            {
                context.WriteJson(w => { w.WriteStartObject(); w.WriteString("word", word); w.WriteEndObject(); });
            }
            else
            {
                context.Out.WriteLine(word);
            }

            return ExitStatus.Done;
        }
    }
}
