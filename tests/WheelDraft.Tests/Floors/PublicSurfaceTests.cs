using Xunit;

namespace WheelDraft.Tests.Floors;

/// <summary>The public surface of each library stands in one text file beside its project, so that a change of it is a line in the diff.</summary>
/// <remarks><c>WHEELDRAFT_RENEW_SURFACE=1</c> writes the files anew.</remarks>
public sealed class PublicSurfaceTests
{
    public static TheoryData<string> Libraries => ["WheelDraft.Geometry", "WheelDraft.Engineering", "WheelDraft.Drawing", "WheelDraft.Formats"];

    [Theory]
    [MemberData(nameof(Libraries))]
    public void Of_Library_IsWhatItsFileSays(string library)
    {
        string file = Path.Combine(Sources.Root, "src", library, "PublicSurface.txt");
        string now = string.Join('\n', PublicSurface.Of(Path.Combine(AppContext.BaseDirectory, library + ".dll"))) + "\n";
        if (Environment.GetEnvironmentVariable("WHEELDRAFT_RENEW_SURFACE") is "1")
        {
            File.WriteAllText(file, now);
        }

        Assert.Equal(File.ReadAllText(file).ReplaceLineEndings("\n").Split('\n'), now.Split('\n'));
    }

    [Theory]
    [MemberData(nameof(Libraries))]
    public void Members_ThatAreNotPublic_AreUsedByTheProgram(string library)
    {
        IReadOnlyList<string> unused = UnusedMembers.Of(library + ".dll", Assemblies);
        Assert.True(unused.Count == 0, string.Join('\n', unused));
    }

    private static IReadOnlyList<string> Assemblies { get; } = ["WheelDraft.Geometry.dll", "WheelDraft.Engineering.dll", "WheelDraft.Drawing.dll", "WheelDraft.Formats.dll", "wheeldraft.dll"];
}
