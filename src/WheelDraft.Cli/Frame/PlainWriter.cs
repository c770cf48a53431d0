using System.Globalization;
using System.Text;

namespace WheelDraft.Cli;

/// <summary>Passes words on with every character that a terminal would obey, or that nobody could see, written out as <c>\u001b</c>.</summary>
/// <remarks>Names come from files and arguments that others may have written. Line feeds stay. The form is one that JSON reads back as
/// the same character, so documents stay true.</remarks>
internal sealed class PlainWriter : TextWriter
{
    private readonly TextWriter _under;

    /// <summary>A writer before another.</summary>
    public PlainWriter(TextWriter under)
        : base(CultureInfo.InvariantCulture)
    {
        _under = under;
        NewLine = under.NewLine;
    }

    /// <inheritdoc/>
    public override Encoding Encoding => _under.Encoding;

    /// <summary>The words with what cannot be seen made visible.</summary>
    public static string Plain(ReadOnlySpan<char> words)
    {
        StringBuilder plain = new(words.Length);
        while (!words.IsEmpty)
        {
            bool whole = Rune.DecodeFromUtf16(words, out Rune rune, out int length) == System.Buffers.OperationStatus.Done;
            if (whole && (rune.Value == '\n' || !MustShow(rune)))
            {
                plain.Append(words[..length]);
            }
            else
            {
                Spell(plain, words[..length]);
            }

            words = words[length..];
        }

        return plain.ToString();
    }

    /// <inheritdoc/>
    public override void Write(char value) => Write([value]);

    /// <inheritdoc/>
    public override void Write(string? value) => Write(value.AsSpan());

    /// <inheritdoc/>
    public override void Write(char[] buffer, int index, int count) => Write(buffer.AsSpan(index, count));

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<char> buffer) => _under.Write(Plain(buffer));

    /// <inheritdoc/>
    public override void WriteLine(string? value) => _under.Write(Plain(value) + NewLine);

    /// <inheritdoc/>
    public override void Flush() => _under.Flush();

    private static void Spell(StringBuilder plain, ReadOnlySpan<char> units)
    {
        foreach (char unit in units)
        {
            plain.Append(CultureInfo.InvariantCulture, $"\\u{(int)unit:x4}");
        }
    }

    private static bool MustShow(Rune rune) => Rune.GetUnicodeCategory(rune)
        is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
}
