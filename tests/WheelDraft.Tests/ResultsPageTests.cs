using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>The page of measured results is whole: every benchmark, every comparison, every curve. Its figures are times, which no test compares.</summary>
public sealed partial class ResultsPageTests
{
    private static string Benchmarks => Path.Combine(Root, "tests", "WheelDraft.Benchmarks");

    private static string Page => File.ReadAllText(Path.Combine(Benchmarks, "RESULTS.md"));

    private static string Root { get; } = Path.GetFullPath(Path.Combine(Here(), "..", ".."));

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;

    [Theory]
    [InlineData("README.md")]
    [InlineData("DEVELOPERS.md")]
    public void Results_ThePage_IsLinked(string from) =>
        Assert.Contains("](tests/WheelDraft.Benchmarks/RESULTS.md)", File.ReadAllText(Path.Combine(Root, from)), StringComparison.Ordinal);

    // The names are those of the benchmark program, read from its source.
    [Fact]
    public void Results_EveryBenchmark_HasItsLines()
    {
        string[] names = [.. BenchmarkName().Matches(File.ReadAllText(Path.Combine(Benchmarks, "Program.cs"))).Select(m => m.Groups["name"].Value)];
        Assert.True(names.Length >= 9, string.Join(", ", names));
        Assert.All(names, n => Assert.Matches($@"\n### {Regex.Escape(n)}\n\n\| measured \| promised \|\n\|---\|---\|\n\| [^|]+\|", Page));
    }

    // Each comparing script is told by the library that it uses; how many rows each gives is its own affair.
    [Theory]
    [InlineData("ezdxf")]
    [InlineData("svgwrite")]
    [InlineData("librsvg")]
    [InlineData("matplotlib")]
    [InlineData("NumPy")]
    [InlineData("shapely")]
    public void Results_EveryLibrary_HasARowWhoseResultsAgree(string library)
    {
        string[] rows = [.. Comparison().Matches(Page).Select(m => m.Value).Where(r => r.Contains(library, StringComparison.Ordinal))];
        Assert.NotEmpty(rows);
        Assert.All(rows, r => Assert.Contains("| agree |", r, StringComparison.Ordinal));
    }

    [Fact]
    public void Results_EveryCurve_IsThereAndShown()
    {
        string[] shown = [.. Picture().Matches(Page).Select(m => m.Groups["file"].Value).Order(StringComparer.Ordinal)];
        string[] there = [.. Directory.GetFiles(Path.Combine(Benchmarks, "results")).Select(f => "results/" + Path.GetFileName(f)).Order(StringComparer.Ordinal)];
        Assert.NotEmpty(shown);
        Assert.Equal(shown, there);
    }

    [GeneratedRegex(@"^    \(""(?<name>[a-z-]+)"", \(\) =>", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex BenchmarkName();

    [GeneratedRegex(@"^\|([^|\n]*\|){4} [\d.]+ \|([^|\n]*\|){2}$", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Comparison();

    [GeneratedRegex(@"!\[[^\]]*\]\((?<file>[^)]+)\)", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Picture();
}
