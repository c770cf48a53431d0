namespace WheelDraft.Cli;

/// <summary>The exit statuses of every command; there are no others. Where a command does several things the greatest wins.</summary>
internal static class ExitStatus
{
    /// <summary>Done, and nothing misses.</summary>
    public const int Done = 0;

    /// <summary>Done, with findings of severity error.</summary>
    public const int Findings = 1;

    /// <summary>Input that is wrong or cannot be built.</summary>
    public const int WrongInput = 2;

    /// <summary>A file could not be opened, read or written.</summary>
    public const int FileTrouble = 3;

    /// <summary>Interrupted, 128 + SIGINT by the custom of shells.</summary>
    public const int Interrupted = 130;
}
