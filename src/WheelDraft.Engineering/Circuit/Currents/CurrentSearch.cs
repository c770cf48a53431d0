using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>Looks for the largest currents over every reachable state without fault.</summary>
internal sealed class CurrentSearch
{
    // Each state takes some ten microseconds; with more of them a bound stands in for the search.
    internal const long MostStates = Budgets.CircuitStates / 2;

    // Below this a current is the rounding of a sum that is zero, A.
    private const double NothingA = 1e-9;

    private readonly SoundCircuit _sound;
    private readonly CircuitModel _model;
    private readonly NetworkSplit _split;
    private readonly SectionSolver _solver;
    private readonly SwitchFlows _flows;
    private readonly List<Pattern> _patterns = [];
    private readonly Complex?[] _merged;
    private readonly Complex[] _loadA;
    private readonly Complex[] _drawn;
    private readonly int[] _edgeOf;
    private readonly int[] _sources;
    private readonly double[] _netA;
    private readonly GreatestCurrent[] _carried;
    private readonly GreatestCurrent[] _broken;
    private readonly bool[] _inductive;
    private readonly bool _hasCoil;

    /// <summary>A search over one circuit.</summary>
    public CurrentSearch(SoundCircuit sound)
    {
        (_sound, _model) = (sound, sound.Model);
        _split = new NetworkSplit(_model);
        _solver = new SectionSolver(_model);
        _flows = new SwitchFlows(_model.NodeCount);
        _merged = new Complex?[_model.NodeCount];
        _loadA = new Complex[_model.Loads.Count];
        _drawn = new Complex[_model.NodeCount];
        _edgeOf = new int[Feed + 1];
        _sources = [CircuitModel.Neutral, .. _model.Lines];
        _netA = new double[_model.NodeCount];
        (_carried, _broken, _inductive) = (new GreatestCurrent[Feed + 1], new GreatestCurrent[Feed + 1], new bool[Feed + 1]);
        _hasCoil = _model.Impedances.Any(z => z.Imaginary > 0);
        ReadPatterns();
    }

    private sealed record Pattern(ulong[] Closed, int[] Positions, ulong[] Breaks);

    private record struct GreatestCurrent(double A, int Inputs, int Position, bool IsShared);

    // Wipers by number: contacts, then the feed.
    private int Feed => _model.Contacts.Count;

    /// <summary>The currents.</summary>
    public CircuitCurrents Find()
    {
        if (!_model.HasLoads)
        {
            return Result(isBound: false);
        }

        if ((long)_patterns.Count * _model.InputPositions > MostStates)
        {
            return Bound();
        }

        for (int inputs = 0; inputs < _model.InputPositions; inputs++)
        {
            if (_split.Split(_sound.Sheet.Fault, inputs))
            {
                foreach (Pattern pattern in _patterns)
                {
                    Look(inputs, pattern);
                }
            }
        }

        return Result(isBound: false);
    }

    private void ReadPatterns()
    {
        IReadOnlyList<TurnPosition> turn = _model.Turn.Positions;
        foreach (IGrouping<string, int> alike in _sound.Reach.Members(_sound.MayReach).GroupBy(p => string.Join(',', turn[p].Closed), StringComparer.Ordinal))
        {
            int[] positions = [.. alike];
            ulong[] breaks = BitRow.Empty(Math.Max(1, _model.Contacts.Count));
            foreach (TurnStep step in positions.SelectMany(p => turn[p].Next).Where(s => !s.Edge.Makes))
            {
                BitRow.Add(breaks, step.Edge.Contact);
            }

            _patterns.Add(new Pattern(turn[positions[0]].Closed, positions, breaks));
        }
    }

