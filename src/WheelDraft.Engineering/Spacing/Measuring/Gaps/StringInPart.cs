using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The least taut string between a fixed and a turning solid over parts of the turn, certified as <see cref="PartTurn"/> is.</summary>
internal sealed class StringInPart
{
    /// <summary>Strings pulled before the search ends with bounds further apart.</summary>
    private const int MostStrings = 4000;

    private readonly SolidGap _straight;
    private readonly IReadOnlyList<RibBox> _boxes;
    private readonly SweptShape _sector;
    private readonly double _reachMm;
    private readonly PriorityQueue<TurnRange, double> _open = new();

    private StringInPart(SolidGap straight, IReadOnlyList<RibBox> boxes)
    {
        _straight = straight;
        _boxes = boxes;
        _sector = SweptShape.Of(straight.Second.Outline);
        _reachMm = Math.Min(
            Distances.Radii(straight.First.Outline, Point.Origin).GreatestMm, Distances.Radii(straight.Second.Outline, Point.Origin).GreatestMm);
    }

    /// <summary>The least string; null when the straight gap is unblocked where it is least.</summary>
    internal static (GapBounds Bounds, double TurnedRad, PulledString Pulled)? Least(
        SolidGap straight, IReadOnlyList<TurnRange> ranges, IReadOnlyList<RibBox> boxes)
    {
        StringInPart search = new(straight, boxes);
        return search.At(straight.TurnedRad ?? 0).Bends.Count <= 2 ? null : search.Least(ranges);
    }

    private (GapBounds Bounds, double TurnedRad, PulledString Pulled) Least(IReadOnlyList<TurnRange> ranges)
    {
        double lower = double.PositiveInfinity, turned = 0;
        PulledString? best = null;
        foreach (TurnRange range in ranges)
        {
            _open.Enqueue(range, 0);
        }

        for (int pulled = 0; _open.TryDequeue(out TurnRange range, out double least); pulled++)
        {
            lower = least;
            if (best is not null && (least >= best.LengthMm - SpacingTolerances.CertifiedMm || pulled > MostStrings))
            {
                break;
            }

            double middle = (range.FromRad + range.ToRad) / 2, half = (range.ToRad - range.FromRad) / 2;
            PulledString here = At(middle);
            if (best is null || here.LengthMm < best.LengthMm)
            {
                (best, turned) = (here, middle);
            }

            double bound = Math.Max(least, here.LengthMm - (half * _reachMm));
            if (bound < best.LengthMm - SpacingTolerances.CertifiedMm)
            {
                bound = Math.Max(bound, Swept(range));
            }

            _open.Enqueue(new TurnRange(range.FromRad, middle), half == 0 ? here.LengthMm : bound);
            _open.Enqueue(new TurnRange(middle, range.ToRad), half == 0 ? here.LengthMm : bound);
        }

        return (new GapBounds(Math.Min(lower, best!.LengthMm), best.LengthMm), Angles.InTurn(turned), best);
    }

    private PulledString At(double turnedRad)
    {
        StringEnd turning = new(_straight.Second.Outline.Placed(Placement.Turn(turnedRad)), _straight.Second.FromZMm, _straight.Second.ToZMm);
        return new TautString(StringEnd.Of(_straight.First), turning, _boxes).Pull();
    }

    private double Swept(TurnRange range)
    {
        StringEnd swept = new(_sector.Over(range), _straight.Second.FromZMm, _straight.Second.ToZMm);
        return Distances.Between(_straight.First.Outline, swept.Outline).DistanceMm == 0
            ? 0
            : new TautString(StringEnd.Of(_straight.First), swept, _boxes).Pull().LengthMm;
    }
}

/// <summary>The sector of a ring that holds a shape, and so holds all its places while it turns.</summary>
internal sealed class SweptShape
{
    private readonly RadialInterval _radii;
    private readonly double _fromRad;
    private readonly double _sweepRad;

    private SweptShape(RadialInterval radii, double fromRad, double sweepRad)
    {
        _radii = radii;
        _fromRad = fromRad;
        _sweepRad = sweepRad;
    }

    /// <summary>The ring that a connected shape sweeps over a whole turn: exactly that.</summary>
    internal static Outline Whole(Outline outline) => Ring(Distances.Radii(outline, Point.Origin));

    /// <summary>The sector round a shape: the widest gap between its pieces, seen from the axis, is left out.</summary>
    internal static SweptShape Of(Outline outline)
    {
        RadialInterval radii = Distances.Radii(outline, Point.Origin);
        List<(double From, double To)> seen = [.. outline.Outer.Pieces.Select(PolarPiece.Of).Select(p => (Angles.InTurn(p.FromRad), Angles.InTurn(p.FromRad) + p.SweepRad))];
        seen.Sort();
        double gapFrom = 0, gap = 0, reached = seen[0].To;
        for (int i = 1; i <= seen.Count; i++)
        {
            double next = i < seen.Count ? seen[i].From : seen[0].From + Angles.TurnRad;
            (gapFrom, gap) = next - reached > gap ? (reached, next - reached) : (gapFrom, gap);
            reached = i < seen.Count ? Math.Max(reached, seen[i].To) : reached;
        }

        return new SweptShape(radii, gapFrom + gap, Angles.TurnRad - gap);
    }

    /// <summary>All that the sector covers over a part of the turn.</summary>
    internal Outline Over(TurnRange range)
    {
        double sweep = _sweepRad + range.ToRad - range.FromRad;
        if (sweep >= Angles.TurnRad || _radii.LeastMm <= Tolerances.JoinMm)
        {
            return Ring(_radii);
        }

        Arc outer = new(Point.Origin, _radii.GreatestMm, _fromRad + range.FromRad, sweep);
        Arc inner = new(Point.Origin, _radii.LeastMm, _fromRad + range.FromRad + sweep, -sweep);
        return new Outline(new Contour([outer, new Segment(outer.End, inner.Start), inner, new Segment(inner.End, outer.Start)]));
    }

    private static Outline Ring(RadialInterval radii) => radii.LeastMm > Tolerances.JoinMm
        ? new Outline(Contour.Circle(Point.Origin, radii.GreatestMm), [Contour.Circle(Point.Origin, radii.LeastMm)])
        : new Outline(Contour.Circle(Point.Origin, radii.GreatestMm));
}
