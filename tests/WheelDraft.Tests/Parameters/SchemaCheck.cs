using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace WheelDraft.Tests.Parameters;

/// <summary>A small validator for the part of JSON Schema (draft 2020-12, Core and Validation) that the parameter schema uses, written from the
/// specification and sharing nothing with the reader. A keyword it does not know fails the test.</summary>
internal sealed class SchemaCheck(JsonObject root)
{
    public bool Accepts(JsonNode? node) => Accepts(root, node);

    private bool Accepts(JsonObject schema, JsonNode? node) => schema.All(keyword => Holds(keyword.Key, keyword.Value!, schema, node));

    private bool Holds(string keyword, JsonNode value, JsonObject schema, JsonNode? node) => keyword switch
    {
        "$schema" or "title" or "description" or "default" or "examples" or "$defs" or "format" => true,
        "$ref" => Accepts(root["$defs"]![value.GetValue<string>()["#/$defs/".Length..]]!.AsObject(), node),
        "type" => IsOfType(value.GetValue<string>(), node),
        "enum" => value.AsArray().Any(v => JsonNode.DeepEquals(v, node)),
        "const" => JsonNode.DeepEquals(value, node),
        "pattern" => node?.GetValueKind() != JsonValueKind.String || Matches(value.GetValue<string>(), node.GetValue<string>()),
        "maxLength" => node?.GetValueKind() != JsonValueKind.String || node.GetValue<string>().EnumerateRunes().Count() <= value.GetValue<int>(),
        "minimum" => node?.GetValueKind() != JsonValueKind.Number || Number(node) >= Number(value),
        "maximum" => node?.GetValueKind() != JsonValueKind.Number || Number(node) <= Number(value),
        "minItems" => node is not JsonArray list || list.Count >= value.GetValue<int>(),
        "maxItems" => node is not JsonArray list || list.Count <= value.GetValue<int>(),
        "items" => node is not JsonArray list || list.All(i => Accepts(value.AsObject(), i)),
        "required" => node is not JsonObject table || value.AsArray().All(k => table.ContainsKey(k!.GetValue<string>())),
        "properties" => node is not JsonObject table || table.All(p => value[p.Key] is not { } part || Accepts(part.AsObject(), p.Value)),
        "additionalProperties" => node is not JsonObject table || table.All(p => schema["properties"]?.AsObject().ContainsKey(p.Key) == true
            || (value is JsonObject others && Accepts(others, p.Value))),
        "dependentRequired" => node is not JsonObject table || value.AsObject().All(d => !table.ContainsKey(d.Key) || d.Value!.AsArray().All(k => table.ContainsKey(k!.GetValue<string>()))),
        "anyOf" => value.AsArray().Any(s => Accepts(s!.AsObject(), node)),
        "oneOf" => value.AsArray().Count(s => Accepts(s!.AsObject(), node)) == 1,
        "allOf" => value.AsArray().All(s => Accepts(s!.AsObject(), node)),
        _ => throw new NotSupportedException($"The validator does not know the keyword {keyword}."),
    };

    /// <summary>In ECMA-262 a last $ is the end of the text; in .NET it also stands before a last line feed.</summary>
    private static bool Matches(string pattern, string text) =>
        Patterns.GetOrAdd(pattern, p => new(p.EndsWith('$') ? p[..^1] + @"(?![\s\S])" : p, RegexOptions.ECMAScript, TimeSpan.FromSeconds(60))).IsMatch(text);

    // A schema has more patterns than .NET keeps for calls without an object.
    private static readonly ConcurrentDictionary<string, Regex> Patterns = new(StringComparer.Ordinal);

    private static double Number(JsonNode node) => JsonSerializer.Deserialize<JsonElement>(node.ToJsonString(), JsonContext.Default.JsonElement).GetDouble();

    private static bool IsOfType(string type, JsonNode? node) => type switch
    {
        "object" => node is JsonObject,
        "array" => node is JsonArray,
        "string" => node?.GetValueKind() == JsonValueKind.String,
        "boolean" => node?.GetValueKind() is JsonValueKind.True or JsonValueKind.False,
        "number" => node?.GetValueKind() == JsonValueKind.Number,
        "integer" => node?.GetValueKind() == JsonValueKind.Number && Number(node) % 1 == 0,
        _ => throw new NotSupportedException($"The validator does not know the type {type}."),
    };
}

/// <summary>Reading without reflection, which the solution switches off.</summary>
[System.Text.Json.Serialization.JsonSerializable(typeof(JsonElement))]
internal sealed partial class JsonContext : System.Text.Json.Serialization.JsonSerializerContext;
