using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Pdf;

/// <summary>What stands round the drawing on every page of a template: check lines, marks of the joins, words.</summary>
internal sealed class TemplateFrame
{
    // A page that shows less than this is no use, mm.
    private const double LeastMm = 100;

    // Captions keep off the edge of the paper, mm: what printers leave white; common practice, no source.
    private const double CaptionMm = 8;

    private static readonly LineStyle Fine = LineStyle.Of(LineKind.ContinuousNarrow, Ink.Dimension);

    private readonly PaperSize _paper;

    /// <summary>The frame of a paper.</summary>
    /// <exception cref="ArgumentException">The paper leaves less than 100 mm to draw on.</exception>
    internal TemplateFrame(PaperSize paper)
    {
        _paper = paper;
        Window = TemplateSheets.WindowOf(paper);
        if (Window.Width < LeastMm || Window.Height < LeastMm)
        {
            throw new ArgumentException($"Paper {paper.Name} leaves less than 100 mm to draw on: take A4 or Letter.", nameof(paper));
        }
    }

    /// <summary>Mark of the parameter file; empty for none.</summary>
    internal string Input { get; init; } = "";

    /// <summary>The check lines.</summary>
    internal CheckLine Check { get; init; } = CheckLine.Of(DrawingUnit.Millimetre);

    /// <summary>Words across every page, under a cross; empty for none.</summary>
    internal string Warning { get; init; } = "";

    /// <summary>Where a page shows the drawing.</summary>
    internal Bounds Window { get; }

    /// <summary>The marks of one page.</summary>
    /// <param name="leaf">The page.</param>
    /// <param name="number">Its number and the number of all.</param>
    internal Sheet Marks(TemplateLeaf leaf, (string Page, string Of) number)
    {
        Tile tile = leaf.Tile;
        string place = leaf.Plan is not TilePlan plan
            ? ""
            : $", column {FixedPoint.Short(tile.Column + 1, 0)} of {FixedPoint.Short(plan.Columns, 0)}, row {FixedPoint.Short(tile.Row + 1, 0)} of {FixedPoint.Short(plan.Rows, 0)} from below";
        return new Sheet(
            new($"template-{number.Page}", $"{leaf.Title}, true size, page {number.Page}", "A page of a true-size template with its check lines."),
            _paper,
            [
                new(new("checks", "Check lines", "checks"), Checks()),
                new(new("words", "Words", "words"), Words($"{leaf.Title}: page {number.Page} of {number.Of}{place}{(Input.Length > 0 ? $", input {Input}" : "")}")),
                .. Warning.Length > 0 ? [new SheetGroup(new("warning", "Warning", "warning"), Cross())] : Array.Empty<SheetGroup>(),
                new(new("joins", "Joins", "joins"), leaf.Plan is TilePlan shared ? Joins(shared, tile) : []),
            ],
            []);
    }

    private List<SheetNode> Checks()
    {
        Point across = new(Window.MinX, 13);
        Point along = new(13, Window.MinY);
        return
        [
            .. Ruler(across, across + new Vector(Check.LengthMm, 0)),
            new SheetText($"{Check.Words} across: measure it before cutting", new(across + new Vector(Check.LengthMm + 4, 0), TextAlong.Start, TextAcross.Middle), TextStyle.Small),
            .. Ruler(along, along + new Vector(0, Check.LengthMm)),
            new SheetText($"{Check.Words} along: measure it before cutting", new(along + new Vector(0, Check.LengthMm + 4), TextAlong.Start, TextAcross.Middle, Math.PI / 2), TextStyle.Small),
        ];
    }

    /// <summary>A cross over the whole window, and the warning on a plain field in its middle.</summary>
    private List<SheetNode> Cross()
    {
        TextStyle style = new(10, TextWeight.Heavy);
        LineStyle wide = LineStyle.Wide(LineKind.ContinuousWide, Ink.Outline, 1.4);
        Bounds field = new SheetText(Warning, new(Window.Centre, TextAlong.Middle, TextAcross.Middle), style).Bounds.Grown(3);
        return
        [
            new SheetLine(new Point(Window.MinX, Window.MinY), new Point(Window.MaxX, Window.MaxY), wide),
            new SheetLine(new Point(Window.MinX, Window.MaxY), new Point(Window.MaxX, Window.MinY), wide),
            new SheetArea(new Outline(Contour.Rectangle(new(field.MinX, field.MinY), new(field.MaxX, field.MaxY))), Fill.Of(FillKind.Paper), wide),
            new SheetText(Warning, new(Window.Centre, TextAlong.Middle, TextAcross.Middle), style),
        ];
    }

    /// <summary>A line whose length counts between the middles of its end ticks; small ticks every 10 mm or half an inch.</summary>
    private IEnumerable<SheetNode> Ruler(Point from, Point to)
    {
        Vector way = (to - from).Unit();
        yield return new SheetLine(from, to, Fine);
        for (int tick = 0; tick <= Check.Parts; tick++)
        {
            double half = tick == 0 || tick == Check.Parts ? 3 : 1;
            Point at = from + (way * (tick * Check.LengthMm / Check.Parts));
            yield return new SheetLine(at - (way.Left * half), at + (way.Left * half), Fine);
        }
    }

    private List<SheetNode> Words(string caption)
    {
        FittedText fitted = TextFit.Into(caption, Window.Width, TextStyle.Label);
        Point top = new(Window.MinX, _paper.HeightMm - CaptionMm);
        return
        [
            .. fitted.Lines.Select((line, i) => new SheetText(line, new(top - new Vector(0, i * fitted.PitchMm), TextAlong.Start, TextAcross.Top), fitted.Style)),
            new SheetText("True size: print at 100 %, not fitted to the page.", new(new(Window.MinX, 18.5)), TextStyle.Small),
        ];
    }

    private List<SheetNode> Joins(TilePlan plan, Tile tile)
    {
        List<SheetNode> marks = [];
        double inset = TilePlan.OverlapMm / 2;
        if (tile.Column > 0)
        {
            Join(marks, new(Window.MinX + inset, Window.MinY), new(0, Window.Height), plan.Join(tile with { Column = tile.Column - 1 }, toTheRight: true));
        }

        if (tile.Column < plan.Columns - 1)
        {
            Join(marks, new(Window.MaxX - inset, Window.MinY), new(0, Window.Height), plan.Join(tile, toTheRight: true));
        }

        if (tile.Row > 0)
        {
            Join(marks, new(Window.MinX, Window.MinY + inset), new(Window.Width, 0), plan.Join(tile with { Row = tile.Row - 1 }, toTheRight: false));
        }

        if (tile.Row < plan.Rows - 1)
        {
            Join(marks, new(Window.MinX, Window.MaxY - inset), new(Window.Width, 0), plan.Join(tile, toTheRight: false));
        }

        return marks;
    }

    /// <summary>The middle line of an overlap, with two join marks and the letter of the join: on both pages at the same points of the drawing.</summary>
    private static void Join(List<SheetNode> marks, Point from, Vector length, string letter)
    {
        marks.Add(new SheetLine(from, from + length, LineStyle.Centre));
        Vector way = length.Unit();
        foreach (double share in (double[])[0.2, 0.8])
        {
            Point at = from + (length * share);
            marks.AddRange(TemplateMarks.Join(at));
            marks.Add(new SheetText(letter, new(at + (way * 5.5) + (way.Left * 3), TextAlong.Middle, TextAcross.Middle), TextStyle.Label));
        }
    }
}
