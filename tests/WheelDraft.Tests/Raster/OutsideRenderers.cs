using System.Globalization;
using System.Text;

namespace WheelDraft.Tests.Raster;

/// <summary>Other projects' programs that draw SVG and PDF.</summary>
internal static class OutsideRenderers
{
    // Chromium draws pages up to 16384 pixels either way.
    private const int WidestPagePixels = 8400;

    internal static async Task<Picture> RsvgAsync(string svg, PixelWindow size, OutsideFolder folder)
    {
        OutsideProgram rsvg = OutsideProgram.OrSkip("/usr/bin/rsvg-convert", "--version");
        string file = await folder.WriteAsync("picture.svg", svg);
        await rsvg.RunAsync("-w", Text(size.Width), "-h", Text(size.Height), "-o", folder.At("rsvg.png"), file);
        return Picture.Of(await File.ReadAllBytesAsync(folder.At("rsvg.png")));
    }

    internal static Task<Picture> ChromiumAsync(string svg, PixelWindow size, OutsideBrowser browser) => browser.PictureAsync(
        (size.Width, size.Height),
        ("page.html", string.Create(CultureInfo.InvariantCulture, $"<!doctype html><style>*{{margin:0}}img{{display:block}}</style><img src=\"picture.svg\" width=\"{size.Width}\" height=\"{size.Height}\">")),
        ("picture.svg", svg));

    /// <summary>Pictures set into one page as elements of it, side by side, where the page has a style of its own that would show if it reached them.</summary>
    internal static async Task<IReadOnlyList<Picture>> ChromiumInlineAsync(IReadOnlyList<(string Svg, PixelWindow Size)> pictures, OutsideBrowser browser)
    {
        PixelWindow[] places = [.. Places([.. pictures.Select(p => p.Size)])];
        StringBuilder page = new("<!doctype html><meta charset=utf-8><style>*{margin:0}body{font:italic bold 30px serif;letter-spacing:9px;stroke:red}div{position:absolute}.line,.paper,.copper{fill:red}</style>");
        for (int i = 0; i < pictures.Count; i++)
        {
            string svg = pictures[i].Svg.Replace("<svg ", "<svg style=\"display:block;width:100%;height:100%\" ", StringComparison.Ordinal);
            page.Append(CultureInfo.InvariantCulture, $"<div style=\"left:{places[i].X}px;top:{places[i].Y}px;width:{places[i].Width}px;height:{places[i].Height}px\">{svg}</div>\n");
        }

        using Picture shot = await browser.PictureAsync((places.Max(p => p.X + p.Width), places.Max(p => p.Y + p.Height)), ("inline.html", page.ToString()));
        return [.. places.Select(shot.Part)];
    }

    /// <summary>A page of a PDF.</summary>
    internal static async Task<Picture> PopplerAsync(byte[] pdf, int page, double dpi, OutsideFolder folder)
    {
        OutsideProgram pdftoppm = OutsideProgram.OrSkip("/usr/bin/pdftoppm", "-v");
        string file = await folder.WriteAsync("pages.pdf", pdf);
        await pdftoppm.RunAsync("-singlefile", "-thinlinemode", "shape", "-f", Text(page), "-l", Text(page), "-r", dpi.ToString(CultureInfo.InvariantCulture), file, folder.At("poppler"));
        return Picture.OfPpm(await File.ReadAllBytesAsync(folder.At("poppler.ppm")));
    }

    /// <summary>Side by side in rows.</summary>
    private static IEnumerable<PixelWindow> Places(IReadOnlyList<PixelWindow> sizes)
    {
        (int x, int y, int rowHeight) = (0, 0, 0);
        foreach (PixelWindow size in sizes)
        {
            if (x > 0 && x + size.Width > WidestPagePixels)
            {
                (x, y, rowHeight) = (0, y + rowHeight, 0);
            }

            yield return new(x, y, size.Width, size.Height);
            (x, rowHeight) = (x + size.Width, Math.Max(rowHeight, size.Height));
        }
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
