namespace WheelDraft.Drawing;

/// <summary>What an area means. The theme gives the colour, <see cref="FillPattern"/> the pattern, so that nothing rests on colour alone.</summary>
internal enum FillKind
{
    /// <summary>The paper: covers what lies below, behind texts and callouts.</summary>
    Paper,

    /// <summary>The copper of wheel and strips.</summary>
    Copper,

    /// <summary>Copper that does not matter in this view.</summary>
    CopperPale,

    /// <summary>The insulating carrier.</summary>
    Carrier,

    /// <summary>A window in the copper, and other openings.</summary>
    Window,

    /// <summary>Insulating surfaces, ribs and walls.</summary>
    Insulation,

    /// <summary>Other parts: motor frame, screws.</summary>
    Part,

    /// <summary>Heads of tables, rows of charts.</summary>
    Band,

    /// <summary>Where an edge may lie: its tolerance or adjusting range.</summary>
    Whisker,

    /// <summary>A place that meets its rule.</summary>
    Meets,

    /// <summary>A place near its limit.</summary>
    Warning,

    /// <summary>A place that misses its rule.</summary>
    Error,

    /// <summary>What is live at the moment shown.</summary>
    Live,

    /// <summary>What is at zero at the moment shown.</summary>
    AtZero,

    /// <summary>What is joined to neither line nor neutral at the moment shown.</summary>
    Unjoined,

    /// <summary>A load that is on: its bar in a chart, its lamp.</summary>
    Lit,

    /// <summary>A load that is on if inputs are as written.</summary>
    LitAtInputs,

    /// <summary>What is cut away from a part.</summary>
    Waste,

    /// <summary>What is sunk into a part's face, not through it.</summary>
    Recess,

    /// <summary>First net.</summary>
    Net1,

    /// <summary>Second net.</summary>
    Net2,

    /// <summary>Third net.</summary>
    Net3,

    /// <summary>Fourth net.</summary>
    Net4,

    /// <summary>Fifth net.</summary>
    Net5,

    /// <summary>Sixth net.</summary>
    Net6,

    /// <summary>Seventh net.</summary>
    Net7,

    /// <summary>Eighth net.</summary>
    Net8,

    /// <summary>A solid mark in an ink: arrowheads, dots, heavy bars. See <see cref="Fill.Solid"/>.</summary>
    Solid,
}

/// <summary>The meaning of an area's filling.</summary>
/// <remarks><c>default</c> is the paper.</remarks>
internal readonly record struct Fill
{
    private Fill(FillKind kind, Ink ink)
    {
        Kind = kind;
        SolidInk = ink;
    }

    /// <summary>How many nets have a look of their own; further nets begin again with the first.</summary>
    public const int NetLooks = 8;

    /// <summary>What the area means.</summary>
    public FillKind Kind { get; }

    /// <summary>The ink of a solid mark; of no meaning for other kinds.</summary>
    public Ink SolidInk { get; }

    /// <summary>The pattern drawn over the area's colour.</summary>
    public FillPattern Pattern => FillPattern.Of(Kind);

    /// <summary>The filling of a kind.</summary>
    /// <exception cref="ArgumentException">The kind is solid: that needs an ink, <see cref="Solid"/>.</exception>
    public static Fill Of(FillKind kind) =>
        kind == FillKind.Solid ? throw new ArgumentException("A solid filling needs an ink.", nameof(kind)) : new(kind, Ink.Outline);

    /// <summary>A solid mark in an ink, without pattern.</summary>
    public static Fill Solid(Ink ink) => new(FillKind.Solid, ink);

    /// <summary>The filling of a net by its number, from 0; the ninth looks as the first.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is negative.</exception>
    public static Fill Net(int number) => new(FillKind.Net1 + Look(number), Ink.Outline);

    private static int Look(int number)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(number);
        return number % NetLooks;
    }
}

/// <summary>Ways of drawing a pattern.</summary>
internal enum PatternKind
{
    /// <summary>No pattern.</summary>
    None,

    /// <summary>Parallel lines.</summary>
    Hatch,

    /// <summary>Two sets of parallel lines at right angles.</summary>
    CrossHatch,

    /// <summary>Dots in rows.</summary>
    Dots,
}

/// <summary>The pattern of a filling, on paper: the same in every theme.</summary>
/// <param name="Kind">How it is drawn.</param>
/// <param name="AngleDeg">Direction of the lines or rows, degrees anticlockwise from the right.</param>
/// <param name="SpacingMm">Distance of neighbouring lines, rows and dots, mm.</param>
/// <param name="StrokeMm">Width of lines, diameter of dots, mm.</param>
internal readonly record struct FillPattern(PatternKind Kind, double AngleDeg, double SpacingMm, double StrokeMm)
{
    /// <summary>No pattern.</summary>
    public static FillPattern None => default;

    /// <summary>The pattern of a kind of filling.</summary>
    /// <remarks>Parallel lines stand at least 0.7 mm apart (ISO 128, from memory).</remarks>
    public static FillPattern Of(FillKind kind) => kind switch
    {
        FillKind.Insulation => new(PatternKind.CrossHatch, 45, 2.5, 0.13),
        FillKind.Part => new(PatternKind.Hatch, 135, 3.5, 0.13),
        FillKind.LitAtInputs => new(PatternKind.Hatch, 135, 2.2, 0.18),
        FillKind.Whisker => new(PatternKind.Hatch, 60, 0.9, 0.13),
        FillKind.Warning => new(PatternKind.Hatch, 45, 1.2, 0.25),
        FillKind.Error => new(PatternKind.CrossHatch, 45, 1.4, 0.25),
        FillKind.Live => new(PatternKind.Hatch, 45, 1.6, 0.25),
        FillKind.Unjoined => new(PatternKind.Dots, 0, 1.6, 0.35),
        FillKind.Waste => new(PatternKind.Hatch, 45, 1.8, 0.13),
        FillKind.Recess => new(PatternKind.Dots, 0, 1.8, 0.3),
        FillKind.Net1 => new(PatternKind.Hatch, 45, 2.2, 0.18),
        FillKind.Net2 => new(PatternKind.Hatch, 135, 2.2, 0.18),
        FillKind.Net3 => new(PatternKind.Dots, 0, 1.8, 0.45),
        FillKind.Net4 => new(PatternKind.CrossHatch, 45, 2.8, 0.18),
        FillKind.Net5 => new(PatternKind.Hatch, 0, 1.8, 0.18),
        FillKind.Net6 => new(PatternKind.Hatch, 90, 1.8, 0.18),
        FillKind.Net7 => new(PatternKind.CrossHatch, 0, 2.6, 0.18),
        FillKind.Net8 => new(PatternKind.Dots, 45, 2.6, 0.8),
        _ => None,
    };
}
