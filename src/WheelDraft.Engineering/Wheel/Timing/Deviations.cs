namespace WheelDraft.Engineering;

// The folder "Timing": what may depart from the drawing, and how far it moves makes, breaks and on-times at worst. One list of
// deviations feeds the worst case of on-times, the bands of single edges, the limits of starts and everything drawn at random.

/// <summary>What departs from its nominal value.</summary>
public enum DeviationKind
{
    /// <summary>The supply's frequency, and with it the speed.</summary>
    Frequency,

    /// <summary>The cut of the make edge.</summary>
    MakeCut,

    /// <summary>The cut of the break edge.</summary>
    BreakCut,

    /// <summary>The centre of the copper off the shaft's axis.</summary>
    Centre,

    /// <summary>The wiper's radius, at each edge by itself.</summary>
    SidePlay,

    /// <summary>The contact patch, from new to worn.</summary>
    Wear,

    /// <summary>Where a wiper stands along the motion.</summary>
    Placing,

    /// <summary>Play of the gear at the wheel.</summary>
    Backlash,

    /// <summary>The flow while an output is on; it moves a dose and no time.</summary>
    Flow,
}

/// <summary>How a deviation is spread within its band.</summary>
internal enum DeviationSpread
{
    /// <summary>As draws are asked for: uniform between its limits, or normal with limits at three standard deviations.</summary>
    AsAsked,

    /// <summary>A vector of fixed length whose direction is uniform: its part along an edge's normal follows the arcsine law.</summary>
    UniformDirection,

    /// <summary>Grows over the life of the contact from the least to the most.</summary>
    OverLife,
}

/// <summary>One thing that departs from its nominal value.</summary>
/// <param name="Kind">What.</param>
/// <param name="Least">Lower end of its band.</param>
/// <param name="Most">Upper end of its band.</param>
/// <param name="Unit">Unit of both ends: mm, rad, or share.</param>
/// <param name="Spread">How it is spread.</param>
internal sealed record Deviation(DeviationKind Kind, double Least, double Most, string Unit, DeviationSpread Spread)
{
    /// <summary>What reports call it.</summary>
    public string Name => NameOf(Kind);

    /// <summary>What reports call a kind of deviation.</summary>
    public static string NameOf(DeviationKind kind) => kind switch
    {
        DeviationKind.Frequency => "supply frequency",
        DeviationKind.MakeCut => "make edge",
        DeviationKind.BreakCut => "break edge",
        DeviationKind.Centre => "centre offset",
        DeviationKind.SidePlay => "side play",
        DeviationKind.Wear => "wear",
        DeviationKind.Placing => "placing",
        DeviationKind.Flow => "flow",
        _ => "backlash",
    };
}

/// <summary>Everything that may depart from the drawing on one ring: each once, with its band.</summary>
/// <remarks>Where each acts: the frequency on every time; a cut along the normal of its edge; the centre as one vector, fixed in the
/// wheel, on all edges; side play on the wiper's radius, free at each edge; wear on the patch; placing on each wiper by itself;
/// backlash on the whole wheel.</remarks>
internal sealed record Deviations
{
    /// <summary>Supply frequency, plus and minus, as a share.</summary>
    public double FrequencyShare { get; init; }

    /// <summary>The make edge along its normal, plus and minus, mm.</summary>
    public double MakeCutMm { get; init; }

    /// <summary>The break edge along its normal, plus and minus, mm.</summary>
    public double BreakCutMm { get; init; }

    /// <summary>How far the copper's centre may be off the axis, mm: half the run-out.</summary>
    public double CentreMm { get; init; }

    /// <summary>The wiper along the radius, plus and minus, mm.</summary>
    public double SidePlayMm { get; init; }

    /// <summary>Whether contacts wear.</summary>
    public bool Wears { get; init; }

    /// <summary>Each wiper along its circle, plus and minus, mm.</summary>
    public double PlacingMm { get; init; }

    /// <summary>Play of the gear at the wheel, rad: the wheel may lag by up to this.</summary>
    public double BacklashRad { get; init; }

    /// <summary>Those of one ring of a wheel.</summary>
    public static Deviations Of(RingShop shop, RingDemand ring) => Of(shop, ring.SidePlayMm);

    /// <summary>Those of one ring of a wheel.</summary>
    public static Deviations Of(RingShop shop, double sidePlayMm) => new()
    {
        FrequencyShare = shop.FrequencyShare,
        MakeCutMm = shop.Process.ToleranceMm,
        BreakCutMm = shop.Process.ToleranceMm,
        CentreMm = shop.RunOutMm / 2,
        SidePlayMm = sidePlayMm,
        Wears = true,
        PlacingMm = shop.PlacingMm,
        BacklashRad = shop.BacklashRad,
    };

    /// <summary>One a kind, in fixed order.</summary>
    public IReadOnlyList<Deviation> All =>
    [
        new(DeviationKind.Frequency, -FrequencyShare, FrequencyShare, "share", DeviationSpread.AsAsked),
        new(DeviationKind.MakeCut, -MakeCutMm, MakeCutMm, "mm", DeviationSpread.AsAsked),
        new(DeviationKind.BreakCut, -BreakCutMm, BreakCutMm, "mm", DeviationSpread.AsAsked),
        new(DeviationKind.Centre, -CentreMm, CentreMm, "mm", DeviationSpread.UniformDirection),
        new(DeviationKind.SidePlay, -SidePlayMm, SidePlayMm, "mm", DeviationSpread.AsAsked),
        new(DeviationKind.Wear, 0, Wears ? 1 : 0, "share", DeviationSpread.OverLife),
        new(DeviationKind.Placing, -PlacingMm, PlacingMm, "mm", DeviationSpread.AsAsked),
        new(DeviationKind.Backlash, 0, BacklashRad, "rad", DeviationSpread.AsAsked),
    ];

    /// <summary>One of them alone, all others at their nominal values.</summary>
    public Deviations Only(DeviationKind kind) => kind switch
    {
        DeviationKind.Frequency => new() { FrequencyShare = FrequencyShare },
        DeviationKind.MakeCut => new() { MakeCutMm = MakeCutMm },
        DeviationKind.BreakCut => new() { BreakCutMm = BreakCutMm },
        DeviationKind.Centre => new() { CentreMm = CentreMm },
        DeviationKind.SidePlay => new() { SidePlayMm = SidePlayMm },
        DeviationKind.Wear => new() { Wears = Wears },
        DeviationKind.Placing => new() { PlacingMm = PlacingMm },
        _ => new() { BacklashRad = BacklashRad },
    };
}
