using System.Runtime.Intrinsics;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Tolerance;

/// <summary>Numbers drawn at random: generators against published answers, laws against integration.</summary>
public sealed class DrawStreamTests
{
    // Outputs of xoshiro256++ from the state 1, 2, 3, 4, as the reference code in C gives them (from memory).
    [Fact]
    public void Bits_FromTheStateOneToFour_AreThoseOfTheReference()
    {
        DrawStream stream = new(Vector256.Create(1UL), Vector256.Create(2UL), Vector256.Create(3UL), Vector256.Create(4UL));
        foreach (ulong expected in (ulong[])[41943041, 58720359, 3588806011781223, 3591011842654386, 9228616714210784205, 9973669472204895162])
        {
            Assert.Equal(Vector256.Create(expected), stream.Bits());
        }
    }

    // SplitMix64 from the seed 1234567: Rosetta Code, "Pseudo-random numbers/Splitmix64" (from memory).
    [Fact]
    public void Scrambled_OfStepsFromASeed_IsSplitMix64()
    {
        ulong state = 1234567;
        foreach (ulong expected in (ulong[])[6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821])
        {
            state = unchecked(state + DrawStream.Golden);
            Assert.Equal(expected, DrawStream.Scrambled(state));
        }
    }

    [Fact]
    public void Stream_OfAnotherBlockOrSeed_IsAnother()
    {
        HashSet<ulong> seen = [];
        for (ulong seed = 0; seed < 8; seed++)
        {
            for (ulong block = 0; block < 200; block++)
            {
                Vector256<ulong> bits = new DrawStream(seed, block).Bits();
                Assert.All(Enumerable.Range(0, 4), lane => Assert.True(seen.Add(bits[lane])));
            }
        }
    }

    // Simpson's rule over the normal density; the parent deviation that leaves a third after the cut is found again by halving.
    [Fact]
    public void NormalQuantile_AgainstTheIntegratedDensity_IsTheTruncatedNormalLawOfAThird()
    {
        double parent = Halved(0.3, 0.4, p => Moment(p, 2) / Moment(p, 0), 1 / 9.0);
        Assert.Equal(0.33846232835, parent, 1e-10);
        double whole = Moment(parent, 0);
        for (double v = 0.01; v < 1; v += 0.0125)
        {
            double found = DrawStream.NormalQuantiles(Vector256.Create(v), Vector256<double>.Zero).First[0];
            double expected = Halved(0, 1, x => Integral(parent, 0, x, 0) / (whole / 2), v);
            Assert.InRange(found / expected, 1 - 1e-6, 1 + 1e-6);
            Assert.Equal(-found, DrawStream.NormalQuantiles(Vector256.Create(-v), Vector256<double>.Zero).First[0]);
        }
    }

    [Fact]
    public void NormalQuantile_UpToItsLimits_GrowsAndNeverPassesThem()
    {
        double last = -1;
        for (int i = -20_000; i <= 20_000; i++)
        {
            double at = DrawStream.NormalQuantiles(Vector256.Create(i / 20_000.0), Vector256<double>.Zero).First[0];
            Assert.True(at > last || i == -20_000);
            Assert.InRange(at, -1, 1);
            last = at;
        }

        Assert.InRange(last, 1 - 1e-6, 1);
    }

    [Fact]
    public void Laws_OverManyDraws_HaveTheirMomentsAndStayInTheirBands()
    {
        DrawStream stream = new(3, 5);
        const int quads = 100_000;
        double[] sums = new double[4], squares = new double[4];
        double fourth = 0, twice = 0;
        for (int i = 0; i < quads; i++)
        {
            (Vector256<double> cos, Vector256<double> sin) = stream.Direction();
            (Vector256<double> first, Vector256<double> second) = stream.TwoNormals();
            Vector256<double>[] drawn = [first, second, stream.Uniform(), cos];
            twice += Vector256.Sum(first * second);
            Assert.True(Vector256.LessThanOrEqualAll(Vector256.Abs(((cos * cos) + (sin * sin)) - Vector256<double>.One), Vector256.Create(1e-9)));
            for (int k = 0; k < drawn.Length; k++)
            {
                Assert.True(Vector256.LessThanOrEqualAll(Vector256.Abs(drawn[k]), Vector256.Create(1 + 1e-10)));
                sums[k] += Vector256.Sum(drawn[k]);
                squares[k] += Vector256.Sum(drawn[k] * drawn[k]);
            }

            fourth += Vector256.Sum(cos * cos * cos * cos);
        }

        // Five standard errors. Arcsine over ±1: variance 1/2, fourth moment 3/8 (closed forms).
        const double n = 4.0 * quads;
        double[] variances = [1 / 9.0, 1 / 9.0, 1 / 3.0, 1 / 2.0];
        for (int k = 0; k < variances.Length; k++)
        {
            Assert.Equal(0, sums[k] / n, 5 * Math.Sqrt(variances[k] / n));
            Assert.Equal(variances[k], squares[k] / n, 5 * variances[k] * Math.Sqrt(2 / n));
        }

        // The two of one drawing know nothing of each other.
        Assert.Equal(0, twice / n, 5 / 9.0 / Math.Sqrt(n));
        Assert.Equal(3 / 8.0, fourth / n, 5 * 0.4 / Math.Sqrt(n));
    }

    private static double Moment(double parent, int power) => 2 * Integral(parent, 0, 1, power);

    private static double Integral(double parent, double from, double to, int power)
    {
        const int parts = 400;
        double step = (to - from) / parts;
        double At(int i)
        {
            double x = from + (i * step);
            return Math.Pow(x, power) * Math.Exp(-x * x / (2 * parent * parent));
        }

        return step / 3 * Enumerable.Range(0, parts + 1).Sum(i => At(i) * (i is 0 or parts ? 1 : i % 2 == 0 ? 2 : 4));
    }

    private static double Halved(double low, double high, Func<double, double> grows, double wanted)
    {
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = grows(middle) < wanted ? (middle, high) : (low, middle);
        }

        return low;
    }
}
