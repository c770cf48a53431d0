namespace WheelDraft.Geometry;

/// <summary>A straight wall between two levels of a surface, or an edge beyond which there is no surface.</summary>
internal sealed class ReliefEdge
{
    private Bounds? _bounds;
    private ReliefEdge? _whole;

    internal required int Index { get; init; }

    internal required int FromCorner { get; init; }

    internal required int ToCorner { get; init; }

    internal required Point From { get; init; }

    internal required Point To { get; init; }

    /// <summary>Length 1, from the first corner to the second.</summary>
    internal required Vector Along { get; init; }

    internal required double LengthMm { get; init; }

    /// <summary>Level at its foot, mm.</summary>
    internal required double LowMm { get; init; }

    /// <summary>Level at its upper edge, mm; infinite where there is no surface beyond.</summary>
    internal required double HighMm { get; init; }

    /// <summary>Length 1, square to it, from the lower side to the upper one.</summary>
    internal required Vector Uphill { get; init; }

    /// <summary>Taken off where it is crossed, mm: how far it is at most from the border that it stands for.</summary>
    internal required double SlackMm { get; init; }

    /// <summary>Name of its region.</summary>
    internal required string Region { get; init; }

    /// <summary>Whether it has an upright wall at whose foot something can stand.</summary>
    internal required bool IsUpright { get; init; }

    /// <summary>Whether it is the wall of something raised.</summary>
    internal required bool IsRaised { get; init; }

    /// <summary>Whether it is part of the outline of the surface, beyond which nothing is.</summary>
    internal required bool IsOutline { get; init; }

    internal bool Blocks => double.IsPositiveInfinity(HighMm);

    /// <summary>Places of foot and upper edge at its first corner, then at its second; −1 where there is no surface.</summary>
    internal int[] Places { get; } = [-1, -1, -1, -1];

    /// <summary>The place of its foot or upper edge at one of its ends; −1 where there is no surface.</summary>
    internal int PlaceAt(bool isFrom, bool isHigh) => Places[(isFrom ? 0 : 2) + (isHigh ? 1 : 0)];

    /// <summary>The edge of which it is a part: a wall is one wall, however it is cut.</summary>
    internal ReliefEdge Whole { get => _whole ?? this; set => _whole = value; }

    /// <summary>Edges to which a bridge leads across the recess before it.</summary>
    internal List<ReliefEdge> Across { get; } = [];

    /// <summary>Length 1, square to it, from the side on which a bridge ends into the recess: down from a wall, or to where there is no surface.</summary>
    internal Vector Outward => Blocks ? Uphill : -Uphill;

    /// <summary>Level of the side on which a bridge ends, mm.</summary>
    internal double BrinkMm => Blocks ? LowMm : HighMm;

    internal double WallMm => HighMm - LowMm;

    internal Bounds Bounds => _bounds ??= Bounds.Of(From, To);

    internal Point At(double alongMm) => From + (Along * alongMm);

    internal double AlongOf(Point p) => (p - From).Dot(Along);

    internal double OutwardOf(Point p) => (p - From).Dot(Outward);

    internal double UphillOf(Point p) => (p - From).Dot(Uphill);

    internal double DistanceTo(Point p) => At(Math.Clamp(AlongOf(p), 0, LengthMm)).DistanceTo(p);
}
