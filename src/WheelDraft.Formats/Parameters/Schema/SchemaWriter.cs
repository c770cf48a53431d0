using System.Text.Json;

namespace WheelDraft.Formats.Parameters;

/// <summary>Writes definitions of keys as JSON Schema.</summary>
internal sealed class SchemaWriter(Utf8JsonWriter writer)
{
    private readonly SortedDictionary<string, string> _patterns = new(StringComparer.Ordinal);

    /// <summary>Writes what stands inside the schema of a table.</summary>
    public void TableBody(TableDefinition table)
    {
        writer.WriteString("type", "object");
        writer.WriteString("description", table.Doc);
        writer.WriteStartObject("properties");
        foreach (KeyDefinition key in table.Keys)
        {
            writer.WriteStartObject(key.Name);
            writer.WriteString("title", Title(table, key));
            Key(key);
            writer.WriteEndObject();
        }

        writer.WriteEndObject();
        writer.WriteBoolean("additionalProperties", false);
        Names("required", table.Keys.Where(k => k.Decides is not null && k.FreeWith is null).Select(k => k.Name));
        Choices(table);
        Companions(table);
    }

    /// <summary>Writes the forms of quantities that the tables refer to.</summary>
    public void Definitions()
    {
        writer.WriteStartObject("$defs");
        foreach ((string name, string pattern) in _patterns)
        {
            writer.WriteStartObject(name);
            writer.WriteString("type", "string");
            writer.WriteString("pattern", pattern);
            writer.WriteEndObject();
        }

        writer.WriteEndObject();
    }

    private void Key(KeyDefinition key)
    {
        if (key.Shape is TableShape table)
        {
            TableBody(table.Table);
        }
        else
        {
            writer.WriteString("description", Description(key));
            Shape(key.Shape);
        }

        if (key.Default is not null)
        {
            writer.WritePropertyName("default");
            TomlAsJson.Write(writer, key.Default);
        }

        // The example of a table of the file is its header, which is no value.
        if (!key.Example.TrimStart('[').StartsWith(key.Name + "]", StringComparison.Ordinal))
        {
            writer.WriteStartArray("examples");
            TomlAsJson.Write(writer, key.Example);
            writer.WriteEndArray();
        }
    }

    // "[wheel] bore" for a key in a table, "[wheel]" for a table of the file, "title" for what stands before all tables.
    private static string Title(TableDefinition table, KeyDefinition key) =>
        !ReferenceEquals(table, FileKeys.Root) ? $"{table.Name} {key.Name}" : key.Shape switch { TableShape one => one.Table.Name, TablesShape several => several.Table.Name, _ => key.Name };

    private static string Description(KeyDefinition key)
    {
        string decides = key.Decides is null ? "" : $" Decides {key.Decides}.";
        string range = Quantity(key.Shape) is QuantityShape quantity ? $" {Words.Capital(string.Join("; ", quantity.Ranges.Select(r => r.InWords)))}. Units: {DimensionWords.UnitList(quantity.Dimensions)}." : "";
        return key.Doc + decides + range;
    }

    // Of a list the quantity of each, of "a word or a quantity" the quantity.
    private static QuantityShape? Quantity(ValueShape shape) => shape switch
    {
        QuantityShape quantity => quantity,
        ListShape list => Quantity(list.Item),
        WordOrShape either => Quantity(either.Other),
        _ => null,
    };

    private void Shape(ValueShape shape)
    {
        switch (shape)
        {
            case QuantityShape quantity:
                writer.WriteString("$ref", $"#/$defs/{Defined(quantity)}");
                break;
            case WordShape word:
                Names("enum", word.Words);
                break;
            case TextShape text:
                Text(text.MostCharacters, text.MayBeEmpty ? QuantityPattern.TextOrNone : QuantityPattern.PlainText);
                break;
            case NameShape:
                Text(NameShape.MostCharacters, QuantityPattern.Name);
                break;
            case NumberShape number:
                writer.WriteString("type", number.IsWhole ? "integer" : "number");
                writer.WriteNumber("minimum", number.Least);
                writer.WriteNumber("maximum", number.Most);
                break;
            case FlagShape:
                writer.WriteString("type", "boolean");
                break;
            case TrueShape:
                writer.WriteBoolean("const", true);
                break;
            case DateShape:
                writer.WriteString("type", "string");
                writer.WriteString("format", "date");
                writer.WriteString("pattern", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$");
                break;
            default:
                Holding(shape);
                break;
        }
    }

    /// <summary>Shapes that hold others.</summary>
    private void Holding(ValueShape shape)
    {
        switch (shape)
        {
            case TableShape table:
                TableBody(table.Table);
                break;
            case TablesShape tables:
                Array(tables.Least, null, () => TableBody(tables.Table));
                break;
            case ListShape list:
                Array(list.Least, list.Most, () => Shape(list.Item));
                break;
            case PiecesShape pieces:
                Any([.. pieces.Pieces.Select(p => (Action)(() => TableBody(p)))]);
                break;
            case WordOrShape either:
                Any([() => writer.WriteString("const", either.Word), () => Shape(either.Other)]);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(shape), shape, "A kind of value without a schema.");
        }
    }

    private void Text(int most, string pattern)
    {
        writer.WriteString("type", "string");
        writer.WriteNumber("maxLength", most);
        writer.WriteString("pattern", pattern);
    }

    private void Array(int least, int? most, Action item)
    {
        writer.WriteString("type", "array");
        writer.WriteNumber("minItems", least);
        if (most is { } count)
        {
            writer.WriteNumber("maxItems", count);
        }

        writer.WriteStartObject("items");
        item();
        writer.WriteEndObject();
    }

    private void Any(IReadOnlyList<Action> ways)
    {
        writer.WriteStartArray("anyOf");
        foreach (Action way in ways)
        {
            writer.WriteStartObject();
            way();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    /// <summary>Exactly one of some sets of keys: all of one, and none of the others.</summary>
    private void Choices(TableDefinition table)
    {
        if (table.Choices.Count == 0)
        {
            return;
        }

        writer.WriteStartArray("allOf");
        foreach (ExactlyOne choice in table.Choices)
        {
            writer.WriteStartObject();
            writer.WriteStartArray("oneOf");
            foreach (IReadOnlyList<string> way in choice.Ways)
            {
                writer.WriteStartObject();
                Names("required", way);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private void Companions(TableDefinition table)
    {
        if (table.Companions.Count == 0)
        {
            return;
        }

        writer.WriteStartObject("dependentRequired");
        foreach (Needs needs in table.Companions)
        {
            Names(needs.Key, [needs.Other]);
        }

        writer.WriteEndObject();
    }

    private void Names(string property, IEnumerable<string> names)
    {
        writer.WriteStartArray(property);
        foreach (string name in names)
        {
            writer.WriteStringValue(name);
        }

        writer.WriteEndArray();
    }

    private string Defined(QuantityShape shape)
    {
        string name = string.Join("-or-", shape.Dimensions.Select(d => DimensionWords.Of(d).Name.Replace(' ', '-')).Concat(shape.Words));
        _patterns[name] = QuantityPattern.Of(shape);
        return name;
    }
}
