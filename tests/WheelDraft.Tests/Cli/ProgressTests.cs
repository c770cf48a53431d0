using WheelDraft.Cli;
using Xunit;

namespace WheelDraft.Tests.Cli;

public sealed class ProgressTests
{
    [Fact]
    public void Step_OnATerminal_CountsOnOneLineAndTakesItAway()
    {
        string told = Told(isTerminal: true, quiet: false, TimeSpan.Zero);
        Assert.StartsWith("\r1 files written", told, StringComparison.Ordinal);
        Assert.EndsWith("\r" + new string(' ', "1 files written".Length) + "\r", told, StringComparison.Ordinal);
        Assert.DoesNotContain("\n", told, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false, false)]
    [InlineData(true, true)]
    public void Step_ElsewhereOrQuiet_SaysNothing(bool isTerminal, bool quiet) => Assert.Empty(Told(isTerminal, quiet, TimeSpan.Zero));

    [Fact]
    public void Step_SoonDone_SaysNothing() => Assert.Empty(Told(isTerminal: true, quiet: false, TimeSpan.FromHours(1)));

    private static string Told(bool isTerminal, bool quiet, TimeSpan patience)
    {
        using StringWriter error = new();
        CommandContext context = new(new Surroundings { Out = TextWriter.Null, Error = error, Folder = ".", ErrorIsTerminal = isTerminal }) { Quiet = quiet };
        using (Progress progress = new(context, "files written") { Patience = patience })
        {
            progress.Step();
            progress.Step();
        }

        return error.ToString();
    }
}
