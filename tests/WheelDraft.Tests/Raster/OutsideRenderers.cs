using System.Globalization;
using SkiaSharp;
using Svg.Skia;
using WheelDraft.Drawing;

namespace WheelDraft.Tests.Raster;

/// <summary>Other projects' renderers of SVG and PDF, at the size of a picture of our own.</summary>
internal static class OutsideRenderers
{
    internal static async Task<Picture> RsvgAsync(string svg, Picture size, OutsideFolder folder)
    {
        OutsideProgram rsvg = OutsideProgram.OrSkip("/usr/bin/rsvg-convert", "--version");
        string file = await folder.WriteAsync("picture.svg", svg);
        await rsvg.RunAsync("-w", Text(size.Width), "-h", Text(size.Height), "-o", folder.At("rsvg.png"), file);
        return Picture.Of(await File.ReadAllBytesAsync(folder.At("rsvg.png")));
    }

    internal static async Task<Picture> ChromiumAsync(string svg, Picture size, OutsideFolder folder)
    {
        OutsideProgram chromium = OutsideProgram.OrSkip("/usr/bin/chromium", "--version");
        await folder.WriteAsync("picture.svg", svg);
        string page = await folder.WriteAsync(
            "page.html",
            $"<!doctype html><style>*{{margin:0}}img{{display:block}}</style><img src=\"picture.svg\" width=\"{Text(size.Width)}\" height=\"{Text(size.Height)}\">");
        await chromium.RunAsync(
            "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update",
            "--disable-sync", "--hide-scrollbars", "--force-device-scale-factor=1", $"--user-data-dir={folder.At("profile")}",
            $"--window-size={Text(size.Width)},{Text(size.Height)}", $"--screenshot={folder.At("chromium.png")}", "file://" + page);
        return Picture.Of(await File.ReadAllBytesAsync(folder.At("chromium.png")));
    }

    /// <summary>The library Svg.Skia, which reads SVG for itself and paints with the same canvas library as our own writer.</summary>
    internal static Picture SvgSkia(string svg, Picture size)
    {
        using SKSvg read = new();
        using MemoryStream stream = new(System.Text.Encoding.UTF8.GetBytes(svg));
        SKPicture picture = read.Load(stream) ?? throw new InvalidDataException("Svg.Skia does not read this.");

        // Its own size is rounded to whole pixels of 1/96 in; the scale is taken from the wanted size.
        using SKSurface surface = SKSurface.Create(new SKImageInfo(size.Width, size.Height, SKColorType.Rgb888x, SKAlphaType.Opaque));
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale(size.Width / picture.CullRect.Width, size.Height / picture.CullRect.Height);
        surface.Canvas.DrawPicture(picture);
        using SKImage image = surface.Snapshot();
        using SKData data = image.Encode(SKEncodedImageFormat.Png, 100);
        return Picture.Of(data.ToArray());
    }

    /// <summary>A page of a PDF.</summary>
    internal static async Task<Picture> PopplerAsync(byte[] pdf, int page, double dpi, OutsideFolder folder)
    {
        OutsideProgram pdftoppm = OutsideProgram.OrSkip("/usr/bin/pdftoppm", "-v");
        string file = await folder.WriteAsync("pages.pdf", pdf);
        await pdftoppm.RunAsync("-png", "-singlefile", "-thinlinemode", "shape", "-f", Text(page), "-l", Text(page), "-r", dpi.ToString(CultureInfo.InvariantCulture), file, folder.At("poppler"));
        return Picture.Of(await File.ReadAllBytesAsync(folder.At("poppler.png")));
    }

    /// <summary>The sheet without one of its groups.</summary>
    internal static Sheet Without(Sheet sheet, string id) => new(sheet.Words, sheet.Size, Kept(sheet.Groups, id), sheet.Warnings);

    private static List<SheetGroup> Kept(IEnumerable<SheetGroup> groups, string id) =>
        [.. groups.Where(g => !string.Equals(g.Id, id, StringComparison.Ordinal))
            .Select(g => new SheetGroup(g.Name, [.. g.Content.SelectMany(n => n is SheetGroup nested ? Kept([nested], id) : (IEnumerable<SheetNode>)[n])]))];

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
