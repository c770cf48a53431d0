using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>A file taken apart: shapes in the frames in which they are drawn, in units of the file.</summary>
internal sealed class SourceDrawing
{
    /// <summary>The number of $INSUNITS; 0 when it is missing.</summary>
    internal int InsUnits { get; set; }

    internal Dictionary<string, SourceBlock> Blocks { get; } = new(StringComparer.OrdinalIgnoreCase);

    internal List<SourceEntity> Entities { get; } = [];

    /// <summary>What was left out.</summary>
    internal List<Finding> Remarks { get; } = [];
}

/// <summary>A named block: entities about a base point.</summary>
internal sealed record SourceBlock(string Name, Point Base)
{
    internal List<SourceEntity> Entities { get; } = [];
}

/// <summary>Something drawn.</summary>
/// <param name="Layer">Its layer; "0" inside a block takes the layer of the reference.</param>
/// <param name="Source">Where it stands in the file.</param>
internal abstract record SourceEntity(string Layer, DxfSource Source);

/// <summary>A shape that becomes pieces.</summary>
internal abstract record SourceShape(string Layer, DxfSource Source, Placement Frame) : SourceEntity(Layer, Source)
{
    /// <summary>Whether it is closed by itself.</summary>
    internal abstract bool IsClosed { get; }

    /// <summary>How much work it is at least, in pieces.</summary>
    internal abstract long Cost(Placement placement, double chordMm);

    /// <summary>Its pieces in order, placed.</summary>
    /// <param name="placement">From the shape's own frame to the drawing in mm.</param>
    /// <param name="chordMm">How far chords may lie from a curve that is no arc; exact shapes do not use it.</param>
    internal abstract IEnumerable<Piece> Pieces(Placement placement, double chordMm);
}

/// <summary>Lines and arcs as they are.</summary>
internal sealed record ExactShape(string Layer, DxfSource Source, Placement Frame, IReadOnlyList<Piece> Own, bool Closed) : SourceShape(Layer, Source, Frame)
{
    internal override bool IsClosed => Closed;

    internal override long Cost(Placement placement, double chordMm) => Own.Count;

    internal override IEnumerable<Piece> Pieces(Placement placement, double chordMm) => Own.Select(p => p.Placed(placement));
}

/// <summary>A reference to a block, possibly in rows and columns.</summary>
internal sealed record SourceReference(string Layer, DxfSource Source, string Block, ReferencePlacement Where) : SourceEntity(Layer, Source);

/// <summary>Where the copies of a block lie.</summary>
/// <param name="Local">From the block, its base point at the origin, to its place, without the shift of rows and columns.</param>
/// <param name="Columns">Copies side by side, from 1.</param>
/// <param name="Rows">Copies one above the other, from 1.</param>
/// <param name="ColumnStep">From one column to the next.</param>
/// <param name="RowStep">From one row to the next.</param>
internal sealed record ReferencePlacement(Placement Local, int Columns, int Rows, Vector ColumnStep, Vector RowStep);
