using Svg;
using Svg.Skia;

namespace WheelDraft.Tests.Raster;

/// <summary>An SVG file as the library Svg.Skia reads it; it paints with the same canvas library as our own writer.</summary>
/// <remarks>
/// Its unit is the pixel of 1/96 in: a file whose size is so many of these is drawn at that size. For pictures without one of its groups the file is cut
/// at the borders of all groups, and each piece is read once by itself, inside the groups that hold it: such a picture is all pieces but those of the
/// group, each over the ones before, as the file orders them.
/// </remarks>
internal sealed class SkiaDrawing : IDisposable
{
    private readonly SvgDocument _document;
    private readonly Lazy<SKSvg> _whole;
    private readonly List<SKSvg> _pieces = [];
    private readonly SortedSet<int> _ungrouped = [];
    private readonly Dictionary<string, Range> _groups = new(StringComparer.Ordinal);

    internal SkiaDrawing(string svg)
    {
        _document = SvgDocument.FromSvg<SvgDocument>(svg);
        _whole = new(Read);
    }

    public void Dispose()
    {
        _pieces.ForEach(p => p.Dispose());
        if (_whole.IsValueCreated)
        {
            _whole.Value.Dispose();
        }
    }

    internal Picture Painted(PixelWindow window) => Picture.Painted(window, canvas => canvas.DrawPicture(_whole.Value.Picture));

    /// <summary>What is seen when the element of this id is taken out of the file.</summary>
    internal Picture PaintedWithout(string id, PixelWindow window)
    {
        (int first, int count) = PiecesOf(id);
        return Painted(_pieces.Where((_, i) => i < first || i >= first + count), window);
    }

    /// <summary>What is seen of one element of the file that has an id, on the paper: all others with one are taken out.</summary>
    internal Picture PaintedAlone(string id, PixelWindow window)
    {
        (int first, int count) = PiecesOf(id);
        return Painted(_pieces.Where((_, i) => _ungrouped.Contains(i) || (i >= first && i < first + count)), window);
    }

    /// <summary>What is seen when all of them are taken out.</summary>
    internal Picture PaintedWithoutAnyGroup(PixelWindow window)
    {
        Cut();
        return Painted(_ungrouped.Select(i => _pieces[i]), window);
    }

    /// <summary>The same with nothing taken out: the whole again, if cutting it did no harm.</summary>
    internal Picture PaintedFromPieces(PixelWindow window)
    {
        Cut();
        return Painted(_pieces, window);
    }

    private static Picture Painted(IEnumerable<SKSvg> pieces, PixelWindow window) => Picture.Painted(window, canvas =>
    {
        foreach (SKSvg piece in pieces)
        {
            canvas.DrawPicture(piece.Picture);
        }
    });

    private (int First, int Count) PiecesOf(string id)
    {
        Cut();
        return _groups.TryGetValue(_document.ID + "-" + id, out Range pieces) ? pieces.GetOffsetAndLength(_pieces.Count) : throw new InvalidDataException($"The file has no '{id}'.");
    }

    private SKSvg Read()
    {
        SKSvg read = new();
        return read.FromSvgDocument(_document) is null ? throw new InvalidDataException("Svg.Skia does not draw this.") : read;
    }

    private void Cut()
    {
        if (_groups.Count == 0)
        {
            // Read before the file is taken apart.
            _ = _whole.Value;
            Cut(_document);
            _ungrouped.UnionWith(Enumerable.Range(0, _pieces.Count).Where(i => !_groups.Values.Any(g => IsIn(g, i))));
        }
    }

    /// <summary>Takes everything out of an element and puts it back piece by piece, each read while it is there alone.</summary>
    private void Cut(SvgElement element)
    {
        SvgElementCollection present = element.Children;
        SvgElement[] drawn = [.. present.Where(c => c is SvgVisualElement)];
        Empty(present, drawn);
        List<SvgElement> run = [];
        foreach (SvgElement next in drawn)
        {
            if (next is not SvgGroup)
            {
                present.Add(next);
                run.Add(next);
                continue;
            }

            ReadPiece(present, run);
            int first = _pieces.Count;
            present.Add(next);
            Cut(next);
            present.Remove(next);
            _groups[next.ID] = first.._pieces.Count;
        }

        ReadPiece(present, run);
    }

    private void ReadPiece(SvgElementCollection present, List<SvgElement> run)
    {
        if (run.Count > 0)
        {
            _pieces.Add(Read());
            Empty(present, run);
            run.Clear();
        }
    }

    private static bool IsIn(Range pieces, int index) => index >= pieces.Start.Value && index < pieces.End.Value;

    private static void Empty(SvgElementCollection present, IEnumerable<SvgElement> gone)
    {
        foreach (SvgElement element in gone)
        {
            present.Remove(element);
        }
    }
}
