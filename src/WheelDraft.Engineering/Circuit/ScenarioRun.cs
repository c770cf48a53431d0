using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>One moment of a played scenario: what has just happened, and how things stand from now on.</summary>
/// <param name="TimeS">Since the start of the scenario.</param>
/// <param name="AngleRad">Programme angle, in [0, 2π).</param>
/// <param name="Turns">Whole turns done.</param>
/// <param name="What">What has happened, in words.</param>
public sealed record RunMoment(double TimeS, double AngleRad, int Turns, string What)
{
    /// <summary>Outputs whose contact is closed from now on.</summary>
    public required IReadOnlyList<string> Closed { get; init; }

    /// <summary>Inputs that are closed from now on.</summary>
    public required IReadOnlyList<string> ClosedInputs { get; init; }

    /// <summary>State of each load from now on, the motor last.</summary>
    public required IReadOnlyList<LoadState> Loads { get; init; }

    /// <summary>Voltage over each load from now on; NaN where it has no answer.</summary>
    public required IReadOnlyList<double> VoltsV { get; init; }

    /// <summary>Whether the wheel turns from now on.</summary>
    public bool IsTurning { get; init; }
}

/// <summary>A scenario played in time: edges where they should be, nominal frequency, the wheel turning while its motor is on.</summary>
/// <remarks>After the motor has lost its supply the wheel runs on at its speed through the middle of the coast band. An undecided
/// motor is taken as standing, and <see cref="IsCertain"/> is then false. A short ends the run: the fuse is open; and so does the
/// last of <see cref="Budgets.RunMoments"/>, with a word.</remarks>
public sealed class ScenarioRun
{
    private ScenarioRun(ScenarioBrief scenario, ScenarioPlayer played)
    {
        (Scenario, Moments, EndS, IsCertain, IsCutShort) = (scenario, played.Moments, played.NowS, played.IsCertain, played.IsCutShort);
    }

    private ScenarioRun(ScenarioRun whole, int moments)
    {
        (Scenario, Moments, EndS, IsCertain, IsCutShort) = (whole.Scenario, [.. whole.Moments.Take(moments)], whole.Moments[moments].TimeS, whole.IsCertain, true);
    }

    /// <summary>The scenario.</summary>
    public ScenarioBrief Scenario { get; }

    /// <summary>The moments at which anything changed, in time order; the first is the start.</summary>
    public IReadOnlyList<RunMoment> Moments { get; }

    /// <summary>When the run ended: the scenario's duration, the moment of a short, or where it was cut short.</summary>
    public double EndS { get; }

    /// <summary>Whether it was cut short after <see cref="Budgets.RunMoments"/>.</summary>
    public bool IsCutShort { get; }

    /// <summary>What is said of a run that was cut short; null of one that was not.</summary>
    public string? CutShortWords => IsCutShort
        ? $"Run '{Scenario.Name}' is cut short after {Wording.Number(EndS, 1)} s of {Wording.Number(Scenario.DurationS, 1)} s: {Budgets.RunMoments} moments are told at most. A shorter duration, or a scenario for each part of interest, tells all."
        : null;

    /// <summary>Whether the motor was never undecided.</summary>
    public bool IsCertain { get; }

    /// <summary>The beginning of the run, up to the moment after so many; the run itself when it has no more.</summary>
    /// <param name="moments">How many moments, at least 1.</param>
    public ScenarioRun Beginning(int moments) => Moments.Count <= moments ? this : new(this, moments);

    /// <summary>How long a load was on.</summary>
    /// <param name="load">Index of the load.</param>
    public double OnTimeS(int load) => Spans(m => m.Loads[load] == LoadState.On).Sum(s => s.ToS - s.FromS);

    /// <summary>The times over which something held, joined where they touch.</summary>
    /// <param name="holds">What to look for.</param>
    public IReadOnlyList<RunSpan> Spans(Func<RunMoment, bool> holds)
    {
        ArgumentNullException.ThrowIfNull(holds);
        List<RunSpan> spans = [];
        for (int i = 0; i < Moments.Count; i++)
        {
            double to = i + 1 < Moments.Count ? Moments[i + 1].TimeS : EndS;
            if (!holds(Moments[i]) || !(to > Moments[i].TimeS))
            {
                continue;
            }

            if (spans.Count > 0 && spans[^1].ToS == Moments[i].TimeS)
            {
                spans[^1] = spans[^1] with { ToS = to };
            }
            else
            {
                spans.Add(new RunSpan(Moments[i].TimeS, to));
            }
        }

        return spans;
    }

