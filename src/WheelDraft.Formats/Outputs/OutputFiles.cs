using System.Text;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf;
using WheelDraft.Formats.Guide;
using WheelDraft.Formats.Page;
using WheelDraft.Formats.Raster;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Outputs;

// Which files a design becomes, by kind and name. How each is written is the business of the folder of its format.

/// <summary>A kind of output.</summary>
public enum OutputKind
{
    /// <summary>report.json, report.md and report.html.</summary>
    Report,

    /// <summary>Cutting files.</summary>
    Cut,

    /// <summary>Drawings as SVG.</summary>
    Draw,

    /// <summary>Drawings as PNG, beside the SVG ones.</summary>
    Png,

    /// <summary>All drawings in one PDF.</summary>
    Pdf,

    /// <summary>What a person builds by: the guide, as a page and to print, and the true-size template.</summary>
    Print,

    /// <summary>The page on which the wheel turns.</summary>
    Show,

    /// <summary>What a made timer is proved by on the bench: the plan, an empty log, the inspector's table.</summary>
    Bench,
}

/// <summary>What is wanted of the outputs.</summary>
public sealed record OutputRequest
{
    /// <summary>The kinds.</summary>
    public IReadOnlyList<OutputKind> Kinds { get; init; } = Enum.GetValues<OutputKind>();

    /// <summary>Whether cutting files are written in spite of findings of severity error.</summary>
    public bool DespiteFindings { get; init; }

    /// <summary>The version of cutting files.</summary>
    public DxfVersion Dxf { get; init; } = DxfVersion.R2000;

    /// <summary>Length of the lead-ins of the parts' DXF files, mm; 0 for none.</summary>
    public double LeadInMm { get; init; }

    /// <summary>Whether cutting files are written as DXF.</summary>
    public bool CutAsDxf { get; init; } = true;

    /// <summary>Whether cutting files are written as SVG: what is cut through and nothing else.</summary>
    public bool CutAsSvg { get; init; }

    /// <summary>Whether cutting files follow the finished edges, for a shop that allows for its kerf itself.</summary>
    public bool Nominal { get; init; }

    /// <summary>Colours of drawings. Templates are black on white with any theme.</summary>
    public Theme Theme { get; init; } = Theme.Light;

    /// <summary>Whether the texts of SVG drawings are live or strokes; all other drawings have strokes.</summary>
    public SvgText Text { get; init; } = SvgText.Live;

    /// <summary>What sheets show: a moment, callouts in words or numbers.</summary>
    public SheetOptions Sheets { get; init; } = SheetOptions.Usual;

    /// <summary>Width at which SVG drawings are shown, mm; null for the true size of each sheet.</summary>
    public double? SvgWidthMm { get; init; }

    /// <summary>Pixels per inch of PNG drawings, 10 to 2400; at 150 letters of 2.5 mm are read without zooming.</summary>
    public double PngDpi { get; init; } = 150;

    /// <summary>The film to draw as well, picture by picture, with any kinds; null for none.</summary>
    public MomentFilm? Film { get; init; }

    /// <summary>The narrowest figures, mm.</summary>
    public const double LeastFigureMm = DesignFigures.LeastWidthMm;

    /// <summary>The widest figures, mm.</summary>
    public const double MostFigureMm = DesignFigures.MostWidthMm;

    /// <summary>Width of the figures to draw as well, mm, with any kinds; null for none.</summary>
    public double? FigureWidthMm { get; init; }

    /// <summary>The film to write as well in one file, with any kinds; null for none.</summary>
    public MovingPicture? Moving { get; init; }

    /// <summary>The one file that is written, while all others are only named and stay empty; "" for none, null for all of them.</summary>
    internal string? Only { get; init; }
}

/// <summary>A film that is one file and needs no other program.</summary>
/// <param name="Reel">What it shows.</param>
public sealed record MovingPicture(MomentReel Reel)
{
    /// <summary>Whether it is written as an SVG that moves.</summary>
    public bool AsSvg { get; init; } = true;

    /// <summary>Whether it is written as an animated PNG.</summary>
    public bool AsPng { get; init; } = true;

    /// <summary>Width in pixels; the height follows.</summary>
    public int WidthPx { get; init; } = 960;
}

/// <summary>One file of a set.</summary>
/// <param name="Name">Name below the folder, parted by forward slashes.</param>
/// <param name="Bytes">Its content.</param>
public sealed record OutputFile(string Name, byte[] Bytes);

/// <summary>The files that a design becomes.</summary>
public static class OutputFiles
{
    /// <summary>The folder of cutting files.</summary>
    public const string CutFolder = "cut";

    /// <summary>The folder of drawings.</summary>
    public const string DrawFolder = "draw";

    /// <summary>The folder of a film's pictures.</summary>
    public const string FilmFolder = "frames";

    /// <summary>The folder of figures.</summary>
    public const string FigureFolder = "figures";

    /// <summary>The folder of films that are one file.</summary>
    public const string MovingFolder = "film";

