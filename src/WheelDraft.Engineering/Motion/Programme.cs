using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The wanted on-periods of every output, as programme angles.</summary>
/// <param name="Outputs">One entry an output, in file order.</param>
public sealed record Programme(IReadOnlyList<OutputProgramme> Outputs)
{
    /// <summary>Works out when each output is on.</summary>
    /// <exception cref="DesignRefusedException">On-periods overlap, touch, fill the turn or start after each other in a circle.</exception>
    public static Programme Of(Brief brief, Motion motion) => new ProgrammeBuilder(brief, motion).Build();
}

/// <summary>When one output is on.</summary>
/// <param name="Output">Its name.</param>
/// <param name="Periods">On-periods by start within the turn; empty when always on.</param>
/// <param name="IsAlways">Whether it is on all the turn.</param>
public sealed record OutputProgramme(string Output, IReadOnlyList<OnPeriod> Periods, bool IsAlways);

/// <summary>One on-period.</summary>
/// <param name="StartRad">Programme angle of the make, in [0, 2π).</param>
/// <param name="SweepRad">Programme angle from make to break, above 0 and under a turn.</param>
/// <param name="Index">Its place in the file's list, from 0.</param>
public sealed record OnPeriod(double StartRad, double SweepRad, int Index)
{
    /// <summary>Programme angle of the break: start + sweep, so it may pass a whole turn.</summary>
    public double EndRad => StartRad + SweepRad;

    /// <summary>The on-period as directions.</summary>
    public CircleArc Arc => CircleArc.Sweep(StartRad, SweepRad);
}

internal sealed class ProgrammeBuilder(Brief brief, Motion motion)
{
    // Programme angles closer than this are one and the same, rad: 1e-10 rad is 3 ns of a three-minute turn, above
    // the rounding of adding up a few dozen on-periods and far below anything that could be cut.
    private const double SameRad = 1e-10;

    private readonly Dictionary<string, IReadOnlyList<OnPeriod>> _done = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _busy = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<Finding> _reasons = [];

    public Programme Build()
    {
        List<OutputProgramme> outputs = [];
        foreach (OutputBrief output in brief.Outputs)
        {
            bool always = output.On.Periods is null;
            IReadOnlyList<OnPeriod> periods = always ? [] : InFileOrder(output);
            List<OnPeriod> sorted = [.. periods.OrderBy(p => p.StartRad).ThenBy(p => p.Index)];
            CheckApart(output, sorted);
            outputs.Add(new(output.Name, sorted, always));
        }

        return _reasons.Count == 0 ? new(outputs) : throw new DesignRefusedException(_reasons);
    }

    private string Extent(double rad) => $"{Wording.Seconds(motion.SecondsFromRad(rad))} ({Wording.Degrees(rad)})";

    private string PathOf(OutputBrief output, int? period = null)
    {
        int at = Enumerable.Range(0, brief.Outputs.Count).First(i => ReferenceEquals(brief.Outputs[i], output));
        string on = string.Create(CultureInfo.InvariantCulture, $"output[{at}].on");
        return period is int p ? string.Create(CultureInfo.InvariantCulture, $"{on}[{p}]") : on;
    }

    private IReadOnlyList<OnPeriod> InFileOrder(OutputBrief output)
    {
        if (_done.TryGetValue(output.Name, out IReadOnlyList<OnPeriod>? known))
        {
            return known;
        }

        if (!_busy.Add(output.Name))
        {
            throw new DesignRefusedException(
                "programme.circle",
                $"The on-periods of '{output.Name}' start after each other in a circle; give one of them a 'from'.",
                brief.PlaceOf(PathOf(output)));
        }

        List<OnPeriod> periods = [];
        for (int i = 0; i < output.On.Periods!.Count; i++)
        {
            if (Period(output, i) is OnPeriod period)
            {
                periods.Add(period);
            }
        }

        _busy.Remove(output.Name);
        _done[output.Name] = periods;
        return periods;
    }

    private OnPeriod? Period(OutputBrief output, int index)
    {
        OnPeriodBrief asked = output.On.Periods![index];
        double start = asked.Start switch
        {
            StartAt at => motion.RadOf(at.From),
            StartAfter after => EndOfLast(after, output, index) + motion.RadOf(after.Gap),
            _ => throw new NotSupportedException($"A start of kind {asked.Start.GetType().Name}."),
        };
        double sweep = asked.Extent switch
        {
            LastsFor lasts => motion.RadOf(lasts.Amount),
            LastsTo to => SweepTo(start, motion.RadOf(to.To)),
            LastsForVolume volume => motion.RadFromSeconds(volume.Litres / (output.FlowLPerS
                ?? throw new DesignRefusedException("programme.flow", $"'{output.Name}' is on for a volume, which needs its 'flow'.", brief.PlaceOf(PathOf(output, index))))),
            _ => throw new NotSupportedException($"An extent of kind {asked.Extent.GetType().Name}."),
        };
        if (sweep <= SameRad || sweep >= Angles.TurnRad - SameRad)
        {
            _reasons.Add(Finding.Error(
                "programme.extent",
                string.Create(CultureInfo.InvariantCulture, $"On-period {index + 1} of '{output.Name}' lasts {Extent(sweep)} of a turn of {Wording.Seconds(motion.TurnTimeS)}; ")
                    + "it must be longer than nothing and shorter than the turn (for all the turn write on = \"always\").",
                brief.PlaceOf(PathOf(output, index))));
            return null;
        }

        return new OnPeriod(Snap(Angles.InTurn(start)), sweep, index);
    }

    private static double Snap(double startRad) => startRad >= Angles.TurnRad - SameRad ? 0 : startRad;

    private static double SweepTo(double start, double to)
    {
        double sweep = Angles.InTurn(to - start);
        return sweep >= Angles.TurnRad - SameRad ? 0 : sweep;
    }

    private double EndOfLast(StartAfter after, OutputBrief asking, int index)
    {
        OutputBrief? other = brief.Outputs.FirstOrDefault(o => string.Equals(o.Name, after.Output, StringComparison.OrdinalIgnoreCase));
        if (other is null || other.On.Periods is null)
        {
            throw new DesignRefusedException(
                "programme.after",
                other is null
                    ? $"'{asking.Name}' starts after '{after.Output}', which is no output of this file."
                    : $"'{asking.Name}' starts after '{after.Output}', which is always on and never ends.",
                brief.PlaceOf(PathOf(asking, index)));
        }

        IReadOnlyList<OnPeriod> periods = InFileOrder(other);
        return periods.Count > 0 ? periods[^1].EndRad : 0;
    }

    private void CheckApart(OutputBrief output, List<OnPeriod> sorted)
    {
        for (int i = 0; i < sorted.Count && sorted.Count > 1; i++)
        {
            OnPeriod one = sorted[i];
            OnPeriod next = sorted[(i + 1) % sorted.Count];
            double nextStart = next.StartRad + (i + 1 == sorted.Count ? Angles.TurnRad : 0);
            double gap = nextStart - one.EndRad;
            string both = string.Create(CultureInfo.InvariantCulture, $"On-periods {one.Index + 1} and {next.Index + 1} of '{output.Name}'");
            if (gap <= SameRad)
            {
                _reasons.Add(Finding.Error(
                    "programme.overlap",
                    gap < -SameRad
                        ? $"{both} overlap by {Extent(-gap)}; move or shorten one."
                        : $"{both} touch; write them as one.",
                    brief.PlaceOf(PathOf(output, next.Index))));
            }
        }
    }
}
