using System.Text.Json;
using WheelDraft.Drawing;
using WheelDraft.Engineering;

namespace WheelDraft.Cli;

/// <summary>A comparison as JSON.</summary>
internal static class CompareJson
{
    /// <summary>The whole result.</summary>
    public static void Write(Utf8JsonWriter json, Design design, IReadOnlyList<(string Log, BenchComparison Wheel)> wheels, BatchStudy? batch)
    {
        json.WriteStartObject();
        json.WriteString("verdict", wheels.Any(w => w.Wheel.Misses) ? "misses" : "meets");
        json.WriteStartArray("wheels");
        foreach ((string log, BenchComparison wheel) in wheels)
        {
            Write(json, design, log, wheel);
        }

        json.WriteEndArray();
        if (batch is not null)
        {
            json.WriteStartArray("batch");
            for (int i = 0; i < batch.Figures.Count; i++)
            {
                Write(json, design, batch.Figures[i], batch.Shares[i]);
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Design design, string log, BenchComparison wheel)
    {
        json.WriteStartObject();
        json.WriteString("log", log);
        json.WriteString("verdict", wheel.Misses ? "misses" : "meets");
        Write(json, "turn_time", wheel.TurnTime);
        json.WriteStartArray("on");
        foreach (ComparedPeriod period in wheel.Periods)
        {
            json.WriteStartObject();
            json.WriteString("output", design.Brief.Outputs[period.Output].Name);
            json.WriteNumber("period", period.Period + 1);
            Write(json, "start", period.Start);
            Write(json, "for", period.On);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStrings("missing", wheel.Missing);
        json.WriteStartArray("causes");
        foreach (BenchFault fault in wheel.Faults)
        {
            json.WriteStartObject();
            json.WriteString("cause", NameOf(fault.Kind));
            if (fault.Output is int output)
            {
                json.WriteString("output", design.Brief.Outputs[output].Name);
            }

            if (fault.Edge is EdgeResidual edge)
            {
                json.WriteNumber("period", edge.Period + 1);
                json.WriteString("edge", edge.IsMake ? "make" : "break");
            }

            Number(json, fault.Kind == BenchFaultKind.Scaled ? "share" : "seconds", fault.Value);
            Number(json, "uncertainty", fault.Uncertainty);
            json.WriteString("message", fault.Words);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("screws");
        foreach (ScrewTurns screw in wheel.Screws)
        {
            json.WriteStartObject();
            json.WriteString("output", design.Brief.Outputs[screw.Output].Name);
            Number(json, "turns", screw.Turns);
            Number(json, "uncertainty_turns", screw.UncertaintyTurns);
            json.WriteString("wiper", screw.MovesIn ? "in" : "out");
            json.WriteBoolean("within_travel", screw.IsWithin);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStrings("notes", CompareWords.Notes(design, wheel));
        json.WriteEndObject();
    }

    private static string NameOf(BenchFaultKind kind) => kind switch
    {
        BenchFaultKind.Scaled => "frequency",
        BenchFaultKind.WheelShifted => "wheel",
        BenchFaultKind.WiperMisplaced => "wiper",
        BenchFaultKind.PatchLength => "patch",
        BenchFaultKind.EdgeOff => "edge",
        _ => "several",
    };

    private static void Write(Utf8JsonWriter json, string key, BenchFigure figure)
    {
        json.WriteStartObject(key);
        Number(json, "wanted_s", figure.WantedS);
        Number(json, "measured_s", figure.Measured.MeanS);
        Number(json, "spread_s", figure.Measured.SpreadS);
        json.WriteNumber("readings", figure.Measured.Count);
        Number(json, "uncertainty_s", figure.Measured.UncertaintyS);
        Number(json, "least_s", figure.LeastS);
        Number(json, "most_s", figure.MostS);
        json.WriteString("verdict", CompareWords.Of(figure.Verdict).ToLowerInvariant());
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, Design design, BatchFigure figure, IReadOnlyList<SpreadShare> shares)
    {
        json.WriteStartObject();
        json.WriteString("output", design.Brief.Outputs[figure.Output].Name);
        json.WriteNumber("period", figure.Period + 1);
        Number(json, "mean_s", figure.MeanS);
        Number(json, "spread_s", figure.SpreadS);
        if (figure.SpreadS > 0)
        {
            Number(json, "cp", figure.Cp);
            Limits(json, "cp_95", figure.CpLimits);
            Number(json, "cpk", figure.Cpk);
            Limits(json, "cpk_95", figure.CpkLimits);
        }

        Limits(json, "control_s", figure.ControlLimits);
        json.WriteStartArray("outside");
        foreach (int wheel in figure.Outside)
        {
            json.WriteNumberValue(wheel + 1);
        }

        json.WriteEndArray();
        json.WriteStartArray("spread_by");
        foreach (SpreadShare share in shares)
        {
            json.WriteStartObject();
            json.WriteString("cause", share.Cause);
            Number(json, "share", share.Share);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Limits(Utf8JsonWriter json, string key, (double Low, double High) limits)
    {
        json.WriteStartArray(key);
        json.WriteNumberValue(Math.Round(limits.Low, 6) + 0.0);
        json.WriteNumberValue(Math.Round(limits.High, 6) + 0.0);
        json.WriteEndArray();
    }

    private static void Number(Utf8JsonWriter json, string key, double value) => json.WriteNumber(key, Math.Round(value, 6) + 0.0);
}
