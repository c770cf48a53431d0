using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Parameters;

/// <summary>A number with its unit, as written in a parameter file or on the command line: <c>"0.5 mm"</c>, <c>"1.2 L/min"</c>.</summary>
/// <remarks>Arithmetic is decimal until the last cast, so <c>"12 in"</c> is exactly 304.8 mm and not a neighbour of it.</remarks>
/// <param name="InBaseUnit">Size in the base unit of the dimension, see <see cref="Parameters.Dimension"/>.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Unit">The unit as written.</param>
internal readonly record struct Quantity(decimal InBaseUnit, Dimension Dimension, string Unit)
{
    /// <summary>Size in the base unit.</summary>
    public double Value => (double)InBaseUnit;

    /// <summary>An angle in radians.</summary>
    /// <exception cref="InvalidOperationException">It is no angle.</exception>
    public double AngleRad => Dimension == Dimension.Angle
        ? Angles.RadFromDeg(Value)
        : throw new InvalidOperationException($"{Words.Capital(Words.A(DimensionWords.Of(Dimension).Name))} has no size in radians.");

    /// <summary>Reads a quantity of one dimension.</summary>
    /// <param name="text">The text; spaces round it and between number and unit do not matter.</param>
    /// <param name="wanted">The dimension that is right here.</param>
    /// <param name="quantity">What was read.</param>
    /// <param name="complaint">What is wrong and what would be right, parted by a semicolon; empty when all is well.</param>
    /// <returns>Whether the text is a quantity of that dimension.</returns>
    public static bool TryParse(string text, Dimension wanted, out Quantity quantity, out string complaint) =>
        TryParse(text, [wanted], out quantity, out complaint);

    /// <summary>Reads a quantity of any of some dimensions.</summary>
    /// <inheritdoc cref="TryParse(string, Dimension, out Quantity, out string)"/>
    public static bool TryParse(string text, IReadOnlyList<Dimension> wanted, out Quantity quantity, out string complaint)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(wanted);
        quantity = default;
        string trimmed = text.Trim(QuantityText.Blanks);
        int end = QuantityText.NumberLength(trimmed);
        string number = trimmed[..end];
        string unit = trimmed[end..].TrimStart(QuantityText.Blanks);
        complaint = QuantityText.Fault(trimmed, number, unit, wanted) ?? "";
        if (complaint.Length > 0)
        {
            return false;
        }

        Unit known = Parameters.Unit.Find(unit)!;
        if (!TryScale(number, known, out decimal size))
        {
            complaint = $"\"{trimmed}\" is too large a number; {DimensionWords.RightForm(wanted)}";
            return false;
        }

        quantity = new Quantity(size, known.Dimension, unit);
        return true;
    }

    private static bool TryScale(string number, Unit unit, out decimal size)
    {
        size = 0;

        // 1e12 of any unit is far outside every plausible range, and keeps the products within a decimal.
        const decimal most = 1e12m;
        if (!decimal.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out decimal plain) || Math.Abs(plain) > most)
        {
            return false;
        }

        size = plain * unit.Numerator / unit.Denominator;
        return true;
    }
}
