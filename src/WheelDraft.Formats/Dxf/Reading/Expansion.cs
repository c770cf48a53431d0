using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Follows block references and places every shape in the drawing, in mm, by layer.</summary>
/// <remarks>Whether something that is not understood is a fault or merely listed depends on the layer that it comes to lie on, so that is
/// decided here; blocks that nothing refers to are never looked at.</remarks>
internal sealed class Expansion
{
    private const int MostDepth = 32;

    private readonly SourceDrawing _source;
    private readonly DxfReadOptions _options;
    private readonly Mapping _toMm;
    private readonly Dictionary<string, LoosePieces> _layers = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<LoosePieces> _inOrder = [];
    private readonly SortedDictionary<(string Layer, string Entity, LeftOutKind What), LeftOut> _leftOut = [];
    private readonly List<Finding> _faults = [];
    private readonly HashSet<(int Line, string Layer)> _faulty = [];
    private readonly List<string> _open = [];
    private readonly HashSet<int> _withoutLength = [];
    private long _pieces;
    private long _references;
    private int _curves;
    private int _guessed;

    internal Expansion(SourceDrawing source, DxfReadOptions options, Placement toMm)
    {
        _source = source;
        _options = options;
        _toMm = Mapping.Of(toMm);
    }

    internal IReadOnlyList<LoosePieces> Layers => _inOrder;

    internal List<Finding> Remarks { get; } = [];

    internal IReadOnlyList<LeftOut> LeftOut => [.. _leftOut.Values];

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

        foreach (LeftOut left in _leftOut.Values)
        {
            string message = $"Left out: {left}, first at line {FixedPoint.Short(left.Line, 0)}; {left.Why}.";
            Remarks.Add(left.What == LeftOutKind.Shape ? Finding.Warning("drawing.unread", message, new(left.Line, 1)) : Finding.Note("drawing.left-out", message, new(left.Line, 1)));
        }

