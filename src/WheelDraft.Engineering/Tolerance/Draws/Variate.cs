namespace WheelDraft.Engineering;

/// <summary>The law by which one number is drawn within its band.</summary>
public enum DrawLaw
{
    /// <summary>Normal, limits at three standard deviations, none beyond.</summary>
    Normal,

    /// <summary>Uniform between its limits.</summary>
    Uniform,

    /// <summary>A part of a vector of fixed length in a direction drawn uniformly: the arcsine law.</summary>
    Arcsine,
}

/// <summary>The numbers that one draw of an on-period consists of, each standing for its share of its band.</summary>
internal enum Variate
{
    Frequency,
    MakeCut,
    BreakCut,

    /// <summary>The centre along the break edge's normal.</summary>
    CentreAlong,

    /// <summary>The centre across it.</summary>
    CentreAcross,
    MakePlay,
    BreakPlay,

    /// <summary>From 0 to 1; both wipers of a land as old as each other.</summary>
    Wear,
    MakePlacing,
    BreakPlacing,

    /// <summary>From 0 to 1.</summary>
    Backlash,
    Flow,

    /// <summary>Normal numbers come in twos: this is the odd one, which nobody asks for.</summary>
    Unused,
}

/// <summary>What is drawn together and told apart from the rest: one kind of deviation.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Law">Its law.</param>
/// <param name="Of">Its numbers.</param>
internal sealed record DrawnKind(DeviationKind Kind, DrawLaw Law, IReadOnlyList<Variate> Of)
{
    /// <summary>Whether it lies on one side of nominal only.</summary>
    public bool IsOneSided => Kind is DeviationKind.Wear or DeviationKind.Backlash;
}
