using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The timing chart: contacts, loads and parking over one turn, in seconds and degrees, with the worst case of every edge.</summary>
internal static class TimingSheet
{
    // Charts are read across, so lying paper comes first.
    private static IEnumerable<PaperSize> Sizes => [PaperSize.A4.Turned, PaperSize.A4, PaperSize.A3, PaperSize.A2, PaperSize.A1, PaperSize.A0];

    /// <summary>Draws it on the first sheet on which all rows and the table find room.</summary>
    /// <param name="design">The design.</param>
    /// <param name="number">Its place in the set.</param>
    /// <param name="options">How it is drawn: a moment is a line down the chart.</param>
    public static Sheet Of(Design design, SheetNumber? number = null, SheetOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        IReadOnlyList<TimingSection> sections = new TimingRows(design).Sections();
        MomentView? moment = (options ?? SheetOptions.Usual).MomentOf(design);
        TimingChart chart = SheetPapers.FirstRoomy(SheetPapers.Of(design, Sizes), size => new TimingChart(design, sections, size) { Moment = moment }, c => c.IsRoomy);
        return chart.Draw(number ?? SheetNumber.Single);
    }
}

/// <summary>The chart on one size of paper.</summary>
internal sealed class TimingChart
{
    private const double GapMm = 4;

    // What the word at either end of the lower axis takes of it, mm.
    private const double HomeMm = 9;
    private const double AxisMm = 12;
    private const double HeadingMm = 5.5;
    private const double LeastPitchMm = 7.4;
    private const double MostPitchMm = 13;
    private const double AlonePitchMm = 9;
    private const double BarShare = 0.62;
    private const double NotesWidthMm = 76;

    private readonly Design _design;
    private readonly IReadOnlyList<TimingSection> _sections;
    private readonly PaperSize _size;
    private readonly Bounds _room;
    private readonly SheetTable _table;
    private readonly TimingLettering _lettering;
    private readonly double _footMm;
    private readonly bool _isAlone;

    /// <summary>Measures a design's chart on a size of paper.</summary>
    public TimingChart(Design design, IReadOnlyList<TimingSection> sections, PaperSize size)
    {
        _design = design;
        _sections = sections;
        _size = size;
        _room = SheetFrame.RoomOf(size);
        _table = TimingWords.Table(design);
        _lettering = TimingLettering.Of(Names, _room.Width / 3);
        _lettering = _lettering.With(Conditions());
        _footMm = FootHeight();
    }

    /// <summary>The chart by itself: no frame, table or notes.</summary>
    /// <param name="design">The design.</param>
    /// <param name="sections">Its rows.</param>
    /// <param name="room">Where it stands: under the top, from side to side.</param>
    public TimingChart(Design design, IReadOnlyList<TimingSection> sections, Bounds room)
    {
        (_design, _sections, _size, _room, _isAlone) = (design, sections, PaperSize.A4, room, true);
        _table = TimingWords.Table(design);
        _lettering = TimingLettering.Of(Names, room.Width / 3);
        _lettering = _lettering.With(Conditions());
    }

    /// <summary>The moment at which the cursor stands, or null.</summary>
    public MomentView? Moment { get; init; }

    /// <summary>Whether rows and table find room.</summary>
    public bool IsRoomy => PitchMm >= RoomyPitchMm;

    private double RoomyPitchMm => Math.Max(LeastPitchMm, (_lettering.LinesOf(Names) * _lettering.NameStyle.HeightMm * Lettering.ClosePitch) + 1);

    private IEnumerable<TimingRow> Rows => _sections.SelectMany(s => s.Rows);

    private IReadOnlyList<string> Names => [.. Rows.Select(r => r.Name)];

    private bool IsLying => _size.WidthMm > _size.HeightMm;

    private NoteBlock Notes => new("Notes", TimingWords.Notes(_design, _lettering.Conditions));

    private CautionBlock Caution => new(SheetWordsOf.CautionsOf(_design));

    private double PitchMm
    {
        get
        {
            if (_isAlone)
            {
                return Math.Max(AlonePitchMm, RoomyPitchMm);
            }

            double rows = _room.Height - (2 * AxisMm) - _footMm - (_sections.Count * HeadingMm);
            return Math.Min(MostPitchMm, rows / _sections.Sum(s => s.Rows.Count));
        }
    }

    private ChartAxis Seconds => new(0, _design.Motion.TurnTimeS, _room.MinX + 1 + _lettering.NamesMm + TimingPen.NameAirMm, _room.MaxX - 4) { Steps = StepKind.Seconds };

