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
    /// <summary>Its reference designation; empty for none.</summary>
    public string Designation { get; init; } = "";

    /// <summary>Whether it is a contact that is closed all the turn.</summary>
    public bool IsAlways { get; init; }

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
        ReferenceDesignations designations = new(brief);
        foreach (InputBrief input in brief.Inputs)
        {
            graph.Add(new(WiringKind.Input, input.Name, input.ClosedWhen ?? "", graph.Net(input.From), graph.Net(input.To)) { Designation = designations.Input(input.Name) });
        }

        if (brief.Feed is { } feed)
        {
            int net = graph.Net(feed.Net);
            graph.Wheel = graph._nets.Count;
            graph._nets.Add(feed.Net);
            graph.Add(new(WiringKind.Feed, "feed", "", net, graph.Wheel) { Designation = designations.Feed });
        }

        foreach (ContactSchedule contact in request.Contacts)
        {
            bool onWheel = brief.Feed is { } wheel && string.Equals(wheel.Net, contact.WheelNet, StringComparison.Ordinal);
            graph.Add(new(WiringKind.Ring, contact.Output, AnglesOf(contact, brief.Drive.TurnTimeS), onWheel ? graph.Wheel : graph.Net(contact.WheelNet), graph.Net(contact.WiperNet))
            {
                Designation = designations.Contact(contact.Output),
                IsAlways = contact.IsAlways,
            });
        }

        foreach (LoadBrief load in brief.Loads)
        {
            graph.Add(new(WiringKind.Load, load.Name, RatingOf(load.Rating), graph.Net(load.From), graph.Net(load.To)) { Designation = designations.Load(load.Name) });
        }

        if (brief.DriveMotor is { } motor)
        {
            graph.Add(new(WiringKind.Motor, motor.Name, RatingOf(motor.Rating), graph.Net(motor.From), graph.Net(motor.To)) { Designation = designations.Load(motor.Name) });
        }

        return graph;
    }

    // Angles with the seconds from home that they stand for.
    private static string AnglesOf(ContactSchedule contact, double turnS)
    {
        return contact.IsAlways ? "always" : string.Join("; ", contact.Periods.Select(p => Words(p.Closed.StartRad, Angles.InTurn(p.Closed.EndRad))));

        string Words(double fromRad, double toRad) => string.Create(
            CultureInfo.InvariantCulture,
            $"{Angles.DegFromRad(fromRad):0.#}–{Angles.DegFromRad(toRad):0.#}° = {fromRad / Angles.TurnRad * turnS:0.#}–{toRad / Angles.TurnRad * turnS:0.#} s");
    }

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

    private void Add(WiringLink link)
    {
        if (link.A != link.B)
        {
            _links.Add(link);
        }
    }
}
