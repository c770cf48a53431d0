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
        ParameterResult result = ParameterReader.Read(Bytes(named, context));
        return result.Brief ?? throw new DesignRefusedException(
            [.. result.Diagnostics.Select(d => Finding.Error("parameters", d.Message, d.Place))]);
    }

    /// <summary>The bytes of a file that the person named.</summary>
    public static byte[] Bytes(string named, CommandContext context)
    {
        try
        {
            return File.ReadAllBytes(context.PathOf(named));
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            string why = trouble is FileNotFoundException or DirectoryNotFoundException ? "there is no such file" : trouble.Message;
            throw new FileTroubleException($"cannot read '{named}': {why}");
        }
    }
}
