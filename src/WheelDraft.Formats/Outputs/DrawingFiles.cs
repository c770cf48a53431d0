using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Formats.Pdf;
using WheelDraft.Formats.Raster;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Outputs;

/// <summary>The sheets of a design as files. Only pictures, PDF and template load the graphics library.</summary>
internal static class DrawingFiles
{
    // 2.5 mm letters are then 18 pixels high: read without zooming, an A4 sheet under half a megabyte.
    private const double PngDpi = 180;

    public static IEnumerable<OutputFile> Svg(OutputTask task)
    {
        SvgOptions options = new() { Theme = task.Request.Theme, Text = task.Request.Text };
        return SideBySide(task, s => new OutputFile($"draw/{s.Words.Name}.svg", Encoding.UTF8.GetBytes(SvgWriter.Write(s, options))));
    }

    public static IEnumerable<OutputFile> Png(OutputTask task)
    {
        PngOptions options = new() { Theme = task.Request.Theme, Dpi = PngDpi };
        return SideBySide(task, s => new OutputFile($"draw/{s.Words.Name}.png", PngWriter.Write(s, options)));
    }

    /// <summary>Sheets know nothing of each other, so they are written side by side; the order is that of the sheets.</summary>
    private static OutputFile[] SideBySide(OutputTask task, Func<Sheet, OutputFile> write)
    {
        OutputFile[] files = new OutputFile[task.Sheets.Count];
        Parallel.For(0, files.Length, i => files[i] = write(task.Sheets[i]));
        return files;
    }

    public static IEnumerable<OutputFile> Pdf(OutputTask task)
    {
        PdfOptions options = new(task.Design.Brief.Title) { Theme = task.Request.Theme, Subject = "Drawings of a contact timer" };
        yield return new("draw/set.pdf", PdfWriter.Write(task.Sheets, options));
    }

    public static IEnumerable<OutputFile> Template(OutputTask task)
    {
        yield return new("print/template.pdf", TemplateWriter.Write(DesignTemplate.Of(task.Design)));
    }
}
