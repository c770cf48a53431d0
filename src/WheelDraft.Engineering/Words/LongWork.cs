namespace WheelDraft.Engineering;

/// <summary>Who attends to work that takes long: told how far it is, and able to end it. What comes out does not depend on it.</summary>
/// <param name="Progress">Told what is done, in words, and which share of it, 0 to 1, now and then and once at its end; on any thread, one at a time.</param>
/// <param name="Stop">Ends the work with <see cref="OperationCanceledException"/>.</param>
public sealed record LongWork(Action<string, double>? Progress, CancellationToken Stop)
{
    /// <summary>Nobody.</summary>
    internal static LongWork Unattended { get; } = new(null, default);

    /// <summary>Says how far it is.</summary>
    /// <exception cref="OperationCanceledException">It is to end.</exception>
    internal void Tell(string what, double share)
    {
        Stop.ThrowIfCancellationRequested();
        Progress?.Invoke(what, share);
    }
}
