using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Joins the loose pieces of a layer into contours; reports what is doubled, too short or does not close.</summary>
internal sealed class LayerJoiner
{
    /// <summary>How many places of one fault are reported one by one.</summary>
    internal const int MostPlaces = 50;

    private readonly LoosePieces _layer;
    private readonly double _joinMm;
    private readonly List<Finding> _remarks;
    private readonly EndPoints _ends;
    private readonly EndPoints _middles;
    private readonly Dictionary<(int Low, int High, int Middle), (Point Start, Point Middle, Point End)> _seen = [];
    private readonly List<ReadContour> _contours = [];
    private readonly List<ReadPath> _paths = [];
    private double _doublesOffMm;
    private int _doubled;
    private int _tooShort;
    private int _junctions;

    private LayerJoiner(LoosePieces layer, double joinMm, List<Finding> remarks)
    {
        _layer = layer;
        _joinMm = joinMm;
        _remarks = remarks;
        _ends = new(joinMm);
        _middles = new(joinMm);
    }

    internal static ReadLayer Join(LoosePieces layer, double joinMm, List<Finding> remarks)
    {
        LayerJoiner joiner = new(layer, joinMm, remarks);
        joiner.TakeClosed();
        joiner.JoinLoose();
        joiner.ReportCounts();

        // Of two lines on each other one is taken: the other may have been the nearer one.
        return new(layer.Name, [.. joiner._contours.Select(c => c with { OffMm = c.OffMm + joiner._doublesOffMm })], joiner._paths) { Areas = layer.Areas };
    }

    private void TakeClosed()
    {
        foreach ((IReadOnlyList<Piece> pieces, DxfSource source, double offMm) in _layer.Closed)
        {
            // Each piece is entered even when an earlier one was known already, so no short circuit here.
            double?[] known = [.. pieces.Select(p => Known([p]))];
            if (known.All(k => k is not null))
            {
                Doubled(source, known.Max()!.Value);
            }
            else
            {
                AddContour(pieces, source, offMm);
            }
        }
    }

    private void JoinLoose()
    {
        LooseEnds ends = new();
        foreach ((IReadOnlyList<Piece> pieces, DxfSource source, double offMm) in _layer.Open)
        {
            (int low, int high, _) = KeyOf(pieces);
            if (low == high && pieces.Sum(p => p.Length) <= 2 * _joinMm)
            {
                _tooShort++;
                continue;
            }

            if (Known(pieces) is double apart)
            {
                Doubled(source, apart);
                continue;
            }

            ends.Add(pieces, source, offMm, (_ends.NumberOf(pieces[0].Start), _ends.NumberOf(pieces[^1].End)));
        }

        foreach (LooseRun run in ends.Runs())
        {
            if (run.IsClosed)
            {
                AddContour(JoinedRun.Close(run.Pieces), run.Source, run.OffMm + run.WidestGapMm);
            }
            else
            {
                AddPath(run, ends);
            }
        }
    }

    private void AddContour(IReadOnlyList<Piece> pieces, DxfSource source, double offMm)
    {
        try
        {
            _contours.Add(new(new Contour(pieces), source) { OffMm = offMm });
        }
        catch (ArgumentException e)
        {
            _remarks.Add(Finding.Error("drawing.open", $"Layer {_layer.Name}, {source}: {e.Message}", new(source.Line, 1)));
            _paths.Add(new(pieces, source));
        }
    }

    private void AddPath(LooseRun run, LooseEnds ends)
    {
        _paths.Add(new(run.Pieces, run.Source));
        if (_paths.Count > MostPlaces)
        {
            return;
        }

        bool junction = ends.Meeting(run.From) > 2 || ends.Meeting(run.To) > 2;
        _junctions += junction ? 1 : 0;
        Point start = _ends.At(run.From);
        Point end = _ends.At(run.To);
        string why = junction
            ? "three or more lines meet at one of its ends, so it is not clear which belong together"
            : $"its ends are {FixedPoint.Short(start.DistanceTo(end), 4)} mm apart (ends are joined within {FixedPoint.Short(_joinMm, 6)} mm)";
        _remarks.Add(Finding.Error(
            junction ? "drawing.junction" : "drawing.open",
            $"Layer {_layer.Name}, {run.Source}: open from {Text(start)} to {Text(end)} mm; {why}.",
            new(run.Source.Line, 1)));
    }

    private void ReportCounts()
    {
        if (_paths.Count > MostPlaces)
        {
            _remarks.Add(Finding.Error("drawing.open", $"Layer {_layer.Name}: {DxfReader.Count(_paths.Count)} open runs in all."));
        }

        if (_doubled > MostPlaces)
        {
            _remarks.Add(Finding.Warning("drawing.duplicate", $"Layer {_layer.Name}: {DxfReader.Count(_doubled)} doubled lines in all, each taken once."));
        }

        if (_tooShort > 0)
        {
            _remarks.Add(Finding.Warning("drawing.short", $"Layer {_layer.Name}: {DxfReader.Count(_tooShort)} lines shorter than twice the joining tolerance of {FixedPoint.Short(_joinMm, 6)} mm are left out."));
        }
    }

    /// <summary>How far a known run lies from this one; null when none is known, and this one is remembered then.</summary>
    private double? Known(IReadOnlyList<Piece> run)
    {
        (int, int, int) key = KeyOf(run);
        (Point Start, Point Middle, Point End) here = (run[0].Start, Middle(run), run[^1].End);
        if (_seen.TryGetValue(key, out (Point Start, Point Middle, Point End) before))
        {
            return Apart(before, here);
        }

        _seen.Add(key, here);
        return null;
    }

    /// <summary>How far two runs of one key lie apart: at their ends and in the middle, travelled in either direction.</summary>
    private static double Apart((Point Start, Point Middle, Point End) a, (Point Start, Point Middle, Point End) b)
    {
        double straight = Math.Max(a.Start.DistanceTo(b.Start), a.End.DistanceTo(b.End));
        double crossed = Math.Max(a.Start.DistanceTo(b.End), a.End.DistanceTo(b.Start));
        double apart = Math.Max(Math.Min(straight, crossed), a.Middle.DistanceTo(b.Middle));

        // Exact doubles stay exact, whatever the rounding of end points.
        return apart < Tolerances.JoinMm ? 0 : apart;
    }

    /// <summary>The same point from either end.</summary>
    private static Point Middle(IReadOnlyList<Piece> run) => run.Count % 2 == 0 ? run[run.Count / 2].Start : run[run.Count / 2].PointAt(0.5);

    private void Doubled(DxfSource source, double apartMm)
    {
        _doublesOffMm = Math.Max(_doublesOffMm, apartMm);
        _doubled++;
        if (_doubled <= MostPlaces)
        {
            _remarks.Add(Finding.Warning("drawing.duplicate", $"Layer {_layer.Name}, {source}: drawn a second time; taken once.", new(source.Line, 1)));
        }
    }

    /// <summary>Runs with the same key lie on each other within the tolerance, travelled in either direction.</summary>
    private (int Low, int High, int Middle) KeyOf(IReadOnlyList<Piece> run)
    {
        int start = _ends.NumberOf(run[0].Start);
        int end = _ends.NumberOf(run[^1].End);
        return (Math.Min(start, end), Math.Max(start, end), _middles.NumberOf(Middle(run)));
    }

    internal static string Text(Point p) => $"({FixedPoint.Short(p.X, 4)}, {FixedPoint.Short(p.Y, 4)})";
}
