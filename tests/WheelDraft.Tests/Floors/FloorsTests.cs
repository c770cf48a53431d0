using Xunit;

namespace WheelDraft.Tests.Floors;

/// <summary>Chapters stand on floors: a chapter uses only those below it, and no two use each other.</summary>
public sealed class FloorsTests
{
    public static TheoryData<string> Projects => [.. FloorPlan.All.Select(p => p.Project)];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Chapters_ByTheirCompiledReferences_UseOnlyFloorsBelow(string project)
    {
        FloorPlan plan = FloorPlan.All.Single(p => string.Equals(p.Project, project, StringComparison.Ordinal));
        Dictionary<string, string> chapters = Sources.ChaptersOf(project);
        Assert.NotEmpty(chapters);
        SortedDictionary<string, SortedSet<string>> wrong = new(StringComparer.Ordinal);
        foreach ((string user, string used) in ChapterUses.Of(AssemblyPath(project)))
        {
            if (!chapters.TryGetValue(user, out string? from) || !chapters.TryGetValue(used, out string? to) || string.Equals(from, to, StringComparison.Ordinal))
            {
                continue;
            }

            if (plan.FloorOf(from) is not int upper || plan.FloorOf(to) is not int lower || lower >= upper)
            {
                string arrow = $"{from} uses {to}";
                wrong.TryAdd(arrow, new(StringComparer.Ordinal));
                wrong[arrow].Add($"{user} uses {used}");
            }
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong.Select(w => $"{w.Key}: {string.Join(", ", w.Value)}")));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Plan_ListsEveryChapterThatThereIsAndNoOther(string project)
    {
        FloorPlan plan = FloorPlan.All.Single(p => string.Equals(p.Project, project, StringComparison.Ordinal));
        Assert.Equal(
            Sources.ChaptersOf(project).Values.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
            plan.Floors.SelectMany(f => f).Order(StringComparer.Ordinal),
            StringComparer.Ordinal);
    }

    [Fact]
    public void Uses_OfThisVeryTest_AreFound() =>
        Assert.Contains((nameof(FloorsTests), nameof(FloorPlan)), ChapterUses.Of(typeof(FloorsTests).Assembly.Location));

    [Fact]
    public void DevelopersPage_ShowsTheFloorsAsTheTestHasThem() =>
        Assert.Contains("```text\n" + FloorPlan.Text.TrimEnd() + "\n```", File.ReadAllText(Path.Combine(Sources.Root, "DEVELOPERS.md")).ReplaceLineEndings("\n"), StringComparison.Ordinal);

    private static string AssemblyPath(string project) =>
        Path.Combine(AppContext.BaseDirectory, string.Equals(project, "WheelDraft.Cli", StringComparison.Ordinal) ? "wheeldraft.dll" : project + ".dll");
}
