using System.CommandLine;
using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Checking;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Formats.Parameters;

namespace WheelDraft.Cli;

/// <summary>The options of <c>check</c> that say what a drawing means: its nets, the rules, how it is cut.</summary>
internal sealed class DrawingOptions
{
    private readonly Option<string[]> _nets = new("--net") { HelpName = "LAYER=NAME:VOLTAGE", Description = "DXF: a layer as a net, with its largest r.m.s. voltage to neutral and its phase, e.g. \"CU1=L1:230 V@0\", \"CU2=L2:230 V@120\"; one line and what it feeds are all @0; two live nets of which one has no phase count at the sum of their voltages; instead of a voltage earthed, touchable or floating. Repeat for each layer" };
    private readonly Option<string> _standard = new Option<string>("--standard") { HelpName = "NAME", Description = "DXF: \"IEC 60664-1\" or \"IEC 60335-1\"", DefaultValueFactory = _ => "IEC 60664-1" }.Suggesting(RuleArguments.Standards.Select(s => s.Word));
    private readonly Option<string> _degree = new("--degree") { HelpName = "1|2|3", Description = "DXF: pollution degree at the surface" };
    private readonly Option<string> _group = new("--group") { HelpName = "I|II|IIIa|IIIb", Description = "DXF: material group of the surface" };
    private readonly Option<string> _category = new("--category") { HelpName = "I|II|III|IV", Description = "DXF: overvoltage category of the supply" };
    private readonly Option<string> _insulation = new Option<string>("--insulation") { HelpName = "GRADE", Description = "DXF: between live nets: functional, basic, supplementary or reinforced; to earthed ones basic, to touchable ones reinforced", DefaultValueFactory = _ => "basic" }.Suggesting(RuleArguments.Insulations.Select(i => i.Word));
    private readonly Option<string> _altitude = new("--altitude") { HelpName = "H", Description = "DXF: height above sea level", DefaultValueFactory = _ => "0 m" };
    private readonly Option<string> _margin = new("--margin") { HelpName = "LENGTH", Description = "DXF: on top of the rule", DefaultValueFactory = _ => "0 mm" };
    private readonly Option<string> _process = new Option<string>("--process") { HelpName = "NAME", Description = $"DXF: measure webs, slots and holes against a process: {string.Join(", ", CuttingProcesses.All.Select(p => p.Name))}" }.Suggesting(CuttingProcesses.All.Select(p => p.Name));
    private readonly Option<string> _thickness = new("--thickness") { HelpName = "LENGTH", Description = "DXF: thickness of the stock, with --process" };
    private readonly Option<string[]> _cut = new("--cut") { HelpName = "LAYER", Description = "DXF: a layer that is cut; when left out the nets' layers, or all but FOLD, MARK and NOTE" };
    private readonly Option<string[]> _holes = new("--hole") { HelpName = "LAYER", Description = "DXF: a layer whose contours are holes in the nets' copper; WINDOW beside a net on OUTLINE is one anyway" };
    private readonly Option<string[]> _ignored = new("--ignore") { HelpName = "LAYER", Description = "DXF: a layer that holds no copper; closed shapes on other layers without a net count as floating copper" };
    private readonly Option<string> _chord = new("--chord") { HelpName = "TOL", Description = "DXF: take ellipses, splines and unevenly scaled arcs as chords within this of them; without it they are not understood" };
    private readonly Option<string> _join = new("--join") { HelpName = "TOL", Description = "DXF: join ends that lie this near", DefaultValueFactory = _ => "0.005 mm" };
    private readonly Option<string> _unit = new("--unit") { HelpName = string.Join('|', DrawingUnits.Names.Select(n => n.Name)), Description = "DXF: unit of a drawing that states none" };

    /// <summary>Every option.</summary>
    public IReadOnlyList<Option> All => [_nets, _standard, _degree, _group, _category, _insulation, _altitude, _margin, _process, _thickness, _cut, _holes, _ignored, _chord, _join, _unit];

    /// <summary>Whether any of them was given.</summary>
    public bool AnyGiven(ParseResult parsed) => All.Any(o => parsed.GetResult(o) is { Implicit: false });

