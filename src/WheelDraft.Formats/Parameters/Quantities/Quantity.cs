using WheelDraft.Geometry;

namespace WheelDraft.Formats.Parameters;

/// <summary>A number with its unit, as written in a parameter file or on the command line: <c>"0.5 mm"</c>, <c>"1.2 L/min"</c>, <c>"1 1/2 in"</c>, <c>"2 min 15 s"</c>.</summary>
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
        if (QuantityParts.Of(trimmed) is { } parts && (wanted.Contains(parts[0].Unit.Dimension) || parts.Count > 1))
        {
            return TrySum(trimmed, parts, wanted, out quantity, out complaint);
        }

        int end = QuantityText.NumberLength(trimmed);
        string number = trimmed[..end];
        string unit = trimmed[end..].TrimStart(QuantityText.Blanks);
        complaint = QuantityText.Fault(trimmed, number, unit, wanted) ?? $"\"{trimmed}\" is too large a number; {DimensionWords.RightForm(wanted)}";
        return false;
    }

    private static bool TrySum(string text, IReadOnlyList<QuantityPart> parts, IReadOnlyList<Dimension> wanted, out Quantity quantity, out string complaint)
    {
        quantity = default;
        Unit first = parts[0].Unit;
        complaint = QuantityParts.Fault(text, parts)
            ?? (wanted.Contains(first.Dimension) ? "" : $"\"{text}\" is {Words.A(DimensionWords.Of(first.Dimension).Name)}; {DimensionWords.RightForm(wanted)}");
        if (complaint.Length > 0)
        {
            return false;
        }

        quantity = new Quantity(parts.Sum(p => p.InBaseUnit), first.Dimension, first.Symbol);
        return true;
    }
}
