using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Pdf;
using WheelDraft.Formats.Raster;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Outputs;

/// <summary>The sheets of a design as files. Only pictures load the graphics library.</summary>
internal static class DrawingFiles
{
    // Pictures of moments, 240 by 135 mm, are 1920 by 1080 pixels, as screens and films have them; larger ones 3840 by 2160.
    private const double FilmPixelsPerMm = 8;
    private const double MostFilmPixels = 3840;

    public static IEnumerable<OutputFile> Svg(OutputTask task) => Svg(task, OutputFiles.DrawFolder, task.Sheets, Options(task) with { WidthMm = task.Request.SvgWidthMm });

    /// <summary>Sheets as SVG into a folder.</summary>
    public static IEnumerable<OutputFile> Svg(OutputTask task, string folder, IReadOnlyList<Sheet> sheets, SvgOptions options) =>
        SideBySide(task, sheets, Environment.ProcessorCount, s => task.File($"{folder}/{s.Words.Name}.svg", () => SvgWriter.Bytes(s, options)));

    /// <summary>How SVGs of a design are written, at true size.</summary>
    public static SvgOptions Options(OutputTask task) =>
        new() { Theme = task.Request.Theme, Text = task.Request.Text, IdPrefix = SvgOptions.PrefixFrom(task.Design.Brief.DrawingNumber, task.Design.Brief.Title), Font = task.Font };

    public static IEnumerable<OutputFile> Png(OutputTask task) => Png(task, OutputFiles.DrawFolder, task.Sheets);

    /// <summary>Sheets as PNG into a folder; one that would have too many pixels is left out, with what helps.</summary>
    public static IEnumerable<OutputFile> Png(OutputTask task, string folder, IReadOnlyList<Sheet> sheets)
    {
        PngOptions options = new() { Theme = task.Request.Theme, Dpi = task.Request.PngDpi, Font = task.Font };
        List<Sheet> pictured = [];
        foreach (Sheet sheet in sheets)
        {
            double most = PngWriter.MostDpi(sheet);
            if (options.Dpi <= most)
            {
                pictured.Add(sheet);
            }
            else
            {
                task.Warn(string.Create(
                    CultureInfo.InvariantCulture,
                    $"The picture {folder}/{sheet.Words.Name}.png is left out: at {options.Dpi} dpi it would have more than {PngWriter.MostPixels / 1_000_000} million pixels. At --dpi {Math.Floor(most)} it has room; the drawing as SVG and PDF is sharp at any size."));
            }
        }

        // Together they take no more memory than the largest of them may.
        long largest = pictured.Select(s => PngWriter.PixelsOf(s, options.Dpi)).DefaultIfEmpty(1).Max();
        int atOnce = (int)Math.Clamp(PngWriter.MostPixels / largest, 1, Environment.ProcessorCount);
        long inOnePiece = pictured.Select(s => PngWriter.PixelsOf(s, options.Dpi)).Where(p => p <= options.MostAtOnce).DefaultIfEmpty(1).Max();
        ConcurrentBag<PictureMemory> memories = [];
        try
        {
            foreach (OutputFile file in SideBySide(task, pictured, atOnce, s => task.File($"{folder}/{s.Words.Name}.png", () => Picture(s, options, (memories, inOnePiece * BytesInPixel)))))
            {
                yield return file;
            }
        }
        finally
        {
            foreach (PictureMemory memory in memories)
            {
                memory.Dispose();
            }
        }
    }

    // As many memories as pictures are painted at once.
    private const long BytesInPixel = 4;

    private static byte[] Picture(Sheet sheet, PngOptions options, (ConcurrentBag<PictureMemory> Free, long MostBytes) memories)
    {
        PictureMemory memory = memories.Free.TryTake(out PictureMemory? free) ? free : new(memories.MostBytes);
        try
        {
            return PngWriter.Write(sheet, options, memory);
        }
        finally
        {
            memories.Free.Add(memory);
        }
    }

    /// <summary>The pictures of a film.</summary>
    public static IEnumerable<OutputFile> Film(MomentFilm film, Theme theme, ScriptFont? font)
    {
        PngOptions options = new() { Theme = theme, Dpi = Math.Min(FilmPixelsPerMm, MostFilmPixels / film.Size.WidthMm) * 25.4, Font = font };
        return AsMade.InOrder(film.Frames, Environment.ProcessorCount, i => new OutputFile($"{OutputFiles.FilmFolder}/{FrameName(i + 1)}", PngWriter.Write(film[i], options)));
    }

    /// <summary>A film in one file, as an SVG that moves and as an animated PNG.</summary>
    public static IEnumerable<OutputFile> Moving(OutputTask task)
    {
        if (task.Request.Moving is not MovingPicture moving)
        {
            return [];
        }

        MomentReel reel = moving.Reel;
        string name = $"{OutputFiles.MovingFolder}/{reel.Name}";
        string prefix = $"film-{FileSlugs.Of([task.Design.Brief.DrawingNumber ?? task.Design.Brief.Title])[0]}-{reel.Name}";
        SvgOptions options = new() { Theme = task.Request.Theme, Text = task.Request.Text, Font = task.Font };
        return (moving.AsSvg ? task.OrLeftOut("the film as SVG", () => new($"{name}.svg", Encoding.UTF8.GetBytes(SvgFilm.Write(reel, prefix, moving.WidthPx, options)))) : [])
            .Concat(moving.AsPng ? task.OrLeftOut("the film as PNG", () => new($"{name}.png", ApngWriter.Write(reel, moving.WidthPx, (task.Request.Theme, task.Font)))) : []);
    }

    /// <summary>The name of a film's picture.</summary>
    /// <param name="number">From 1.</param>
    public static string FrameName(int number) => string.Create(CultureInfo.InvariantCulture, $"frame-{number:D4}.png");

    /// <summary>Sheets know nothing of each other, so they are written side by side; the order is that of the sheets. One that fails is left out.</summary>
    public static IEnumerable<OutputFile> SideBySide(OutputTask task, IReadOnlyList<Sheet> sheets, int atOnce, Func<Sheet, OutputFile> write)
    {
        foreach ((OutputFile? file, string? left) in AsMade.InOrder(sheets.Count, atOnce, i => OrLeft(sheets[i], write)))
        {
            if (file is null)
            {
                task.Warn(left!);
            }
            else
            {
                yield return file;
            }
        }
    }

    private static (OutputFile? File, string? Left) OrLeft(Sheet sheet, Func<Sheet, OutputFile> write)
    {
        try
        {
            return (write(sheet), null);
        }
        catch (Exception trouble) when (trouble is not OutOfMemoryException)
        {
            return (null, OutputTask.LeftOut($"the sheet '{sheet.Words.Name}'", trouble));
        }
    }

    /// <summary>How PDFs of a design are written.</summary>
    public static PdfOptions PdfOf(OutputTask task) =>
        new(task.Design.Brief.Title) { Theme = task.Request.Theme, Subject = "Drawings of a contact timer", Number = task.Design.Brief.DrawingNumber, Author = task.Design.Brief.Office.CreatedBy, Font = task.Font };

    public static IEnumerable<OutputFile> Pdf(OutputTask task)
    {
        PdfOptions options = PdfOf(task);
        return task.OrLeftOut("the set of drawings as PDF", () => task.File($"{OutputFiles.DrawFolder}/set.pdf", () => PdfWriter.Write(task.Sheets, options)));
    }

    public static OutputFile Template(OutputTask task) => task.File("print/template.pdf", () => TemplateWriter.Write(DesignTemplate.Of(task.Design) with { Font = task.Font }));
}
