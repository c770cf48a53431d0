using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The least plan distance of a fixed and a turning shape over parts of the turn, certified.</summary>
/// <param name="Bounds">Lower and upper bound, mm.</param>
/// <param name="TurnedRad">How far the wheel is turned where the upper bound is met.</param>
/// <param name="Plan">The nearest points there, in the housing.</param>
internal readonly record struct PartTurnGap(GapBounds Bounds, double TurnedRad, Nearest Plan);

/// <summary>Branch and bound over the angle.</summary>
/// <remarks>While the wheel turns by an angle, no distance between two pieces changes by more than that angle times the lesser of their
/// greatest radii; an arc about the axis sweeps an arc, whose distance is exact and constant. Best first, halving, over all pairs of
/// pieces together (A. H. Land and A. G. Doig, Econometrica 28, 1960). What is given up lies no lower than the lower bound.</remarks>
internal sealed class PartTurn
{
    private readonly TurningPieces _still;
    private readonly TurningPieces _turning;
    private readonly double _withinMm;
    private readonly PriorityQueue<Branch, double> _open = new();
    private double _upper;
    private readonly double _noInterest;
    private double _cutOff;
    private double _givenUp = double.PositiveInfinity;
    private double _turnedRad;
    private Nearest _plan;

    private PartTurn(TurningPieces still, TurningPieces turning, double cutOffMm, double withinMm)
    {
        _still = still;
        _turning = turning;
        _upper = double.PositiveInfinity;
        _cutOff = cutOffMm;
        _noInterest = cutOffMm;
        _withinMm = withinMm;
    }

    /// <summary>The least distance; null when it is nowhere below the cut-off.</summary>
    /// <param name="still">The fixed shape.</param>
    /// <param name="turning">The turning shape.</param>
    /// <param name="ranges">Parts of the turn, at least one.</param>
    /// <param name="cutOffMm">Distances from here on are of no interest; infinite for any.</param>
    /// <param name="withinMm">How far apart the bounds may be, above 0.</param>
    internal static PartTurnGap? Least(
        TurningPieces still, TurningPieces turning, IReadOnlyList<TurnRange> ranges, double cutOffMm = double.PositiveInfinity, double withinMm = SpacingTolerances.CertifiedMm)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(withinMm);
        PartTurn search = new(still, turning, cutOffMm, withinMm);
        foreach (TurnRange range in ranges)
        {
            if (search.Begin(range))
            {
                break;
            }
        }

        return search.Finish();
    }

    /// <summary>Looks where the range begins and lays out its branches; true when the shapes overlap there.</summary>
    private bool Begin(TurnRange range)
    {
        // Shapes whose edges never meet in the range keep being inside or outside each other: one look is enough.
        // Where they have no radius in common they never overlap.
        Nearest? inside = _still.Radii.GapMm(_turning.Radii) > 0 ? null : Inside(range.FromRad);
        if (inside is { } common)
        {
            Take(0, range.FromRad, common);
            return true;
        }

        for (int i = 0; i < _still.Pieces.Count; i++)
        {
            for (int j = 0; j < _turning.Pieces.Count; j++)
            {
                Push(new Branch(i, j, range.FromRad, range.ToRad), _still.Pieces[i].LeastWithin(_turning.Pieces[j], range.FromRad, range.ToRad));
            }
        }

        return false;
    }

    private Nearest? Inside(double turnedRad)
    {
        Placement turn = Placement.Turn(turnedRad);
        Point ofTurning = turn.Of(_turning.Outline.Outer.Pieces[0].Start);
        if (_still.Outline.Locate(ofTurning) != Whereabouts.Outside)
        {
            return new Nearest(0, ofTurning, ofTurning);
        }

        Point ofStill = _still.Outline.Outer.Pieces[0].Start;
        return _turning.Outline.Locate(Placement.Turn(-turnedRad).Of(ofStill)) != Whereabouts.Outside
            ? new Nearest(0, ofStill, ofStill)
            : null;
    }

    private PartTurnGap? Finish()
    {
        while (_upper > 0 && _open.TryDequeue(out Branch branch, out double least))
        {
            if (least >= _cutOff - _withinMm)
            {
                _givenUp = Math.Min(_givenUp, least);
                break;
            }

            Look(branch, least);
        }

        if (double.IsPositiveInfinity(_upper) || _upper >= _noInterest)
        {
            return null;
        }

        return new PartTurnGap(new GapBounds(Math.Max(0, Math.Min(_upper, _givenUp)), _upper), Angles.InTurn(_turnedRad), _plan);
    }

    private void Look(Branch branch, double least)
    {
        PolarPiece a = _still.Pieces[branch.Still];
        PolarPiece b = _turning.Pieces[branch.Turning];
        double middle = (branch.FromRad + branch.ToRad) / 2;
        Nearest here = Distances.Between(a.Piece, b.Turned(middle));
        Take(here.DistanceMm, middle, here);
        double half = (branch.ToRad - branch.FromRad) / 2;
        double bound = Math.Max(least, here.DistanceMm - (half * Math.Min(a.GreatestMm, b.GreatestMm)));
        if (half == 0)
        {
            return;
        }

        if (bound < _cutOff - _withinMm && (a.IsConcentric || b.IsConcentric))
        {
            bound = Math.Max(bound, SweptDistance(a, b, branch));
        }

        foreach (Branch part in (Branch[])[branch with { ToRad = middle }, branch with { FromRad = middle }])
        {
            Push(part, Math.Max(bound, a.LeastWithin(b, part.FromRad, part.ToRad)));
        }
    }

    /// <summary>The distance to everything that a concentric arc sweeps.</summary>
    private static double SweptDistance(PolarPiece a, PolarPiece b, Branch branch)
    {
        return b.IsConcentric
            ? Distances.Between(a.Piece, b.Swept(branch.FromRad, branch.ToRad)).DistanceMm - b.OffAxisMm
            : Distances.Between(a.Swept(-branch.ToRad, -branch.FromRad), b.Piece).DistanceMm - a.OffAxisMm;
    }

    private void Push(Branch branch, double least)
    {
        if (least < _cutOff - _withinMm)
        {
            _open.Enqueue(branch, least);
        }
        else
        {
            _givenUp = Math.Min(_givenUp, least);
        }
    }

    private void Take(double distanceMm, double turnedRad, Nearest plan)
    {
        if (distanceMm < _upper)
        {
            _upper = distanceMm;
            _turnedRad = turnedRad;
            _plan = plan;
            _cutOff = Math.Min(_cutOff, distanceMm);
        }
    }

    private readonly record struct Branch(int Still, int Turning, double FromRad, double ToRad);
}
