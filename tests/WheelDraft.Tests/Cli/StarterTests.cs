using System.Text;
using System.Text.RegularExpressions;
using WheelDraft.Cli;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Cli;

/// <summary>The starter files: each key explained once, nothing missed, and one for each way to make a contact.</summary>
public sealed partial class StarterTests
{
    private const int MatchMilliseconds = 10_000;

    public static TheoryData<string> Starters => [.. TemplateShelf.All.Select(t => t.Name)];

    private static string Text(string name) => Encoding.UTF8.GetString(TemplateShelf.All.First(t => string.Equals(t.Name, name, StringComparison.Ordinal)).Bytes());

    [Theory]
    [MemberData(nameof(Starters))]
    public void Starter_EveryKey_HasACommentWhereItStandsFirst(string name)
    {
        // The README says so; of 77 keys in one starter 22 had a comment.
        HashSet<string> seen = new(StringComparer.Ordinal);
        List<string> bare = [];
        string table = "the file";
        foreach (string line in Text(name).Split('\n'))
        {
            if (Header().Match(line) is { Success: true } header)
            {
                table = header.Groups["name"].Value;
            }
            else if (Key().Match(line) is { Success: true } key && seen.Add($"{table}.{key.Groups["name"].Value}") && !line.Contains('#', StringComparison.Ordinal))
            {
                bare.Add($"{table}.{key.Groups["name"].Value}");
            }
        }

        Assert.True(seen.Count > (name is "shortest" ? 15 : 30));
        Assert.Empty(bare);
    }

    [Theory]
    [MemberData(nameof(Starters))]
    public void Starter_AsItIs_MissesNothing(string name) =>
        Assert.Empty(Demos.OfStarter(name).Findings.Where(f => f.Severity == FindingSeverity.Error).Select(f => f.Message));

    [Fact]
    public void Starter_Shortest_IsACompleteMainsTimerWithStripsInThirtyLines()
    {
        Assert.InRange(Text("shortest").Split('\n').Count(l => l.Trim() is { Length: > 0 } line && line[0] != '#'), 1, 30);
        Design design = Demos.OfStarter("shortest");
        Assert.Equal(design.Brief.Outputs.Count + 1, design.Strips.Strips.Count);
        Assert.Equal(230, design.Brief.Supply.VoltageV);
        Assert.NotNull(design.Brief.Drive.MotorRpm);
    }

    [Fact]
    public void Starters_Contacts_AreRivetedInOneAndFoldedInAnother()
    {
        Assert.Contains("{ rivet = ", Text("damp-mains"), StringComparison.Ordinal);
        Assert.Contains("contact = true", Text("folded-strips"), StringComparison.Ordinal);
        Assert.Contains("copper = [ {", Text("old-wheel"), StringComparison.Ordinal);
        Assert.All(TemplateShelf.All, t => Assert.StartsWith("for ", t.About, StringComparison.Ordinal));
    }

    [GeneratedRegex(@"^\[+(?<name>\w+)\]+", RegexOptions.ExplicitCapture, MatchMilliseconds)]
    private static partial Regex Header();

    [GeneratedRegex(@"^(?<name>\w+) = ", RegexOptions.ExplicitCapture, MatchMilliseconds)]
    private static partial Regex Key();
}
