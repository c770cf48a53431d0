using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

// The chapter "Circuit/Metering": what a meter reads on a timer that is not live. It knows the solved circuit and nothing of drawings.

/// <summary>What a meter reads between the terminals of the strips while the wheel is turned by hand: supply off, every wire pulled from the strips.</summary>
/// <remarks>Without wires each terminal is its own wiper's, so a reading shows one contact and nothing that lies beside it: no coil, no sensor.</remarks>
/// <param name="Pairs">The two terminals of each contact, in file order of the outputs.</param>
/// <param name="Rows">The turn from home on, a row for each stretch in which no contact changes; the first one contains home.</param>
internal sealed record ColdTest(IReadOnlyList<ColdPair> Pairs, IReadOnlyList<ColdRow> Rows)
{
    // Sure angles are whole tenths of a degree, drawn in: a protractor shows no less, and no reading is promised that the next tenth may refute.
    private const double StepsPerDeg = 10;

    // An angle this near to a whole tenth is that tenth, in tenths: the rounding of angles, a thousandth of what can be read.
    private const double SameStep = 1e-6;

    /// <summary>Works it out from a circuit's contacts with their worst-case bands.</summary>
    public static ColdTest Of(CircuitAnalysis circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        bool isWindowed = circuit.Network.WheelNode >= 0;
        IReadOnlyList<ContactSchedule> contacts = circuit.Request.Contacts;
        IReadOnlyList<TurnStretch<string>> stretches = circuit.Stretches(i => string.Concat(contacts.Select(c => circuit.Intervals[i].Closed.Contains(c.Output, StringComparer.Ordinal) ? '1' : '0')));
        int home = Enumerable.Range(0, stretches.Count).First(i => Angles.InTurn(-stretches[i].FromRad) < stretches[i].LengthRad);
        MadeEdge[] edges = [.. contacts.Where(c => !c.IsAlways).SelectMany(c => c.Periods).SelectMany(p => (MadeEdge[])[new(p.Closed.StartRad, p.Make), new(p.Closed.EndRad, p.Break)])];
        return new(
            [.. contacts.Select(c => new ColdPair(isWindowed ? FeedName : $"{c.Output} return", c.Output))],
            [.. Enumerable.Range(0, stretches.Count).Select(i => Row(stretches[(home + i) % stretches.Count], edges))]);
    }

    /// <summary>What the terminal of the feed is called.</summary>
    public const string FeedName = "feed";

    private readonly record struct MadeEdge(double AtRad, EdgeBand Band);

    private static ColdRow Row(TurnStretch<string> stretch, IReadOnlyList<MadeEdge> edges)
    {
        bool[] closed = [.. stretch.Value.Select(c => c == '1')];
        ColdRow row = new(Angles.InTurn(stretch.FromRad), stretch.LengthRad, closed);
        if (edges.Count == 0)
        {
            return row with { SureDeg = (0, 360) };
        }

        // Every edge lies before the stretch, at most a turn back, and after it: none lies within.
        double[] after = [.. edges.Select(e => Ahead(e.AtRad - stretch.FromRad, stretch.LengthRad))];
        double from = edges.Select((e, i) => after[i] - Angles.TurnRad + e.Band.LaterRad).Max();
        double to = edges.Select((e, i) => after[i] - e.Band.EarlierRad).Min();
        double fromStep = Math.Ceiling((Angles.DegFromRad(stretch.FromRad + Math.Max(0, from)) * StepsPerDeg) - SameStep);
        double toStep = Math.Floor((Angles.DegFromRad(stretch.FromRad + Math.Min(stretch.LengthRad, to)) * StepsPerDeg) + SameStep);
        return toStep < fromStep ? row : row with { SureDeg = (InTurnDeg(fromStep / StepsPerDeg), InTurnDeg(toStep / StepsPerDeg)) };
    }

    // How far ahead of the stretch's start an edge lies, from its end on to its start a turn later. Edges that are one by rounding are the stretch's own ends.
    private static double Ahead(double rad, double lengthRad)
    {
        const double sameRad = 1e-9;
        double ahead = Angles.InTurn(rad);
        return ahead > Angles.TurnRad - sameRad || ahead < lengthRad - sameRad ? Angles.TurnRad : ahead;
    }

    private static double InTurnDeg(double deg) => Math.Round(deg - (360 * Math.Floor(deg / 360)), 1);
}

/// <summary>The two terminals of a contact.</summary>
/// <param name="First">The feed, or the second wiper of a ring of lands.</param>
/// <param name="Second">The output's own wiper.</param>
internal readonly record struct ColdPair(string First, string Second);

/// <summary>One stretch of the turn.</summary>
/// <param name="FromRad">Programme angle of its start, edges where they should be, in [0, 2π).</param>
/// <param name="LengthRad">How long it is.</param>
/// <param name="Closed">Whether each pair of terminals reads closed.</param>
internal sealed record ColdRow(double FromRad, double LengthRad, IReadOnlyList<bool> Closed)
{
    /// <summary>Programme angles between which it reads so whatever the tolerances do, degrees in [0, 360) in whole tenths, the second less than the
    /// first where home lies between; (0, 360) for the whole turn; null when no angle is sure.</summary>
    public (double From, double To)? SureDeg { get; init; }
}