    /// <summary>Plays a scenario.</summary>
    /// <param name="request">The circuit.</param>
    /// <param name="scenario">What the inputs do.</param>
    /// <exception cref="DesignRefusedException">A circuit that cannot be solved, or an input that it does not have.</exception>
    public static ScenarioRun Play(CircuitRequest request, ScenarioBrief scenario)
    {
        ArgumentNullException.ThrowIfNull(request);
        return Of(new SoundCircuit(new CircuitModel(request)), scenario);
    }

    internal static ScenarioRun Of(SoundCircuit sound, ScenarioBrief scenario)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ScenarioPlayer player = new(sound, scenario);
        player.Play();
        return new ScenarioRun(scenario, player);
    }
}

/// <summary>A stretch of time.</summary>
/// <param name="FromS">Its start.</param>
/// <param name="ToS">Its end.</param>
public readonly record struct RunSpan(double FromS, double ToS);

/// <summary>Steps a scenario from change to change.</summary>
internal sealed class ScenarioPlayer
{
    private readonly SoundCircuit _sound;
    private readonly CircuitModel _model;
    private readonly ScenarioBrief _scenario;
    private readonly double _radPerS;
    private int _interval;
    private int _inputs;
    private int _turns;
    private int _nextStep;
    private double _angleRad;
    private double _coastLeftRad;
    private bool _isShort;

    /// <summary>At home, every input open.</summary>
    public ScenarioPlayer(SoundCircuit sound, ScenarioBrief scenario)
    {
        (_sound, _model, _scenario) = (sound, sound.Model, scenario);
        _radPerS = Angles.TurnRad / _model.Brief.Drive.TurnTimeS;
    }

    /// <summary>What was seen.</summary>
    public List<RunMoment> Moments { get; } = [];

    /// <summary>The time.</summary>
    public double NowS { get; private set; }

    /// <summary>Whether the motor was never undecided.</summary>
    public bool IsCertain { get; private set; } = true;

    private IReadOnlyList<TurnInterval> Intervals => _model.Turn.Intervals;

    /// <summary>Whether there were more moments than are told.</summary>
    public bool IsCutShort { get; private set; }

    /// <summary>Plays to the end.</summary>
    public void Play()
    {
        bool wasOn = Note("home");
        while (!_isShort && NowS < _scenario.DurationS)
        {
            if (Moments.Count >= Budgets.RunMoments)
            {
                Moments[^1] = Moments[^1] with { What = $"{Moments[^1].What}: cut short here, more moments are not told".TrimStart(':', ' ') };
                IsCutShort = true;
                return;
            }

            double stepS = _nextStep < _scenario.Steps.Count ? _scenario.Steps[_nextStep].AtS : double.PositiveInfinity;
            double angleLeft = AngleToCut();
            double moveS = wasOn ? angleLeft / _radPerS : _coastLeftRad > 0 ? Math.Min(angleLeft, _coastLeftRad) / _radPerS : double.PositiveInfinity;
            double nextS = Math.Min(stepS, NowS + moveS);
            if (nextS > _scenario.DurationS)
            {
                NowS = _scenario.DurationS;
                return;
            }

            wasOn = stepS <= NowS + moveS ? TakeStep(stepS, wasOn) : Move(moveS, angleLeft, wasOn);
        }
    }

    // Home is a stop on the way when it lies within the first interval, so that turns are counted there.
    private bool IsHomeAhead => _interval == 0 && _angleRad > 0 && (Intervals.Count == 1 || Intervals[0].FromRad > 0) && _angleRad >= Intervals[0].FromRad;

    private double AngleToCut()
    {
        TurnInterval now = Intervals[_interval];
        return IsHomeAhead || Intervals.Count == 1
            ? Angles.TurnRad - _angleRad
            : Math.Max(0, now.LengthRad - Angles.InTurn(_angleRad - now.FromRad));
    }

    private bool TakeStep(double atS, bool wasOn)
    {
        double passed = (atS - NowS) * _radPerS;
        if (wasOn || _coastLeftRad > 0)
        {
            _angleRad += passed;
            _coastLeftRad = wasOn ? _coastLeftRad : Math.Max(0, _coastLeftRad - passed);
        }

        NowS = Math.Max(NowS, atS);
        ScenarioStep step = _scenario.Steps[_nextStep++];
        List<string> words = [];
        foreach (string name in step.Close)
        {
            _inputs |= 1 << InputOf(name);
            words.Add($"{name} closes");
        }

        foreach (string name in step.Open)
        {
            _inputs &= ~(1 << InputOf(name));
            words.Add($"{name} opens");
        }

        foreach ((IReadOnlyList<string> cams, bool latch, bool holds) in new[] { (step.Block, false, true), (step.Free, false, false), (step.Latch, true, true), (step.Unlatch, true, false) })
        {
            foreach (string cam in cams)
            {
                int input = InputOf(cam + (latch ? LeverContact.Latched : LeverContact.Blocked));
                _inputs = holds ? _inputs | (1 << input) : _inputs & ~(1 << input);
                words.Add(_model.Change(input, holds));
            }
        }

        return Note(string.Join(", ", words), wasOn);
    }

