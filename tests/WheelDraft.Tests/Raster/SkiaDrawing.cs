using SkiaSharp;
using Svg;
using Svg.Skia;

namespace WheelDraft.Tests.Raster;

/// <summary>An SVG file as the library Svg.Skia reads it; it paints with the same canvas library as our own writer.</summary>
/// <remarks>Its unit is the pixel of 1/96 in: a file whose size is so many of these is drawn at that size.</remarks>
internal sealed class SkiaDrawing(string svg)
{
    private readonly SvgDocument _document = SvgDocument.FromSvg<SvgDocument>(svg);

    internal Picture Painted(PixelWindow window)
    {
        using SKSvg drawing = new();
        SKPicture picture = drawing.FromSvgDocument(_document) ?? throw new InvalidDataException("Svg.Skia does not draw this.");
        return Picture.Painted(window, canvas => canvas.DrawPicture(picture));
    }

    /// <summary>What is seen when the element of this id is taken out of the file; it is put back afterwards.</summary>
    internal Picture PaintedWithout(string id, PixelWindow window)
    {
        SvgElement element = _document.GetElementById(_document.ID + "-" + id) ?? throw new InvalidDataException($"The file has no '{id}'.");
        SvgElementCollection siblings = element.Parent.Children;
        int place = siblings.IndexOf(element);
        siblings.RemoveAt(place);
        Picture seen = Painted(window);
        siblings.Insert(place, element);
        return seen;
    }
}
