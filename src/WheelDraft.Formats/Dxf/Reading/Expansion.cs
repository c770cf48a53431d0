using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Follows block references and places every shape in the drawing, in mm, by layer.</summary>
internal sealed class Expansion
{
    private const int MostDepth = 32;

    private readonly SourceDrawing _source;
    private readonly DxfReadOptions _options;
    private readonly Placement _toMm;
    private readonly Dictionary<string, LoosePieces> _layers = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<LoosePieces> _inOrder = [];
    private readonly List<Finding> _faults = [];
    private readonly List<string> _open = [];
    private readonly HashSet<int> _withoutLength = [];
    private long _pieces;
    private long _references;
    private int _curves;

    internal Expansion(SourceDrawing source, DxfReadOptions options, Placement toMm)
    {
        _source = source;
        _options = options;
        _toMm = toMm;
    }

    internal IReadOnlyList<LoosePieces> Layers => _inOrder;

    internal List<Finding> Remarks { get; } = [];

    internal void Follow()
    {
        foreach (SourceEntity entity in _source.Entities)
        {
            Place(entity, _toMm, null);
        }

        if (_faults.Count > 0)
        {
            throw new DxfReadException(_faults);
        }

        if (_curves > 0)
        {
            Remarks.Add(Finding.Note("drawing.chords", $"{DxfReader.Count(_curves)} ellipses and splines are taken as chords within {FixedPoint.Short(_options.ChordMm!.Value, 6)} mm of them."));
        }

        if (_withoutLength.Count > 0)
        {
            int line = _withoutLength.Min();
            Remarks.Add(Finding.Warning("drawing.short", $"{DxfReader.Count(_withoutLength.Count)} entities have no length and are left out, first at line {FixedPoint.Short(line, 0)}.", new(line, 1)));
        }
    }

    private void Place(SourceEntity entity, Placement placement, string? referenceLayer)
    {
        // Layer "0" inside a block means: the layer of whoever refers to it.
        string layer = referenceLayer is not null && entity.Layer is "0" ? referenceLayer : entity.Layer;
        if (entity is SourceReference reference)
        {
            Refer(reference, placement, layer);
        }
        else
        {
            Place((SourceShape)entity, placement, layer);
        }
    }

    private void Place(SourceShape shape, Placement outer, string layer)
    {
        if (shape is not ExactShape)
        {
            if (_options.ChordMm is null)
            {
                Fault(shape, $"{(shape is EllipseShape ? "ELLIPSE" : "SPLINE")} is no line and no arc: give a chord tolerance (such as 0.01 mm) to take it as chords.");
                return;
            }

            _curves++;
        }

        Placement placement = shape.Frame.Then(outer);
        double chordMm = _options.ChordMm ?? 0;
        Count(ref _pieces, Math.Max(1, shape.Cost(placement, chordMm)), _options.MostPieces, shape, "pieces");
        List<Piece> pieces = [];
        try
        {
            foreach (Piece piece in shape.Pieces(placement, chordMm))
            {
                pieces.Add(piece);
                Count(ref _pieces, shape is SplineShape ? 1 : 0, _options.MostPieces, shape, "pieces");
            }
        }
        catch (ArgumentException)
        {
            Fault(shape, "A block reference scales it so far up or down that nothing is left to draw.");
            return;
        }

        if (pieces.Exists(p => !IsNear(p.Bounds)))
        {
            Fault(shape, "It lies more than a thousand kilometres from the origin, block references and units counted.");
            return;
        }

        if (pieces.Count == 0)
        {
            _withoutLength.Add(shape.Source.Line);
            return;
        }

        LayerOf(layer).Add(pieces, shape.IsClosed, shape.Source);
    }

    private void Refer(SourceReference reference, Placement outer, string layer)
    {
        if (!_source.Blocks.TryGetValue(reference.Block, out SourceBlock? block))
        {
            Fault(reference, $"INSERT refers to block '{Short(reference.Block)}', which is not in the file.");
            return;
        }

        if (_open.Contains(block.Name, StringComparer.OrdinalIgnoreCase) || _open.Count == MostDepth)
        {
            string why = _open.Count == MostDepth ? $"blocks are nested more than {FixedPoint.Short(MostDepth, 0)} deep" : $"block '{Short(block.Name)}' contains itself";
            throw new DxfReadException(reference.Source.Line, $"INSERT: {why}.");
        }

        _open.Add(block.Name);
        ReferencePlacement where = reference.Where;
        Placement local = Placement.Translation(Point.Origin - block.Base).Then(where.Local);
        Count(ref _references, (long)where.Rows * where.Columns, _options.MostReferences, reference, "block references");
        for (int row = 0; row < where.Rows; row++)
        {
            for (int column = 0; column < where.Columns; column++)
            {
                Vector step = (where.ColumnStep * column) + (where.RowStep * row);
                Placement placement = local.Then(Placement.Translation(step)).Then(outer);
                foreach (SourceEntity entity in block.Entities)
                {
                    Place(entity, placement, layer);
                }
            }
        }

        _open.RemoveAt(_open.Count - 1);
    }

    private static bool IsNear(Bounds box)
    {
        const double farMm = 1e9;
        return box.MinX >= -farMm && box.MinY >= -farMm && box.MaxX <= farMm && box.MaxY <= farMm;
    }

    private static void Count(ref long tally, long more, int most, SourceEntity at, string what)
    {
        tally += more;
        if (tally > most)
        {
            throw new DxfReadException(at.Source.Line, $"The drawing has more than {DxfReader.Count(most)} {what}, block references followed; split it.");
        }
    }

    private void Fault(SourceEntity entity, string message)
    {
        const int mostFaults = 20;
        TextPlace place = new(entity.Source.Line, 1);
        if (_faults.Exists(f => f.Where == place))
        {
            return;
        }

        _faults.Add(Finding.Error("drawing.unreadable", message, place));
        if (_faults.Count == mostFaults)
        {
            throw new DxfReadException([.. _faults, Finding.Error("drawing.unreadable", "There may be more: reading stopped here.")]);
        }
    }

    private LoosePieces LayerOf(string name)
    {
        if (!_layers.TryGetValue(name, out LoosePieces? layer))
        {
            layer = new(name);
            _layers.Add(name, layer);
            _inOrder.Add(layer);
        }

        return layer;
    }

    private static string Short(string text) => text.Length > 40 ? text[..40] + "..." : text;
}

/// <summary>What lies on one layer, in mm, before anything is joined.</summary>
internal sealed class LoosePieces
{
    internal LoosePieces(string name) => Name = name;

    internal string Name { get; }

    /// <summary>What is closed by itself.</summary>
    internal List<(IReadOnlyList<Piece> Pieces, DxfSource Source)> Closed { get; } = [];

    /// <summary>The rest, piece by piece.</summary>
    internal List<(Piece Piece, DxfSource Source)> Open { get; } = [];

    internal void Add(IReadOnlyList<Piece> pieces, bool closed, DxfSource source)
    {
        if (closed)
        {
            Closed.Add((pieces, source));
        }
        else
        {
            Open.AddRange(pieces.Select(p => (p, source)));
        }
    }
}
