using System.Text;
using System.Text.Json.Nodes;
using WheelDraft.Cli;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Parameters;

/// <summary>Schema and reader against each other, on every accepted example and on mutations of each of its keys.</summary>
public sealed class SchemaTests
{
    private static readonly JsonObject Schema = JsonNode.Parse(ParameterSchema.Text())!.AsObject();

    private static readonly SchemaCheck Check = new(Schema);

    private static IEnumerable<(string Name, string Text)> Examples()
    {
        foreach (string name in new[] { "parameters/whole-windowed.toml", "parameters/whole-lands.toml", "worked/worked-wheel.toml" })
        {
            yield return (name, File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "cases", name)));
        }

        foreach (Template template in TemplateShelf.All)
        {
            yield return (template.Name, Encoding.UTF8.GetString(template.Bytes()));
        }
    }

    [Fact]
    public void Text_TwoCalls_SameBytes() => Assert.Equal(ParameterSchema.Text(), ParameterSchema.Text());

    /// <summary>What an editor shows of a key: its path, what it is, its range and units, a right value.</summary>
    [Fact]
    public void Text_EveryKey_HasTitleDescriptionUnitsAndExample()
    {
        int keys = 0;
        foreach ((string path, JsonObject key) in Keys("", Schema))
        {
            keys++;
            Assert.False(string.IsNullOrWhiteSpace(key["title"]?.GetValue<string>()), path);
            string description = key["description"]!.GetValue<string>();
            Assert.EndsWith(".", description, StringComparison.Ordinal);
            bool isTable = path.Count(c => c == '/') == 1 && (key["properties"] ?? key["items"]?["properties"]) is not null;
            Assert.True(isTable || key["examples"] is JsonArray { Count: > 0 }, path);
            Assert.Equal(key["$ref"] is not null, description.Contains(" Units: ", StringComparison.Ordinal) && key["type"] is null && key["anyOf"] is null);
        }

        Assert.True(keys > 250, FormattableString.Invariant($"{keys} keys"));
    }

    /// <summary>A reference is an address: language servers refuse one with a blank in it.</summary>
    [Fact]
    public void Text_References_AreAddressesOfDefinitions()
    {
        string[] references = [.. ParameterSchema.Text().Split("\"$ref\": \"").Skip(1).Select(r => r.Split('"')[0])];
        Assert.NotEmpty(references);
        Assert.All(references, r => Assert.True(!r.Any(char.IsWhiteSpace) && Schema["$defs"]![r["#/$defs/".Length..]] is JsonObject, r));
    }

    private static IEnumerable<(string Path, JsonObject Key)> Keys(string path, JsonNode? schema) => schema switch
    {
        JsonObject node => (node["properties"] is JsonObject properties ? properties.Select(p => ($"{path}/{p.Key}", p.Value!.AsObject())) : [])
            .Concat(node.SelectMany(p => p.Key is "properties" ? p.Value!.AsObject().SelectMany(k => Keys($"{path}/{k.Key}", k.Value)) : p.Key is "examples" or "default" ? [] : Keys(path, p.Value))),
        JsonArray list => list.SelectMany(i => Keys(path, i)),
        _ => [],
    };

    [Fact]
    public void Examples_AcceptedByBoth()
    {
        foreach ((string name, string text) in Examples())
        {
            Assert.Empty(ParameterReader.Read(text).Diagnostics.Select(d => d.ToString(name)));
            Assert.True(Check.Accepts(TomlJson.Read(text)), $"the schema refuses {name}");
            Assert.Empty(ParameterReader.Read(TomlJson.Write(TomlJson.Read(text))).Diagnostics.Select(d => d.ToString(name + " in braces")));
        }
    }

    [Fact]
    public void Examples_KeyLeftOut_RefusedByTheReaderWhereverTheSchemaRefuses() => Mutate((table, key) => table.Remove(key), bothMustRefuse: false);

    [Fact]
    public void Examples_KeyMisnamed_RefusedByBoth() => Mutate(
        (table, key) =>
        {
            JsonNode? value = table[key];
            table.Remove(key);
            table[key + "x"] = value?.DeepClone();
        },
        bothMustRefuse: true);

    [Fact]
    public void Examples_ValueOfAnotherKind_RefusedByBoth() => Mutate(
        (table, key) => table[key] = table[key] is JsonObject or JsonArray ? JsonValue.Create(7) : new JsonObject(),
        bothMustRefuse: true);

    [Fact]
    public void Examples_TextWithoutSense_RefusedByTheReaderWhereverTheSchemaRefuses() => Mutate(
        (table, key) => table[key] = JsonValue.Create(@"1,5 furlong/fortnight"),
        bothMustRefuse: false);

    [Fact]
    public void Examples_NumberFarOut_RefusedByTheReaderWhereverTheSchemaRefuses() => Mutate((table, key) => table[key] = JsonValue.Create(-12345678), bothMustRefuse: true);

    [Theory]
    [InlineData("0.5 mm", true)]
    [InlineData(" +.5e-1mm ", true)]
    [InlineData("5. \u03BCm", true)]
    [InlineData("12\u00A0thou", true)]
    [InlineData("1 1/2 in", true)]
    [InlineData("1-1/2 in", true)]
    [InlineData("1/32in", true)]
    [InlineData("1 ft 3 1/2 in", true)]
    [InlineData("1 ft3in ", true)]
    [InlineData("1/0 in", false)]
    [InlineData("3 in 1 ft", false)]
    [InlineData("1 ft -3 in", false)]
    [InlineData("1/2/3 in", false)]
    [InlineData("1 1/2.5 in", false)]
    [InlineData("auto", true)]
    [InlineData("0,5 mm", false)]
    [InlineData("0.5 MM", false)]
    [InlineData("0.5", false)]
    [InlineData("mm", false)]
    [InlineData("0.5 mm\n", false)]
    [InlineData("0.5 e mm", false)]
    [InlineData("\u0661 mm", false)]
    public void Pattern_OuterDiameter_IsTheReadersForm(string text, bool good)
    {
        JsonObject file = TomlJson.Read(Examples().First().Text);
        file["wheel"]!["outer_diameter"] = text;
        file["wheel"]!["bore"] = new JsonObject { ["diameter"] = "1 um" };
        file["wheel"]!["shaft_diameter"] = "1 um";
        Assert.Equal(good, Check.Accepts(file));
        Assert.Equal(good, !ParameterReader.Read(TomlJson.Write(file)).Diagnostics.Any(d => d.Wrong.Contains("outer_diameter", StringComparison.Ordinal)));
    }

    private static void Mutate(Action<JsonObject, string> change, bool bothMustRefuse)
    {
        StringBuilder disagreements = new();
        int mutations = 0;
        foreach ((string name, string text) in Examples())
        {
            JsonObject original = TomlJson.Read(text);
            foreach (string path in Paths(original, ""))
            {
                JsonObject mutated = original.DeepClone().AsObject();
                (JsonObject table, string key) = At(mutated, path);
                change(table, key);
                bool schema = Check.Accepts(mutated);
                bool reader = ParameterReader.Read(TomlJson.Write(mutated)).Diagnostics.Count == 0;
                mutations++;
                if ((reader && !schema) || (bothMustRefuse && (schema || reader)))
                {
                    disagreements.AppendLine(System.Globalization.CultureInfo.InvariantCulture, $"{name} {path}: schema {(schema ? "accepts" : "refuses")}, reader {(reader ? "accepts" : "refuses")}");
                }
            }
        }

        Assert.True(mutations > 500, "too few keys were mutated");
        Assert.True(disagreements.Length == 0, disagreements.ToString());
    }

    private static IEnumerable<string> Paths(JsonNode? node, string path) => node switch
    {
        JsonObject table => table.SelectMany(p => Paths(p.Value, $"{path}/{p.Key}").Prepend($"{path}/{p.Key}")),
        JsonArray list => list.SelectMany((item, i) => Paths(item, $"{path}/{i.ToString(System.Globalization.CultureInfo.InvariantCulture)}")),
        _ => [],
    };

    private static (JsonObject Table, string Key) At(JsonObject root, string path)
    {
        string[] parts = path.Split('/')[1..];
        JsonNode at = root;
        foreach (string part in parts[..^1])
        {
            at = at is JsonArray list ? list[int.Parse(part, System.Globalization.CultureInfo.InvariantCulture)]! : at[part]!;
        }

        return (at.AsObject(), parts[^1]);
    }
}
