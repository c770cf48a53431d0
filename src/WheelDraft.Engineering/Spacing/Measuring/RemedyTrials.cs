using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Measures trials of changes that would make a row meet, and what else a change that does would cost.</summary>
/// <remarks>A trial measures again what the row depends on, and no more (<see cref="SpacingExcerpts"/>). Those over surfaces that have ribs and slots already are counted: each takes as
/// long as the whole table did.</remarks>
internal sealed class RemedyTrials
{
    // What a bound in plan may be off by, mm: the slivers of an edge end a hundredth of a millimetre late, and all else is far below.
    private const double SlackMm = 0.1;

    private readonly SpacingTask _before;
    private readonly HashSet<string> _walled;
    private readonly HashSet<string> _missed;
    private readonly Dictionary<string, (Bounds Plan, double LoosestMm)> _places = new(StringComparer.Ordinal);
    private readonly SpacingExcerpts _excerpts;
    private readonly SpacingMeter _meter;
    private readonly ILookup<string, NetPair> _pairs;
    private SpacingRow? _row;
    private int _left = Budgets.WalledTrials;

    /// <summary>Trials of changes of a task.</summary>
    /// <param name="before">What the table was measured from.</param>
    /// <param name="table">The table.</param>
    internal RemedyTrials(SpacingTask before, SpacingTable table)
    {
        _before = Excerpt = before;
        _walled = [.. before.Surfaces.Where(s => s.Ribs.Count + s.Slots.Count > 0).Select(s => s.Name)];
        _missed = [.. table.Rows.Where(r => r.Verdict == SpacingVerdict.Misses).Select(r => NameOf(r.Nets, r.Kind))];
        _excerpts = new(before);
        _meter = new(before);
        _pairs = _meter.Pairs().SelectMany(p => new[] { (Net: p.First, Pair: p), (Net: p.Second, Pair: p) }).ToLookup(x => x.Net, x => x.Pair, StringComparer.Ordinal);
    }

    /// <summary>Whether the budget is spent: from then on no change is good.</summary>
    internal bool AreSpent => _left <= 0;

    /// <summary>What the row depends on.</summary>
    internal SpacingTask Excerpt { get; private set; }

    /// <summary>X of the row, mm.</summary>
    internal double XMm => _meter.XMm(_row!.Nets);

    /// <summary>From here on trials are of this row.</summary>
    internal void Begin(SpacingRow row) => (_row, Excerpt) = (row, _excerpts.Of(row.Nets.First, row.Nets.Second));

    /// <summary>Whether the row meets with a change of so many steps.</summary>
    internal bool Meets(TriedChange change, int steps) => !AreSpent && Meets(change.Apply(Excerpt, steps * Remedies.StepMm));

    /// <summary>Whether the row meets in a changed task, or is none any more: measured until the first surface on which it does not.</summary>
    internal bool Meets(SpacingTask changed)
    {
        string? surface = _row!.Path?.Surface.Name;
        if (surface is not null && _walled.Contains(surface))
        {
            _left--;
        }

        SpacingMeter meter = new(changed, _meter);
        return _row.Kind == SpacingKind.Clearance
            ? SpacingRows.Clearance(changed, meter, _row.Nets) is not { Verdict: not SpacingVerdict.Meets }
            : SpacingRows.OnEachSurface(changed, meter, _row.Nets, surface).All(r => r.Verdict == SpacingVerdict.Meets);
    }

    /// <summary>Whether nothing stands where a rib or a slot would come.</summary>
    internal bool HasRoom(InsulatingSurface surface, Outline place, double heightMm) => !_before.Solids.Any(s =>
        s.FromZMm <= surface.LevelMm + heightMm
        && s.ToZMm >= surface.LevelMm
        && Distances.Between(place, s.Turns ? SweptShape.Whole(s.Outline) : s.Outline).DistanceMm == 0);

    /// <summary>The change measured once more, and what else a moved item comes too near to.</summary>
    /// <remarks>A rib, a slot or a better material never shortens a distance and never asks for more.</remarks>
    internal Remedy Checked(TriedChange change, double amount)
    {
        SpacingTask changed = change.Apply(Excerpt, amount);
        double after = Row(changed, new SpacingMeter(changed, _meter), _row!.Nets, _row.Kind)?.WorstMm ?? double.PositiveInfinity;
        return new Remedy(_row, change.Kind, change.Text(amount), amount, after, change.Moved is var (net, item) ? NewMisses(change, amount, net, item) : []);
    }

