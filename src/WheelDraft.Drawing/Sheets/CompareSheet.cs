using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A made wheel's log over its file: measured bars over wanted ones round the turn, how far each figure is off within its limits, and what is wrong.</summary>
internal static class CompareSheet
{
    private static IEnumerable<PaperSize> Sizes => [PaperSize.A4.Turned, PaperSize.A3, PaperSize.A2, PaperSize.A1, PaperSize.A0];

    /// <summary>Draws it on the first sheet on which all rows and the table find room.</summary>
    public static Sheet Of(Design design, BenchComparison comparison)
    {
        CompareChart chart = SheetPapers.FirstRoomy(Sizes, size => new CompareChart(design, comparison, size), c => c.IsRoomy);
        return chart.Draw();
    }
}

/// <summary>The chart on one size of paper.</summary>
internal sealed class CompareChart
{
    private const double GapMm = 5;
    private const double AxisMm = 12;
    private const double HeadingMm = 5.5;
    private const double LeastPitchMm = 6;
    private const double MostPitchMm = 11;
    private const double BarShare = 0.72;

    // A figure that is off by this many times what is allowed is drawn at the end of the scale.
    private const double ScaleEnd = 1.6;

    private static readonly TextStyle Bold = new(2.5, TextWeight.Heavy);

    private readonly Design _design;
    private readonly BenchComparison _comparison;
    private readonly PaperSize _size;
    private readonly Bounds _room;
    private readonly SheetTable _table;
    private readonly NoteBlock _notes;
    private readonly int[] _outputs;
    private readonly double _namesMm;
    private readonly double _tableMm;

    public CompareChart(Design design, BenchComparison comparison, PaperSize size)
    {
        (_design, _comparison, _size) = (design, comparison, size);
        _room = SheetFrame.RoomOf(size);
        _table = CompareWords.Table(design, comparison);
        _notes = new("What the figures say", CompareWords.Notes(design, comparison));
        _outputs = [.. comparison.Periods.Select(p => p.Output).Distinct()];
        const double airMm = 3;
        _namesMm = Math.Min(_room.Width / 4, comparison.Periods.Select(p => CompareWords.NameOf(design, p)).Append("turn time").Max(n => TextFit.WidthMm(n, TextStyle.Small)) + airMm);
        _tableMm = _room.Width * 0.62;
    }

    /// <summary>Whether rows, table and notes find room.</summary>
    public bool IsRoomy => PitchMm >= LeastPitchMm;

    private int RowCount => _outputs.Length + _comparison.Periods.Count + 1;

    private double FootMm => GapMm + Legend.HeightMm(_room.Width) + GapMm + Math.Max(_table.HeightMm(_tableMm), _notes.HeightMm(_room.Width - _tableMm - GapMm));

    private double PitchMm => Math.Min(MostPitchMm, (_room.Height - (2 * AxisMm) - (2 * HeadingMm) - FootMm) / RowCount);

    private ChartAxis Seconds => new(0, _design.Motion.TurnTimeS, _room.MinX + _namesMm + 2, _room.MaxX - 4) { Steps = StepKind.Seconds };

    private ChartAxis Shares => new(-100 * ScaleEnd, 100 * ScaleEnd, _room.MinX + _namesMm + 2, _room.MaxX - 4) { Label = v => DrawingNumbers.Trimmed(v, 0) };

