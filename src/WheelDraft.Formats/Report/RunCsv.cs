using System.Text;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>A played scenario as CSV: a row each moment, a column each input, contact and load.</summary>
internal static class RunCsv
{
    /// <summary>Writes it: UTF-8, LF, columns time_s, angle_deg, turns, event, turning, then 0 or 1 each, loads on, off or undecided and their volts.</summary>
    public static byte[] Write(Design design, ScenarioRun run)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(run);
        CircuitAnalysis circuit = design.Circuit;
        string[] contacts = [.. circuit.Request.Contacts.Select(c => c.Output)];
        StringBuilder csv = new();
        CsvText.Row(csv,
        [
            "time_s", "angle_deg", "turns", "event", "turning",
            .. circuit.Inputs.Concat(circuit.Levers.Select(l => l.Input)).Select(i => $"input {i}"),
            .. contacts.Select(c => $"contact {c}"),
            .. circuit.Loads.Select(l => $"load {l}"),
            .. circuit.Loads.Select(l => $"volts {l}"),
        ]);
        foreach (RunMoment m in run.Moments)
        {
            CsvText.Row(csv,
            [
                Wording.Number(m.TimeS, 6),
                Wording.Number(Geometry.Angles.DegFromRad(m.AngleRad), 6),
                Wording.Number(m.Turns, 0),
                m.What,
                Flag(m.IsTurning),
                .. circuit.Inputs.Concat(circuit.Levers.Select(l => l.Input)).Select(i => Flag(m.ClosedInputs.Contains(i, StringComparer.Ordinal))),
                .. contacts.Select(c => Flag(m.Closed.Contains(c, StringComparer.Ordinal))),
                .. m.Loads.Select(StateWord),
                .. m.VoltsV.Select(v => double.IsFinite(v) ? Wording.Number(v, 3) : ""),
            ]);
        }

        return Encoding.UTF8.GetBytes(csv.ToString());
    }

    /// <summary>A load's state as reports write it.</summary>
    public static string StateWord(LoadState state) => state switch
    {
        LoadState.On => "on",
        LoadState.Off => "off",
        _ => "undecided",
    };

    private static string Flag(bool holds) => holds ? "1" : "0";
}
