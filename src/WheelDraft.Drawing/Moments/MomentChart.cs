using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A row of the chart beside the wheel: whose it is, when it is on over the turn, and its state now.</summary>
internal sealed record MomentRow(string Name, IReadOnlyList<MomentBar> Bars, Func<MomentView, string> State, Func<MomentView, Fill>? Lamp);

/// <summary>A stretch of a row, s from home; it may run through home.</summary>
internal readonly record struct MomentBar(double FromS, double ForS, Fill Fill);

/// <summary>The programme of a turn, inputs held as they are, with a cursor and the state of every row at the cursor.</summary>
internal sealed class MomentChart
{
    private const double HeadingMm = 4.6;
    private const double LeastPitchMm = 5.2;
    private const double MostPitchMm = 9.5;
    private const double BarShare = 0.6;
    private const double AxisMm = 11;
    private const double StateMm = 29;
    private const double LampMm = 1.7;

    // Of the width, what names take at most; two lines of them need this pitch, mm.
    private const double MostNames = 0.42;
    private const double TwoLinePitchMm = 8.2;
    private const double CursorHeadMm = 2.4;

    private readonly Design _design;
    private readonly int _inputs;
    private readonly IReadOnlyList<(string Heading, IReadOnlyList<MomentRow> Rows)> _sections;

    /// <summary>The rows of a design, with inputs held.</summary>
    public MomentChart(Design design, int inputs)
    {
        (_design, _inputs) = (design, inputs);
        CircuitAnalysis circuit = design.Circuit;
        _sections =
        [
            .. ((string Heading, IReadOnlyList<MomentRow> Rows)[])
            [
                ("Contacts", [.. design.Wheel.Rings.Select(Contact)]),
                ("Levers", [.. circuit.Network.Levers.Select(Lever)]),
                ("Inputs", [.. circuit.Inputs.Select(i => new MomentRow(i, [], m => m.IsClosed(i) ? "closed" : "open", null))]),
                ("Loads", [.. circuit.Loads.Select((l, i) => new MomentRow(l, Load(i), m => MomentView.Word(m.Load(l)), m => MomentView.FillOf(m.Load(l))))]),
            ],
        ];
        _sections = [.. _sections.Where(s => s.Rows.Count > 0)];
    }

    /// <summary>What its fillings mean.</summary>
    public IReadOnlyList<LegendEntry> Legend { get; } =
    [
        new("contact closed", TimingPen.FillOf(TimingState.Closed), LineStyle.Thin),
        new("load on", TimingPen.FillOf(TimingState.On), LineStyle.Thin),
    ];

    private int Rows => _sections.Sum(s => s.Rows.Count);

    /// <summary>Height that it takes at a comfortable pitch of its rows, mm.</summary>
    public double HeightMm => (Rows * TwoLinePitchMm) + (_sections.Count * HeadingMm) + AxisMm + CursorHeadMm + 0.01;

    /// <summary>Whether every row finds room.</summary>
    public bool Fits(Bounds area) => Pitch(area) >= LeastPitchMm;

    /// <summary>How far the cursor goes in a turn, mm.</summary>
    public double TravelMm(Bounds area) => area.Width - StateMm - NamesMm(area);

    /// <summary>Draws it.</summary>
    public void Draw(SheetBuilder sheet, MomentView moment, Bounds area)
    {
        double pitch = Math.Clamp(Pitch(area), 1, MostPitchMm);
        double names = NamesMm(area);
        ChartAxis axis = new(0, _design.Motion.TurnTimeS, area.MinX + names, area.MaxX - StateMm) { Steps = StepKind.Seconds };
        double top = area.MaxY - CursorHeadMm;
        double bottom = top - (_sections.Count * HeadingMm) - (Rows * pitch);
        GroupPen axes = sheet.Group("time-axis", "Time axis", "axes");
        axis.DrawGrid(axes, bottom, top);
        axis.Draw(axes, bottom, AxisSide.Below, axis.Fitting(0, "time from home, s →", "time, s →"));
        GroupPen words = sheet.Group("rows", "Names and states", "names");
        GroupPen bars = sheet.Group("bars", "When each is closed or on", "bars");
        double y = top;
        foreach ((string heading, IReadOnlyList<MomentRow> rows) in _sections)
        {
            words.Box(new Bounds(area.MinX, y - HeadingMm, area.MaxX, y), Fill.Of(FillKind.Band));
            words.Text(heading, new(new(area.MinX + 1, y - (HeadingMm / 2)), TextAlong.Start, TextAcross.Middle), TextStyle.Caption);
            y -= HeadingMm;
            foreach (MomentRow row in rows)
            {
                double middle = y - (pitch / 2);
                Name(words, row.Name, new Point(area.MinX + 1, middle), (names - 2, pitch));
                State(words, row, moment, new Point(axis.RightMm + 3, middle));
                ChartRow line = new(bars, axis, middle, pitch * BarShare);
                foreach (MomentBar bar in row.Bars)
                {
                    line.BarRound(bar.FromS, bar.ForS, bar.Fill, LineStyle.Thin);
                }

                y -= pitch;
            }
        }

        TimingCursor.Draw(sheet.Group("cursor", "The moment", "moment"), axis.Of(moment.CursorS), bottom, top);
    }

