using System.Globalization;

namespace WheelDraft.Formats.Parameters;

/// <summary>The plausible range of a quantity, both ends in it, as a person reads it.</summary>
/// <param name="Least">Least, as written in messages.</param>
/// <param name="Most">Most, as written in messages.</param>
internal sealed record Limits(string Least, string Most)
{
    private readonly Quantity _least = Read(Least);
    private readonly Quantity _most = Read(Most);

    /// <summary>What it measures.</summary>
    public Dimension Dimension => _least.Dimension;

    /// <summary>Whether a quantity of the same dimension lies in it.</summary>
    public bool Contains(Quantity quantity) => quantity.InBaseUnit >= _least.InBaseUnit && quantity.InBaseUnit <= _most.InBaseUnit;

    /// <summary>"between 1 um and 1 m".</summary>
    public string InWords => string.Create(CultureInfo.InvariantCulture, $"from {Least} to {Most}");

    private static Quantity Read(string text) =>
        Quantity.TryParse(text, Enum.GetValues<Dimension>(), out Quantity quantity, out string complaint)
            ? quantity
            : throw new FormatException(complaint);
}