    /// <summary>How the file is to be read, and what is asked of it.</summary>
    /// <exception cref="DesignRefusedException">Something is missing or not understood: all of it.</exception>
    public (DxfReadOptions Reading, DrawingQuestion Question) Of(ParseResult parsed)
    {
        RuleArguments arguments = new();
        DxfReadOptions reading = new()
        {
            JoinMm = Tolerance(arguments, _join, parsed) ?? 0.005,
            ChordMm = Tolerance(arguments, _chord, parsed),
            UnitMm = parsed.GetValue(_unit) is string unit ? arguments.Choice(_unit.Name, unit, [.. DrawingUnits.Names]) : null,
        };
        IReadOnlyList<DrawingNet> nets = DrawingNets.Read(parsed.GetValue(_nets) ?? [], arguments);
        DrawingRules? rules = nets.Count > 0 ? Rules(parsed, arguments, nets) : null;
        DrawingCut? cut = Cut(parsed, arguments);
        IReadOnlyList<string> holes = parsed.GetValue(_holes) ?? [];
        IReadOnlyList<string> ignored = parsed.GetValue(_ignored) ?? [];
        Contradictions(arguments, nets, holes, ignored);
        arguments.ThrowIfFaulty();
        DrawingQuestion question = new(nets, rules, cut) { Holes = holes, Ignored = ignored };
        return (reading with { Heeds = question.Heeds, Needs = question.Needs }, question);
    }

    /// <summary>A layer is one thing: copper of a net, holes, or no copper at all.</summary>
    private void Contradictions(RuleArguments arguments, IReadOnlyList<DrawingNet> nets, IReadOnlyList<string> holes, IReadOnlyList<string> ignored)
    {
        foreach (string layer in nets.Select(n => n.Layer).Concat(holes.Distinct(StringComparer.OrdinalIgnoreCase)).Concat(ignored.Distinct(StringComparer.OrdinalIgnoreCase))
            .GroupBy(l => l, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1 && (holes.Contains(g.Key, StringComparer.OrdinalIgnoreCase) || ignored.Contains(g.Key, StringComparer.OrdinalIgnoreCase))).Select(g => g.Key))
        {
            arguments.Complain($"layer '{layer}' is given to two of {_nets.Name}, {_holes.Name} and {_ignored.Name}; it is one of them");
        }

        if (holes.Count > 0 && nets.Count == 0)
        {
            arguments.Complain($"{_holes.Name}: holes are cut into the copper of nets, and no --net is given");
        }
    }

    private DrawingRules Rules(ParseResult parsed, RuleArguments arguments, IReadOnlyList<DrawingNet> nets)
    {
        arguments.Need(_degree.Name, parsed.GetValue(_degree), "the pollution degree at the surface, which decides the least clearance and the creepage column, e.g. --degree 3 where dew or dust settles");
        arguments.Need(_group.Name, parsed.GetValue(_group), "the material group of the surface, which decides the creepage column, e.g. --group IIIb where it is not known");
        arguments.Need(_category.Name, parsed.GetValue(_category), "the overvoltage category of the supply, which with the voltage decides the impulse that clearances withstand, e.g. --category II behind a plug");
        double highestV = nets.Max(n => n.VoltageV);
        if (highestV <= 0)
        {
            arguments.Complain("--net: no net has a voltage above zero; give the live ones theirs, e.g. \"CU1=L:230 V\"");
        }

        return new(
            new SupplyBrief(Math.Max(highestV, 1), 50, 0, arguments.Choice(_category.Name, parsed.GetValue(_category), RuleArguments.Categories)),
            new EnvironmentBrief(arguments.Choice(_degree.Name, parsed.GetValue(_degree), RuleArguments.Degrees), arguments.Metres(_altitude.Name, parsed.GetValue(_altitude)), false),
            new SpacingBrief(
                arguments.Choice(_standard.Name, parsed.GetValue(_standard), RuleArguments.Standards),
                arguments.Choice(_insulation.Name, parsed.GetValue(_insulation), RuleArguments.Insulations),
                Insulation.Basic,
                Insulation.Reinforced,
                null,
                Length(arguments, _margin, parsed) ?? 0,
                GrooveX.Full),
            arguments.Choice(_group.Name, parsed.GetValue(_group), RuleArguments.Groups));
    }

