namespace WheelDraft.Engineering;

/// <summary>A way to cut copper, with the numbers that a shop of the usual kind keeps.</summary>
/// <remarks>Figures are what design guides of shops say, not promises of any one shop: the person's own numbers go before them.</remarks>
/// <param name="Name">Name in parameter files.</param>
/// <param name="KerfMm">Width that the cut takes in the drawing's sense; 0 where the way of working already allows for it.</param>
/// <param name="Tolerance">A cut edge, plus and minus.</param>
/// <param name="LeastSlot">Narrowest opening.</param>
/// <param name="LeastWeb">Narrowest copper.</param>
/// <param name="LeastHole">Smallest hole.</param>
/// <param name="InsideRadius">Radius of re-entrant corners.</param>
internal sealed record CuttingProcess(
    string Name,
    double KerfMm,
    ThicknessRule Tolerance,
    ThicknessRule LeastSlot,
    ThicknessRule LeastWeb,
    ThicknessRule LeastHole,
    ThicknessRule InsideRadius)
{
    /// <summary>Thinnest stock, mm; 0 when no limit is known.</summary>
    public double ThinnestMm { get; init; }

    /// <summary>Thickest stock, mm; null when no limit is known.</summary>
    public double? ThickestMm { get; init; }

    /// <summary>Where the figures are from, and how sure they are.</summary>
    public required string Source { get; init; }

    /// <summary>What to mind with it in copper; empty when there is nothing.</summary>
    public string Remark { get; init; } = "";

    /// <summary>How fast it cuts thin copper; null where the time does not go by the length of the cut.</summary>
    public CuttingPace? Pace { get; init; }

    /// <summary>How far apart the bars are that the sheet lies on, mm; null where it is held all over, or in a bath. From memory of common practice, no source.</summary>
    public double? GrateMm { get; init; }

    /// <summary>How many times as long as wide a thin web may be before heat or force of the cut warps it; null where neither acts. From memory of common
    /// practice, no source.</summary>
    public double? WarpsBeyond { get; init; }

    /// <summary>Whether it cuts stock of a thickness.</summary>
    /// <param name="thicknessMm">Thickness of the stock.</param>
    public bool Cuts(double thicknessMm) => thicknessMm >= ThinnestMm && !(thicknessMm > ThickestMm);
}

/// <summary>How fast a process cuts copper of 0.3 to 1 mm: a wide band, to tell an honest quotation from a slip, nothing finer.</summary>
/// <remarks>From memory of common practice, no source. Setting up, programming and tool changes are not in it.</remarks>
/// <param name="SlowMmPerS">Along the cut, slowest, mm/s.</param>
/// <param name="FastMmPerS">Along the cut, fastest, mm/s.</param>
/// <param name="PierceS">For each start, s.</param>
internal sealed record CuttingPace(double SlowMmPerS, double FastMmPerS, double PierceS)
{
    /// <summary>Least and most time, s.</summary>
    public (double LeastS, double MostS) TimeS(double lengthMm, int pierces) =>
        ((lengthMm / FastMmPerS) + (pierces * PierceS), (lengthMm / SlowMmPerS) + (2 * pierces * PierceS));
}

/// <summary>A number that follows the thickness of the stock: a multiple of the thickness and a fixed part, but never below a least value.</summary>
/// <param name="Times">Multiple of the thickness.</param>
/// <param name="AtLeastMm">Least value.</param>
/// <param name="PlusMm">Fixed part.</param>
internal readonly record struct ThicknessRule(double Times, double AtLeastMm, double PlusMm = 0)
{
    /// <summary>The value for a thickness.</summary>
    /// <param name="thicknessMm">Thickness of the stock.</param>
    public double At(double thicknessMm) => Math.Max((Times * thicknessMm) + PlusMm, AtLeastMm);
}
