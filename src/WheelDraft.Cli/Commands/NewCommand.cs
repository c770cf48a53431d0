using System.CommandLine;
using System.Text.Json;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft new</c>: writes a commented starter file. An existing file is never overwritten: exit status 3.</summary>
internal sealed class NewCommand : ICommand
{
    private readonly Argument<string?> _name = new("NAME") { Arity = ArgumentArity.ZeroOrOne, Description = "Name of the file to write; .toml is added" };
    private readonly Option<string?> _like = new Option<string?>("--like") { HelpName = "TEMPLATE", Description = "Which starter file; see --list" }.Suggesting(TemplateShelf.All.Select(t => t.Name));
    private readonly Option<bool> _list = new("--list") { Description = "Show the starter files" };

    /// <inheritdoc/>
    public Command Describe() => new("new", "Write a commented starter parameter file") { _name, _like, _list };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        if (parsed.GetValue(_list))
        {
            List(context);
            return ExitStatus.Done;
        }

        if (parsed.GetValue(_name) is not { Length: > 0 } name)
        {
            throw new DesignRefusedException("arguments.name", "no name was given; write e.g. wheeldraft new my-wheel, or wheeldraft new --list");
        }

        Write(name.EndsWith(".toml", StringComparison.OrdinalIgnoreCase) ? name : name + ".toml", Chosen(parsed.GetValue(_like)), context);
        return ExitStatus.Done;
    }

    private static Template Chosen(string? like)
    {
        IReadOnlyList<Template> all = TemplateShelf.All;
        if (like is null)
        {
            return all[0];
        }

        if (all.FirstOrDefault(t => string.Equals(t.Name, like, StringComparison.Ordinal)) is { } found)
        {
            return found;
        }

        string? near = NearMiss.Of(like, all.Select(t => t.Name));
        string there = $"there are {string.Join(", ", all.Select(t => t.Name))}";
        throw new DesignRefusedException("arguments.like", near is null ? $"there is no template '{like}'; {there}" : $"there is no template '{like}'; did you mean '{near}'? In all {there}");
    }

    private static void Write(string file, Template template, CommandContext context)
    {
        FileSet.WriteNew(context.PathOf(file), template.Bytes());
        context.Say($"wrote {file}, like {template.Name}; next: wheeldraft check {file}");
        if (context.Json)
        {
            context.WriteJson(json =>
            {
                json.WriteStartObject();
                json.WriteString("file", file);
                json.WriteString("template", template.Name);
                json.WriteEndObject();
            });
        }
    }

    private static void List(CommandContext context)
    {
        if (!context.Json)
        {
            int width = TemplateShelf.All.Max(t => t.Name.Length) + 2;
            foreach (Template template in TemplateShelf.All)
            {
                context.Out.WriteLine(template.Name.PadRight(width) + template.About);
            }

            return;
        }

        context.WriteJson(json =>
        {
            json.WriteStartObject();
            json.WriteStartArray("templates");
            foreach (Template template in TemplateShelf.All)
            {
                WriteOne(json, template);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        });
    }

    private static void WriteOne(Utf8JsonWriter json, Template template)
    {
        json.WriteStartObject();
        json.WriteString("name", template.Name);
        json.WriteString("about", template.About);
        json.WriteEndObject();
    }
}
