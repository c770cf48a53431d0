using CsCheck;
using WheelDraft.Formats.Parameters;
using Xunit;

namespace WheelDraft.Tests.Parameters;

public sealed class QuantityTests
{
    // Definitions: inch 25.4 mm (ISO 80000-3, international yard and pound agreement of 1959), minute 60 s, litre 1 dm3.
    [Theory]
    [InlineData("12 in", nameof(Dimension.Length), "304.8")]
    [InlineData("0.020 in", nameof(Dimension.Length), "0.508")]
    [InlineData("3 in", nameof(Dimension.Length), "76.2")]
    [InlineData("12 thou", nameof(Dimension.Length), "0.3048")]
    [InlineData("0.5 mm", nameof(Dimension.Length), "0.5")]
    [InlineData("0.5mm", nameof(Dimension.Length), "0.5")]
    [InlineData("  .5  mm ", nameof(Dimension.Length), "0.5")]
    [InlineData("+5. mm", nameof(Dimension.Length), "5")]
    [InlineData("-7 mm", nameof(Dimension.Length), "-7")]
    [InlineData("5e-1 mm", nameof(Dimension.Length), "0.5")]
    [InlineData("5E+1 mm", nameof(Dimension.Length), "50")]
    [InlineData("5 cm", nameof(Dimension.Length), "50")]
    [InlineData("300 m", nameof(Dimension.Length), "300000")]
    [InlineData("5 um", nameof(Dimension.Length), "0.005")]
    [InlineData("5 \u00B5m", nameof(Dimension.Length), "0.005")]
    [InlineData("5 \u03BCm", nameof(Dimension.Length), "0.005")]
    [InlineData("5\u00A0\u03BCm", nameof(Dimension.Length), "0.005")]
    [InlineData("7 s", nameof(Dimension.Time), "7")]
    [InlineData("2 min", nameof(Dimension.Time), "120")]
    [InlineData("250 ms", nameof(Dimension.Time), "0.25")]
    [InlineData("1.5 h", nameof(Dimension.Time), "5400")]
    [InlineData("12 deg", nameof(Dimension.Angle), "12")]
    [InlineData("-93.6 deg", nameof(Dimension.Angle), "-93.6")]
    [InlineData("0.333 rpm", nameof(Dimension.Speed), "0.333")]
    [InlineData("50 Hz", nameof(Dimension.Frequency), "50")]
    [InlineData("0.23 kV", nameof(Dimension.Voltage), "230")]
    [InlineData("500 mV", nameof(Dimension.Voltage), "0.5")]
    [InlineData("30 mA", nameof(Dimension.Current), "0.03")]
    [InlineData("1.2 kW", nameof(Dimension.Power), "1200")]
    [InlineData("4.7 kohm", nameof(Dimension.Resistance), "4700")]
    [InlineData("4.7 k\u03A9", nameof(Dimension.Resistance), "4700")]
    [InlineData("470 \u2126", nameof(Dimension.Resistance), "470")]
    [InlineData("0.6 N", nameof(Dimension.Force), "0.6")]
    [InlineData("0.25 N m", nameof(Dimension.Torque), "0.25")]
    [InlineData("25 mN m", nameof(Dimension.Torque), "0.025")]
    [InlineData("1.2 L/min", nameof(Dimension.Flow), "0.02")]
    [InlineData("20 mL/s", nameof(Dimension.Flow), "0.02")]
    [InlineData("1200 mL/min", nameof(Dimension.Flow), "0.02")]
    [InlineData("110 mL", nameof(Dimension.Volume), "0.11")]
    [InlineData("11 cL", nameof(Dimension.Volume), "0.11")]
    [InlineData("1 %", nameof(Dimension.Share), "0.01")]

