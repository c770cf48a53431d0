using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

// The folder "Reading": drawings that others made, as contours and filled areas by layer. The way of the data: bytes (binary ones as
// text: BinaryDxf), pairs (DxfPairs), records (DxfRecords), shapes in their own frames (EntityReader), pieces in place (Expansion),
// contours (LayerJoiner), remarks (CrossingFinder). Nothing is repaired silently; what is left out or joined is reported.

/// <summary>How a drawing is read.</summary>
internal sealed record DxfReadOptions
{
    /// <summary>How far apart ends may lie that are joined, mm; 0.000001 to 1.</summary>
    /// <remarks>The default is far above the rounding of drawings written with four decimals, far below a cut.</remarks>
    public double JoinMm { get; init; } = 0.005;

    /// <summary>How far chords may lie from a curve that is no arc, mm; with null those are not understood.</summary>
    public double? ChordMm { get; init; }

    /// <summary>Millimetres of a unit of the drawing, for files that state none; null asks for it.</summary>
    public double? UnitMm { get; init; }

    /// <summary>Which layers are reported when they do not close, are doubled or cross; all by default. The others are read all the same.</summary>
    public Func<string, bool> Heeds { get; init; } = static _ => true;

    /// <summary>What must be understood of a layer; what need not is listed in <see cref="ReadDrawing.LeftOut"/>. All shapes by default.</summary>
    public Func<string, LayerNeed> Needs { get; init; } = static _ => LayerNeed.Shapes;

    /// <summary>Whether layer TAB is part of layer OUTLINE, as in our own files with holding tabs: a stretch that is left uncut closes the contour. A drawing
    /// whose note says that it has such tabs is read so anyway.</summary>
    public bool TabsCloseOutlines { get; init; }

    /// <summary>The largest file taken in, bytes: a drawing of half a million pieces has about 60 million.</summary>
    internal int MostBytes { get; init; } = 64 << 20;

    /// <summary>The most pieces of the whole drawing, block references followed: bounds memory to some hundred megabytes.</summary>
    internal int MostPieces { get; init; } = 500_000;

    /// <summary>The most block references followed, empty ones included: nested ones multiply.</summary>
    internal int MostReferences { get; init; } = 100_000;
}

/// <summary>Reads DXF from R12 to R2018, ASCII or binary, into contours and filled areas by layer.</summary>
/// <remarks>Takes LINE, ARC, CIRCLE, LWPOLYLINE and POLYLINE with bulges and widths, SOLID, TRACE, 3DFACE, HATCH, INSERT; ELLIPSE, SPLINE
/// and arcs in unevenly scaled references as chords when a tolerance is given. Everything else is listed as left out, or is a fault where
/// its layer must be understood. Time and memory are bounded by the size of the file and by fixed limits.</remarks>
internal static class DxfReader
{
    /// <summary>The drawing in a file's bytes.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="options">How to read it.</param>
    /// <exception cref="DxfReadException">The file is no readable DXF, or holds what cannot be taken in: each reason with its line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of its range.</exception>
    public static ReadDrawing Read(ReadOnlyMemory<byte> bytes, DxfReadOptions? options = null)
    {
        DxfReadOptions chosen = Checked(options ?? new());
        if (bytes.Length > chosen.MostBytes)
        {
            throw new DxfReadException(null, $"The file has {Count(bytes.Length)} bytes; at most {Count(chosen.MostBytes)} are taken in. Leave out lettering and hatching, or split the drawing.");
        }

        SourceDrawing source = DxfRecords.Read(bytes.ToArray());
        chosen = chosen with { TabsCloseOutlines = chosen.TabsCloseOutlines || source.Texts.Any(t => t.Text.Contains(TabNote, StringComparison.Ordinal)) };
        double unitMm = DrawingUnits.MillimetresOf(source.InsUnits) ?? chosen.UnitMm
            ?? throw new DxfReadException(null, $"The drawing states no unit ($INSUNITS is missing, 0 or unknown), and none is guessed: say it with --unit {string.Join('|', DrawingUnits.Names.Select(n => n.Name))}.");
        Expansion expansion = new(source, chosen, Placement.Scaling(unitMm));
        expansion.Follow();
        List<Finding> remarks = [.. expansion.Remarks];
        if (chosen.UnitMm is double asked && asked != unitMm)
        {
            remarks.Add(Finding.Note("drawing.unit", $"The drawing states its unit itself: {FixedPoint.Short(unitMm, 6)} mm; the one given in addition is not used."));
        }

        List<Finding> unheeded = [];
        List<ReadLayer> layers = [.. expansion.Layers.Select(l => LayerJoiner.Join(l, chosen.JoinMm, chosen.Heeds(l.Name) ? remarks : unheeded))];
        foreach (ReadLayer layer in layers.Where(l => chosen.Heeds(l.Name)))
        {
            CrossingFinder.Look(layer, remarks);
        }

        return new(unitMm, layers, remarks) { LeftOut = expansion.LeftOut, Texts = source.Texts };
    }

    /// <summary>What the note of a file with holding tabs says.</summary>
    internal const string TabNote = "HOLDING TABS ON LAYER TAB";

    private static DxfReadOptions Checked(DxfReadOptions options)
    {
        const double leastMm = 1e-6;
        const double largestMm = 1;
        if (!(options.JoinMm >= leastMm && options.JoinMm <= largestMm))
        {
            throw new ArgumentOutOfRangeException(nameof(options), options.JoinMm, "Ends are joined within a tolerance of 0.000001 to 1 mm.");
        }

        if (options.ChordMm is double chord && !(chord >= leastMm && chord <= largestMm))
        {
            throw new ArgumentOutOfRangeException(nameof(options), chord, "Chords keep within a tolerance of 0.000001 to 1 mm.");
        }

        return options.UnitMm is double unit && !(unit >= leastMm && unit <= 1000)
            ? throw new ArgumentOutOfRangeException(nameof(options), unit, "A unit of a drawing measures 0.000001 mm to a metre.")
            : options;
    }

