namespace WheelDraft.Engineering;

/// <summary>What the distances of some nets depend on, cut out of a task: a trial that changes a little costs what two nets cost, however many there are.</summary>
/// <remarks>Their own solids, those of every net that may float, in the order of the task, all surfaces, and of all others what they bring to a surface
/// (<see cref="Bystanders"/>). No chain leads over any other net, so the rows are those of the whole task. Where a path goes round the rounded bend of a slot its arcs are
/// cut where ways from other conductors touch them: there the sum may differ in its last bits.</remarks>
internal sealed class SpacingExcerpts
{
    private readonly SpacingTask _task;
    private readonly ILookup<string, int> _solids;
    private readonly HashSet<string> _floating;
    private readonly Dictionary<(string Surface, double XMm), IReadOnlyList<CreepageConductor>> _conductors = [];

    internal SpacingExcerpts(SpacingTask task)
    {
        _task = task;
        _solids = Enumerable.Range(0, task.Solids.Count).ToLookup(i => task.Solids[i].Net, StringComparer.Ordinal);
        _floating = task.Solids.Where(s => s.Kind == SolidKind.Floating || s.FloatsAtTimes).Select(s => s.Net).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>Whether any net is joined to nothing, always or at times.</summary>
    internal bool Float => _floating.Count > 0;

    /// <summary>The task of some nets alone.</summary>
    internal SpacingTask Of(params string[] nets)
    {
        HashSet<string> kept = new(_floating.Concat(nets), StringComparer.Ordinal);
        Dictionary<(string, double), Bystanders> known = [];
        Bystanders LeftOut(InsulatingSurface surface, double xMm)
        {
            if (!known.TryGetValue((surface.Name, xMm), out Bystanders? others))
            {
                others = Bystanders.Of(Conductors(surface, xMm).Where(c => !kept.Contains(c.Net)));
                known.Add((surface.Name, xMm), others);
            }

            return others;
        }

        return _task with { Solids = [.. kept.SelectMany(n => _solids[n]).Order().Select(i => _task.Solids[i])], LeftOut = LeftOut };
    }

    // What touches a surface does not depend on its ribs, slots or material: a changed surface has those of the one before.
    private IReadOnlyList<CreepageConductor> Conductors(InsulatingSurface surface, double xMm)
    {
        if (!_conductors.TryGetValue((surface.Name, xMm), out IReadOnlyList<CreepageConductor>? conductors))
        {
            conductors = CreepageConductor.On(surface, _task.Solids, xMm);
            _conductors.Add((surface.Name, xMm), conductors);
        }

        return conductors;
    }
}

/// <summary>What conductors on a surface mean for the paths between others.</summary>
/// <param name="LoosestMm">The greatest tolerance in plan of any, mm; 0 without any. Links over recesses are longer by it.</param>
/// <param name="Copper">The wheel's copper among them: what of a wiper hangs over copper is not measured against it.</param>
internal sealed record Bystanders(double LoosestMm, IReadOnlyList<Solid> Copper)
{
    /// <summary>There are none.</summary>
    internal static Bystanders None { get; } = new(0, []);

    /// <summary>Of some conductors.</summary>
    internal static Bystanders Of(IEnumerable<CreepageConductor> conductors)
    {
        CreepageConductor[] all = [.. conductors];
        return new(
            all.Select(c => c.Loosest.Tolerance.InPlanMm).DefaultIfEmpty(0).Max(),
            [.. all.SelectMany(c => c.Touching).Select(t => t.Solid).Where(s => s.IsWheelCopper)]);
    }

    /// <summary>These and others.</summary>
    internal Bystanders With(Bystanders others) => new(Math.Max(LoosestMm, others.LoosestMm), [.. Copper, .. others.Copper]);
}
