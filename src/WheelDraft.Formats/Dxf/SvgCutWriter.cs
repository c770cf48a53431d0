using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf;

/// <summary>Writes what is cut as SVG, for laser shops that take no DXF: one colour, hairlines, true size, windows before outlines.</summary>
/// <remarks>Arcs stay arcs. Only contours that are cut through are in it: a shop that cuts every line of one colour must not meet fold lines, marks or
/// the recess, which is why they are left out. Millimetres whatever the drawings use: the size of an SVG is said in them.</remarks>
internal sealed class SvgCutWriter : ICutFileWriter
{
    // A micrometre to a thousandth.
    private const int Decimals = 6;

    // Round the part, mm, so that no line lies on the edge of the picture.
    private const double BorderMm = 5;

    // Thinner than any printer shows: cutters take it for a line to follow.
    private const string HairlineMm = "0.01";

    /// <inheritdoc/>
    public string Write(CutDrawing drawing)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        CutContour[] cut = [.. drawing.Contours.Where(c => c.Layer is CutLayer.Window or CutLayer.Outline)];
        Bounds box = cut.Select(c => c.Contour.Bounds).Aggregate((a, b) => a.With(b)).Grown(BorderMm);
        StringBuilder svg = new();
        svg.Append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        svg.Append($"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{N(box.Width)}mm\" height=\"{N(box.Height)}mm\" viewBox=\"{N(box.MinX)} {N(-box.MaxY)} {N(box.Width)} {N(box.Height)}\">\n");
        foreach (CutNote note in drawing.Notes.Take(1))
        {
            svg.Append($"<title>{System.Security.SecurityElement.Escape(new string([.. note.Text.Where(c => !char.IsControl(c))]))}</title>\n");
        }

        svg.Append($"<g fill=\"none\" stroke=\"#ff0000\" stroke-width=\"{HairlineMm}\">\n");
        foreach (CutContour contour in cut)
        {
            foreach (string element in contour.Tabbed is TabbedContour tabbed ? tabbed.Runs.Select(r => $"<path d=\"{Path(r)}\"/>") : [Element(contour.Contour)])
            {
                svg.Append(element).Append('\n');
            }
        }

        return svg.Append("</g>\n</svg>\n").ToString();
    }

    private static string Element(Contour contour)
    {
        if (contour.Pieces is [Arc circle])
        {
            return $"<circle cx=\"{N(circle.Centre.X)}\" cy=\"{N(-circle.Centre.Y)}\" r=\"{N(circle.RadiusMm)}\"/>";
        }

        return $"<path d=\"{Path(contour.Pieces)}Z\"/>";
    }

    private static string Path(IReadOnlyList<Piece> pieces) => $"M{At(pieces[0].Start)}{string.Concat(pieces.Select(Step))}";

    // An arc of more than half a turn goes in two halves, so that no flag decides between two arcs.
    private static string Step(Piece piece) => piece switch
    {
        Arc arc when Math.Abs(arc.SweepRad) > Math.PI - 1e-6 => Step(arc.Part(0, 0.5)) + Step(arc.Part(0.5, 1)),
        Arc arc => $"A{N(arc.RadiusMm)} {N(arc.RadiusMm)} 0 0 {(arc.SweepRad > 0 ? "0" : "1")} {At(arc.End)}",
        _ => $"L{At(piece.End)}",
    };

    // Downwards is positive in SVG.
    private static string At(Point p) => $"{N(p.X)} {N(-p.Y)}";

    private static string N(double value) => FixedPoint.Short(value, Decimals);
}
