using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>The verdict on one interlock.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="History">The shortest history that refutes it or leaves it undecided, in words from home; empty when it holds.</param>
/// <param name="Fault">The fault of that history; null when there is none.</param>
/// <param name="FaultsThatBreakIt">Every single fault under which it fails, in the order of the fault list; empty when not asked.</param>
public sealed record InterlockResult(
    string Name,
    InterlockVerdict Verdict,
    IReadOnlyList<string> History,
    CircuitFault? Fault,
    IReadOnlyList<CircuitFault> FaultsThatBreakIt)
{
    /// <summary>Inputs whose contact, not meaning, its conditions ask: it says nothing of one that is stuck.</summary>
    public IReadOnlyList<string> AsksContactsOf { get; init; } = [];

    /// <summary>Inputs whose meaning its conditions ask: a contact that is stuck counts against it.</summary>
    public IReadOnlyList<string> AsksMeaningOf { get; init; } = [];

    /// <summary>Which faults it was held against.</summary>
    public FaultDepth Faults { get; init; }

    /// <summary>Whether its conditions are met in some reachable state without fault; one that never asks anything holds for nothing.</summary>
    public bool Applies { get; init; } = true;
}

/// <summary>Proves or refutes one interlock, sheet by sheet.</summary>
internal sealed class InterlockProof
{
    private readonly CircuitModel _model;
    private readonly StateSheet _base;
    private readonly HistorySearch _search;
    private readonly HistoryWords _words;
    private readonly List<CircuitFault> _breaking = [];
    private readonly ulong[] _broken;
    private readonly ulong[] _unsure;
    private InterlockVerdict _verdict = InterlockVerdict.Holds;
    private IReadOnlyList<string> _history = [];
    private CircuitFault? _fault;
    private long _cost = long.MaxValue;
    private bool _applies;

    /// <summary>For one interlock.</summary>
    /// <param name="model">The circuit.</param>
    /// <param name="judge">The interlock.</param>
    /// <param name="baseSheet">States without fault.</param>
    /// <param name="split">A work space.</param>
    public InterlockProof(CircuitModel model, InterlockJudge judge, StateSheet baseSheet, NetworkSplit split)
    {
        _model = model;
        Judge = judge;
        _base = baseSheet;
        _search = new HistorySearch(model);
        _words = new HistoryWords(model, split);
        _broken = new ulong[baseSheet.Words];
        _unsure = new ulong[baseSheet.Words];
    }

    /// <summary>The interlock.</summary>
    public InterlockJudge Judge { get; }

    /// <summary>Judges one sheet over its reachable states, without looking for a history.</summary>
    /// <param name="sheet">The states.</param>
    /// <param name="reach">Positions surely reached.</param>
    /// <param name="mayReach">Positions that may be reached.</param>
    public InterlockVerdict VerdictOn(StateSheet sheet, ulong[] reach, ulong[] mayReach)
    {
        InterlockVerdict verdict = InterlockVerdict.Holds;
        int matters = Judge.MatterTo(sheet);
        InputBudget.Ask(_model, matters, sheet.Fault.Fault);
        foreach (int inputs in InputMask.Subsets(matters))
        {
            Judge.Mark(sheet, inputs, _broken, _unsure);
            if (BitRow.Meet(_broken, reach))
            {
                return InterlockVerdict.Fails;
            }

            if (BitRow.Meet(_broken, mayReach) || BitRow.Meet(_unsure, mayReach))
            {
                verdict = InterlockVerdict.Undecided;
            }
        }

        return verdict;
    }

    /// <summary>Counts a verdict toward the result and keeps the shortest history of the worst verdict.</summary>
    public void Count(StateSheet sheet, InterlockVerdict verdict)
    {
        bool faulty = sheet.Fault.Fault.Kind != CircuitFaultKind.None;
        if (faulty && verdict == InterlockVerdict.Fails)
        {
            _breaking.Add(sheet.Fault.Fault);
        }

        // What fails or is undecided without any fault needs no fault to show it.
        bool toldWithout = _verdict == verdict && _fault is null;
        if (verdict == InterlockVerdict.Holds || toldWithout || Rank(verdict) < Rank(_verdict))
        {
            return;
        }

        if (verdict != _verdict)
        {
            _verdict = verdict;
            _cost = long.MaxValue;
        }

        HistoryGoal goal = new(
            _base,
            faulty ? sheet : null,
            verdict == InterlockVerdict.Fails ? Certainty.Certain : Certainty.Possible,
            Judge.MatterTo(sheet),
            (inputs, position) => IsTarget(sheet, verdict, inputs, position));
        InputBudget.Ask(_model, goal.Changes, sheet.Fault.Fault);
        if (_search.Find(goal, _cost) is { } path)
        {
            _cost = _search.Cost;
            _fault = faulty ? sheet.Fault.Fault : null;
            _history = _words.Describe(path, Judge, sheet);
        }
    }

    /// <summary>The result over all sheets counted.</summary>
    /// <param name="unexplored">Groups of edges that were not followed in every order.</param>
    public InterlockResult Result(IReadOnlyList<string> unexplored)
    {
        bool isOpen = _verdict == InterlockVerdict.Holds && unexplored.Count > 0;
        return new InterlockResult(
            Judge.Brief.Name,
            isOpen ? InterlockVerdict.Undecided : _verdict,
            isOpen ? [$"not every order was followed: {unexplored[0]}"] : _history,
            isOpen ? null : _fault,
            _breaking)
        {
            AsksContactsOf = Judge.ContactInputs,
            AsksMeaningOf = [.. Judge.Brief.WhileTrue, .. Judge.Brief.WhileFalse],
            Faults = Judge.Brief.Faults,
            Applies = _applies,
        };
    }

    /// <summary>Takes note of whether it asks anything in a state without fault.</summary>
    public void NoteWhetherItApplies(ulong[] mayReach)
    {
        InputBudget.Ask(_model, Judge.MatterTo(_base), _base.Fault.Fault);
        _applies = Judge.AppliesIn(_base, mayReach);
    }

    /// <summary>The finding that a result amounts to; null when it holds and asks something.</summary>
    public Finding? FindingOf(InterlockResult result, int index)
    {
        TextPlace place = _model.Brief.PlaceOf(string.Create(CultureInfo.InvariantCulture, $"interlock[{index}]"));
        if (result.Verdict == InterlockVerdict.Holds)
        {
            return result.Applies ? null
                : Finding.Warning("circuit.interlock-idle", $"Interlock '{result.Name}' holds for nothing: its conditions are met in no reachable state without fault.", place);
        }

        string history = string.Join("; ", result.History);
        return result.Verdict == InterlockVerdict.Fails
            ? Finding.Error("circuit.interlock-fails", $"Interlock '{result.Name}' fails: {history}.", place)
            : Finding.Error("circuit.interlock-undecided", $"Interlock '{result.Name}' can be neither proved nor refuted: {history}.", place);
    }

    private static int Rank(InterlockVerdict verdict) => verdict switch
    {
        InterlockVerdict.Holds => 0,
        InterlockVerdict.Undecided => 1,
        _ => 2,
    };

    private bool IsTarget(StateSheet sheet, InterlockVerdict verdict, int inputs, int position)
    {
        if (!Judge.AppliesTo(sheet.Fault, inputs))
        {
            return false;
        }

        Judge.Mark(sheet, inputs, _broken, _unsure);
        return BitRow.Has(_broken, position) || (verdict == InterlockVerdict.Undecided && BitRow.Has(_unsure, position));
    }
}
