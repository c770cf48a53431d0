using System.Globalization;
using System.Text;
using SkiaSharp;

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

    /// <summary>Many pictures in one run: the browser takes far longer to start than to draw.</summary>
    internal static async Task<IReadOnlyList<Picture>> ChromiumAsync(IReadOnlyList<(string Svg, PixelWindow Size)> pictures, OutsideFolder folder)
    {
        OutsideProgram chromium = OutsideProgram.OrSkip("/usr/bin/chromium", "--version");
        PixelWindow[] places = [.. Places([.. pictures.Select(p => p.Size)])];
        StringBuilder page = new("<!doctype html><style>*{margin:0}img{position:absolute}</style>");
        for (int i = 0; i < pictures.Count; i++)
        {
            await folder.WriteAsync($"{Text(i)}.svg", pictures[i].Svg);
            page.Append(CultureInfo.InvariantCulture, $"<img src=\"{i}.svg\" width=\"{places[i].Width}\" height=\"{places[i].Height}\" style=\"left:{places[i].X}px;top:{places[i].Y}px\">\n");
        }

        string file = await folder.WriteAsync("page.html", page.ToString());
        return await ShotAsync(chromium, (file, places), folder);
    }

    private static async Task<IReadOnlyList<Picture>> ShotAsync(OutsideProgram chromium, (string File, PixelWindow[] Places) page, OutsideFolder folder)
    {
        (string file, PixelWindow[] places) = page;
        await chromium.RunAsync(
            "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update",
            "--disable-sync", "--hide-scrollbars", "--force-device-scale-factor=1", $"--user-data-dir={folder.At("profile")}",
            $"--window-size={Text(places.Max(p => p.X + p.Width))},{Text(places.Max(p => p.Y + p.Height))}", $"--screenshot={folder.At("chromium.png")}", "file://" + file);
        using SKBitmap shot = SKBitmap.Decode(await File.ReadAllBytesAsync(folder.At("chromium.png")));
        return [.. places.Select(p => Picture.Of(shot, p))];
    }

    /// <summary>Pictures set into one page as elements of it, one below the other, where the page has a style of its own that would show if it reached them.</summary>
    internal static async Task<IReadOnlyList<Picture>> ChromiumInlineAsync(IReadOnlyList<(string Svg, PixelWindow Size)> pictures, OutsideFolder folder)
    {
        OutsideProgram chromium = OutsideProgram.OrSkip("/usr/bin/chromium", "--version");
        PixelWindow[] places = [.. Places([.. pictures.Select(p => p.Size)])];
        StringBuilder page = new("<!doctype html><meta charset=utf-8><style>*{margin:0}body{font:italic bold 30px serif;letter-spacing:9px;stroke:red}div{position:absolute}.line,.paper,.copper{fill:red}</style>");
        for (int i = 0; i < pictures.Count; i++)
        {
            string svg = pictures[i].Svg.Replace("<svg ", "<svg style=\"display:block;width:100%;height:100%\" ", StringComparison.Ordinal);
            page.Append(CultureInfo.InvariantCulture, $"<div style=\"left:{places[i].X}px;top:{places[i].Y}px;width:{places[i].Width}px;height:{places[i].Height}px\">{svg}</div>\n");
        }

        string file = await folder.WriteAsync("inline.html", page.ToString());
        return await ShotAsync(chromium, (file, places), folder);
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
