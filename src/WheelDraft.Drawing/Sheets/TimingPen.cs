using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Draws rows of the timing chart.</summary>
internal sealed class TimingPen(SheetBuilder sheet, ChartAxis axis, Bounds chart, TimingLettering lettering)
{
    /// <summary>Between a name and the axis, mm: the heads of bars that go on.</summary>
    public const double NameAirMm = 3;

    // Middles of letters keep this far off home, mm.
    private const double LetterMm = 1.8;

    private readonly List<Bounds> _headings = [];
    private int _rows;

    /// <summary>The filling of a state.</summary>
    public static Fill FillOf(TimingState state) => state switch
    {
        TimingState.Closed => Fill.Of(FillKind.Copper),
        TimingState.On => Fill.Of(FillKind.Lit),
        TimingState.WithInputs => Fill.Of(FillKind.LitAtInputs),
        TimingState.Undecided => Fill.Of(FillKind.Warning),
        _ => Fill.Solid(Ink.Accent),
    };

    /// <summary>A state in words.</summary>
    public static string Meaning(TimingState state) => state switch
    {
        TimingState.Closed => "contact closed",
        TimingState.On => "load on",
        TimingState.WithInputs => "on if the inputs are as written",
        TimingState.Undecided => "undecided",
        _ => "wheel parks",
    };

    /// <summary>Whether a bar's words stand inside it.</summary>
    public static bool HasRoom(TimingBar bar, ChartAxis axis)
    {
        const double airMm = 4;
        (double from, double to) = Longer(bar, axis);
        return TextFit.WidthMm(bar.Words, TextStyle.Small) + airMm <= axis.Of(to) - axis.Of(from);
    }

    /// <summary>Draws a heading over rows.</summary>
    public void Heading(string heading, double topMm, double heightMm)
    {
        GroupPen pen = sheet.Group($"section-{Invariant.Text($"{_rows}")}", heading, "section");
        pen.Box(new(chart.MinX, topMm - heightMm, chart.MaxX, topMm), Fill.Of(FillKind.Band));
        SheetText words = new(heading, new(new(chart.MinX + 1, topMm - (heightMm / 2)), TextAlong.Start, TextAcross.Middle), TextStyle.Caption);
        pen.Add(words);
        _headings.Add(words.Bounds.Grown(TextRegistry.AirMm));
    }

    /// <summary>What the headings take so far.</summary>
    public IReadOnlyList<Bounds> Headings => _headings;

    /// <summary>Draws a row: its name and its bars.</summary>
    public void Row(TimingRow row, double middleMm, double barMm)
    {
        _rows++;
        GroupPen pen = sheet.Group(Invariant.Text($"row-{_rows}"), row.Name, "row");
        IReadOnlyList<string> name = TextFit.Wrap(row.Name, lettering.NamesMm, lettering.NameStyle);
        for (int i = 0; i < name.Count; i++)
        {
            double y = middleMm + ((((name.Count - 1) / 2.0) - i) * lettering.NameStyle.HeightMm * Lettering.ClosePitch);
            pen.Text(name[i], new(new(axis.LeftMm - NameAirMm, y), TextAlong.End, TextAcross.Middle), lettering.NameStyle);
        }

        pen.Line(new Point(axis.LeftMm, middleMm - (barMm / 2)), new Point(axis.RightMm, middleMm - (barMm / 2)), LineStyle.Thin);
        if (row.Lift is { } cam)
        {
            LiftCurve.Draw(pen, cam, (axis.LeftMm, axis.RightMm), (middleMm - (barMm / 2), barMm));
        }

        ChartRow bars = new(pen, axis, middleMm, barMm);
        foreach (TimingBar bar in row.Bars)
        {
            Bar(bars, bar);
        }

        foreach (TimingBar bar in row.Bars)
        {
            Words(bars, bar, row);
        }
    }

    private void Bar(ChartRow row, TimingBar bar)
    {
        row.BarRound(bar.FromS, bar.ForS, FillOf(bar.State), LineStyle.Thin);
        if (bar.FromS + bar.ForS > axis.To)
        {
            GoesOn(row);
        }

        if (bar.AdjustS is TimingSpan moves)
        {
            double from = InTurn(moves.LeastS);
            row.BarRound(from, moves.MostS - moves.LeastS, Fill.Of(FillKind.Whisker), LineStyle.Thin);
        }

        foreach (TimingSpan span in new[] { bar.MakeS, bar.BreakS }.OfType<TimingSpan>())
        {
            row.WhiskerRound(span.LeastS, span.MostS);
        }
    }

