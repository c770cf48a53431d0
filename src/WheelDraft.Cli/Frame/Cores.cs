namespace WheelDraft.Cli;

/// <summary>Work shared by all cores whose results come in the order of what was asked, whatever the number of cores.</summary>
internal static class Cores
{
    /// <summary>The results, in the order of the items.</summary>
    /// <param name="items">What is worked on.</param>
    /// <param name="work">The work; it shares nothing with its neighbours.</param>
    /// <param name="step">Called after each, one at a time.</param>
    /// <param name="stop">Ctrl-C.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static TResult[] InOrder<TItem, TResult>(IReadOnlyList<TItem> items, Func<TItem, TResult> work, Action step, CancellationToken stop)
    {
        TResult[] results = new TResult[items.Count];
        Lock gate = new();
        Parallel.For(0, items.Count, new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            results[i] = work(items[i]);
            lock (gate)
            {
                step();
            }
        });
        return results;
    }
}
