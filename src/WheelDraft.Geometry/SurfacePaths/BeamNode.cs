namespace WheelDraft.Geometry;

/// <summary>A beam in the tree of all beams that leave one source, with what lies before it once somebody has looked.</summary>
/// <remarks>What lies before a beam depends on the surface alone: neither on what is looked for nor on how far. So one tree serves every
/// pair of conductors; each follows as much of it as can be part of its own shortest way.</remarks>
internal sealed class BeamNode(Beam beam, BeamTree tree)
{
    internal Beam Beam { get; } = beam;

    /// <summary>The tree that it is in.</summary>
    internal BeamTree Tree { get; } = tree;

    /// <summary>Where it goes on, in order; null while nobody has looked, and where there are too many to keep.</summary>
    internal BeamExit[]? Exits { get; set; }
}

/// <summary>A stretch through which a beam leaves its sheet, or within which it goes on for ever.</summary>
internal sealed class BeamExit
{
    /// <summary>How it leaves.</summary>
    internal required BeamExitKind Kind { get; init; }

    /// <summary>What the beam sees on the way there; null on a wall.</summary>
    internal BeamReach? Reach { get; init; }

    /// <summary>The edge that is crossed; the next wall where it goes round a corner.</summary>
    internal ReliefEdge? Edge { get; init; }

    /// <summary>One end of the stretch, on the beam's sheet.</summary>
    internal Point First { get; init; }

    /// <summary>Its other end.</summary>
    internal Point Second { get; init; }

    /// <summary>Whether a wall is left over its upper edge, or by its first corner.</summary>
    internal bool IsFirst { get; init; }

    /// <summary>Length of the way to the nearest place of the stretch, mm.</summary>
    internal double NearMm { get; init; }

    /// <summary>Bounds of the stretch in plan.</summary>
    internal Bounds Plan { get; init; }

    /// <summary>Whether all that leave here are known to be longer than ways by a corner.</summary>
    internal bool IsOutdone { get; set; }

    /// <summary>The beams beyond; null while nobody has followed them.</summary>
    internal BeamNode[]? Beyond { get; set; }

    /// <summary>Ways on by a link to conductors near the foot of the wall, as far as somebody has asked.</summary>
    internal Dictionary<SurfaceConductor, Arrival?>? Landings { get; set; }
}

/// <summary>How a beam leaves its sheet.</summary>
internal enum BeamExitKind
{
    /// <summary>Not at all: nothing lies ahead, or the surface ends and no bridge leads on.</summary>
    Ends,

    /// <summary>From a level onto the wall ahead.</summary>
    OntoWall,

    /// <summary>From a level over a bridge, where the surface ends.</summary>
    OverBrink,

    /// <summary>From a wall onto the level at its foot or at its upper edge.</summary>
    OffWall,

    /// <summary>From a wall round a corner onto the next.</summary>
    RoundCorner,
}
