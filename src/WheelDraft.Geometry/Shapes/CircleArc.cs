using System.Globalization;

namespace WheelDraft.Geometry;

/// <summary>An arc of a circle as a value: the directions from a start, anticlockwise, through a sweep.</summary>
/// <remarks>Angles in radians, anticlockwise. Contains its start and not its end; may run across zero. A sweep of zero is
/// <see cref="Empty"/>, of one turn <see cref="Full"/>. <c>default</c> is <see cref="Empty"/>.</remarks>
public readonly record struct CircleArc
{
    private CircleArc(double startRad, double sweepRad)
    {
        StartRad = startRad;
        SweepRad = sweepRad;
    }

    /// <summary>No direction at all.</summary>
    public static CircleArc Empty => default;

    /// <summary>Every direction; its start is 0.</summary>
    public static CircleArc Full => new(0, Angles.TurnRad);

    /// <summary>Where the arc starts, in [0, 2π).</summary>
    public double StartRad { get; }

    /// <summary>How far it runs anticlockwise, in [0, 2π].</summary>
    public double SweepRad { get; }

    /// <summary>Where the arc ends: start + sweep, so in [0, 4π).</summary>
    public double EndRad => StartRad + SweepRad;

    /// <summary>The direction midway.</summary>
    public double MiddleRad => Angles.InTurn(StartRad + (SweepRad / 2));

    /// <summary>Whether no direction lies in the arc.</summary>
    public bool IsEmpty => SweepRad == 0;

    /// <summary>Whether every direction lies in the arc.</summary>
    public bool IsFull => SweepRad == Angles.TurnRad;

    /// <summary>The rest of the circle.</summary>
    public CircleArc Complement =>
        IsEmpty ? Full : IsFull ? Empty : Sweep(EndRad, Angles.TurnRad - SweepRad);

    /// <summary>The arc that starts at an angle and sweeps anticlockwise.</summary>
    /// <param name="startRad">Any finite angle.</param>
    /// <param name="sweepRad">0 (empty) to one turn (full).</param>
    /// <exception cref="ArgumentOutOfRangeException">The sweep is negative, over one turn or not finite.</exception>
    public static CircleArc Sweep(double startRad, double sweepRad)
    {
        if (!double.IsFinite(startRad))
        {
            throw new ArgumentOutOfRangeException(nameof(startRad), startRad, "An arc needs a finite start.");
        }

        // One turn found by adding up degrees may be a few units in the last place too long: that is still one turn.
        const double roundingRad = 1e-14;
        if (!(sweepRad >= 0) || sweepRad > Angles.TurnRad + roundingRad)
        {
            throw new ArgumentOutOfRangeException(nameof(sweepRad), sweepRad, "An arc sweeps from 0 to one turn.");
        }

        return sweepRad == 0 ? Empty : new(Angles.InTurn(startRad), Math.Min(sweepRad, Angles.TurnRad));
    }

    /// <summary>The arc from one direction anticlockwise to another; empty when they are the same.</summary>
    public static CircleArc Between(double startRad, double endRad) => Sweep(startRad, Angles.InTurn(endRad - startRad));

    /// <summary>Whether a direction lies in the arc (its start does, its end does not).</summary>
    public bool Contains(double angleRad) => Angles.InTurn(angleRad - StartRad) < SweepRad;

    /// <summary>Whether the two arcs share a direction.</summary>
    public bool Overlaps(CircleArc other) =>
        !IsEmpty && !other.IsEmpty && (Contains(other.StartRad) || other.Contains(StartRad));

    /// <summary>Whether every direction of the other arc lies in this one.</summary>
    public bool Covers(CircleArc other) =>
        other.IsEmpty || IsFull || (Contains(other.StartRad) && Angles.InTurn(other.StartRad - StartRad) + other.SweepRad <= SweepRad);

    /// <summary>The common directions: none, one or two arcs, in the order met from this arc's start.</summary>
    public IReadOnlyList<CircleArc> Intersect(CircleArc other)
    {
        if (IsEmpty || other.IsEmpty)
        {
            return [];
        }

        if (IsFull)
        {
            return [other];
        }

        if (other.IsFull)
        {
            return [this];
        }

        // Seen from this arc's start, the other one lies at `ahead`, and once more a turn earlier.
        double ahead = Angles.InTurn(other.StartRad - StartRad);
        List<CircleArc> common = [];
        double wrapped = Math.Min(SweepRad, ahead + other.SweepRad - Angles.TurnRad);
        if (wrapped > 0)
        {
            common.Add(Sweep(StartRad, wrapped));
        }

        if (ahead < SweepRad)
        {
            common.Add(Sweep(StartRad + ahead, Math.Min(SweepRad - ahead, other.SweepRad)));
        }

        return common;
    }

    /// <summary>Start and sweep in degrees.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"from {Angles.DegFromRad(StartRad)}° through {Angles.DegFromRad(SweepRad)}°");

    /// <summary>The arc turned anticlockwise.</summary>
    public CircleArc Turned(double byRad) => IsEmpty ? Empty : Sweep(StartRad + byRad, SweepRad);

    /// <summary>The arc seen in a mirror that swaps left and right of the zero direction: angle a becomes −a.</summary>
    /// <remarks>The two ends change places, so the mirrored arc contains what was the end.</remarks>
    public CircleArc Mirrored() => IsEmpty ? Empty : new(Angles.InTurn(-EndRad), SweepRad);
}
