namespace WheelDraft.Formats.Parameters;

/// <summary>What kind of value a key takes. Reader and schema are both made from it.</summary>
internal abstract record ValueShape;

/// <summary>A quantity in one of some ranges, or one of some words.</summary>
internal sealed record QuantityShape(IReadOnlyList<Limits> Ranges, IReadOnlyList<string> Words) : ValueShape
{
    /// <summary>The dimensions that are right.</summary>
    public IReadOnlyList<Dimension> Dimensions => [.. Ranges.Select(s => s.Dimension)];
}

/// <summary>One of some words.</summary>
internal sealed record WordShape(IReadOnlyList<string> Words) : ValueShape;

/// <summary>Running text, not empty unless it may be.</summary>
internal sealed record TextShape(int MostCharacters) : ValueShape
{
    /// <summary>Whether nothing between the quotation marks is right too: a line to be filled in by hand.</summary>
    public bool MayBeEmpty { get; init; }
}

/// <summary>A name: 1 to 60 characters, none that cannot be seen (<see cref="UnseenCharacters"/>), no path separators, no space at either end.</summary>
internal sealed record NameShape : ValueShape
{
    /// <summary>Most characters of a name.</summary>
    public const int MostCharacters = 60;
}

/// <summary>A bare number.</summary>
internal sealed record NumberShape(double Least, double Most, bool IsWhole) : ValueShape;

/// <summary>true or false.</summary>
internal sealed record FlagShape : ValueShape;

/// <summary>The flag true only.</summary>
internal sealed record TrueShape : ValueShape;

/// <summary>A date as text, year-month-day.</summary>
internal sealed record DateShape : ValueShape;

/// <summary>A list.</summary>
internal sealed record ListShape(ValueShape Item, int Least, int Most) : ValueShape;

/// <summary>A table.</summary>
internal sealed record TableShape(TableDefinition Table) : ValueShape;

/// <summary>A list of tables, each under its own double-bracket header, or in braces in a list.</summary>
internal sealed record TablesShape(TableDefinition Table, int Least) : ValueShape;

/// <summary>A table whose kind follows from the one key of a set that it has.</summary>
internal sealed record PiecesShape(IReadOnlyList<TableDefinition> Pieces) : ValueShape;

/// <summary>One word, or something else.</summary>
internal sealed record WordOrShape(string Word, ValueShape Other) : ValueShape;