    /// <summary>Whether the files that parts are cut by, cutting files and the true-size template, are withheld.</summary>
    public static bool Withheld(Design design, OutputRequest request)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(request);
        return !design.Meets && !request.DespiteFindings;
    }

    /// <summary>Whether a file of an earlier run of the same design goes when this run did not make it: because parts must not be cut by it,
    /// or because its kind is made again and it is not among the new ones.</summary>
    /// <param name="name">Name below the folder, parted by forward slashes.</param>
    /// <param name="design">The design.</param>
    /// <param name="request">What is wanted.</param>
    public static bool IsReplaced(string name, Design design, OutputRequest request)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(request);
        if (KindOf(name) is OutputKind.Cut or OutputKind.Print && Withheld(design, request))
        {
            return true;
        }

        // A picture of a moment shows nothing that was asked for now, no matter which of its two kinds is made again.
        if (name is DrawFolder + "/moment.svg" or DrawFolder + "/moment.png")
        {
            return request.Kinds.Any(k => k is OutputKind.Draw or OutputKind.Png);
        }

        return KindOf(name) is OutputKind kind ? request.Kinds.Contains(kind) : (name.StartsWith(FilmFolder + "/", StringComparison.Ordinal) && request.Film is not null)
            || (name.StartsWith(FigureFolder + "/", StringComparison.Ordinal) && request.FigureWidthMm is not null);
    }

    // Charts of runs and of bench logs are made by the commands that play and compare them, and stay.
    private static OutputKind? KindOf(string name) => name switch
    {
        "report.json" or "report.md" or "report.html" or BillOfMaterials.FileName => OutputKind.Report,
        GuideFiles.Page => OutputKind.Print,
        DrawFolder + "/set.pdf" => OutputKind.Pdf,
        _ when name.StartsWith(CutFolder + "/", StringComparison.Ordinal) => OutputKind.Cut,
        _ when name.StartsWith("print/", StringComparison.Ordinal) => OutputKind.Print,
        "show/compare.html" => null,
        _ when name.StartsWith("show/compare-", StringComparison.Ordinal) => null,
        _ when name.StartsWith("show/", StringComparison.Ordinal) => OutputKind.Show,
        _ when name.StartsWith(BenchFiles.Folder + "/", StringComparison.Ordinal) => OutputKind.Bench,
        DrawFolder + "/compare.svg" or DrawFolder + "/batch.svg" => null,
        _ when name.StartsWith(DrawFolder + "/compare-", StringComparison.Ordinal) => null,
        _ when !name.StartsWith(DrawFolder + "/", StringComparison.Ordinal) || name.StartsWith(DrawFolder + "/run-", StringComparison.Ordinal) => null,
        _ when name.EndsWith(".svg", StringComparison.Ordinal) => OutputKind.Draw,
        _ when name.EndsWith(".png", StringComparison.Ordinal) => OutputKind.Png,
        _ => null,
    };

    /// <summary>The files, in the order of their kinds, then figures, a film's pictures last.</summary>
    /// <param name="design">The design.</param>
    /// <param name="request">What is wanted.</param>
    /// <param name="warn">Told what drawings had to do without (a character shown as a box, a label without room, a whole sheet), each once, when they are drawn.</param>
    public static IEnumerable<OutputFile> Of(Design design, OutputRequest request, Action<string>? warn = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(request);
        OutputTask task = new(request.Nominal ? design with { Parts = design.Parts.Nominal() } : design, request, warn ?? (_ => { }));
        return request.Kinds.Distinct().Order().SelectMany(kind => Of(task, kind)).Concat(FigureFiles.Of(task)).Concat(Film(task)).Concat(DrawingFiles.Moving(task));
    }

    /// <summary>The names of the files, without what costs time: nothing is written. One that then cannot be written is named all the same.</summary>
    /// <param name="design">The design.</param>
    /// <param name="request">What is wanted.</param>
    internal static IEnumerable<string> NamesOf(Design design, OutputRequest request) => Of(design, request with { Only = "" }).Select(f => f.Name);

    /// <summary>One file of the set by its name, no other being written; null when there is none of that name, or it cannot be written.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="design">The design.</param>
    /// <param name="request">What is wanted of the set.</param>
    internal static OutputFile? Named(string name, Design design, OutputRequest request)
    {
        // The report shows the drawings that are made with it.
        IReadOnlyList<OutputKind> kinds = KindOf(name) is not OutputKind kind ? request.Kinds : kind == OutputKind.Report ? [kind, OutputKind.Draw] : [kind];
        return Of(design, request with { Kinds = [.. kinds.Intersect(request.Kinds)], Only = name }).FirstOrDefault(f => string.Equals(f.Name, name, StringComparison.Ordinal));
    }

    private static IEnumerable<OutputFile> CutFiles(OutputTask task)
    {
        (Design design, OutputRequest request) = (task.Design, task.Request);
        return
        [
            .. design.Parts.All.SelectMany(p => Cut(task, p.CutName, () => PartCutFile.Of(design, p, request.LeadInMm))),
            .. from nested in design.Parts.Nested
               from index in Enumerable.Range(0, nested.Result.Sheets.Count)
               let suffix = request.Nominal && nested.Pieces[0].Part.KerfMm > 0 ? "-nominal" : ""
               from file in Cut(task, NestSheet.Name(nested, index) + suffix, () => SheetCutFile.Of(design, nested, index, request.Nominal))
               select file,
            task.File($"{CutFolder}/{OrderNote.FileName}", () => Encoding.UTF8.GetBytes(OrderNote.Write(design, request.Nominal))),
        ];
    }

    private static IEnumerable<OutputFile> Cut(OutputTask task, string name, Func<CutDrawing> draw)
    {
        Lazy<CutDrawing> drawing = new(draw);
        return
        [
            .. task.Request.CutAsDxf ? [task.File($"{CutFolder}/{name}.dxf", () => Encoding.ASCII.GetBytes(DxfWriter.Write(drawing.Value, task.Request.Dxf)))] : (OutputFile[])[],
            .. task.Request.CutAsSvg ? [task.File($"{CutFolder}/{name}.svg", () => Encoding.UTF8.GetBytes(new SvgCutWriter().Write(drawing.Value)))] : (OutputFile[])[],
        ];
    }

    // One line a kind. Drawings come before pictures, so that a stop half-way has spent its time on what is quick.
    private static IEnumerable<OutputFile> Of(OutputTask task, OutputKind kind) => kind switch
    {
        OutputKind.Report => ReportFiles.Of(task),
        OutputKind.Cut => Withheld(task.Design, task.Request) ? [] : CutFiles(task),
        OutputKind.Draw => DrawingFiles.Svg(task),
        OutputKind.Png => DrawingFiles.Png(task),
        OutputKind.Pdf => DrawingFiles.Pdf(task),
        OutputKind.Print => Withheld(task.Design, task.Request) ? [] : GuideFiles.Of(task).Concat(task.OrLeftOut("the template", () => DrawingFiles.Template(task))),
        OutputKind.Show => task.OrLeftOut("the page", () => task.File("show/index.html", () => ShowPage.Write(task.Design))),
        OutputKind.Bench => BenchFiles.Of(task),
        _ => throw new NotSupportedException($"Outputs of kind {kind}."),
    };

    private static IEnumerable<OutputFile> Film(OutputTask task) => task.Request.Film is MomentFilm film ? DrawingFiles.Film(film, task.Request.Theme, task.Font) : [];
}

