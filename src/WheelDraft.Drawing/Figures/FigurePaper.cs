using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

// The folder "Figures": each view of a design by itself, for a text of a given width. A figure has no frame, title block or notes: it is drawn by the view
// code of the sheets on a strip of paper as wide as asked and longer than anything, then cut off under what is drawn.

/// <summary>What figures are drawn of, and how.</summary>
/// <param name="Design">The design.</param>
/// <param name="WidthMm">Width of every figure, mm.</param>
/// <param name="Options">The moment that is shown, and what callouts say.</param>
internal sealed record FigureTask(Design Design, double WidthMm, SheetOptions Options)
{
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

    /// <summary>A higher figure fills more than a page, mm.</summary>
    public const double MostHeightMm = 400;

    // Between a picture and what stands under it, mm.
    private const double GapMm = 4;

    private const double StripMm = 4000;

    /// <summary>An empty figure.</summary>
    /// <param name="task">How wide it is.</param>
    /// <param name="words">Its name, caption and alternative text.</param>
    public FigurePaper(FigureTask task, SheetWords words)
    {
        WidthMm = task.WidthMm;
        Sheet = new(words, new PaperSize("strip", WidthMm, StripMm)) { MostLetterMm = LetterMm };
        Sheet.Texts.Confine(Room);
    }

    /// <summary>Its width, mm.</summary>
    public double WidthMm { get; }

    /// <summary>What is drawn on.</summary>
    public SheetBuilder Sheet { get; }

    /// <summary>Inside the margins.</summary>
    public Bounds Room => new(MarginMm, MarginMm, WidthMm - MarginMm, StripMm - MarginMm);

    /// <summary>The room under what is drawn so far.</summary>
    public Bounds Below => Room with { MaxY = (Sheet.Drawn?.MinY ?? Room.MaxY + GapMm) - GapMm };

    /// <summary>The upper part of the room, so many millimetres high.</summary>
    public Bounds Top(double heightMm) => heightMm <= MostHeightMm
        ? Room with { MinY = Room.MaxY - heightMm }
        : throw new NoRoomException(Invariant.Text($"it would be {heightMm:0} mm high, more than a page."));

    /// <summary>Draws those entries of a legend whose look is drawn, under everything.</summary>
    public void Legend(ChartLegend legend)
    {
        HashSet<Fill> fills = [.. Items.OfType<SheetArea>().Select(a => a.Fill)];
        HashSet<LineStyle> lines = [.. Items.OfType<SheetLine>().Select(l => l.Style)];
        ChartLegend shown = new([.. legend.Entries.Where(e => e.Fill is Fill fill ? fills.Contains(fill) : e.Line is LineStyle line && lines.Contains(line))]);
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
        double height = Math.Ceiling((drawn.Height + (2 * MarginMm)) / roundMm) * roundMm;
        return drawn.Width > WidthMm
            ? throw new NoRoomException(Invariant.Text($"it takes {Math.Ceiling(drawn.Width):0} mm of width, and {WidthMm} mm were asked for."))
            : Sheet.Build().On(new PaperSize("figure", WidthMm, Math.Round(height, 1)), new Vector(((WidthMm - drawn.Width) / 2) - drawn.MinX, height - MarginMm - drawn.MaxY));
    }

    private IEnumerable<SheetItem> Items => Sheet.Items;
}
