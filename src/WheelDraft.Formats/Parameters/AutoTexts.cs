using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Where "auto" stands in a file: values by their path, as in <see cref="Brief.Places"/>, and what stands round strips.</summary>
internal sealed class AutoTexts
{
    private readonly Dictionary<string, TextPlace> _values = new(StringComparer.Ordinal);

    /// <summary>Places of the values, by path.</summary>
    public IReadOnlyDictionary<string, TextPlace> Values => _values;

    /// <summary>Whether there is none.</summary>
    public bool IsEmpty => _values.Count == 0;

    /// <summary>Keys of the strips whose shape is "auto": where the key stands, and whether the strip is written in braces.</summary>
    public Dictionary<int, (TextPlace Key, bool IsInline)> Strips { get; } = [];

    /// <summary>The keys that each strip has.</summary>
    public List<IReadOnlyList<string>> StripKeys { get; } = [];

    /// <summary>Where the first strip of a list in brackets stands; null where strips stand under headers, or there is none.</summary>
    public TextPlace? FirstInList { get; private set; }

    /// <summary>Those of a text that is a right parameter file.</summary>
    public static AutoTexts In(string text)
    {
        DiagnosticList faults = new();
        AutoTexts found = new();
        if (new SyntaxPass(text.TrimStart('\uFEFF'), faults).Parse() is { } document)
        {
            TomlTable root = new TomlTree(faults).Build(document);
            found.Walk(root, "");
            if (root.Find("strip")?.Value is TomlList strips)
            {
                found.Look(strips);
            }
        }

        return found;
    }

    private void Walk(TomlNode node, string path)
    {
        switch (node)
        {
            case TomlText { Value: "auto" } text:
                _values[path] = text.Place;
                break;
            case TomlTable table:
                foreach (TomlEntry entry in table.Entries.Where(e => e.Name is not ("name" or "title")))
                {
                    Walk(entry.Value, path.Length == 0 ? entry.Name : $"{path}.{entry.Name}");
                }

                break;
            case TomlList list:
                for (int i = 0; i < list.Items.Count; i++)
                {
                    Walk(list.Items[i], FormattableString.Invariant($"{path}[{i}]"));
                }

                break;
            default:
                break;
        }
    }

    private void Look(TomlList strips)
    {
        FirstInList = strips.OfHeaders || strips.Items.Count == 0 ? null : strips.Items[0].Place;
        for (int i = 0; i < strips.Items.Count; i++)
        {
            TomlTable strip = (TomlTable)strips.Items[i];
            StripKeys.Add([.. strip.Entries.Select(e => e.Name)]);
            if (strip.Find("shape") is { Value: TomlText { Value: "auto" } } shape)
            {
                Strips[i] = (shape.Place, strip.IsInline);
            }
        }
    }
}
