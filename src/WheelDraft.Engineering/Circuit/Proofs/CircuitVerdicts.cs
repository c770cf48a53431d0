using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Everything that is judged over all states and faults.</summary>
/// <param name="Voltages">Working voltages.</param>
/// <param name="Interlocks">Interlocks.</param>
/// <param name="Faults">The fault table.</param>
/// <param name="Cycle">Whether a cycle always completes.</param>
/// <param name="Findings">Findings.</param>
internal sealed record CircuitVerdicts(
    IReadOnlyList<WorkingVoltage> Voltages,
    IReadOnlyList<InterlockResult> Interlocks,
    IReadOnlyList<FaultEffect> Faults,
    CycleResult Cycle,
    IReadOnlyList<Finding> Findings)
{
    /// <summary>Judges a solved circuit.</summary>
    public static CircuitVerdicts On(SoundCircuit sound) => new CircuitJudge(sound).Judge();
}

/// <summary>Takes the faults one by one and lets voltages, interlocks and the fault table look at each.</summary>
internal sealed class CircuitJudge
{
    private readonly SoundCircuit _sound;
    private readonly CircuitModel _model;
    private readonly NetworkSplit _split;
    private readonly SectionSolver _solver;
    private readonly WorkingVoltageSearch _voltages;
    private readonly List<InterlockProof> _proofs = [];
    private readonly List<FaultEffect> _effects = [];
    private readonly List<Finding> _findings = [];

    /// <summary>A judge of one circuit.</summary>
    public CircuitJudge(SoundCircuit sound)
    {
        (_sound, _model) = (sound, sound.Model);
        _split = new NetworkSplit(_model);
        _solver = new SectionSolver(_model);
        _voltages = new WorkingVoltageSearch(_model, _split, _solver);
        for (int i = 0; i < _model.Brief.Interlocks.Count; i++)
        {
            _proofs.Add(new InterlockProof(_model, new InterlockJudge(_model, i), sound.Sheet, _split));
        }
    }

    /// <summary>The verdicts.</summary>
    public CircuitVerdicts Judge()
    {
        JudgeSound();
        StateSheet sheet = new(_model);
        foreach (CircuitFault fault in SingleFaults.Of(_model))
        {
            JudgeFault(new FaultCase(_model, fault), sheet);
        }

        List<InterlockResult> interlocks = [.. _proofs.Select(p => p.Result(_model.Turn.UnexploredGroups))];
        CycleResult cycle = new CycleProof(_sound, _split).Result();
        CircuitFindings findings = new(_sound, cycle);
        _findings.AddRange(findings.Of(_voltages.HasResonance));
        for (int i = 0; i < interlocks.Count; i++)
        {
            if (_proofs[i].FindingOf(interlocks[i], i) is { } finding)
            {
                _findings.Add(finding);
            }
        }

        return new CircuitVerdicts(Voltages(), interlocks, _effects, cycle, _findings);
    }

    private IReadOnlyList<WorkingVoltage> Voltages()
    {
        SourcelessNets sourceless = new(_model);
        return [.. _voltages.Result().Select(sourceless.Raise)];
    }

    private void JudgeSound()
    {
        FaultCase none = _sound.Sheet.Fault;
        if (_model.Loads.Count > 0)
        {
            _voltages.CountSound(none, _sound.MayReach);
        }

        foreach (InterlockProof proof in _proofs)
        {
            proof.NoteWhetherItApplies(_sound.MayReach);
            proof.Count(_sound.Sheet, proof.VerdictOn(_sound.Sheet, _sound.Reached, _sound.MayReach));
        }
    }

