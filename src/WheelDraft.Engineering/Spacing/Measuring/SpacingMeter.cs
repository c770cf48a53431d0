namespace WheelDraft.Engineering;

/// <summary>Measures the nets of a task: gaps through air and paths along surfaces, each found once.</summary>
internal sealed class SpacingMeter
{
    private readonly SpacingTask _task;
    private readonly SortedDictionary<string, SolidGroup> _groups = new(StringComparer.Ordinal);
    private readonly Dictionary<string, SolidKind> _kinds = new(StringComparer.Ordinal);
    private readonly ClearanceRibs _ribs;
    private readonly Dictionary<(string, string), SolidGap?> _gaps = [];
    private readonly Dictionary<(string Surface, double XMm), SurfaceCreepage> _surfaces = [];
    private readonly Dictionary<double, IReadOnlyList<InsulatingSurface>> _joined = [];
    private readonly Dictionary<(Insulation, double, MaterialGroup?), PairRequirement> _required;
    private readonly Dictionary<(Insulation, double), double?> _most = [];
    private readonly List<string> _floating = [];

    /// <summary>For a task.</summary>
    /// <param name="task">The task.</param>
    /// <param name="before">For a task that was changed a little: the meter of the one before, from which what is the same is taken over; asks the same of two nets.</param>
    /// <exception cref="ArgumentException">Solids of one net are of different kinds.</exception>
    internal SpacingMeter(SpacingTask task, SpacingMeter? before = null)
    {
        _task = task;
        _required = before?._required ?? [];
        foreach (IGrouping<string, Solid> net in task.Solids.GroupBy(s => s.Net, StringComparer.Ordinal))
        {
            SolidKind kind = net.First().Kind;
            if (net.FirstOrDefault(s => s.Kind != kind) is { } other)
            {
                throw new ArgumentException($"Net '{net.Key}' holds '{net.First().Name}' ({kind}) and '{other.Name}' ({other.Kind}): solids of one net are of one kind.", nameof(task));
            }

            SolidGroup group = new(net);
            _groups.Add(net.Key, before?._groups.GetValueOrDefault(net.Key) is { } known && known.IsOfSame(group) ? known : group);
            _kinds.Add(net.Key, kind);
            if (net.All(s => s.Kind == SolidKind.Floating || s.FloatsAtTimes))
            {
                _floating.Add(net.Key);
            }
        }

        _floating.Sort(StringComparer.Ordinal);
        _ribs = ClearanceRibs.On(task.Surfaces);
    }

    /// <summary>All nets, in ordinal order.</summary>
    internal IReadOnlyCollection<string> Nets => _groups.Keys;

    /// <summary>Nets that are joined to nothing, always or at times, in ordinal order.</summary>
    internal IReadOnlyList<string> Floating => _floating;

    internal SolidKind KindOf(string net) => _kinds[net];

    internal SolidGroup GroupOf(string net) => _groups[net];

    /// <summary>All pairs of nets between which a distance is asked.</summary>
    internal IEnumerable<NetPair> Pairs()
    {
        string[] nets = [.. _groups.Keys];
        for (int i = 0; i < nets.Length; i++)
        {
            for (int j = i + 1; j < nets.Length; j++)
            {
                if (_task.Demands.Grade(_kinds[nets[i]], _kinds[nets[j]]) is { } grade)
                {
                    yield return new NetPair(nets[i], nets[j], grade, _task.Demands.WorkingVoltageV(nets[i], nets[j]));
                }
            }
        }
    }

    /// <summary>What the rules ask of two nets; the same for all pairs of one grade and working voltage.</summary>
    /// <exception cref="RuleRefusedException">The rules give no distance.</exception>
    internal PairRequirement Required(NetPair pair, MaterialGroup? group)
    {
        (Insulation, double, MaterialGroup?) key = (pair.Grade, pair.WorkingV, group);
        if (!_required.TryGetValue(key, out PairRequirement? required))
        {
            required = _task.Demands.Required(pair, group);
            _required.Add(key, required);
        }

        return required;
    }

    /// <summary>The most that is asked of two nets through air and on any surface, mm; null where the rules give no distance on one.</summary>
    internal double? MostRequiredMm(NetPair pair)
    {
        if (!_most.TryGetValue((pair.Grade, pair.WorkingV), out double? most))
        {
            most = Most(pair);
            _most.Add((pair.Grade, pair.WorkingV), most);
        }

        return most;
    }

    private double? Most(NetPair pair)
    {
        try
        {
            return _task.Surfaces.Select(s => Required(pair, s.Group).Creepage!.RequiredMm).Append(Required(pair, null).Clearance.RequiredMm).Max();
        }
        catch (RuleRefusedException)
        {
            return null;
        }
    }

