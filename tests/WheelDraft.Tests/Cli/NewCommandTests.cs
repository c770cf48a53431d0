using System.Text.Json.Nodes;
using WheelDraft.Cli;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Cli;

public sealed class NewCommandTests
{
    [Fact]
    public void New_EveryTemplate_WritesAFileThatReads()
    {
        using CliRun run = new();
        Assert.True(TemplateShelf.All.Count >= 3);
        foreach (Template template in TemplateShelf.All)
        {
            Assert.Equal(0, run.Run("new", template.Name, "--like", template.Name));
            byte[] bytes = File.ReadAllBytes(run.PathOf($"{template.Name}.toml"));
            Assert.Empty(ParameterReader.Read(bytes).Diagnostics.Select(d => d.ToString(template.Name)));
            Assert.DoesNotContain((byte)'\r', bytes);
            Assert.NotEqual(0xEF, bytes[0]);
        }
    }

    [Fact]
    public void New_FileIsThere_IsFileTroubleAndKeepsIt()
    {
        using CliRun run = new();
        File.WriteAllText(run.PathOf("a.toml"), "mine");
        Assert.Equal(3, run.Run("new", "a.toml"));
        Assert.Contains("is not overwritten", run.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(run.PathOf("a.toml")));
        Assert.Single(Directory.GetFiles(run.Folder));
    }

    [Fact]
    public void New_FolderIsNotThere_IsFileTrouble()
    {
        using CliRun run = new();
        Assert.Equal(3, run.Run("new", "no/such/a"));
    }

    [Fact]
    public void New_UnknownTemplate_SuggestsTheNearest()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run("new", "a", "--like", "damp-main"));
        Assert.Contains("did you mean 'damp-mains'?", run.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(run.Folder));
    }

    [Fact]
    public void New_MistypedOption_IsNotTakenForAName()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run("new", "--lst"));
        Assert.Equal("wheeldraft: unknown option '--lst'; did you mean '--list'?\nTry: wheeldraft new --help\n", run.Error);
        Assert.Empty(Directory.GetFiles(run.Folder));
    }

    [Fact]
    public void New_WithoutName_IsWrongInput()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run("new"));
    }

    [Fact]
    public void New_List_NamesEveryTemplate()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("new", "--list"));
        Assert.Equal(TemplateShelf.All.Select(t => t.Name).ToArray(), run.Out.TrimEnd().Split('\n').Select(l => l.Split(' ')[0]).ToArray());
        Assert.Equal(0, run.Run("new", "--list", "--json"));
        Assert.Equal(TemplateShelf.All.Count, JsonNode.Parse(run.Out)!["templates"]!.AsArray().Count);
    }

    [Fact]
    public void New_JsonAndQuiet_SayOnlyTheResult()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("new", "a", "--json", "--quiet"));
        Assert.Equal("a.toml", (string?)JsonNode.Parse(run.Out)!["file"]);
        Assert.Empty(run.Error);
    }

    [Fact]
    public void Schema_WritesTheSchemaOnly()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("schema"));
        Assert.Equal(ParameterSchema.Text(), run.Out);
        Assert.Empty(run.Error);
    }
}
