using System.Reflection;
using Xunit;

namespace WheelDraft.Tests;

/// <summary>Each project uses only those above it.</summary>
public sealed class LayersTests
{
    private static readonly string[] Layers = ["WheelDraft.Geometry", "WheelDraft.Engineering", "WheelDraft.Drawing", "WheelDraft.Formats", "wheeldraft"];

    [Fact]
    public void Projects_ByTheirReferences_UseOnlyThoseAboveThem()
    {
        List<string> wrong = [];
        for (int i = 0; i < Layers.Length; i++)
        {
            Assembly assembly = Assembly.Load(Layers[i]);
            foreach (string used in assembly.GetReferencedAssemblies().Select(a => a.Name!).Intersect(Layers, StringComparer.Ordinal))
            {
                if (Array.IndexOf(Layers, used) >= i)
                {
                    wrong.Add($"{Layers[i]} uses {used}");
                }
            }
        }

        Assert.Empty(wrong);
    }

    [Theory]
    [InlineData("WheelDraft.Geometry")]
    [InlineData("WheelDraft.Engineering")]
    [InlineData("WheelDraft.Drawing")]
    public void Project_BelowFormats_KnowsNoFilesAndNoConsole(string name)
    {
        string[] used = [.. Assembly.Load(name).GetReferencedAssemblies().Select(a => a.Name!)];
        Assert.DoesNotContain("System.Console", used, StringComparer.Ordinal);
        Assert.DoesNotContain("System.IO.FileSystem", used, StringComparer.Ordinal);
        Assert.DoesNotContain("System.Text.Json", used, StringComparer.Ordinal);
    }
}