    private void Look(int inputs, Pattern pattern)
    {
        if (!ReadPotentials(pattern.Positions[0]))
        {
            return;
        }

        ReadLoads();
        ReadSwitches(inputs, pattern);
        _flows.Solve(_drawn, _sources);
        bool moves = _model.Motor < 0 || _model.Brief.Drive.Coast.MostRad > 0
            || Array.Exists(pattern.Positions, p => _sound.Sheet.StateOf(inputs, _model.Motor, p) != LoadState.Off);
        for (int w = 0; w <= Feed; w++)
        {
            if (_edgeOf[w] >= 0)
            {
                Note(w, inputs, pattern, moves);
            }
        }

        NoteNets();
    }

    // Potentials of merged nodes; false where a line is shorted.
    private bool ReadPotentials(int position)
    {
        Array.Clear(_merged);
        for (int s = 0; s < _split.Count; s++)
        {
            if (!_split.IsFed(s))
            {
                continue;
            }

            SectionDetail detail = _solver.Detail(_split.Section(s));
            SectionPattern solved = detail.Solved[detail.Contacts.PatternAt[position]];
            if (solved.IsShort)
            {
                return false;
            }

            for (int k = 0; k < detail.Nodes.Length; k++)
            {
                _merged[detail.Nodes[k]] = solved.Potentials[k];
            }
        }

        for (int n = 0; n < _model.NodeCount; n++)
        {
            HeldAt held = _split.Held[n];
            _merged[n] = held == HeldAt.Nothing ? _merged[n] : _model.Potentials[SourcePotentials.IndexOf(held)];
        }

        return true;
    }

    private void ReadLoads()
    {
        Array.Clear(_drawn);
        for (int l = 0; l < _loadA.Length; l++)
        {
            NetworkElement load = _model.Loads[l];
            bool flows = _merged[_split.Roots[load.A]] is not null && _merged[_split.Roots[load.B]] is not null;
            _loadA[l] = flows ? (_merged[_split.Roots[load.A]]!.Value - _merged[_split.Roots[load.B]]!.Value) / _model.Impedances[l] : Complex.Zero;
            _drawn[load.A] += _loadA[l];
            _drawn[load.B] -= _loadA[l];
        }
    }

    private void ReadSwitches(int inputs, Pattern pattern)
    {
        _flows.Clear();
        for (int c = 0; c < _model.Contacts.Count; c++)
        {
            _edgeOf[c] = _sound.IsClosed(c, inputs, BitRow.Has(pattern.Closed, c)) ? _flows.Add(_model.Contacts[c].A, _model.Contacts[c].B) : -1;
        }

        _edgeOf[Feed] = _model.WheelNode >= 0 ? _flows.Add(_model.FeedNode, _model.WheelNode) : -1;
        for (int i = 0; i < _model.Inputs.Count; i++)
        {
            if ((inputs >> i & 1) != 0)
            {
                _flows.Add(_model.Inputs[i].A, _model.Inputs[i].B);
            }
        }

        // Neutral is earthed: currents that reach either are one.
        _flows.Add(CircuitModel.Neutral, CircuitModel.Earth);
    }

    private void Note(int wiper, int inputs, Pattern pattern, bool moves)
    {
        int edge = _edgeOf[wiper];
        GreatestCurrent here = new(_flows.CurrentA(edge), inputs, pattern.Positions[0], _flows.IsShared(edge));
        _carried[wiper] = Larger(_carried[wiper], here);
        if (wiper < Feed && moves && BitRow.Has(pattern.Breaks, wiper) && !(here.A <= NothingA))
        {
            int before = Array.Find(pattern.Positions, p => _model.Turn.Positions[p].Next.Exists(s => !s.Edge.Makes && s.Edge.Contact == wiper));
            _broken[wiper] = Larger(_broken[wiper], here with { Position = before });
            _inductive[wiper] = _inductive[wiper] || (_hasCoil && FeedsCoil(edge));
        }
    }

    private static GreatestCurrent Larger(GreatestCurrent known, GreatestCurrent here) => double.IsNaN(here.A) || here.A > known.A ? here : known;