    /// <summary>X of two nets, mm: the least width of a groove that counts.</summary>
    internal double XMm(NetPair pair) => _task.Demands.GrooveXMm(Required(pair, null).Clearance.RequiredMm);

    /// <summary>The least gap between two nets.</summary>
    internal SolidGap? Gap(string first, string second)
    {
        if (string.CompareOrdinal(first, second) > 0)
        {
            return Gap(second, first)?.Swapped();
        }

        if (!_gaps.TryGetValue((first, second), out SolidGap? gap))
        {
            gap = Between(_groups[first], first, _groups[second], second);
            _gaps.Add((first, second), gap);
        }

        return gap;
    }

    /// <summary>The least gap between some solids of one net and some of another.</summary>
    internal SolidGap? Between(SolidGroup first, string firstNet, SolidGroup second, string secondNet) =>
        LeastGaps.Between(first, second, _ribs, _task.OnlyDuring(firstNet, secondNet));

    /// <summary>The least clearance between two nets: the gap, or a chain of gaps over floating metal; empty when nothing is measured.</summary>
    /// <remarks>First the gap between every two nets, those of a chain that are below X counted as nothing, then the shortest chain. A chain adds
    /// up least gaps that need not come at one angle: never more than the true least sum.</remarks>
    /// <param name="first">One net.</param>
    /// <param name="second">The other.</param>
    /// <param name="xMm">A gap in a chain below this counts as nothing, mm.</param>
    internal IReadOnlyList<ClearancePart> Clearance(string first, string second, double xMm) => ChainOf(
        first, second, net => _floating.Where(n => !string.Equals(n, net, StringComparison.Ordinal)).Append(second), Gap, xMm);

    /// <summary>The shortest chain from one end to another over steps between (Dijkstra); empty when nothing is measured.</summary>
    internal static IReadOnlyList<ClearancePart> ChainOf(
        string first, string second, Func<string, IEnumerable<string>> next, Func<string, string, SolidGap?> gapBetween, double xMm)
    {
        Dictionary<string, (double At, ClearancePart[] Chain)> open = new(StringComparer.Ordinal) { [first] = (0, []) };
        HashSet<string> settled = new(StringComparer.Ordinal);
        while (open.Where(o => !settled.Contains(o.Key)).OrderBy(o => o.Value.At).ThenBy(o => o.Key, StringComparer.Ordinal).FirstOrDefault() is { Key: { } net } at)
        {
            settled.Add(net);
            if (string.Equals(net, second, StringComparison.Ordinal))
            {
                return at.Value.Chain;
            }

            foreach (string other in next(net).Where(n => !settled.Contains(n)))
            {
                if (gapBetween(net, other) is not { } gap)
                {
                    continue;
                }

                bool isWhole = at.Value.Chain.Length == 0 && string.Equals(other, second, StringComparison.Ordinal);
                ClearancePart part = new(gap, isWhole || !SpacingTolerances.IsBelow(gap.WorstMm, xMm));
                double reached = at.Value.At + part.WorstMm;
                if (!open.TryGetValue(other, out var known) || reached < known.At)
                {
                    open[other] = (reached, [.. at.Value.Chain, part]);
                }
            }
        }

        return [];
    }

    /// <summary>Surfaces that are one for paths that cross from one to another, with a least groove width.</summary>
    internal IReadOnlyList<InsulatingSurface> Joined(double grooveXMm)
    {
        if (!_joined.TryGetValue(grooveXMm, out IReadOnlyList<InsulatingSurface>? joined))
        {
            joined = JoinedSurfaces.Of(_task.Surfaces, grooveXMm);
            _joined.Add(grooveXMm, joined);
        }

        return joined;
    }

    /// <summary>Paths on a surface, or on several that are one, with a least groove width.</summary>
    internal SurfaceCreepage On(InsulatingSurface surface, double grooveXMm)
    {
        if (!_surfaces.TryGetValue((surface.Name, grooveXMm), out SurfaceCreepage? creepage))
        {
            creepage = new SurfaceCreepage(surface, _task.Solids, grooveXMm, _task.LeftOut(surface, grooveXMm));
            _surfaces.Add((surface.Name, grooveXMm), creepage);
        }

        return creepage;
    }

    /// <summary>The shortest creepage path between two nets on a surface with a least groove width.</summary>
    internal CreepagePath? Creepage(InsulatingSurface surface, double grooveXMm, string first, string second) =>
        On(surface, grooveXMm).Between(first, second);
}

/// <summary>A gap of a clearance, and whether it counts: below X it counts as nothing, unless it is the whole way.</summary>
/// <param name="Gap">The gap.</param>
/// <param name="Counts">Whether it counts.</param>
internal sealed record ClearancePart(SolidGap Gap, bool Counts)
{
    /// <summary>What it counts at its worst, mm.</summary>
    public double WorstMm => Counts ? Gap.WorstMm : 0;
}