    private void JudgeFault(FaultCase fault, StateSheet sheet)
    {
        if (fault.IsMechanical)
        {
            sheet.Copy(_sound.Sheet, fault);
        }
        else
        {
            sheet.Fill(fault, _split, _solver);
        }

        StateReach reach = new(_model, sheet);
        ulong[] reached = reach.AfterFault(_sound.Reached, Certainty.Certain);
        ulong[] mayReach = reach.AfterFault(_sound.MayReach, Certainty.Possible);
        List<InterlockVerdict> verdicts = [];
        foreach (InterlockProof proof in _proofs)
        {
            InterlockVerdict verdict = proof.VerdictOn(sheet, reached, mayReach);
            verdicts.Add(verdict);
            if (proof.Judge.Brief.Faults == FaultDepth.Single)
            {
                proof.Count(sheet, verdict);
            }
        }

        _effects.Add(Effect(sheet, reach, mayReach, verdicts));
        if (fault.Fault.Kind == CircuitFaultKind.LoadOpen || _model.Request.VoltagesUnderFaults)
        {
            _voltages.CountFaulty(fault, mayReach);
        }
    }

    private FaultEffect Effect(StateSheet sheet, StateReach motion, ulong[] reach, List<InterlockVerdict> verdicts)
    {
        FaultComparison comparison = new(_model, _sound.Sheet, sheet);
        IReadOnlyList<LoadEffect> effects = comparison.Effects(reach);
        IReadOnlyList<string> path = comparison.FirstShort(reach) is { } at
            ? ShortPaths.Find(_model, sheet.Fault, at.Inputs, at.Position)
            : [];
        (bool isNoticed, string notice) = comparison.Notice(effects, path.Count > 0);
        HashSet<string> changed = [.. effects.Select(e => e.Load)];
        return new FaultEffect(
            sheet.Fault.Fault,
            effects,
            path,
            [.. Named(verdicts, InterlockVerdict.Fails).Select(p => p.Judge.Brief.Name)],
            [.. Named(verdicts, InterlockVerdict.Holds)
                .Where(p => p.Judge.Brief.Loads.Any(changed.Contains) && !p.Judge.IsBlindTo(sheet.Fault))
                .Select(p => p.Judge.Brief.Name)],
            isNoticed,
            notice)
        {
            Dangers =
            [
                .. Named(verdicts, InterlockVerdict.Fails).Select(p => $"'{p.Judge.Brief.Name}' fails"),
                .. Named(verdicts, InterlockVerdict.Undecided).Select(p => $"'{p.Judge.Brief.Name}' can be neither proved nor refuted"),
                .. new FaultDangers(_sound).Of(sheet, motion, reach, effects),
            ],
        };
    }

    private IEnumerable<InterlockProof> Named(List<InterlockVerdict> verdicts, InterlockVerdict verdict) =>
        _proofs.Where((_, i) => verdicts[i] == verdict);
}

/// <summary>Findings about the sound circuit.</summary>
internal sealed class CircuitFindings(SoundCircuit sound, CycleResult cycle)
{
    private readonly CircuitModel _model = sound.Model;

    /// <summary>All findings, errors first.</summary>
    public IEnumerable<Finding> Of(bool hasResonance) =>
    [
        .. new SourcelessNets(_model).Findings(),
        .. ProtectiveConductor.Findings(_model.Brief),
        .. Shorts(),
        .. Stalls(),
        .. Cycle(),
        .. Loads(),
        .. _model.Turn.UnexploredGroups.Select(g => Finding.Warning("circuit.too-many-orders", $"Not every order of edges was followed: {g}. Interlocks are not called proved; narrower tolerances or edges further apart make it possible.")),
        .. hasResonance ? [Finding.Error("circuit.resonance", "Coil and capacitor cancel in a block without resistance: its voltages have no bound, and no distance is wide enough for them. Give the loads their resistance.")] : Array.Empty<Finding>(),
    ];

