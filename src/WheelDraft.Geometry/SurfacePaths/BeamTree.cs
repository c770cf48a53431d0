namespace WheelDraft.Geometry;

/// <summary>What all beams of one source, a bend or a conductor, have in common: the shortest ways known to every place and to bends.</summary>
/// <remarks>No shortest way leaves by a stretch from which it is further than by a corner beside it and along the edge (S.-Q. Xin and G.-J. Wang,
/// Improving Chen and Han's algorithm on the discrete geodesic problem, ACM Transactions on Graphics 28, 2009, theorem 3.2). What is known to a
/// place is the length of a way that there is, by whatever bends: a way that is longer is part of none that is shortest.</remarks>
internal sealed class BeamTree
{
    /// <summary>By how much a way has to be longer than another to be left out, mm: well above the rounding of both, far below what is measured.</summary>
    /// <remarks>Of ways that are equally long none is left out.</remarks>
    internal const double SurelyMm = 1e-4;

    private readonly double[] _mm;

    internal BeamTree(int places)
    {
        _mm = new double[places];
        Array.Fill(_mm, double.PositiveInfinity);
    }

    /// <summary>The shortest ways seen without a bend to bends.</summary>
    internal Dictionary<int, Arrival> Bends { get; } = [];

    /// <summary>Notes the length of a way to a place, mm.</summary>
    internal void Reach(int place, double lengthMm) => _mm[place] = Math.Min(_mm[place], lengthMm);

    /// <summary>Notes the ways to all places by a bend.</summary>
    /// <param name="lengthMm">Length of a way to the bend, mm.</param>
    /// <param name="bend">The beams of the bend.</param>
    internal void ReachBy(double lengthMm, BeamTree bend)
    {
        for (int i = 0; i < _mm.Length; i++)
        {
            _mm[i] = Math.Min(_mm[i], lengthMm + bend._mm[i]);
        }
    }

    /// <summary>The shortest way that is known to another source, by any place; infinite when none is.</summary>
    internal double KnownTo(BeamTree other)
    {
        double least = double.PositiveInfinity;
        for (int i = 0; i < _mm.Length; i++)
        {
            least = Math.Min(least, _mm[i] + other._mm[i]);
        }

        return least;
    }

    /// <summary>Whether each way of a beam through an exit is longer than one by a place beside it.</summary>
    internal bool Outdoes(Beam beam, BeamExit exit)
    {
        if (exit.IsOutdone)
        {
            return true;
        }

        double atFirst = beam.LengthTo(exit.First), atSecond = beam.LengthTo(exit.Second);
        if (exit.Kind == BeamExitKind.RoundCorner)
        {
            ReliefEdge wall = beam.Wall!;
            return exit.IsOutdone = Outdoes(wall.PlaceAt(exit.IsFirst, isHigh: false), wall.LowMm, (exit.First.Y, atFirst), (exit.Second.Y, atSecond))
                || Outdoes(wall.PlaceAt(exit.IsFirst, isHigh: true), wall.HighMm, (exit.First.Y, atFirst), (exit.Second.Y, atSecond));
        }

        ReliefEdge edge = exit.Edge!;
        (bool isHigh, double first, double second) = beam.Wall is null
            ? (!exit.Reach!.Value.Climbs, edge.AlongOf(exit.First), edge.AlongOf(exit.Second))
            : (exit.IsFirst, exit.First.X, exit.Second.X);
        return exit.IsOutdone = Outdoes(edge.PlaceAt(isFrom: true, isHigh), 0, (first, atFirst), (second, atSecond))
            || Outdoes(edge.PlaceAt(isFrom: false, isHigh), edge.LengthMm, (first, atFirst), (second, atSecond));
    }

    /// <summary>Whether both ends of a stretch are nearer by a place on its line: then all of it is, since no two ways grow apart faster than the stretch is long.</summary>
    private bool Outdoes(int place, double at, (double At, double LengthMm) first, (double At, double LengthMm) second) =>
        place >= 0 && _mm[place] + Math.Abs(first.At - at) + SurelyMm < first.LengthMm && _mm[place] + Math.Abs(second.At - at) + SurelyMm < second.LengthMm;
}
