using System.Diagnostics;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>The program as a process of its own, with standard streams and a working folder that are not what they should be.</summary>
/// <remarks>Here the runtime is started by its host, which opens files of its own first; all three streams closed at once are tried on the natively
/// compiled program, by tests/faults.</remarks>
public sealed class StandardStreamTests
{
    // Once each of these but the last two ended with status 134 and a stack trace.
    [Theory]
    [InlineData("schema", ">&-", 3)]
    [InlineData("schema", ">/dev/full", 3)]
    [InlineData("schema", ">&- 2>&-", 3)]
    [InlineData("schema", ">/dev/full 2>/dev/full", 3)]
    [InlineData("schema --nonsense", "2>/dev/full", 3)]
    [InlineData("check nothing.toml", "2>/dev/full", 3)]
    [InlineData("schema --nonsense", ">/dev/null 2>&-", 2)]
    [InlineData("schema", "| true", 0)]
    public void Program_StreamsThatCannotBeWritten_EndsWithAnAgreedStatus(string arguments, string redirection, int status)
    {
        Assert.Equal(status, Shell($"\"$0\" {arguments} {redirection}").Status);
    }

    [Theory]
    [InlineData(">&-")]
    [InlineData(">/dev/full")]
    public void Program_StandardOutputThatCannotBeWritten_SaysSoWithoutAStackTrace(string redirection)
    {
        string error = Shell($"\"$0\" schema {redirection}").Error;
        Assert.StartsWith("wheeldraft: standard output could not be written: ", error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }

    // Once the number of a closed standard error went to the next stream that was opened, and complaints landed among results.
    [Fact]
    public void Program_ClosedStandardError_KeepsComplaintsOutOfTheResult()
    {
        (int status, string output, _) = Shell("\"$0\" check nothing.toml 2>&-");
        Assert.Equal(3, status);
        Assert.Empty(output);
    }

    [Theory]
    [InlineData("schema", 0)]
    [InlineData("check nothing.toml", 3)]
    [InlineData("check /nothing.toml", 3)]
    [InlineData("new wheel", 3)]
    public void Program_DeletedWorkingFolder_EndsWithAnAgreedStatus(string arguments, int status)
    {
        (int found, _, string error) = Shell($"mkdir gone && cd gone && rmdir ../gone && \"$0\" {arguments}");
        Assert.Equal(status, found);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("env -i")]
    [InlineData("env LC_ALL=tr_TR.UTF-8 LANG=tr_TR.UTF-8")]
    [InlineData("env LC_ALL=nonsense HOME=/nowhere TMPDIR=/nowhere TERM=nonsense")]
    public void Program_OddSurroundings_WritesTheSame(string surroundings)
    {
        (int status, string output, _) = Shell($"{surroundings} DOTNET_ROOT=\"$DOTNET_ROOT\" PATH=\"$PATH\" \"$0\" rule clearance --impulse '4 kV' --degree 3");
        Assert.Equal(0, status);
        Assert.Equal(Shell("\"$0\" rule clearance --impulse '4 kV' --degree 3").Output, output);
    }

    private static (int Status, string Output, string Error) Shell(string script)
    {
        string folder = Directory.CreateTempSubdirectory("wheeldraft-test-").FullName;
        try
        {
            // The shell's own pipe status is that of the program, not of what reads it.
            ProcessStartInfo start = new("bash", ["-o", "pipefail", "-c", script, Path.Combine(AppContext.BaseDirectory, "wheeldraft")])
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                WorkingDirectory = folder,
            };
            using Process process = Process.Start(start)!;
            Task<string> output = process.StandardOutput.ReadToEndAsync();
            string error = process.StandardError.ReadToEnd();
            Assert.True(process.WaitForExit(TimeSpan.FromSeconds(60)));
            return (process.ExitCode, output.Result, error);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
