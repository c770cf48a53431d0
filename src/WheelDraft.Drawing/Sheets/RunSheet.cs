using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A played scenario over time: inputs, contacts, loads and the turning wheel.</summary>
internal static class RunSheet
{
    private static IEnumerable<PaperSize> Sizes => [PaperSize.A4.Turned, PaperSize.A3, PaperSize.A2, PaperSize.A1, PaperSize.A0];

    /// <summary>Draws a scenario of a design.</summary>
    /// <param name="design">The design.</param>
    /// <param name="index">Which scenario, from 0 in file order.</param>
    /// <param name="number">Its place in the set.</param>
    public static Sheet Of(Design design, int index, SheetNumber? number = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        RunRows rows = RunRows.Of(design, index);
        RunChart chart = SheetPapers.FirstRoomy(SheetPapers.Of(design, Sizes), size => new RunChart(design, rows, size), c => c.IsRoomy);
        string slug = FileSlugs.Of(design.Brief.Scenarios.Select(s => s.Name))[index];
        return chart.Draw($"run-{slug}", number ?? SheetNumber.Single);
    }
}

/// <summary>One row of a run's chart.</summary>
internal sealed record RunRow(string Name, IReadOnlyList<RunSpan> On, Fill Fill)
{
    /// <summary>When it is not known.</summary>
    public IReadOnlyList<RunSpan> Undecided { get; init; } = [];
}

/// <summary>The rows of a run's chart, by what they are.</summary>
internal sealed class RunRows(Design design, ScenarioRun run)
{
    /// <summary>What a drawing shows of a scenario of a design, by its number from 0.</summary>
    public static RunRows Of(Design design, int index)
    {
        ScenarioRun run = design.Circuit.Play(design.Brief.Scenarios[index]);
        return new(design, run.Beginning(Budgets.DrawnMoments / design.Brief.Scenarios.Count)) { WholeRun = run };
    }

    /// <summary>What is drawn.</summary>
    public ScenarioRun Run => run;

    /// <summary>The run of which only the beginning may be drawn.</summary>
    public required ScenarioRun WholeRun { get; init; }

    /// <summary>What the drawing lacks of the run; null when it lacks nothing.</summary>
    public string? LacksWords => ReferenceEquals(WholeRun, Run)
        ? Run.CutShortWords
        : Invariant.Text($"The drawing of run '{Run.Scenario.Name}' ends after {Run.Moments.Count} moments, at {Wording.Number(Run.EndS, 1)} s. Its CSV goes on{(WholeRun.IsCutShort ? Invariant.Text($" to {Budgets.RunMoments} moments, at {Wording.Number(WholeRun.EndS, 1)} s of {Wording.Number(Run.Scenario.DurationS, 1)} s, where the run is cut short; a shorter duration, or a scenario for each part of interest, tells all") : "")}.");

    public IReadOnlyList<(string Heading, IReadOnlyList<RunRow> Rows)> Sections()
    {
        CircuitAnalysis circuit = design.Circuit;
        List<(string, IReadOnlyList<RunRow>)> sections =
        [
            ("Inputs closed", [.. circuit.Inputs.Concat(circuit.Levers.Select(l => l.Input)).Select(i => new RunRow(i, run.Spans(m => m.ClosedInputs.Contains(i, StringComparer.Ordinal)), Closed))]),
            ("Wheel", [new RunRow("turns", run.Spans(m => m.IsTurning), Turns)]),
            ("Contacts closed", [.. circuit.Request.Contacts.Select(c => new RunRow(c.Output, run.Spans(m => m.Closed.Contains(c.Output, StringComparer.Ordinal)), Closed))]),
            ("Loads on", [.. circuit.Loads.Select((l, i) => new RunRow(l, run.Spans(m => m.Loads[i] == LoadState.On), On) { Undecided = run.Spans(m => m.Loads[i] == LoadState.Undecided) })]),
        ];
        return [.. sections.Where(s => s.Item2.Count > 0)];
    }

    /// <summary>The moments as a table.</summary>
    public SheetTable Moments() => new(
        [new("Time, s", TextAlong.End), new("Angle, °", TextAlong.End), new("What happens")],
        [.. run.Moments.Select(m => (IReadOnlyList<string>)
            [
                DrawingNumbers.Fixed(m.TimeS, 2),
                DrawingNumbers.Fixed(Angles.DegFromRad(m.AngleRad), 2),
                m.What.Length == 0 ? "–" : m.What,
            ])]);

