namespace WheelDraft.Geometry;

/// <summary>What all beams of one source, a bend or a conductor, have in common: the shortest ways known to every place and to bends.</summary>
/// <remarks>No shortest way leaves by a stretch from which it is further than by a corner beside it and along the edge (S.-Q. Xin and G.-J. Wang,
/// Improving Chen and Han's algorithm on the discrete geodesic problem, ACM Transactions on Graphics 28, 2009, theorem 3.2). Only corners at which ways bend
/// and to which one was found count for that: from there all that is beyond is found by the beams of the corner itself.</remarks>
internal sealed class BeamTree
{
    /// <summary>By how much a way has to be longer than another to be left out, mm: well above the rounding of both, far below what is measured.</summary>
    /// <remarks>Of ways that are equally long none is left out.</remarks>
    internal const double SurelyMm = 1e-4;

    private readonly double[] _mm;
    private readonly double[] _bendsMm;
    private readonly bool _isOfBend;

    internal BeamTree(int places, bool isOfBend)
    {
        _isOfBend = isOfBend;
        _mm = new double[places];
        _bendsMm = new double[places];
        Array.Fill(_mm, double.PositiveInfinity);
        Array.Fill(_bendsMm, double.PositiveInfinity);
    }

    /// <summary>The shortest ways seen without a bend to bends.</summary>
    internal Dictionary<int, Arrival> Bends { get; } = [];

    /// <summary>Notes a way that was seen to a bend.</summary>
    internal void Note(ReliefSector bend, Arrival arrival)
    {
        if (!Bends.TryGetValue(bend.Node, out Arrival? known) || arrival.LengthMm < known.LengthMm)
        {
            Bends[bend.Node] = arrival;
        }

        if (_isOfBend)
        {
            ReachBend(bend.Place, arrival.LengthMm);
        }
    }

    /// <summary>Notes the length of a way to a place, mm.</summary>
    internal void Reach(int place, double lengthMm) => _mm[place] = Math.Min(_mm[place], lengthMm);

    /// <summary>Notes the length of a way to a bend from which others can be found, mm.</summary>
    internal void ReachBend(int place, double lengthMm) => _bendsMm[place] = Math.Min(_bendsMm[place], lengthMm);

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
        place >= 0 && _bendsMm[place] + Math.Abs(first.At - at) + SurelyMm < first.LengthMm && _bendsMm[place] + Math.Abs(second.At - at) + SurelyMm < second.LengthMm;
}
