using System.CommandLine;
using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Languages;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft words</c>: the fixed words of sheets, page, report and build texts, as a table to fill in or change.</summary>
internal sealed class WordsCommand : ICommand
{
    private readonly Argument<string?> _table = new("LANGUAGE|FILE") { Arity = ArgumentArity.ZeroOrOne, Description = $"Begin with the words of a language ({string.Join(", ", PhraseTables.Languages)}) or of a file, which is completed; left out: no words yet" };
    private readonly Option<string> _out = new("--out", "-o") { HelpName = "FILE", Description = "Write the table into this file instead of printing it" };
    private readonly Option<bool> _list = new("--list") { Description = "Only the languages that come with the program, how much of each is there and who has looked at it" };

    /// <inheritdoc/>
    public Command Describe() => new("words", "The fixed words of sheets, page, report and build texts as a table to translate, for --words") { _table, _out, _list };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        if (parsed.GetValue(_list) || (context.Json && parsed.GetValue(_table) is null))
        {
            List(context);
            return ExitStatus.Done;
        }

        PhraseTable table = parsed.GetValue(_table) is string named ? WordsChoice.Table(named, context) : PhraseTable.Empty;
        if (context.Json)
        {
            context.WriteJson(json =>
            {
                json.WriteStartObject();
                json.WriteString("language", table.Language);
                json.WriteString("review", table.Review);
                json.WriteStartObject("words");
                foreach (string phrase in EnglishPhrases.All)
                {
                    json.WriteString(phrase, table.Words.GetValueOrDefault(phrase, ""));
                }

                json.WriteEndObject();
                json.WriteEndObject();
            });
            return ExitStatus.Done;
        }

        if (parsed.GetValue(_out) is string file)
        {
            FileSet.WriteNew(context.PathOf(file), Encoding.UTF8.GetBytes(table.ToToml()));
            context.Say($"{file}: {Wording.Number(EnglishPhrases.All.Count, 0)} phrases, {Wording.Number(table.Known, 0)} with words.");
            return ExitStatus.Done;
        }

        context.Out.Write(table.ToToml());
        return ExitStatus.Done;
    }

    private static void List(CommandContext context)
    {
        PhraseTable[] tables = [.. PhraseTables.Languages.Select(PhraseTables.Shipped).OfType<PhraseTable>()];
        if (context.Json)
        {
            context.WriteJson(json =>
            {
                json.WriteStartArray();
                foreach (PhraseTable table in tables)
                {
                    json.WriteStartObject();
                    json.WriteString("language", table.Language);
                    json.WriteString("name", table.Name);
                    json.WriteNumber("phrases", EnglishPhrases.All.Count);
                    json.WriteNumber("with_words", table.Known);
                    json.WriteString("review", table.Review);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            });
            return;
        }

        string all = Wording.Number(EnglishPhrases.All.Count, 0);
        foreach (string line in TextTable.Lines([["language", "name", "words", "review"], .. tables.Select(t => (string[])[t.Language, t.Name, $"{Wording.Number(t.Known, 0)} of {all}", t.Review])], leftColumns: 4))
        {
            context.Out.WriteLine(line);
        }
    }
}
