namespace WheelDraft.Engineering;

/// <summary>Lands as nets: what each may be joined to.</summary>
/// <remarks>A land is a net of its own that no circuit knows; under a wiper it has that wiper's potential, and one that floats takes
/// the larger of the voltages to any net that it could be joined to. On a windowed wheel every net is just itself.</remarks>
internal sealed class LandNets(WheelLayout wheel)
{
    private readonly Dictionary<string, string[]> _joined = wheel.Rings
        .Where(r => !r.IsWhole)
        .SelectMany(r => r.Lands.Select(l => (l.Name, Nets: new[] { r.Net, r.WheelNet })))
        .ToDictionary(l => l.Name, l => l.Nets, StringComparer.Ordinal);

    /// <summary>The largest voltage between what two nets may be joined to, V.</summary>
    public double WorkingV(string first, string second, Func<string, string, double> between) =>
        Pairs(first, second).Select(p => between(p.First, p.Second)).DefaultIfEmpty(0).Max();

    /// <summary>Bridged pairs as the circuit sees them: a bridge to a land is one to every net that the land is on.</summary>
    public IReadOnlyList<BridgedNets> Bridges(IReadOnlyList<BridgedNets> bridges) =>
        [.. bridges.SelectMany(b => Pairs(b.FirstNet, b.SecondNet)).Select(p => new BridgedNets(p.First, p.Second)).Distinct()];

    private IEnumerable<(string First, string Second)> Pairs(string first, string second)
    {
        foreach (string a in _joined.GetValueOrDefault(first) ?? [first])
        {
            foreach (string b in _joined.GetValueOrDefault(second) ?? [second])
            {
                int order = string.CompareOrdinal(a, b);
                if (order != 0)
                {
                    yield return order < 0 ? (a, b) : (b, a);
                }
            }
        }
    }
}
