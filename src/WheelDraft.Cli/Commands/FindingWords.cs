using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>Findings as lines of words.</summary>
internal static class FindingWords
{
    /// <summary>Says errors (even when quiet) and warnings, a line each; notes stay in the report.</summary>
    /// <param name="findings">The findings.</param>
    /// <param name="context">Where they are said.</param>
    /// <param name="unit">The unit in which lengths are read; millimetres when left out.</param>
    public static void Say(IReadOnlyList<Finding> findings, CommandContext context, ReadersUnit? unit = null)
    {
        ReadersUnit read = unit ?? ReadersUnit.Millimetres;
        foreach (Finding finding in findings.Where(f => f.Severity != FindingSeverity.Note))
        {
            string place = finding.Where is { } at
                ? string.Create(CultureInfo.InvariantCulture, $"{context.InputFile}:{at.Line}:{at.Column}: ")
                : context.InputFile is { } file ? $"{file}: " : "";
            bool error = finding.Severity == FindingSeverity.Error;
            Action<string> say = error ? context.Error.WriteLine : context.Say;
            say($"{place}{(error ? "error" : "warning")}: {read.Words(finding.Message)} [{finding.Code}]");
            context.HasShownCodes = true;
        }

        int notes = findings.Count(f => f.Severity == FindingSeverity.Note);
        if (notes > 0)
        {
            context.Say(string.Create(CultureInfo.InvariantCulture, $"{notes} note{(notes == 1 ? "" : "s")} in the report."));
        }
    }

    /// <summary>Says what drawings had to do without, unless quiet, each once.</summary>
    public static void SayOfDrawings(IEnumerable<string> warnings, CommandContext context)
    {
        foreach (string warning in warnings.Distinct(StringComparer.Ordinal))
        {
            context.Say($"drawing: {warning}");
        }
    }
}
