using System.Globalization;
using CsCheck;
using WheelDraft.Formats;
using Xunit;

namespace WheelDraft.Tests.Dxf;

/// <summary>Numbers of files, against the formatting of the run-time library.</summary>
public sealed class FixedPointTests
{
    [Theory]
    [InlineData(0.0, 4, "0")]
    [InlineData(-0.00004, 4, "0")]
    [InlineData(0.0005, 4, "0.0005")]
    [InlineData(-3.0, 3, "-3")]
    [InlineData(12.5, 6, "12.5")]
    [InlineData(100.0, 0, "100")]
    [InlineData(0.12345, 4, "0.1234")]
    [InlineData(1e15, 4, "1000000000000000")]
    [InlineData(123456789012.12345, 4, "123456789012.1234")]
    public void Short_Number_IsWritten(double value, int decimals, string text) => Assert.Equal(text, FixedPoint.Short(value, decimals));

    [Fact]
    public void Short_AnyNumber_IsAsTheLibraryWritesIt() =>
        Gen.Select(Gen.Double[-1, 1], Gen.Int[-12, 17], Gen.Int[0, 15], Gen.Bool).Sample(
            (double share, int tens, int decimals, bool isHalf) =>
            {
                // Halves of the last place are where rounding turns.
                double value = share * Math.Pow(10, tens);
                value = isHalf ? (Math.Floor(value) + 0.5) / Math.Pow(10, decimals) : value;
                Assert.Equal(ByLibrary(value, decimals), FixedPoint.Short(value, decimals));
            },
            iter: 100_000);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void Short_NotFinite_IsRefused(double value) => Assert.Throws<ArgumentOutOfRangeException>(() => FixedPoint.Short(value, 4));

    private static string ByLibrary(double value, int decimals)
    {
        string text = (Math.Round(value, decimals) + 0.0).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
    }
}
