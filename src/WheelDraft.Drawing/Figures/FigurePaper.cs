using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

// The folder "Figures": each view of a design by itself, for a text of a given width. A figure has no frame, title block or notes: it is drawn by the view
// code of the sheets on a strip of paper as wide as asked and longer than anything, then cut off under what is drawn.

/// <summary>What figures are drawn of, and how.</summary>
/// <param name="Design">The design.</param>
/// <param name="WidthMm">Width that figures are laid out for, mm.</param>
/// <param name="Options">The moment that is shown, and what callouts say.</param>
internal sealed record FigureTask(Design Design, double WidthMm, SheetOptions Options)
{
    /// <summary>Letters no lower than 2 mm are as readable in print as in the text round them: what finds no room with those of 2.5 mm is laid out for more width, and made smaller.</summary>
    public const double Small = 0.8;

    /// <summary>How many times its layout's size a figure has: 1, or <see cref="Small"/>.</summary>
    public double Size { get; init; } = 1;

    /// <summary>The same for small letters.</summary>
    public FigureTask InSmallLetters => this with { WidthMm = WidthMm / Small, Size = Small };

    /// <summary>The moment, or null for home.</summary>
    public MomentView? Moment => Options.MomentOf(Design);

    /// <summary>The design's title.</summary>
    public string Title => Design.Brief.Title;
}

/// <summary>The paper of a figure while it is drawn.</summary>
internal sealed class FigurePaper
{
    /// <summary>Round what is drawn, mm: texts stand in text, so little is enough.</summary>
    public const double MarginMm = 1;

    /// <summary>Letters are this high at most, mm, whatever the width; the least of all drawings are no lower than 2 mm.</summary>
    public const double LetterMm = 2.5;

    /// <summary>A higher figure fills more than a page of A3, mm.</summary>
    public const double MostHeightMm = 420;

    // Between a picture and what stands under it, mm.
    private const double GapMm = 4;

    private const double StripMm = 4000;

    private readonly FigureTask _task;

    /// <summary>An empty figure.</summary>
    /// <param name="task">How wide it is.</param>
    /// <param name="words">Its name, caption and alternative text.</param>
    public FigurePaper(FigureTask task, SheetWords words)
    {
        _task = task;
        Sheet = new(words, new PaperSize("strip", WidthMm, StripMm)) { MostLetterMm = LetterMm };
        Sheet.Texts.Confine(Room);
    }

    private double WidthMm => _task.WidthMm;

    /// <summary>What is drawn on.</summary>
    public SheetBuilder Sheet { get; }

    /// <summary>Inside the margins.</summary>
    public Bounds Room => new(MarginMm, MarginMm, WidthMm - MarginMm, StripMm - MarginMm);

    /// <summary>The room under what is drawn so far.</summary>
    public Bounds Below => Room with { MaxY = (Sheet.Drawn?.MinY ?? Room.MaxY + GapMm) - GapMm };

    /// <summary>The upper part of the room, so many millimetres high.</summary>
    public Bounds Top(double heightMm) => heightMm * _task.Size <= MostHeightMm
        ? Room with { MinY = Room.MaxY - heightMm }
        : throw new NoRoomException(Invariant.Text($"it would be {heightMm * _task.Size:0} mm high, more than a page"));

    /// <summary>Draws those entries of a legend whose look is seen, under everything.</summary>
    public void Legend(ChartLegend legend)
    {
        SheetArea[] areas = [.. Sheet.Items.OfType<SheetArea>()];
        HashSet<LineStyle> lines = [.. Sheet.Items.OfType<SheetLine>().Select(l => l.Style)];
        ChartLegend shown = new([.. legend.Entries.Where(e => e.Fill is Fill fill ? IsSeen(areas, fill) : e.Line is LineStyle line && lines.Contains(line))]);
        if (shown.Entries.Count > 0)
        {
            Bounds below = Below;
            shown.Draw(Sheet.Group("legend", "Legend", "legend"), new(below.MinX, below.MaxY), below.Width);
        }
    }

    /// <summary>Draws a table under everything; nothing for one without rows.</summary>
    public void Table(string id, SheetTable table)
    {
        if (table.Rows.Count > 0 && table.DrawSideBySide(Sheet.Group(id, table.Title, "table"), Below) is int drawn && drawn < table.Rows.Count)
        {
            Sheet.Warn(Invariant.Text($"{table.Rows.Count - drawn} rows of '{table.Title}' find no room."));
        }
    }

    /// <summary>Writes lines of words under everything; nothing for none.</summary>
    public void Lines(string id, string title, string words)
    {
        if (words.Length == 0)
        {
            return;
        }

        Bounds below = Below;
        GroupPen pen = Sheet.Group(id, title, "notes");
        foreach ((string line, int i) in TextFit.Wrap(words, below.Width, TextStyle.Small).Select((l, i) => (l, i)))
        {
            pen.Text(line, new(new(below.MinX, below.MaxY - (i * TextStyle.Small.HeightMm * Lettering.LinePitch)), TextAlong.Start, TextAcross.Top), TextStyle.Small);
        }
    }

    /// <summary>The finished figure: as wide as asked, as high as what is drawn, in the middle.</summary>
    /// <exception cref="NoRoomException">What is drawn is wider.</exception>
    public Sheet Cut()
    {
        Bounds drawn = Sheet.Drawn ?? Room;
        const double roundMm = 0.1;
        if (drawn.Width > WidthMm)
        {
            throw new NoRoomException(Invariant.Text($"it takes {Math.Ceiling(drawn.Width * _task.Size):0} mm of width"));
        }

        double height = Math.Ceiling((drawn.Height + (2 * MarginMm)) * _task.Size / roundMm) * roundMm;
        Vector toMiddle = new(((WidthMm - drawn.Width) / 2) - drawn.MinX, (height / _task.Size) - MarginMm - drawn.MaxY);
        return Sheet.Build().On(new PaperSize("figure", Math.Round(WidthMm * _task.Size, 6), Math.Round(height, 1)), Placement.Translation(toMiddle).Then(Placement.Scaling(_task.Size)));
    }

    // Whether something of a look lies on top somewhere, tried at points spread over each of its areas.
    private static bool IsSeen(SheetArea[] areas, Fill fill)
    {
        const int tries = 24;
        for (int i = areas.Length - 1; i >= 0; i--)
        {
            if (areas[i].Fill != fill)
            {
                continue;
            }

            Bounds round = areas[i].Bounds;
            SheetArea[] over = [.. areas.Skip(i + 1).Where(a => a.Bounds.Overlaps(round))];
            bool IsOnTop(Point p) => areas[i].Shapes.Any(s => s.Contains(p)) && !Array.Exists(over, o => o.Shapes.Any(s => s.Contains(p)));
            if (Enumerable.Range(0, tries * tries).Any(k => IsOnTop(new(round.MinX + (round.Width * ((k % tries) + 0.5) / tries), round.MinY + (round.Height * ((k / tries) + 0.5) / tries)))))
            {
                return true;
            }
        }

        return false;
    }
}
