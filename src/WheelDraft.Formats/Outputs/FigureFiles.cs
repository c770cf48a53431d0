using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Page;
using WheelDraft.Formats.Pdf;
using WheelDraft.Formats.Raster;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Outputs;

/// <summary>The figures of a design as files, each as SVG, PNG and PDF, and their captions, ready to be set into a text.</summary>
internal static class FigureFiles
{
    /// <summary>Name of the page of captions.</summary>
    public const string Captions = OutputFiles.FigureFolder + "/captions.md";

    /// <summary>The files; none where no figures were asked for.</summary>
    public static IEnumerable<OutputFile> Of(OutputTask task)
    {
        if (task.Request.FigureWidthMm is not double width)
        {
            return [];
        }

        IReadOnlyList<Sheet> figures = Drawn(task, width);

        // A figure and the sheet of the same name may stand in one page, so ids of figures say what they are of.
        SvgOptions options = DrawingFiles.Options(task);
        return DrawingFiles.Svg(task, OutputFiles.FigureFolder, figures, options with { IdPrefix = options.IdPrefix + "figure-" })
            .Concat(DrawingFiles.Png(task, OutputFiles.FigureFolder, figures))
            .Concat(DrawingFiles.SideBySide(task, figures, Environment.ProcessorCount, f => task.File($"{OutputFiles.FigureFolder}/{f.Words.Name}.pdf", () => PdfWriter.Write([f], DrawingFiles.PdfOf(task) with { Title = Titled(f) }))))
            .Append(new(Captions, Encoding.UTF8.GetBytes(Page(task.Design, figures))));
    }

    private static string Titled(Sheet figure) => ReadersWords.Read(figure.Words.Title).TrimEnd('.');

    private static IReadOnlyList<Sheet> Drawn(OutputTask task, double widthMm)
    {
        IReadOnlyList<Sheet> figures = DesignFigures.Of(task.Design, widthMm, task.Request.Sheets, task.Warn);
        foreach (string warning in figures.SelectMany(f => f.Warnings).Distinct(StringComparer.Ordinal).Concat(MissingLetters.Of(figures, () => task.Font)))
        {
            task.Warn(warning);
        }

        return figures;
    }

    // Every line is written whole, so that it can be copied with one stroke.
    private static string Page(Design design, IReadOnlyList<Sheet> figures)
    {
        StringBuilder page = new();
        page.Append("# ").Append(Plain(ReadersWords.Read($"Figures of {design.Brief.Title}"))).Append("\n\n");
        page.Append(ReadersWords.Read($"Each figure is `NAME.svg`, `NAME.png` and `NAME.pdf`, {Wording.Number(figures.Count == 0 ? 0 : figures[0].WidthMm, 2)} mm wide. The line under its caption sets it with its alternative text.")).Append("\n\n");
        foreach (Sheet figure in figures)
        {
            page.Append("## ").Append(figure.Words.Name).Append("\n\n");
            page.Append(ReadersWords.Read("Caption")).Append(": ").Append(Plain(ReadersWords.Read(figure.Words.Title))).Append("\n\n");
            page.Append(ReadersWords.Read("Alternative text")).Append(": ").Append(Plain(ReadersWords.Read(figure.Words.Description))).Append("\n\n");
            page.Append("```html\n<img src=\"figures/").Append(figure.Words.Name).Append(".svg\" alt=\"").Append(SvgMarkup.Escaped(ReadersWords.Read(figure.Words.Description))).Append("\">\n```\n\n");
            foreach (string warning in figure.Warnings)
            {
                page.Append(ReadersWords.Read("Not shown")).Append(": ").Append(Plain(warning)).Append("\n\n");
            }
        }

        page.Append("## ").Append(ReadersWords.Read("The page on which the wheel turns")).Append("\n\n```html\n").Append(ShowLink.Frame(design, "show/index.html")).Append("\n```\n");
        return page.ToString();
    }

    // Names come from the file: what Markdown would read as marks is escaped.
    private static string Plain(string words) =>
        string.Concat(words.Select(c => c is '\\' or '`' or '*' or '_' or '[' or ']' or '<' or '>' or '|' or '#' ? $"\\{c}" : c.ToString()));
}
