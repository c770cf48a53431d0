using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Benchmarks;

/// <summary>How long strips take: the promise is 5 ms for all strips of a design, 1 ms for one of fifty pieces.</summary>
internal static class StripBenchmarks
{
    private const int Rounds = 200;

    /// <summary>Runs all and gives one line each: what, the median and the promise in ms.</summary>
    internal static IEnumerable<string> Run()
    {
        RingPlace ring = new(15, 0, 3, 26);
        RingPlaces rings = new(ring, [ring, ring, ring, ring]);
        Brief five = Of([.. Enumerable.Range(0, 5).Select(i => Wiper(i))]);
        yield return Line("all strips of a design (5)", 5, () => StripSet.Of(five, rings));
        Brief fifty = Of(LongStrip());
        yield return Line("one strip of 50 pieces", 1, () => StripSet.Of(fifty, rings));
    }

    private static string Line(string what, double promiseMs, Func<StripSet> work) =>
        string.Create(CultureInfo.InvariantCulture, $"{what}: {Clock.MedianMs(work, Rounds, Rounds):0.000} ms (promised {promiseMs:0} ms)");

    private static double Deg(double deg) => Angles.RadFromDeg(deg);

    internal static StripBrief Wiper(int number)
    {
        StripTask task = number == 0 ? new ServesFeed() : new ServesOutput("output " + number.ToString(CultureInfo.InvariantCulture), IsReturn: false);
        return new StripBrief("strip " + number.ToString(CultureInfo.InvariantCulture), task, "C51000-H04", 0.5,
        [
            new StripTab("4.8x0.5"),
            new StripStraight(14, 6, null),
            new StripBend(Deg(90), 1, IsContact: false),
            new StripStraight(null, 5, null),
            new StripBend(Deg(-93.6), 1, IsContact: false),
            new StripStraight(24, 5, 3),
            new StripRivet(2.2, 1.5, 2.5),
        ])
        {
            Grain = StripGrain.Along,
            Clamp = new(8, 21),
            DeflectionMm = 1.5,
            ApproachRad = Deg(70),
            SeatedOn = "floor",
            Holes = [new(12, 0, 2.2)],
        };
    }

    private static StripBrief LongStrip()
    {
        List<StripPiece> shape = [.. Wiper(0).Shape.Take(5)];
        for (int i = 0; i < 22; i++)
        {
            shape.Add(new StripStraight(2, 5 - (0.05 * i), 4.95 - (0.05 * i)));
            shape.Add(new StripSweep(Deg(i % 2 == 0 ? 4 : -4), 8, null));
        }

        shape.Add(new StripStraight(4, 3.5, 3));
        shape.Add(new StripRivet(2.2, 1.5, 2.5));
        return Wiper(0) with { Shape = shape, DeflectionMm = 3 };
    }

    private static Brief Of(params IReadOnlyList<StripBrief> strips) => new()
    {
        Title = "Strips to time",
        Supply = new(230, 50, 0.01, OvervoltageCategory.II),
        Environment = new(3, 300, Condensation: true),
        Drive = new(180, Turning.Clockwise, 0, default) { TorqueNm = 0.25, Friction = new(0.2, 0.5) },
        Spacing = new(SpacingStandard.Iec60664, Insulation.Functional, Insulation.Basic, Insulation.Reinforced, Insulation.Functional, 0.2, GrooveX.Full),
        Wheel = new(WheelConstruction.Windowed, 0.5, "C11000-H02", new(6, null, 0), ShaftKind.Insulating, 1.2),
        Carrier = new(MaterialGroup.IIIa, 3, 0),
        Process = new(null, 0, 0.05, 0.5, 0.5, 0.5, 0.15),
        Feed = new("L", 0, new(0.4, null, 0.8, null, null), 0.1),
        Outputs = [.. Enumerable.Range(1, 4).Select(i => new OutputBrief("output " + i.ToString(CultureInfo.InvariantCulture), "net", ProgrammeBrief.Always, new(0.4, null, 0.8, null, null)))],
        Surfaces = [new("floor", MaterialGroup.IIIa, -7, null)],
        Strips = strips,
    };
}
