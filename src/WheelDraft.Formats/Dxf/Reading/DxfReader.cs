using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

// The folder "Reading": drawings that others made, as contours by layer. The way of the data: bytes, pairs (DxfPairs),
// records (DxfRecords), shapes in their own frames (EntityReader), pieces in place (Expansion), contours (LayerJoiner),
// remarks (CrossingFinder). Nothing is repaired silently; what is left out or joined is told.

/// <summary>How a drawing is read.</summary>
public sealed record DxfReadOptions
{
    /// <summary>How far apart ends may lie that are joined, mm; 0.000001 to 1.</summary>
    /// <remarks>The default is far above the rounding of drawings written with four decimals, far below a cut.</remarks>
    public double JoinMm { get; init; } = 0.005;

    /// <summary>How far chords may lie from an ellipse or a spline, mm; null refuses those.</summary>
    public double? ChordMm { get; init; }

    /// <summary>Millimetres of a unit of the drawing, for files that state none; null asks for it.</summary>
    public double? UnitMm { get; init; }

    /// <summary>Which layers are told of when they do not close, are doubled or cross; all by default. The others are read all the same.</summary>
    public Func<string, bool> Heeds { get; init; } = static _ => true;

    /// <summary>The largest file taken in, bytes: a drawing of half a million pieces has about 60 million.</summary>
    internal int MostBytes { get; init; } = 64 << 20;

    /// <summary>The most pieces of the whole drawing, block references followed: bounds memory to some hundred megabytes.</summary>
    internal int MostPieces { get; init; } = 500_000;

    /// <summary>The most block references followed, empty ones included: nested ones multiply.</summary>
    internal int MostReferences { get; init; } = 100_000;
}

/// <summary>Reads ASCII DXF from R12 to R2018 into contours by layer.</summary>
/// <remarks>Takes LINE, ARC, CIRCLE, LWPOLYLINE, POLYLINE with bulges, INSERT without distortion; ELLIPSE and SPLINE as
/// chords when a tolerance is given. Time and memory are bounded by the size of the file and by fixed limits.</remarks>
public static class DxfReader
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
            throw new DxfReadException(null, $"The file has {Count(bytes.Length)} bytes; at most {Count(chosen.MostBytes)} are taken in.");
        }

        SourceDrawing source = DxfRecords.Read(bytes.ToArray());
        double unitMm = DrawingUnits.MillimetresOf(source.InsUnits) ?? chosen.UnitMm
            ?? throw new DxfReadException(null, "The drawing states no unit ($INSUNITS is missing or 0): say whether it is in millimetres or in inches.");
        Expansion expansion = new(source, chosen, Placement.Scaling(unitMm));
        expansion.Follow();
        List<Finding> remarks = [.. source.Remarks, .. expansion.Remarks];
        List<Finding> unheeded = [];
        List<ReadLayer> layers = [.. expansion.Layers.Select(l => LayerJoiner.Join(l, chosen.JoinMm, chosen.Heeds(l.Name) ? remarks : unheeded))];
        foreach (ReadLayer layer in layers.Where(l => chosen.Heeds(l.Name)))
        {
            CrossingFinder.Look(layer, remarks);
        }

        return new(unitMm, layers, remarks);
    }

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
public sealed record ReadDrawing(double UnitMm, IReadOnlyList<ReadLayer> Layers, IReadOnlyList<Finding> Remarks);

/// <summary>A layer of a drawing that was read.</summary>
/// <param name="Name">Its name, spelt as met first.</param>
/// <param name="Contours">Closed contours, mm, in file order, those joined from loose pieces last.</param>
/// <param name="OpenPaths">What does not close, mm.</param>
public sealed record ReadLayer(string Name, IReadOnlyList<ReadContour> Contours, IReadOnlyList<ReadPath> OpenPaths);

/// <summary>A closed contour and the entity that it begins with.</summary>
public sealed record ReadContour(Contour Contour, DxfSource Source);

/// <summary>An open run of pieces and the entity that it begins with.</summary>
public sealed record ReadPath(IReadOnlyList<Piece> Pieces, DxfSource Source);

/// <summary>The entity in the file that something comes from.</summary>
/// <param name="Line">Line of the file at which it begins, from 1.</param>
/// <param name="Handle">Its handle, or null.</param>
public readonly record struct DxfSource(int Line, string? Handle)
{
    /// <summary>"line 120" or "line 120 (handle 2F)".</summary>
    public override string ToString() => $"line {FixedPoint.Short(Line, 0)}" + (Handle is null ? "" : $" (handle {Handle})");
}

/// <summary>A drawing that cannot be read: every reason found, with its line.</summary>
public sealed class DxfReadException : Exception
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