        ReportCounts();
    }

    private void ReportCounts()
    {
        if (_curves > 0)
        {
            Remarks.Add(Finding.Note("drawing.chords", $"{DxfReader.Count(_curves)} curves that are no arcs (ellipses, splines, arcs in unevenly scaled blocks) are taken as chords within {FixedPoint.Short(_options.ChordMm!.Value, 6)} mm of them; distances to them count that much less."));
        }

        if (_guessed > 0)
        {
            Remarks.Add(Finding.Warning("drawing.fit-points", $"{DxfReader.Count(_guessed)} splines are given by points to pass through only. They are taken as cubic curves over chord lengths; another program may draw them otherwise, by more than the chord tolerance."));
        }

        if (_withoutLength.Count > 0)
        {
            int line = _withoutLength.Min();
            Remarks.Add(Finding.Warning("drawing.short", $"{DxfReader.Count(_withoutLength.Count)} entities have no length and are left out, first at line {FixedPoint.Short(line, 0)}.", new(line, 1)));
        }
    }

    private void Place(SourceEntity entity, Mapping mapping, string? referenceLayer)
    {
        // Layer "0" inside a block means: the layer of whoever refers to it.
        string layer = referenceLayer is not null && entity.Layer is "0" ? referenceLayer : entity.Layer;
        layer = _options.TabsCloseOutlines && string.Equals(layer, "TAB", StringComparison.OrdinalIgnoreCase) ? "OUTLINE" : layer;
        try
        {
            switch (entity)
            {
                case SourceReference reference:
                    Refer(reference, mapping, layer);
                    break;
                case AreaShape area:
                    Place(area, mapping, layer);
                    break;
                case SourceShape shape:
                    Place(shape, mapping, layer);
                    break;
                case UnreadEntity unread:
                    LeaveOut(unread.Source, layer, unread.What, unread.Why);
                    break;
            }
        }
        catch (UnreadException why)
        {
            LeaveOut(entity.Source, layer, LeftOutKind.Shape, why.Message);
        }
    }

    private void Place(SourceShape shape, Mapping outer, string layer)
    {
        (IReadOnlyList<Piece> pieces, bool chords) = Placed(shape, outer);
        if (pieces.Count == 0)
        {
            _withoutLength.Add(shape.Source.Line);
            return;
        }

        LayerOf(layer).Add(pieces, shape.IsClosed, shape.Source, chords ? _options.ChordMm!.Value : 0);
    }

    /// <summary>The pieces of a shape in their place, and whether they are chords.</summary>
    private (IReadOnlyList<Piece> Pieces, bool Chords) Placed(SourceShape shape, Mapping outer)
    {
        Mapping mapping = Mapping.Of(shape.Frame).Then(outer);
        bool chords = shape.IsChords(mapping);
        if (chords && _options.ChordMm is null)
        {
            throw new UnreadException("it is no line and no arc: give a chord tolerance (such as --chord \"0.01 mm\") to take it as chords");
        }

        double chordMm = _options.ChordMm ?? 0;
        Count(ref _pieces, Math.Max(1, shape.Cost(mapping, chordMm)), _options.MostPieces, shape, "pieces");
        List<Piece> pieces = [];
        try
        {
            foreach (Piece piece in shape.Pieces(mapping, chordMm))
            {
                pieces.Add(piece);
                Count(ref _pieces, shape is SplineShape ? 1 : 0, _options.MostPieces, shape, "pieces");
            }
        }
        catch (ArgumentException)
        {
            throw new UnreadException("a block reference scales it so far up or down that nothing is left to draw");
        }

        if (pieces.Exists(p => !IsNear(p.Bounds)))
        {
            throw new UnreadException("it lies more than a thousand kilometres from the origin, block references and units counted");
        }

        _curves += chords ? 1 : 0;
        _guessed += shape is SplineShape { IsGuessed: true } ? 1 : 0;
        return (pieces, chords);
    }

    private void Place(AreaShape area, Mapping outer, string layer)
    {
        LoosePieces into = LayerOf(layer);
        List<ReadArea> placed = [];
        foreach (AreaRegion region in area.Regions)
        {
            bool chords = false;
            double gapMm = 0;
            List<Contour> contours = [];
            foreach (IReadOnlyList<SourceShape> parts in region.Loops)
            {
                List<IReadOnlyList<Piece>> runs = [];
                foreach (SourceShape part in parts)
                {
                    (IReadOnlyList<Piece> pieces, bool isChords) = Placed(part, outer);
                    chords |= isChords;
                    if (pieces.Count > 0)
                    {
                        runs.Add(pieces);
                    }
                }

                (Contour contour, double gap) = AreaLoops.Closed(runs, _options.JoinMm);
                gapMm = Math.Max(gapMm, gap);
                contours.Add(contour);
            }

            double offMm = gapMm + (chords ? _options.ChordMm!.Value : 0);
            placed.AddRange(AreaLoops.Filled(contours).Select(o => new ReadArea(o, area.Source, offMm)));
        }

        into.Areas.AddRange(placed);
    }

    private void Refer(SourceReference reference, Mapping outer, string layer)
    {
        if (!_source.Blocks.TryGetValue(reference.Block, out SourceBlock? block))
        {
            // What the block held is not known, so nor are the layers: always a fault.
            Fault(reference.Source, layer, $"INSERT refers to block '{Short(reference.Block)}', which is not in the file; bring the block back, or delete the reference.");
            return;
        }

        if (block.IsElsewhere)
        {
            throw new UnreadException($"block '{Short(block.Name)}' lies in another file; bind it into this one");
        }

        if (_open.Contains(block.Name, StringComparer.OrdinalIgnoreCase) || _open.Count == MostDepth)
        {
            string why = _open.Count == MostDepth ? $"blocks are nested more than {FixedPoint.Short(MostDepth, 0)} deep" : $"block '{Short(block.Name)}' contains itself";
            throw new DxfReadException(reference.Source.Line, $"INSERT: {why}; take it apart (explode it), or delete it.");
        }

        _open.Add(block.Name);
        ReferencePlacement where = reference.Where;
        Mapping local = Mapping.Of(Placement.Translation(Point.Origin - block.Base)).Then(where.Local);
        Count(ref _references, (long)where.Rows * where.Columns, _options.MostReferences, reference, "block references");
        for (int row = 0; row < where.Rows; row++)
        {
            for (int column = 0; column < where.Columns; column++)
            {
                Vector step = (where.ColumnStep * column) + (where.RowStep * row);
                Mapping mapping = local.Then(Placement.Translation(step)).Then(outer);
                foreach (SourceEntity entity in block.Entities)
                {
                    Place(entity, mapping, layer);
                }
            }
        }

        _open.RemoveAt(_open.Count - 1);
    }

    /// <summary>Lists what is not taken in, or makes it a fault where its layer must be understood.</summary>
    /// <remarks>A reference that cannot be followed may lead to any layer.</remarks>
    private void LeaveOut(DxfSource source, string layer, LeftOutKind what, string why)
    {
        LayerNeed need = _options.Needs(layer);
        bool anywhere = source.Kind is "INSERT" && what == LeftOutKind.Shape;
        if (anywhere || (what == LeftOutKind.Shape && need != LayerNeed.Nothing) || (what == LeftOutKind.Words && need == LayerNeed.Everything))
        {
            Fault(source, layer, $"{source.Kind}{(source.Handle is null ? "" : $" (handle {source.Handle})")} on layer {Short(layer)}: {why}.");
            return;
        }

        (string, string, LeftOutKind) key = (layer.ToUpperInvariant(), source.Kind, what);
        _leftOut[key] = _leftOut.TryGetValue(key, out LeftOut? known)
            ? known with { Count = known.Count + 1 }
            : new(Short(layer), source.Kind, what, 1, source.Line, why);
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

    private void Fault(DxfSource source, string layer, string message)
    {
        const int mostFaults = 20;
        if (!_faulty.Add((source.Line, layer)))
        {
            return;
        }

        _faults.Add(Finding.Error("drawing.unreadable", message, new TextPlace(source.Line, 1)));
        if (_faults.Count == mostFaults)
        {
            throw new DxfReadException([.. _faults, Finding.Error("drawing.unreadable", "There may be more: reading stopped here. Mend these and try again.")]);
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

    /// <summary>What is closed by itself, and how far it may lie from what was drawn.</summary>
    internal List<(IReadOnlyList<Piece> Pieces, DxfSource Source, double OffMm)> Closed { get; } = [];

    /// <summary>The rest: each line and arc by itself, each curve that became chords as one run, because its chords may be shorter than ends that are joined.</summary>
    internal List<(IReadOnlyList<Piece> Pieces, DxfSource Source, double OffMm)> Open { get; } = [];

    /// <summary>Filled areas.</summary>
    internal List<ReadArea> Areas { get; } = [];

    internal void Add(IReadOnlyList<Piece> pieces, bool closed, DxfSource source, double offMm)
    {
        if (closed)
        {
            Closed.Add((pieces, source, offMm));
        }
        else if (offMm > 0)
        {
            Open.Add((pieces, source, offMm));
        }
        else
        {
            Open.AddRange(pieces.Select(p => ((IReadOnlyList<Piece>)[p], source, offMm)));
        }
    }
}
