using System.Buffers;
using System.Globalization;

namespace WheelDraft.Formats.Parameters;

/// <summary>One number with its unit in a quantity: the only one, or one of a sum such as "2 min 15 s".</summary>
/// <param name="Text">The part as written.</param>
/// <param name="Over">The number's numerator, any whole taken in; the number itself where it is no fraction.</param>
/// <param name="Under">Its denominator, 1 where it is no fraction; 0 as it was written.</param>
/// <param name="Unit">The unit.</param>
/// <param name="IsSigned">Whether a sign stands before it.</param>
internal sealed record QuantityPart(string Text, decimal Over, decimal Under, Unit Unit, bool IsSigned)
{
    /// <summary>Size in the base unit; one multiplication and one division, so that whatever can be exact is.</summary>
    public decimal InBaseUnit => Over * Unit.Numerator / (Under * Unit.Denominator);
}

/// <summary>The ways to write a quantity beyond a plain number with a unit: fractions ("1/32 in", "1 1/2 in" or "1-1/2 in") and sums ("2 min 15 s", "5 ft 3 in").</summary>
internal static class QuantityParts
{
    /// <summary>Units that may follow each other in a sum, the greater first.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Chains { get; } = [["h", "min", "s"], ["ft", "in"]];

    private static readonly SearchValues<char> BeginsNumber = SearchValues.Create("0123456789+-.");

    // As for plain numbers: far outside every plausible range, and products stay within a decimal.
    private const decimal Most = 1e12m;

    /// <summary>The parts of a text; null where it is not made of numbers with known units, which is for others to complain of.</summary>
    public static IReadOnlyList<QuantityPart>? Of(string text)
    {
        List<QuantityPart> parts = [];
        for (int at = 0; at < text.Length;)
        {
            if (Part(text, ref at) is not { } part)
            {
                return null;
            }

            parts.Add(part);
        }

        return parts.Count == 0 ? null : parts;
    }

    /// <summary>What is wrong with the parts together and what would be right; null when nothing is.</summary>
    public static string? Fault(string text, IReadOnlyList<QuantityPart> parts)
    {
        if (parts.FirstOrDefault(p => p.Under == 0) is { } nothing)
        {
            return $"\"{text}\" has a fraction over nothing, \"{nothing.Text}\"; write e.g. \"1/32 in\"";
        }

        bool isSum = parts.Count > 1;
        return isSum && (parts.Any(p => p.IsSigned) || !Chains.Any(c => IsAlong(c, parts)))
            ? $"\"{text}\" has more than one unit; sums are written without signs, the greater unit first, as in \"1 h 2 min 15 s\" or \"5 ft 3 in\""
            : null;
    }

    private static bool IsAlong(IReadOnlyList<string> chain, IReadOnlyList<QuantityPart> parts)
    {
        int[] places = [.. parts.Select(p => Enumerable.Range(0, chain.Count).FirstOrDefault(i => string.Equals(chain[i], p.Unit.Symbol, StringComparison.Ordinal), -1))];
        return places[0] >= 0 && places.Zip(places.Skip(1)).All(n => n.First < n.Second);
    }

    private static QuantityPart? Part(string text, ref int at)
    {
        int start = at;
        string rest = text[at..];
        int length = QuantityText.NumberLength(rest);
        if (length == 0 || !Number(rest[..length], out decimal over))
        {
            return null;
        }

        decimal under = 1;
        if (Fraction(rest, length) is var (end, whole, top, bottom) && end > 0)
        {
            (over, under) = ((whole * bottom) + top, bottom);
            over = rest[0] == '-' ? -over : over;
            length = end;
        }

        string after = rest[length..].TrimStart(QuantityText.Blanks);
        int squared = WithPower(after);
        int next = after.AsSpan(squared).IndexOfAny(BeginsNumber);
        int digit = next < 0 ? next : next + squared;
        string symbol = (digit < 0 ? after : after[..digit]).TrimEnd(QuantityText.Blanks);
        at = digit < 0 ? text.Length : text.Length - after.Length + digit;
        return symbol.Length > 0 && Unit.Find(symbol) is { } unit
            ? new QuantityPart(text[start..at].Trim(QuantityText.Blanks), over, under, unit, rest[0] is '+' or '-')
            : null;
    }

    // The length of a unit with a power in it, such as "g mm2", whose digit begins no further number; 0 for any other.
    private static int WithPower(string after)
    {
        int longest = 0;
        if (after.AsSpan().ContainsAnyInRange('0', '9'))
        {
            foreach (Unit unit in Unit.All)
            {
                string symbol = unit.Symbol;
                bool fits = symbol.Length > longest && symbol.AsSpan().ContainsAnyInRange('0', '9') && after.StartsWith(symbol, StringComparison.Ordinal);
                longest = fits && (after.Length == symbol.Length || QuantityText.Blanks.Contains(after[symbol.Length])) ? symbol.Length : longest;
            }
        }

        return longest;
    }

    // "1/32" where the number before is the top, "1 1/32" where it is the whole; without its sign.
    private static (int End, decimal Whole, decimal Top, decimal Bottom) Fraction(string rest, int length)
    {
        int from = rest[0] is '+' or '-' ? 1 : 0;
        string first = rest[from..length];
        if (!first.All(char.IsAsciiDigit))
        {
            return default;
        }

        int top = length;
        if (top < rest.Length && rest[top] != '/')
        {
            top += rest[top] == '-' ? 1 : rest[top..].Length - rest[top..].TrimStart(QuantityText.Blanks).Length;
        }

        int slash = top == length ? length : DigitsEnd(rest, top);
        int end = slash < rest.Length && rest[slash] == '/' ? DigitsEnd(rest, slash + 1) : slash;
        bool isMixed = top > length;
        return end > slash + 1 && (!isMixed || slash > top)
            && Number(first, out decimal one) && Number(isMixed ? rest[top..slash] : "0", out decimal two) && Number(rest[(slash + 1)..end], out decimal bottom)
            ? (end, isMixed ? one : 0, isMixed ? two : one, bottom)
            : default;
    }

    private static int DigitsEnd(string text, int from)
    {
        int at = from;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        return at;
    }

    private static bool Number(string digits, out decimal number) =>
        decimal.TryParse(digits, NumberStyles.Float, CultureInfo.InvariantCulture, out number) && Math.Abs(number) <= Most;
}
