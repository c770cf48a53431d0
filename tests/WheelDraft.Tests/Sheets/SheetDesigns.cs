using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests.Sheets;

/// <summary>Designs to draw: the demos, and wheels of every kind by number.</summary>
internal static class SheetDesigns
{
    private static string Folder => Path.Combine(AppContext.BaseDirectory, "parameters");

    /// <summary>The demos' names.</summary>
    internal static IReadOnlyList<string> Demos => [.. Directory.EnumerateFiles(Folder, "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal)];

    /// <summary>A demo's design.</summary>
    internal static Design Demo(string name) => Tests.Demos.Of(name);

    /// <summary>A demo's file.</summary>
    internal static byte[] DemoBytes(string name) => File.ReadAllBytes(Path.Combine(Folder, name + ".toml"));

    /// <summary>A brief by number: the same for the same number; most can be built.</summary>
    /// <param name="number">Which one.</param>
    /// <param name="names">What its outputs are called, in turn, each once; names of the usual lengths when null.</param>
    internal static Brief Numbered(int number, Func<int, string>? names = null)
    {
        Random random = new(number);
        int outputs = random.Next(1, 9);
        double turnS = Math.Round(60 + (random.NextDouble() * 1800));
        OutputBrief[] list = [.. Enumerable.Range(0, outputs).Select(i => Output(random, i, (turnS, names)))];
        bool isMains = random.Next(3) > 0;
        Brief plain = Briefs.Plain(list);
        return plain with
        {
            Title = Pick(random, "Wheel", "Dosing timer for the third basin behind the long greenhouse, northern side", "Prüfstand Ø 12 – größer"),
            DrawingNumber = Pick<string?>(random, null, "A-1", "DRAWING-2024-0815-REVISION-C"),
            Date = random.Next(2) == 0 ? new DateOnly(2024, 3, 1) : null,
            DrawingUnit = random.Next(3) == 0 ? DrawingUnit.Inch : DrawingUnit.Millimetre,
            Supply = plain.Supply with { VoltageV = isMains ? 230 : 24 },
            Drive = new(turnS, random.Next(2) == 0 ? Turning.Clockwise : Turning.Anticlockwise, 0, new(0, random.NextDouble() * 0.02)),
            Wheel = plain.Wheel with
            {
                Rim = random.Next(4) > 0,
                Bore = new(4 + random.Next(6), null, 0),
                Fixings = random.Next(2) == 0 ? new(random.Next(2, 6), 2.5, null, random.NextDouble()) : null,
            },
            Feed = plain.Feed! with { StationRad = random.Next(2) == 0 ? null : 0 },
            Loads = [.. list.Where(_ => random.Next(2) == 0).Select(o => new LoadBrief($"{o.Name} load", o.Net, random.Next(3) == 0 ? "switched" : "N", new RatedPower(10, 1), 0.8, 0.2))],
            Inputs = [new InputBrief("the switch on the lid", "switched", "N", null)],
            DriveMotor = random.Next(2) == 0 ? new("motor", list[0].Net, "N", new RatedPower(3, 0.6), 0.8, 0.2) : null,

            // A picture of the draws is laid out alike for any number of them; the first has as many as a person's file, as the demos have.
            MonteCarlo = number == 0 ? new() : plain.MonteCarlo,
            Parts = [.. Enumerable.Range(0, random.Next(4)).Select(i => Part(random, i))],
        };
    }

    private static PartBrief Part(Random random, int index)
    {
        Point centre = Point.Polar(30 + (random.NextDouble() * 60), random.NextDouble() * Angles.TurnRad);
        double low = -20 + (random.NextDouble() * 24);
        PartKind kind = (PartKind)random.Next(4);
        string name = FormattableString.Invariant($"{Pick(random, "bracket", "screw head of the terminal block", "rail")} {index + 1}");
        string net = kind switch { PartKind.Live => "N", PartKind.Earthed => "E", _ => name };
        return new(name, kind, net, new Outline(Contour.Circle(centre, 1 + (random.NextDouble() * 8))), low, low + 4);
    }

    private static OutputBrief Output(Random random, int index, (double TurnS, Func<int, string>? Names) of)
    {
        double turnS = of.TurnS;
        string name = FormattableString.Invariant($"{Pick(random, "fan", "mist", "stirrer", "circulation pump of the second tank", "Lüfter groß")} {index + 1}");
        name = of.Names?.Invoke(index) ?? name;
        int periods = random.Next(1, 5);
        double slot = turnS / periods;
        double offset = random.NextDouble() * turnS;
        OnPeriodBrief[] on = [.. Enumerable.Range(0, periods).Select(i => new OnPeriodBrief(
            new StartAt(TurnAmount.Seconds(Math.Round(offset + (i * slot), 1) % turnS)),
            new LastsFor(TurnAmount.Seconds(Math.Round(slot * (0.1 + (random.NextDouble() * 0.6)), 1)))))];
        OutputBrief output = Briefs.Output(name, turnS * 0.1) with
        {
            On = random.Next(10) == 0 ? ProgrammeBrief.Always : new(on),
            Contact = new(0.3 + (random.NextDouble() * 0.5), 1 + (random.NextDouble() * 2), 0.9, random.NextDouble() * 0.5, null),
            StationRad = random.Next(2) == 0 ? null : random.NextDouble() * 6,
            OverOpenContact = random.Next(3) == 0 ? null : Insulation.Functional,
        };
        bool adjusts = output.On.Periods is { Count: 1 } && random.Next(2) == 0;
        return adjusts ? output with { Adjust = new(random.Next(2) == 0 ? AdjustedEdge.Off : AdjustedEdge.On, turnS / 120, 2, LongerWay.In, "M3", 0.5, 1) } : output;
    }

    private static T Pick<T>(Random random, params T[] from) => from[random.Next(from.Length)];
}