    private void Words(ChartRow row, TimingBar bar, TimingRow of)
    {
        if (bar.Words.Length == 0)
        {
            return;
        }

        (double from, double to) = Longer(bar, axis);
        if (!HasRoom(bar, axis) && lettering.LetterOf(bar.Words) is string letter)
        {
            Letter(row, (from, to), letter, of);
            return;
        }

        double whisker = bar.BreakS is TimingSpan late ? Math.Max(0, late.MostS - bar.FromS - bar.ForS) : 0;
        double moved = bar.AdjustS is TimingSpan range ? Math.Max(0, range.MostS - bar.FromS - bar.ForS) : 0;
        row.Label(from, Math.Min(axis.To, to + Math.Max(whisker, moved)), bar.Words, TextStyle.Small);
    }

    /// <summary>A letter to the right of a bar where no other bar stands, else over or under it.</summary>
    private void Letter(ChartRow row, (double FromS, double ToS) bar, string letter, TimingRow of)
    {
        const double airMm = 0.8;
        double x = axis.Of((bar.FromS + bar.ToS) / 2);
        double off = (row.BarMm / 2) + airMm;
        double taken = (TextFit.WidthMm(letter, TextStyle.Small) + 4) * (axis.To - axis.From) / (axis.RightMm - axis.LeftMm);
        bool isFree = bar.ToS + taken <= axis.To && of.Bars.SelectMany(Parts).All(p => p.ToS <= bar.ToS || p.FromS >= bar.ToS + taken);
        row.Pen.TryText(
            letter,
            [
                .. isFree ? (TextSpot[])[new(new(axis.Of(bar.ToS) + 1.5, row.MiddleMm), TextAlong.Start, TextAcross.Middle)] : [],
                .. from aside in (double[])[0, 2, -2, 4, -4]
                   from way in (double[])[1, -1]
                   select new TextSpot(new(Math.Clamp(x, axis.LeftMm + LetterMm, axis.RightMm - LetterMm) + aside, row.MiddleMm + (way * off)), TextAlong.Middle, way > 0 ? TextAcross.Baseline : TextAcross.Top),
            ],
            TextStyle.Small);
    }

    /// <summary>A bar's one or two parts on the axis.</summary>
    private IEnumerable<(double FromS, double ToS)> Parts(TimingBar bar)
    {
        double to = bar.FromS + bar.ForS;
        return to <= axis.To ? [(bar.FromS, to)] : [(bar.FromS, axis.To), (axis.From, to - (axis.To - axis.From))];
    }

    /// <summary>Draws lines down the chart where the wheel comes to rest; before the rows, which then keep their words off them.</summary>
    public void Parked(IEnumerable<TimingRow> rows)
    {
        GroupPen pen = sheet.Group("parked", "Where the wheel parks", "parked");
        foreach (TimingBar bar in rows.SelectMany(r => r.Bars).Where(b => b.State == TimingState.Parks))
        {
            Point foot = new(axis.Of(bar.FromS), chart.MinY);
            Point top = new(foot.X, chart.MaxY);
            pen.Line(foot, top, LineStyle.Of(LineKind.DoubleChainNarrow, Ink.Accent));
            pen.Texts.TakeLine(foot, top);
        }
    }

    /// <summary>Small heads at both ends of the axis: the bar runs through home.</summary>
    private static void GoesOn(ChartRow row)
    {
        const double longMm = 1.6;
        const double highMm = 1;
        foreach (double x in (double[])[row.Axis.LeftMm - longMm - 0.2, row.Axis.RightMm + 0.3])
        {
            Point tip = new(x + longMm, row.MiddleMm);
            row.Pen.Area(new Outline(Contour.Polygon(tip, tip + new Vector(-longMm, highMm), tip + new Vector(-longMm, -highMm))), Fill.Solid(Ink.Outline));
        }
    }

    /// <summary>The longer part of a bar that runs through home.</summary>
    private static (double FromS, double ToS) Longer(TimingBar bar, ChartAxis axis)
    {
        double to = bar.FromS + bar.ForS;
        return to <= axis.To ? (bar.FromS, to)
            : axis.To - bar.FromS >= to - axis.To ? (bar.FromS, axis.To)
            : (axis.From, to - axis.To);
    }

    private double InTurn(double seconds)
    {
        double turn = axis.To - axis.From;
        return seconds < 0 ? seconds + turn : seconds >= turn ? seconds - turn : seconds;
    }
}
