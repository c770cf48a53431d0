namespace WheelDraft.Engineering;

/// <summary>Every pair of items of two nets between which a distance is asked, and not only the one that decides.</summary>
/// <remarks>Found when first asked for: a table by itself needs none of it. Paths along surfaces are those that the table has found already;
/// gaps through air are measured item by item, over the same chains of floating metal. Of all rows of two nets the least is the row of
/// the table.</remarks>
internal sealed class ItemPairs
{
    private readonly SpacingTask _task;
    private readonly SpacingMeter _meter;
    private readonly SortedDictionary<string, SolidGroup> _groups = new(StringComparer.Ordinal);
    private readonly ILookup<string, ItemOfNet> _items;
    private readonly Dictionary<(string, string), SolidGap?> _gaps = [];
    private readonly Dictionary<(string Surface, double XMm), ILookup<(string Net, string Name), int>> _places = [];

    private ItemPairs(SpacingTask task, SpacingMeter meter)
    {
        (_task, _meter) = (task, meter);
        List<ItemOfNet> items = [];
        foreach (IGrouping<(string Net, string Name), Solid> item in task.Solids.GroupBy(s => (s.Net, s.Name)))
        {
            items.Add(new(item.Key.Net, item.Key.Name));
            _groups.Add(items[^1].Key, new SolidGroup(item));
        }

        _items = items.ToLookup(i => i.Net, StringComparer.Ordinal);
    }

    /// <summary>All rows, in the order of the nets and of their first solids, clearance before creepage.</summary>
    internal static IReadOnlyList<SpacingRow> Of(SpacingTask task, SpacingMeter meter)
    {
        ItemPairs pairs = new(task, meter);
        return [.. meter.Pairs().SelectMany(pairs.Rows)];
    }

    private IEnumerable<SpacingRow> Rows(NetPair pair)
    {
        Requirement clearance = _meter.Required(pair, null).Clearance;
        double x = _task.Demands.GrooveXMm(clearance.RequiredMm);
        foreach (ItemOfNet first in _items[pair.First])
        {
            foreach (ItemOfNet second in _items[pair.Second])
            {
                if (SpacingRows.Clearance(_task, pair, clearance, Clearance(first, second, x), x) is { } air)
                {
                    yield return air;
                }

                if (Creepage(pair, first, second, x) is { } surface)
                {
                    yield return surface;
                }
            }
        }
    }

    private IReadOnlyList<ClearancePart> Clearance(ItemOfNet first, ItemOfNet second, double xMm)
    {
        IEnumerable<string> Next(string at) => _meter.Floating
            .Where(n => !string.Equals(n, first.Net, StringComparison.Ordinal) && !string.Equals(n, second.Net, StringComparison.Ordinal))
            .Append(second.Key);
        return SpacingMeter.ChainOf(first.Key, second.Key, Next, (a, b) => Gap(first, second, a, b), xMm);
    }

    /// <summary>The gap between two items, or between one and a floating net; what lies between floating nets the table knows.</summary>
    private SolidGap? Gap(ItemOfNet first, ItemOfNet second, string from, string to)
    {
        SolidGroup GroupOf(string key) => IsItem(key) ? _groups[key] : _meter.GroupOf(key);
        string NetOf(string key) => !IsItem(key) ? key : string.Equals(key, first.Key, StringComparison.Ordinal) ? first.Net : second.Net;
        bool IsWhole(string key) => !IsItem(key) || _items[NetOf(key)].Count() == 1;

        // A net of one item is that item. From the other end the table's figure may differ in its last bit: that is measured again.
        if ((!IsItem(from) && !IsItem(to)) || (IsWhole(from) && IsWhole(to) && string.CompareOrdinal(NetOf(from), NetOf(to)) <= 0))
        {
            return _meter.Gap(NetOf(from), NetOf(to));
        }

        if (!_gaps.TryGetValue((from, to), out SolidGap? gap))
        {
            gap = _meter.Between(GroupOf(from), NetOf(from), GroupOf(to), NetOf(to));
            _gaps.Add((from, to), gap);
        }

        return gap;
    }

    private bool IsItem(string key) => _groups.ContainsKey(key);

    private SpacingRow? Creepage(NetPair pair, ItemOfNet first, ItemOfNet second, double xMm) => SpacingRows.Worst(
    [
        .. _task.Surfaces.Select(s => Creepage(pair, s, first, second, xMm)),
        .. _meter.Joined(xMm).Select(s => Creepage(pair, s, first, second, xMm) is { } row && LeavesItsSurface(row, first, second, xMm) ? row : null),
    ]);

    private bool LeavesItsSurface(SpacingRow row, ItemOfNet first, ItemOfNet second, double xMm) => !row.Path!.Surface.Parts.Any(p =>
        Path(p, first, second, xMm) is { } own && !SpacingTolerances.IsBelow(row.WorstMm, own.WorstMm));

    private SpacingRow? Creepage(NetPair pair, InsulatingSurface surface, ItemOfNet first, ItemOfNet second, double xMm) =>
        Path(surface, first, second, xMm) is { } path ? SpacingRows.Creepage(_task, pair, path, _meter.Required(pair, surface.Group).Creepage!, xMm) : null;

    /// <summary>The least path between two items on a surface; an item that turns in part is two conductors there.</summary>
    private CreepagePath? Path(InsulatingSurface surface, ItemOfNet first, ItemOfNet second, double xMm)
    {
        SurfaceCreepage paths = _meter.On(surface, xMm);
        if (!_places.TryGetValue((surface.Name, xMm), out ILookup<(string Net, string Name), int>? places))
        {
            places = Enumerable.Range(0, paths.Conductors.Count).ToLookup(i => (paths.Conductors[i].Net, paths.Conductors[i].Item));
            _places.Add((surface.Name, xMm), places);
        }

        return places[(first.Net, first.Name)]
            .SelectMany(i => places[(second.Net, second.Name)].Select(j => paths.Between(i, j)))
            .OfType<CreepagePath>()
            .MinBy(p => p.WorstMm);
    }

    /// <summary>One item of one net.</summary>
    /// <param name="Net">The net.</param>
    /// <param name="Name">The item.</param>
    private sealed record ItemOfNet(string Net, string Name)
    {
        /// <summary>A key that no net has: names hold no control characters.</summary>
        internal string Key { get; } = $"{Net}\n{Name}";
    }
}
