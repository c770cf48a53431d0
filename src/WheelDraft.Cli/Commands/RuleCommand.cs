using System.CommandLine;
using System.Text.Json;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>A spacing rule without a parameter file: what is asked for, the distance with the table rows used comes out.</summary>
internal sealed class RuleCommand : ICommand
{
    private readonly Option<string> _voltage = new("--voltage") { HelpName = "V", Description = "Clearance: supply voltage, r.m.s., line to neutral. Creepage: r.m.s. voltage across the path" };
    private readonly Option<string> _category = new("--category") { HelpName = "I|II|III|IV", Description = "Overvoltage category of the supply" };
    private readonly Option<string> _impulse = new("--impulse") { HelpName = "V", Description = "Impulse voltage, peak, instead of voltage and category" };
    private readonly Option<string> _degree = new("--degree") { HelpName = "1|2|3", Description = "Pollution degree at the insulation" };
    private readonly Option<string> _group = new("--group") { HelpName = "I|II|IIIa|IIIb", Description = "Material group of the surface" };
    private readonly Option<string> _insulation = new Option<string>("--insulation") { HelpName = "GRADE", Description = "functional, basic, supplementary or reinforced", DefaultValueFactory = _ => "basic" }.Suggesting(RuleArguments.Insulations.Select(i => i.Word));
    private readonly Option<string> _altitude = new("--altitude") { HelpName = "H", Description = "Height above sea level", DefaultValueFactory = _ => "0 m" };
    private readonly Option<string> _standard = new Option<string>("--standard") { HelpName = "NAME", Description = "\"IEC 60664-1\" or \"IEC 60335-1\"", DefaultValueFactory = _ => "IEC 60664-1" }.Suggesting(RuleArguments.Standards.Select(s => s.Word));
    private readonly Option<string> _overVoltages = new("--over-voltages") { HelpName = "none|temporary", Description = "What counts in addition to impulse and working peak: temporary over-voltages of the supply, its voltage + 1200 V r.m.s., or none", DefaultValueFactory = _ => "none" };
    private Command? _clearance;

    /// <inheritdoc/>
    public Command Describe()
    {
        _clearance = new Command("clearance", "The clearance that a supply, or an impulse voltage, asks") { _voltage, _category, _impulse, _degree, _insulation, _altitude, _overVoltages, _standard };
        Command creepage = new("creepage", "The creepage distance that a voltage asks") { _voltage, _degree, _group, _insulation, _standard };
        return new Command("rule", "Shows a required clearance or creepage distance, with the table rows used") { _clearance, creepage };
    }

    /// <inheritdoc/>
    public int Run(ParseResult parsed, CommandContext context)
    {
        RuleAnswer answer = Answer(parsed);
        if (context.Json)
        {
            context.WriteJson(w => Write(w, answer.Requirement));
        }
        else
        {
            foreach (string line in answer.Lines())
            {
                context.Out.WriteLine(line);
            }
        }

        return ExitStatus.Done;
    }

    private RuleAnswer Answer(ParseResult parsed)
    {
        try
        {
            return ReferenceEquals(parsed.CommandResult.Command, _clearance) ? Clearance(parsed) : Creepage(parsed);
        }
        catch (RuleRefusedException refusal)
        {
            throw new DesignRefusedException([refusal.ToFinding()]);
        }
    }

    private RuleAnswer Clearance(ParseResult parsed)
    {
        RuleArguments arguments = new();
        ImpulseSource? impulse = Impulse(parsed, arguments);
        int degree = Degree(parsed, arguments);
        Insulation insulation = arguments.Choice(_insulation.Name, parsed.GetValue(_insulation), RuleArguments.Insulations);
        double altitudeM = arguments.Metres(_altitude.Name, parsed.GetValue(_altitude));
        SpacingStandard standard = arguments.Choice(_standard.Name, parsed.GetValue(_standard), RuleArguments.Standards);
        OverVoltages over = arguments.Choice(_overVoltages.Name, parsed.GetValue(_overVoltages), RuleArguments.OverVoltageWords);
        if (over == OverVoltages.Temporary && impulse is GivenImpulse)
        {
            arguments.Complain("--over-voltages temporary follows from the supply's voltage; give --voltage and --category in place of --impulse");
        }

        arguments.ThrowIfFaulty();
        return RuleAnswer.OfClearance(standard, new ClearanceQuery(impulse!, insulation, degree) { AltitudeM = altitudeM, OverVoltages = over });
    }

    private ImpulseSource? Impulse(ParseResult parsed, RuleArguments arguments)
    {
        string? voltage = parsed.GetValue(_voltage);
        string? category = parsed.GetValue(_category);
        string? impulse = parsed.GetValue(_impulse);
        if (impulse is not null)
        {
            if (voltage is not null || category is not null)
            {
                arguments.Complain("--impulse stands instead of --voltage and --category; give the one or the others");
            }

            double impulseV = arguments.Volts(_impulse.Name, impulse);
            return arguments.AreFaulty ? null : new GivenImpulse(impulseV);
        }

        if (voltage is null || category is null)
        {
            arguments.Complain("a clearance needs --voltage and --category (e.g. --voltage \"230 V\" --category II), or --impulse (e.g. --impulse \"4 kV\")");
        }

        double voltageV = arguments.Volts(_voltage.Name, voltage);
        OvervoltageCategory which = arguments.Choice(_category.Name, category, RuleArguments.Categories);
        return arguments.AreFaulty ? null : new SupplyImpulse(voltageV, which);
    }

    private int Degree(ParseResult parsed, RuleArguments arguments)
    {
        arguments.Need(_degree.Name, parsed.GetValue(_degree), "the pollution degree at the insulation, which decides the table's column, e.g. --degree 3 where dew or dust settles");
        return arguments.Choice(_degree.Name, parsed.GetValue(_degree), RuleArguments.Degrees);
    }

    private RuleAnswer Creepage(ParseResult parsed)
    {
        RuleArguments arguments = new();
        arguments.Need(_voltage.Name, parsed.GetValue(_voltage), "the r.m.s. voltage across the path, e.g. --voltage \"250 V\"");
        arguments.Need(_group.Name, parsed.GetValue(_group), "the material group of the surface, which decides the table's column, e.g. --group IIIb where it is not known");
        double voltageV = arguments.Volts(_voltage.Name, parsed.GetValue(_voltage));
        int degree = Degree(parsed, arguments);
        MaterialGroup group = arguments.Choice(_group.Name, parsed.GetValue(_group), RuleArguments.Groups);
        Insulation insulation = arguments.Choice(_insulation.Name, parsed.GetValue(_insulation), RuleArguments.Insulations);
        SpacingStandard standard = arguments.Choice(_standard.Name, parsed.GetValue(_standard), RuleArguments.Standards);
        arguments.ThrowIfFaulty();
        return RuleAnswer.OfCreepage(standard, new CreepageQuery(voltageV, insulation, degree, group));
    }

    private static void Write(Utf8JsonWriter writer, Requirement requirement)
    {
        writer.WriteStartObject();
        writer.WriteNumber("required_mm", Math.Round(requirement.RequiredMm, 6));
        if (requirement.ImpulseV is { } impulseV)
        {
            writer.WriteNumber("impulse_v", impulseV);
        }

        writer.WriteString("basis", requirement.Basis);
        writer.WriteStrings("steps", requirement.Steps);
        writer.WriteString("confidence", requirement.ConfidenceInWords);
        writer.WriteEndObject();
    }
}
