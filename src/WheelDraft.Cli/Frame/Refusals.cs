using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>Says why a design cannot be built.</summary>
internal static class Refusals
{
    /// <summary>One line a reason, with its place in the parameter file where one is known.</summary>
    public static void Report(DesignRefusedException refused, CommandContext context)
    {
        foreach (Finding reason in refused.Reasons)
        {
            string place = context.InputFile is not { } file ? "wheeldraft"
                : reason.Where is { } at ? string.Create(CultureInfo.InvariantCulture, $"{file}:{at.Line}:{at.Column}")
                : file;
            context.Error.WriteLine($"{place}: {reason.Message}");
        }
    }
}
