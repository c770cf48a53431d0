using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Guide;

/// <summary>The first time that it is live, and what to time then.</summary>
internal static class PowerUp
{
    public static GuideChapter Of(Design design) => new("First power-up",
    [
        new GuideCautions(!design.Brief.Supply.IsExtraLow
            ?
            [
                "From here on it can kill. A qualified person does this, or stands by; local rules decide what is asked.",
                "Through an isolating transformer and a residual-current device, fuse and thermal cut-out in place, the enclosure closed or nobody in reach.",
                "One hand, no rings or watch, leads clipped on while it is dead. Isolate and prove it dead before each change.",
                "An isolating transformer hides a fault to earth: test the protective conductor before, and the residual-current device by its own button.",
            ]
            :
            [
                "Through a safety transformer, with its fuse in place: extra-low voltage still burns and starts fires.",
                "Isolate before each change.",
            ]),
        new GuideList(Steps(design), IsNumbered: true),
        new GuideTable("On-times to be met, worst case over the tolerances of the file, at the nominal frequency", Columns(design), [.. design.Wheel.Rings.SelectMany(r => Rows(design, r))]),
        new GuideWords("Note what you measured beside the table. What lies outside it is not as drawn: isolate, and look at the edge, the contact and its ring before anything else."),
    ]);

    private static List<string> Steps(Design design)
    {
        CircuitAnalysis circuit = design.Circuit;
        List<string> steps = ["Leave every load but the motor unplugged and let the wheel turn once round, started as the circuit starts it: it turns the right way, nothing sparks, smells, grows hot or scrapes."];
        if (design.Brief.DriveMotor is null)
        {
            steps[0] += " The file gives no motor, so nothing here says when it runs.";
        }
        else if (circuit.Parks.Count > 0)
        {
            steps.Add($"It parks {string.Join(", or ", circuit.Parks.Select(p => $"between {Degrees(p.FromRad)} and {Degrees(p.ToRad)} after home"))}{(circuit.Inputs.Count > 0 ? ", sensors open" : "")}.");
        }
        else if (circuit.Inputs.Count == 0)
        {
            steps.Add("It turns as long as the supply is on.");
        }

        steps.AddRange(circuit.Interlocks.Select(i => $"Try the interlock '{i.Name}' {(i.Verdict == InterlockVerdict.Holds ? "over a whole turn: it must hold" : "with care: it was not proved to hold")}."));
        if (circuit.Loads.Count > 0)
        {
            steps.Add("Plug the loads in one by one, each while it is dead, and see that each is on where the picture of the times says so.");
        }

        steps.Add("Time each output with a stopwatch over a turn or two and compare it with the table.");
        if (design.Wheel.Rings.Any(r => r.Adjust is not null))
        {
            steps.Add("Set what has a screw, as the chapter on adjusting says.");
        }

        steps.Add("After an hour of running isolate it and look again: nothing hot, no black edge, no dust of copper between rings. Look once more after a day.");
        return steps;
    }

    private static string Degrees(double rad) => $"{Wording.Number(Angles.DegFromRad(Angles.InTurn(rad)), 3)}°";

    private static bool HasDose(Design design) => design.Brief.Outputs.Any(o => o.FlowLPerS is not null && o.On.Periods is not null);

    private static TableColumn[] Columns(Design design) =>
    [
        new("Output"), new("On from, s", TextAlong.End), new("For, s", TextAlong.End), new("At least, s", TextAlong.End), new("At most, s", TextAlong.End),
        .. HasDose(design) ? [new("Dose, mL")] : (TableColumn[])[], new("Measured, s"),
    ];

    private static IEnumerable<IReadOnlyList<string>> Rows(Design design, RingLayout ring)
    {
        double? flow = design.Brief.Outputs.First(o => string.Equals(o.Name, ring.Name, StringComparison.Ordinal)).FlowLPerS;
        if (ring.IsWhole)
        {
            yield return [ring.Name, "always on", "–", "–", "–", .. HasDose(design) ? ["–"] : (string[])[], ""];
        }

        foreach (RingPeriod period in ring.Periods)
        {
            double on = design.Motion.SecondsFromRad(period.Wanted.SweepRad);
            (double least, double most) = (on - period.Limits.ShorterS, on + period.Limits.LongerS);
            string dose = flow is double f ? $"{Wording.Number(on * f * 1000, 1)} ({Wording.Number(least * f * 1000, 1)} to {Wording.Number(most * f * 1000, 1)})" : "–";
            yield return
            [
                ring.Name, Wording.Number(design.Motion.SecondsFromRad(period.Wanted.StartRad), 2), Wording.Number(on, 2), Wording.Number(least, 2), Wording.Number(most, 2),
                .. HasDose(design) ? [dose] : (string[])[], "",
            ];
        }
    }
}
