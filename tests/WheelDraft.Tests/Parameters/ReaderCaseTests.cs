using System.Text;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Parameters;

/// <summary>Cases as data: each file under cases/parameters has a title in its first line and, at its end, one line
/// <c>#! LINE:COLUMN: message</c> for every diagnostic that reading it gives. The expected texts were read through one by one; places were counted in the files.</summary>
public sealed class ReaderCaseTests
{
    public static string Folder => Path.Combine(AppContext.BaseDirectory, "cases", "parameters");

    [Fact]
    public void Read_EveryCase_GivesItsDiagnostics()
    {
        string[] files = [.. Directory.GetFiles(Folder, "*.toml").Order(StringComparer.Ordinal)];
        Assert.True(files.Length >= 15, "the cases are missing");
        StringBuilder failures = new();
        foreach (string file in files)
        {
            Compare(file, failures);
        }

        Assert.True(failures.Length == 0, failures.ToString());
    }

    [Fact]
    public void Read_WorkedWheel_GivesABrief()
    {
        ParameterResult result = ParameterReader.Read(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "cases", "worked", "worked-wheel.toml")));
        Assert.Empty(result.Diagnostics);
        Assert.NotNull(result.Brief);
    }

    // The parser threw here, which ended the program as a fault of its own.
    [Theory]
    [InlineData("format = 1\ntitle = \"b\\", 2, 11)]
    [InlineData("format = 1\ntitle = \"\"\"b\\", 2, 13)]
    [InlineData("\"\\", 1, 2)]
    public void Read_AFileThatEndsAfterABackslash_SaysThatTheTextIsNotClosed(string text, int line, int column) => Assert.Contains(
        ParameterReader.Read(text).Diagnostics,
        d => d.Place == new WheelDraft.Engineering.TextPlace(line, column) && d.Wrong.Contains("not closed before the end of the file", StringComparison.Ordinal));

    private static void Compare(string file, StringBuilder failures)
    {
        byte[] bytes = File.ReadAllBytes(file);
        string[] lines = Encoding.Latin1.GetString(bytes).Split('\n');
        string name = Path.GetFileName(file);
        string[] expected = [.. lines.Where(l => l.StartsWith("#! ", StringComparison.Ordinal)).Select(l => $"{name}:{l[3..]}")];
        ParameterResult result = ParameterReader.Read(bytes);
        string[] found = [.. result.Diagnostics.Select(d => d.ToString(name))];
        string[] missing = [.. expected.Except(found, StringComparer.Ordinal)];
        string[] surplus = [.. found.Except(expected, StringComparer.Ordinal)];
        if (missing.Length + surplus.Length > 0 || !lines[0].StartsWith("# title: ", StringComparison.Ordinal) || (result.Brief is null) != (expected.Length > 0))
        {
            failures.AppendLine(name).AppendJoin("", missing.Select(m => $"  expected: {m}\n")).AppendJoin("", surplus.Select(s => $"  found:    {s}\n"));
        }
    }
}
