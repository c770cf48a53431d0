using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Fuzz;

/// <summary>What is promised of every refusal and every output.</summary>
internal static class Promises
{
    // Numbers that are none, as the runtime writes them in every culture.
    private static readonly string[] NoNumbers = ["NaN", "Infinity", "\u221E"];

    /// <summary>Every fault of a parameter file has a place in the file and says what would be right.</summary>
    public static void Keep(IReadOnlyList<Diagnostic> diagnostics, byte[] file)
    {
        int lines = 1 + file.AsSpan().Count((byte)'\n');
        foreach (Diagnostic d in diagnostics)
        {
            if (d.Place.Line < 1 || d.Place.Column < 1 || d.Place.Line > lines)
            {
                throw new BrokenPromiseException("a fault without a place: " + Shape(d.Wrong), $"{d.Place}: {d.Message}");
            }

            if (string.IsNullOrWhiteSpace(d.Wrong) || string.IsNullOrWhiteSpace(d.Right))
            {
                throw new BrokenPromiseException("a fault without a cure: " + Shape(d.Wrong), d.Message);
            }
        }
    }

    /// <summary>Every refusal of a design has a place and says, besides what is wrong, what would do.</summary>
    public static void Keep(IReadOnlyList<Finding> reasons, bool needsPlace)
    {
        if (reasons.Count == 0)
        {
            throw new BrokenPromiseException("a refusal without a reason", "Refused without a reason.");
        }

        foreach (Finding reason in reasons)
        {
            if (needsPlace && reason.Where is not { Line: >= 1, Column: >= 1 })
            {
                throw new BrokenPromiseException($"a refusal without a place: {reason.Code}", reason.Message);
            }

            if (!HasCure(reason.Message))
            {
                throw new BrokenPromiseException($"a refusal without a cure: {reason.Code}", reason.Message);
            }
        }
    }

    /// <summary>No text holds a number that is none, unless the case itself does.</summary>
    public static void KeepNumbers(string what, string text, byte[] file)
    {
        foreach (string no in NoNumbers)
        {
            int at = text.IndexOf(no, StringComparison.Ordinal);
            if (at >= 0 && file.AsSpan().IndexOf(Encoding.UTF8.GetBytes(no)) < 0)
            {
                throw new BrokenPromiseException($"{no} in {what}", $"{no} in {what}: …{text[Math.Max(0, at - 80)..Math.Min(text.Length, at + 80)]}…");
            }
        }
    }

    /// <summary>A message with names and numbers taken out, so that alike ones are alike.</summary>
    public static string Shape(string message)
    {
        StringBuilder shape = new();
        bool quoted = false;
        foreach (char c in message)
        {
            if (c is '"' or '\'')
            {
                quoted = !quoted;
            }
            else if (!quoted && (char.IsAsciiLetter(c) || c == ' '))
            {
                shape.Append(c);
            }
        }

        return shape.Length > 60 ? shape.ToString(0, 60) : shape.ToString();
    }

    // A message of one clause says only what is wrong; a second says what would do.
    private static bool HasCure(string message) =>
        message.Contains("; ", StringComparison.Ordinal) || message.Contains(": ", StringComparison.Ordinal)
        || message.TrimEnd('.').Contains(". ", StringComparison.Ordinal) || message.Contains(", which ", StringComparison.Ordinal) || message.Contains(", but ", StringComparison.Ordinal);
}
