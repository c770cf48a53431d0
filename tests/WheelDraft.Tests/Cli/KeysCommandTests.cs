using System.Text.Json.Nodes;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Cli;

public sealed class KeysCommandTests
{
    [Fact]
    public void Keys_Key_ShowsMeaningValueDefaultAndExample()
    {
        using CliRun run = new();
        Assert.Equal(0, run.Run("keys", "backlash"));
        Assert.StartsWith("[drive] backlash\n", run.Out, StringComparison.Ordinal);
        Assert.All(["meaning", "left out  \"0 deg\"", "example   backlash = \"0 deg\"", "from 0 deg to"], w => Assert.Contains(w, run.Out, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("copper", "[[output]] copper", "[[output]] copper[].from")]
    [InlineData("feed", "[feed] radius", "[[strip]] feed")]
    [InlineData("adjust", "[[output]] adjust", "[[output]] adjust.screw")]
    [InlineData("protractor-less", null, null)]
    public void Keys_Word_FindsKeysTablesAndPaths(string word, string? first, string? second)
    {
        using CliRun run = new();
        int status = run.Run("keys", word);
        Assert.Equal(first is null ? 2 : 0, status);
        Assert.All(new[] { first, second }.OfType<string>(), p => Assert.Contains(p, string.Concat(KeyReference.About(word).Select(e => e.Path + "\n")) + run.Out, StringComparison.Ordinal));
    }

    [Fact]
    public void Keys_Misspelt_SuggestsTheNearest()
    {
        using CliRun run = new();
        Assert.Equal(2, run.Run("keys", "deflexion"));
        Assert.Contains("did you mean 'deflection'?", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Keys_All_AreThoseOfTheSchema()
    {
        // The schema is written by another walk over the definitions, and read here as plain JSON.
        using CliRun run = new();
        Assert.Equal(0, run.Run("schema"));
        HashSet<string> inSchema = new(StringComparer.Ordinal);
        Names(JsonNode.Parse(run.Out)!, inSchema);
        Assert.Equal(0, run.Run("keys", "--json"));
        HashSet<string> shown = [.. JsonNode.Parse(run.Out)!.AsArray().Select(k => ((string)k!["key"]!).Split('.', ' ')[^1])];
        inSchema.ExceptWith(shown);
        inSchema.ExceptWith(FileKeys.Root.Keys.Select(k => k.Name));
        Assert.Empty(inSchema);
    }

    [Fact]
    public void Keys_Page_IsTheOneThatIsKept()
    {
        // WHEELDRAFT_RENEW_KEYS with the path of parameters/keys.md writes it again.
        using CliRun run = new();
        Assert.Equal(0, run.Run("keys", "--page"));
        if (Environment.GetEnvironmentVariable("WHEELDRAFT_RENEW_KEYS") is { Length: > 0 } path)
        {
            File.WriteAllText(path, run.Out);
        }

        Assert.Equal(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "parameters", "keys.md")), run.Out);
    }

    private static void Names(JsonNode node, HashSet<string> names)
    {
        if (node is JsonObject members)
        {
            if (members["properties"] is JsonObject properties)
            {
                names.UnionWith(properties.Select(p => p.Key));
            }

            foreach ((_, JsonNode? value) in members)
            {
                if (value is not null)
                {
                    Names(value, names);
                }
            }
        }
        else if (node is JsonArray items)
        {
            foreach (JsonNode item in items.OfType<JsonNode>())
            {
                Names(item, names);
            }
        }
    }
}
