using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>What a stretch of the timing chart means.</summary>
internal enum TimingState
{
    /// <summary>The contact is closed.</summary>
    Closed,

    /// <summary>The load is on whatever the inputs do.</summary>
    On,

    /// <summary>The load is on at some positions of the inputs.</summary>
    WithInputs,

    /// <summary>Whether the load is on is undecided at some positions of the inputs.</summary>
    Undecided,

    /// <summary>The wheel may come to rest here.</summary>
    Parks,
}

/// <summary>A row of the timing chart.</summary>
/// <param name="Name">Whose row it is.</param>
/// <param name="Bars">Its stretches; nothing in between is on.</param>
internal sealed record TimingRow(string Name, IReadOnlyList<TimingBar> Bars)
{
    /// <summary>The cam whose lift is drawn in the row; null for a row of bars.</summary>
    public CamLayout? Lift { get; init; }
}

/// <summary>A stretch of a row.</summary>
/// <param name="State">What it means.</param>
/// <param name="FromS">Where it begins, s from home, in the turn.</param>
/// <param name="ForS">How long it is, s; it may run through home.</param>
/// <param name="Words">What is written on it; empty for nothing.</param>
internal sealed record TimingBar(TimingState State, double FromS, double ForS, string Words)
{
    /// <summary>Worst-case limits of its start; null where none are known.</summary>
    public TimingSpan? MakeS { get; init; }

    /// <summary>Worst-case limits of its end, the start where it should be: those of the on-time.</summary>
    public TimingSpan? BreakS { get; init; }

    /// <summary>Between which times its edge moves over the travel of the screw.</summary>
    public TimingSpan? AdjustS { get; init; }
}

/// <summary>A span of time, s; not reduced to one turn.</summary>
internal readonly record struct TimingSpan(double LeastS, double MostS);

/// <summary>Rows of one kind under a heading.</summary>
internal sealed record TimingSection(string Heading, IReadOnlyList<TimingRow> Rows);

/// <summary>Reads the rows of the timing chart from a design.</summary>
internal sealed class TimingRows(Design design)
{
    /// <summary>Contacts, loads, and where the wheel parks, as far as there are any.</summary>
    public IReadOnlyList<TimingSection> Sections() =>
    [
        .. new TimingSection[]
        {
            new("Contacts on the wheel", [.. design.Wheel.Rings.Select(Contact)]),
            new("Levers", [.. design.Cams.SelectMany(Levers)]),
            new("Loads", [.. design.Circuit.Loads.Select((name, i) => new TimingRow(name, Load(i)))]),
            new("Wheel", Parks()),
        }.Where(s => s.Rows.Count > 0),
    ];

    private IEnumerable<TimingRow> Levers(CamLayout cam)
    {
        yield return new(cam.Brief.Name, []) { Lift = cam };
        if (cam.Contact is { } contact)
        {
            double turn = design.Motion.TurnTimeS;
            yield return new(contact.Input, contact.Free.IsAlways ? [new(TimingState.Closed, 0, turn, "always closed")] : [.. contact.Free.Periods.Select(Period)]);
        }
    }

    private TimingBar Period(MadePeriod period)
    {
        Motion motion = design.Motion;
        double from = motion.SecondsFromRad(period.Closed.StartRad), on = motion.SecondsFromRad(period.Closed.SweepRad);
        return new(TimingState.Closed, from, on, Wording.Seconds(Math.Round(on, 2)))
        {
            MakeS = new(from - motion.SecondsFromRad(period.Make.EarlierRad), from + motion.SecondsFromRad(period.Make.LaterRad)),
            BreakS = new(from + on - motion.SecondsFromRad(period.Break.EarlierRad), from + on + motion.SecondsFromRad(period.Break.LaterRad)),
        };
    }

    private TimingRow Contact(RingLayout ring) => new(
        ring.Name,
        ring.IsWhole
            ? [new(TimingState.Closed, 0, design.Motion.TurnTimeS, "always closed")]
            : [.. ring.Periods.Select(p => Period(ring, p))]);

    private TimingBar Period(RingLayout ring, RingPeriod period)
    {
        double from = design.Motion.SecondsFromRad(period.Wanted.StartRad);
        double on = design.Motion.SecondsFromRad(period.Wanted.SweepRad);
        TimingLimits limits = period.Limits;
        return new(TimingState.Closed, from, on, Words(ring, on))
        {
            MakeS = new(period.Bands.StartMinS, period.Bands.StartMaxS),
            BreakS = new(from + on - limits.ShorterS, from + on + limits.LongerS),
            AdjustS = ring.Adjust is AdjustLayout adjust ? Moves(adjust, from, on) : null,
        };
    }

    private static string Words(RingLayout ring, double onS) => ring.Adjust is AdjustLayout adjust
        ? $"{Wording.Seconds(Math.Round(onS, 2))}, set {Wording.Number(adjust.Steps.Min(s => s.OnS), 2)} to {Wording.Seconds(Math.Round(adjust.Steps.Max(s => s.OnS), 2))}"
        : Wording.Seconds(Math.Round(onS, 2));

    private static TimingSpan Moves(AdjustLayout adjust, double fromS, double onS)
    {
        (double least, double most) = (adjust.Steps.Min(s => s.OnS), adjust.Steps.Max(s => s.OnS));
        return adjust.Edge.End == EdgeEnd.Make
            ? new(fromS + onS - most, fromS + onS - least)
            : new(fromS + least, fromS + most);
    }

    private IReadOnlyList<TimingRow> Parks() => design.Circuit.Parks.Count == 0
        ? []
        : [new("parks", [.. design.Circuit.Parks.Select(Park)])];

    private TimingBar Park(ParkedPosition park)
    {
        double from = design.Motion.SecondsFromRad(Angles.InTurn(park.FromRad));
        double length = design.Motion.SecondsFromRad(park.ToRad - park.FromRad);
        string words = length < 0.005
            ? Wording.Seconds(Math.Round(from, 2))
            : $"{Wording.Number(from, 2)} to {Wording.Seconds(Math.Round((from + length) % design.Motion.TurnTimeS, 2))}";
        return new(TimingState.Parks, from, length, words);
    }

    /// <summary>Stretches of equal behaviour; an off one has no bar.</summary>
    private List<TimingBar> Load(int load)
    {
        List<TimingBar> bars = [];
        foreach (TurnStretch<TruthEntry> stretch in design.Circuit.Stretches(i => design.Circuit.Truth(i, load)))
        {
            if (State(stretch.Value.Truth) is TimingState state)
            {
                bars.Add(new(state, design.Motion.SecondsFromRad(stretch.FromRad), design.Motion.SecondsFromRad(stretch.LengthRad), stretch.Value.Condition));
            }
        }

        return bars;
    }

    private static TimingState? State(LoadTruth truth) => truth switch
    {
        LoadTruth.On => TimingState.On,
        LoadTruth.WithInputs => TimingState.WithInputs,
        LoadTruth.Undecided => TimingState.Undecided,
        _ => null,
    };
}
