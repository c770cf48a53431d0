using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Joins the loose pieces of a layer into contours; tells what is doubled, too short or does not close.</summary>
internal sealed class LayerJoiner
{
    /// <summary>How many places of one fault are told one by one.</summary>
    internal const int MostPlaces = 50;

    private readonly LoosePieces _layer;
    private readonly double _joinMm;
    private readonly List<Finding> _remarks;
    private readonly EndPoints _ends;
    private readonly EndPoints _middles;
    private readonly HashSet<(int Low, int High, int Middle)> _seen = [];
    private readonly List<ReadContour> _contours = [];
    private readonly List<ReadPath> _paths = [];
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
        joiner.TellCounts();
        return new(layer.Name, joiner._contours, joiner._paths);
    }

    private void TakeClosed()
    {
        foreach ((IReadOnlyList<Piece> pieces, DxfSource source) in _layer.Closed)
        {
            // Each piece is entered even when an earlier one was known already, so no short circuit here.
            int known = pieces.Count(p => !_seen.Add(KeyOf(p)));
            if (known == pieces.Count)
            {
                Doubled(source);
            }
            else
            {
                AddContour(pieces, source);
            }
        }
    }

    private void JoinLoose()
    {
        LooseEnds ends = new();
        foreach ((Piece piece, DxfSource source) in _layer.Open)
        {
            (int low, int high, int middle) = KeyOf(piece);
            if (low == high && piece.Length <= 2 * _joinMm)
            {
                _tooShort++;
                continue;
            }

            if (!_seen.Add((low, high, middle)))
            {
                Doubled(source);
                continue;
            }

            ends.Add(piece, source, (_ends.NumberOf(piece.Start), _ends.NumberOf(piece.End)));
        }

        foreach (LooseRun run in ends.Runs())
        {
            if (run.IsClosed)
            {
                AddContour(JoinedRun.Close(run.Pieces), run.Source);
            }
            else
            {
                AddPath(run, ends);
            }
        }
    }

    private void AddContour(IReadOnlyList<Piece> pieces, DxfSource source)
    {
        try
        {
            _contours.Add(new(new Contour(pieces), source));
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
            ? "three or more lines meet at one of its ends, so which belong together cannot be told"
            : $"its ends are {FixedPoint.Short(start.DistanceTo(end), 4)} mm apart (ends are joined within {FixedPoint.Short(_joinMm, 6)} mm)";
        _remarks.Add(Finding.Error(
            junction ? "drawing.junction" : "drawing.open",
            $"Layer {_layer.Name}, {run.Source}: open from {Text(start)} to {Text(end)} mm; {why}.",
            new(run.Source.Line, 1)));
    }

    private void TellCounts()
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

    private void Doubled(DxfSource source)
    {
        _doubled++;
        if (_doubled <= MostPlaces)
        {
            _remarks.Add(Finding.Warning("drawing.duplicate", $"Layer {_layer.Name}, {source}: drawn a second time; taken once.", new(source.Line, 1)));
        }
    }

    /// <summary>Pieces with the same key lie on each other within the tolerance, whichever way they are travelled.</summary>
    private (int Low, int High, int Middle) KeyOf(Piece piece)
    {
        int start = _ends.NumberOf(piece.Start);
        int end = _ends.NumberOf(piece.End);
        return (Math.Min(start, end), Math.Max(start, end), _middles.NumberOf(piece.PointAt(0.5)));
    }

    internal static string Text(Point p) => $"({FixedPoint.Short(p.X, 4)}, {FixedPoint.Short(p.Y, 4)})";
}