    private static SpacingRow? Row(SpacingTask task, SpacingMeter meter, NetPair pair, SpacingKind kind) =>
        kind == SpacingKind.Clearance ? SpacingRows.Clearance(task, meter, pair) : SpacingRows.Creepage(task, meter, pair);

    private IReadOnlyList<string> NewMisses(TriedChange change, double amount, string net, string item)
    {
        (Bounds, double) place = PlaceOf(change.Apply(Excerpt, amount).Solids.Where(s => IsOf(s, item, net)));
        (NetPair Pair, SpacingKind Kind)[] near =
        [
            .. _pairs[net]
                .SelectMany(p => new[] { (Pair: p, Kind: SpacingKind.Clearance), (Pair: p, Kind: SpacingKind.Creepage) })
                .Where(r => !_missed.Contains(NameOf(r.Pair, r.Kind)) && !IsFar(r.Pair, place, string.Equals(r.Pair.First, net, StringComparison.Ordinal) ? r.Pair.Second : r.Pair.First)),
        ];
        SpacingTask changed = change.Apply(_excerpts.Of([.. near.SelectMany(r => (string[])[r.Pair.First, r.Pair.Second])]), amount);
        SpacingMeter meter = new(changed, _meter);
        return [.. near.Where(r => Row(changed, meter, r.Pair, r.Kind) is { Verdict: SpacingVerdict.Misses }).Select(r => NameOf(r.Pair, r.Kind))];
    }

    /// <summary>Whether a moved item is so far from a net in plan that no row of it and that net comes to miss.</summary>
    /// <remarks>No gap and no path is shorter than the plan distance, less all tolerances and, for what bridges onto an edge, X at either end. Not told where ways lead over
    /// floating metal or walls, or where only parts of the turn count.</remarks>
    private bool IsFar(NetPair pair, (Bounds Plan, double LoosestMm) moved, string other)
    {
        if (_excerpts.Float || _walled.Count > 0 || _before.OnlyDuring(pair.First, pair.Second) is not null)
        {
            return false;
        }

        if (!_places.TryGetValue(other, out (Bounds Plan, double LoosestMm) place))
        {
            place = PlaceOf(_before.Solids.Where(s => string.Equals(s.Net, other, StringComparison.Ordinal)));
            _places.Add(other, place);
        }

        double edge = _meter.XMm(pair) + _before.Surfaces.Select(s => Math.Max(s.FaceMm, s.RunOutMm)).DefaultIfEmpty(0).Max();
        return _meter.MostRequiredMm(pair) is { } required && place.Plan.DistanceTo(moved.Plan) > required + (2 * (edge + moved.LoosestMm + place.LoosestMm)) + SlackMm;
    }

    /// <summary>Where solids can be in plan over the turn, and the greatest tolerance of any.</summary>
    private static (Bounds Plan, double LoosestMm) PlaceOf(IEnumerable<Solid> solids) => solids
        .Select(s => (Plan: s.Turns ? SweptShape.Whole(s.Outline).Bounds : s.Outline.Bounds, LoosestMm: s.Tolerance.InPlanMm))
        .Aggregate((a, b) => (a.Plan.With(b.Plan), Math.Max(a.LoosestMm, b.LoosestMm)));

    /// <summary>Whether a solid is of an item of a net.</summary>
    internal static bool IsOf(Solid s, string item, string net) =>
        string.Equals(s.Name, item, StringComparison.Ordinal) && string.Equals(s.Net, net, StringComparison.Ordinal);

    private static string NameOf(NetPair pair, SpacingKind kind) => $"{pair.First} – {pair.Second}, {(kind == SpacingKind.Clearance ? "clearance" : "creepage")}";
}

/// <summary>A change of some size.</summary>
internal sealed record TriedChange(RemedyKind Kind, Func<SpacingTask, double, SpacingTask> Apply, Func<double, string> Text)
{
    /// <summary>Whether it has a size at all.</summary>
    internal bool IsSized { get; init; } = true;

    /// <summary>The net and the item that it moves; null when it moves nothing.</summary>
    internal (string Net, string Item)? Moved { get; init; }

    /// <summary>Whether there is room for it.</summary>
    internal Func<double, bool> Fits { get; init; } = static _ => true;
}
