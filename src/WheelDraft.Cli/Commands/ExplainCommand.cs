using System.CommandLine;
using System.Text.Json;
using WheelDraft.Engineering;
using WheelDraft.Formats.Explaining;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft explain</c>: what the code of a finding means, why it matters, and how to cure it.</summary>
internal sealed class ExplainCommand : ICommand
{
    private readonly Argument<string?> _code = new Argument<string?>("CODE") { Arity = ArgumentArity.ZeroOrOne, Description = "A code as it stands in brackets behind a finding, e.g. spacing.creepage; left out: every code in a line" }.Suggesting(() => ExplanationBook.All().Select(e => e.Code));
    private readonly Option<bool> _page = new("--page") { Description = "All explanations as a page in Markdown" };

    /// <inheritdoc/>
    public Command Describe() => new("explain", "What a finding's code means, why it matters and how to cure it") { _code, _page };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        if (parsed.GetValue(_page))
        {
            context.Out.Write(ExplanationPages.Page(pictures: null));
            return ExitStatus.Done;
        }

        string? code = parsed.GetValue(_code);
        Explanation? one = code is null ? null : ExplanationBook.Find(code) ?? throw Unknown(code);
        if (context.Json)
        {
            Json(context, one);
        }
        else if (one is null)
        {
            List(context);
        }
        else
        {
            foreach (string line in ExplanationLines.Of(one))
            {
                context.Out.WriteLine(line);
            }
        }

        return ExitStatus.Done;
    }

    // One whose name is near, else those of the family that the code begins with.
    private static DesignRefusedException Unknown(string code)
    {
        string[] known = [.. ExplanationBook.All().Select(e => e.Code)];
        string[] beside = [.. known.Where(k => code.Length > 1 && k.StartsWith(code.Split('.')[0] + ".", StringComparison.OrdinalIgnoreCase))];
        string[] ends = [.. known.Where(k => k.EndsWith("." + code, StringComparison.OrdinalIgnoreCase))];
        string near = ends.Length > 0 ? $"; did you mean {Words.Or(ends)}?" : NearMiss.Of(code, known) is string like ? $"; did you mean '{like}'?" : beside.Length > 0 ? $"; there are {string.Join(", ", beside)}." : ".";
        return new("arguments.code", $"there is no code '{code}'{near} wheeldraft explain lists them all");
    }

    private static void List(CommandContext context)
    {
        foreach (ExplanationFamily family in ExplanationBook.Families())
        {
            context.Out.WriteLine(family.Title);
            foreach (string line in TextTable.Lines([.. family.Codes.Select(c => new[] { c.Code, c.Title })], leftColumns: 2))
            {
                context.Out.WriteLine(line);
            }
        }
    }

    private static void Json(CommandContext context, Explanation? one) => context.WriteJson(json =>
    {
        json.WriteStartArray();
        foreach ((ExplanationFamily family, Explanation code) in ExplanationBook.Families().SelectMany(f => f.Codes.Select(c => (f, c))).Where(c => one is null || string.Equals(c.c.Code, one.Code, StringComparison.Ordinal)))
        {
            json.WriteStartObject();
            json.WriteString("code", code.Code);
            json.WriteString("title", code.Title);
            json.WriteString("family", family.Title);
            json.WriteString("meaning", string.Join('\n', code.Meaning));
            json.WriteString("why", code.Notes.Why);
            json.WriteString("source", code.Notes.Source);
            json.WriteString("cure", code.Notes.Cure);
            Strings(json, "keys", code.Notes.Keys);
            json.WriteString("example", string.Join('\n', code.Example.Lines));
            Strings(json, "see", code.Notes.See);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    });

    private static void Strings(Utf8JsonWriter json, string name, IReadOnlyList<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }
}
