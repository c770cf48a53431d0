using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Finds where the wheel can stand: where a contact of its own lets the motor go, and where an input can.</summary>
/// <remarks>Every interval of the turn in which some reachable state leaves the motor off or undecided counts as a whole; its ends
/// are moved out by the bands of the edges there, by coast and by backlash.</remarks>
internal static class StandingSearch
{
    // What the solver's rounding may leave between two nets that are joined, V.
    private const double NoVoltageV = 1e-6;

    /// <summary>The stretches, where the wheel parks first.</summary>
    public static IReadOnlyList<StandingStretch> Of(CircuitAnalysis circuit, SoundCircuit sound)
    {
        CircuitModel model = sound.Model;
        List<StandingStretch> all = [.. circuit.Parks.Select(p => Parked(p, model))];
        if (model.Motor < 0)
        {
            return all;
        }

        for (int interval = 0; interval < circuit.Intervals.Count; interval++)
        {
            int[] off = [.. Enumerable.Range(0, model.InputPositions)
                .Where(u => circuit.State(interval, u) is { IsReachable: true } state && state.Motor != LoadState.On)];
            if (off.Length > 0)
            {
                all.Add(Held(interval, off, circuit, sound));
            }
        }

        return all;
    }

    private static StandingStretch Parked(ParkedPosition park, CircuitModel model)
    {
        double backlash = model.Brief.Drive.BacklashRad;
        return Stretch(park.FromRad - park.Band.EarlierRad - backlash, park.ToRad + park.Band.LaterRad + backlash) with
        {
            Why = park.Output is string output ? $"where '{output}' lets the motor go" : "at home",
            VoltageAcross = [.. Enumerable.Range(0, model.Contacts.Count)],
        };
    }

    private static StandingStretch Held(int interval, int[] off, CircuitAnalysis circuit, SoundCircuit sound)
    {
        CircuitModel model = sound.Model;
        CircuitInterval at = circuit.Intervals[interval];
        double before = BandAt(model, at.FromRad, b => b.EarlierRad);
        double after = BandAt(model, at.FromRad + at.LengthRad, b => b.LaterRad);
        double backlash = model.Brief.Drive.BacklashRad;
        double to = at.FromRad + at.LengthRad + after + model.Brief.Drive.Coast.MostRad + backlash;
        return Stretch(at.FromRad - before - backlash, to) with
        {
            Why = "where an input can leave the motor off",
            VoltageAcross = [.. Enumerable.Range(0, model.Contacts.Count).Where(c => off.Any(u => HasVoltage(sound, interval, u, model.Contacts[c])))],
        };
    }

    private static bool HasVoltage(SoundCircuit sound, int interval, int inputs, NetworkElement contact)
    {
        double?[] nodes = sound.NodesV(interval, inputs);
        return nodes[contact.A] is not double a || nodes[contact.B] is not double b || Math.Abs(a - b) > NoVoltageV;
    }

    // The widest band of the edges at an angle.
    private static double BandAt(CircuitModel model, double atRad, Func<EdgeBand, double> side) => model.Schedules
        .SelectMany(s => s.Periods)
        .SelectMany(p => new[] { (At: p.Closed.StartRad, Band: p.Make), (At: p.Closed.EndRad, Band: p.Break) })
        .Where(e => Math.Abs(Angles.Signed(e.At - atRad)) < TurnPositions.SameAngleRad)
        .Select(e => side(e.Band)).DefaultIfEmpty(0).Max();

    private static StandingStretch Stretch(double fromRad, double toRad)
    {
        double from = Angles.InTurn(fromRad);
        return new(from, from + Math.Min(toRad - fromRad, Angles.TurnRad)) { Why = "", VoltageAcross = [] };
    }
}
