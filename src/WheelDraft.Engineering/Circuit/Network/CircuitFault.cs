namespace WheelDraft.Engineering;

/// <summary>One thing that may go wrong in the circuit.</summary>
/// <param name="Kind">What goes wrong.</param>
/// <param name="Subject">Name of the input, output, load or first net concerned; empty when the kind says all.</param>
/// <param name="Other">Second net of a bridge; empty otherwise.</param>
public sealed record CircuitFault(CircuitFaultKind Kind, string Subject = "", string Other = "")
{
    /// <summary>The fault in words, e.g. "valve winding shorted".</summary>
    public string Words => Kind switch
    {
        CircuitFaultKind.None => "no fault",
        CircuitFaultKind.InputStuckClosed => $"{Subject} stuck closed",
        CircuitFaultKind.InputStuckOpen => $"{Subject} stuck open",
        CircuitFaultKind.ContactWelded => $"{Subject} contact welded",
        CircuitFaultKind.ContactNeverMade => $"{Subject} contact never makes",
        CircuitFaultKind.LoadOpen => $"{Subject} winding open",
        CircuitFaultKind.LoadShorted => $"{Subject} winding shorted",
        CircuitFaultKind.FeedOpen => "feed wiper open",
        CircuitFaultKind.NeutralOpen => "neutral open",
        CircuitFaultKind.LineOpen => $"line {Subject} open",
        CircuitFaultKind.MotorStalled => "motor stalled",
        CircuitFaultKind.MotorReversed => "motor runs backward",
        CircuitFaultKind.SupplyLost => "supply lost and back",
        CircuitFaultKind.WheelSlipped => "wheel slipped on its shaft",
        CircuitFaultKind.LeverStuckUp => $"lever of {Subject} stuck up",
        CircuitFaultKind.LeverStuckDown => $"lever of {Subject} stuck down",
        CircuitFaultKind.CamSlippedClosed => $"{Subject} slipped on its shaft, its contact closed",
        CircuitFaultKind.CamSlippedOpen => $"{Subject} slipped on its shaft, its contact open",
        CircuitFaultKind.NetEarthed => $"net {Subject} joined to E",
        CircuitFaultKind.NetsBridged => $"nets {Subject} and {Other} bridged",
        _ => throw new NotSupportedException("A fault without words."),
    };
}

/// <summary>What goes wrong.</summary>
public enum CircuitFaultKind
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>An input stays closed whatever it senses.</summary>
    InputStuckClosed,

    /// <summary>An input stays open whatever it senses.</summary>
    InputStuckOpen,

    /// <summary>An output's contact stays closed all the turn.</summary>
    ContactWelded,

    /// <summary>An output's contact stays open all the turn.</summary>
    ContactNeverMade,

    /// <summary>A load no longer conducts.</summary>
    LoadOpen,

    /// <summary>A load joins its two nets.</summary>
    LoadShorted,

    /// <summary>The feed wiper has lifted off; the copper still joins the outputs that touch it.</summary>
    FeedOpen,

    /// <summary>The supply's neutral is interrupted; net N floats.</summary>
    NeutralOpen,

    /// <summary>One line of three is interrupted, as by its fuse; its net floats.</summary>
    LineOpen,

    /// <summary>The wheel stands, at any angle, though its motor is fed.</summary>
    MotorStalled,

    /// <summary>The wheel turns the other way.</summary>
    MotorReversed,

    /// <summary>The supply goes and comes back with the wheel in mid-turn; judged after it is back.</summary>
    SupplyLost,

    /// <summary>The wheel stands at any other angle than the programme says.</summary>
    WheelSlipped,

    /// <summary>A cam's lever stays at its greatest lift.</summary>
    LeverStuckUp,

    /// <summary>A cam's lever stays at rest, bent, worn or broken.</summary>
    LeverStuckDown,

    /// <summary>A cam stands at any other angle than its wheel, its lever's contact being closed.</summary>
    CamSlippedClosed,

    /// <summary>The same, the contact being open.</summary>
    CamSlippedOpen,

    /// <summary>A net is joined to earth.</summary>
    NetEarthed,

    /// <summary>Two nets that lie near each other are joined.</summary>
    NetsBridged,
}

/// <summary>Lists the single faults of a circuit, in a fixed order.</summary>
internal static class SingleFaults
{
    /// <summary>Every single fault.</summary>
    public static IReadOnlyList<CircuitFault> Of(CircuitModel model)
    {
        List<CircuitFault> faults = [];
        foreach (NetworkElement input in model.Inputs.Where((_, i) => !model.IsHold(i)))
        {
            faults.Add(new(CircuitFaultKind.InputStuckClosed, input.Name));
            faults.Add(new(CircuitFaultKind.InputStuckOpen, input.Name));
        }

        foreach (LeverContact lever in model.Levers)
        {
            faults.Add(new(CircuitFaultKind.InputStuckClosed, lever.Schedule.Input));
            faults.Add(new(CircuitFaultKind.InputStuckOpen, lever.Schedule.Input));
            faults.Add(new(CircuitFaultKind.LeverStuckUp, lever.Schedule.Cam));
            faults.Add(new(CircuitFaultKind.LeverStuckDown, lever.Schedule.Cam));
            faults.Add(new(CircuitFaultKind.CamSlippedClosed, lever.Schedule.Cam));
            faults.Add(new(CircuitFaultKind.CamSlippedOpen, lever.Schedule.Cam));
        }

        foreach (ContactSchedule contact in model.Schedules.Take(model.Outputs))
        {
            if (!contact.IsAlways)
            {
                faults.Add(new(CircuitFaultKind.ContactWelded, contact.Output));
            }

            faults.Add(new(CircuitFaultKind.ContactNeverMade, contact.Output));
        }

        foreach (NetworkElement load in model.Loads)
        {
            faults.Add(new(CircuitFaultKind.LoadOpen, load.Name));
            faults.Add(new(CircuitFaultKind.LoadShorted, load.Name));
        }

        if (model.WheelNode >= 0)
        {
            faults.Add(new(CircuitFaultKind.FeedOpen));
        }

        faults.Add(new(CircuitFaultKind.NeutralOpen));
        faults.AddRange(model.Lines.Where(_ => model.Lines.Count > 1).Select(l => new CircuitFault(CircuitFaultKind.LineOpen, model.NodeNets[l])));
        faults.Add(new(CircuitFaultKind.MotorStalled));
        faults.Add(new(CircuitFaultKind.MotorReversed));
        faults.Add(new(CircuitFaultKind.SupplyLost));
        faults.Add(new(CircuitFaultKind.WheelSlipped));
        IEnumerable<string> nets = model.NodeNets.Where((_, n) => n != CircuitModel.Earth && n != model.WheelNode);
        faults.AddRange(nets.Select(net => new CircuitFault(CircuitFaultKind.NetEarthed, net)));
        faults.AddRange(model.Request.Bridges
            .Where(b => !string.Equals(b.FirstNet, b.SecondNet, StringComparison.Ordinal))
            .Select(b => new CircuitFault(CircuitFaultKind.NetsBridged, b.FirstNet, b.SecondNet)));
        return faults;
    }
}
