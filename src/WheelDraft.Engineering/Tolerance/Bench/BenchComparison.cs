using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Whether a figure lies within its limits.</summary>
internal enum BenchVerdict
{
    /// <summary>Within the limits, whatever the uncertainty does.</summary>
    Meets,

    /// <summary>Nearer to a limit than the uncertainty of the measurement (twice its standard uncertainty): not decided.</summary>
    Undecided,

    /// <summary>Outside.</summary>
    Misses,
}

/// <summary>A figure, what it should be and what it was.</summary>
/// <param name="WantedS">Wanted, s.</param>
/// <param name="LeastS">Least allowed, s.</param>
/// <param name="MostS">Greatest allowed, s.</param>
/// <param name="Measured">As it was.</param>
internal readonly record struct BenchFigure(double WantedS, double LeastS, double MostS, MeanReading Measured)
{
    /// <summary>The verdict.</summary>
    public BenchVerdict Verdict
    {
        get
        {
            double inside = Math.Min(Measured.MeanS - LeastS, MostS - Measured.MeanS);
            return inside < 0 ? BenchVerdict.Misses : inside < 2 * Measured.UncertaintyS ? BenchVerdict.Undecided : BenchVerdict.Meets;
        }
    }
}

/// <summary>One on-period, held against the file.</summary>
/// <param name="Output">Its output, by its place in the file.</param>
/// <param name="Period">The on-period, by start, from 0.</param>
/// <param name="Start">Its start after home.</param>
/// <param name="On">Its on-time.</param>
internal sealed record ComparedPeriod(int Output, int Period, BenchFigure Start, BenchFigure On)
{
    /// <summary>The on-times turn by turn, s.</summary>
    public IReadOnlyList<double> Readings { get; init; } = [];
}

/// <summary>Turns of a screw that bring an on-time to what is wanted.</summary>
/// <param name="Output">The output, by its place in the file.</param>
/// <param name="Turns">Turns, above 0.</param>
/// <param name="UncertaintyTurns">Standard uncertainty of that, turns.</param>
/// <param name="MovesIn">Whether the wiper has to move towards the shaft.</param>
/// <param name="IsWithin">Whether travel is left for it with the screw at mid travel, as drawn.</param>
internal sealed record ScrewTurns(int Output, double Turns, double UncertaintyTurns, bool MovesIn, bool IsWithin);

/// <summary>A made wheel's log, held against its file.</summary>
internal sealed record BenchComparison
{
    /// <summary>The brief.</summary>
    public required Brief Brief { get; init; }

    /// <summary>What was measured.</summary>
    public required BenchTurns Turns { get; init; }

    /// <summary>The turn time.</summary>
    public required BenchFigure TurnTime { get; init; }

    /// <summary>The on-periods, in the order of the file.</summary>
    public required IReadOnlyList<ComparedPeriod> Periods { get; init; }

    /// <summary>What misses in whole: an output with another number of on-periods than wanted.</summary>
    public required IReadOnlyList<string> Missing { get; init; }

    /// <summary>What could not be compared, in sentences.</summary>
    public required IReadOnlyList<string> Left { get; init; }

    /// <summary>What is wrong, as far as the figures tell.</summary>
    public required IReadOnlyList<BenchFault> Faults { get; init; }

    /// <summary>Screws to turn.</summary>
    public required IReadOnlyList<ScrewTurns> Screws { get; init; }

    /// <summary>Whether anything misses.</summary>
    public bool Misses => Missing.Count > 0 || TurnTime.Verdict == BenchVerdict.Misses
        || Periods.Any(p => p.On.Verdict == BenchVerdict.Misses || p.Start.Verdict == BenchVerdict.Misses);

    /// <summary>Holds a log against a design.</summary>
    /// <param name="design">Brief, motion, programme and wheel of the design.</param>
    /// <param name="turns">The log's turns.</param>
    /// <param name="homeAtS">A time in the log at which the wheel stood at home, s; null when not known.</param>
    public static BenchComparison Of(BenchDesign design, BenchTurns turns, double? homeAtS = null) => new BenchComparer(design, turns, homeAtS).Compare();
}

/// <summary>What a comparison needs of a design.</summary>
internal sealed record BenchDesign(Brief Brief, Motion Motion, Programme Programme, WheelLayout Wheel);