    private static ChartLegend Legend => new(
    [
        new("wanted", Fill.Of(FillKind.CopperPale), LineStyle.Thin),
        new("measured", Fill.Of(FillKind.Copper), LineStyle.Thin),
        new("within the limits", Fill.Of(FillKind.Meets), LineStyle.Thin),
        new("mean, and twice its uncertainty", null, LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Whisker, 0.35)),
        new("single readings", Fill.Of(FillKind.Whisker), LineStyle.Thin),
    ]);

    public Sheet Draw()
    {
        SheetBuilder sheet = new(new("compare", $"Bench log and file: {_design.Brief.Title}", CompareWords.Description(_design, _comparison)), _size);
        SheetFrame.Draw(sheet, SheetNumber.Single.On(SheetWordsOf.TitleBlock(_design, "Measured and wanted", "Timing chart")));
        double pitch = Math.Max(PitchMm, 1);
        double y = Turn(sheet, _room.MaxY, pitch) - AxisMm;
        y = Departures(sheet, y, pitch) - AxisMm - GapMm;
        Legend.Draw(sheet.Group("legend", "Legend", "legend"), new Point(_room.MinX, y), _room.Width);
        y -= Legend.HeightMm(_room.Width) + GapMm;
        _table.Draw(sheet.Group("table", "Figures", "table"), new(_room.MinX, _room.MinY, _room.MinX + _tableMm, y));
        _notes.Draw(sheet.Group("notes", "What the figures say", "notes"), new Point(_room.MinX + _tableMm + GapMm, y), _room.Width - _tableMm - GapMm);
        Bounds beside = SheetFrame.BesideTitleBlock(_size);
        const double leastCautionMm = 60;
        if (beside.Width >= leastCautionMm)
        {
            new CautionBlock(SheetWordsOf.CautionsOf(_design)).Draw(sheet.Group("caution", "Caution", "notes"), new Point(beside.MinX, beside.MaxY), Math.Min(beside.Width, 110));
        }

        return sheet.Build();
    }

    private double Heading(GroupPen pen, double y, string words)
    {
        pen.Box(new Bounds(_room.MinX, y - HeadingMm, _room.MaxX, y), Fill.Of(FillKind.Band));
        pen.Text(words, new(new(_room.MinX + 1, y - (HeadingMm / 2)), TextAlong.Start, TextAcross.Middle), Bold);
        return y - HeadingMm;
    }

    private void Name(GroupPen pen, string name, double middleMm) =>
        pen.Text(TextFit.Shortened(name, _namesMm - 1, TextStyle.Small), new(new(_room.MinX + 1, middleMm), TextAlong.Start, TextAcross.Middle), TextStyle.Small);

    /// <summary>The turn: wanted bars tall and pale, measured ones slim upon them, at the nominal turn time.</summary>
    private double Turn(SheetBuilder sheet, double topMm, double pitch)
    {
        double bottom = topMm - HeadingMm - (_outputs.Length * pitch);
        GroupPen axes = sheet.Group("turn-axis", "Axis of the turn", "axes");
        Seconds.DrawGrid(axes, bottom, topMm - HeadingMm);
        double y = Heading(axes, topMm, "Over the turn, brought to the nominal turn time");
        Seconds.Draw(axes, bottom, AxisSide.Below, "time from home, s →");
        GroupPen bars = sheet.Group("turn", "Wanted and measured on-periods", "bars");
        double scale = _comparison.TurnTime.WantedS / _comparison.TurnTime.Measured.MeanS;
        foreach (int output in _outputs)
        {
            Name(bars, _design.Brief.Outputs[output].Name, y - (pitch / 2));
            foreach (ComparedPeriod period in _comparison.Periods.Where(p => p.Output == output))
            {
                new ChartRow(bars, Seconds, y - (pitch / 2), pitch * BarShare).BarRound(period.Start.WantedS, period.On.WantedS, Fill.Of(FillKind.CopperPale), LineStyle.Thin);
                double from = period.Start.Measured.MeanS * scale;
                from -= _design.Motion.TurnTimeS * Math.Floor(from / _design.Motion.TurnTimeS);
                ChartRow slim = new(bars, Seconds, y - (pitch / 2), pitch * BarShare / 2);
                slim.BarRound(from, period.On.Measured.MeanS * scale, Fill.Of(FillKind.Copper), LineStyle.Thin);
            }

            y -= pitch;
        }

        return bottom;
    }

    /// <summary>Each figure's departure as a share of what is allowed on its side: the band from −100 to 100 meets.</summary>
    private double Departures(SheetBuilder sheet, double topMm, double pitch)
    {
        double bottom = topMm - HeadingMm - ((_comparison.Periods.Count + 1) * pitch);
        GroupPen axes = sheet.Group("departure-axis", "Axis of departures", "axes");
        double y = Heading(axes, topMm, "How far off, as a share of what is allowed: on-times, and the turn time");
        Shares.DrawGrid(axes, bottom, y);
        Shares.Draw(axes, bottom, AxisSide.Below, "shorter ←   % of what is allowed   → longer");
        GroupPen bars = sheet.Group("departures", "How far each figure is off", "bars");
        foreach (ComparedPeriod period in _comparison.Periods)
        {
            Departure(bars, CompareWords.NameOf(_design, period), period.On, (period.Readings, y - (pitch / 2), pitch * BarShare));
            y -= pitch;
        }

        Departure(bars, "turn time", _comparison.TurnTime, ([], y - (pitch / 2), pitch * BarShare));
        axes.Line(new Point(Shares.Of(0), bottom), new Point(Shares.Of(0), topMm - HeadingMm), LineStyle.Centre);
        return bottom;
    }

    private void Departure(GroupPen pen, string name, BenchFigure figure, (IReadOnlyList<double> Readings, double MiddleMm, double BarMm) row)
    {
        Name(pen, name, row.MiddleMm);
        ChartRow line = new(pen, Shares, row.MiddleMm, row.BarMm);
        line.Bar(-100, 100, Fill.Of(FillKind.Meets), LineStyle.Thin);
        ChartRow slim = line with { BarMm = row.BarMm / 2 };
        if (row.Readings.Count > 1)
        {
            slim.Bar(Share(figure, row.Readings.Min()), Share(figure, row.Readings.Max()), Fill.Of(FillKind.Whisker), LineStyle.Thin);
        }

        double mean = Share(figure, figure.Measured.MeanS);
        double at = Math.Clamp(mean, Shares.From, Shares.To);
        double low = Math.Clamp(Share(figure, figure.Measured.MeanS - (2 * figure.Measured.UncertaintyS)), Shares.From, Shares.To);
        double high = Math.Clamp(Share(figure, figure.Measured.MeanS + (2 * figure.Measured.UncertaintyS)), Shares.From, Shares.To);
        line.Whisker(low, high);
        pen.Line(new Point(Shares.Of(at), row.MiddleMm - (row.BarMm / 2)), new Point(Shares.Of(at), row.MiddleMm + (row.BarMm / 2)), LineStyle.Edge);
        line.Label(low, high, CompareWords.Departure(figure, mean > Shares.To || mean < Shares.From), TextStyle.Small);
    }

    private static double Share(BenchFigure figure, double valueS)
    {
        double off = valueS - figure.WantedS;
        double room = off >= 0 ? figure.MostS - figure.WantedS : figure.WantedS - figure.LeastS;
        return room > 0 ? 100 * off / room : off == 0 ? 0 : Math.Sign(off) * 1e6;
    }
}