    private ChartAxis Degrees => new(0, 360, Seconds.LeftMm, Seconds.RightMm) { Steps = StepKind.Degrees };

    private double TableWidth => IsLying ? _room.Width - NotesWidthMm - GapMm : _room.Width;

    /// <summary>Draws the whole sheet.</summary>
    public Sheet Draw(SheetNumber number)
    {
        SheetBuilder sheet = new(new("timing", $"Timing chart: {_design.Brief.Title}", TimingWords.Description(_design) + (Moment is null ? "" : $" {Moment.Sentence}")), _size);
        SheetFrame.Draw(sheet, number.On(SheetWordsOf.TitleBlock(_design, "Timing of one turn", "Timing chart")));
        DrawFoot(sheet, DrawChart(sheet) - AxisMm - GapMm);
        return sheet.Build();
    }

    /// <summary>Draws axes and rows.</summary>
    /// <returns>The height on the paper of the lower axis, mm.</returns>
    private double DrawChart(SheetBuilder sheet)
    {
        double top = _room.MaxY - AxisMm;
        double pitch = Math.Max(PitchMm, 1);
        double bottom = top - (_sections.Count * HeadingMm) - (_sections.Sum(s => s.Rows.Count) * pitch);
        DrawAxes(sheet, top, bottom);
        TimingPen pen = new(sheet, Seconds, new(_room.MinX, bottom, _room.MaxX, top), _lettering);
        pen.Parked(Rows);
        if (Moment is MomentView moment)
        {
            // Labels of the rows keep off the cursor, which is drawn over the bars.
            sheet.Texts.TakeLine(new(Seconds.Of(moment.TimeS), bottom), new(Seconds.Of(moment.TimeS), top));
        }

        double y = top;
        foreach (TimingSection section in _sections)
        {
            pen.Heading(section.Heading, y, HeadingMm);
            y -= HeadingMm;
            foreach (TimingRow row in section.Rows)
            {
                pen.Row(row, y - (pitch / 2), pitch * BarShare);
                y -= pitch;
            }
        }

        DrawCursor(sheet, pen.Headings, top, bottom);
        return bottom;
    }

    /// <summary>Draws the chart with its legend, and the conditions that are lettered in it.</summary>
    public void DrawAlone(SheetBuilder sheet)
    {
        double top = DrawChart(sheet) - AxisMm - GapMm;
        top = Legend().Draw(sheet.Group("legend", "Legend", "legend"), new Point(_room.MinX, top), _room.Width).MinY;
        if (_lettering.Conditions.Count > 0)
        {
            string words = TimingWords.Conditions(_lettering.Conditions);
            GroupPen pen = sheet.Group("conditions", "What the letters mean", "notes");
            foreach ((string line, int i) in TextFit.Wrap(words, _room.Width, TextStyle.Small).Select((l, i) => (l, i)))
            {
                pen.Text(line, new(new(_room.MinX, top - 1 - (i * TextStyle.Small.HeightMm * Lettering.LinePitch)), TextAlong.Start, TextAcross.Top), TextStyle.Small);
            }
        }
    }

    /// <summary>The moment: a line down the chart between two heads, its time beside it in the first heading's band or at an axis.</summary>
    private void DrawCursor(SheetBuilder sheet, IReadOnlyList<Bounds> headings, double top, double bottom)
    {
        if (Moment is null)
        {
            return;
        }

        const double besideMm = 1.5;
        const double titleMm = 1.8 + 1 + 2.5 + 2.4; // the height of the axes' titles
        GroupPen pen = sheet.Group("moment", $"The moment {Moment.Time} after home", "moment");
        double x = Seconds.Of(Moment.TimeS);
        TimingCursor.Draw(pen, x, bottom, top, headings);
        double band = top - (HeadingMm / 2);
        bool found = pen.TryText(
            $"{Moment.Time}, {Moment.Angle}",
            [
                new(new(x + besideMm, band), TextAlong.Start, TextAcross.Middle),
                new(new(x - besideMm, band), TextAlong.End, TextAcross.Middle),
                .. from aside in Enumerable.Range(0, 30).SelectMany(i => (double[])[4 * i, -4 * i])
                   from isAbove in (bool[])[true, false]
                   select new TextSpot(new(x + aside, isAbove ? top + titleMm : bottom - titleMm), TextAlong.Middle, isAbove ? TextAcross.Baseline : TextAcross.Top),
            ],
            new TextStyle(2.5, TextWeight.Heavy, Ink.Accent));
        if (!found)
        {
            sheet.Warn($"The timing chart has no room for the words of the moment {Moment.Time}.");
        }
    }

