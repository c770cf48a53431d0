using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A stretch of programme angles at which the wheel can come to stand in a reachable state.</summary>
/// <remarks>Its ends are on the unsafe side: worst-case bands of the edges, coast and backlash are counted, so it is never
/// shorter than what can happen. Stretches may overlap. A fault is not counted: a stalled motor or a slipped wheel stands at any
/// angle; a supply that is lost leaves no voltage, and when it comes back the motor goes on wherever it is fed.</remarks>
/// <param name="FromRad">Where it begins, in [0, 2π).</param>
/// <param name="ToRad">Where it ends, at least where it begins, at most a turn on; past 2π when it runs across home.</param>
public sealed record StandingStretch(double FromRad, double ToRad)
{
    /// <summary>Why the wheel stands there, in plain words: "where 'run' lets go", "where 'thermostat' can open".</summary>
    public required string Why { get; init; }

    /// <summary>Outputs, by index in file order, whose contact is open there, or may be, with more than 1e-6 V across it in some such state.</summary>
    public required IReadOnlyList<int> VoltageAcross { get; init; }
}

/// <summary>Joins the places of rest to stretches, with the contacts that have voltage across them.</summary>
internal static class StandingStretches
{
    /// <summary>All stretches of a circuit, by angle.</summary>
    public static IReadOnlyList<StandingStretch> Of(SoundCircuit sound) =>
        sound.Motion.Resting is { } resting ? WithMotor(sound, resting) : WithoutMotor(sound.Model);

    private static List<StandingStretch> WithMotor(SoundCircuit sound, RestingPlaces resting)
    {
        ContactVoltages voltages = new(sound);
        List<StandingStretch> stretches = [];
        foreach (RestingPlace place in resting.Places)
        {
            stretches.Add(Widened(sound.Model, place.FromRad, place.ToRad, place.Why, voltages.At(place.Position)));
        }

        // Where not every order of edges was followed it is not known whether the motor runs, nor which contacts are closed.
        int[] every = [.. Enumerable.Range(0, sound.Model.Outputs).Where(c => !sound.Model.Schedules[c].IsAlways)];
        double coast = sound.Model.Brief.Drive.Coast.MostRad;
        stretches.AddRange(sound.Model.Turn.UnexploredSpans
            .Select(s => Widened(sound.Model, s.FromRad, s.ToRad + coast, "where edges may come in more orders than were followed", every)));
        return Joined(stretches);
    }

    // Nothing says where it stops but home and the coast, and nothing says what is live: every contact that may be open counts.
    private static List<StandingStretch> WithoutMotor(CircuitModel model)
    {
        Coast coast = model.Brief.Drive.Coast;
        StandingStretch home = Widened(model, coast.LeastRad, coast.MostRad, "at home", []);
        CircleArc arc = CircleArc.Sweep(home.FromRad, Math.Min(Angles.TurnRad, home.ToRad - home.FromRad + TurnPositions.SameAngleRad));
        HashSet<int> atHome = [.. model.Turn.AtHome()];
        TurnPosition[] there = [.. model.Turn.Positions.Where((p, i) => atHome.Contains(i) || p.MayLieIn(arc, 0))];
        return [home with { VoltageAcross = [.. Enumerable.Range(0, model.Outputs).Where(c => there.Any(p => !BitRow.Has(p.Closed, c)))] }];
    }

    private static StandingStretch Widened(CircuitModel model, double fromRad, double toRad, string why, IReadOnlyList<int> across)
    {
        double backlash = model.Brief.Drive.BacklashRad;
        double sweep = toRad - fromRad + (2 * backlash);
        double from = sweep >= Angles.TurnRad ? 0 : Angles.InTurn(fromRad - backlash);
        return new StandingStretch(from, from + Math.Min(sweep, Angles.TurnRad)) { Why = why, VoltageAcross = across };
    }

    private static List<StandingStretch> Joined(List<StandingStretch> stretches)
    {
        List<StandingStretch> joined = [];
        foreach (IGrouping<(string, string), StandingStretch> alike in stretches.GroupBy(s => (s.Why, string.Join(' ', s.VoltageAcross))))
        {
            joined.AddRange(JoinedAlike([.. alike.OrderBy(s => s.FromRad).ThenBy(s => s.ToRad)]));
        }

        return [.. joined.OrderBy(s => s.FromRad).ThenBy(s => s.Why, StringComparer.Ordinal).ThenBy(s => s.ToRad)];
    }

    // Stretches that overlap or touch become one, through home too.
    private static List<StandingStretch> JoinedAlike(IReadOnlyList<StandingStretch> sorted)
    {
        List<StandingStretch> joined = [];
        foreach (StandingStretch next in sorted)
        {
            if (joined.Count > 0 && next.FromRad <= joined[^1].ToRad + TurnPositions.SameAngleRad)
            {
                joined[^1] = joined[^1] with { ToRad = Math.Max(joined[^1].ToRad, next.ToRad) };
            }
            else
            {
                joined.Add(next);
            }
        }

        while (joined.Count > 1 && joined[^1].ToRad - Angles.TurnRad >= joined[0].FromRad - TurnPositions.SameAngleRad)
        {
            joined[^1] = joined[^1] with { ToRad = Math.Max(joined[^1].ToRad, joined[0].ToRad + Angles.TurnRad) };
            joined.RemoveAt(0);
        }

        return [.. joined.Select(s => s.ToRad - s.FromRad >= Angles.TurnRad - TurnPositions.SameAngleRad ? s with { FromRad = 0, ToRad = Angles.TurnRad } : s)];
    }
}
