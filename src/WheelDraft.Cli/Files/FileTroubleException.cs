namespace WheelDraft.Cli;

/// <summary>A file could not be opened, read or written: exit status 3.</summary>
internal sealed class FileTroubleException(string message) : Exception(message);
