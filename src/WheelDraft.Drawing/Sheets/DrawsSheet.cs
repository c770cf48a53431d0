using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>How on-times are spread: a histogram of the draws of each, with worst case, quantiles and what is asked.</summary>
internal static class DrawsSheet
{
    private static IEnumerable<PaperSize> Sizes => [PaperSize.A4.Turned, PaperSize.A3, PaperSize.A2, PaperSize.A1, PaperSize.A0];

    /// <summary>Whether there is anything to draw.</summary>
    public static bool IsWanted(Design design) => design.Wheel.Rings.Any(r => r.Periods.Count > 0);

    /// <summary>Draws it on the first sheet on which all pictures and the table find room.</summary>
    public static Sheet Of(Design design, SheetNumber? number = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        DrawsChart chart = SheetPapers.FirstRoomy(SheetPapers.Of(design, Sizes), size => new DrawsChart(design, size), c => c.IsRoomy);
        return chart.Draw(number ?? SheetNumber.Single);
    }
}

/// <summary>The pictures on one size of paper.</summary>
internal sealed class DrawsChart
{
    private const double GapMm = 5;
    private const double HeadingMm = 5.5;
    private const double AxisMm = 12;
    private const double LeastPlotMm = 12;
    private const double GoodPlotMm = 36;
    private const double MostPlotMm = 64;
    private const double PictureMm = 88;

    // Of the height of a picture: what the whiskers above the bins take.
    private const double WhiskerShare = 0.24;

    private static readonly TextStyle Bold = new(2.5, TextWeight.Heavy);

    private readonly Design _design;
    private readonly PaperSize _size;
    private readonly Bounds _room;
    private readonly IReadOnlyList<(string Name, FigureSpread OnTime)> _all;
    private readonly SheetTable _table;
    private readonly NoteBlock _notes;
    private readonly CautionBlock _caution;
    private readonly double _tableMm;

    public DrawsChart(Design design, PaperSize size)
    {
        (_design, _size) = (design, size);
        _room = SheetFrame.RoomOf(size);
        _all = DrawsWords.All(design);
        _table = DrawsWords.Table(design);
        _notes = new("How to read it", DrawsWords.Notes(design));
        _caution = new(SheetWordsOf.CautionsOf(design));
        _tableMm = _room.Width * 0.6;
        FootMm = GapMm + Legend.HeightMm(_room.Width) + GapMm + Math.Max(_table.HeightMm(_tableMm), _notes.HeightMm(NotesMm) + GapMm + _caution.HeightMm(NotesMm));
        Columns = MostUseful();
    }

    /// <summary>Whether pictures, table and notes find room.</summary>
    public bool IsRoomy => PlotMm >= LeastPlotMm && _table.HeightMm(_tableMm) <= FootMm;

    // As few as leave every picture high enough to be looked at: wide ones are read more easily.
    private int MostUseful()
    {
        int most = Math.Clamp((int)((_room.Width + GapMm) / (PictureMm + GapMm)), 1, Math.Max(1, _all.Count));
        return Enumerable.Range(1, most).FirstOrDefault(c => PlotOf(c) >= GoodPlotMm, most);
    }

    private int Columns { get; }

    private int Rows => RowsOf(Columns);

    private int RowsOf(int columns) => (_all.Count + columns - 1) / columns;

    private double FootMm { get; }

    private double NotesMm => _room.Width - _tableMm - GapMm;

    private double PlotMm => PlotOf(Columns);

    private double PlotOf(int columns) => Math.Min(MostPlotMm, ((_room.Height - FootMm) / RowsOf(columns)) - HeadingMm - AxisMm);

