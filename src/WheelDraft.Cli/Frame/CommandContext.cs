using System.Globalization;
using System.Text;
using System.Text.Json;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>What a command gets in addition to its arguments: where results and messages go, and how it is to behave.</summary>
internal sealed class CommandContext(Surroundings surroundings)
{
    /// <summary>Standard output, for results only; nothing in a name reaches a terminal as a command.</summary>
    public TextWriter Out { get; } = new PlainWriter(surroundings.Out);

    /// <summary>Standard error, likewise.</summary>
    public TextWriter Error { get; } = new PlainWriter(surroundings.Error);

    /// <summary>Standard error as it is, for a line that is written over itself.</summary>
    public TextWriter Terminal => surroundings.Error;

    /// <summary>Standard output as it is, for words that have been made plain already.</summary>
    public TextWriter Results => surroundings.Out;

    /// <summary>The same context with other streams: for work that runs beside other work. It shows no progress.</summary>
    public CommandContext Beside(TextWriter results, TextWriter messages) =>
        new(new Surroundings { Out = results, Error = messages, Folder = surroundings.Folder, Colour = surroundings.Colour, Stop = surroundings.Stop }) { Quiet = Quiet, Json = Json };

    /// <summary>Whether only errors are shown.</summary>
    public bool Quiet { get; init; }

    /// <summary>Whether the result is one JSON document on standard output, and nothing else there.</summary>
    public bool Json { get; init; }

    /// <summary>Whether words may be coloured.</summary>
    public bool Colour => surroundings.Colour;

    /// <summary>Whether progress is worth showing.</summary>
    public bool ShowsProgress => surroundings.ErrorIsTerminal && !Quiet;

    /// <summary>Cancelled by Ctrl-C: long work throws <see cref="OperationCanceledException"/> soon after.</summary>
    public CancellationToken Stop => surroundings.Stop;

    /// <summary>The parameter file at work, as the person named it, for messages that carry a place; null when there is none.</summary>
    public string? InputFile { get; set; }

    /// <summary>Whether a code was shown in brackets, so that the run ends with how to ask about it.</summary>
    public bool HasShownCodes { get; set; }

    /// <summary>The full path of a file that the person named.</summary>
    /// <exception cref="DesignRefusedException">The name is empty.</exception>
    /// <exception cref="FileTroubleException">The name counts from the working folder, and that is gone.</exception>
    public string PathOf(string named) =>
        named.Length == 0 ? throw new DesignRefusedException("arguments.name", "The name of a file or folder is empty; write . for the folder where you are.")
        : surroundings.Folder is { } folder ? Path.GetFullPath(named, folder)
        : Path.IsPathFullyQualified(named) ? Path.GetFullPath(named)
        : throw new FileTroubleException($"cannot find '{named}': the working folder has been deleted; change into another, or give the whole path");

    /// <summary>Says something in passing, unless quiet.</summary>
    public void Say(string message)
    {
        if (!Quiet)
        {
            Error.WriteLine(message);
        }
    }

    /// <summary>Says what went wrong.</summary>
    public void Complain(string message) => Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"wheeldraft: {message}"));

    /// <summary>Writes the machine-readable result: indented, lines ended by LF, and a last LF.</summary>
    public void WriteJson(Action<Utf8JsonWriter> write)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter writer = new(bytes, JsonForm.Options))
        {
            write(writer);
        }

        Out.Write(Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length));
        Out.Write('\n');
    }
}
