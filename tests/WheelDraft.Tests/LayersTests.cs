using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
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

    /// <summary>Types that reach out of the process, and clocks and dice, as the compiler wrote them into the assembly.</summary>
    [Theory]
    [InlineData("WheelDraft.Geometry", "System.IO. System.Text.Json.")]
    [InlineData("WheelDraft.Engineering", "System.IO. System.Text.Json.")]
    [InlineData("WheelDraft.Drawing", "System.IO. System.Text.Json.")]
    [InlineData("WheelDraft.Formats", "System.IO.File System.IO.Directory System.IO.Drive System.IO.Pipes.")]
    public void Project_BelowTheCommandLine_ReachesNoFileConsoleClockOrDice(string name, string filesToo)
    {
        string[] outside = ["System.Console", "System.Diagnostics.Process", "System.Diagnostics.Stopwatch", "System.Net.", "System.TimeProvider", .. filesToo.Split(' ')];
        string[] members =
        [
            "System.DateTime.get_Now", "System.DateTime.get_UtcNow", "System.DateTime.get_Today", "System.DateTimeOffset.get_Now", "System.DateTimeOffset.get_UtcNow",
            "System.Random.get_Shared", "System.Random..ctor", "System.Guid.NewGuid",
        ];
        // How lines end, which thread an iterator is on (the compiler asks that) and how many cores share a picture change no result.
        string[] harmless = ["System.Environment.get_NewLine", "System.Environment.get_CurrentManagedThreadId", .. name is "WheelDraft.Formats" ? (string[])["System.Environment.get_ProcessorCount"] : []];
        References used = References.Of(name);
        Assert.NotEmpty(used.Types);
        Assert.DoesNotContain(used.Types, t => outside.Any(o => t.StartsWith(o, StringComparison.Ordinal)));
        Assert.DoesNotContain(used.Members, m => members.Contains(m, StringComparer.Ordinal) || (m.StartsWith("System.Environment.", StringComparison.Ordinal) && !harmless.Contains(m, StringComparer.Ordinal)));
    }

    [Fact]
    public void References_OfTheCommandLine_ShowWhatTheyAreMeantToShow()
    {
        // The program itself does read files and write to the console: were this list blind, the test above could not fail.
        References used = References.Of("wheeldraft");
        Assert.Contains("System.IO.File", used.Types, StringComparer.Ordinal);
        Assert.Contains("System.Console", used.Types, StringComparer.Ordinal);
        Assert.Contains("System.Environment.get_CurrentDirectory", used.Members, StringComparer.Ordinal);
    }

    /// <summary>Types and members of other assemblies that an assembly refers to, by their full names.</summary>
    private sealed record References(IReadOnlyList<string> Types, IReadOnlyList<string> Members)
    {
        internal static References Of(string name)
        {
            using FileStream file = File.OpenRead(Assembly.Load(name).Location);
            using PEReader program = new(file);
            MetadataReader reader = program.GetMetadataReader();
            List<string> members = [];
            foreach (MemberReferenceHandle handle in reader.MemberReferences)
            {
                MemberReference member = reader.GetMemberReference(handle);
                if (member.Parent.Kind == HandleKind.TypeReference)
                {
                    members.Add($"{NameOf(reader, (TypeReferenceHandle)member.Parent)}.{reader.GetString(member.Name)}");
                }
            }

            return new([.. reader.TypeReferences.Select(t => NameOf(reader, t))], members);
        }

        private static string NameOf(MetadataReader reader, TypeReferenceHandle handle)
        {
            TypeReference type = reader.GetTypeReference(handle);
            string own = reader.GetString(type.Name);
            return type.ResolutionScope.Kind == HandleKind.TypeReference
                ? $"{NameOf(reader, (TypeReferenceHandle)type.ResolutionScope)}+{own}"
                : $"{reader.GetString(type.Namespace)}.{own}";
        }
    }
}
