using System.Text;
using WheelDraft.Tests.Floors;
using Xunit;

namespace WheelDraft.Tests.Formatting;

/// <summary>Sources are formatted where the build does not look; and what it looks at is switched on.</summary>
public sealed class SourceFormatTests
{
    private const string Sound = "using System.Text;\nusing Microsoft.Win32;\nusing WheelDraft.Engineering;\nusing WheelDraft.Engineering.Parts;\nusing WheelDraft.EngineeringTwo;\nusing static System.Math;\nusing Own = System.Int32;\n\n// this.is a remark\nclass A\n{\n}\n";

    [Fact]
    public void EverySource_IsFormatted()
    {
        string[] sources = [.. ((string[])["src", "tests"]).SelectMany(f => Directory.EnumerateFiles(Path.Combine(Sources.Root, f), "*.cs", SearchOption.AllDirectories)).Where(IsOurs)];
        Assert.True(sources.Length > 1000, FormattableString.Invariant($"only {sources.Length} sources found"));
        Assert.Empty(sources.SelectMany(s => SourceFormat.FaultsOf(File.ReadAllBytes(s)).Select(f => $"{Path.GetRelativePath(Sources.Root, s)} {f}")));
    }

    [Fact]
    public void FaultsOf_ASoundSource_AreNone() => Assert.Empty(SourceFormat.FaultsOf(Encoding.UTF8.GetBytes(Sound)));

    [Theory]
    [InlineData("\uFEFF", "", "byte order mark")]
    [InlineData("class A\n", "class A\r\n", "line ends")]
    [InlineData("}\n", "}", "line end")]
    [InlineData("using System.Text;\nusing Microsoft.Win32;\n", "using Microsoft.Win32;\nusing System.Text;\n", "using Microsoft.Win32 where System.Text")]
    [InlineData("using WheelDraft.Engineering;\nusing WheelDraft.Engineering.Parts;\n", "using WheelDraft.Engineering.Parts;\nusing WheelDraft.Engineering;\n", "using WheelDraft.Engineering.Parts where")]
    [InlineData("using static System.Math;\nusing Own = System.Int32;\n", "using Own = System.Int32;\nusing static System.Math;\n", "using Own")]
    [InlineData("{\n}", "{\n    private int _b;\n    int B() => this._b;\n}", "this._b")]
    public void FaultsOf_APlantedFault_NameIt(string sound, string faulty, string words)
    {
        string text = faulty.Length == 0 ? sound + Sound : Sound.Replace(sound, faulty, StringComparison.Ordinal);
        string fault = Assert.Single(SourceFormat.FaultsOf(Encoding.UTF8.GetBytes(text)));
        Assert.Contains(words, fault, StringComparison.Ordinal);
    }

    // What the build is to stop at. A line that goes from there takes a check with it that nothing else makes.
    [Fact]
    public void EditorConfig_RulesOfFormat_StopTheBuild()
    {
        string config = File.ReadAllText(Path.Combine(Sources.Root, ".editorconfig"));
        Assert.All(
            (string[])["dotnet_diagnostic.IDE0055.severity = warning", "dotnet_diagnostic.IDE0005.severity = warning", "file_scoped:error", "outside_namespace:error", "for_non_interface_members:warning"],
            rule => Assert.Contains(rule, config, StringComparison.Ordinal));
        string project = File.ReadAllText(Path.Combine(Sources.Root, "src", "Directory.Build.props"));
        Assert.Contains("<EnforceCodeStyleInBuild>true<", project, StringComparison.Ordinal);
        Assert.Contains("<TreatWarningsAsErrors>true<", project, StringComparison.Ordinal);
    }

    private static bool IsOurs(string path) =>
        !path.Replace('\\', '/').Split('/').Any(p => p is "obj" or "bin");
}
