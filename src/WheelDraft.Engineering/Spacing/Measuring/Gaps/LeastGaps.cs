using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The least gap through air between two groups of solids, over the whole turn or parts of it.</summary>
/// <remarks>Pairs are looked at nearest box first, until no box is nearer than the least gap found: few of all pairs are ever measured.
/// Two fixed solids and two turning ones are measured as drawn; a fixed and a turning one by radius over the whole turn.</remarks>
internal sealed class LeastGaps
{
    private readonly SolidGroup _first;
    private readonly SolidGroup _second;
    private readonly ClearanceRibs _ribs;
    private SolidGap? _best;

    private LeastGaps(SolidGroup first, SolidGroup second, ClearanceRibs ribs)
    {
        _first = first;
        _second = second;
        _ribs = ribs;
    }

    /// <summary>The pair with the least worst gap; null when no pair of the two is measured.</summary>
    /// <param name="first">Solids of one net.</param>
    /// <param name="second">Solids of the other.</param>
    /// <param name="ribs">Ribs that a string is pulled over or round.</param>
    /// <param name="ranges">Parts of the turn to look at; null for the whole turn.</param>
    internal static SolidGap? Between(SolidGroup first, SolidGroup second, ClearanceRibs ribs, IReadOnlyList<TurnRange>? ranges = null)
    {
        LeastGaps search = new(first, second, ribs);
        search.Drawn(first.Still, second.Still, null);
        search.Drawn(first.Turning, second.Turning, 0);
        search.Turning(first.Still, second.Turning, ranges, swapped: false);
        search.Turning(second.Still, first.Turning, ranges, swapped: true);
        return ranges is null ? search._best : search._best?.Certified();
    }

    private double LimitMm => _best?.WorstMm ?? double.PositiveInfinity;

    private void Drawn(SolidList a, SolidList b, double? turnedRad)
    {
        foreach ((int i, int j, double least) in a.Plan.Pairs(b.Plan))
        {
            if (least >= LimitMm)
            {
                break;
            }

            Solid s = a.Solids[i], t = b.Solids[j];
            if (SolidPair.IsMeasured(s, t))
            {
                // A rib stands still: between two solids that turn together it is out of the way at some angle.
                SolidGap gap = SolidPair.Gap(s, t, Distances.Between(s.Outline, t.Outline), turnedRad);
                Keep(turnedRad is null ? _ribs.Over(gap, LimitMm) : gap);
            }
        }
    }

    private void Turning(SolidList still, SolidList turning, IReadOnlyList<TurnRange>? ranges, bool swapped)
    {
        foreach ((int i, int j, double least) in still.ByRadius.Pairs(turning.ByRadius))
        {
            if (least >= LimitMm)
            {
                break;
            }

            Solid s = still.Solids[i], t = turning.Solids[j];
            if (SolidPair.IsMeasured(s, t) && Measure(still, i, turning, j, ranges) is { } gap)
            {
                Keep(swapped ? gap.Swapped() : gap);
            }
        }
    }

    private SolidGap? Measure(SolidList still, int i, SolidList turning, int j, IReadOnlyList<TurnRange>? ranges)
    {
        Solid s = still.Solids[i], t = turning.Solids[j];
        if (ranges is null)
        {
            (Nearest plan, double turned) = WholeTurn.Nearest(s.Outline, t.Outline);
            return _ribs.OverSwept(SolidPair.Gap(s, t, plan, turned), LimitMm);
        }

        double cutOff = PlanCutOffMm(s, t, LimitMm);
        if (PartTurn.Least(still.PiecesOf(i), turning.PiecesOf(j), ranges, cutOff) is not { } part)
        {
            return null;
        }

        SolidGap gap = SolidPair.Gap(s, t, part.Plan, part.TurnedRad) with
        {
            Bounds = new GapBounds(SolidPair.NominalMm(s, t, part.Bounds.LowerMm), SolidPair.NominalMm(s, t, part.Bounds.UpperMm)),
        };
        return _ribs.OverInPart(gap, ranges, LimitMm);
    }

    /// <summary>The plan distance at which a pair's worst gap reaches a limit.</summary>
    private static double PlanCutOffMm(Solid a, Solid b, double worstMm)
    {
        double height = Math.Max(0, SolidPair.HeightGapMm(a, b) - SolidPair.HeightToleranceMm(a, b));
        return double.IsPositiveInfinity(worstMm)
            ? worstMm
            : Math.Sqrt(Math.Max(0, (worstMm * worstMm) - (height * height))) + SolidPair.PlanToleranceMm(a, b);
    }

    private void Keep(SolidGap? gap)
    {
        if (gap is not null && gap.WorstMm < LimitMm)
        {
            _best = gap;
        }
    }
}

/// <summary>The solids of one net, fixed and turning.</summary>
internal sealed class SolidGroup
{
    internal SolidGroup(IEnumerable<Solid> solids)
    {
        Solid[] all = [.. solids];
        Still = new([.. all.Where(s => !s.Turns)]);
        Turning = new([.. all.Where(s => s.Turns)]);
    }

    internal SolidList Still { get; }

    internal SolidList Turning { get; }

    /// <summary>Whether it is of the very same solids.</summary>
    internal bool IsOfSame(SolidGroup other) => Still.IsOfSame(other.Still) && Turning.IsOfSame(other.Turning);
}

/// <summary>Solids with the trees over them, each made at the first question.</summary>
internal sealed class SolidList
{
    private readonly Lazy<SolidTree> _plan;
    private readonly Lazy<SolidTree> _byRadius;
    private readonly TurningPieces?[] _pieces;

    internal SolidList(IReadOnlyList<Solid> solids)
    {
        Solids = solids;
        _pieces = new TurningPieces?[solids.Count];
        _plan = new(() => new SolidTree([.. solids.Select(SolidBox.InPlan)]));
        _byRadius = new(() => new SolidTree([.. solids.Select(s => SolidBox.ByRadius(s, Distances.Radii(s.Outline, Point.Origin)))]));
    }

    internal IReadOnlyList<Solid> Solids { get; }

    internal SolidTree Plan => _plan.Value;

    internal SolidTree ByRadius => _byRadius.Value;

    /// <summary>Whether it is of the very same solids, in the same order.</summary>
    internal bool IsOfSame(SolidList other) => Solids.Count == other.Solids.Count && Solids.Zip(other.Solids).All(s => ReferenceEquals(s.First, s.Second));

    internal TurningPieces PiecesOf(int solid) => _pieces[solid] ??= TurningPieces.Of(Solids[solid].Outline);
}
