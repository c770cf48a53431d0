using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Another value for one key of a file, named by its way from the root: <c>output.mist.tolerance</c>, <c>wheel.bore.diameter</c>, <c>drive.coast[2]</c>.</summary>
/// <remarks>Tables of a kind go by their name, or by their number from 1 (<c>sheet[1].gap</c>), items of a list by their number from 1. The key need not stand in
/// the file, nor the single table that it belongs to; a table of several must.</remarks>
/// <param name="Key">The way to the key.</param>
/// <param name="Value">The value without quotation marks, as it would stand in the file.</param>
internal sealed record ValueChange(string Key, string Value)
{
    /// <summary>Puts the value into a file's tree.</summary>
    /// <exception cref="DesignRefusedException">There is no such key; with the nearest that there is.</exception>
    public void Apply(TomlTable root) => Into(root, FileKeys.Root, Key);

    private void Into(TomlTable table, TableDefinition definition, string rest)
    {
        int end = rest.AsSpan().IndexOfAny('.', '[') is >= 0 and int found ? found : rest.Length;
        string name = rest[..end];
        if (definition.Find(name) is not { } key)
        {
            string? near = NearMiss.Of(name, definition.Keys.Select(k => k.Name));
            throw Wrong(near is null ? $"{definition.Name} has no key '{name}'; it takes {Words.And(definition.Keys.Select(k => k.Name))}" : $"{definition.Name} has no key '{name}'; did you mean '{near}'?");
        }

        TomlNode? node = table.Find(name)?.Value;
        TextPlace place = node?.Place ?? table.Header ?? table.Place;
        Below(key.Shape, new(node, place, value => table.Put(new(name, table.Find(name)?.Place ?? place, value))), rest[end..], name);
    }

    private void Below(ValueShape shape, Spot spot, string rest, string name)
    {
        switch (shape)
        {
            case TableShape inner:
                Into(TableAt(spot), inner.Table, After(rest, inner.Table));
                break;
            case TablesShape several:
                Item(several.Table, spot, rest, name);
                break;
            case WordOrShape either when rest.Length > 0:
                Below(either.Other, spot, rest, name);
                break;
            case ListShape list when rest.Length > 0:
                ListItem(list, spot, rest, name);
                break;
            case PiecesShape pieces:
                TomlTable piece = spot.Node as TomlTable ?? throw Wrong($"'{name}' has no such piece");
                TableDefinition kind = pieces.Pieces.FirstOrDefault(p => piece.Find(p.Name) is not null) ?? throw Wrong($"the piece of '{name}' does not say what it is");
                Into(piece, kind, After(rest, kind));
                break;
            case ListShape:
                throw Wrong($"'{name}' is a list; name one of its items, e.g. {Key}[1]");
            default:
                if (rest.Length > 0)
                {
                    throw Wrong($"'{name}' is a plain value, and '{rest}' goes further");
                }

                spot.Put(Node(shape, spot.Place));
                break;
        }
    }

    private static TomlTable TableAt(Spot spot)
    {
        if (spot.Node is TomlTable table)
        {
            return table;
        }

        TomlTable made = new(spot.Place, IsInline: false) { Header = spot.Place };
        spot.Put(made);
        return made;
    }

    private string After(string rest, TableDefinition table) =>
        rest is ['.', _, ..] ? rest[1..] : throw Wrong($"{table.Name} is a table; name one of its keys, e.g. {Key}.{table.Keys[0].Name}");

    // A table of several: by its name, or by its number.
    private void Item(TableDefinition definition, Spot spot, string rest, string name)
    {
        if (rest is ['[', ..])
        {
            ListItem(new ListShape(new TableShape(definition), 0, int.MaxValue), spot, rest, name);
            return;
        }

        TomlTable[] items = [.. (spot.Node as TomlList)?.Items.OfType<TomlTable>() ?? []];
        string wanted = rest is ['.', ..] ? rest[1..] : rest;
        TomlTable[] named = [.. items.Where(i => NameOf(i) is { Length: > 0 } n && (wanted.StartsWith(n + ".", StringComparison.OrdinalIgnoreCase) || string.Equals(wanted, n, StringComparison.OrdinalIgnoreCase)))
            .OrderByDescending(i => NameOf(i)!.Length)];
        if (named.Length == 0)
        {
            string[] there = [.. items.Select(NameOf).OfType<string>()];
            throw Wrong(there.Length > 0 ? $"there is no [[{name}]] of that name; there are {Words.And(there.Select(t => $"{name}.{t}"))}"
                : items.Length > 0 ? $"a [[{name}]] has no name; count them from 1, e.g. {name}[1]" : $"the file has no [[{name}]]");
        }

        Into(named[0], definition, After(wanted[NameOf(named[0])!.Length..], definition));
    }

    private void ListItem(ListShape list, Spot spot, string rest, string name)
    {
        int close = rest.IndexOf(']', StringComparison.Ordinal);
        List<TomlNode> items = (spot.Node as TomlList)?.Items ?? [];
        if (close < 2 || rest[0] != '[' || !int.TryParse(rest.AsSpan(1, close - 1), NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number < 1 || number > items.Count)
        {
            throw Wrong(items.Count == 0 ? $"'{name}' has no items in the file" : string.Create(CultureInfo.InvariantCulture, $"'{name}' has items 1 to {items.Count}; name one, e.g. {name}[1]"));
        }

        Below(list.Item, new(items[number - 1], items[number - 1].Place, value => items[number - 1] = value), rest[(close + 1)..], name);
    }

    private TomlNode Node(ValueShape shape, TextPlace place) => shape switch
    {
        NumberShape when double.TryParse(Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) => new TomlNumber(place, number, Value, Value.All(char.IsAsciiDigit)),
        FlagShape or TrueShape when Value is "true" or "false" => new TomlFlag(place, Value is "true"),
        _ => new TomlText(place, Value),
    };

    private static string? NameOf(TomlTable table) => (table.Find("name")?.Value as TomlText)?.Value;

    private DesignRefusedException Wrong(string why) => new("arguments.key", $"--key {Key}: {why}");

    /// <summary>A value's place in the tree.</summary>
    private sealed record Spot(TomlNode? Node, TextPlace Place, Action<TomlNode> Put);
}