    // Whether a coil carries current among what hangs behind a switch, through loads too.
    private bool FeedsCoil(int edge)
    {
        HashSet<int> behind = [.. _flows.Behind(edge).Select(n => Root(n)).Where(n => _split.Held[n] == HeldAt.Nothing)];
        HashSet<int> direct = [.. _flows.Behind(edge)];
        bool grows = true;
        while (grows)
        {
            grows = false;
            for (int l = 0; l < _loadA.Length; l++)
            {
                NetworkElement load = _model.Loads[l];
                if (Complex.Abs(_loadA[l]) <= NothingA || !(Touches(load.A) || Touches(load.B)))
                {
                    continue;
                }

                if (_model.Impedances[l].Imaginary > 0)
                {
                    return true;
                }

                grows |= Adds(load.A) | Adds(load.B);
            }
        }

        return false;

        bool Touches(int node) => direct.Contains(node) || behind.Contains(Root(node));
        bool Adds(int node) => _split.Held[Root(node)] == HeldAt.Nothing && behind.Add(Root(node));
        int Root(int node) => _split.Roots[node];
    }

    private void NoteNets()
    {
        double[] sums = new double[_model.NodeCount];
        double[] most = new double[_model.NodeCount];
        void At(int node, double amperes)
        {
            sums[node] += amperes;
            most[node] = Math.Max(most[node], amperes);
        }

        for (int l = 0; l < _loadA.Length; l++)
        {
            At(_model.Loads[l].A, Complex.Abs(_loadA[l]));
            At(_model.Loads[l].B, Complex.Abs(_loadA[l]));
        }

        for (int e = 0; e < _flows.Count; e++)
        {
            (int a, int b) = _flows.Ends(e);
            At(a, _flows.CurrentA(e));
            At(b, _flows.CurrentA(e));
        }

        foreach (int source in _sources)
        {
            At(source, _flows.SuppliedA(source));
        }

        for (int n = 0; n < _netA.Length; n++)
        {
            double through = sums[n] - most[n];
            _netA[n] = double.IsNaN(through) || through > _netA[n] ? through : _netA[n];
        }
    }

    // Every load at the highest voltage at once, all through each wiper. Where a capacitor may lift voltages there is no such bound.
    private CircuitCurrents Bound()
    {
        double highestV = _model.Brief.Supply.HighestV;
        double all = _model.Impedances.Any(z => z.Imaginary < 0) ? double.NaN : _model.Impedances.Sum(z => highestV / Complex.Abs(z));
        bool coil = _model.Impedances.Any(z => z.Imaginary > 0);
        for (int w = 0; w <= Feed; w++)
        {
            _carried[w] = new GreatestCurrent(all, -1, -1, IsShared: false);
            bool breaks = w < Feed && !_model.Schedules[w].IsAlways && _model.Schedules[w].Periods.Count > 0;
            _broken[w] = breaks ? _carried[w] : default;
            _inductive[w] = breaks && coil;
        }

        Array.Fill(_netA, all);
        return Result(isBound: true);
    }

    private CircuitCurrents Result(bool isBound)
    {
        double up = 1 + _model.Brief.Supply.VoltageToleranceShare;
        Dictionary<string, double> nets = new(StringComparer.Ordinal);
        for (int n = 0; n < _netA.Length; n++)
        {
            if (n != _model.WheelNode)
            {
                nets[_model.NodeNets[n]] = _netA[n] * up;
            }
        }

        ContactCurrent[] wipers = [.. Enumerable.Range(0, Feed + 1).Select(w => new ContactCurrent(
            _carried[w].A * up,
            Words(_carried[w]),
            _broken[w].A * up,
            Words(_broken[w]),
            _inductive[w],
            _carried[w].IsShared))];
        return new CircuitCurrents { Feed = _model.WheelNode >= 0 ? wipers[Feed] : null, Contacts = wipers[..Feed], NetsA = nets, IsBound = isBound };
    }

    private string Words(GreatestCurrent most) =>
        most.A <= NothingA ? "" : most.Position < 0 ? "all loads on at once" : StateWords.Of(_model, most.Position, most.Inputs);
}
