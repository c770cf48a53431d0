using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace WheelDraft.Engineering;

// The chapter "Tolerance/Draws": on-times drawn at random, with the edges and patches of the worst case. It knows one on-period at a time;
// what is reported of it, and what could be changed, stands above.

/// <summary>Numbers drawn at random, four draws at a time; the same for the same seed and block on every machine and any number of cores.</summary>
/// <remarks>xoshiro256++ in four lanes (Blackman and Vigna, "Scrambled linear pseudorandom number generators", ACM Transactions on Mathematical
/// Software 47, 2021), each lane of each block begun by SplitMix64 (Steele, Lea and Flood, OOPSLA 2014) from seed and block. Two of
/// n such beginnings lie within m steps of each other with a chance of about n² m / 2²⁵⁶: never.</remarks>
internal struct DrawStream
{
    // The golden ratio's share of 2⁶⁴, SplitMix64's step.
    internal const ulong Golden = 0x9E3779B97F4A7C15;

    private Vector256<ulong> _a;
    private Vector256<ulong> _b;
    private Vector256<ulong> _c;
    private Vector256<ulong> _d;

    /// <summary>The stream of one block of draws.</summary>
    public DrawStream(ulong seed, ulong block)
    {
        ulong state = unchecked(Scrambled(unchecked(seed + Golden)) ^ Scrambled(unchecked((block * Golden) + 1)));
        Span<ulong> words = stackalloc ulong[16];
        for (int i = 0; i < words.Length; i++)
        {
            state = unchecked(state + Golden);
            words[i] = Scrambled(state);
        }

        (_a, _b) = (Vector256.Create<ulong>(words[..4]), Vector256.Create<ulong>(words[4..8]));
        (_c, _d) = (Vector256.Create<ulong>(words[8..12]), Vector256.Create<ulong>(words[12..]));
    }

    /// <summary>The stream that stands at a state.</summary>
    internal DrawStream(Vector256<ulong> a, Vector256<ulong> b, Vector256<ulong> c, Vector256<ulong> d) => (_a, _b, _c, _d) = (a, b, c, d);

    /// <summary>The next 64 bits of every lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<ulong> Bits()
    {
        Vector256<ulong> sum = _a + _d;
        Vector256<ulong> result = ((sum << 23) | (sum >>> 41)) + _a;
        Vector256<ulong> shifted = _b << 17;
        _c ^= _a;
        _d ^= _b;
        _b ^= _c;
        _a ^= _d;
        _c ^= shifted;
        _d = (_d << 45) | (_d >>> 19);
        return result;
    }

    /// <summary>Uniform above −1 and below 1, in steps of 2⁻⁵¹.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> Uniform() => Spread(Bits() >>> 12);

    /// <summary>Two numbers of one drawing of bits, uniform above −1 and below 1, in steps of 2⁻³¹.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public (Vector256<double> First, Vector256<double> Second) TwoUniforms()
    {
        // The upper half of the bits, and the lower; the lowest bit that is kept stands for the middle of its step.
        Vector256<ulong> bits = Bits();
        Vector256<ulong> middle = Vector256.Create(1UL << 19);
        return (Spread(((bits >>> 32) << 20) | middle), Spread(((bits << 32) >>> 12) | middle));
    }

    /// <summary>Two normal numbers, each cut off at ±1, with a standard deviation of exactly a third: limits at three standard deviations, and none beyond.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public (Vector256<double> First, Vector256<double> Second) TwoNormals()
    {
        (Vector256<double> first, Vector256<double> second) = TwoUniforms();
        return NormalQuantiles(first, second);
    }

    /// <summary>The quantiles of that law at (v + 1) / 2, for two v from −1 to 1, within 1e-6 of their size.</summary>
    /// <remarks>The law is a normal one of standard deviation 0.33846… cut off at ±1, which leaves it a third; a test works that number out again. v
    /// times a ratio of polynomials in v², by an own fit at 600 points, denser where the tail is steep.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static (Vector256<double> First, Vector256<double> Second) NormalQuantiles(Vector256<double> first, Vector256<double> second)
    {
        (Vector256<double> firstUpper, Vector256<double> firstLower) = Quotient(first);
        (Vector256<double> secondUpper, Vector256<double> secondLower) = Quotient(second);

        // One division for both.
        Vector256<double> inverse = Vector256<double>.One / (firstLower * secondLower);
        return (firstUpper * (secondLower * inverse), secondUpper * (firstLower * inverse));
    }

    // From 52 bits of a fraction: 2 to 4, less 3, in the middle of the step.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Spread(Vector256<ulong> fraction) =>
        (fraction | Vector256.Create(0x4000000000000000UL)).AsDouble() - Vector256.Create(3 - (1.0 / (1UL << 51)));

    /// <summary>A direction drawn uniformly, as its cosine and sine, within 1e-10.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public (Vector256<double> Cos, Vector256<double> Sin) Direction()
    {
        // Series of a quarter of the angle, at most π/4, doubled twice.
        Vector256<double> a = Uniform() * Vector256.Create(Math.PI / 4);
        Vector256<double> q = a * a;
        Vector256<double> one = Vector256<double>.One;
        Vector256<double> sin = Step(q, -1.0 / 39916800, 1.0 / 362880);
        sin = Step(sin, q, -1.0 / 5040);
        sin = Step(sin, q, 1.0 / 120);
        sin = Step(sin, q, -1.0 / 6);
        sin = Step(sin, q, 1) * a;
        Vector256<double> cos = Step(q, 1.0 / 479001600, -1.0 / 3628800);
        cos = Step(cos, q, 1.0 / 40320);
        cos = Step(cos, q, -1.0 / 720);
        cos = Step(cos, q, 1.0 / 24);
        cos = Step(cos, q, -1.0 / 2);
        cos = Step(cos, q, 1);
        (sin, cos) = (sin * (cos + cos), one - (sin * (sin + sin)));
        return (one - (sin * (sin + sin)), sin * (cos + cos));
    }

    // It grows with v and ends 3e-7 short of the limits, so that nothing needs to be cut off.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (Vector256<double> Upper, Vector256<double> Lower) Quotient(Vector256<double> v)
    {
        Vector256<double> q = v * v;
        Vector256<double> upper = Step(q, -0.003837724035350154, -0.052767033718103595);
        Vector256<double> lower = Step(q, -0.3176048980841201, 2.104372023119508);
        upper = Step(upper, q, 0.5628053470792036);
        lower = Step(lower, q, -5.395759185258976);
        upper = Step(upper, q, -1.746923133097155);
        lower = Step(lower, q, 6.748583594427067);
        upper = Step(upper, q, 2.4583400810210274);
        lower = Step(lower, q, -4.139590274958094);
        upper = Step(upper, q, -1.64048737855829);
        lower = Step(lower, q, 1);
        upper = Step(upper, q, 0.42287110055372984);
        return (v * upper, lower);
    }

    // Never in one rounding: not every machine can, and the program compiled for all of them could not.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Step(Vector256<double> a, Vector256<double> b, double c) => (a * b) + Vector256.Create(c);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Step(Vector256<double> a, double b, double c) => (a * Vector256.Create(b)) + Vector256.Create(c);

    /// <summary>What SplitMix64 makes of a step of its counter.</summary>
    internal static ulong Scrambled(ulong z)
    {
        unchecked
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
