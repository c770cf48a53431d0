using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Numbers as drawings write them.</summary>
/// <remarks>Decimal point, not the comma of ISO 129-1: the same sign as in the parameter file, the reports and the cutting files, so
/// that a figure can be found in all of them; the title block says so. Rounded before it is written, never a negative zero, half to even.</remarks>
internal sealed class DrawingNumbers
{
    private const double MmPerInch = 25.4;
    private const int InchDecimals = 4;

    /// <summary>Numbers of drawings in a unit.</summary>
    public DrawingNumbers(DrawingUnit unit) => Unit = unit;

    /// <summary>Unit of lengths.</summary>
    public DrawingUnit Unit { get; }

    /// <summary>The unit's sign: mm or in.</summary>
    public string UnitSign => Unit == DrawingUnit.Inch ? "in" : "mm";

    /// <summary>A length: millimetres with at most the given decimals and no zeros at the end, or inches with four decimals.</summary>
    public string Length(double lengthMm, int decimals = 2) =>
        Unit == DrawingUnit.Inch ? Fixed(lengthMm / MmPerInch, InchDecimals) : Trimmed(lengthMm, decimals);

    /// <summary>A length for columns of figures: millimetres with exactly the given decimals, or inches with four.</summary>
    public string LengthInColumn(double lengthMm, int decimals = 3) =>
        Unit == DrawingUnit.Inch ? Fixed(lengthMm / MmPerInch, InchDecimals) : Fixed(lengthMm, decimals);

    /// <summary>A length with its unit.</summary>
    public string LengthWithUnit(double lengthMm, int decimals = 2) => $"{Length(lengthMm, decimals)} {UnitSign}";

    /// <summary>A thickness of stock with its unit, to a micrometre or a ten-thousandth of an inch: foil of 35 µm is not 0.04 mm.</summary>
    public string Thickness(double thicknessMm) => LengthWithUnit(thicknessMm, 3);

    /// <summary>A diameter: Ø and the length.</summary>
    public string Diameter(double diameterMm, int decimals = 2) => "Ø" + Length(diameterMm, decimals);

    /// <summary>A radius: R and the length.</summary>
    public string Radius(double radiusMm, int decimals = 2) => "R" + Length(radiusMm, decimals);

    /// <summary>An angle given in radians: degrees with at most the given decimals.</summary>
    public static string Angle(double angleRad, int decimals = 2) => Trimmed(angleRad * (180 / Math.PI), decimals) + "°";

    /// <summary>A direction given in radians as an angle in [0, 360): what rounds to a whole turn is 0.</summary>
    internal static string Direction(double angleRad, int decimals = 2) => Trimmed(RoundedTurn(angleRad, decimals), decimals) + "°";

    /// <summary>A direction given in radians for columns of figures, in [0, 360): what rounds to a whole turn is 0.</summary>
    internal static string DirectionInColumn(double angleRad, int decimals = 3) => Fixed(RoundedTurn(angleRad, decimals), decimals);

    private static double RoundedTurn(double angleRad, int decimals)
    {
        double degrees = Math.Round(Angles.DegFromRad(Angles.InTurn(angleRad)), decimals);
        return degrees >= 360 ? 0 : degrees;
    }

    /// <summary>A number with at most the given decimals and no zeros at the end.</summary>
    public static string Trimmed(double number, int decimals) => Rounded(number, decimals).ToString(decimals == 0 ? "0" : "0." + new string('#', decimals), CultureInfo.InvariantCulture);

    /// <summary>A number with exactly the given decimals.</summary>
    public static string Fixed(double number, int decimals) => Rounded(number, decimals).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static double Rounded(double number, int decimals) =>
        double.IsFinite(number)
            ? Math.Round(number, decimals) + 0.0
            : throw new ArgumentOutOfRangeException(nameof(number), number, "A drawing shows finite numbers only.");
}
