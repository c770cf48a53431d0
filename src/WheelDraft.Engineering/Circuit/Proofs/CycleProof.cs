using System.Globalization;
using System.Numerics;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Whether a cycle always completes.</summary>
public enum CycleVerdict
{
    /// <summary>From every reachable state the wheel reaches home, whatever the inputs do.</summary>
    Yes,

    /// <summary>There is a history after which it stands before home for as long as the inputs stay as they are.</summary>
    No,

    /// <summary>Neither: the motor may be off between drop-out and pull-in, not every order of edges was followed, or no motor is given.</summary>
    Undecided,
}

/// <summary>The verdict on the cycle.</summary>
/// <param name="Verdict">The verdict.</param>
/// <param name="History">How the wheel comes to stand, in words from home on; empty for yes.</param>
/// <param name="WaitsAtHome">Whether it can stand only in the stretch that contains home, and with no load on or undecided.</param>
internal sealed record CycleResult(CycleVerdict Verdict, IReadOnlyList<string> History, bool WaitsAtHome = false);

/// <summary>Proves or refutes that a cycle always completes.</summary>
/// <remarks>Inputs may stay as they are for ever, so a cycle always completes only if there is no reachable state in which the
/// wheel can stand: wherever it can, that is a history in which it does not reach home. This is meant to the letter: a wheel that
/// parks just before home and is started by hand does not reach home whatever the inputs do, and the words say where it stands and
/// what starts it. A place in mid-turn is reported before one near home.</remarks>
internal sealed class CycleProof(SoundCircuit sound, NetworkSplit split)
{
    private readonly CircuitModel _model = sound.Model;
    private readonly RestingPlaces? _resting = sound.Motion.Resting;
    private readonly StateSheet _sheet = sound.Sheet;

    /// <summary>The verdict, with the shortest history.</summary>
    public CycleResult Result()
    {
        if (_resting is null)
        {
            return new CycleResult(CycleVerdict.Undecided, ["the file has no drive motor, so nothing says when the wheel turns"]);
        }

        return Refuted(Certainty.Certain)
            ?? Refuted(Certainty.Possible)
            ?? (_model.Turn.UnexploredGroups.Count > 0
                ? new CycleResult(CycleVerdict.Undecided, [$"not every order was followed: {_model.Turn.UnexploredGroups[0]}"])
                : new CycleResult(CycleVerdict.Yes, []));
    }

    private CycleResult? Refuted(Certainty certainty)
    {
        ulong[] reached = certainty == Certainty.Certain ? sound.Reached : sound.MayReach;
        int[] stands = [.. sound.Reach.Members(_resting!.Positions)
            .Where(p => BitRow.Has(reached, p) && Motions.Any(u => IsOff(u, p, certainty)))];
        if (stands.Length == 0)
        {
            return null;
        }

        HashSet<int> atHome = [.. _model.Turn.AtHome()];
        IReadOnlyList<string>? history = stands.All(atHome.Contains) ? null : InMidTurn([.. stands.Except(atHome)], certainty);
        return new CycleResult(
            certainty == Certainty.Certain ? CycleVerdict.No : CycleVerdict.Undecided,
            history ?? AtHome(stands.FirstOrDefault(atHome.Contains, stands[0]), certainty),
            stands.All(p => atHome.Contains(p) && NothingOn(p)));
    }

    private static int Bits(int inputs) => BitOperations.PopCount((uint)inputs);

    private bool IsOff(int inputs, int position, Certainty certainty) =>
        _sheet.StateOf(inputs, _model.Motor, position) is var motor
        && (motor == LoadState.Off || (certainty == Certainty.Possible && motor == LoadState.Undecided));

    private bool MayTurn(int inputs, int position) =>
        _sheet.StateOf(inputs, _model.Motor, position) != LoadState.Off || BitRow.Has(_sheet.Short(inputs), position);

    // Inputs that move the wheel or stop it; a change of any other is no part of a shortest history.
    private IEnumerable<int> Motions => InputMask.Subsets(_sheet.MatterToMotion);

