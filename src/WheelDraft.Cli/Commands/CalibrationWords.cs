using System.Text.Json;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>What a calibration found, for people and for programs.</summary>
internal sealed class CalibrationWords(OutputBrief output, RingLayout ring, Calibration found)
{
    // Screw turns closer than this are none: a thousandth of a turn is below anything that a hand can do.
    private const double NoTurn = 1e-3;

    /// <summary>What was measured, mL.</summary>
    public required double MeasuredMl { get; init; }

    /// <summary>Where the screw stood, turns from the middle.</summary>
    public required double TurnedLonger { get; init; }

    /// <summary>The new file; null when none was asked for.</summary>
    public string? Written { get; init; }

    private bool Reaches => found.Screw is ScrewCorrection s && found.CorrectedS >= s.Range.ShortestS && found.CorrectedS <= s.Range.LongestS;

    /// <summary>Lines for a terminal.</summary>
    public IEnumerable<string> Lines(ReadersUnit unit)
    {
        string place = ring.Adjust is null ? "" : TurnedLonger == 0 ? ", its screw in the middle" : $", its screw {Turns(Math.Abs(TurnedLonger))} {(TurnedLonger > 0 ? "longer" : "shorter")} than the middle";
        yield return $"'{output.Name}' is on for {S(found.OnS)} (as drawn{place}) and gave {Ml(MeasuredMl)}: the flow is {Flow(found.FlowLPerS)}{Against(output.FlowLPerS)}.";
        yield return $"{Ml(found.WantedMl)} take {S(found.CorrectedS)} at that flow, {S(Math.Abs(found.CorrectedS - found.OnS))} {(found.CorrectedS < found.OnS ? "less" : "more")}.";
        foreach (string line in Screw(unit))
        {
            yield return line;
        }

        yield return Written is not null ? $"wrote {Written}: the measured flow and on-times for it; next: wheeldraft check {Written}"
            : Reaches ? "With -o FILE a file for a new wheel is written, which gives the dose with its screw in the middle."
            : "With -o FILE a file for a new wheel is written.";
    }

    /// <summary>One object.</summary>
    public void Write(Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("output", output.Name);
        json.WriteNumber("measured_ml", Math.Round(MeasuredMl, 6));
        json.WriteNumber("wanted_ml", Math.Round(found.WantedMl, 6));
        json.WriteNumber("on_s", Math.Round(found.OnS, 6));
        json.WriteNumber("flow_l_per_min", Math.Round(found.FlowLPerS * 60, 6));
        if (output.FlowLPerS is double file)
        {
            json.WriteNumber("file_flow_l_per_min", Math.Round(file * 60, 6));
        }

        json.WriteNumber("corrected_on_s", Math.Round(found.CorrectedS, 6));
        if (found.Screw is ScrewCorrection screw)
        {
            json.WriteStartObject("screw");
            json.WriteString("name", ring.Adjust!.Asked.Screw);
            json.WriteNumber("turns_longer", Math.Round(screw.Turns, 6));
            json.WriteNumber("moves_out_mm", Math.Round(OutMm(screw.Turns), 6));
            json.WriteNumber("on_s", Math.Round(screw.OnS, 6));
            json.WriteBoolean("reaches", Reaches);
            json.WriteStartArray("turns_left");
            json.WriteNumberValue(Math.Round(screw.Left.Shorter, 6));
            json.WriteNumberValue(Math.Round(screw.Left.Longer, 6));
            json.WriteEndArray();
            json.WriteStartArray("range_s");
            json.WriteNumberValue(Math.Round(screw.Range.ShortestS, 6));
            json.WriteNumberValue(Math.Round(screw.Range.LongestS, 6));
            json.WriteEndArray();
            json.WriteEndObject();
        }

        if (Written is not null)
        {
            json.WriteString("file", Written);
        }

        json.WriteEndObject();
    }

    private IEnumerable<string> Screw(ReadersUnit unit)
    {
        if (found.Screw is not ScrewCorrection screw)
        {
            yield return $"'{output.Name}' has no adjusting screw: its on-time is in the copper.";
            yield break;
        }

        double outMm = OutMm(screw.Turns);
        yield return Math.Abs(screw.Turns) < NoTurn
            ? $"Its {ring.Adjust!.Asked.Screw} screw stays where it is."
            : unit.Words($"Turn its {ring.Adjust!.Asked.Screw} screw by {Turns(Math.Abs(screw.Turns))}, so that its contact moves {Wording.Mm(Math.Abs(outMm))} toward the {(outMm > 0 ? "rim" : "shaft")}: then it is on for {S(screw.OnS)}. The supply isolated and proved dead: the screw is as live as its strip.");
        if (!Reaches)
        {
            yield return $"That is the end of its travel: it reaches {S(screw.Range.ShortestS)} to {S(screw.Range.LongestS)}, and {S(found.CorrectedS)} would be needed; the dose stays at {Ml(screw.OnS * found.FlowLPerS * 1000)}.";
        }
        else
        {
            yield return $"Before that it has {Turns(Math.Abs(screw.Left.Shorter))} left to the short end and {Turns(screw.Left.Longer)} to the long one.";
        }
    }

    private double OutMm(double turnsLonger) =>
        turnsLonger * ring.Adjust!.Asked.ScrewPitchMm * ring.Adjust.Asked.Lever * (ring.Adjust.Asked.Longer == LongerWay.Out ? 1 : -1);

    private string Against(double? fileLPerS) => fileLPerS is not double file ? ""
        : $", {Wording.Number(Math.Abs((found.FlowLPerS / file) - 1) * 100, 1)} % {(found.FlowLPerS >= file ? "more" : "less")} than the {Flow(file)} of the file";

    private static string S(double seconds) => Wording.Seconds(seconds);

    private static string Ml(double ml) => Wording.Number(ml, 2) + " mL";

    private static string Flow(double litresPerS) => Wording.Number(litresPerS * 60, 4) + " L/min";

    private static string Turns(double turns) => $"{Wording.Number(turns, 2)} turn{(Math.Round(turns, 2) == 1 ? "" : "s")}";
}
