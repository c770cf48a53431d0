using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Words;

/// <summary>Roots by bracketing, against plain halving as the oracle.</summary>
public sealed class RootFindingTests
{
    [Fact]
    public void Within_RandomFunctionsWithKinksAndSteps_IsWhatHalvingFindsBitForBit()
    {
        Random random = new(20261130);
        int looks = 0, halvings = 0;
        for (int i = 0; i < 20_000; i++)
        {
            double root = (random.NextDouble() * 4) - 2;
            double slope = Math.Pow(10, (random.NextDouble() * 6) - 3) * (random.Next(2) == 0 ? 1 : -1);
            double bend = random.NextDouble() * 3;
            int kind = random.Next(4);
            double F(double x) => slope * (kind switch
            {
                0 => Math.Sin(x - root) + (bend * (x - root) * (x - root) * (x - root)),
                1 => x < root ? x - root : bend * 5 * (x - root),
                2 => x < root ? -1 : 1 + bend,
                _ => Math.Exp(bend * (x - root)) - 1,
            });
            double low = root - (3 * random.NextDouble()) - 1e-3, high = root + (3 * random.NextDouble()) + 1e-3;
            (low, high) = random.Next(2) == 0 ? (low, high) : (high, low);
            double? found = RootFinding.Within(x => Counted(F(x), kind == 2, ref looks), low, high);
            Assert.Equal(Halved(x => Counted(F(x), kind == 2, ref halvings), low, high), found);
        }

        Assert.InRange(looks, 1, 0.7 * halvings);
    }

    [Theory]
    [InlineData(1, 2, null)]
    [InlineData(0, 2, 0.0)]
    [InlineData(-2, 0, 0.0)]
    public void Within_NoChangeOfSignOrRootAtAnEnd_SaysSo(double low, double high, double? root) => Assert.Equal(root, RootFinding.Within(x => x, low, high));

    // Looks at a step, which only halving finds, are not counted.
    private static double Counted(double value, bool isStep, ref int count)
    {
        count += isStep ? 0 : 1;
        return value;
    }

    private static double? Halved(Func<double, double> f, double low, double high)
    {
        double atLow = f(low);
        for (double middle = (low + high) / 2; middle > Math.Min(low, high) && middle < Math.Max(low, high); middle = (low + high) / 2)
        {
            double at = f(middle);
            if (at == 0)
            {
                return middle;
            }

            (low, high) = Math.Sign(at) == Math.Sign(atLow) ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
