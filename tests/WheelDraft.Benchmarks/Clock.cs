using System.Diagnostics;

namespace WheelDraft.Benchmarks;

/// <summary>Times work inside the process.</summary>
internal static class Clock
{
    private const double BatchMs = 200;

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

    /// <summary>The least processor time of one call, ms, of all threads together, over so many rounds of as many calls as take a fifth of a second.</summary>
    public static double LeastProcessorMsOfMany<T>(Func<T> work, int rounds)
    {
        int calls = 1;
        while (ProcessorMs(work, calls) < BatchMs && calls < int.MaxValue / 2)
        {
            calls *= 2;
        }

        return Enumerable.Range(0, rounds).Min(_ => ProcessorMs(work, calls)) / calls;
    }

    // Environment.CpuUsage counts microseconds, a process's times may come in steps of 10 ms.
    private static double ProcessorMs<T>(Func<T> work, int calls)
    {
        TimeSpan before = Environment.CpuUsage.TotalTime;
        for (int i = 0; i < calls; i++)
        {
            work();
        }

        return (Environment.CpuUsage.TotalTime - before).TotalMilliseconds;
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