    /// <summary>What fillings mean: the same as in the timing chart.</summary>
    public static ChartLegend Legend => new(
    [
        new("closed", Closed, LineStyle.Thin),
        new("turns", Turns, LineStyle.Thin),
        new("load on", On, LineStyle.Thin),
        new("load undecided: between drop-out and pull-in", Undecided, LineStyle.Thin),
    ]);

    /// <summary>The filling of what is not known.</summary>
    public static Fill Undecided => TimingPen.FillOf(TimingState.Undecided);

    private static Fill Closed => TimingPen.FillOf(TimingState.Closed);

    private static Fill Turns => Fill.Of(FillKind.Part);

    private static Fill On => TimingPen.FillOf(TimingState.On);
}

/// <summary>The chart on one size of paper.</summary>
internal sealed class RunChart
{
    private const double GapMm = 5;
    private const double AxisMm = 13;
    private const double HeadingMm = 5.5;
    private const double LeastPitchMm = 6;
    private const double MostPitchMm = 11;
    private const double AlonePitchMm = 8.2;
    private const double BarShare = 0.62;

    private readonly Design _design;
    private readonly RunRows _rows;
    private readonly PaperSize _size;
    private readonly Bounds _room;
    private readonly IReadOnlyList<(string Heading, IReadOnlyList<RunRow> Rows)> _sections;
    private readonly SheetTable _table;
    private readonly double _namesMm;
    private readonly double _footMm;
    private readonly bool _isAlone;

    public RunChart(Design design, RunRows rows, PaperSize size)
    {
        (_design, _rows, _size) = (design, rows, size);
        _room = SheetFrame.RoomOf(size);
        _sections = rows.Sections();
        _table = rows.Moments();
        _namesMm = NamesMm();
        _footMm = GapMm + Legend.HeightMm(_room.Width) + GapMm + _table.SideBySideHeightMm(_room.Width);
    }

    /// <summary>The chart by itself: no frame, no table of moments.</summary>
    /// <param name="design">The design.</param>
    /// <param name="rows">Its rows.</param>
    /// <param name="room">Where it stands: under the top, from side to side.</param>
    public RunChart(Design design, RunRows rows, Bounds room)
    {
        (_design, _rows, _size, _room, _isAlone) = (design, rows, PaperSize.A4, room, true);
        _sections = rows.Sections();
        _table = rows.Moments();
        _namesMm = NamesMm();
    }

    private double NamesMm()
    {
        const double airMm = 3;
        return Math.Min(_room.Width / (_isAlone ? 3 : 4), _sections.SelectMany(s => s.Rows).Max(r => TextFit.WidthMm(r.Name, TextStyle.Small)) + airMm);
    }

    /// <summary>Whether rows and table find room.</summary>
    public bool IsRoomy => PitchMm >= LeastPitchMm;

    private double PitchMm => _isAlone ? AlonePitchMm : Math.Min(MostPitchMm, (_room.Height - AxisMm - _footMm - (_sections.Count * HeadingMm)) / _sections.Sum(s => s.Rows.Count));

    private ScenarioRun Run => _rows.Run;

    private ChartAxis Axis => new(0, Run.IsCutShort ? Run.EndS : Run.Scenario.DurationS, _room.MinX + _namesMm + 2, _room.MaxX - 4) { Steps = StepKind.Seconds };

    private static ChartLegend Legend => RunRows.Legend;

    public Sheet Draw(string name, SheetNumber number)
    {
        string title = $"Run \"{Run.Scenario.Name}\"";
        SheetBuilder sheet = new(new(name, $"{title}: {_design.Brief.Title}", Description()), _size);
        SheetFrame.Draw(sheet, number.On(SheetWordsOf.TitleBlock(_design, title, "Timing chart")));
        Foot(sheet, DrawChart(sheet) - AxisMm - GapMm);
        return sheet.Build();
    }

    /// <summary>Draws the chart with a legend of what it shows.</summary>
    public void DrawAlone(SheetBuilder sheet)
    {
        double top = DrawChart(sheet) - AxisMm - GapMm;
        RunRow[] rows = [.. _sections.SelectMany(s => s.Rows)];
        HashSet<Fill> shown = [.. rows.Where(r => r.On.Count > 0).Select(r => r.Fill), .. rows.Any(r => r.Undecided.Count > 0) ? [RunRows.Undecided] : (Fill[])[]];
        ChartLegend legend = new([.. Legend.Entries.Where(e => e.Fill is Fill fill && shown.Contains(fill))]);
        legend.Draw(sheet.Group("legend", "Legend", "legend"), new Point(_room.MinX, top), _room.Width);
    }

