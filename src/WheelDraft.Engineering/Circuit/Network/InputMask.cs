using System.Numerics;
using System.Runtime.Intrinsics.X86;

namespace WheelDraft.Engineering;

/// <summary>Sets of inputs as bits, and the positions that the inputs of a set can take.</summary>
internal static class InputMask
{
    /// <summary>How many inputs a set has.</summary>
    public static int Count(int mask) => BitOperations.PopCount((uint)mask);

    /// <summary>How many positions the inputs of a set have.</summary>
    public static int Positions(int mask) => 1 << Count(mask);

    /// <summary>Every position of a set's inputs by rising number, all other inputs open.</summary>
    public static IEnumerable<int> Subsets(int mask)
    {
        int inputs = 0;
        do
        {
            yield return inputs;
            inputs = (inputs - mask) & mask;
        }
        while (inputs != 0);
    }

    /// <summary>The number of a position among those of a set: its bits of the set, moved together.</summary>
    public static int Index(int inputs, int mask)
    {
        if ((mask & (mask + 1)) == 0)
        {
            return inputs & mask;
        }

        if (Bmi2.IsSupported)
        {
            return (int)Bmi2.ParallelBitExtract((uint)inputs, (uint)mask);
        }

        int index = 0;
        for (int left = mask, at = 0; left != 0; left &= left - 1, at++)
        {
            index |= (inputs >> BitOperations.TrailingZeroCount(left) & 1) << at;
        }

        return index;
    }

    /// <summary>The inputs of a set, by rising index.</summary>
    public static IEnumerable<int> Members(int mask)
    {
        for (int left = mask; left != 0; left &= left - 1)
        {
            yield return BitOperations.TrailingZeroCount(left);
        }
    }
}
