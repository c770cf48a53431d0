using System.Text.Json;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary>Reads the parameter file that a command was given.</summary>
internal static class ParameterFile
{
    /// <summary>Its brief; null after every fault has been told, for exit status 2.</summary>
    /// <param name="named">The file as the person named it; remembered as the file at work.</param>
    /// <param name="context">The run.</param>
    /// <exception cref="FileTroubleException">It cannot be opened or read.</exception>
    public static Brief? Read(string named, CommandContext context)
    {
        context.InputFile = named;
        ParameterResult result = ParameterReader.Read(Bytes(named, context));
        foreach (Diagnostic diagnostic in result.Diagnostics)
        {
            context.Error.WriteLine(diagnostic.ToString(named));
        }

        if (result.Diagnostics.Count > 0 && context.Json)
        {
            context.WriteJson(json => WriteFaults(json, named, result.Diagnostics));
        }

        return result.Brief;
    }

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

    private static void WriteFaults(Utf8JsonWriter json, string file, IReadOnlyList<Diagnostic> faults)
    {
        json.WriteStartObject();
        json.WriteString("file", file);
        json.WriteStartArray("faults");
        foreach (Diagnostic fault in faults)
        {
            json.WriteStartObject();
            json.WriteNumber("line", fault.Place.Line);
            json.WriteNumber("column", fault.Place.Column);
            json.WriteString("wrong", fault.Wrong);
            json.WriteString("right", fault.Right);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