    // NIST SP 811 (2008), appendix B.8: foot 0.3048 m; kilogram-force 9.80665 N; ounce-force inch 7.061552e-3 N m, here exact:
    // 0.45359237 kg / 16 · 9.80665 m/s² · 0.0254 m.
    [InlineData("1 ft", nameof(Dimension.Length), "304.8")]
    [InlineData("5 N cm", nameof(Dimension.Torque), "0.05")]
    [InlineData("5 N\u00B7cm", nameof(Dimension.Torque), "0.05")]
    [InlineData("5 Ncm", nameof(Dimension.Torque), "0.05")]
    [InlineData("1 kgf cm", nameof(Dimension.Torque), "0.0980665")]
    [InlineData("1 ozf in", nameof(Dimension.Torque), "0.0070615518142260437500")]
    [InlineData("16 ozf in", nameof(Dimension.Torque), "0.1129848290276167")]
    [InlineData("110 ml", nameof(Dimension.Volume), "0.11")]
    [InlineData("2 l", nameof(Dimension.Volume), "2")]
    [InlineData("1.2 l/min", nameof(Dimension.Flow), "0.02")]
    [InlineData("1200 ml/min", nameof(Dimension.Flow), "0.02")]

    // A thirty-second of an inch is 25.4 / 32 mm.
    [InlineData("1/32 in", nameof(Dimension.Length), "0.79375")]
    [InlineData("1 1/2 in", nameof(Dimension.Length), "38.1")]
    [InlineData("1-1/2in", nameof(Dimension.Length), "38.1")]
    [InlineData("-1 1/2 in", nameof(Dimension.Length), "-38.1")]
    [InlineData("10/4 mm", nameof(Dimension.Length), "2.5")]
    [InlineData("2 min 15 s", nameof(Dimension.Time), "135")]
    [InlineData("1 h 2.5 s", nameof(Dimension.Time), "3602.5")]
    [InlineData("1h30min", nameof(Dimension.Time), "5400")]
    [InlineData("5 ft 3 1/2 in", nameof(Dimension.Length), "1612.9")]
    public void TryParse_RightForm_GivesExactSize(string text, string dimensionName, string expected)
    {
        Dimension dimension = Enum.Parse<Dimension>(dimensionName);
        Assert.True(Quantity.TryParse(text, dimension, out Quantity read, out string complaint), complaint);
        Assert.Equal(decimal.Parse(expected, System.Globalization.CultureInfo.InvariantCulture), read.InBaseUnit);

        // The platform's cast from a decimal of many digits may be off in the last bit.
        double size = double.Parse(expected, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(size, read.Value, expected.Length > 17 ? 1e-15 * size : 0);
        Assert.Equal(dimension, read.Dimension);
    }

    [Fact]
    public void AngleRad_HalfTurn_IsPi()
    {
        Assert.True(Quantity.TryParse("180 deg", Dimension.Angle, out Quantity degrees, out _));
        Assert.Equal(Math.PI, degrees.AngleRad);
        Assert.True(Quantity.TryParse("1 rad", Dimension.Angle, out Quantity radians, out _));
        Assert.Equal(1.0, radians.AngleRad, 1e-15);
    }

    [Theory]
    [InlineData("0,5 mm", "\"0,5 mm\" has a comma; numbers take a decimal point and no thousands separators, e.g. \"0.5 mm\"")]
    [InlineData("1,000 mm", "\"1,000 mm\" has a comma; numbers take a decimal point and no thousands separators, e.g. \"1000 mm\" or \"1.000 mm\"")]
    [InlineData("1,000.5 mm", "\"1,000.5 mm\" has a comma; numbers take a decimal point and no thousands separators, e.g. \"1000.5 mm\"")]
    [InlineData("half a mm", "\"half a mm\" does not start with a number; a length is a number with a unit, e.g. \"0.5 mm\"")]
    [InlineData("", "the text is empty; a length is a number with a unit, e.g. \"0.5 mm\"")]
    [InlineData("0.5", "\"0.5\" has no unit; a length is a number with a unit, e.g. \"0.5 mm\"")]
    [InlineData("NaN mm", "\"NaN mm\" does not start with a number; a length is a number with a unit, e.g. \"0.5 mm\"")]
    [InlineData("0.5 MM", "\"0.5 MM\" has the unknown unit \"MM\"; did you mean \"mm\"? A length is in mm, cm, m, um, in, ft or thou")]
    [InlineData("0.5 inch", "\"0.5 inch\" has the unknown unit \"inch\"; did you mean \"in\"? A length is in mm, cm, m, um, in, ft or thou")]
    [InlineData("0.5 furlong", "\"0.5 furlong\" has the unknown unit \"furlong\"; a length is in mm, cm, m, um, in, ft or thou")]
    [InlineData("0.5 e", "\"0.5 e\" has the unknown unit \"e\"; a length is in mm, cm, m, um, in, ft or thou")]
    [InlineData("0.5 s", "\"0.5 s\" is a time; a length is a number with a unit, e.g. \"0.5 mm\"")]
    [InlineData("1 000 mm", "\"1 000 mm\" has a number in more than one piece; write the digits together with one decimal point at most, e.g. \"0.5 mm\"")]
    [InlineData("1.2.3 mm", "\"1.2.3 mm\" has a number in more than one piece; write the digits together with one decimal point at most, e.g. \"0.5 mm\"")]
    [InlineData("1e99 mm", "\"1e99 mm\" is too large a number; a length is a number with a unit, e.g. \"0.5 mm\"")]
    [InlineData("1/0 in", "\"1/0 in\" has a fraction over nothing, \"1/0 in\"; write e.g. \"1/32 in\"")]
    [InlineData("3 in 5 ft", "\"3 in 5 ft\" has more than one unit; sums are written without signs, the greater unit first, as in \"1 h 2 min 15 s\" or \"5 ft 3 in\"")]
    [InlineData("5 ft -3 in", "\"5 ft -3 in\" has more than one unit; sums are written without signs, the greater unit first, as in \"1 h 2 min 15 s\" or \"5 ft 3 in\"")]
    [InlineData("2 min 15 s", "\"2 min 15 s\" is a time; a length is a number with a unit, e.g. \"0.5 mm\"")]
    [InlineData("1/2/3 in", "\"1/2/3 in\" has the unknown unit \"/2/3 in\"; a length is in mm, cm, m, um, in, ft or thou")]
    [InlineData("1/2.5 in", "\"1/2.5 in\" has the unknown unit \"/2.5 in\"; a length is in mm, cm, m, um, in, ft or thou")]
    public void TryParse_WrongForm_TellsWhatIsWrongAndWhatIsRight(string text, string expected)
    {
        Assert.False(Quantity.TryParse(text, Dimension.Length, out _, out string complaint));
        Assert.Equal(expected, complaint);
    }

    [Fact]
    public void TryParse_SeveralDimensions_NamesAll()
    {
        Assert.False(Quantity.TryParse("5 V", [Dimension.Time, Dimension.Angle], out _, out string complaint));
        Assert.Equal("\"5 V\" is a voltage; a time or angle is a number with a unit, e.g. \"7 s\" or \"12 deg\"", complaint);
    }

    // Oracle: decimal arithmetic done here on the digits themselves.
    [Fact]
    public void TryParse_AnyHundredthOfAnInch_IsTheDecimalProduct() =>
        Gen.Int[-100_000, 100_000].Sample(
            n =>
            {
                string text = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{n / 100m:0.00} in");
                return Quantity.TryParse(text, Dimension.Length, out Quantity read, out _) && read.InBaseUnit == n * 0.254m;
            },
            iter: 2000);

    [Fact]
    public void TryParse_AnyText_NeverThrows() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789.,+-eE mMinV%/\u00B5\u03BC"], 0, 12]).Sample(
            text =>
            {
                bool well = Quantity.TryParse(text, Dimension.Length, out _, out string complaint);
                return well == (complaint.Length == 0);
            },
            iter: 5000);
}
