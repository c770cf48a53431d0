namespace WheelDraft.Cli;

/// <summary>What a run of the program stands in: its streams, its folder, and how it is stopped. Tests give their own.</summary>
internal sealed class Surroundings
{
    /// <summary>Standard output: results.</summary>
    public required TextWriter Out { get; init; }

    /// <summary>Standard error: messages and progress.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>Folder from which relative file names count; null when it has been deleted.</summary>
    public required string? Folder { get; init; }

    /// <summary>Whether standard error is a terminal, so that progress is worth showing.</summary>
    public bool ErrorIsTerminal { get; init; }

    /// <summary>Whether words may be coloured: a terminal, and NO_COLOR not set.</summary>
    public bool Colour { get; init; }

    /// <summary>Cancelled by Ctrl-C.</summary>
    public CancellationToken Stop { get; init; }

    /// <summary>Called before a command starts; the result is disposed after it.</summary>
    public Func<IDisposable>? Guard { get; init; }
}
