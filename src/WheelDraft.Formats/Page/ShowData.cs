using System.Text;
using System.Text.Json;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Page;

/// <summary>The page's data: the network to solve, contacts' times, faults, interlocks.</summary>
internal static class ShowData
{
    // Edges are given to a nanosecond: what was asked for in seconds comes back as it was written.
    private const int SecondDecimals = 9;

    /// <summary>As JSON that may stand in a page: angle brackets and ampersands are escaped.</summary>
    public static string Write(Design design, CircuitNetwork network)
    {
        using MemoryStream bytes = new();
        using (Utf8JsonWriter json = new(bytes))
        {
            json.WriteStartObject();
            json.WriteNumber("sense", design.Motion.Sigma);
            Slugs(json, "inputs", ShowLink.Inputs(design));
            Slugs(json, "faultSlugs", ShowLink.Faults(design));
            json.WritePropertyName("network");
            Network(json, network, design.Motion.TurnTimeS);
            json.WriteStartArray("faults");
            foreach (CircuitFault fault in Faults(design))
            {
                Fault(json, fault, network);
            }

            json.WriteEndArray();
            Interlocks(json, design);
            ShowLevers.Write(json, design);
            ShowScrews.Write(json, design, network);
            ShowStories.Write(json, design);
            Words(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length);
    }

    // What scripts say, where that is not what stands in them.
    private static void Words(Utf8JsonWriter json)
    {
        if (!ReadersWords.AreOthers)
        {
            return;
        }

        json.WriteStartObject("words");
        foreach (string english in ShowPage.Scripts.SelectMany(s => MarkupWords.OfScript(PageText.Read(s))).Distinct(StringComparer.Ordinal))
        {
            json.WriteString(english, ReadersWords.Read(english));
        }

        json.WriteEndObject();
    }

    /// <summary>The faults that a reader can switch: those of the network, and a motor that stalls or runs backward.</summary>
    /// <remarks>A slipped wheel, and a supply that is lost and comes back, need no switch: the slider goes anywhere.</remarks>
    public static IReadOnlyList<CircuitFault> Faults(Design design) =>
        [.. design.Circuit.Faults.Select(f => f.Fault).Where(f => f.Kind is not (CircuitFaultKind.None or CircuitFaultKind.SupplyLost or CircuitFaultKind.WheelSlipped or CircuitFaultKind.CamSlippedClosed or CircuitFaultKind.CamSlippedOpen))];

    /// <summary>A network as the page's solver takes it.</summary>
    public static void Network(Utf8JsonWriter json, CircuitNetwork network, double turnS)
    {
        json.WriteStartObject();
        json.WriteNumber("turn", Math.Round(turnS, SecondDecimals));
        json.WriteNumber("supply", network.SupplyV);
        json.WriteStartArray("lines");
        foreach (NetworkLine line in network.Lines)
        {
            json.WriteStartObject();
            json.WriteNumber("node", line.Node);
            json.WriteNumber("re", line.PotentialV.Real);
            json.WriteNumber("im", line.PotentialV.Imaginary);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteNumber("wheel", network.WheelNode);
        json.WriteNumber("feed", network.FeedNode);
        json.WriteNumber("motor", network.Motor);
        json.WriteStartArray("nets");
        foreach (string net in network.Nets)
        {
            json.WriteStringValue(net);
        }

        json.WriteEndArray();
        json.WriteStartArray("contacts");
        for (int c = 0; c < network.Contacts.Count; c++)
        {
            Contact(json, network, c, turnS);
        }

        json.WriteEndArray();
        json.WriteStartArray("inputs");
        foreach (NetworkSwitch input in network.Inputs)
        {
            json.WriteStartObject();
            Ends(json, input.Name, input.A, input.B);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("loads");
        foreach (NetworkLoad load in network.Loads)
        {
            json.WriteStartObject();
            Ends(json, load.Name, load.A, load.B);
            json.WriteNumber("r", load.ImpedanceOhm.Real);
            json.WriteNumber("x", load.ImpedanceOhm.Imaginary);
            json.WriteNumber("on", load.OnAtV);
            json.WriteNumber("off", load.OffAtV);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>One fault as the page's solver takes it.</summary>
    public static void Fault(Utf8JsonWriter json, CircuitFault fault, CircuitNetwork network)
    {
        json.WriteStartObject();
        json.WriteString("words", ReadersWords.Read(fault.Words));
        switch (fault.Kind)
        {
            case CircuitFaultKind.InputStuckClosed or CircuitFaultKind.InputStuckOpen when network.LeverOf(fault.Subject) is { } contact:
                Part(json, "contacts", contact.Contact);
                json.WriteBoolean("closed", fault.Kind == CircuitFaultKind.InputStuckClosed);
                break;
            case CircuitFaultKind.LeverStuckUp or CircuitFaultKind.LeverStuckDown:
                LeverContact lever = network.Levers.First(l => string.Equals(l.Schedule.Cam, fault.Subject, StringComparison.Ordinal));
                Part(json, "contacts", lever.Contact);
                json.WriteBoolean("closed", fault.Kind == CircuitFaultKind.LeverStuckUp ? lever.Schedule.ClosedAtTop : lever.Schedule.ClosedAtRest);
                break;
            case CircuitFaultKind.InputStuckClosed or CircuitFaultKind.InputStuckOpen:
                Part(json, "inputs", network.InputOf(fault.Subject));
                json.WriteBoolean("closed", fault.Kind == CircuitFaultKind.InputStuckClosed);
                break;
            case CircuitFaultKind.ContactWelded or CircuitFaultKind.ContactNeverMade:
                Part(json, "contacts", network.ContactOf(fault.Subject));
                json.WriteBoolean("closed", fault.Kind == CircuitFaultKind.ContactWelded);
                break;
            case CircuitFaultKind.LoadOpen or CircuitFaultKind.LoadShorted:
                Part(json, "loads", network.LoadOf(fault.Subject));
                json.WriteString("mode", fault.Kind == CircuitFaultKind.LoadOpen ? "absent" : "joined");
                break;
            case CircuitFaultKind.LineOpen:
                Part(json, "line", network.NodeOf(fault.Subject));
                break;
            case CircuitFaultKind.NetEarthed:
                Joined(json, network.NodeOf(fault.Subject), network.NodeOf("E"));
                break;
            case CircuitFaultKind.NetsBridged:
                Joined(json, network.NodeOf(fault.Subject), network.NodeOf(fault.Other));
                break;
            default:
                json.WriteString("part", fault.Kind switch
                {
                    CircuitFaultKind.FeedOpen => "feed",
                    CircuitFaultKind.NeutralOpen => "neutral",
                    CircuitFaultKind.MotorStalled => "stalled",
                    CircuitFaultKind.MotorReversed => "reversed",
                    _ => throw new NotSupportedException($"The page has no switch for '{fault.Words}'."),
                });
                break;
        }

        json.WriteEndObject();
    }

    private static void Contact(Utf8JsonWriter json, CircuitNetwork network, int index, double turnS)
    {
        (NetworkSwitch contact, ContactSchedule schedule) = (network.Contacts[index], network.Schedules[index]);
        json.WriteStartObject();
        if (network.Levers.FirstOrDefault(l => l.Contact == index) is { } lever)
        {
            ShowLevers.Holds(json, lever);
        }

        Ends(json, contact.Name, contact.A, contact.B);
        json.WriteBoolean("always", schedule.IsAlways);
        json.WriteStartArray("on");
        foreach (CircleArc closed in schedule.Periods.Select(p => p.Closed).Where(a => !a.IsFull && !a.IsEmpty))
        {
            json.WriteStartArray();
            (double from, double to) = Seconds(closed, turnS);
            json.WriteNumberValue(from);
            json.WriteNumberValue(to);
            json.WriteEndArray();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>An on-period in seconds: its start within the turn, its end after it and so perhaps past the turn.</summary>
    public static (double From, double To) Seconds(CircleArc closed, double turnS)
    {
        double from = Math.Round(Angles.InTurn(closed.StartRad) / Angles.TurnRad * turnS, SecondDecimals);
        double to = Math.Round((Angles.InTurn(closed.StartRad) + closed.SweepRad) / Angles.TurnRad * turnS, SecondDecimals);
        return from >= Math.Round(turnS, SecondDecimals) ? (0, Math.Round(to - turnS, SecondDecimals)) : (from, to);
    }

    private static void Interlocks(Utf8JsonWriter json, Design design)
    {
        json.WriteStartArray("interlocks");
        for (int i = 0; i < design.Brief.Interlocks.Count; i++)
        {
            InterlockBrief interlock = design.Brief.Interlocks[i];
            json.WriteStartObject();
            json.WriteString("name", interlock.Name);
            json.WriteBoolean("holds", design.Circuit.Interlocks[i] is { Verdict: InterlockVerdict.Holds });
            json.WriteNumber("faults", interlock.Faults == FaultDepth.Single ? 1 : 0);
            json.WriteString("claim", interlock.Claim switch { InterlockClaim.NeverOn => "never", InterlockClaim.AlwaysOn => "always", _ => "together" });
            Indices(json, "loads", interlock.Loads, [.. design.Circuit.Loads]);
            CircuitNetwork network = design.Circuit.Network;
            string[] switches = [.. design.Circuit.Inputs, .. network.Contacts.Select(c => c.Name)];
            Indices(json, "closed", interlock.WhileClosed, switches);
            Indices(json, "open", interlock.WhileOpen, switches);
            Indices(json, "true", [.. interlock.WhileTrue.Where(n => network.LeverOf(n) is null)], [.. design.Circuit.Inputs]);
            Indices(json, "false", [.. interlock.WhileFalse.Where(n => network.LeverOf(n) is null)], [.. design.Circuit.Inputs]);
            ShowLevers.Meanings(json, network, interlock);
            if (interlock.Between is CircleArc between)
            {
                (double from, double to) = Seconds(between, design.Motion.TurnTimeS);
                json.WriteStartArray("between");
                json.WriteNumberValue(from);
                json.WriteNumberValue(to);
                json.WriteEndArray();
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Slugs(Utf8JsonWriter json, string key, IReadOnlyList<string> slugs)
    {
        json.WriteStartArray(key);
        foreach (string slug in slugs)
        {
            json.WriteStringValue(slug);
        }

        json.WriteEndArray();
    }

    private static void Indices(Utf8JsonWriter json, string key, IReadOnlyList<string> names, string[] among)
    {
        json.WriteStartArray(key);
        foreach (string name in names)
        {
            int at = Array.IndexOf(among, name);
            json.WriteNumberValue(at >= 0 ? at : throw new ArgumentException($"The circuit has no '{name}'.", nameof(names)));
        }

        json.WriteEndArray();
    }

    private static void Part(Utf8JsonWriter json, string part, int index)
    {
        json.WriteString("part", part);
        json.WriteNumber("index", index);
    }

    private static void Joined(Utf8JsonWriter json, int a, int b)
    {
        json.WriteString("part", "joins");
        json.WriteNumber("a", a);
        json.WriteNumber("b", b);
    }

    private static void Ends(Utf8JsonWriter json, string name, int a, int b)
    {
        json.WriteString("name", name);
        json.WriteNumber("a", a);
        json.WriteNumber("b", b);
    }
}
