using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>Opens the file that a command was given.</summary>
internal static class ParameterFile
{
    /// <summary>All bytes of a file.</summary>
    /// <exception cref="FileTroubleException">It cannot be opened or read.</exception>
    public static byte[] Bytes(string named, CommandContext context) => Read(named, context, path => WholeFile.Bytes(path, Budgets.ParameterFileBytes, context.Stop));

    /// <summary>All bytes of a drawing.</summary>
    /// <exception cref="FileTroubleException">It cannot be opened or read.</exception>
    public static byte[] BytesOfDrawing(string named, CommandContext context) => Read(named, context, path => WholeFile.Bytes(path, Budgets.DrawingBytes, context.Stop));

    /// <summary>All bytes of a file that is going to be watched; a pipe is refused.</summary>
    /// <exception cref="FileTroubleException">It cannot be opened or read, or nothing comes from it.</exception>
    public static byte[] BytesToWatch(string named, CommandContext context) => Read(named, context, WholeFile.BytesSoon);

    private static byte[] Read(string named, CommandContext context, Func<string, byte[]> read)
    {
        try
        {
            return read(context.PathOf(named));
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            string why = trouble is FileNotFoundException or DirectoryNotFoundException ? "there is no such file" : trouble.Message;
            throw new FileTroubleException($"cannot read '{named}': {why}");
        }
    }
}
