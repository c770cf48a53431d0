using Tomlyn.Syntax;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Builds the tree of tables from clean syntax; keys and headers that stand twice are reported here.</summary>
internal sealed class TomlTree(DiagnosticList diagnostics)
{
    private readonly TomlTable _root = new(new TextPlace(1, 1), IsInline: false) { Header = new TextPlace(1, 1) };

    /// <summary>The root table of a document.</summary>
    public TomlTable Build(DocumentSyntax document)
    {
        AddAll(document.KeyValues, _root);
        foreach (TableSyntaxBase table in document.Tables)
        {
            if (table.Name is not null && Open(table) is { } opened)
            {
                AddAll(table.Items, opened);
            }
        }

        return _root;
    }

    /// <summary>A place counted from 1.</summary>
    public static TextPlace PlaceOf(TextPosition position) => new(Math.Max(position.Line, 0) + 1, Math.Max(position.Column, 0) + 1);

    private static TextPlace PlaceOf(SyntaxNode node) => PlaceOf(node.Span.Start);

    private static List<(string Name, TextPlace Place)> Parts(KeySyntax key)
    {
        List<(string, TextPlace)> parts = [(NameOf(key.Key), PlaceOf(key))];
        foreach (DottedKeyItemSyntax part in key.DotKeys)
        {
            parts.Add((NameOf(part.Key), part.Key is null ? PlaceOf(part) : PlaceOf(part.Key)));
        }

        return parts;
    }

    private static string NameOf(BareKeyOrStringValueSyntax? name) => name switch
    {
        BareKeySyntax bare => bare.Key?.Text ?? "",
        StringValueSyntax text => text.Value ?? "",
        _ => "",
    };

    /// <summary>The table that a header opens, or null when the header contradicts what stands above.</summary>
    private TomlTable? Open(TableSyntaxBase header)
    {
        TextPlace place = header.OpenBracket is null ? PlaceOf(header) : PlaceOf(header.OpenBracket);
        List<(string Name, TextPlace Place)> parts = Parts(header.Name!);
        TomlTable? at = _root;
        for (int i = 0; i < parts.Count - 1 && at is not null; i++)
        {
            at = Inside(at, parts[i].Name, place);
        }

        (string name, _) = parts[^1];
        return at is null ? null : header is TableArraySyntax ? OpenItem(at, name, place) : OpenTable(at, name, place);
    }

    private TomlTable? OpenTable(TomlTable parent, string name, TextPlace place)
    {
        if (parent.Find(name)?.Value is TomlTable { IsInline: false } known)
        {
            if (known.Header is { } first)
            {
                diagnostics.Add(place, $"[{name}] stands twice, first at line {Number(first.Line)}", "put all its keys under one header");
            }

            known.Header = place;
            return known;
        }

        if (parent.Find(name) is { } other)
        {
            string right = other.Value is TomlList { OfHeaders: true } ? $"write [[{name}]] for one more of them" : "keep one of the two";
            diagnostics.Add(place, $"'{name}' is there already, at line {Number(other.Place.Line)}", right);
            return null;
        }

        TomlTable table = new(place, IsInline: false) { Header = place };
        parent.Add(new TomlEntry(name, place, table));
        return table;
    }

    private TomlTable? OpenItem(TomlTable parent, string name, TextPlace place)
    {
        TomlTable item = new(place, IsInline: false) { Header = place };
        switch (parent.Find(name)?.Value)
        {
            case null:
                parent.Add(new TomlEntry(name, place, new TomlList(place, [item], OfHeaders: true)));
                return item;
            case TomlList { OfHeaders: true } list:
                list.Items.Add(item);
                return item;
            default:
                TextPlace other = parent.Find(name)!.Place;
                diagnostics.Add(place, $"'{name}' is there already, at line {Number(other.Line)}", $"write [[{name}]] for each of them, or keep one of the two");
                return null;
        }
    }

    /// <summary>The table of a name inside another, made when it is not there; of a list of tables its last.</summary>
    private TomlTable? Inside(TomlTable parent, string name, TextPlace place)
    {
        switch (parent.Find(name)?.Value)
        {
            case null:
                TomlTable made = new(place, IsInline: false);
                parent.Add(new TomlEntry(name, place, made));
                return made;
            case TomlTable { IsInline: false } table:
                return table;
            case TomlList { OfHeaders: true } list:
                return (TomlTable)list.Items[^1];
            default:
                diagnostics.Add(place, $"'{name}' has its value already, at line {Number(parent.Find(name)!.Place.Line)}", "put all its keys in one place");
                return null;
        }
    }

    private void AddAll(IEnumerable<KeyValueSyntax> pairs, TomlTable table)
    {
        foreach (KeyValueSyntax pair in pairs)
        {
            if (pair.Key is not null && pair.Value is not null)
            {
                Add(pair, table);
            }
        }
    }

    private void Add(KeyValueSyntax pair, TomlTable table)
    {
        List<(string Name, TextPlace Place)> parts = Parts(pair.Key!);
        TomlTable? at = table;
        for (int i = 0; i < parts.Count - 1 && at is not null; i++)
        {
            at = Inside(at, parts[i].Name, parts[i].Place);
        }

        (string name, TextPlace place) = parts[^1];
        if (at?.Find(name) is { } first)
        {
            diagnostics.Add(place, $"the key '{name}' stands twice, first at line {Number(first.Place.Line)}", "keep one of the two");
            return;
        }

        at?.Add(new TomlEntry(name, place, Value(pair.Value!)));
    }

    private TomlNode Value(ValueSyntax value) => value switch
    {
        StringValueSyntax text => new TomlText(PlaceOf(text), text.Value ?? ""),
        IntegerValueSyntax whole => new TomlNumber(PlaceOf(whole), whole.Value, Written(whole), IsWhole: true),
        FloatValueSyntax number => new TomlNumber(PlaceOf(number), number.Value, Written(number), IsWhole: false),
        BooleanValueSyntax flag => new TomlFlag(PlaceOf(flag), flag.Value),
        ArraySyntax list => new TomlList(PlaceOf(list), [.. list.Items.Where(i => i.Value is not null).Select(i => Value(i.Value!))], OfHeaders: false),
        InlineTableSyntax table => Inline(table),
        _ => new TomlDate(PlaceOf(value), Written(value)),
    };

    private TomlTable Inline(InlineTableSyntax syntax)
    {
        TomlTable table = new(PlaceOf(syntax), IsInline: true);
        AddAll(syntax.Items.Select(i => i.KeyValue).OfType<KeyValueSyntax>(), table);
        return table;
    }

    /// <summary>The value as written; the node's own text would take a remark at the end of the line with it.</summary>
    private static string Written(SyntaxNode node) => (node.ToString() ?? "").Split('#')[0].Trim().Replace("_", "", StringComparison.Ordinal);

    private static string Number(int line) => line.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
