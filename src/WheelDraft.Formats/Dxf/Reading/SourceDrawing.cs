using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>A file taken apart: shapes in the frames in which they are drawn, in units of the file.</summary>
internal sealed class SourceDrawing
{
    /// <summary>The number of $INSUNITS; 0 when it is missing.</summary>
    internal int InsUnits { get; set; }

    internal Dictionary<string, SourceBlock> Blocks { get; } = new(StringComparer.OrdinalIgnoreCase);

    internal List<SourceEntity> Entities { get; } = [];

    /// <summary>Lines of text wherever they stand, blocks included, in file order.</summary>
    internal List<ReadText> Texts { get; } = [];
}

/// <summary>A named block: entities about a base point.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Base">Its base point.</param>
/// <param name="IsElsewhere">Whether its contents lie in another file (an external reference).</param>
internal sealed record SourceBlock(string Name, Point Base, bool IsElsewhere)
{
    internal List<SourceEntity> Entities { get; } = [];
}

/// <summary>Something drawn.</summary>
/// <param name="Layer">Its layer; "0" inside a block takes the layer of the reference.</param>
/// <param name="Source">Where it stands in the file.</param>
internal abstract record SourceEntity(string Layer, DxfSource Source);

/// <summary>Something that is not taken in.</summary>
/// <param name="Layer">Its layer.</param>
/// <param name="Source">Where it stands in the file.</param>
/// <param name="What">How much is lost with it.</param>
/// <param name="Why">Why not, and what would help; no full stop.</param>
internal sealed record UnreadEntity(string Layer, DxfSource Source, LeftOutKind What, string Why) : SourceEntity(Layer, Source);

/// <summary>A shape that becomes pieces.</summary>
internal abstract record SourceShape(string Layer, DxfSource Source, Placement Frame) : SourceEntity(Layer, Source)
{
    /// <summary>Whether it is closed by itself.</summary>
    internal abstract bool IsClosed { get; }

    /// <summary>Whether it becomes chords when it is placed so.</summary>
    internal abstract bool IsChords(Mapping mapping);

    /// <summary>How much work it is at least, in pieces.</summary>
    internal abstract long Cost(Mapping mapping, double chordMm);

    /// <summary>Its pieces in order, placed.</summary>
    /// <param name="mapping">From the shape's own frame to the drawing in mm.</param>
    /// <param name="chordMm">How far chords may lie from a curve that is no arc; exact shapes do not use it.</param>
    internal abstract IEnumerable<Piece> Pieces(Mapping mapping, double chordMm);
}

/// <summary>Lines and arcs as they are.</summary>
internal sealed record ExactShape(string Layer, DxfSource Source, Placement Frame, IReadOnlyList<Piece> Own, bool Closed) : SourceShape(Layer, Source, Frame)
{
    internal override bool IsClosed => Closed;

    internal override bool IsChords(Mapping mapping) => mapping.Even is null && Own.Any(p => p is Arc);

    internal override long Cost(Mapping mapping, double chordMm) =>
        mapping.Even is null ? Own.Sum(p => p is Arc arc ? mapping.Chords(arc.RadiusMm, arc.SweepRad, chordMm) : 1) : Own.Count;

    internal override IEnumerable<Piece> Pieces(Mapping mapping, double chordMm) => Own.SelectMany(p => mapping.Of(p, chordMm));
}

/// <summary>A filled area: regions that are all filled, whether they overlap or not.</summary>
/// <param name="Layer">Its layer.</param>
/// <param name="Source">Where it stands in the file.</param>
/// <param name="Frame">The frame in which it is drawn.</param>
/// <param name="Regions">The regions.</param>
internal sealed record AreaShape(string Layer, DxfSource Source, Placement Frame, IReadOnlyList<AreaRegion> Regions) : SourceEntity(Layer, Source);

/// <summary>Part of an area: the outermost of its loops is filled, the next are holes, and so on.</summary>
/// <param name="Loops">Each loop from its parts in order, some of which may run the other way.</param>
internal sealed record AreaRegion(IReadOnlyList<IReadOnlyList<SourceShape>> Loops);

/// <summary>A reference to a block, possibly in rows and columns.</summary>
internal sealed record SourceReference(string Layer, DxfSource Source, string Block, ReferencePlacement Where) : SourceEntity(Layer, Source);

/// <summary>Where the copies of a block lie.</summary>
/// <param name="Local">From the block, its base point at the origin, to its place, without the shift of rows and columns.</param>
/// <param name="Columns">Copies side by side, from 1.</param>
/// <param name="Rows">Copies one above the other, from 1.</param>
/// <param name="ColumnStep">From one column to the next.</param>
/// <param name="RowStep">From one row to the next.</param>
internal sealed record ReferencePlacement(Mapping Local, int Columns, int Rows, Vector ColumnStep, Vector RowStep);
