using System.CommandLine;
using WheelDraft.Formats.Parameters;
using WheelDraft.Formats.Report;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft schema</c>: the JSON Schema of the parameter file, for completion in editors.</summary>
internal sealed class SchemaCommand : ICommand
{
    private readonly Option<bool> _report = new("--report") { Description = "The schema of report.json instead" };

    /// <inheritdoc/>
    public Command Describe() => new("schema", "JSON Schema of the parameter file, for editor completion") { _report };

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        context.Out.Write(parsed.GetValue(_report) ? ReportSchema.Text() : ParameterSchema.Text());
        return ExitStatus.Done;
    }
}
