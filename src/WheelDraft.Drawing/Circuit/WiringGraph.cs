using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A symbol before it has a place.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Its name.</param>
/// <param name="Words">What is written below it.</param>
/// <param name="A">One net.</param>
/// <param name="B">The other net.</param>
internal sealed record WiringLink(WiringKind Kind, string Name, string Words, int A, int B)
{
    /// <summary>The net at the other end.</summary>
    public int Other(int net) => net == A ? B : A;
}

/// <summary>The circuit as nets and links; net 0 is the first line, net 1 neutral.</summary>
internal sealed class WiringGraph
{
    private readonly List<string> _nets;
    private readonly List<WiringLink> _links = [];

    private WiringGraph(string line) => _nets = [line, "N"];

    /// <summary>Names of the nets.</summary>
    public IReadOnlyList<string> Nets => _nets;

    /// <summary>Net of the wheel's copper, or −1.</summary>
    public int Wheel { get; private set; } = -1;

    /// <summary>The links; one whose two ends are one net is left out.</summary>
    public IReadOnlyList<WiringLink> Links => _links;

    /// <summary>Reads a circuit.</summary>
    public static WiringGraph Of(CircuitRequest request)
    {
        Brief brief = request.Brief;
        WiringGraph graph = new(brief.Supply.Lines[0]);
        foreach (InputBrief input in brief.Inputs)
        {
            graph.Add(WiringKind.Input, input.Name, input.ClosedWhen ?? "", (graph.Net(input.From), graph.Net(input.To)));
        }

        if (brief.Feed is { } feed)
        {
            int net = graph.Net(feed.Net);
            graph.Wheel = graph._nets.Count;
            graph._nets.Add(feed.Net);
            graph.Add(WiringKind.Feed, "feed", "", (net, graph.Wheel));
        }

        foreach (ContactSchedule contact in request.Contacts)
        {
            bool onWheel = brief.Feed is { } wheel && string.Equals(wheel.Net, contact.WheelNet, StringComparison.Ordinal);
            graph.Add(WiringKind.Ring, contact.Output, AnglesOf(contact), (onWheel ? graph.Wheel : graph.Net(contact.WheelNet), graph.Net(contact.WiperNet)));
        }

        foreach (LoadBrief load in brief.Loads)
        {
            graph.Add(WiringKind.Load, load.Name, RatingOf(load.Rating), (graph.Net(load.From), graph.Net(load.To)));
        }

        if (brief.DriveMotor is { } motor)
        {
            graph.Add(WiringKind.Motor, motor.Name, RatingOf(motor.Rating), (graph.Net(motor.From), graph.Net(motor.To)));
        }

        return graph;
    }

    private static string AnglesOf(ContactSchedule contact) => contact.IsAlways
        ? "always"
        : string.Join(", ", contact.Periods.Select(p => string.Create(
            CultureInfo.InvariantCulture,
            $"{Angles.DegFromRad(p.Closed.StartRad):0.0}° to {Angles.DegFromRad(Angles.InTurn(p.Closed.EndRad)):0.0}°")));

    private static string RatingOf(LoadRating rating) => rating switch
    {
        RatedPower p => string.Create(CultureInfo.InvariantCulture, $"{p.PowerW:0.###} W"),
        RatedCurrent c => string.Create(CultureInfo.InvariantCulture, $"{c.CurrentA:0.####} A"),
        RatedImpedance z when z.ReactanceOhm == 0 => string.Create(CultureInfo.InvariantCulture, $"{z.ResistanceOhm:0.###} ohm"),
        RatedImpedance z => string.Create(CultureInfo.InvariantCulture, $"{z.ResistanceOhm:0.###} {(z.ReactanceOhm < 0 ? '-' : '+')} j{Math.Abs(z.ReactanceOhm):0.###} ohm"),
        _ => "",
    };

    private int Net(string name)
    {
        int at = _nets.FindIndex(n => string.Equals(n, name, StringComparison.Ordinal));
        if (at < 0)
        {
            _nets.Add(name);
            at = _nets.Count - 1;
        }

        return at;
    }

    private void Add(WiringKind kind, string name, string words, (int A, int B) nets)
    {
        if (nets.A != nets.B)
        {
            _links.Add(new WiringLink(kind, name, words, nets.A, nets.B));
        }
    }
}
