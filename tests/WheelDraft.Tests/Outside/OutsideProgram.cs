using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>A program of another project that serves as an oracle; a test is skipped, visibly, where it is not installed.</summary>
/// <remarks>The build script installs them all and fails when a test was skipped.</remarks>
internal sealed class OutsideProgram
{
    // What a trial call said: null where the program works. Some take longer over it than over their work, so each is tried once.
    private static readonly ConcurrentDictionary<string, Lazy<string?>> Tried = new(StringComparer.Ordinal);

    private OutsideProgram(string path) => Path = path;

    internal string Path { get; }

    /// <summary>The program, once it has answered a trial call.</summary>
    /// <param name="path">Where Debian puts it.</param>
    /// <param name="trial">Arguments with which it ends well.</param>
    internal static OutsideProgram OrSkip(string path, params string[] trial)
    {
        string? trouble = Tried.GetOrAdd(string.Join(' ', [path, .. trial]), of => new(() => TroubleOf(path, trial, of))).Value;
        Assert.SkipWhen(trouble is not null, trouble ?? "");
        return new(path);
    }

    private static string? TroubleOf(string path, string[] trial, string words)
    {
        if (!File.Exists(path))
        {
            return $"{path} is not installed";
        }

        using Process process = new OutsideProgram(path).Start(trial);
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? null : $"{words} does not work here";
    }

    /// <summary>What it prints; the test fails with its complaint when it does not end well.</summary>
    internal async Task<string> RunAsync(params string[] arguments)
    {
        CancellationToken stop = TestContext.Current.CancellationToken;
        using Process process = Start(arguments);
        Task<string> complaint = process.StandardError.ReadToEndAsync(stop);
        string output = await process.StandardOutput.ReadToEndAsync(stop);
        await process.WaitForExitAsync(stop);
        Assert.True(process.ExitCode == 0, string.Create(CultureInfo.InvariantCulture, $"{Path} ended with {process.ExitCode}: ") + await complaint);
        return output;
    }

    /// <summary>The program running, with pipes to all that it reads and writes.</summary>
    internal Process Start(params string[] arguments) =>
        Process.Start(new ProcessStartInfo(Path, arguments) { UseShellExecute = false, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true })!;
}
