using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using PieceKey = ((long X, long Y) Low, (long X, long Y) High, (long X, long Y) Middle);

namespace WheelDraft.Formats.Dxf;

// The folder "Dxf": drawings for cutting machines. CutDrawing is what a cutting file holds, in no format; DxfWriter turns
// it into bytes; Reading takes in drawings that others made. No engineering and no layout happens here.

/// <summary>What a cutting file holds: closed contours to cut, open lines to scribe or fold along, notes.</summary>
/// <remarks>Immutable and checked: nothing is drawn twice, no cut line is open. The order of each list is kept within its
/// layer; the layers follow each other in the order of <see cref="CutLayer"/>, so that marks come before cuts and inner
/// cuts before outer ones.</remarks>
internal sealed class CutDrawing
{
    private readonly CutContour[] _contours;
    private readonly CutPath[] _paths;
    private readonly CutNote[] _notes;

    /// <summary>A drawing from its parts.</summary>
    /// <param name="unit">Unit of the file; the parts themselves are in mm.</param>
    /// <param name="contours">Closed lines, at least one.</param>
    /// <param name="paths">Open lines. One that repeats an earlier one of its layer is left out.</param>
    /// <param name="notes">Texts that are not cut.</param>
    /// <exception cref="ArgumentException">There is no contour, or two contours share a piece (it would be cut twice).</exception>
    public CutDrawing(DrawingUnit unit, IEnumerable<CutContour> contours, IEnumerable<CutPath>? paths = null, IEnumerable<CutNote>? notes = null)
    {
        ArgumentNullException.ThrowIfNull(contours);
        Unit = unit;
        _contours = [.. contours.OrderBy(c => c.Layer)];
        _paths = [.. WithoutRepeats(paths ?? []).OrderBy(p => p.Layer)];
        _notes = [.. notes ?? []];
        if (_contours.Length == 0)
        {
            throw new ArgumentException("A cutting file needs at least one contour.", nameof(contours));
        }

        RefuseSharedPieces(_contours);
    }

    /// <summary>Unit of the file.</summary>
    public DrawingUnit Unit { get; }

    /// <summary>The closed lines, by layer.</summary>
    public IReadOnlyList<CutContour> Contours => _contours;

    /// <summary>The open lines, by layer.</summary>
    public IReadOnlyList<CutPath> Paths => _paths;

    /// <summary>The texts.</summary>
    public IReadOnlyList<CutNote> Notes => _notes;

    /// <summary>The smallest upright rectangle round all lines, mm, exact.</summary>
    public Bounds Bounds =>
        _contours.Select(c => c.Contour.Bounds)
            .Concat(_paths.SelectMany(p => p.Pieces).Select(p => p.Bounds))
            .Concat(_notes.Select(n => Bounds.Of(n.At)))
            .Aggregate((a, b) => a.With(b));

    /// <summary>The contours of one shape: its holes, then its outer contour.</summary>
    public static IEnumerable<CutContour> ContoursOf(Outline shape)
    {
        ArgumentNullException.ThrowIfNull(shape);
        return shape.Holes.Select(h => new CutContour(CutLayer.Window, h)).Append(new CutContour(CutLayer.Outline, shape.Outer));
    }

    private static IEnumerable<CutPath> WithoutRepeats(IEnumerable<CutPath> paths)
    {
        HashSet<(CutLayer, string)> seen = [];
        foreach (CutPath path in paths)
        {
            string key = string.Join(' ', path.Pieces.Select(KeyOf).Order());
            if (seen.Add((path.Layer, key)))
            {
                yield return path;
            }
        }
    }

    private static void RefuseSharedPieces(CutContour[] contours)
    {
        HashSet<PieceKey> seen = [];
        foreach (Piece piece in contours.SelectMany(c => c.Contour.Pieces))
        {
            if (!seen.Add(KeyOf(piece)))
            {
                throw new ArgumentException(
                    $"The piece from {Text(piece.Start)} to {Text(piece.End)} mm is drawn twice: it would be cut twice.",
                    nameof(contours));
            }
        }
    }