    private IEnumerable<Finding> Shorts()
    {
        HashSet<string> reported = new(StringComparer.Ordinal);
        foreach (int inputs in InputMask.Subsets(sound.Sheet.MatterToShort).OrderBy(u => System.Numerics.BitOperations.PopCount((uint)u)).ThenBy(u => u))
        {
            foreach (int position in sound.Reach.Members(sound.MayReach).Where(p => BitRow.Has(sound.Sheet.Short(inputs), p)))
            {
                foreach (ShortPath path in ShortPaths.All(_model, sound.Sheet.Fault, inputs, position))
                {
                    string way = $"{_model.NodeNets[path.From]} is joined to {OtherEnd(path)} by {string.Join(", ", path.Names)}";
                    if (reported.Add(way))
                    {
                        TurnPosition at = _model.Turn.Positions[position];
                        yield return Finding.Error("circuit.short", string.Create(
                            CultureInfo.InvariantCulture,
                            $"{way}, from {_model.SecondsAt(at.LowerRad):0.0} s of the turn ({Angles.DegFromRad(Angles.InTurn(at.LowerRad)):0.0##}°); the fuse opens."));
                    }
                }
            }
        }
    }

    // N and E are at one potential: which of the two a line meets first says little.
    private string OtherEnd(ShortPath path) => _model.Lines.Contains(path.To) ? _model.NodeNets[path.To] : "N or E";

    private IEnumerable<Finding> Stalls()
    {
        foreach (int position in sound.Motion.Stalls)
        {
            TurnPosition at = _model.Turn.Positions[position];
            yield return at.Interval == 0
                ? Finding.Warning("circuit.never-starts", "At home no position of the inputs turns the motor: the wheel never starts.", _model.Brief.PlaceOf("drive_motor"))
                : Finding.Warning(
                    "circuit.stall",
                    string.Create(CultureInfo.InvariantCulture, $"From {_model.SecondsAt(at.LowerRad):0.0} s of the turn the wheel may stand for good: no position of the inputs turns the motor there."),
                    _model.Brief.PlaceOf("drive_motor"));
        }
    }

    // A wheel that stands at home with nothing on waits to be started; anywhere else, or with something left on, it asks for attention.
    private IEnumerable<Finding> Cycle()
    {
        string history = string.Join("; ", cycle.History);
        TextPlace place = _model.Brief.PlaceOf("drive_motor");
        switch (cycle.Verdict)
        {
            case CycleVerdict.No when cycle.WaitsAtHome:
                yield return Finding.Note("circuit.cycle", $"Inputs can keep a cycle from completing, but the wheel can stand only around home, with nothing on: {history}.", place);
                break;
            case CycleVerdict.No:
                yield return Finding.Warning("circuit.cycle", $"A cycle once begun may not complete: {history}.", place);
                break;
            case CycleVerdict.Undecided when _model.Motor >= 0:
                yield return Finding.Warning("circuit.cycle", $"Whether a cycle always completes can be neither proved nor refuted: {history}.", place);
                break;
            default:
                break;
        }
    }

    private IEnumerable<Finding> Loads()
    {
        for (int l = 0; l < _model.Loads.Count; l++)
        {
            bool isOn = false;
            bool isUndecided = false;
            foreach (int inputs in InputMask.Subsets(sound.Sheet.MatterTo(l)))
            {
                isOn |= BitRow.Meet(sound.Sheet.On(inputs, l), sound.MayReach);
                isUndecided |= BitRow.Meet(sound.Sheet.Undecided(inputs, l), sound.MayReach);
            }

            string path = l == _model.Motor ? "drive_motor" : string.Create(CultureInfo.InvariantCulture, $"load[{l}]");
            if (isUndecided)
            {
                yield return Finding.Warning("circuit.undecided", $"Load '{_model.Loads[l].Name}' gets a voltage between drop-out and pull-in in a state that can be reached: it may be on or off.", _model.Brief.PlaceOf(path));
            }
            else if (!isOn)
            {
                yield return Finding.Warning("circuit.never-on", $"Load '{_model.Loads[l].Name}' is on in no state that can be reached.", _model.Brief.PlaceOf(path));
            }
        }
    }
}