/// <summary>A design and what is wanted of it; its sheets are drawn once, when the first kind asks for them.</summary>
/// <param name="design">The design.</param>
/// <param name="request">What is wanted of it.</param>
/// <param name="warn">Told what drawings had to do without, and which of them were left out.</param>
internal sealed class OutputTask(Design design, OutputRequest request, Action<string> warn)
{
    private readonly Lazy<ScriptFont?> _font = new(() => FontOf(design.Brief, warn));
    private Lazy<IReadOnlyList<Sheet>>? _sheets;

    public Design Design => design;

    public OutputRequest Request => request;

    public IReadOnlyList<Sheet> Sheets => (_sheets ??= new(() => Drawn(design, request, warn))).Value;

    /// <summary>The font for letters that the stroke alphabet lacks, or null; read when it is first asked for.</summary>
    public ScriptFont? Font => _font.Value;

    public void Warn(string warning) => warn(warning);

    /// <summary>A file; empty where only its name is wanted.</summary>
    public OutputFile File(string name, Func<byte[]> write) => new(name, request.Only is null || string.Equals(request.Only, name, StringComparison.Ordinal) ? write() : []);

    /// <summary>A file, or none and a warning: a drawing that fails never costs the report and the cutting files.</summary>
    public IEnumerable<OutputFile> OrLeftOut(string what, Func<OutputFile> write)
    {
        try
        {
            return [write()];
        }
        catch (Exception trouble) when (trouble is not OutOfMemoryException)
        {
            warn(LeftOut(what, trouble));
            return [];
        }
    }

    /// <summary>The warning for a drawing that could not be written.</summary>
    public static string LeftOut(string what, Exception trouble) =>
        $"{char.ToUpperInvariant(what[0])}{what[1..]} is left out: this is a fault of the program, not of your file ({trouble.GetType().Name}: {trouble.Message.TrimEnd('.')}); please report it. Everything else is made all the same.";

    private IReadOnlyList<Sheet> Drawn(Design design, OutputRequest request, Action<string> warn)
    {
        IReadOnlyList<Sheet> sheets = DesignSheets.Of(design, request.Sheets, warn);
        foreach (string warning in sheets.SelectMany(s => s.Warnings).Distinct(StringComparer.Ordinal).Concat(MissingLetters.Of(sheets, () => Font)))
        {
            warn(warning);
        }

        return sheets;
    }

    private static ScriptFont? FontOf(Brief brief, Action<string> warn)
    {
        try
        {
            return ScriptFont.Of(brief);
        }
        catch (InvalidDataException trouble)
        {
            warn(trouble.Message);
            return null;
        }
    }
}