    private static ChartLegend Legend => new(
    [
        new("draws", Fill.Of(FillKind.Copper), LineStyle.Thin),
        new("asked", Fill.Of(FillKind.Meets), LineStyle.Thin),
        new("worst case", Fill.Of(FillKind.CopperPale), LineStyle.Thin),
        new("RSS, and 99.73 % of the draws", null, LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Whisker, 0.35)),
        new("nominal", null, LineStyle.Centre),
    ]);

    public Sheet Draw(SheetNumber number)
    {
        SheetBuilder sheet = new(new("draws", $"Spread of on-times: {_design.Brief.Title}", DrawsWords.Description(_design)), _size);
        SheetFrame.Draw(sheet, number.On(SheetWordsOf.TitleBlock(_design, "Spread of on-times", "Tolerances")));
        double plot = Math.Max(PlotMm, 1), pitch = HeadingMm + plot + AxisMm;
        double width = (_room.Width - ((Columns - 1) * GapMm)) / Columns;
        GroupPen axes = sheet.Group("axes", "Axes of the pictures", "axes"), bars = sheet.Group("draws", "Histograms of on-times", "bars");
        for (int i = 0; i < _all.Count; i++)
        {
            double left = _room.MinX + (i % Columns * (width + GapMm)), top = _room.MaxY - (i / Columns * pitch);
            Picture(axes, bars, _all[i], new(left, top - HeadingMm - plot, left + width, top));
        }

        double y = _room.MaxY - (Rows * pitch) - GapMm;
        Legend.Draw(sheet.Group("legend", "Legend", "legend"), new Point(_room.MinX, y), _room.Width);
        y -= Legend.HeightMm(_room.Width) + GapMm;
        _table.Draw(sheet.Group("table", "Figures", "table"), new(_room.MinX, _room.MinY, _room.MinX + _tableMm, y));
        Bounds notes = _notes.Draw(sheet.Group("notes", "How to read it", "notes"), new Point(_room.MinX + _tableMm + GapMm, y), NotesMm);
        _caution.Draw(sheet.Group("caution", "Caution", "caution"), new Point(notes.MinX, notes.MinY - GapMm), NotesMm);
        return sheet.Build();
    }

    private static void Picture(GroupPen axes, GroupPen bars, (string Name, FigureSpread OnTime) of, Bounds box)
    {
        FigureSpread s = of.OnTime;
        double asked = s.Asked ?? 0;
        double from = Math.Min(s.WorstLeast, s.Nominal - asked), to = Math.Max(s.WorstMost, s.Nominal + asked);
        double air = Math.Max((to - from) * 0.02, 1e-6);
        ChartAxis axis = new(from - air, to + air, box.MinX + 2, box.MaxX - 2) { Steps = StepKind.Seconds };
        axes.Box(new Bounds(box.MinX, box.MaxY - HeadingMm, box.MaxX, box.MaxY), Fill.Of(FillKind.Band));
        axes.Text(TextFit.Shortened(of.Name, box.Width - 2, Bold), new(new(box.MinX + 1, box.MaxY - (HeadingMm / 2)), TextAlong.Start, TextAcross.Middle), Bold);

        double bottom = box.MinY, high = box.Height - HeadingMm - 1;
        if (s.Asked is not null)
        {
            bars.Box(new Bounds(axis.Of(s.Nominal - asked), bottom, axis.Of(s.Nominal + asked), bottom + high), Fill.Of(FillKind.Meets), LineStyle.Thin);
        }

        // The worst case as a low bar under the bins: no draw lies beyond it.
        const double sillMm = 1.6;
        double bins = high * (1 - WhiskerShare);
        bars.Box(new Bounds(axis.Of(s.WorstLeast), bottom, axis.Of(s.WorstMost), bottom + sillMm), Fill.Of(FillKind.CopperPale), LineStyle.Thin);
        Bins(bars, axis, s, (bottom + sillMm, bins - sillMm));
        ChartRow row = new(bars, axis, bottom + bins + (high * WhiskerShare * 0.7), high * WhiskerShare * 0.5);
        row.Whisker(s.Nominal + s.RootSumSquare.Shift - s.RootSumSquare.Limit, s.Nominal + s.RootSumSquare.Shift + s.RootSumSquare.Limit);
        (row with { MiddleMm = bottom + bins + (high * WhiskerShare * 0.25) }).Whisker(s.Quantiles[0].Value, s.Quantiles[^1].Value);
        double median = s.Quantiles[s.Quantiles.Count / 2].Value;
        bars.Line(new Point(axis.Of(median), bottom + bins), new Point(axis.Of(median), bottom + bins + (high * WhiskerShare * 0.5)), LineStyle.Edge);
        axes.Line(new Point(axis.Of(s.Nominal), bottom), new Point(axis.Of(s.Nominal), bottom + high), LineStyle.Centre);
        axis.Draw(axes, bottom, AxisSide.Below, "on-time, s");
    }

    private static void Bins(GroupPen bars, ChartAxis axis, FigureSpread s, (double BottomMm, double HighMm) at)
    {
        double most = Math.Max(1, s.Histogram.Max()), each = (s.WorstMost - s.WorstLeast) / s.Histogram.Count;
        for (int i = 0; i < s.Histogram.Count; i++)
        {
            double tall = at.HighMm * s.Histogram[i] / most;

            // A bin of a few draws is a line, so that the picture never says "none" where there were some.
            if (s.Histogram[i] > 0 && each > 0)
            {
                bars.Box(new Bounds(axis.Of(s.WorstLeast + (i * each)), at.BottomMm, axis.Of(s.WorstLeast + ((i + 1) * each)), at.BottomMm + Math.Max(tall, 0.15)), Fill.Of(FillKind.Copper), LineStyle.Thin);
            }
        }
    }
}
