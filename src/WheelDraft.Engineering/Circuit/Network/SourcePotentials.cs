using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>The potentials of the supply, over neutral: what can hold a node.</summary>
internal static class SourcePotentials
{
    /// <summary>How many there are: the first line, zero, and two lines more that a supply of one line leaves unused.</summary>
    public const int Count = 4;

    /// <summary>Index of zero: neutral and earth.</summary>
    public const int Zero = 1;

    /// <summary>The potentials by index: first line, zero, second and third line. Each line lags the one before it by 120°.</summary>
    public static Complex[] Of(SupplyBrief supply)
    {
        // Cosine and sine of 120° written out: through π they are off by a rounding, and lines would no longer add up to zero.
        double half = supply.VoltageV / 2;
        double high = supply.VoltageV * Math.Sqrt(3) / 2;
        return supply.Lines.Count > 1
            ? [supply.VoltageV, Complex.Zero, new Complex(-half, -high), new Complex(-half, high)]
            : [supply.VoltageV, Complex.Zero, Complex.Zero, Complex.Zero];
    }

    /// <summary>What a line's node is held at.</summary>
    /// <param name="phase">Which line, from 0.</param>
    public static HeldAt HeldBy(int phase) => phase switch
    {
        0 => HeldAt.Line,
        1 => HeldAt.SecondLine,
        2 => HeldAt.ThirdLine,
        _ => throw new ArgumentOutOfRangeException(nameof(phase), phase, "A supply has one line or three."),
    };

    /// <summary>Index of the one potential that holds a node.</summary>
    public static int IndexOf(HeldAt held) => BitOperations.TrailingZeroCount((int)held);

    /// <summary>Whether two potentials or more meet: a short.</summary>
    public static bool Clash(HeldAt held) => ((int)held & ((int)held - 1)) != 0;
}
