using System.Globalization;
using WheelDraft.Engineering;

namespace WheelDraft.Tests;

/// <summary>A large timer for the page: forty outputs, each with a ring, a load and five on-periods, which is as many on-periods as a file may have; a motor, a starter, four doors in the loads' returns.</summary>
internal static class ManyOutputs
{
    private const int Outputs = 40;
    private const int Periods = 5;
    private const int TurnS = 3600;
    private const int Doors = 4;

    // The load that lies across the first door: while that is open, those in whose return it stands share their voltage with it and are undecided.
    private const int Across = 2;

    public static Design Work() => ShownDesign.WorkText(Text());

    private static string Text() => PageFitTests.Frame.Replace("\"600 s\"", "\"3600 s\"", StringComparison.Ordinal)
        + string.Concat(Enumerable.Range(0, Outputs).Select(Output))
        + string.Concat(Enumerable.Range(1, Doors).Select(d => Input(FormattableString.Invariant($"door {d}"), FormattableString.Invariant($"side {d}"), "N")))
        + Input("start", "L", "tray 1")
        + """

        [drive_motor]
        between = ["tray 1", "N"]
        power = "3 W"
        power_factor = 0.6

        [[interlock]]
        name = "no second valve while the first door is open"
        never_on = ["valve 2"]
        while_false = ["door 1"]

        """;

    private static string Output(int index) => string.Create(
        CultureInfo.InvariantCulture,
        $$"""

        [[output]]
        name = "tray {{index + 1}}"
        on = [ {{string.Join(", ", Enumerable.Range(0, Periods).Select(k => Period(index, k)))}} ]
        tolerance = "40 s"
        station = "{{20 + (index * 330 / Outputs)}} deg"
        contact_length = "0.4 mm"
        contact_width = "1.2 mm"
        side_play = "0.1 mm"

        [[load]]
        name = "valve {{index + 1}}"
        between = ["{{(index == Across ? "side 1" : $"tray {index + 1}")}}", "{{(index % 2 == 0 ? "N" : $"side {(index * Doors / Outputs) + 1}")}}"]
        power = "{{5 + (index % 7)}} W"
        pull_in = "80 %"
        drop_out = "20 %"

        """);

    // No two edges of different rings at one moment, so that the turn has as many intervals as it can.
    private static string Period(int index, int period) => string.Create(
        CultureInfo.InvariantCulture,
        $"{{ from = \"{(40 + (period * TurnS / Periods) + (index * 37)) % TurnS} s\", for = \"{150 + (index * 13 % 150)} s\" }}");

    private static string Input(string name, string from, string to) => $"""

        [[input]]
        name = "{name}"
        between = ["{from}", "{to}"]

        """;
}
