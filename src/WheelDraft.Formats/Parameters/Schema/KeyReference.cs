using System.Globalization;
using System.Text;

namespace WheelDraft.Formats.Parameters;

/// <summary>One key as the reference shows it.</summary>
/// <param name="Table">Header of its table: <c>[[output]]</c>; "the file" for keys that stand before all tables.</param>
/// <param name="Name">Its name there; with dots and brackets for a key inside another: <c>adjust.edge</c>, <c>on[].from</c>.</param>
/// <param name="Kind">What kind of value it takes, with units and range.</param>
/// <param name="LeftOut">What holds when it is left out.</param>
/// <param name="Meaning">What it means.</param>
/// <param name="Example">A right value.</param>
internal sealed record KeyEntry(string Table, string Name, string Kind, string LeftOut, string Meaning, string Example)
{
    /// <summary>The key alone: <c>edge</c> of <c>adjust.edge</c>.</summary>
    public string Last => Name[(Name.LastIndexOfAny(['.', ' ']) + 1)..];

    /// <summary>Table and name in one.</summary>
    public string Path => $"{Table} {Name}";
}

/// <summary>Every key for people: from the same definitions as reader and schema.</summary>
internal static class KeyReference
{
    /// <summary>All keys, in the order of the file.</summary>
    public static IReadOnlyList<KeyEntry> All()
    {
        List<KeyEntry> entries = [];
        TableDefinition root = FileKeys.Root;
        Walk(new("the file", root.Doc, [.. root.Keys.Where(k => k.Shape is not (TableShape or TablesShape))]), "the file", "", entries);
        foreach (KeyDefinition table in root.Keys)
        {
            if (table.Shape is TableShape one)
            {
                Walk(one.Table, one.Table.Name, "", entries);
            }
            else if (table.Shape is TablesShape several)
            {
                Walk(several.Table, several.Table.Name, "", entries);
            }
        }

        return entries;
    }

    /// <summary>The keys that a word is about: of that name or in that table, else with it in their path or meaning; none when there is none.</summary>
    public static IReadOnlyList<KeyEntry> About(string word)
    {
        bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
        IReadOnlyList<KeyEntry> all = All();
        bool Inside(string name) => name.StartsWith(word + ".", StringComparison.OrdinalIgnoreCase) || name.StartsWith(word + "[", StringComparison.OrdinalIgnoreCase);
        KeyEntry[] named = [.. all.Where(e => Same(e.Last, word) || Same(e.Name, word) || Inside(e.Name) || Same(e.Table.Trim('[', ']'), word) || Same($"{e.Table.Trim('[', ']')}.{e.Name}", word) || Same(e.Table, word))];
        return named.Length > 0 ? named : [.. all.Where(e => e.Path.Contains(word, StringComparison.OrdinalIgnoreCase) || e.Meaning.Contains(word, StringComparison.OrdinalIgnoreCase))];
    }

    /// <summary>Names of keys and tables, for a near miss.</summary>
    public static IEnumerable<string> Names() => All().SelectMany(e => new[] { e.Last, e.Table.Trim('[', ']') }).Distinct(StringComparer.Ordinal);

    /// <summary>The whole reference as a page in Markdown, LF line ends.</summary>
    public static string Page()
    {
        StringBuilder page = new("# The keys of the parameter file\n\nWritten by `wheeldraft keys --page` from the definitions that the reader and the schema use. `wheeldraft keys WORD` shows those that a word is about.\n");
        foreach (IGrouping<string, KeyEntry> table in All().GroupBy(e => e.Table, StringComparer.Ordinal))
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {table.Key}\n\n| key | value | left out | meaning | example |\n|---|---|---|---|---|\n");
            foreach (KeyEntry e in table)
            {
                page.Append(CultureInfo.InvariantCulture, $"| `{e.Name}` | {Cell(e.Kind)} | {Cell(e.LeftOut)} | {Cell(e.Meaning)} | `{e.Example}` |\n");
            }
        }

        return page.ToString();
    }

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);

    private static void Walk(TableDefinition table, string header, string prefix, List<KeyEntry> entries)
    {
        foreach (KeyDefinition key in table.Keys)
        {
            entries.Add(new(header, prefix + key.Name, Kind(key.Shape), LeftOut(table, key), key.Doc, key.Example));
            Inside(key.Shape, header, prefix + key.Name, entries);
        }
    }

    private static void Inside(ValueShape shape, string header, string path, List<KeyEntry> entries)
    {
        switch (shape)
        {
            case TableShape inner:
                Walk(inner.Table, header, path + ".", entries);
                break;
            case TablesShape rows:
                Walk(rows.Table, header, path + "[].", entries);
                break;
            case ListShape list:
                Inside(list.Item, header, path + "[]", entries);
                break;
            case WordOrShape either:
                Inside(either.Other, header, path, entries);
                break;
            case PiecesShape pieces:
                foreach (TableDefinition piece in pieces.Pieces)
                {
                    Walk(piece, header, $"{path} {piece.Name}.", entries);
                }

                break;
            default:
                break;
        }
    }

    private static string LeftOut(TableDefinition table, KeyDefinition key)
    {
        if (key.Default is { } preset)
        {
            return preset;
        }

        if (table.Choices.FirstOrDefault(c => c.Ways.Any(w => w.Contains(key.Name, StringComparer.Ordinal))) is { } choice)
        {
            return $"one of {Words.Or(choice.Ways.Select(Words.And))} must be there";
        }

        return key.Decides is null ? "may be left out" : $"must be there{(key.FreeWith is { } free ? $" unless {free.Key} is \"{free.Word}\"" : "")}: decides {key.Decides}";
    }

    private static string Kind(ValueShape shape) => shape switch
    {
        QuantityShape quantity => Words.Or([.. quantity.Ranges.Select(r => $"{DimensionWords.Of(r.Dimension).Name} {r.InWords}"), .. quantity.Words.Select(Words.Quoted)]),
        WordShape word => Words.Or(word.Words.Select(Words.Quoted)),
        TextShape text => FormattableString.Invariant($"text of at most {text.MostCharacters} characters"),
        NameShape => FormattableString.Invariant($"a name of at most {NameShape.MostCharacters} characters"),
        NumberShape number => FormattableString.Invariant($"a {(number.IsWhole ? "whole " : "")}number from {number.Least} to {number.Most}"),
        FlagShape => "true or false",
        TrueShape => "true",
        DateShape => "a date, year-month-day",
        ListShape list => $"a list, each {Kind(list.Item)}",
        TableShape or TablesShape => "a table of the keys below",
        PiecesShape pieces => $"a table with {Words.Or(pieces.Pieces.Select(p => p.Name))}",
        WordOrShape either => $"{Words.Quoted(either.Word)} or {Kind(either.Other)}",
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "A kind of value without words."),
    };
}