/// <summary>Compares.</summary>
internal sealed class BenchComparer
{
    private readonly BenchDesign _design;
    private readonly BenchTurns _turns;
    private readonly double? _homeAtS;
    private readonly List<string> _missing = [];
    private readonly List<string> _left = [];
    private readonly List<(int Output, BenchContact Contact)> _pairs = [];

    public BenchComparer(BenchDesign design, BenchTurns turns, double? homeAtS)
    {
        (_design, _turns, _homeAtS) = (design, turns, homeAtS);
        Pair();
    }

    private double MeasuredTurnS => _turns.TurnTime.MeanS;

    public BenchComparison Compare()
    {
        double nominal = _design.Motion.TurnTimeS, share = _design.Brief.Supply.FrequencyToleranceShare;
        (double home, List<EdgeResidual> residuals) = Aligned();
        List<ComparedPeriod> periods = [.. _pairs.SelectMany(p => p.Contact.Periods.Select((_, i) => Compared(p.Output, p.Contact, i, home)))];
        return new()
        {
            Brief = _design.Brief,
            Turns = _turns,
            TurnTime = new(nominal, nominal / (1 + share), nominal / (1 - share), _turns.TurnTime),
            Periods = [.. periods.OrderBy(p => p.Output).ThenBy(p => p.Period)],
            Missing = _missing,
            Left = _left,
            Faults = BenchFaults.Of(_design, _turns, residuals, _homeAtS is double at ? Shift(home, at) : null),
            Screws = [.. periods.Select(Screw).OfType<ScrewTurns>()],
        };
    }

    private double? Shift(double home, double atS)
    {
        double off = home - ((atS - _turns.ZeroAtS) / MeasuredTurnS);
        return (off - Math.Round(off)) * _design.Motion.TurnTimeS;
    }

    private void Pair()
    {
        HashSet<BenchContact> used = [];
        for (int o = 0; o < _design.Brief.Outputs.Count; o++)
        {
            string name = _design.Brief.Outputs[o].Name;
            if (_turns.Contacts.FirstOrDefault(c => Same(c.Name, name)) is not BenchContact contact)
            {
                _left.Add($"'{name}' has no column in the log");
                continue;
            }

            used.Add(contact);
            OutputProgramme wanted = _design.Programme.Outputs[o];
            if (wanted.IsAlways)
            {
                if (!contact.IsAlwaysOn)
                {
                    _missing.Add($"'{name}' is to be on all the turn, and was not");
                }
            }
            else if (contact.Periods.Count != wanted.Periods.Count)
            {
                _missing.Add(FormattableString.Invariant($"'{name}' is on {contact.Periods.Count} times a turn where {wanted.Periods.Count} are wanted"));
            }
            else
            {
                _pairs.Add((o, contact));
            }
        }

        _left.AddRange(_turns.Contacts.Where(c => !used.Contains(c)).Select(c => $"the column '{c.Name}' is no output of the file"));
        if (_pairs.Count == 0 && _missing.Count == 0)
        {
            throw new DesignRefusedException("log.columns", $"No column of the log is an output of the file: it has {string.Join(", ", _turns.Contacts.Select(c => $"'{c.Name}'"))}, the file {string.Join(", ", _design.Brief.Outputs.Select(o => $"'{o.Name}'"))}.");
        }
    }

    private static bool Same(string one, string two) => string.Equals(Plain(one), Plain(two), StringComparison.Ordinal);

    private static string Plain(string name) => string.Concat(name.Where(char.IsLetterOrDigit)).ToUpperInvariant();

    // Shares of the turn at which the wanted edges lie, and the measured ones from the log's zero.
    private double WantedStart(int output, int period) => _design.Programme.Outputs[output].Periods[period].StartRad / Angles.TurnRad;

    private double WantedSweep(int output, int period) => _design.Programme.Outputs[output].Periods[period].SweepRad / Angles.TurnRad;

    private static double Near(double share) => share - Math.Round(share);

