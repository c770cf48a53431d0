using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Loose pieces by the numbers of their end points, and the runs that they form.</summary>
/// <remarks>Where exactly two ends meet, a run goes on; at free ends and where more meet, it ends. A run that comes back to
/// the end point it left from is closed. Order: as the pieces were added.</remarks>
internal sealed class LooseEnds
{
    private readonly List<(IReadOnlyList<Piece> Pieces, DxfSource Source, double OffMm, int Start, int End)> _pieces = [];
    private readonly Dictionary<int, List<int>> _atEnd = [];

    internal void Add(IReadOnlyList<Piece> pieces, DxfSource source, double offMm, (int Start, int End) ends)
    {
        _pieces.Add((pieces, source, offMm, ends.Start, ends.End));
        Meet(ends.Start, _pieces.Count - 1);
        Meet(ends.End, _pieces.Count - 1);
    }

    /// <summary>How many ends meet at a point.</summary>
    internal int Meeting(int end) => _atEnd[end].Count;

    internal List<LooseRun> Runs()
    {
        List<LooseRun> runs = [];
        bool[] used = new bool[_pieces.Count];

        // First from where runs end, then round the loops that are left.
        for (int i = 0; i < _pieces.Count; i++)
        {
            if (!used[i] && Meeting(_pieces[i].Start) != 2)
            {
                runs.Add(From(i, forward: true, used));
            }
            else if (!used[i] && Meeting(_pieces[i].End) != 2)
            {
                runs.Add(From(i, forward: false, used));
            }
        }

        for (int i = 0; i < _pieces.Count; i++)
        {
            if (!used[i])
            {
                runs.Add(From(i, forward: true, used));
            }
        }

        return runs;
    }

    private LooseRun From(int first, bool forward, bool[] used)
    {
        List<Piece> run = [];
        int from = forward ? _pieces[first].Start : _pieces[first].End;
        int at = from;
        int next = first;
        double offMm = 0;
        while (next >= 0)
        {
            used[next] = true;
            (IReadOnlyList<Piece> pieces, _, double own, int start, int end) = _pieces[next];
            offMm = Math.Max(offMm, own);
            bool along = start == at;
            run.AddRange(along ? pieces : pieces.Reverse().Select(p => p.Reversed()));
            at = along ? end : start;
            next = at == from || Meeting(at) != 2 ? -1 : Unused(_atEnd[at], used);
        }

        return new(run, _pieces[first].Source, from, at) { OffMm = offMm };
    }

    private static int Unused(List<int> pieces, bool[] used)
    {
        int at = pieces.FindIndex(p => !used[p]);
        return at < 0 ? -1 : pieces[at];
    }

    private void Meet(int end, int piece)
    {
        if (!_atEnd.TryGetValue(end, out List<int>? there))
        {
            _atEnd.Add(end, there = []);
        }

        there.Add(piece);
    }
}

/// <summary>Pieces one after the other.</summary>
internal sealed record LooseRun(IReadOnlyList<Piece> Pieces, DxfSource Source, int From, int To)
{
    internal bool IsClosed => From == To;

    /// <summary>How far its pieces may lie from what was drawn, mm.</summary>
    internal double OffMm { get; init; }

    /// <summary>The widest gap between a piece and the next one round, mm.</summary>
    internal double WidestGapMm => Pieces.Select((p, i) => p.End.DistanceTo(Pieces[(i + 1) % Pieces.Count].Start)).Max();
}

/// <summary>Brings the ends of a closed run together.</summary>
internal static class JoinedRun
{
    /// <summary>The run without gaps: a straight piece gives way; between two arcs, which stay as they are, a straight
    /// piece bridges the gap.</summary>
    internal static List<Piece> Close(IReadOnlyList<Piece> run)
    {
        List<Piece> joined = [.. run];
        for (int i = 0; i < joined.Count; i++)
        {
            int next = (i + 1) % joined.Count;
            Point end = joined[i].End;
            Point start = joined[next].Start;
            if (end == start)
            {
                continue;
            }

            if (joined[next] is Segment after && next != i && after.End.DistanceTo(end) > Tolerances.ShortestPieceMm)
            {
                joined[next] = new Segment(end, after.End);
            }
            else if (joined[i] is Segment before && next != i && before.Start.DistanceTo(start) > Tolerances.ShortestPieceMm)
            {
                joined[i] = new Segment(before.Start, start);
            }
            else if (end.DistanceTo(start) > Tolerances.JoinMm)
            {
                joined.Insert(i + 1, new Segment(end, start));
                i++;
            }
        }

        return joined;
    }
}
