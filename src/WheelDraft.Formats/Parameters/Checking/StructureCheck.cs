using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Checks every key of a document against its definition: known, there, of the right kind, in its range. Knows no rule between keys but
/// those that the definitions themselves carry.</summary>
/// <param name="diagnostics">Where faults go.</param>
/// <param name="unread">Names in statements that could not be read: their keys are not reported as missing as well.</param>
internal sealed class StructureCheck(DiagnosticList diagnostics, IReadOnlySet<string> unread)
{
    /// <summary>With this begins a text that stands in for a value.</summary>
    public const string ToEnter = "ENTER:";

    private readonly ValueCheck _values = new(diagnostics);

    /// <summary>Where every key stands, by path.</summary>
    public Dictionary<string, TextPlace> Places { get; } = new(StringComparer.Ordinal);

    /// <summary>Checks a table.</summary>
    /// <param name="table">The table.</param>
    /// <param name="definition">What it should hold.</param>
    /// <param name="path">Its path; empty for the root.</param>
    public CheckedTable Check(TomlTable table, TableDefinition definition, string path)
    {
        CheckedTable result = new(definition, path, table.Header ?? table.Place);
        foreach (TomlEntry entry in table.Entries)
        {
            if (definition.Find(entry.Name) is { } key)
            {
                string at = path.Length == 0 ? entry.Name : $"{path}.{entry.Name}";
                Places[at] = entry.Place;
                result.Add(entry.Name, new CheckedValue(at, entry.Place, entry.Value.Place, Content(entry.Value, key.Shape, (key, at))));
            }
            else
            {
                Unknown(entry, definition);
            }
        }

        MissingKeys.Report(result, diagnostics, unread);
        return result;
    }

    private void Unknown(TomlEntry entry, TableDefinition definition)
    {
        string? near = NearMiss.Of(entry.Name, definition.Keys.Select(k => k.Name));
        string right = Mistakes.OfName(definition.Name, entry.Name) is { } known ? known : near is null ? $"{definition.Name} takes {Words.And(definition.Keys.Select(k => k.Name))}" : $"did you mean '{near}'?";
        diagnostics.Add(entry.Place, $"unknown key '{entry.Name}' in {definition.Name}", right);
    }

    private object? Content(TomlNode node, ValueShape shape, (KeyDefinition Key, string Path) at)
    {
        // What learning from a bench log leaves to be entered, whatever kind of value it is.
        if (node is TomlText { Value: var text } && text.StartsWith(ToEnter, StringComparison.Ordinal))
        {
            diagnostics.Add(node.Place, $"'{at.Key.Name}' is still to be entered", text[ToEnter.Length..].Trim());
            return null;
        }

        return Known(node, shape, at);
    }

    private object? Known(TomlNode node, ValueShape shape, (KeyDefinition Key, string Path) at) => shape switch
    {
        TableShape table => Table(node, table.Table, at),
        TablesShape tables => Tables(node, tables, at),
        PiecesShape pieces => Piece(node, pieces, at),
        ListShape list => List(node, list, at),
        WordOrShape either => node is TomlText ? _values.Check(node, new WordShape([either.Word]), at.Key) : Content(node, either.Other, at),
        _ => _values.Check(node, shape, at.Key),
    };

    private CheckedTable? Table(TomlNode node, TableDefinition definition, (KeyDefinition Key, string Path) at)
    {
        switch (node)
        {
            case TomlTable table:
                return Check(table, definition, at.Path);
            case TomlList { OfHeaders: true } list:
                diagnostics.Add(list.Place, $"{definition.Name} can stand only once", $"write {definition.Name} with single brackets, once");
                return null;
            default:
                diagnostics.Add(node.Place, $"'{at.Key.Name}' is {node.Kind}", $"it is a table, e.g. {ValueCheck.Example(at.Key)}");
                return null;
        }
    }

    private List<CheckedValue>? Tables(TomlNode node, TablesShape shape, (KeyDefinition Key, string Path) at)
    {
        if (node is TomlTable single)
        {
            diagnostics.Add(single.Header ?? single.Place, $"[{at.Key.Name}] with single brackets is one table", $"there can be several, so write [[{at.Key.Name}]] for each");
            Check(single, shape.Table, at.Path + "[0]");
            return null;
        }

        if (node is not TomlList list)
        {
            diagnostics.Add(node.Place, $"'{at.Key.Name}' is {node.Kind}", $"write [[{at.Key.Name}]] for each");
            return null;
        }

        if (list.Items.Count < shape.Least)
        {
            diagnostics.Add(node.Place, $"'{at.Key.Name}' is an empty list, which leaves open {at.Key.Decides}", $"take the line out and add [[{at.Key.Name}]] with its keys");
        }

        if (list.Items.Count > Budgets.TablesOfAKind)
        {
            diagnostics.Add(list.Items[Budgets.TablesOfAKind].Place, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"there are {list.Items.Count} [[{at.Key.Name}]]"), $"a file has at most {Budgets.TablesOfAKind} of a kind; leave out what this timer does not need");
        }

        return Items(list, new TableShape(shape.Table), at);
    }

    private List<CheckedValue>? List(TomlNode node, ListShape shape, (KeyDefinition Key, string Path) at)
    {
        if (node is not TomlList list)
        {
            diagnostics.Add(node.Place, $"'{at.Key.Name}' is {node.Kind}", $"it is a list, e.g. {ValueCheck.Example(at.Key)}");
            return null;
        }

        if (list.Items.Count < shape.Least || list.Items.Count > shape.Most)
        {
            diagnostics.Add(node.Place, $"'{at.Key.Name}' has {ValueCheck.Items(list.Items.Count)}", $"{ValueCheck.Wanted(shape)}, e.g. {ValueCheck.Example(at.Key)}");
            Items(list, shape.Item, at);
            return null;
        }

        return Items(list, shape.Item, at);
    }

    private List<CheckedValue> Items(TomlList list, ValueShape shape, (KeyDefinition Key, string Path) at)
    {
        List<CheckedValue> items = [];
        for (int i = 0; i < list.Items.Count; i++)
        {
            string path = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{at.Path}[{i}]");
            TomlNode item = list.Items[i];
            Places[path] = item.Place;
            items.Add(new CheckedValue(path, item.Place, item.Place, Content(item, shape, (at.Key, path))));
        }

        return items;
    }

    private CheckedTable? Piece(TomlNode node, PiecesShape shape, (KeyDefinition Key, string Path) at)
    {
        if (node is not TomlTable table)
        {
            diagnostics.Add(node.Place, $"a piece of '{at.Key.Name}' is {node.Kind}", $"it is a table in braces, e.g. {ValueCheck.Example(at.Key)}");
            return null;
        }

        TableDefinition[] named = [.. shape.Pieces.Where(p => table.Find(p.Name) is not null)];
        if (named.Length == 1)
        {
            return Check(table, named[0], at.Path);
        }

        string names = Words.Or(shape.Pieces.Select(p => p.Name));
        if (named.Length > 1)
        {
            diagnostics.Add(table.Place, $"this piece is a {Words.And(named.Select(p => p.Name))} at once", "write each piece in braces of its own, in order");
            return null;
        }

        string? near = table.Entries.Select(e => NearMiss.Of(e.Name, shape.Pieces.Select(p => p.Name))).FirstOrDefault(n => n is not null);
        diagnostics.Add(table.Place, "this piece does not say what it is", near is null ? $"it is one of {names}, e.g. {ValueCheck.Example(at.Key)}" : $"did you mean '{near}'? A piece is one of {names}");
        return null;
    }
}