    private bool NothingOn(int position) => Enumerable.Range(0, _model.Motor).All(l => IsOffAtRest(l, position));

    private bool IsOffAtRest(int load, int position)
    {
        int matters = _sheet.MatterTo(load) | _sheet.MatterToMotion;
        InputBudget.Ask(_model, matters, _sheet.Fault.Fault);
        return InputMask.Subsets(matters).Where(u => IsOff(u, position, Certainty.Possible)).All(u => _sheet.StateOf(u, load, position) == LoadState.Off);
    }

    private IReadOnlyList<string>? InMidTurn(HashSet<int> stands, Certainty certainty)
    {
        HistoryGoal goal = new(_sheet, null, certainty, 0, (inputs, position) => stands.Contains(position) && IsOff(inputs, position, certainty));
        if (new HistorySearch(_model).Find(goal) is not { } path)
        {
            return null;
        }

        HistoryNode end = path[^1].To;
        return new HistoryWords(_model, split).DescribeStanding(path, _sheet.Fault, Outcome(end.Position, end.Inputs));
    }

    // Within the stretch that contains home no edge is passed: an input starts the wheel and another change stops it at once.
    private List<string> AtHome(int position, Certainty certainty)
    {
        int[] all = [.. Motions];
        int stopped = all.Where(u => IsOff(u, position, certainty)).MinBy(u => (Bits(u), u));
        int[] starts = [.. all.Where(u => MayTurn(u, position))];
        if (starts.Length == 0)
        {
            return [$"home: {Outcome(position, stopped)}"];
        }

        int start = starts.MinBy(u => (Bits(u), u));
        int stop = all.Where(u => IsOff(u, position, certainty)).MinBy(u => (Bits(u ^ start), u));
        List<string> words = ["home", .. Changes(0, start), .. Changes(start, stop)];
        words[^1] = $"{words[^1]}: {Outcome(position, stop)}";
        return words;
    }

    private IEnumerable<string> Changes(int from, int to) => Enumerable.Range(0, _model.Inputs.Count)
        .Where(i => ((from ^ to) >> i & 1) != 0)
        .Select(i => _model.Change(i, (to >> i & 1) != 0));

    private string Outcome(int position, int inputs)
    {
        RestingPlace[] here = [.. _resting!.Places.Where(p => p.Position == position)];
        (double from, double to) = (here.Min(p => p.FromRad), here.Max(p => p.ToRad));
        string where = to - from >= Angles.TurnRad ? "anywhere in the turn"
            : to - from < TurnPositions.SameAngleRad ? $"at {Deg(from)}"
            : $"between {Deg(from)} and {Deg(to)}";
        string loads = string.Join(", ", Enumerable.Range(0, _model.Motor).Where(l => _sheet.StateOf(inputs, l, position) == LoadState.On).Select(l => _model.Loads[l].Name));
        return $"the wheel stands {where}{(loads.Length == 0 ? "" : $" with {loads} on")}, {Until(position, inputs)}";
    }

    // The fewest changes of inputs that turn the motor again.
    private string Until(int position, int inputs)
    {
        // Behind an open fuse any input counts as one that may: whatever does not matter is told only there.
        IEnumerable<int> single = MayTurn(inputs, position) ? Enumerable.Range(0, _model.Inputs.Count).Select(i => inputs ^ (1 << i)) : [];
        int[] starts = [.. Motions.Select(u => u | (inputs & ~_sheet.MatterToMotion)).Concat(single).Where(u => u != inputs && MayTurn(u, position))];
        if (starts.Length == 0)
        {
            return "for good";
        }

        int nearest = starts.MinBy(u => (Bits(u ^ inputs), u));
        return $"until {string.Join(" and ", Changes(inputs, nearest))}";
    }

    private static string Deg(double angleRad) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Round(Angles.DegFromRad(Angles.InTurn(angleRad)), 2) % 360:0.##}°");
}