    /// <summary>Where home lies in the log's turn: where most edges are nearest to where they are wanted. One output, or one edge, that is off does not pull it.</summary>
    private (double Home, List<EdgeResidual> Residuals) Aligned()
    {
        double best = 0, least = double.PositiveInfinity;
        List<EdgeResidual> all = [];
        foreach ((int output, BenchContact contact) in _pairs)
        {
            foreach (BenchPeriod period in contact.Periods)
            {
                for (int w = 0; w < contact.Periods.Count; w++)
                {
                    double home = period.StartShare - WantedStart(output, w);
                    List<EdgeResidual> tried = Residuals(home);
                    double cost = tried.Sum(r => Math.Min(Math.Abs(r.OffS), 0.05 * _design.Motion.TurnTimeS));
                    if (cost < least)
                    {
                        (best, least, all) = (home, cost, tried);
                    }
                }
            }
        }

        if (all.Count == 0)
        {
            return (0, all);
        }

        // Each output counts alike, however many edges it has.
        double[] middles = [.. all.GroupBy(r => r.Output).Select(g => Median([.. g.Select(r => r.OffS)])).Order()];
        double shift = Median(middles) / _design.Motion.TurnTimeS;
        return (best + shift, Residuals(best + shift));
    }

    private static double Median(double[] values)
    {
        double[] sorted = [.. values.Order()];
        int middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    // The on-periods of the log belong to those of the file in the same order round the turn; with which they begin, the least distance tells.
    private int FirstOf(int output, BenchContact contact, double home)
    {
        int count = contact.Periods.Count, best = 0;
        double least = double.PositiveInfinity;
        for (int by = 0; by < count; by++)
        {
            double sum = Enumerable.Range(0, count).Sum(i => Math.Abs(Near(contact.Periods[i].StartShare - home - WantedStart(output, (i + by) % count))));
            (best, least) = sum < least ? (by, sum) : (best, least);
        }

        return best;
    }

    private List<EdgeResidual> Residuals(double home)
    {
        double nominal = _design.Motion.TurnTimeS;
        List<EdgeResidual> all = [];
        foreach ((int output, BenchContact contact) in _pairs)
        {
            int first = FirstOf(output, contact, home);
            for (int i = 0; i < contact.Periods.Count; i++)
            {
                int w = (i + first) % contact.Periods.Count;
                BenchPeriod period = contact.Periods[i];
                double make = Near(period.StartShare - home - WantedStart(output, w)) * nominal;
                double on = ((period.On.MeanS / MeasuredTurnS) - WantedSweep(output, w)) * nominal;
                double u = Math.Max(period.Start.UncertaintyS, period.On.UncertaintyS);
                all.Add(new(output, w, true, make, u));
                all.Add(new(output, w, false, make + on, u));
            }
        }

        return all;
    }

    private ComparedPeriod Compared(int output, BenchContact contact, int index, double home)
    {
        BenchPeriod period = contact.Periods[index];
        int wanted = (index + FirstOf(output, contact, home)) % contact.Periods.Count;
        RingPeriod ring = _design.Wheel.Rings[output].Periods[wanted];
        double tolerance = _design.Brief.Outputs[output].ToleranceS ?? ring.Limits.WorstS;
        double from = WantedStart(output, wanted) * _design.Motion.TurnTimeS, on = WantedSweep(output, wanted) * _design.Motion.TurnTimeS;
        double start = (WantedStart(output, wanted) + Near(period.StartShare - home - WantedStart(output, wanted))) * MeasuredTurnS;
        return new(
            output,
            wanted,
            new(from, ring.Bands.StartMinS, ring.Bands.StartMaxS, period.Start with { MeanS = start }),
            new(on, on - tolerance, on + tolerance, period.On))
        { Readings = period.Readings };
    }

    private ScrewTurns? Screw(ComparedPeriod period)
    {
        if (_design.Wheel.Rings[period.Output].Adjust is not AdjustLayout adjust || adjust.Middle.SecondsPerTurn <= 0)
        {
            return null;
        }

        // At the nominal frequency, as the file's times are.
        double scale = _design.Motion.TurnTimeS / MeasuredTurnS;
        double wantedS = period.On.WantedS - (period.On.Measured.MeanS * scale);
        double turns = Math.Abs(wantedS) / adjust.Middle.SecondsPerTurn;
        bool movesIn = wantedS > 0 == (adjust.Asked.Longer == LongerWay.In);
        return new(period.Output, turns, period.On.Measured.UncertaintyS * scale / adjust.Middle.SecondsPerTurn, movesIn, turns <= adjust.Turns / 2);
    }
}
