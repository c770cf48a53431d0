using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>A value in a TOML document, with its place.</summary>
internal abstract record TomlNode(TextPlace Place)
{
    /// <summary>What it is, after "is".</summary>
    public abstract string Kind { get; }
}

/// <summary>A text in quotation marks.</summary>
internal sealed record TomlText(TextPlace Place, string Value) : TomlNode(Place)
{
    /// <inheritdoc/>
    public override string Kind => $"the text \"{(Value.Length > 60 ? Value[..60] + "…" : Value)}\"";
}

/// <summary>A bare number, as a double and as written.</summary>
internal sealed record TomlNumber(TextPlace Place, double Value, string Written, bool IsWhole) : TomlNode(Place)
{
    /// <inheritdoc/>
    public override string Kind => $"the bare number {Written}";
}

/// <summary>true or false.</summary>
internal sealed record TomlFlag(TextPlace Place, bool Value) : TomlNode(Place)
{
    /// <inheritdoc/>
    public override string Kind => Value ? "true" : "false";
}

/// <summary>A bare date or time.</summary>
internal sealed record TomlDate(TextPlace Place, string Written) : TomlNode(Place)
{
    /// <inheritdoc/>
    public override string Kind => $"the bare date {Written}";
}

/// <summary>A list in brackets, or all tables under one double-bracket header.</summary>
internal sealed record TomlList(TextPlace Place, List<TomlNode> Items, bool OfHeaders) : TomlNode(Place)
{
    /// <inheritdoc/>
    public override string Kind => "a list";
}

/// <summary>A table, by header, by dotted keys or in braces.</summary>
internal sealed record TomlTable(TextPlace Place, bool IsInline) : TomlNode(Place)
{
    private readonly Dictionary<string, TomlEntry> _byName = new(StringComparer.Ordinal);

    /// <inheritdoc/>
    public override string Kind => "a table";

    /// <summary>Place of the header once one has named it itself; null while it stands only above others.</summary>
    public TextPlace? Header { get; set; }

    /// <summary>Entries in file order.</summary>
    public List<TomlEntry> Entries { get; } = [];

    /// <summary>The entry of a name, or null.</summary>
    public TomlEntry? Find(string name) => _byName.GetValueOrDefault(name);

    /// <summary>Adds an entry; the name must be new.</summary>
    public void Add(TomlEntry entry)
    {
        _byName.Add(entry.Name, entry);
        Entries.Add(entry);
    }

    /// <summary>Adds an entry, or puts it where one of its name is.</summary>
    public void Put(TomlEntry entry)
    {
        int at = Entries.FindIndex(e => string.Equals(e.Name, entry.Name, StringComparison.Ordinal));
        if (at < 0)
        {
            Add(entry);
            return;
        }

        _byName[entry.Name] = entry;
        Entries[at] = entry;
    }
}

/// <summary>A key and its value.</summary>
internal sealed record TomlEntry(string Name, TextPlace Place, TomlNode Value);
