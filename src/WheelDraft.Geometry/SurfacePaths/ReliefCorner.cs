namespace WheelDraft.Geometry;

/// <summary>What lies between two neighbouring edges at a corner.</summary>
/// <param name="Corner">The corner.</param>
/// <param name="Index">Which of its sectors.</param>
/// <param name="LevelMm">Level, mm; infinite where there is no surface.</param>
/// <param name="FromRad">Direction of the edge at its right side, seen from the corner.</param>
/// <param name="SweepRad">Angle to the edge at its left side.</param>
/// <param name="Right">The edge at its right side.</param>
/// <param name="Left">The edge at its left side.</param>
internal sealed record ReliefSector(int Corner, int Index, double LevelMm, double FromRad, double SweepRad, ReliefEdge Right, ReliefEdge Left)
{
    internal bool IsBlocked => double.IsPositiveInfinity(LevelMm);

    /// <summary>Its place in the list of places where a path can bend; −1 when no shortest path bends there.</summary>
    internal int Node { get; set; } = -1;

    /// <summary>Its place in the list of places to which ways are noted; −1 where there is no surface.</summary>
    internal int Place { get; set; } = -1;
}

/// <summary>A corner where edges meet, with what lies between them in anticlockwise order.</summary>
internal sealed class ReliefCorner(Point at)
{
    internal Point At { get; } = at;

    internal List<ReliefEdge> Edges { get; } = [];

    internal List<ReliefSector> Sectors { get; } = [];

    /// <summary>The sector in a direction.</summary>
    internal ReliefSector? SectorAt(Vector direction) =>
        Sectors.Find(s => Angles.InTurn(direction.AngleRad - s.FromRad) <= s.SweepRad);

    /// <summary>The sector beside an edge, on its upper or lower side.</summary>
    internal ReliefSector? Beside(ReliefEdge edge, bool high) => Sectors.Find(s =>
        (s.Right == edge && IsHighOnLeft(edge) == high) || (s.Left == edge && IsHighOnLeft(edge) != high));

    /// <summary>What lies beside the upright end of a wall here, from its foot up: the edge that is passed, the sector beyond, and from which height on it counts.</summary>
    internal IEnumerable<(ReliefEdge Next, ReliefSector Beyond, double UpMm)> Round(ReliefEdge wall)
    {
        double up = wall.LowMm;
        bool anticlockwise = !IsHighOnLeft(wall);
        ReliefSector? sector = Beside(wall, high: false);
        for (int i = 0; sector is not null && i < Sectors.Count && up < wall.HighMm; i++)
        {
            ReliefEdge next = anticlockwise ? sector.Left : sector.Right;
            ReliefSector beyond = Sectors[(sector.Index + (anticlockwise ? 1 : Sectors.Count - 1)) % Sectors.Count];
            if (beyond.IsBlocked || next == wall)
            {
                yield break;
            }

            yield return (next, beyond, up);
            up = Math.Max(up, beyond.LevelMm);
            sector = beyond;
        }
    }

    /// <summary>Edges beside a sector of which it is the side where a bridge over the recess before them ends.</summary>
    internal IEnumerable<ReliefEdge> BrinksOf(ReliefSector sector) =>
        new[] { sector.Left, sector.Right }.Distinct().Where(edge => Beside(edge, high: !edge.Blocks) == sector);

    /// <summary>Walls at whose upright end here a sector lies halfway up.</summary>
    internal IEnumerable<ReliefEdge> WallsBeside(ReliefSector sector) =>
        Edges.Where(wall => !wall.Blocks && IsHalfway(sector, wall) && Round(wall).Any(r => r.Beyond == sector));

    /// <summary>Whether a sector lies between the foot and the upper edge of a wall.</summary>
    internal static bool IsHalfway(ReliefSector sector, ReliefEdge wall) => sector.LevelMm > wall.LowMm && sector.LevelMm < wall.HighMm;

    /// <summary>Whether the upper side of an edge lies to the left, looking from this corner along it.</summary>
    internal bool IsHighOnLeft(ReliefEdge edge) => Outward(edge).Left.Dot(edge.Uphill) > 0;

    internal Vector Outward(ReliefEdge edge) => Starts(edge) ? edge.Along : -edge.Along;

    internal bool Starts(ReliefEdge edge) => edge.From == At;
}
