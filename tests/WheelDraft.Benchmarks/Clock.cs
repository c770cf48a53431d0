using System.Diagnostics;

namespace WheelDraft.Benchmarks;

/// <summary>Times work inside the process.</summary>
internal static class Clock
{
    /// <summary>The least processor time of so many rounds, ms, of all threads together.</summary>
    public static double LeastProcessorMs<T>(Func<T> work, int rounds)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < rounds; i++)
        {
            TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
            work();
            least = Math.Min(least, (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds);
        }

        return least;
    }

    /// <summary>The median wall time of so many rounds after warm-ups, ms.</summary>
    public static double MedianMs<T>(Func<T> work, int warmUps, int rounds)
    {
        for (int i = 0; i < warmUps; i++)
        {
            work();
        }

        double[] times = new double[rounds];
        for (int i = 0; i < rounds; i++)
        {
            long begin = Stopwatch.GetTimestamp();
            work();
            times[i] = Stopwatch.GetElapsedTime(begin).TotalMilliseconds;
        }

        Array.Sort(times);
        return times[rounds / 2];
    }
}
