using System.Globalization;
using System.Text;

namespace WheelDraft.Formats.Parameters;

/// <summary>Checks one plain value against its shape.</summary>
internal sealed class ValueCheck(DiagnosticList diagnostics)
{
    /// <summary>The value when it is right; null after reporting when it is wrong.</summary>
    /// <param name="node">The value in the file.</param>
    /// <param name="shape">What it should be.</param>
    /// <param name="key">The key it belongs to, for words.</param>
    public object? Check(TomlNode node, ValueShape shape, KeyDefinition key) => shape switch
    {
        QuantityShape quantity => QuantityOrWord(node, quantity, key),
        WordShape word => Word(node, word.Words, key),
        TextShape { MayBeEmpty: true } when node is TomlText { Value: "" } => "",
        TextShape text => Text(node, text.MostCharacters, key),
        NameShape => Name(node, key),
        NumberShape number => Number(node, number, key),
        FlagShape => Flag(node, key),
        TrueShape => True(node, key),
        DateShape => Date(node, key),
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "A shape that holds others is checked by the structure check."),
    };

    /// <summary>The right value that is shown for a key.</summary>
    public static string Example(KeyDefinition key) => $"{key.Name} = {key.Example}";

    /// <summary>"1 item", "3 items".</summary>
    public static string Items(int count) => count == 1 ? "1 item" : string.Create(CultureInfo.InvariantCulture, $"{count} items");

    /// <summary>How many items a list takes.</summary>
    public static string Wanted(ListShape shape) => shape.Least == shape.Most
        ? $"it takes exactly {Items(shape.Least)}"
        : string.Create(CultureInfo.InvariantCulture, $"it takes from {shape.Least} to {Items(shape.Most)}");

    private object? QuantityOrWord(TomlNode node, QuantityShape shape, KeyDefinition key)
    {
        if (node is TomlNumber number)
        {
            // A bare share may be meant as a part of one or of a hundred, and inf is no number to repeat.
            bool repeatable = double.IsFinite(number.Value) && shape.Dimensions[0] != Dimension.Share;
            string example = repeatable ? QuantityText.WithUnit(number.Written, shape.Dimensions) : Example(key);
            string words = shape.Words.Count == 0 ? "" : $" or {Words.Or(shape.Words.Select(Words.Quoted))}";
            return Wrong(node, $"'{key.Name}' is {node.Kind} without a unit", $"write it with its unit in quotation marks, e.g. {example}{words}");
        }

        if (node is not TomlText text)
        {
            return Wrong(node, $"'{key.Name}' is {node.Kind}", $"write a {Kind(shape)} in quotation marks, e.g. {Example(key)}");
        }

        if (shape.Words.Contains(text.Value, StringComparer.Ordinal))
        {
            return text.Value;
        }

        if (Mistakes.OfValue(key.Name, text.Value) is { } right)
        {
            return Wrong(node, $"'{key.Name}' is \"{text.Value}\"", right);
        }

        if (!text.Value.Any(char.IsAsciiDigit) && shape.Words.Count > 0)
        {
            return Word(node, shape.Words, key, Kind(shape));
        }

        if (!Quantity.TryParse(text.Value, shape.Dimensions, out Quantity quantity, out string complaint))
        {
            diagnostics.Add(node.Place, $"'{key.Name}': {complaint}");
            return null;
        }

        Limits limits = shape.Ranges.First(r => r.Dimension == quantity.Dimension);
        return limits.Contains(quantity)
            ? quantity
            : Wrong(node, $"'{key.Name}' is \"{text.Value}\", outside its plausible range", $"it lies {limits.InWords}");
    }

    private static string Kind(QuantityShape shape) =>
        DimensionWords.Names(shape.Dimensions) + (shape.Words.Count == 0 ? "" : $" or {Words.Or(shape.Words.Select(Words.Quoted))}");

    private string? Word(TomlNode node, IReadOnlyList<string> words, KeyDefinition key, string? otherwise = null)
    {
        string right = otherwise is null || words.Count > 1 ? $"it is one of {Words.Or(words.Select(Words.Quoted))}" : $"it is {Words.A(otherwise)}, e.g. {Example(key)}";
        if (otherwise is null && words.Count == 1)
        {
            right = key.Example.StartsWith('"') ? $"it is \"{words[0]}\"" : $"it is \"{words[0]}\", or e.g. {Example(key)}";
        }

        if (node is not TomlText text)
        {
            Wrong(node, $"'{key.Name}' is {node.Kind}", right);
            return null;
        }

        if (words.Contains(text.Value, StringComparer.Ordinal))
        {
            return text.Value;
        }

        if (Mistakes.OfValue(key.Name, text.Value) is { } instead)
        {
            Wrong(node, $"'{key.Name}' is \"{text.Value}\"", instead);
            return null;
        }

        string? near = NearMiss.Of(text.Value, words);
        Wrong(node, $"'{key.Name}' is \"{text.Value}\"", near is null ? right : $"did you mean \"{near}\"? {Words.Capital(right)}");
        return null;
    }

    private object? Text(TomlNode node, int most, KeyDefinition key)
    {
        if (node is not TomlText text)
        {
            return Wrong(node, $"'{key.Name}' is {node.Kind}", $"write a text in quotation marks, e.g. {Example(key)}");
        }

        int length = text.Value.EnumerateRunes().Count();
        return string.IsNullOrWhiteSpace(text.Value) ? Wrong(node, $"'{key.Name}' is empty", $"write e.g. {Example(key)}")
            : length > most ? Wrong(node, string.Create(CultureInfo.InvariantCulture, $"'{key.Name}' has {length} characters"), string.Create(CultureInfo.InvariantCulture, $"it takes at most {most}"))
            : UnseenCharacters.FirstIn(text.Value) is { } unseen ? Wrong(node, Unseen(key, unseen), Rune.IsControl(unseen) ? "write it on one line, without tabs" : "take it out, or type the text anew")
            : text.Value;
    }

    private object? Name(TomlNode node, KeyDefinition key)
    {
        if (node is TomlText text && text.Value.AsSpan().ContainsAny('/', '\\'))
        {
            return Wrong(node, $"the name \"{text.Value}\" holds a path separator", "names go into file names, so write it without / and \\");
        }

        return node is TomlText { Value: { Length: > 0 } name } && !string.IsNullOrWhiteSpace(name) && (char.IsWhiteSpace(name[0]) || char.IsWhiteSpace(name[^1])) && UnseenCharacters.FirstIn(name) is null
            ? Wrong(node, $"the name \"{name}\" has a space at an end", "two names that look alike are one, so leave it out")
            : Text(node, NameShape.MostCharacters, key);
    }

    private static string Unseen(KeyDefinition key, Rune unseen) => Rune.IsControl(unseen)
        ? string.Create(CultureInfo.InvariantCulture, $"'{key.Name}' holds a control character (U+{unseen.Value:X4})")
        : string.Create(CultureInfo.InvariantCulture, $"'{key.Name}' holds U+{unseen.Value:X4}, a character that cannot be seen or that turns the direction of what follows");

    private object? Number(TomlNode node, NumberShape shape, KeyDefinition key)
    {
        string range = string.Create(CultureInfo.InvariantCulture, $"from {shape.Least} to {shape.Most}");
        if (node is not TomlNumber number || (shape.IsWhole && !number.IsWhole))
        {
            return Wrong(node, $"'{key.Name}' is {node.Kind}", $"write a {(shape.IsWhole ? "whole " : "")}number without quotation marks, e.g. {Example(key)}");
        }

        // Written this way round a NaN is refused too.
        return number.Value >= shape.Least && number.Value <= shape.Most
            ? number.Value
            : Wrong(node, $"'{key.Name}' is {number.Written}", OutOfRange(key, shape, range));
    }

    private static string OutOfRange(KeyDefinition key, NumberShape shape, string range) => key.Name switch
    {
        "format" => "this program reads format = 1",
        "pollution_degree" => "it is 1, 2 or 3; for degree 4 there are no creepage distances, so an enclosure must bring the degree down",
        _ => shape.IsWhole ? $"it is a whole number {range}" : $"it lies {range}",
    };

    private object? Flag(TomlNode node, KeyDefinition key) =>
        node is TomlFlag flag ? flag.Value : Wrong(node, $"'{key.Name}' is {node.Kind}", "write true or false, without quotation marks");

    private object? True(TomlNode node, KeyDefinition key) =>
        node is TomlFlag { Value: true } ? true : Wrong(node, $"'{key.Name}' is {node.Kind}", $"write {key.Name} = true, or leave it out");

    private object? Date(TomlNode node, KeyDefinition key)
    {
        if (node is TomlDate date)
        {
            return Wrong(node, $"'{key.Name}' is {node.Kind}", $"write it in quotation marks, e.g. {key.Name} = \"{(date.Written.Length >= 10 ? date.Written[..10] : "2026-11-01")}\"");
        }

        return node is TomlText text && DateOnly.TryParseExact(text.Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
            ? day
            : Wrong(node, $"'{key.Name}' is {node.Kind}", $"write a day that exists as year-month-day in quotation marks, e.g. {Example(key)}");
    }

    private object? Wrong(TomlNode node, string wrong, string right)
    {
        diagnostics.Add(node.Place, wrong, right);
        return null;
    }
}
