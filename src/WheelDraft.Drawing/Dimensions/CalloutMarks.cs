namespace WheelDraft.Drawing;

/// <summary>What stands at the end of a leader.</summary>
public enum CalloutMarks
{
    /// <summary>What is meant, in words.</summary>
    Words,

    /// <summary>A number in a circle; a key says what it means. For pictures whose words stand in the text round them.</summary>
    Numbers,
}

/// <summary>Numbers callouts.</summary>
internal static class CalloutKey
{
    /// <summary>Numbers from 1 in the order given.</summary>
    public static IReadOnlyList<RingCallout> Numbered(IEnumerable<RingCallout> callouts) => [.. callouts.Select((c, i) => c with { Number = i + 1 })];

    /// <summary>What the key is called.</summary>
    public const string Title = "Key to the numbers";

    /// <summary>The key as a table.</summary>
    public static SheetTable Table(IEnumerable<RingCallout> numbered) => new(
        [new("No.", TextAlong.End), new("Meaning")],
        [.. numbered.Select(c => (IReadOnlyList<string>)[DrawingNumbers.Trimmed(c.Number ?? 0, 0), c.Text])])
    {
        Title = Title,
    };
}