    private void DrawAxes(SheetBuilder sheet, double top, double bottom)
    {
        GroupPen pen = sheet.Group("axes", "Axes", "axes");
        Seconds.DrawGrid(pen, bottom, top);
        Degrees.Draw(pen, top, AxisSide.Above, Degrees.Fitting(0, "programme angle from home, ° →", "angle from home, ° →", "angle, ° →"));
        Seconds.Draw(pen, bottom, AxisSide.Below, Seconds.Fitting(2 * Math.Max(HomeMm, TextFit.WidthMm("home", HomeStyle)), "time from home, s →", "time, s →"));
        foreach (double home in (double[])[Seconds.LeftMm, Seconds.RightMm])
        {
            pen.Line(new Point(home, bottom), new Point(home, top), LineStyle.Wide(LineKind.ContinuousWide, Ink.Outline, 0.5));
            pen.Texts.TakeLine(new Point(home, bottom), new Point(home, top));
        }

        // Beyond the labels of both axes' ends, on the height of the titles.
        const double beyondMm = 1.8 + 1 + 2.5 + 2.4;
        pen.Text("home", new(new(Seconds.LeftMm, bottom - beyondMm), TextAlong.Middle, TextAcross.Top), HomeStyle);
        pen.Text("home", new(new(Seconds.RightMm + 2, bottom - beyondMm), TextAlong.End, TextAcross.Top), HomeStyle);
    }

    private static TextStyle HomeStyle => new(2.5, TextWeight.Heavy);

    private void DrawFoot(SheetBuilder sheet, double top)
    {
        ChartLegend legend = Legend();
        legend.Draw(sheet.Group("legend", "Legend", "legend"), new Point(_room.MinX, top), _room.Width);
        double tableTop = top - legend.HeightMm(_room.Width) - GapMm;
        double tableHeight = _table.SideBySideHeightMm(TableWidth);
        int drawn = _table.DrawSideBySide(sheet.Group("table", "On-periods", "table"), new(_room.MinX, Math.Max(_room.MinY, tableTop - tableHeight), _room.MinX + TableWidth, tableTop));
        if (drawn < _table.Rows.Count)
        {
            sheet.Warn(Invariant.Text($"The table of the timing chart lacks its last {_table.Rows.Count - drawn} rows: even this paper is too small; report.json lists all on-periods."));
        }

        GroupPen words = sheet.Group("notes", "Notes and caution", "notes");
        if (IsLying)
        {
            Notes.Draw(words, new Point(_room.MaxX - NotesWidthMm, tableTop), NotesWidthMm);
            Bounds beside = SheetFrame.BesideTitleBlock(_size);
            Caution.Draw(words, new Point(beside.MinX, beside.MaxY), Math.Min(beside.Width, 110));
        }
        else
        {
            double half = (_room.Width - GapMm) / 2;
            double foot = tableTop - tableHeight - GapMm;
            Notes.Draw(words, new Point(_room.MinX, foot), half);
            Caution.Draw(words, new Point(_room.MinX + half + GapMm, foot), half);
        }
    }

    private double FootHeight()
    {
        double table = _table.SideBySideHeightMm(TableWidth);
        double half = (_room.Width - GapMm) / 2;
        double below = IsLying
            ? Math.Max(table, Notes.HeightMm(NotesWidthMm))
            : table + GapMm + Math.Max(Notes.HeightMm(half), Caution.HeightMm(half));
        return GapMm + Legend().HeightMm(_room.Width) + GapMm + below;
    }

    private ChartLegend Legend()
    {
        HashSet<TimingState> states = [.. Rows.SelectMany(r => r.Bars).Select(b => b.State)];
        List<LegendEntry> entries = [.. Enum.GetValues<TimingState>().Where(states.Contains).Select(s => new LegendEntry(TimingPen.Meaning(s), TimingPen.FillOf(s), LineStyle.Thin))];
        if (_design.Wheel.Rings.Any(r => r.Adjust is not null))
        {
            entries.Add(new("range of the screw", Fill.Of(FillKind.Whisker), LineStyle.Thin));
        }

        entries.Add(new("worst case: start, on-time", null, LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Whisker, 0.35)));
        return new(entries);
    }

    /// <summary>Letters for the conditions that find no room on their bars.</summary>
    private IEnumerable<string> Conditions() => Rows.SelectMany(r => r.Bars)
        .Where(b => b.State is TimingState.WithInputs or TimingState.Undecided && b.Words.Length > 0 && !TimingPen.HasRoom(b, Seconds))
        .Select(b => b.Words);
}