    private double NamesMm(Bounds area) => Math.Min(area.Width * MostNames, _sections.SelectMany(s => s.Rows).Max(r => TextFit.WidthMm(r.Name, TextStyle.Small)) + 2);

    private double Pitch(Bounds area) => (area.Height - AxisMm - CursorHeadMm - (_sections.Count * HeadingMm)) / Rows;

    /// <summary>A name in a line, in two where the rows are far enough apart, and only then shortened: the sheet's description has it whole.</summary>
    private static void Name(GroupPen pen, string name, Point at, (double WidthMm, double PitchMm) room)
    {
        TextStyle style = TextStyle.Small;
        IReadOnlyList<string> lines = room.PitchMm < TwoLinePitchMm ? [name] : TextFit.Wrap(name, room.WidthMm, style);
        string[] written = lines.Count <= 2 ? [.. lines] : [lines[0], string.Join(' ', lines.Skip(1))];
        double step = style.HeightMm * Lettering.ClosePitch;
        for (int i = 0; i < written.Length; i++)
        {
            Point line = at + new Vector(0, (((written.Length - 1) / 2.0) - i) * step);
            pen.Text(TextFit.Shortened(written[i], room.WidthMm, style), new(line, TextAlong.Start, TextAcross.Middle), style);
        }
    }

    private static void State(GroupPen pen, MomentRow row, MomentView moment, Point at)
    {
        if (row.Lamp is Func<MomentView, Fill> lamp)
        {
            Point centre = at + new Vector(LampMm, 0);
            pen.Area(new Outline(Contour.Circle(centre, LampMm)), lamp(moment), LineStyle.Edge);

            // The sign of a lamp: a circle with a cross (IEC 60617, from memory).
            foreach (double turn in (double[])[Math.PI / 4, -Math.PI / 4])
            {
                Vector half = Vector.Polar(LampMm, turn);
                pen.Line(centre - half, centre + half, LineStyle.Thin);
            }
        }

        string words = row.State(moment);
        bool isOn = words is "on" or "closed" or "undecided";
        pen.Text(words, new(at + new Vector(row.Lamp is null ? 0 : (2 * LampMm) + 1.5, 0), TextAlong.Start, TextAcross.Middle), isOn ? new TextStyle(2.5, TextWeight.Heavy) : TextStyle.Small);
    }

    private MomentRow Contact(RingLayout ring)
    {
        Fill fill = TimingPen.FillOf(TimingState.Closed);
        IReadOnlyList<MomentBar> bars = ring.IsWhole
            ? [new(0, _design.Motion.TurnTimeS, fill)]
            : [.. ring.Periods.Select(p => new MomentBar(_design.Motion.SecondsFromRad(p.Wanted.StartRad), _design.Motion.SecondsFromRad(p.Wanted.SweepRad), fill))];
        return new(ring.Name, bars, m => m.IsMade(ring.Name) ? "closed" : "open", null);
    }

    // A lever's contact, as what holds the lever lets it.
    private MomentRow Lever(LeverContact lever)
    {
        Fill fill = TimingPen.FillOf(TimingState.Closed);
        string input = lever.Schedule.Input;
        IReadOnlyList<MomentBar> bars = lever.Hold(_inputs) switch
        {
            LeverHold.Open => [],
            LeverHold.Closed => [new(0, _design.Motion.TurnTimeS, fill)],
            _ => [.. lever.Schedule.Free.Periods.Select(p => new MomentBar(_design.Motion.SecondsFromRad(p.Closed.StartRad), _design.Motion.SecondsFromRad(p.Closed.SweepRad), fill))],
        };
        return new(input, bars, m => m.IsClosed(input) ? "closed" : "open", null);
    }

    /// <summary>When a load is on or undecided.</summary>
    private IReadOnlyList<MomentBar> Load(int load) =>
    [
        .. _design.Circuit.Stretches(i => _design.Circuit.State(i, _inputs).Loads[load])
            .Where(s => s.Value != LoadState.Off)
            .Select(s => new MomentBar(_design.Motion.SecondsFromRad(s.FromRad), _design.Motion.SecondsFromRad(s.LengthRad), FillOf(s.Value))),
    ];

    private static Fill FillOf(LoadState state) => TimingPen.FillOf(state == LoadState.On ? TimingState.On : TimingState.Undecided);
}
