namespace WheelDraft.Fuzz;

/// <summary>Dice that fall the same for the same seed, on every machine and in every version of the runtime.</summary>
/// <remarks>SplitMix64, after Steele, Lea and Flood, "Fast splittable pseudorandom number generators" (OOPSLA 2014).</remarks>
internal sealed class Chance(ulong seed)
{
    private ulong _state = seed;

    /// <summary>The dice of one case: each case has its own, so that a run can begin at any of them.</summary>
    public static Chance Of(ulong seed, string kind, long number)
    {
        ulong mixed = seed;
        unchecked
        {
            foreach (char c in kind)
            {
                mixed = (mixed ^ c) * 0x100000001B3UL;
            }

            return new Chance((mixed * 0x9E3779B97F4A7C15UL) + ((ulong)number * 0xD1B54A32D192ED03UL));
        }
    }

    /// <summary>A whole number from 0 to one less than <paramref name="below"/>.</summary>
    public int Below(int below) => below <= 1 ? 0 : (int)(Bits() % (ulong)below);

    /// <summary>Yes with odds of one in so many.</summary>
    public bool OneIn(int many) => Below(many) == 0;

    /// <summary>One of a list.</summary>
    public T Of<T>(IReadOnlyList<T> all) => all[Below(all.Count)];

    private ulong Bits()
    {
        unchecked
        {
            ulong z = _state += 0x9E3779B97F4A7C15UL;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
