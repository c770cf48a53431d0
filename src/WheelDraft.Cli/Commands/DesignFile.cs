using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary>A parameter file, read and worked out.</summary>
internal static class DesignFile
{
    /// <summary>Reads a file and works the design out.</summary>
    /// <exception cref="FileTroubleException">It cannot be opened or read.</exception>
    /// <exception cref="DesignRefusedException">It is wrong, or cannot be built: every reason, with its place.</exception>
    public static Design Read(string named, CommandContext context) => Design.Of(ReadBrief(named, context));

    /// <summary>Reads a file.</summary>
    public static Brief ReadBrief(string named, CommandContext context)
    {
        context.InputFile = named;
        ParameterResult result = ParameterReader.Read(ParameterFile.Bytes(named, context));
        return result.Brief ?? throw new DesignRefusedException(
            [.. result.Diagnostics.Select(d => Finding.Error("parameters", d.Message, d.Place))]);
    }
}
