using System.CommandLine;
using WheelDraft.Engineering;
using WheelDraft.Formats.Report;

namespace WheelDraft.Cli;

/// <summary>All findings of parameter files, without drawings.</summary>
internal sealed class CheckCommand : ICommand
{
    private readonly Argument<string[]> _files = new("FILE") { Arity = ArgumentArity.OneOrMore, Description = "Parameter files" };

    /// <inheritdoc/>
    public Command Describe() => new("check", "Checks parameter files: every finding and the figures behind it, no drawings") { _files };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        string[] files = parsed.GetRequiredValue(_files);
        if (context.Json && files.Length > 1)
        {
            throw new DesignRefusedException("arguments.json", "--json gives one report: check one file at a time.");
        }

        bool meets = true;
        foreach (string file in files)
        {
            context.Stop.ThrowIfCancellationRequested();
            Design design = DesignFile.Read(file, context);
            meets &= design.Meets;
            Tell(file, design, context);
        }

        return meets ? ExitStatus.Done : ExitStatus.Findings;
    }

    private static void Tell(string file, Design design, CommandContext context)
    {
        if (context.Json)
        {
            context.Out.Write(System.Text.Encoding.UTF8.GetString(ReportJson.Write(design)));
            return;
        }

        FindingWords.Say(design.Findings, context);
        foreach (string line in CheckTable.Of(file, design))
        {
            context.Out.WriteLine(line);
        }
    }
}
