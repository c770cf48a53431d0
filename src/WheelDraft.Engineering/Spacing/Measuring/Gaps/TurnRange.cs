namespace WheelDraft.Engineering;

/// <summary>A part of the turn, both ends included: angles by which the wheel is turned anticlockwise from where it is drawn.</summary>
/// <remarks>With a programme angle ψ the wheel is turned by ψ when it runs anticlockwise, by −ψ when it runs clockwise.</remarks>
public readonly record struct TurnRange
{
    /// <summary>From one angle on to another.</summary>
    /// <param name="fromRad">Any finite angle.</param>
    /// <param name="toRad">Not before it; the same for a single position.</param>
    /// <exception cref="ArgumentOutOfRangeException">An angle is not finite, or the second is before the first.</exception>
    public TurnRange(double fromRad, double toRad)
    {
        if (!double.IsFinite(fromRad) || !double.IsFinite(toRad) || toRad < fromRad)
        {
            throw new ArgumentOutOfRangeException(nameof(toRad), toRad, "A part of the turn runs forward between two finite angles.");
        }

        FromRad = fromRad;
        ToRad = toRad;
    }

    /// <summary>Where it begins, radians.</summary>
    public double FromRad { get; }

    /// <summary>Where it ends, radians.</summary>
    public double ToRad { get; }
}
