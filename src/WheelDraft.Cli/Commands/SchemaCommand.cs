using System.CommandLine;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary><c>wheeldraft schema</c>: the JSON Schema of the parameter file, for completion in editors.</summary>
internal sealed class SchemaCommand : ICommand
{
    /// <inheritdoc/>
    public Command Describe() => new("schema", "JSON Schema of the parameter file, for editor completion");

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        context.Out.Write(ParameterSchema.Text());
        return ExitStatus.Done;
    }
}
