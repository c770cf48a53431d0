using System.CommandLine;
using WheelDraft.Engineering;
using WheelDraft.Formats.Languages;

namespace WheelDraft.Cli;

/// <summary>The option <c>--words</c>: in which words sheets, page, report and build texts are written.</summary>
internal sealed class WordsChoice
{
    // A person mends a table a few phrases at a time.
    private const int Named = 5;

    private readonly Option<string> _words = new("--words") { HelpName = "LANGUAGE|FILE", Description = $"Words of sheets, page, report and build texts: {string.Join(", ", PhraseTables.Languages)}, or a table that wheeldraft words began; report.json and cutting files stay English" };

    /// <summary>The option.</summary>
    public Option Option => _words;

    /// <summary>Writes something in the words that were asked for, and names once what had to stay English.</summary>
    /// <exception cref="DesignRefusedException">There is no such language, or the table is wrong: every fault with its place.</exception>
    public void In(ParseResult parsed, Brief brief, CommandContext context, Action write)
    {
        if (parsed.GetValue(_words) is not string named || named is "en")
        {
            write();
            return;
        }

        PhraseTable table = Table(named, context);
        PhraseBook book = table.BookOf(brief);
        using (ReadersWords.Use(book))
        {
            write();
        }

        if (book.Missing is { Count: > 0 } missing)
        {
            context.Say($"{table.Name}: {Wording.Number(missing.Count, 0)} texts have no words and stay English, among them {string.Join("; ", missing.Take(Named).Select(m => $"\"{Short(m)}\""))}. wheeldraft words {named} writes the table.");
        }
    }

    /// <summary>The table of a language that comes with the program, or of a file.</summary>
    /// <exception cref="FileTroubleException">The file cannot be opened or read.</exception>
    /// <exception cref="DesignRefusedException">There is no such language, or the table is wrong: every fault with its place.</exception>
    public static PhraseTable Table(string named, CommandContext context)
    {
        if (PhraseTables.Shipped(named) is PhraseTable shipped)
        {
            return shipped;
        }

        if (!named.Contains('.', StringComparison.Ordinal) && !File.Exists(context.PathOf(named)))
        {
            throw new DesignRefusedException("arguments.words", $"--words: there are no words for '{named}'; there are {string.Join(", ", PhraseTables.Languages)}, en is the program's own, and a file that wheeldraft words began will do.");
        }

        PhraseTableResult read = PhraseTables.Read(ParameterFile.Bytes(named, context));
        if (read.Table is PhraseTable table)
        {
            return table;
        }

        context.InputFile = named;
        throw new DesignRefusedException([.. read.Diagnostics.Select(d => Finding.Error("words", d.Message, d.Place))]);
    }

    private static string Short(string text)
    {
        const int most = 60;
        return text.Length <= most ? text : text[..most].TrimEnd() + "…";
    }
}
