using System.Runtime.CompilerServices;
using CsCheck;

namespace WheelDraft.Tests;

/// <summary>Samples properties with the same cases in every run, so that a build never turns on luck.</summary>
/// <remarks>CsCheck's own seed fixes the first case only and draws the rest anew. These methods stand before its own of the same
/// name for every test of this namespace and those below it, and draw all cases from one generator, begun by the name of the
/// test: another test has other cases, and a new test leaves the old ones theirs. A case that fails is handed to CsCheck, which
/// makes it small and tells its seed. With <see cref="NewCases"/> in the environment, or a seed in CsCheck_Seed, CsCheck draws.</remarks>
internal static class Properties
{
    /// <summary>Name of the environment variable that, set to 1, lets every run draw new cases.</summary>
    internal const string NewCases = "WHEELDRAFT_NEW_CASES";

    // Begins the generator, with the name of the test; no meaning but to be the same for ever.
    private const ulong Beginning = 1;

    internal static void Sample<T>(this Gen<T> gen, Action<T> holds, long iter = 100, int threads = -1, Func<T, string>? print = null, [CallerMemberName] string test = "")
    {
        if (DrawsNew)
        {
            Check.Sample(gen, holds, iter: iter, threads: threads, print: print);
            return;
        }

        PCG drawn = new(StreamOf(test), Beginning);
        for (long i = 0; i < iter; i++)
        {
            string seed = drawn.ToString(drawn.State);
            T value = gen.Generate(drawn, null, out _);
            try
            {
                holds(value);
            }
            catch
            {
                Check.Sample(gen, holds, seed: seed, iter: iter, threads: 1, print: print);
                throw;
            }
        }
    }

    internal static void Sample<T>(this Gen<T> gen, Func<T, bool> holds, long iter = 100, int threads = -1, Func<T, string>? print = null, [CallerMemberName] string test = "") =>
        gen.Sample(g => Demand(holds(g)), iter, threads, print, test);

    internal static void Sample<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> holds, long iter = 100, int threads = -1, [CallerMemberName] string test = "") =>
        gen.Sample(g => holds(g.Item1, g.Item2), iter, threads, null, test);

    internal static void Sample<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> holds, long iter = 100, int threads = -1, [CallerMemberName] string test = "") =>
        gen.Sample(g => holds(g.Item1, g.Item2, g.Item3), iter, threads, null, test);

    internal static void Sample<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Action<T1, T2, T3, T4> holds, long iter = 100, int threads = -1, [CallerMemberName] string test = "") =>
        gen.Sample(g => holds(g.Item1, g.Item2, g.Item3, g.Item4), iter, threads, null, test);

    internal static void Sample<T1, T2, T3, T4, T5, T6>(this Gen<(T1, T2, T3, T4, T5, T6)> gen, Action<T1, T2, T3, T4, T5, T6> holds, long iter = 100, int threads = -1, [CallerMemberName] string test = "") =>
        gen.Sample(g => holds(g.Item1, g.Item2, g.Item3, g.Item4, g.Item5, g.Item6), iter, threads, null, test);

    internal static void Sample<T1, T2>(this Gen<(T1, T2)> gen, Func<T1, T2, bool> holds, long iter = 100, int threads = -1, [CallerMemberName] string test = "") =>
        gen.Sample(g => Demand(holds(g.Item1, g.Item2)), iter, threads, null, test);

    internal static void Sample<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Func<T1, T2, T3, bool> holds, long iter = 100, int threads = -1, [CallerMemberName] string test = "") =>
        gen.Sample(g => Demand(holds(g.Item1, g.Item2, g.Item3)), iter, threads, null, test);

    internal static void Sample<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> gen, Func<T1, T2, T3, T4, bool> holds, long iter = 100, int threads = -1, [CallerMemberName] string test = "") =>
        gen.Sample(g => Demand(holds(g.Item1, g.Item2, g.Item3, g.Item4)), iter, threads, null, test);

    internal static void Sample<T1, T2, T3, T4, T5>(this Gen<(T1, T2, T3, T4, T5)> gen, Func<T1, T2, T3, T4, T5, bool> holds, long iter = 100, int threads = -1, [CallerMemberName] string test = "") =>
        gen.Sample(g => Demand(holds(g.Item1, g.Item2, g.Item3, g.Item4, g.Item5)), iter, threads, null, test);

    internal static void Sample<T1, T2, T3, T4, T5, T6>(this Gen<(T1, T2, T3, T4, T5, T6)> gen, Func<T1, T2, T3, T4, T5, T6, bool> holds, long iter = 100, int threads = -1, [CallerMemberName] string test = "") =>
        gen.Sample(g => Demand(holds(g.Item1, g.Item2, g.Item3, g.Item4, g.Item5, g.Item6)), iter, threads, null, test);

    private static void Demand(bool holds)
    {
        if (!holds)
        {
            throw new InvalidOperationException("The property does not hold.");
        }
    }

    private static bool DrawsNew =>
        Environment.GetEnvironmentVariable(NewCases) is "1" || !string.IsNullOrEmpty(Environment.GetEnvironmentVariable("CsCheck_Seed"));

    /// <summary>FNV-1a (Fowler, Noll, Vo) of a name, 32 bits: the same on every machine, as string hashes are not.</summary>
    private static uint StreamOf(string test)
    {
        uint hash = 2166136261;
        foreach (char c in test)
        {
            hash = unchecked((hash ^ c) * 16777619);
        }

        return hash;
    }
}
