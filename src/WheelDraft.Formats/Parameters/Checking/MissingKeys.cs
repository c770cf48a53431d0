namespace WheelDraft.Formats.Parameters;

/// <summary>Reports keys that are not there, keys that exclude each other, and keys without their companion.</summary>
internal static class MissingKeys
{
    /// <summary>Reports them at the header of the table.</summary>
    /// <param name="table">The table, its own keys checked.</param>
    /// <param name="diagnostics">Where faults go.</param>
    /// <param name="unread">Names in statements that could not be read: these are not reported as missing.</param>
    public static void Report(CheckedTable table, DiagnosticList diagnostics, IReadOnlySet<string> unread)
    {
        foreach (KeyDefinition key in table.Definition.Keys.Where(k => k.Decides is not null && !table.Has(k.Name) && !unread.Contains(k.Name) && !(k.FreeWith is { } free && table.Is(free.Key, free.Word))))
        {
            diagnostics.Add(table.Place, $"{table.Definition.Name} has no {InWords(key)}, which decides {key.Decides}", RightForm(key));
        }

        foreach (ExactlyOne choice in table.Definition.Choices)
        {
            Choice(table, choice, diagnostics, unread);
        }

        foreach (Needs needs in table.Definition.Companions.Where(n => table.Has(n.Key) && !table.Has(n.Other) && !unread.Contains(n.Other)))
        {
            KeyDefinition other = table.Definition.Find(needs.Other)!;
            diagnostics.Add(table.KeyPlaceOf(needs.Key), $"'{needs.Key}' is given without '{needs.Other}'", $"{RightForm(other)} beside it, or leave out '{needs.Key}'");
        }
    }

    /// <summary>"write voltage = "230 V"".</summary>
    public static string RightForm(KeyDefinition key) => key.Example.StartsWith('[') && key.Shape is TableShape or TablesShape && !key.Example.Contains('=', StringComparison.Ordinal)
        ? $"add {key.Example} with its keys"
        : $"write {key.Name} = {key.Example}";

    private static string InWords(KeyDefinition key) => key.Shape is TableShape or TablesShape && key.Example.StartsWith('[') ? key.Example : $"'{key.Name}'";

    private static void Choice(CheckedTable table, ExactlyOne choice, DiagnosticList diagnostics, IReadOnlySet<string> unread)
    {
        IReadOnlyList<string>[] begun = [.. choice.Ways.Where(way => way.Any(table.Has))];
        string ways = Words.Or(choice.Ways.Select(way => Words.And(way)));
        if (begun.Length == 0 && !choice.Ways.Any(way => way.Any(unread.Contains)))
        {
            diagnostics.Add(table.Place, $"{table.Definition.Name} has none of {ways}, which decides {choice.Decides}", string.Join(", or ", choice.Ways.Select(way => Written(table, way))));
        }
        else if (begun.Length > 1)
        {
            string second = begun[1].First(table.Has);
            diagnostics.Add(
                table.KeyPlaceOf(second),
                $"{table.Definition.Name} has {Words.And(begun.Select(way => $"'{way.First(table.Has)}'"))}, but only one may stand",
                $"keep exactly one of {ways}");
        }
    }

    private static string Written(CheckedTable table, IReadOnlyList<string> way) =>
        "write " + Words.And(way.Select(name => $"{name} = {table.Definition.Find(name)!.Example}"));
}