    private DrawingCut? Cut(ParseResult parsed, RuleArguments arguments)
    {
        if (parsed.GetValue(_process) is not string name)
        {
            return null;
        }

        arguments.Need(_thickness.Name, parsed.GetValue(_thickness), "the thickness of the stock, which the limits of a process follow, e.g. --thickness \"0.5 mm\"");
        CuttingProcess process = arguments.Choice(_process.Name, name, [.. CuttingProcesses.All.Select(p => (p.Name, p))]);
        return new(process, Length(arguments, _thickness, parsed) ?? 1, parsed.GetValue(_cut) ?? []);
    }

    private static double? Length(RuleArguments arguments, Option<string> option, ParseResult parsed)
    {
        if (parsed.GetValue(option) is not string text)
        {
            return null;
        }

        double mm = arguments.Metres(option.Name, text) * 1000;
        if (mm is < 0 or > 1000)
        {
            arguments.Complain($"{option.Name}: \"{text}\" is outside 0 to 1 m");
        }

        return mm;
    }

    private static double? Tolerance(RuleArguments arguments, Option<string> option, ParseResult parsed)
    {
        double? mm = Length(arguments, option, parsed);
        if (mm is < 1e-6 or > 1)
        {
            arguments.Complain($"{option.Name}: a tolerance is 0.000001 to 1 mm, e.g. \"0.01 mm\"");
        }

        return mm;
    }
}

/// <summary>Reads what <c>--net</c> gives.</summary>
internal static class DrawingNets
{
    private const double MostV = 1000;

    /// <summary>The nets, one for each option; what is wrong with them goes to the arguments.</summary>
    public static IReadOnlyList<DrawingNet> Read(IReadOnlyList<string> texts, RuleArguments arguments)
    {
        List<DrawingNet> nets = [];
        foreach (string text in texts)
        {
            if (Net(text, arguments) is DrawingNet net)
            {
                nets.Add(net);
            }
        }

        foreach (IGrouping<string, DrawingNet> layer in nets.GroupBy(n => n.Layer, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1))
        {
            arguments.Complain($"--net: layer '{layer.Key}' is given {Wording.Number(layer.Count(), 0)} times; a layer is one net");
        }

        foreach (IGrouping<string, DrawingNet> net in nets.GroupBy(n => n.Net, StringComparer.Ordinal).Where(g => g.Select(n => (n.Kind, n.VoltageV, n.PhaseDeg)).Distinct().Count() > 1))
        {
            arguments.Complain($"--net: '{net.Key}' is given different voltages, phases or kinds; all layers of one net have the same");
        }

        return nets;
    }

    private static DrawingNet? Net(string text, RuleArguments arguments)
    {
        int equals = text.IndexOf('=', StringComparison.Ordinal);
        int colon = text.LastIndexOf(':');
        if (equals < 1 || colon < equals + 2 || colon == text.Length - 1)
        {
            arguments.Complain($"--net: \"{text}\" is not LAYER=NAME:VOLTAGE, e.g. \"CU1=L:230 V\"");
            return null;
        }

        (string layer, string name, string worth) = (text[..equals], text[(equals + 1)..colon], text[(colon + 1)..].Trim());
        switch (worth)
        {
            case "earthed":
                return new(layer, name, SolidKind.Earthed, 0);
            case "touchable":
                return new(layer, name, SolidKind.Touchable, 0);
            case "floating":
                return new(layer, name, SolidKind.Floating, 0);
            default:
                break;
        }

        double? phaseDeg = null;
        int at = worth.LastIndexOf('@');
        if (at >= 0)
        {
            if (!double.TryParse(worth[(at + 1)..].Trim(), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double degrees) || degrees is < -360 or > 360)
            {
                arguments.Complain($"--net: \"{worth[at..]}\" is no phase; it is a number of degrees from -360 to 360, e.g. \"CU2=L2:230 V@120\"");
                return null;
            }

            (phaseDeg, worth) = (degrees, worth[..at].Trim());
        }

        if (!Quantity.TryParse(worth, Dimension.Voltage, out Quantity volts, out string complaint) || volts.Value is < 0 or > MostV)
        {
            arguments.Complain($"--net: {(complaint.Length > 0 ? complaint : $"\"{worth}\" is outside 0 to {Wording.Volts(MostV)}")}; or earthed, touchable, floating");
            return null;
        }

        return new(layer, name, string.Equals(name, "E", StringComparison.Ordinal) ? SolidKind.Earthed : SolidKind.Live, volts.Value) { PhaseDeg = phaseDeg };
    }
}
