using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>The look of every net of a design, the same on every sheet that tells nets apart.</summary>
/// <remarks>Nets have looks in natural order. Where there are more nets than looks the looks begin again: a net whose look another
/// has too is named at its parts, and the legend says so. Lands take the net of the wipers that they are under: all look
/// like copper and are named. Floating metal is on no net.</remarks>
internal sealed class NetLooks
{
    private readonly Dictionary<string, int> _numbers;
    private readonly HashSet<string> _lands;

    private NetLooks(IReadOnlyList<string> nets, IEnumerable<string> lands)
    {
        Nets = nets;
        _numbers = nets.Select((n, i) => (n, i)).ToDictionary(p => p.n, p => p.i, StringComparer.Ordinal);
        _lands = [.. lands];
    }

    /// <summary>The nets with a look, in natural order.</summary>
    public IReadOnlyList<string> Nets { get; }

    /// <summary>The looks of a design.</summary>
    public static NetLooks Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        string[] lands = design.Wheel.Feed is null ? [.. design.Wheel.Copper.Select(c => c.Net)] : [];
        HashSet<string> none = [.. design.Solids.Where(s => s.Kind == SolidKind.Floating).Select(s => s.Net), .. lands];
        IEnumerable<string> all = design.Solids.Select(s => s.Net)
            .Concat(design.Strips.Strips.Select(s => s.Net))
            .Concat(design.Brief.Parts.Where(p => p.Kind != PartKind.Floating).Select(p => p.Net));
        return Of([.. all.Where(n => !none.Contains(n))], lands);
    }

    /// <summary>The looks of nets by name; names may be given more than once.</summary>
    internal static NetLooks Of(IEnumerable<string> nets, IEnumerable<string> lands) =>
        new([.. nets.Distinct(StringComparer.Ordinal).Order(NaturalOrder.Names)], lands);

    /// <summary>The filling of a net; that of lands is copper, that of what is on no net that of other parts.</summary>
    public Fill FillOf(string net) => _numbers.TryGetValue(net, out int number) ? Fill.Net(number)
        : Fill.Of(_lands.Contains(net) ? FillKind.Copper : FillKind.Part);

    /// <summary>Whether its look does not tell which net it is, so that it is named at its parts.</summary>
    public bool IsNamed(string net) => _lands.Contains(net) || (_numbers.TryGetValue(net, out int number) && (number >= Fill.NetLooks || number + Fill.NetLooks < Nets.Count));

    /// <summary>A net in a legend, with the net whose look it repeats.</summary>
    public string Words(string net) => _numbers.TryGetValue(net, out int number) && number >= Fill.NetLooks
        ? $"net {net} (looks as net {Nets[number % Fill.NetLooks]})"
        : $"net {net}";
}