    private int InputOf(string name)
    {
        for (int i = 0; i < _model.Inputs.Count; i++)
        {
            if (string.Equals(_model.Inputs[i].Name, name, StringComparison.Ordinal))
            {
                return i;
            }
        }

        throw new DesignRefusedException("circuit.unknown-name", $"Scenario '{_scenario.Name}' names '{name}', but there is no input of that name.");
    }

    private bool Move(double moveS, double angleLeftRad, bool wasOn)
    {
        NowS += moveS;
        if (!wasOn && _coastLeftRad < angleLeftRad)
        {
            _angleRad += _coastLeftRad;
            _coastLeftRad = 0;
            return Note("the wheel has come to rest");
        }

        _coastLeftRad = wasOn ? 0 : _coastLeftRad - angleLeftRad;
        return PassCut(wasOn);
    }

    private bool PassCut(bool wasOn)
    {
        if (IsHomeAhead || Intervals.Count == 1)
        {
            _angleRad = 0;
            _turns++;
            return Note("home", wasOn);
        }

        TurnInterval now = Intervals[_interval];
        double end = Intervals[(_interval + 1) % Intervals.Count].FromRad;
        _turns += end < _angleRad ? 1 : 0;
        _angleRad = end;
        ulong[] before = _model.Turn.Positions[now.Position].Closed;
        _interval = (_interval + 1) % Intervals.Count;
        ulong[] after = _model.Turn.Positions[Intervals[_interval].Position].Closed;
        return Note(Changes(before, after), wasOn);
    }

    private string ShortWords => _model.Lines.Count > 1 ? "a line joined to another, to N or to E" : $"{_model.NodeNets[CircuitModel.Line]} joined to N or E";

    private string Changes(ulong[] before, ulong[] after)
    {
        string changes = PlainChanges(before, after);
        return changes.Length == 0 ? "the cam passes under its lever" : changes;
    }

    private string PlainChanges(ulong[] before, ulong[] after) => string.Join(", ", Enumerable.Range(0, _model.Contacts.Count)
        .Where(c => BitRow.Has(before, c) != BitRow.Has(after, c))
        .Where(c => _model.LeverOf(c) is not { } lever || lever.Hold(_inputs) == LeverHold.AsFree)
        .Select(c => _model.LeverOf(c) is { } lever
            ? $"the lever of {lever.Schedule.Cam} {(BitRow.Has(after, c) ? "closes" : "opens")} {lever.Schedule.Input}"
            : $"{_model.Contacts[c].Name} ring {(BitRow.Has(after, c) ? "makes" : "breaks")}"));

    private bool IsClosed(int contact) => _sound.IsClosed(contact, _inputs, BitRow.Has(_model.Turn.Positions[Intervals[_interval].Position].Closed, contact));

    // Notes how things stand; gives whether the motor is on from now on.
    private bool Note(string what, bool wasOn = false)
    {
        CircuitState state = _sound.State(_interval, _inputs);
        bool isOn = state.Motor is null or LoadState.On;
        IsCertain &= state.Motor != LoadState.Undecided;
        _isShort = state.IsShort;
        Coast coast = _model.Brief.Drive.Coast;
        _coastLeftRad = isOn || _isShort ? 0 : wasOn ? (coast.LeastRad + coast.MostRad) / 2 : _coastLeftRad;
        Moments.Add(new RunMoment(NowS, _angleRad, _turns, _isShort ? $"{what}: {ShortWords}, the fuse opens" : what)
        {
            Closed = [.. _model.Contacts.Where((_, c) => c < _model.Outputs && IsClosed(c)).Select(c => c.Name)],
            ClosedInputs = [.. _model.Inputs.Where((_, i) => (_inputs >> i & 1) != 0).Select(i => i.Name), .. _model.Levers.Where(l => IsClosed(l.Contact)).Select(l => l.Schedule.Input)],
            Loads = state.Loads,
            VoltsV = state.VoltsV,
            IsTurning = !_isShort && (isOn || _coastLeftRad > 0),
        });
        return isOn;
    }
}
