namespace WheelDraft.Geometry;

/// <summary>A shortest path on a surface.</summary>
/// <param name="LengthMm">Its length along the surface, walls included; 0 where the two ends touch.</param>
/// <param name="Legs">Its legs in order; empty where the two ends touch.</param>
public sealed record SurfacePath(double LengthMm, IReadOnlyList<SurfaceLeg> Legs)
{
    /// <summary>The same path from the other end.</summary>
    public SurfacePath Reversed() => new(LengthMm, [.. Legs.Reverse().Select(l => l.Reversed())]);
}

/// <summary>One leg of a path on a surface: straight, or along a round border.</summary>
/// <param name="Piece">Its plan.</param>
/// <param name="LengthMm">Its length, walls included.</param>
/// <param name="Crossed">What it crosses, in order.</param>
public sealed record SurfaceLeg(Piece Piece, double LengthMm, IReadOnlyList<Crossing> Crossed)
{
    /// <summary>What walls and links add to the plan length, mm.</summary>
    public double AddedMm => LengthMm - Piece.Length;

    /// <summary>The same leg from the other end.</summary>
    public SurfaceLeg Reversed() => new(Piece.Reversed(), LengthMm, [.. Crossed.Reverse()]);
}

/// <summary>A border crossed, or a recess bridged.</summary>
/// <param name="Region">Name of the region.</param>
/// <param name="At">Where, in plan.</param>
/// <param name="AddedMm">What it adds to the plan length, mm: the wall, less where the recess before it is bridged.</param>
/// <param name="Bridged">Whether a recess narrower than the link is bridged there.</param>
public sealed record Crossing(string Region, Point At, double AddedMm, bool Bridged);
