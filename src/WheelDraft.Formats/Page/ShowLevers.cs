using System.Text.Json;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Page;

/// <summary>The levers of cams as the page takes them: where they are over the turn, and what can hold them.</summary>
internal static class ShowLevers
{
    // A lift at every half degree; between them the page goes straight.
    private const int Points = 720;
    private const int Decimals = 4;

    /// <summary>One lever a cam, in file order.</summary>
    public static void Write(Utf8JsonWriter json, Design design)
    {
        json.WriteStartArray("cams");
        foreach (CamLayout cam in design.Cams)
        {
            json.WriteStartObject();
            double unit = cam.Brief.Swings ? 180 / Math.PI : 1;
            json.WriteStartArray("lift");
            for (int i = 0; i <= Points; i++)
            {
                json.WriteNumberValue(Math.Round(cam.LiftAt(Angles.TurnRad * i / Points) * unit, Decimals));
            }

            json.WriteEndArray();
            Way(json, cam.Brief.Lever);
            json.WriteStartArray("holds");
            Held(json, design, cam.Brief.Name + LeverContact.Latched, cam.Brief.Latch * unit);
            Held(json, design, cam.Brief.Name + LeverContact.Blocked, cam.Brief.Obstacle * unit);
            json.WriteEndArray();
            json.WriteStartArray("stuck");
            Stuck(json, design, cam, CircuitFaultKind.LeverStuckUp, cam.TopLift * unit);
            Stuck(json, design, cam, CircuitFaultKind.LeverStuckDown, 0);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>What a lever's contact does while something holds the lever, the latch before the obstacle.</summary>
    public static void Holds(Utf8JsonWriter json, LeverContact lever)
    {
        json.WriteStartArray("holds");
        Hold(json, lever.LatchedInput, lever.Schedule.Latched);
        Hold(json, lever.BlockedInput, lever.Schedule.Blocked);
        json.WriteEndArray();
    }

    /// <summary>Conditions of an interlock on what levers mean.</summary>
    public static void Meanings(Utf8JsonWriter json, CircuitNetwork network, InterlockBrief interlock)
    {
        json.WriteStartArray("means");
        foreach ((IReadOnlyList<string> names, bool wanted) in new[] { (interlock.WhileTrue, true), (interlock.WhileFalse, false) })
        {
            foreach (LeverContact lever in names.Select(network.LeverOf).OfType<LeverContact>())
            {
                json.WriteStartObject();
                Holds(json, lever);
                json.WriteBoolean("rest", lever.Schedule.ClosedAtRest);
                json.WriteBoolean("wanted", wanted);
                json.WriteEndObject();
            }
        }

        json.WriteEndArray();
    }

    private static void Hold(Utf8JsonWriter json, int input, LeverHold? hold)
    {
        if (input < 0 || hold is null or LeverHold.AsFree)
        {
            return;
        }

        json.WriteStartArray();
        json.WriteNumberValue(input);
        json.WriteBooleanValue(hold == LeverHold.Closed);
        json.WriteEndArray();
    }

    private static void Held(Utf8JsonWriter json, Design design, string hold, double? lift)
    {
        int input = design.Circuit.Inputs.ToList().IndexOf(hold);
        if (input < 0 || lift is not double held)
        {
            return;
        }

        json.WriteStartArray();
        json.WriteNumberValue(input);
        json.WriteNumberValue(Math.Round(held, Decimals));
        json.WriteEndArray();
    }

    // Where a lever that is stuck stays, by the number of the fault among those that a reader can switch.
    private static void Stuck(Utf8JsonWriter json, Design design, CamLayout cam, CircuitFaultKind kind, double lift)
    {
        int fault = ShowData.Faults(design).ToList().FindIndex(f => f.Kind == kind && string.Equals(f.Subject, cam.Brief.Name, StringComparison.Ordinal));
        if (fault >= 0)
        {
            json.WriteStartArray();
            json.WriteNumberValue(fault);
            json.WriteNumberValue(Math.Round(lift, Decimals));
            json.WriteEndArray();
        }
    }

    // On the screen y runs down.
    private static void Way(Utf8JsonWriter json, LeverBrief lever)
    {
        if (lever is SwingingLever swing)
        {
            Pair(json, "pivot", swing.Pivot.X, -swing.Pivot.Y);
            json.WriteNumber("sense", swing.Lifts == Turning.Anticlockwise ? 1 : -1);
        }
        else if (lever is SlidingLever slide)
        {
            Pair(json, "way", Math.Cos(slide.DirectionRad), -Math.Sin(slide.DirectionRad));
        }
    }

    private static void Pair(Utf8JsonWriter json, string key, double x, double y)
    {
        json.WriteStartArray(key);
        json.WriteNumberValue(Math.Round(x, 6));
        json.WriteNumberValue(Math.Round(y, 6));
        json.WriteEndArray();
    }
}
