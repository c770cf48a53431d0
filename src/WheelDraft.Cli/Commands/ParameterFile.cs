namespace WheelDraft.Cli;

/// <summary>Opens the file that a command was given.</summary>
internal static class ParameterFile
{
    /// <summary>All bytes of a file.</summary>
    /// <exception cref="FileTroubleException">It cannot be opened or read.</exception>
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
