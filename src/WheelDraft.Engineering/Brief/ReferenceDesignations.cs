using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>Reference designations of strips, inputs, loads and motor: as the file gives them, else by the letter codes of IEC 81346-2 and a number.</summary>
/// <remarks>Classes from memory (IEC 81346-2:2019): B, what turns a quantity into a signal: inputs; Q, what switches a flow of energy: contacts of the wheel;
/// X, what connects: the feed's and plain strips; M, what drives: the motor; E for loads, because the file does not say what a load is: heat and light are E,
/// valves and fans would be M. Numbers count within a letter, in file order, and pass over what the file gives.</remarks>
internal sealed class ReferenceDesignations
{
    private readonly Dictionary<string, string> _contacts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _strips = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _inputs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _loads = new(StringComparer.Ordinal);
    private readonly HashSet<string> _taken;

    /// <summary>The designations of a brief.</summary>
    public ReferenceDesignations(Brief brief)
    {
        _taken = new(
            brief.Strips.Select(s => s.Designation).Concat(brief.Inputs.Select(i => i.Designation)).Concat(brief.Loads.Select(l => l.Designation)).Append(brief.DriveMotor?.Designation ?? "").Where(d => d.Length > 0),
            StringComparer.OrdinalIgnoreCase);
        foreach (OutputBrief output in brief.Outputs)
        {
            string given = brief.Strips.FirstOrDefault(s => s.Task is ServesOutput { IsReturn: false } task && string.Equals(task.Output, output.Name, StringComparison.OrdinalIgnoreCase))?.Designation ?? "";
            _contacts[output.Name] = Or(given, 'Q');
        }

        Feed = brief.Feed is null ? "" : Or(brief.Strips.FirstOrDefault(s => s.Task is ServesFeed)?.Designation ?? "", 'X');
        foreach (StripBrief strip in brief.Strips)
        {
            _strips[strip.Name] = strip.Designation.Length > 0 ? strip.Designation : strip.Task switch
            {
                ServesOutput { IsReturn: false } task => _contacts.GetValueOrDefault(task.Output, ""),
                ServesFeed => Feed,
                _ => Or("", 'X'),
            };
        }

        foreach (InputBrief input in brief.Inputs)
        {
            _inputs[input.Name] = Or(input.Designation, 'B');
        }

        foreach (LoadBrief load in brief.Loads)
        {
            _loads[load.Name] = Or(load.Designation, 'E');
        }

        if (brief.DriveMotor is LoadBrief motor)
        {
            _loads[motor.Name] = Or(motor.Designation, 'M');
        }
    }

    /// <summary>The feed wiper's; empty without one.</summary>
    public string Feed { get; }

    /// <summary>An output's contact.</summary>
    public string Contact(string output) => _contacts.GetValueOrDefault(output, "");

    /// <summary>A strip's: that of the contact that it makes.</summary>
    public string Strip(string name) => _strips.GetValueOrDefault(name, "");

    /// <summary>An input's.</summary>
    public string Input(string name) => _inputs.GetValueOrDefault(name, "");

    /// <summary>A load's or the motor's.</summary>
    public string Load(string name) => _loads.GetValueOrDefault(name, "");

    private string Or(string given, char letter)
    {
        if (given.Length > 0)
        {
            return given;
        }

        for (int i = 1; ; i++)
        {
            string next = string.Create(CultureInfo.InvariantCulture, $"{letter}{i}");
            if (_taken.Add(next))
            {
                return next;
            }
        }
    }
}
