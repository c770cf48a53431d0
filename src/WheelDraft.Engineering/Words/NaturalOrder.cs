namespace WheelDraft.Engineering;

/// <summary>The order in which a person looks for names: figures by their value, "heater 2" before "heater 10"; all else by code point.</summary>
internal sealed class NaturalOrder : IComparer<string>
{
    private NaturalOrder()
    {
    }

    /// <summary>The order.</summary>
    public static NaturalOrder Names { get; } = new();

    /// <inheritdoc/>
    public int Compare(string? x, string? y)
    {
        if (x is null || y is null)
        {
            return string.CompareOrdinal(x, y);
        }

        int i = 0;
        int k = 0;
        while (i < x.Length && k < y.Length)
        {
            int order = char.IsAsciiDigit(x[i]) && char.IsAsciiDigit(y[k])
                ? OfFigures(Figures(x, ref i), Figures(y, ref k))
                : x[i++].CompareTo(y[k++]);
            if (order != 0)
            {
                return order;
            }
        }

        int rest = (x.Length - i).CompareTo(y.Length - k);
        return rest != 0 ? rest : string.CompareOrdinal(x, y);
    }

    private static ReadOnlySpan<char> Figures(string text, ref int at)
    {
        int from = at;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        return text.AsSpan(from, at - from).TrimStart('0');
    }

    private static int OfFigures(ReadOnlySpan<char> x, ReadOnlySpan<char> y) =>
        x.Length != y.Length ? x.Length.CompareTo(y.Length) : x.SequenceCompareTo(y);
}
