using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Report;

namespace WheelDraft.Formats.Guide;

/// <summary>The plan for proving a made timer on the bench: what to join, what must happen and what must not, with places to tick.</summary>
internal static class BenchPlan
{
    /// <summary>A box to tick; as letters, because every alphabet has them.</summary>
    public const string Tick = "[  ]";

    // More positions of the inputs than these are not tabled one by one.
    private const int MostInputs = 4;

    /// <summary>The whole plan.</summary>
    public static BuildingGuide Of(Design design) => new($"Bench test: {design.Brief.Title}", Cautions.Short(design),
    [
        Before(design),
        SettingUp(design),
        Log(design),
        Times(design),
        Lamps(design),
        .. InterlockTests.Of(design),
        After(design),
    ]);

    private static GuideChapter Before(Design design) => new("Before you begin",
    [
        .. design.Meets ? [] : (GuideBlock[])[new GuideCautions(["MISSES. This design misses a rule; report.md says which. A test on the bench does not mend that."])],
        new GuideCautions(
        [
            .. Cautions.For(design),
            .. design.Brief.Supply.IsExtraLow ? (string[])[] :
            [
                "Every step under supply is done through an isolating transformer and a residual-current device, with its fuse, by a qualified person or with one beside you. One hand, no jewellery, leads clipped on while it is dead.",
                "Behind an isolating transformer a first fault to earth trips nothing: test the protective conductor before, dead, and do not join earth to the secondary.",
                "Isolate and prove dead before every change of a lead.",
            ],
        ]),
        new GuideList(
        [
            $"The test with a meter of build.md is passed. {Tick}",
            $"Part, drawings and this plan carry the same mark{(design.Brief.InputMark.Length > 0 ? " " + design.Brief.InputMark : "")}. {Tick}",
            "Serial number of the part: ________  Tested by: ________  Date: ________",
        ]),
    ]);

    private static GuideChapter SettingUp(Design design)
    {
        bool low = design.Brief.Supply.IsExtraLow;
        List<string> items =
        [
            low ? $"A safety transformer of {Wording.Volts(design.Brief.Supply.VoltageV)}, fused." : $"An isolating transformer for {Wording.Volts(design.Brief.Supply.VoltageV)}, fused, with a residual-current device before it.",
            "A true r.m.s. voltmeter for the category of the supply, leads and clips likewise.",
            $"A frequency meter or a clock that does not count the mains: the motor keeps step with {Wording.Number(design.Brief.Supply.FrequencyHz, 3)} Hz, and so would a mains clock. Frequency during the test: ________ Hz",
            $"A logger with an input for each output: {ShoppingList.Names(design.Brief.Outputs.Select(o => o.Name))}. Twenty milliseconds a row or finer; its inputs isolated from each other and fit for the supply.",
            design.Brief.Loads.Count > 0
                ? $"Instead of the loads a lamp each for {Wording.Volts(design.Brief.Supply.VoltageV)}, 5 to 15 W, labelled: {ShoppingList.Names(design.Brief.Loads.Select(l => l.Name))}. A lamp that is faintly lit is neither on nor off: note its voltage."
                : "The file gives no loads: a lamp from each output to neutral.",
            design.Brief.Inputs.Count > 0
                ? $"Instead of sensors a switch each, labelled: {ShoppingList.Names(design.Brief.Inputs.Select(i => i.Name))}."
                : "No sensors are in the circuit.",
            design.Brief.DriveMotor is null ? "The wheel's own motor, joined to the supply." : "The wheel's own motor stays where it is: it is what times everything.",
        ];
        return new("Instruments and set-up",
        [
            new GuideList([.. items.Select(i => $"{i} {Tick}")]),
            new GuideTable(
                "Joins",
                [new("What"), new("Between"), new("Done")],
                [
                    .. design.Brief.Loads.Select(l => (IReadOnlyList<string>)[$"lamp '{l.Name}'", $"{l.From} – {l.To}", Tick]),
                    .. design.Brief.Inputs.Select(i => (IReadOnlyList<string>)[$"switch '{i.Name}'{(i.ClosedWhen is string when ? $", closed: {when}" : "")}", $"{i.From} – {i.To}", Tick]),
                    .. design.Brief.Outputs.Select(o => (IReadOnlyList<string>)[$"logger column '{o.Name}'", $"{o.Net} – {(string.Equals(design.Brief.OtherNetOf(o), "N", StringComparison.Ordinal) ? "L" : "N")}", Tick]),
                ]),
            new GuideCautions(["Lamps instead of loads show the contacts' times and the circuit's logic. They do not prove that a contact breaks what the real load draws: a coil or a motor breaks harder than a lamp."]),
        ]);
    }

    private static GuideChapter Log(Design design)
    {
        double most = design.Motion.TurnTimeS / (1 - design.Brief.Supply.FrequencyToleranceShare), least = design.Motion.TurnTimeS / (1 + design.Brief.Supply.FrequencyToleranceShare);
        return new("Record",
        [
            new GuideList(
            [
                $"Set the switches so that the motor runs on without a stop. {Tick}",
                $"Record three turns or more, at least {Wording.Number(Math.Ceiling(3.2 * most), 0)} s; begin anywhere. Columns as in bench-log.csv: time_s and one an output, 0 and 1, or volts. {Tick}",
                $"Turning {SheetWordsOf.Turns(design)} seen from the wiper side. {Tick}",
                $"One turn takes {Wording.Number(least, 2)} to {Wording.Number(most, 2)} s, {Wording.Number(design.Motion.TurnTimeS, 2)} s at {Wording.Number(design.Brief.Supply.FrequencyHz, 3)} Hz. Measured: ________ s {Tick}",
                $"Hold the log against the file: wheeldraft compare FILE.toml LOG.csv. It gives every time with its uncertainty, names what is wrong and says how far to turn a screw. {Tick}",
            ], IsNumbered: true),
        ]);
    }

