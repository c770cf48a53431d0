using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>A key and the values that it is to take: <c>KEY=FROM..TO/N</c>, N values evenly from one to the other, both among them, or a list <c>KEY=a,b,c</c>.</summary>
internal static class ValueRange
{
    private const string Form = "write KEY=FROM..TO/N, e.g. 'output.mist.tolerance=0.5 s..2 s/16', or KEY=a,b,c";

    // A step such as a third of a millimetre has no end; finer than a nanometre nobody asks.
    private const int Decimals = 9;

    /// <summary>Reads what was asked for.</summary>
    /// <exception cref="DesignRefusedException">It is not of that form.</exception>
    public static VariedKey Of(string text)
    {
        int equals = text.IndexOf('=', StringComparison.Ordinal);
        string name = equals < 0 ? "" : text[..equals].Trim(), values = equals < 0 ? "" : text[(equals + 1)..].Trim();
        if (name.Length == 0 || values.Length == 0)
        {
            throw Wrong(text, Form);
        }

        VariedKey key = values.Contains("..", StringComparison.Ordinal) ? Range(text, name, values) : Listed(text, name, values);
        return key.Values.Count <= Budgets.DesignsVaried ? key
            : throw Wrong(text, string.Create(CultureInfo.InvariantCulture, $"these are {key.Values.Count} values; a table has at most {Budgets.DesignsVaried} designs"));
    }

    private static VariedKey Range(string text, string name, string values)
    {
        int dots = values.IndexOf("..", StringComparison.Ordinal), slash = values.LastIndexOf('/');
        if (slash < dots || !int.TryParse(values.AsSpan(slash + 1).Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out int count) || count < 2)
        {
            throw Wrong(text, $"after TO stand a slash and how many values there are, 2 or more; {Form}");
        }

        if (count > Budgets.DesignsVaried)
        {
            throw Wrong(text, string.Create(CultureInfo.InvariantCulture, $"a table has at most {Budgets.DesignsVaried} designs"));
        }

        (decimal from, Unit? fromUnit) = Amount(text, values[..dots]);
        (decimal to, Unit? toUnit) = Amount(text, values[(dots + 2)..slash]);

        // A unit that stands once goes for both.
        Unit? unit = fromUnit ?? toUnit;
        if (fromUnit is not null && toUnit is not null)
        {
            to = fromUnit.Dimension == toUnit.Dimension ? to * toUnit.Numerator * fromUnit.Denominator / (toUnit.Denominator * fromUnit.Numerator)
                : throw Wrong(text, $"'{fromUnit.Symbol}' and '{toUnit.Symbol}' do not measure the same");
        }

        decimal[] numbers = [.. Enumerable.Range(0, count).Select(i => Math.Round(from + ((to - from) * i / (count - 1)), Decimals))];
        return Key(name, numbers, unit);
    }

    private static VariedKey Listed(string text, string name, string values)
    {
        string[] items = [.. values.Split(',').Select(v => v.Trim())];
        if (items.Any(i => i.Length == 0))
        {
            throw Wrong(text, $"a value is empty; {Form}");
        }

        (decimal Number, Unit? Unit)?[] amounts = [.. items.Select(TryAmount)];
        Unit? last = amounts[^1]?.Unit;
        bool isOfOneUnit = amounts.All(a => a is not null && (a.Value.Unit is null || a.Value.Unit == last));
        return isOfOneUnit ? Key(name, [.. amounts.Select(a => a!.Value.Number)], last) : new(name, items);
    }

    private static VariedKey Key(string name, decimal[] numbers, Unit? unit) => new(name, [.. numbers.Select(n => unit is null ? QuantityText.Plain(n) : $"{QuantityText.Plain(n)} {unit.Symbol}")])
    {
        Numbers = [.. numbers.Select(n => (double)n)],
        Unit = unit?.Symbol ?? "",
    };

    private static (decimal Number, Unit? Unit) Amount(string text, string words) =>
        TryAmount(words) ?? throw Wrong(text, $"\"{words.Trim()}\" is neither a number nor a number with its unit; {Form}");

    private static (decimal Number, Unit? Unit)? TryAmount(string words)
    {
        if (decimal.TryParse(words, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out decimal bare))
        {
            return (bare, null);
        }

        return Quantity.TryParse(words, Enum.GetValues<Dimension>(), out Quantity quantity, out _) && Unit.Find(quantity.Unit) is { } unit
            ? (quantity.InBaseUnit * unit.Denominator / unit.Numerator, unit)
            : null;
    }

    private static DesignRefusedException Wrong(string text, string right) => new("arguments.key", $"--key \"{text}\": {right}");
}
