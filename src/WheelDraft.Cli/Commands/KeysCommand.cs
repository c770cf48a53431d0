using System.CommandLine;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft keys</c>: the keys of the parameter file for people, all of them or those that a word is about.</summary>
internal sealed class KeysCommand : ICommand
{
    private readonly Argument<string?> _word = new Argument<string?>("WORD") { Arity = ArgumentArity.ZeroOrOne, Description = "A key, a table, or a word of what is looked for; left out: every key in a line" }.Suggesting(KeyReference.Names);
    private readonly Option<bool> _page = new("--page") { Description = "The whole reference as a page in Markdown" };

    /// <inheritdoc/>
    public Command Describe() => new("keys", "The keys of the parameter file: unit, range, default, meaning, example") { _word, _page };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        string? word = parsed.GetValue(_word);
        if (parsed.GetValue(_page))
        {
            context.Out.Write(KeyReference.Page());
            return ExitStatus.Done;
        }

        IReadOnlyList<KeyEntry> keys = word is null ? KeyReference.All() : Found(word);
        if (context.Json)
        {
            Json(context, keys);
        }
        else if (word is null)
        {
            Lines(context, keys);
        }
        else
        {
            Whole(context, keys);
        }

        return ExitStatus.Done;
    }

    private static IReadOnlyList<KeyEntry> Found(string word)
    {
        IReadOnlyList<KeyEntry> found = KeyReference.About(word);
        if (found.Count > 0)
        {
            return found;
        }

        string? near = NearMiss.Of(word, KeyReference.Names());
        throw new DesignRefusedException("arguments.word", near is null ? $"no key is about '{word}'; wheeldraft keys shows them all" : $"no key is about '{word}'; did you mean '{near}'? wheeldraft keys shows them all");
    }

    private static void Lines(CommandContext context, IReadOnlyList<KeyEntry> keys)
    {
        foreach (IGrouping<string, KeyEntry> table in keys.GroupBy(k => k.Table, StringComparer.Ordinal))
        {
            context.Out.WriteLine(table.Key);
            foreach (string line in TextTable.Lines([.. table.Select(k => new[] { k.Name, k.Meaning })], leftColumns: 2))
            {
                context.Out.WriteLine(line);
            }
        }
    }

    private static void Whole(CommandContext context, IReadOnlyList<KeyEntry> keys)
    {
        foreach (KeyEntry key in keys)
        {
            context.Out.WriteLine(key.Path);
            foreach (string line in TextTable.Lines([["meaning", key.Meaning], ["value", key.Kind], ["left out", key.LeftOut], ["example", $"{key.Last} = {key.Example}"]], leftColumns: 2))
            {
                context.Out.WriteLine(line);
            }
        }
    }

    private static void Json(CommandContext context, IReadOnlyList<KeyEntry> keys) => context.WriteJson(json =>
    {
        json.WriteStartArray();
        foreach (KeyEntry key in keys)
        {
            json.WriteStartObject();
            json.WriteString("table", key.Table);
            json.WriteString("key", key.Name);
            json.WriteString("value", key.Kind);
            json.WriteString("left_out", key.LeftOut);
            json.WriteString("meaning", key.Meaning);
            json.WriteString("example", key.Example);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    });
}