    internal static string Count(long number) => number.ToString("N0", System.Globalization.CultureInfo.InvariantCulture);
}

/// <summary>A drawing that was read.</summary>
/// <param name="UnitMm">Millimetres of a unit of the file.</param>
/// <param name="Layers">The layers that hold something, in the order met.</param>
/// <param name="Remarks">What is wrong with it (open, doubled, crossing: severity error), what was joined or left out.</param>
internal sealed record ReadDrawing(double UnitMm, IReadOnlyList<ReadLayer> Layers, IReadOnlyList<Finding> Remarks)
{
    /// <summary>What was not taken in, by layer and kind of entity, in ordinal order.</summary>
    public IReadOnlyList<LeftOut> LeftOut { get; init; } = [];

    /// <summary>What is written in it, for whoever asks what a drawing says of itself; never shapes.</summary>
    public IReadOnlyList<ReadText> Texts { get; init; } = [];
}

/// <summary>A line of text in a drawing.</summary>
/// <param name="Layer">Its layer.</param>
/// <param name="Text">The line as it stands in the file.</param>
internal readonly record struct ReadText(string Layer, string Text);

/// <summary>A layer of a drawing that was read.</summary>
/// <param name="Name">Its name, spelt as met first.</param>
/// <param name="Contours">Closed contours, mm, in file order, those joined from loose pieces last.</param>
/// <param name="OpenPaths">What does not close, mm.</param>
internal sealed record ReadLayer(string Name, IReadOnlyList<ReadContour> Contours, IReadOnlyList<ReadPath> OpenPaths)
{
    /// <summary>Filled areas, mm; they may overlap each other and the contours, and are filled all the same.</summary>
    public IReadOnlyList<ReadArea> Areas { get; init; } = [];
}

/// <summary>A closed contour and the entity that it begins with.</summary>
internal sealed record ReadContour(Contour Contour, DxfSource Source)
{
    /// <summary>How far it may lie from what was drawn, mm: chords instead of a curve, ends that were joined, one line taken of several on each other.</summary>
    public double OffMm { get; init; }
}

/// <summary>A filled area and the entity that it belongs to.</summary>
/// <param name="Outline">What is filled, mm.</param>
/// <param name="Source">The entity.</param>
/// <param name="OffMm">How far it may lie from what was drawn, mm: chords instead of a curve.</param>
internal sealed record ReadArea(Outline Outline, DxfSource Source, double OffMm);

/// <summary>An open run of pieces and the entity that it begins with.</summary>
internal sealed record ReadPath(IReadOnlyList<Piece> Pieces, DxfSource Source);

/// <summary>The entity in the file that something comes from.</summary>
/// <param name="Line">Line of the file at which it begins, from 1.</param>
/// <param name="Handle">Its handle, or null.</param>
/// <param name="Kind">Kind of entity, as the format names it.</param>
internal readonly record struct DxfSource(int Line, string? Handle, string Kind)
{
    /// <summary>"line 120" or "line 120 (handle 2F)".</summary>
    public override string ToString() => $"line {FixedPoint.Short(Line, 0)}" + (Handle is null ? "" : $" (handle {Handle})");
}

/// <summary>A drawing that cannot be read: every reason found, with its line.</summary>
internal sealed class DxfReadException : Exception
{
    /// <summary>For one reason.</summary>
    /// <param name="line">Line of the file, from 1, or null for the file as a whole.</param>
    /// <param name="message">What was found, what is needed, a way out.</param>
    public DxfReadException(int? line, string message)
        : this([Finding.Error("drawing.unreadable", message, line is int l ? new TextPlace(l, 1) : null)])
    {
    }

    /// <summary>For several reasons.</summary>
    /// <param name="reasons">At least one.</param>
    public DxfReadException(IReadOnlyList<Finding> reasons)
        : base(string.Join('\n', (reasons ?? []).Select(r => (r.Where is TextPlace w ? $"line {FixedPoint.Short(w.Line, 0)}: " : "") + r.Message))) =>
        Reasons = reasons ?? [];

    /// <summary>The reasons in file order; each place is a line of the file.</summary>
    public IReadOnlyList<Finding> Reasons { get; }
}

/// <summary>The units of the format's header.</summary>
internal static class DrawingUnits
{
    /// <summary>Units by the names that a person gives, with their millimetres.</summary>
    public static IReadOnlyList<(string Name, double Mm)> Names { get; } = [("mm", 1), ("in", 25.4), ("cm", 10), ("m", 1000), ("ft", 304.8), ("mil", 0.0254), ("um", 0.001)];

    /// <summary>Millimetres of a unit by its number in $INSUNITS; null for unspecified and unknown ones.</summary>
    /// <remarks>Numbers as in the format owner's description of the variable; lengths exact by definition (inch 25.4 mm).</remarks>
    internal static double? MillimetresOf(int insUnits) => insUnits switch
    {
        1 => 25.4,
        2 => 304.8,
        4 => 1,
        5 => 10,
        6 => 1000,
        8 => 25.4e-6,
        9 => 0.0254,
        10 => 914.4,
        13 => 0.001,
        14 => 100,
        _ => null,
    };
}
