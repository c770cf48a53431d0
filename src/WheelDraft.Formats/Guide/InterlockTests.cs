using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Guide;

/// <summary>A test for each interlock: what to set, what must never happen, and what must, so that a dead lamp does not pass for a proof.</summary>
internal static class InterlockTests
{
    public static IEnumerable<GuideChapter> Of(Design design)
    {
        if (design.Brief.Interlocks.Count > 0)
        {
            yield return new("Interlocks", [.. design.Brief.Interlocks.SelectMany((lockOf, i) => One(design, lockOf, design.Circuit.Interlocks.ElementAtOrDefault(i)))]);
        }
    }

    /// <summary>The lamps that are lit in a state.</summary>
    public static string Lit(CircuitAnalysis circuit, CircuitState state)
    {
        if (state.IsShort)
        {
            return "SHORT: never set this";
        }

        string[] on = [.. circuit.Loads.Select((l, i) => state.Loads[i] switch { LoadState.On => l, LoadState.Undecided => $"{l} (faint)", _ => "" }).Where(l => l.Length > 0)];
        return on.Length == 0 ? "none" : string.Join(", ", on);
    }

    private static IEnumerable<GuideBlock> One(Design design, InterlockBrief asked, InterlockResult? result)
    {
        string lamps = ShoppingList.Names(asked.Loads.Select(l => $"'{l}'"));
        string part = asked.Between is CircleArc between ? $" between {BenchPlan.Degrees(between.StartRad)} and {BenchPlan.Degrees(between.StartRad + between.SweepRad)}" : "";
        string never = asked.Claim switch
        {
            InterlockClaim.NeverOn => $"Must not happen: {(asked.Loads.Count > 1 ? "any of " : "")}{lamps} lit, not even for a moment. {BenchPlan.Tick}",
            InterlockClaim.AlwaysOn => $"Must not happen: {(asked.Loads.Count > 1 ? "any of " : "")}{lamps} dark, not even for a moment. {BenchPlan.Tick}",
            _ => $"Must not happen: {lamps} all lit at once, not even for a moment. {BenchPlan.Tick}",
        };
        yield return new GuideWords($"'{asked.Name}'{(result is null || result.Verdict == InterlockVerdict.Holds ? "" : ": NOT proved by the report; try it with care, and do not rely on it")}");
        yield return new GuideList(
        [
            $"{Setting(design, asked)} {BenchPlan.Tick}",
            $"Leave them so and let the wheel turn a whole turn, all other switches once open and once closed{(part.Length > 0 ? $"; it is asked{part}" : "")}. {BenchPlan.Tick}",
            never,
            .. Counter(design, asked) is string must ? [must] : (string[])[],
        ], IsNumbered: true);
    }

    private static string Setting(Design design, InterlockBrief asked)
    {
        List<string> words = [];
        void Add(IReadOnlyList<string> names, bool closed)
        {
            foreach (string name in names)
            {
                bool isInput = design.Brief.Inputs.Any(i => string.Equals(i.Name, name, StringComparison.OrdinalIgnoreCase));
                words.Add(isInput ? $"{(closed ? "close" : "open")} the switch '{name}'" : $"look while the contact of '{name}' is {(closed ? "closed" : "open")}");
            }
        }

        Add([.. asked.WhileOpen, .. asked.WhileFalse], closed: false);
        Add([.. asked.WhileClosed, .. asked.WhileTrue], closed: true);
        string text = words.Count == 0 ? "nothing has to be set: it holds always" : string.Join(", ", words);
        return char.ToUpperInvariant(text[0]) + text[1..] + ".";
    }

    /// <summary>A state in which a forbidden load is lit because the conditions are not met: there its lamp is proved to work.</summary>
    private static string? Counter(Design design, InterlockBrief asked)
    {
        CircuitAnalysis circuit = design.Circuit;
        if (asked.Claim == InterlockClaim.AlwaysOn)
        {
            return null;
        }

        List<string> lit = [];
        foreach (string load in asked.Loads)
        {
            int at = circuit.Loads.ToList().FindIndex(l => string.Equals(l, load, StringComparison.OrdinalIgnoreCase));
            CircuitState? state = at < 0 ? null : circuit.States.Where(s => s.IsReachable && !s.IsShort && s.Loads[at] == LoadState.On).MinBy(s => int.PopCount(s.Inputs));
            if (state is not null)
            {
                CircuitInterval interval = circuit.Intervals[state.Interval];
                lit.Add($"'{load}' lit between {BenchPlan.Degrees(interval.FromRad)} and {BenchPlan.Degrees(interval.FromRad + interval.LengthRad)} with these switches closed and no others: {BenchPlan.Position(circuit, state.Inputs)}");
            }
        }

        return lit.Count == 0 ? null : $"Must happen, so that a dead lamp is not taken for a proof: {string.Join("; ", lit)}. {BenchPlan.Tick}";
    }
}
