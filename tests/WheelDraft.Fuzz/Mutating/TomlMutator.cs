using System.Text;
using System.Text.RegularExpressions;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Fuzz;

/// <summary>Changes parameter files by what they are made of: quantities, words, keys, lines, tables; by bytes; by setting two together.</summary>
internal sealed partial class TomlMutator
{
    // Every key and every word that the reader knows, from its own schema.
    private readonly string[] _words = [.. Quoted().Matches(ParameterSchema.Text()).Select(m => m.Groups["word"].Value).Where(w => w.Length < 40).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>A changed file. Most get few changes, so that many still reach the design.</summary>
    public byte[] Mutate(byte[] parent, byte[] donor, Chance chance)
    {
        if (chance.OneIn(6))
        {
            return ByteMutator.Mutate(parent, donor, chance);
        }

        string text = Encoding.UTF8.GetString(parent);
        string other = Encoding.UTF8.GetString(donor);
        for (int left = 1 + chance.Below(chance.OneIn(5) ? 10 : 2); left > 0; left--)
        {
            text = chance.Below(10) switch
            {
                < 6 => Token(text, other, chance),
                < 8 => Line(text, other, chance),
                _ => Table(text, other, chance),
            };
        }

        byte[] bytes = Encoding.UTF8.GetBytes(text);
        return chance.OneIn(40) ? ByteMutator.Mutate(bytes, donor, chance) : bytes;
    }

    private string Token(string text, string other, Chance chance)
    {
        List<(TomlPiece Kind, string Text)> pieces = TomlTokens.Of(text);
        int[] chosen = [.. Enumerable.Range(0, pieces.Count).Where(i => pieces[i].Kind != TomlPiece.Blank)];
        if (chosen.Length == 0)
        {
            return text + "format = 1\n";
        }

        int at = chance.Of(chosen);
        (TomlPiece kind, string piece) = pieces[at];
        string changed = kind switch
        {
            TomlPiece.Text => Text(piece, other, chance),
            TomlPiece.Bare => Bare(piece, chance),
            _ => Mark(piece, chance),
        };
        return string.Concat(pieces.Take(at).Select(p => p.Text)) + changed + string.Concat(pieces.Skip(at + 1).Select(p => p.Text));
    }

    private string Text(string piece, string other, Chance chance)
    {
        string inside = piece.Trim('"', '\'');
        Match quantity = QuantityText().Match(inside);
        if (quantity.Success && !chance.OneIn(5))
        {
            (string number, string unit) = (quantity.Groups["number"].Value, quantity.Groups["unit"].Value);
            return chance.OneIn(5) ? $"\"{number} {NastyValues.Unit(chance)}\"" : $"\"{NastyValues.Near(number, chance)} {unit}\"";
        }

        return chance.Below(6) switch
        {
            0 => $"\"{NastyValues.Text(chance)}\"",
            1 => $"\"{NastyValues.Quantity(chance)}\"",
            2 => NastyValues.Number(chance),
            3 => chance.Of([.. TomlTokens.Of(other).Where(p => p.Kind == TomlPiece.Text).Select(p => p.Text).DefaultIfEmpty("\"\"")]),
            4 => $"\"{inside}{NastyValues.Text(chance)}\"",
            _ => $"\"{chance.Of(_words)}\"",
        };
    }

    private string Bare(string piece, Chance chance)
    {
        if (piece is "true" or "false")
        {
            return chance.OneIn(3) ? chance.Of(["1", "\"true\"", "True", "0"]) : piece is "true" ? "false" : "true";
        }

        bool number = piece[0] is '-' or '+' or (>= '0' and <= '9');
        return number
            ? chance.OneIn(4) ? $"\"{NastyValues.Quantity(chance)}\"" : NastyValues.Near(piece, chance)
            : chance.Below(4) switch
            {
                0 => chance.Of(_words),
                1 => piece + chance.Of(["s", "_", "x", ".a", "-"]),
                2 => piece.Length > 1 ? piece.Remove(chance.Below(piece.Length), 1) : "q",
                _ => piece.ToUpperInvariant(),
            };
    }

    private static string Mark(string piece, Chance chance) => chance.Below(4) switch
    {
        0 => "",
        1 => piece + piece,
        2 => chance.Of(["=", "[", "]", "{", "}", ",", "\n", "#", "\"", "[[", "]]", "[]", "{}", "\\"]),
        _ => $"{piece} {NastyValues.Number(chance)} ",
    };

    /// <summary>Lines lost, doubled, exchanged, taken from another file, given another's value.</summary>
    private static string Line(string text, string other, Chance chance)
    {
        List<string> lines = [.. text.Split('\n')];
        string[] others = other.Split('\n');
        int at = chance.Below(lines.Count);
        switch (chance.Below(5))
        {
            case 0:
                lines.RemoveAt(at);
                break;
            case 1:
                lines.Insert(chance.Below(lines.Count), lines[at]);
                break;
            case 2:
                lines.Insert(at, chance.Of(others));
                break;
            case 3:
                int second = chance.Below(lines.Count);
                (lines[at], lines[second]) = (lines[second], lines[at]);
                break;
            default:
                string[] key = lines[at].Split(" = ", 2);
                string[] value = chance.Of(chance.OneIn(2) ? others : [.. lines]).Split(" = ", 2);
                lines[at] = key.Length == 2 && value.Length == 2 ? $"{key[0]} = {value[1]}" : lines[at];
                break;
        }

        return string.Join('\n', lines);
    }

    /// <summary>Whole tables lost, doubled, moved, taken from another file; the head of one file with the tail of another.</summary>
    private static string Table(string text, string other, Chance chance)
    {
        List<string> own = Tables(text);
        List<string> theirs = Tables(other);
        int at = chance.Below(own.Count);
        switch (chance.Below(6))
        {
            case 0:
                own.RemoveAt(at);
                break;
            case 1 when own.Count < 40:
                own.Insert(at, own[at]);
                break;
            case 2 when own.Count < 40:
                own.Insert(at, chance.Of(theirs));
                break;
            case 3:
                int second = chance.Below(own.Count);
                (own[at], own[second]) = (own[second], own[at]);
                break;
            case 4 when theirs.Count > 0:
                return string.Concat(own.Take(at)) + string.Concat(theirs.Skip(chance.Below(theirs.Count)));
            default:
                string head = own[at].Split('\n')[0];
                own[at] = chance.Of(theirs.FindAll(t => t.StartsWith(head, StringComparison.Ordinal)) is { Count: > 0 } alike ? alike : theirs);
                break;
        }

        return string.Concat(own);
    }

    private static List<string> Tables(string text) => [.. TableStart().Split(text)];

    [GeneratedRegex("\"(?<word>[^\"\\\\]+)\"", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Quoted();

    [GeneratedRegex("^\\s*(?<number>[-+]?[0-9][0-9.eE_+-]*)\\s*(?<unit>.*)$", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 60_000)]
    private static partial Regex QuantityText();

    [GeneratedRegex("(?m)^(?=\\[)", RegexOptions.Multiline, 5000)]
    private static partial Regex TableStart();
}
