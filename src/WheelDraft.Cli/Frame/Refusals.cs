using System.Globalization;
using System.Text.Json;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>Says why a design cannot be built: the only place that reports bad input, for every command.</summary>
internal static class Refusals
{
    /// <summary>One line a reason on standard error, with its place in the file where one is known; where the result is to be JSON,
    /// the same reasons as one object on standard output.</summary>
    public static void Report(DesignRefusedException refused, CommandContext context)
    {
        foreach (Finding reason in refused.Reasons)
        {
            string place = context.InputFile is not { } file ? "wheeldraft"
                : reason.Where is { } at ? string.Create(CultureInfo.InvariantCulture, $"{file}:{at.Line}:{at.Column}")
                : file;
            context.Error.WriteLine($"{place}: {reason.Message}{Code(reason, context)}");
        }

        if (context.Json)
        {
            context.WriteJson(json => Write(json, context.InputFile, refused.Reasons));
        }
    }

    /// <summary>Says that the program itself failed, so that no one looks for the fault in a file, and what to send; also as an object where the result is to be JSON.</summary>
    public static void ReportInternal(Exception fault, CommandContext context)
    {
        string at = context.InputFile is { } file ? $" while it worked on {file}" : "";
        string message = $"This is a fault of the program itself, not of your file: {fault.GetType().Name}{at}: {fault.Message} "
            + "Nothing was proved and nothing can be relied on. Please report it with the command as you gave it, the file, and these words.";
        context.Complain(message);
        if (context.Json)
        {
            context.WriteJson(json => Write(json, context.InputFile, [Finding.Error("internal", message)]));
        }
    }

    // What is wrong with arguments or keys says itself what would be right; what cannot be built may need more words.
    private static string Code(Finding reason, CommandContext context)
    {
        if (!reason.Code.Contains('.', StringComparison.Ordinal) || reason.Code.StartsWith("arguments.", StringComparison.Ordinal))
        {
            return "";
        }

        context.HasShownCodes = true;
        return $" [{reason.Code}]";
    }

    private static void Write(Utf8JsonWriter json, string? file, IReadOnlyList<Finding> faults)
    {
        json.WriteStartObject();
        if (file is not null)
        {
            json.WriteString("file", file);
        }

        json.WriteStartArray("faults");
        foreach (Finding fault in faults)
        {
            json.WriteStartObject();
            json.WriteString("code", fault.Code);
            json.WriteString("message", fault.Message);
            if (fault.Where is { } at)
            {
                json.WriteNumber("line", at.Line);
                json.WriteNumber("column", at.Column);
            }
            else
            {
                json.WriteNull("line");
                json.WriteNull("column");
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
