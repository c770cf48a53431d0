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

    // The first parameter file that lies there, as the person would name it; in a folder that cannot be read there is none to name.
    private static string Inside(string named, string path)
    {
        try
        {
            string? file = Directory.EnumerateFiles(path, "*.toml").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal).FirstOrDefault();
            return file is null ? ", e.g. my-wheel.toml, which wheeldraft new my-wheel.toml writes" : $", e.g. {Path.Combine(named, file)}";
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }

    private static byte[] Read(string named, CommandContext context, Func<string, byte[]> read)
    {
        string path = context.PathOf(named);
        if (Directory.Exists(path))
        {
            throw new FileTroubleException($"'{named}' is a folder; give the parameter file itself{Inside(named, path)}");
        }

        try
        {
            return read(path);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            string why = trouble is FileNotFoundException or DirectoryNotFoundException ? "there is no such file" : trouble.Message;
            throw new FileTroubleException($"cannot read '{named}': {why}");
        }
    }
}
