using System.Globalization;
using System.Text;
using System.Text.Json;

namespace WheelDraft.Cli;

/// <summary>What a command gets in addition to its arguments: where results and messages go, and how it is to behave.</summary>
internal sealed class CommandContext(Surroundings surroundings)
{
    /// <summary>Standard output, for results only.</summary>
    public TextWriter Out => surroundings.Out;

    /// <summary>Standard error.</summary>
    public TextWriter Error => surroundings.Error;

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

    /// <summary>The full path of a file that the person named.</summary>
    public string PathOf(string named) => Path.GetFullPath(named, surroundings.Folder);

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
