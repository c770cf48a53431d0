namespace WheelDraft.Engineering;

/// <summary>Live nets for which the circuit does not say what they carry. They count at the highest voltage of the supply.</summary>
/// <remarks>Two kinds: nets of the circuit to which no line leads, an error until it is mended; and nets that only live parts, plain
/// strips and a live shaft have, which the circuit need not know.</remarks>
internal sealed class SourcelessNets
{
    private readonly CircuitModel _model;
    private readonly HashSet<string> _unsourced;
    private readonly HashSet<string> _outside;

    /// <summary>Finds them.</summary>
    public SourcelessNets(CircuitModel model)
    {
        _model = model;
        _unsourced = new(model.Unsourced().Select(n => model.NodeNets[n]), StringComparer.Ordinal);
        Brief brief = model.Brief;
        HashSet<string> known = new(model.CircuitNets, StringComparer.Ordinal);
        _outside = new(Outside(brief).Select(o => o.Net).Where(n => !known.Contains(n)), StringComparer.Ordinal);
    }

    /// <summary>Whether a net counts at the highest voltage of the supply against every other.</summary>
    public bool Has(string net) => _unsourced.Contains(net) || _outside.Contains(net);

    /// <summary>Whether a net is one of the supply's, or is named by the circuit.</summary>
    public static bool IsOfCircuit(Brief brief, string net) =>
        brief.Supply.Lines.Append("N").Concat(Mentions(brief).Select(m => m.Net)).Contains(net, StringComparer.Ordinal);

    /// <summary>A working voltage with this counted.</summary>
    public WorkingVoltage Raise(WorkingVoltage solved)
    {
        double highestV = _model.Brief.Supply.HighestV;
        if (!_model.HasLoads)
        {
            return solved with { VoltageV = highestV, Where = "at the highest voltage of the supply: the file has no loads" };
        }

        string net = Has(solved.First) ? solved.First : solved.Second;
        return Has(net) && solved.VoltageV < highestV
            ? solved with { VoltageV = highestV, Where = $"at the highest voltage of the supply: nothing says what '{net}' carries" }
            : solved;
    }

    /// <summary>What the person should know of them, in the order of the file.</summary>
    public IEnumerable<Finding> Findings()
    {
        Brief brief = _model.Brief;
        string highest = Wording.Volts(Math.Round(brief.Supply.HighestV, 1));
        if (!_model.HasCircuit)
        {
            yield return Finding.Note("circuit.none", $"The file has no loads, inputs and motor: every live net counts at the highest voltage of the supply, {highest}.");
            yield break;
        }

        string lines = string.Join(", ", brief.Supply.Lines.Select(l => $"'{l}'"));
        foreach ((string net, string who, string path) in Mentions(brief).Where(m => _unsourced.Contains(m.Net)).DistinctBy(m => m.Net, StringComparer.Ordinal))
        {
            yield return Finding.Error(
                "circuit.no-source",
                $"No line leads to net '{net}' of {who}, in any position of contacts and inputs and through any load: nothing says what it carries, and until that is mended it counts at {highest} against every other net. The {(brief.Supply.Lines.Count > 1 ? "lines are" : "line is")} {lines}; join the net to {(brief.Supply.Lines.Count > 1 ? "one of them" : "it")}, or name the lines in [supply], e.g. lines = [\"L1\", \"L2\", \"L3\"].",
                brief.PlaceOf(path));
        }

        foreach ((string net, string who, string path) in Outside(brief).Where(m => _outside.Contains(m.Net)).DistinctBy(m => m.Net, StringComparer.Ordinal))
        {
            yield return Finding.Note(
                "circuit.outside-net",
                $"Net '{net}' of {who} is in no part of the circuit: nothing says what it carries, so it counts at {highest} against every other net.",
                brief.PlaceOf(path));
        }
    }

    private static IEnumerable<(string Net, string Who, string Path)> Mentions(Brief brief)
    {
        if (brief.Feed is { } feed)
        {
            yield return (feed.Net, "the feed", "feed.net");
        }

        foreach ((OutputBrief output, int i) in brief.Outputs.Select((o, i) => (o, i)))
        {
            yield return (output.Net, $"output '{output.Name}'", FormattableString.Invariant($"output[{i}].net"));
            if (output.ReturnNet is { } back)
            {
                yield return (back, $"output '{output.Name}'", FormattableString.Invariant($"output[{i}].return_net"));
            }
        }

        foreach ((LoadBrief load, int i) in brief.Loads.Select((l, i) => (l, i)))
        {
            yield return (load.From, $"load '{load.Name}'", FormattableString.Invariant($"load[{i}].between"));
            yield return (load.To, $"load '{load.Name}'", FormattableString.Invariant($"load[{i}].between"));
        }

        foreach ((InputBrief input, int i) in brief.Inputs.Select((n, i) => (n, i)))
        {
            yield return (input.From, $"input '{input.Name}'", FormattableString.Invariant($"input[{i}].between"));
            yield return (input.To, $"input '{input.Name}'", FormattableString.Invariant($"input[{i}].between"));
        }

        if (brief.DriveMotor is { } motor)
        {
            yield return (motor.From, "the motor", "drive_motor.between");
            yield return (motor.To, "the motor", "drive_motor.between");
        }
    }

    private static IEnumerable<(string Net, string Who, string Path)> Outside(Brief brief)
    {
        if (brief.Wheel is { Shaft: ShaftKind.Live, ShaftNet: { } shaft })
        {
            yield return (shaft, "the shaft", "wheel.shaft_net");
        }

        foreach ((StripBrief strip, int i) in brief.Strips.Select((s, i) => (s, i)))
        {
            if (strip.Task is ServesNet plain)
            {
                yield return (plain.Net, $"strip '{strip.Name}'", FormattableString.Invariant($"strip[{i}].net"));
            }
        }

        foreach ((PartBrief part, int i) in brief.Parts.Select((p, i) => (p, i)))
        {
            if (part.Kind == PartKind.Live)
            {
                yield return (part.Net, $"part '{part.Name}'", FormattableString.Invariant($"part[{i}].net"));
            }
        }

        foreach ((CamBrief cam, int i) in brief.Cams.Select((c, i) => (c, i)))
        {
            if (cam.Net is { } net && !string.Equals(net, "E", StringComparison.Ordinal))
            {
                yield return (net, $"cam '{cam.Name}'", FormattableString.Invariant($"cam[{i}].net"));
            }
        }
    }
}