    /// <summary>Two pieces with the same key lie on each other, travelled in either direction.</summary>
    private static PieceKey KeyOf(Piece piece)
    {
        (long X, long Y) start = Grid(piece.Start);
        (long X, long Y) end = Grid(piece.End);
        (long X, long Y) middle = Grid(piece.PointAt(0.5));
        return start.CompareTo(end) <= 0 ? (start, end, middle) : (end, start, middle);
    }

    private static string Text(Point p) => $"({FixedPoint.Short(p.X, 3)}, {FixedPoint.Short(p.Y, 3)})";

    private static (long X, long Y) Grid(Point p)
    {
        // A thousandth of what can be cut apart; coarser, and two honest neighbours would pass for one line.
        const double gridMm = 1e-6;
        return ((long)Math.Round(p.X / gridMm), (long)Math.Round(p.Y / gridMm));
    }
}

/// <summary>The layers of a cutting file, in the order in which they stand in it.</summary>
internal enum CutLayer
{
    /// <summary>Lines to scribe: index mark, part number.</summary>
    Mark,

    /// <summary>Fold lines, at mid-allowance.</summary>
    Fold,

    /// <summary>Outlines of what is sunk into the face and not cut through: the pocket for the copper.</summary>
    Recess,

    /// <summary>Lead-ins: where the cutter starts, in what falls away, up to the first point of a contour.</summary>
    Lead,

    /// <summary>Inner contours and holes.</summary>
    Window,

    /// <summary>Outer contours.</summary>
    Outline,

    /// <summary>Stretches of outer contours that are left uncut: holding tabs.</summary>
    Tab,

    /// <summary>Not for cutting.</summary>
    Note,
}

/// <summary>A closed line of a cutting file.</summary>
/// <param name="Layer">Its layer.</param>
/// <param name="Contour">The line, mm.</param>
internal sealed record CutContour(CutLayer Layer, Contour Contour)
{
    /// <summary>Its holding tabs: the runs between them are cut on its layer, the tabs lie on <see cref="CutLayer.Tab"/>; null for none.</summary>
    public TabbedContour? Tabbed { get; init; }
}

/// <summary>A line of a cutting file that need not be closed.</summary>
internal sealed record CutPath
{
    /// <summary>A line from its pieces.</summary>
    /// <param name="layer">Its layer, not one that is cut through.</param>
    /// <param name="pieces">At least one, each starting where the one before ends.</param>
    /// <exception cref="ArgumentException">The layer is cut through, or the pieces do not follow each other.</exception>
    public CutPath(CutLayer layer, IEnumerable<Piece> pieces)
    {
        if (layer is CutLayer.Outline or CutLayer.Window or CutLayer.Tab)
        {
            throw new ArgumentException($"An open line cannot be cut: layer {layer} takes closed contours only.", nameof(layer));
        }

        Layer = layer;
        Pieces = [.. pieces];
        if (Pieces.Count == 0)
        {
            throw new ArgumentException("A line needs at least one piece.", nameof(pieces));
        }

        for (int i = 1; i < Pieces.Count; i++)
        {
            double gap = Pieces[i - 1].End.DistanceTo(Pieces[i].Start);
            if (!(gap <= Tolerances.JoinMm))
            {
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Piece {i} starts {gap} mm from the end of the one before."), nameof(pieces));
            }
        }
    }

    /// <summary>Its layer.</summary>
    public CutLayer Layer { get; }

    /// <summary>Its pieces in order.</summary>
    public IReadOnlyList<Piece> Pieces { get; }

    /// <summary>Whether it ends where it starts.</summary>
    public bool IsClosed => Pieces[^1].End.DistanceTo(Pieces[0].Start) <= Tolerances.JoinMm;
}

/// <summary>A text on layer <see cref="CutLayer.Note"/>, to be read and not to be cut.</summary>
/// <param name="At">Left end of its base line, mm.</param>
/// <param name="HeightMm">Height of capitals, mm, above 0.</param>
/// <param name="Text">One line; any character.</param>
internal sealed record CutNote(Point At, double HeightMm, string Text);
