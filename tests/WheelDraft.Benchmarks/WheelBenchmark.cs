using System.Diagnostics;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Benchmarks;

/// <summary>A large wheel set out: 500 on-periods over 40 rings in under 1 s; twice the rings at most 2.4 times that.</summary>
internal static class WheelBenchmark
{
    /// <summary>Runs it; yields a line a figure.</summary>
    public static IEnumerable<string> Run()
    {
        double forty = MedianMs(40, 500);
        double eighty = MedianMs(80, 1000);
        yield return FormattableString.Invariant($"wheel: 500 on-periods on 40 rings {forty:0.0} ms (at most 1000); 80 rings {eighty:0.0} ms, {eighty / forty:0.00} times (at most 2.4)");
    }

    private static double MedianMs(int rings, int periods)
    {
        Brief brief = Large(rings, periods);
        _ = Set(brief);
        List<double> times = [];
        for (int i = 0; i < 5; i++)
        {
            long begin = Stopwatch.GetTimestamp();
            _ = Set(brief);
            times.Add(Stopwatch.GetElapsedTime(begin).TotalMilliseconds);
        }

        times.Sort();
        return times[times.Count / 2];
    }

    internal static WheelLayout Set(Brief brief)
    {
        Motion motion = Motion.Of(brief);
        Programme programme = Programme.Of(brief, motion);
        WiperContacts contacts = WiperContacts.Of(new StripSprings(brief));
        OpenContactRequirements rules = OpenContactRequirements.Of(brief, _ => brief.Supply.VoltageV);
        return WheelSetter.Of(new WheelTask(brief, motion, programme, contacts, rules.Distances));
    }

    private static string Named(int number) => FormattableString.Invariant($"out {number}");

    /// <summary>Rings of 1.2 mm contacts at 24 V: the wheel stays under a metre even with eighty of them.</summary>
    internal static Brief Large(int rings, int periods)
    {
        const double turnS = 3600;
        int each = periods / rings;
        List<OutputBrief> outputs = [];
        for (int i = 0; i < rings; i++)
        {
            int count = each + (i < periods - (each * rings) ? 1 : 0);
            double pitch = turnS / count;
            outputs.Add(new(Named(i), Named(i), new([.. Enumerable.Range(0, count).Select(k =>
                new OnPeriodBrief(new StartAt(TurnAmount.Seconds((k * pitch) + i)), new LastsFor(TurnAmount.Seconds(pitch / 2))))]), new(0.4, 1.2, 0.4, 0, null))
            {
                ToleranceS = 40,
                StationRad = i * Angles.TurnRad / rings,
                SidePlayMm = 0.05,
                OverOpenContact = Insulation.Functional,
            });
        }

        return new Brief
        {
            Title = "Large wheel",
            Supply = new(24, 50, 0.01, OvervoltageCategory.I),
            Environment = new(2, 100, false),
            Drive = new(turnS, Turning.Clockwise, 0, default),
            Spacing = new(SpacingStandard.Iec60664, Insulation.Functional, Insulation.Basic, Insulation.Basic, Insulation.Functional, 0.1, GrooveX.Full),
            Wheel = new(WheelConstruction.Windowed, 0.5, "C11000-H02", new(6, null, 0), ShaftKind.Insulating, 1) { RunOutMm = 0.05 },
            Carrier = new(MaterialGroup.I, 3, 0),
            Process = new(null, 0, 0.02, 0.3, 0.3, 0.3, 0.1),
            Feed = new("L", 0, new(0.8, 2, 0.8, 0, null), 0.1),
            Outputs = outputs,
        };
    }
}