    /// <summary>Draws axis and rows.</summary>
    /// <returns>The height on the paper of the axis, mm.</returns>
    private double DrawChart(SheetBuilder sheet)
    {
        double pitch = Math.Max(PitchMm, 1);
        double bottom = _room.MaxY - (_sections.Count * HeadingMm) - (_sections.Sum(s => s.Rows.Count) * pitch);
        GroupPen axes = sheet.Group("axes", "Axis", "axes");
        Axis.DrawGrid(axes, bottom, _room.MaxY);
        Axis.Draw(axes, bottom, AxisSide.Below, "time from the start, s →");
        Rows(sheet, pitch);
        if (_rows.LacksWords is string cut)
        {
            sheet.Warn(cut);
        }

        return bottom;
    }

    private void Rows(SheetBuilder sheet, double pitch)
    {
        double y = _room.MaxY;
        GroupPen names = sheet.Group("names", "Names of the rows", "names");
        GroupPen bars = sheet.Group("bars", "When each is closed, on or turning", "bars");
        foreach ((string heading, IReadOnlyList<RunRow> rows) in _sections)
        {
            names.Box(new Bounds(_room.MinX, y - HeadingMm, _room.MaxX, y), Fill.Of(FillKind.Band));
            names.Text(heading, new(new(_room.MinX + 1, y - (HeadingMm / 2)), TextAlong.Start, TextAcross.Middle), new TextStyle(2.5, TextWeight.Heavy));
            y -= HeadingMm;
            foreach (RunRow row in rows)
            {
                Name(names, row.Name, new(_room.MinX + 1, y - (pitch / 2)));
                ChartRow line = new(bars, Axis, y - (pitch / 2), pitch * BarShare);
                foreach (RunSpan span in row.On)
                {
                    line.Bar(span.FromS, span.ToS, row.Fill, LineStyle.Thin);
                }

                foreach (RunSpan span in row.Undecided)
                {
                    line.Bar(span.FromS, span.ToS, RunRows.Undecided, LineStyle.Thin);
                }

                y -= pitch;
            }
        }
    }

    // On a sheet the tables have a long name whole; by itself the chart gives it two lines.
    private void Name(GroupPen pen, string name, Point at)
    {
        TextStyle style = TextStyle.Small;
        IReadOnlyList<string> wrapped = _isAlone ? TextFit.Wrap(name, _namesMm - 1, style) : [name];
        string[] lines = wrapped.Count <= 2 ? [.. wrapped] : [wrapped[0], string.Join(' ', wrapped.Skip(1))];
        for (int i = 0; i < lines.Length; i++)
        {
            double up = (((lines.Length - 1) / 2.0) - i) * style.HeightMm * Lettering.ClosePitch;
            pen.Text(TextFit.Shortened(lines[i], _namesMm - 1, style), new(at + new Vector(0, up), TextAlong.Start, TextAcross.Middle), style);
        }
    }

    private void Foot(SheetBuilder sheet, double top)
    {
        Legend.Draw(sheet.Group("legend", "Legend", "legend"), new Point(_room.MinX, top), _room.Width);
        double tableTop = top - Legend.HeightMm(_room.Width) - GapMm;
        int drawn = _table.DrawSideBySide(sheet.Group("moments", "What happens when", "table"), new(_room.MinX, _room.MinY, _room.MaxX, tableTop));
        if (drawn < _table.Rows.Count)
        {
            sheet.Warn(Invariant.Text($"The table of run '{Run.Scenario.Name}' lacks its last {_table.Rows.Count - drawn} moments; its CSV has them all."));
        }

        Bounds beside = SheetFrame.BesideTitleBlock(_size);
        const double leastCautionMm = 60;
        if (beside.Width >= leastCautionMm)
        {
            new CautionBlock(SheetWordsOf.CautionsOf(_design)).Draw(sheet.Group("caution", "Caution", "notes"), new Point(beside.MinX, beside.MaxY), Math.Min(beside.Width, 110));
        }
    }

    private string Description() => Description(_design, _rows);

    /// <summary>A run in sentences.</summary>
    public static string Description(Design design, RunRows rows)
    {
        ScenarioRun run = rows.Run;
        string loads = string.Join("; ", design.Circuit.Loads.Select((l, i) => $"{l} on for {Wording.Number(run.OnTimeS(i), 2)} s"));
        string certain = run.IsCertain ? "" : " The motor was undecided at times and is taken as standing then.";
        return $"The circuit played over {Wording.Seconds(run.EndS)}: {loads}.{certain}{(rows.LacksWords is string cut ? " " + cut : "")}";
    }
}
