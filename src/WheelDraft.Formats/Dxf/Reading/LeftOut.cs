namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>How much is lost when an entity is left out.</summary>
internal enum LeftOutKind
{
    /// <summary>A shape that is not understood: it may be copper.</summary>
    Shape,

    /// <summary>Words or pictures that are drawn: copper only where somebody etches or cuts them.</summary>
    Words,

    /// <summary>What describes a drawing and is never made: dimensions, leaders, points.</summary>
    Annotation,

    /// <summary>Another sheet of the file.</summary>
    PaperSpace,

    /// <summary>A line on no net that encloses nothing.</summary>
    OpenLine,

    /// <summary>A contour round all nets: the edge of the board, or a frame.</summary>
    Frame,

    /// <summary>What lies on layers that a person left out, or that hold marks and notes only.</summary>
    Ignored,
}

/// <summary>What of a layer must be understood.</summary>
internal enum LayerNeed
{
    /// <summary>Nothing: what is not understood is listed.</summary>
    Nothing,

    /// <summary>Every shape; words are listed.</summary>
    Shapes,

    /// <summary>Everything that is drawn, words included: they may be copper.</summary>
    Everything,
}

/// <summary>Entities of one kind on one layer that were not taken in.</summary>
/// <param name="Layer">The layer on which they lie, block references followed.</param>
/// <param name="Entity">Kind of entity, as the format names it.</param>
/// <param name="What">How much is lost.</param>
/// <param name="Count">How many.</param>
/// <param name="Line">Line of the file at which the first begins, from 1.</param>
/// <param name="Why">Why the first was not taken in.</param>
internal sealed record LeftOut(string Layer, string Entity, LeftOutKind What, int Count, int Line, string Why)
{
    /// <summary>"layer HATCH: 3 MLINE".</summary>
    public override string ToString() => $"layer {Layer}: {DxfReader.Count(Count)} {Entity}{(What == LeftOutKind.PaperSpace ? " in paper space" : "")}";
}
