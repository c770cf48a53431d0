using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>A value whose form and range are right, or a placeholder for one that is wrong and has been reported.</summary>
/// <param name="Path">Its path in the file, as in <see cref="Brief.Places"/>.</param>
/// <param name="KeyPlace">Where its key stands; of an item of a list where the item stands.</param>
/// <param name="Place">Where the value stands.</param>
/// <param name="Content">A <see cref="Quantity"/>, string, double, long, bool, <see cref="DateOnly"/>, <see cref="CheckedTable"/>
/// or list of <see cref="CheckedValue"/>; null when it is wrong.</param>
internal sealed record CheckedValue(string Path, TextPlace KeyPlace, TextPlace Place, object? Content)
{
    /// <summary>As a text or word; null when wrong or something else.</summary>
    public string? Text => Content as string;

    /// <summary>As a quantity; null when wrong or a word.</summary>
    public Quantity? Quantity => Content as Quantity?;

    /// <summary>As a table.</summary>
    public CheckedTable? Table => Content as CheckedTable;

    /// <summary>As a list, empty when wrong or no list.</summary>
    public IReadOnlyList<CheckedValue> Items => Content as IReadOnlyList<CheckedValue> ?? [];
}

/// <summary>A table whose keys have been checked one by one.</summary>
/// <param name="Definition">What it should hold.</param>
/// <param name="Path">Its path; empty for the root.</param>
/// <param name="Place">Its header, where missing keys are reported.</param>
internal sealed record CheckedTable(TableDefinition Definition, string Path, TextPlace Place)
{
    private readonly Dictionary<string, CheckedValue> _values = new(StringComparer.Ordinal);

    /// <summary>Adds a key's value.</summary>
    public void Add(string key, CheckedValue value) => _values.Add(key, value);

    /// <summary>Whether the key stands in the file, right or wrong.</summary>
    public bool Has(string key) => _values.ContainsKey(key);

    /// <summary>The key's value as it stands in the file, or null.</summary>
    public CheckedValue? Find(string key) => _values.GetValueOrDefault(key);

    /// <summary>Where the key's value stands; the header when it is not there.</summary>
    public TextPlace PlaceOf(string key) => Find(key)?.Place ?? Place;

    /// <summary>Where the key stands; the header when it is not there.</summary>
    public TextPlace KeyPlaceOf(string key) => Find(key)?.KeyPlace ?? Place;

    /// <summary>The key's text or word, or its default; null when there is none or it is wrong.</summary>
    public string? Text(string key) => Find(key) is { } value ? value.Text : Default(key)?.Trim('"');

    /// <summary>Whether the key's text is a certain word.</summary>
    public bool Is(string key, string word) => string.Equals(Text(key), word, StringComparison.Ordinal);

    /// <summary>The key's quantity, or its default; null when there is none, it is a word or wrong.</summary>
    public Quantity? Quantity(string key) => Find(key) is { } value ? value.Quantity : DefaultQuantity(key);

    /// <summary>The key's number, or its default; null when there is none or it is wrong.</summary>
    public double? Number(string key) => Find(key) is { } value
        ? value.Content as double?
        : Default(key) is { } text ? double.Parse(text, System.Globalization.CultureInfo.InvariantCulture) : null;

    /// <summary>The key's flag, or its default; null when there is none or it is wrong.</summary>
    public bool? Flag(string key) => Find(key) is { } value ? value.Content as bool? : Default(key) is { } text ? string.Equals(text, "true", StringComparison.Ordinal) : null;

    /// <summary>The table under a key, or null.</summary>
    public CheckedTable? Table(string key) => Find(key)?.Table;

    /// <summary>The tables of a list under a key; those that are wrong altogether are left out.</summary>
    public IReadOnlyList<CheckedTable> Tables(string key) => [.. Items(key).Select(i => i.Table).OfType<CheckedTable>()];

    /// <summary>The items of a list under a key.</summary>
    public IReadOnlyList<CheckedValue> Items(string key) => Find(key)?.Items ?? [];

    private string? Default(string key) => Definition.Find(key)?.Default;

    private Quantity? DefaultQuantity(string key)
    {
        if (Default(key) is not { } text || Definition.Find(key)!.Shape is not QuantityShape shape)
        {
            return null;
        }

        return Parameters.Quantity.TryParse(text.Trim('"'), shape.Dimensions, out Quantity preset, out _) ? preset : null;
    }
}
