using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>The on-periods of all outputs: whether they refer to each other soundly, lie in the turn and keep apart.</summary>
internal sealed class ProgrammeRules(CheckedTable root, DiagnosticList diagnostics) : RuleBase(root, diagnostics)
{
    /// <summary>Parts of a turn below which two ends are the same: a thousand times the rounding of a time in a year-long turn, and nothing a wheel can show.</summary>
    private const double Hair = 1e-12;

    private readonly Dictionary<string, IReadOnlyList<Period?>> _resolved = new(StringComparer.Ordinal);

    private readonly record struct Period(double Start, double Extent);

    private double? _turnS;

    /// <inheritdoc/>
    public override void Check()
    {
        _turnS = TurnTime.Of(Root);
        CheckedTable[] outputs = [.. Root.Tables("output")];
        foreach (CheckedTable output in outputs)
        {
            Forms(output);
            Tolerance(output);
        }

        NotTooMany(outputs);
        bool named = outputs.Select(References).ToArray().All(good => good);
        bool circles = Circles(outputs);
        if (!named || circles || _turnS is null)
        {
            return;
        }

        foreach (CheckedTable output in outputs)
        {
            Overlaps(output);
        }
    }

    private void NotTooMany(CheckedTable[] outputs)
    {
        int count = 0;
        foreach (CheckedTable output in outputs)
        {
            int before = count;
            count += Periods(output).Count + output.Tables("copper").Count;
            if (before <= Budgets.OnPeriods && count > Budgets.OnPeriods)
            {
                Wrong(output.PlaceOf("on"), $"with these the outputs have more than {Budgets.OnPeriods} on-periods", $"a wheel is set out and drawn with at most {Budgets.OnPeriods} in all; on-periods that follow each other closely can be one");
            }
        }
    }

    private static IReadOnlyList<CheckedTable> Periods(CheckedTable output) => output.Tables("on");

    /// <summary>Whether an amount of an on-period lies in the turn, and a volume has its flow.</summary>
    private void Forms(CheckedTable output)
    {
        foreach (CheckedTable period in Periods(output))
        {
            foreach (string key in new[] { "from", "to", "gap", "for" })
            {
                InTurn(period, key);
            }

            if (period.Quantity("for") is { Dimension: Dimension.Volume } && !output.Has("flow"))
            {
                Wrong(period.PlaceOf("for"), "'for' is a volume, and the output has no 'flow'", "write flow = \"1.2 L/min\" in the output, or give a time or an angle");
            }
        }
    }

    private void Tolerance(CheckedTable output)
    {
        if (output.Quantity("tolerance") is { Dimension: Dimension.Volume } && !output.Has("flow"))
        {
            Wrong(output.PlaceOf("tolerance"), "'tolerance' is a volume, and the output has no 'flow'", "write flow = \"1.2 L/min\" in the output, or give a time or a share");
        }
    }

    private void InTurn(CheckedTable period, string key)
    {
        if (period.Has(key) && period.Quantity(key) is { Dimension: Dimension.Time } time && _turnS is { } turn && time.Value > turn)
        {
            Wrong(period.PlaceOf(key), $"'{key}' is {QuantityText.Plain(time.InBaseUnit)} s, longer than the turn of {Short(turn)} s", $"it lies from 0 s to {Short(turn)} s after home, or the turn must take longer");
        }
    }

    private bool References(CheckedTable output)
    {
        bool good = true;
        foreach (CheckedTable period in Periods(output))
        {
            good &= Refers(period.Find("after"), "output", NamesOf("output"));
            if (period.Text("after") is { } name && Named(name) is { } other && other.Is("on", "always"))
            {
                Wrong(period.PlaceOf("after"), $"\"{name}\" is always on and never ends", "start after an output that has on-periods, or write from = a time");
                good = false;
            }
        }

        return good;
    }

    private CheckedTable? Named(string name) => Root.Tables("output").FirstOrDefault(o => o.Is("name", name));

