namespace WheelDraft.Formats.Parameters;

/// <summary>One key of the parameter file: everything that reader, schema and messages know of it.</summary>
/// <param name="Name">The key.</param>
/// <param name="Shape">What kind of value it takes.</param>
/// <param name="Doc">One sentence on what it is.</param>
internal sealed record KeyDefinition(string Name, ValueShape Shape, string Doc)
{
    /// <summary>What the key decides; given for a key that must not be left out, null for the others.</summary>
    public string? Decides { get; init; }

    /// <summary>Another key and a word: where that key has the word, this one may be left out although it decides something; null where it never may.</summary>
    public (string Key, string Word)? FreeWith { get; init; }

    /// <summary>The value that stands for a key left out, as TOML; null when there is none.</summary>
    public string? Default { get; init; }

    /// <summary>A right value, as TOML.</summary>
    public required string Example { get; init; }
}

/// <summary>A table of the parameter file.</summary>
/// <param name="Name">Its name in messages.</param>
/// <param name="Doc">One sentence on what it is.</param>
/// <param name="Keys">Its keys in the order in which they are shown.</param>
internal sealed record TableDefinition(string Name, string Doc, IReadOnlyList<KeyDefinition> Keys)
{
    /// <summary>Sets of keys of which exactly one must be there in full, and the others not at all.</summary>
    public IReadOnlyList<ExactlyOne> Choices { get; init; } = [];

    /// <summary>Keys that need another key beside them.</summary>
    public IReadOnlyList<Needs> Companions { get; init; } = [];

    /// <summary>The key of a name, or null.</summary>
    public KeyDefinition? Find(string name) => Keys.FirstOrDefault(k => string.Equals(k.Name, name, StringComparison.Ordinal));
}

/// <summary>Exactly one of some ways to say a thing.</summary>
/// <param name="Ways">Each way the keys that it takes together.</param>
/// <param name="Decides">What is said.</param>
internal sealed record ExactlyOne(IReadOnlyList<IReadOnlyList<string>> Ways, string Decides);

/// <summary>A key that means nothing without another.</summary>
internal sealed record Needs(string Key, string Other);