    private static GuideChapter Times(Design design) => new("Times to be met",
    [
        new GuideTable(
            "Starts after home and on-times; starts over all tolerances, on-times as the file asks",
            [
                new("Output"), new("Starts, s", TextAlong.End), new("least", TextAlong.End), new("most", TextAlong.End), new("Measured"),
                new("On, s", TextAlong.End), new("least", TextAlong.End), new("most", TextAlong.End), new("Measured"), new("Met"),
            ],
            [.. design.Wheel.Rings.SelectMany((ring, o) => Rows(design, ring, design.Brief.Outputs[o]))]),
        .. design.Circuit.Parks.Count > 0
            ? [new GuideWords($"With every switch open after a start it comes to rest {string.Join(", or ", design.Circuit.Parks.Select(p => $"between {Degrees(p.FromRad)} and {Degrees(p.ToRad)} after home"))}. Measured: ________ {Tick}")]
            : (GuideBlock[])[],
    ]);

    private static IEnumerable<IReadOnlyList<string>> Rows(Design design, RingLayout ring, OutputBrief output)
    {
        if (ring.IsWhole)
        {
            yield return [ring.Name, "always on", "–", "–", "", "–", "–", "–", "", Tick];
        }

        foreach (RingPeriod period in ring.Periods)
        {
            double on = design.Motion.SecondsFromRad(period.Wanted.SweepRad), tolerance = output.ToleranceS ?? period.Limits.WorstS;
            yield return
            [
                ring.Name,
                Wording.Number(design.Motion.SecondsFromRad(period.Wanted.StartRad), 2), Wording.Number(period.Bands.StartMinS, 2), Wording.Number(period.Bands.StartMaxS, 2), "",
                Wording.Number(on, 2), Wording.Number(on - tolerance, 2), Wording.Number(on + tolerance, 2), "", Tick,
            ];
        }
    }

    /// <summary>Which lamps are lit in each part of the turn at each position of the switches.</summary>
    private static GuideChapter Lamps(Design design)
    {
        CircuitAnalysis circuit = design.Circuit;
        if (circuit.Loads.Count == 0)
        {
            return new("Lamps", [new GuideWords("The file gives no loads; each output's lamp is lit while its contact is closed.")]);
        }

        if (circuit.Inputs.Count > MostInputs)
        {
            return new("Lamps", [new GuideWords($"With {Wording.Number(circuit.Inputs.Count, 0)} switches there are {Wording.Number(1 << Math.Min(20, circuit.Inputs.Count), 0)} positions: the truth table of report.md has them all. Try each interlock below, and each switch by itself.")]);
        }

        List<IReadOnlyList<string>> rows = [];
        for (int i = 0; i < circuit.Intervals.Count; i++)
        {
            CircuitInterval interval = circuit.Intervals[i];
            for (int inputs = 0; inputs < 1 << circuit.Inputs.Count; inputs++)
            {
                CircuitState state = circuit.State(i, inputs);
                rows.Add([Degrees(interval.FromRad), Degrees(interval.FromRad + interval.LengthRad), Position(circuit, inputs), InterlockTests.Lit(circuit, state), Tick]);
            }
        }

        return new("Lamps at each position of the switches",
        [
            new GuideWords("Let the wheel turn, or turn it by hand with its motor uncoupled, and look well inside each part. Two parts of the turn with the same rows need only one look."),
            new GuideTable("What is lit", [new("From", TextAlong.End), new("To", TextAlong.End), new("Switches closed"), new("Lit"), new("So")], rows),
        ]);
    }

    internal static string Position(CircuitAnalysis circuit, int inputs)
    {
        string[] closed = [.. circuit.Inputs.Where((_, i) => (inputs >> i & 1) != 0)];
        return closed.Length == 0 ? "none" : string.Join(", ", closed);
    }

    internal static string Degrees(double rad)
    {
        double deg = Geometry.Angles.DegFromRad(rad);
        return $"{Wording.Number(deg > 360.0005 ? deg - 360 : deg, 1)}°";
    }

    private static GuideChapter After(Design design) => new("Afterwards",
    [
        new GuideList(
        [
            $"Isolate, prove it dead, take the lamps off and join the loads. {Tick}",
            .. design.Wheel.Rings.Any(r => r.Adjust is not null) ? [$"Turn the screws as compare says, secure them, record once more. {Tick}"] : (string[])[],
            $"Record three turns with the real loads, and look: no sparks at rest, nothing hot, no black edges. {Tick}",
            $"Keep the log, this plan and the part's number together. {Tick}",
        ], IsNumbered: true),
        new GuideWords("A test on the bench shows that this part does what the drawing says today. It is no certificate and no proof of life, of breaking capacity or of safety."),
    ]);
}