    private bool Circles(CheckedTable[] outputs)
    {
        bool found = false;
        HashSet<string> reported = new(StringComparer.Ordinal);
        foreach (CheckedTable output in outputs)
        {
            if (output.Text("name") is { } name && !reported.Contains(name) && Circle(name, name, []) is { } chain)
            {
                found = true;
                reported.UnionWith(chain);
                CheckedTable period = Periods(output).First(p => p.Is("after", chain.Count < 2 ? name : chain[1]));
                Wrong(period.PlaceOf("after"), $"\"{string.Join("\" starts after \"", chain)}\" starts after \"{name}\": none of them has a start", "give one of them from = a time");
            }
        }

        return found;
    }

    /// <summary>The chain of outputs that leads from one back to itself, or null.</summary>
    private List<string>? Circle(string home, string at, HashSet<string> seen)
    {
        if (!seen.Add(at) || Named(at) is not { } output)
        {
            return null;
        }

        foreach (string next in Periods(output).Select(p => p.Text("after")).OfType<string>())
        {
            if (string.Equals(next, home, StringComparison.Ordinal))
            {
                return [at];
            }

            if (Circle(home, next, seen) is { } rest)
            {
                rest.Insert(0, at);
                return rest;
            }
        }

        return null;
    }

    private void Overlaps(CheckedTable output)
    {
        IReadOnlyList<Period?> periods = Resolve(output);
        IReadOnlyList<CheckedTable> tables = Periods(output);
        for (int i = 0; i < periods.Count; i++)
        {
            if (periods[i] is { Extent: >= 1 - Hair } or { Extent: <= Hair })
            {
                Extreme(tables[i], periods[i]!.Value.Extent > 0.5);
                continue;
            }

            int first = Enumerable.Range(0, i).FirstOrDefault(j => periods[j] is { } a && periods[i] is { } b && Overlap(a, b), -1);
            if (first >= 0)
            {
                Wrong(
                    tables[i].Place,
                    $"on-periods {Short(first + 1)} and {Short(i + 1)} of the output overlap: {InWords(periods[first]!.Value)}, and {InWords(periods[i]!.Value)}",
                    "let the later one start after the earlier one ends, or write them as one");
            }
        }
    }

    private void Extreme(CheckedTable period, bool whole)
    {
        string key = period.Has("to") ? "to" : "for";
        if (whole)
        {
            Wrong(period.PlaceOf(key), "this on-period fills the whole turn", "write on = \"always\"");
        }
        else
        {
            Wrong(period.PlaceOf(key), "this on-period ends where it starts", "let it end later, or write on = \"always\" for the whole turn");
        }
    }

    private string InWords(Period period) => $"from {Short(period.Start * _turnS!.Value)} s for {Short(period.Extent * _turnS.Value)} s";

    private static bool Overlap(Period a, Period b) => Rest(b.Start - a.Start) < a.Extent - Hair || Rest(a.Start - b.Start) < b.Extent - Hair;

    private IReadOnlyList<Period?> Resolve(CheckedTable output)
    {
        // By its place and not by its name: two outputs may have one by mistake.
        if (!_resolved.TryGetValue(output.Path, out IReadOnlyList<Period?>? periods))
        {
            periods = [.. Periods(output).Select(p => Resolve(p, output))];
            _resolved[output.Path] = periods;
        }

        return periods;
    }

    private Period? Resolve(CheckedTable period, CheckedTable output)
    {
        double? start = period.Has("after") ? AfterEnd(period) : Share(period.Quantity("from"), output);
        double? extent = period.Has("for") ? Share(period.Quantity("for"), output) : UpTo(period, output, start);
        return start is { } s && extent is { } e ? new Period(Rest(s), e) : null;
    }

    private double? UpTo(CheckedTable period, CheckedTable output, double? start)
    {
        if (Share(period.Quantity("to"), output) is not { } to || start is not { } from)
        {
            return null;
        }

        double extent = Rest(to - from);
        return extent <= Hair && to - from > 0.5 ? 1 : extent;
    }

    private double? AfterEnd(CheckedTable period)
    {
        CheckedTable? other = period.Text("after") is { } name ? Named(name) : null;
        return other is not null && Resolve(other) is { Count: > 0 } periods && periods[^1] is { } last && Share(period.Quantity("gap"), other) is { } gap
            ? last.Start + last.Extent + gap
            : null;
    }

    /// <summary>An amount as a part of the turn.</summary>
    private double? Share(Quantity? amount, CheckedTable output) => amount?.Dimension switch
    {
        Dimension.Time => amount.Value.Value / _turnS,
        Dimension.Angle => amount.Value.Value / 360,
        Dimension.Volume => output.Quantity("flow") is { } flow ? (double)(amount.Value.InBaseUnit / flow.InBaseUnit) / _turnS : null,
        _ => null,
    };

    private static double Rest(double share)
    {
        double rest = share - Math.Floor(share);
        return rest >= 1 - Hair ? 0 : rest;
    }
}
