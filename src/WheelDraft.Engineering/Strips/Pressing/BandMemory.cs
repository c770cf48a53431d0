using System.Collections.Concurrent;

namespace WheelDraft.Engineering;

/// <summary>Bands found before, by all that decides them: where one key of a file is varied, most strips stay as they are.</summary>
/// <remarks>Safe to use from many threads; what two find at once is the same.</remarks>
internal sealed class BandMemory
{
    private readonly ConcurrentDictionary<PressedShape, StripBand> _bands = new();

    /// <summary>The band of a shape.</summary>
    public StripBand Of(PressedShape shape, Func<StripBand> find) => _bands.TryGetValue(shape, out StripBand? band) ? band : _bands.GetOrAdd(shape, find());
}

/// <summary>All that decides the band of a strip, compared by value.</summary>
/// <remarks>Left out of its form are only its blank, its findings, its place in the file and what else the file says of it: <see cref="StripBanding"/> does not read them.</remarks>
internal sealed class PressedShape(StripForm form, PressingLimits limits, SpaceVector radial, PressingUse use) : IEquatable<PressedShape>
{
    private readonly (double ThicknessMm, Material Material, StripClamp Clamp, double SeatLevelMm, StripNose? Nose) _form =
        (form.Strip.ThicknessMm, form.Material, form.Clamp, form.SeatLevelMm, form.Nose);

    private readonly (PressingLimits Limits, SpaceVector Radial, PressingUse Use) _pressing = (limits, radial, use);
    private readonly IReadOnlyList<FormedPiece> _pieces = form.Pieces;
    private readonly IReadOnlyList<StripFold> _folds = form.Folds;

    /// <inheritdoc/>
    public bool Equals(PressedShape? other) =>
        other is not null && _form.Equals(other._form) && _pressing.Equals(other._pressing) && _pieces.SequenceEqual(other._pieces) && _folds.SequenceEqual(other._folds);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as PressedShape);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(_form.ThicknessMm, _form.SeatLevelMm, _form.Nose?.Centre, _pressing.Radial, _pressing.Use, _pieces.Count, _pieces[^1].Start);
}
