using System.Diagnostics;
using System.Globalization;

namespace WheelDraft.Fuzz;

/// <summary>One case run under the watchdog: what came of it, or how it failed.</summary>
/// <param name="Outcome">What came of it; null when it failed.</param>
/// <param name="Shape">What failures alike have in common; null for none.</param>
/// <param name="Words">The failure in full.</param>
internal sealed record Trial(Outcome? Outcome, string? Shape, string Words)
{
    /// <summary>Processor time.</summary>
    public TimeSpan Time { get; private init; }

    /// <summary>Bytes allocated in all by the case's own thread.</summary>
    public long Allocated { get; private init; }

    /// <summary>Runs a case; a slow one again, so that what was compiled or cleared on the way does not count.</summary>
    public static Trial Of(ITarget target, byte[] bytes, Depth depth, Watchdog watchdog)
    {
        Trial trial = Once(target, bytes, depth, watchdog);
        TimeSpan most = Watchdog.MostTime * (depth.HasFlag(Depth.Twice) ? 2 : 1);
        if (trial.Shape is null && trial.Time > most)
        {
            trial = Once(target, bytes, depth, watchdog);
        }

        return trial.Shape is not null || trial.Time <= most
            ? trial
            : trial with { Outcome = null, Shape = "slow: " + Stage.Longest, Words = string.Create(CultureInfo.InvariantCulture, $"{trial.Time.TotalSeconds:0.0} s of processor time, most of it for {Stage.Longest}; at most {most.TotalSeconds:0} s are promised.") };
    }

    private static Trial Once(ITarget target, byte[] bytes, Depth depth, Watchdog watchdog)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        Stage.Begin();
        watchdog.Begin();
        Trial trial = Bare(target, bytes, depth);
        TimeSpan time = watchdog.End();
        Stage.Close();
        return trial with { Time = time, Allocated = GC.GetAllocatedBytesForCurrentThread() - before };
    }

    private static Trial Bare(ITarget target, byte[] bytes, Depth depth)
    {
        try
        {
            return new(target.Try(bytes, depth), null, "");
        }
        catch (BrokenPromiseException broken)
        {
            return new(null, broken.Shape, broken.Message);
        }
#pragma warning disable CA1031 // Whatever escapes is what is looked for.
        catch (Exception escaped)
#pragma warning restore CA1031
        {
            Exception inner = escaped is AggregateException { InnerException: Exception first } ? first : escaped;
            return new(null, $"{inner.GetType().Name} in {Place(inner)}", inner.ToString());
        }
    }

    /// <summary>The innermost methods of the program that the exception came through.</summary>
    private static string Place(Exception escaped)
    {
        IEnumerable<string> frames = new StackTrace(escaped).GetFrames()
            .Select(f => f.GetMethod())
            .Where(m => m?.DeclaringType?.FullName?.StartsWith("WheelDraft.", StringComparison.Ordinal) == true)
            .Select(m => $"{m!.DeclaringType!.Name}.{m.Name}");
        return string.Join(" < ", frames.Take(3));
    }
}
