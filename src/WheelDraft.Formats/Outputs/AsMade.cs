namespace WheelDraft.Formats.Outputs;

/// <summary>Things made side by side and given in order, each as soon as it is there, so that few of them are in memory at a time.</summary>
internal static class AsMade
{
    /// <summary>Makes and gives them.</summary>
    /// <param name="count">How many.</param>
    /// <param name="atOnce">How many are made at once, 1 and more; as many again may be done and wait for their turn.</param>
    /// <param name="make">Makes one by its number from 0. What it throws is thrown where that one is asked for; none is begun after it.</param>
    public static IEnumerable<T> InOrder<T>(int count, int atOnce, Func<int, T> make)
    {
        using SemaphoreSlim free = new(atOnce);
        Queue<Task<T>> begun = new();
        try
        {
            for (int next = 0; next < count || begun.Count > 0;)
            {
                for (; next < count && begun.Count < 2 * atOnce; next++)
                {
                    int number = next;
                    begun.Enqueue(Task.Run(() => Made(free, () => make(number))));
                }

                yield return begun.Dequeue().GetAwaiter().GetResult();
            }
        }
        finally
        {
            // Whoever stops half-way may take away what the others still paint on.
            Task rest = Task.WhenAll(begun);
            rest.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing).GetAwaiter().GetResult();
        }
    }

    private static async Task<T> Made<T>(SemaphoreSlim free, Func<T> make)
    {
        await free.WaitAsync().ConfigureAwait(false);
        try
        {
            return make();
        }
        finally
        {
            free.Release();
        }
    }
}
