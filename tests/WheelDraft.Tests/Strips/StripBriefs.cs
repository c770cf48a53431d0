using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests.Strips;

/// <summary>Briefs with strips for the tests: a wheel of 26 mm radius, rings at 6, 10, 15 and 21 mm, a floor 7 mm below the copper.</summary>
internal static class StripBriefs
{
    internal static double Deg(double deg) => Angles.RadFromDeg(deg);

    internal static ContactBrief Patch(double length = 0.4, double? width = null, double? worn = null) => new(length, width, worn ?? length, null, null);

    internal static Brief With(params IReadOnlyList<StripBrief> strips) => new()
    {
        Title = "Strips under test",
        Supply = new(230, 50, 0.01, OvervoltageCategory.II),
        Environment = new(3, 300, Condensation: true),
        Drive = new(180, Turning.Clockwise, 0, default) { TorqueNm = 0.25, Friction = new(0.2, 0.5) },
        Spacing = new(SpacingStandard.Iec60664, Insulation.Functional, Insulation.Basic, Insulation.Reinforced, Insulation.Functional, 0.2, GrooveX.Full),
        Wheel = new(WheelConstruction.Windowed, 0.5, "C11000-H02", new(6, null, 0), ShaftKind.Insulating, 1.2) { RunOutMm = 0.1, FaceRunOutMm = 0.1 },
        Carrier = new(MaterialGroup.IIIa, 3, 0),
        Process = new(null, 0, 0.05, 0.5, 0.5, 0.5, 0.15),
        Feed = new("L", 0, Patch(0.8, worn: 1.2), 0.1),
        Outputs =
        [
            new("hold", "hold", ProgrammeBrief.Always, Patch(0.4, worn: 0.8)),
            new("fan", "fan", ProgrammeBrief.Always, Patch(0.4, worn: 0.8)),
            new("mist", "mist", ProgrammeBrief.Always, Patch(0.4, worn: 0.8)),
        ],
        Surfaces = [new("floor", MaterialGroup.IIIa, -7, null)],
        Strips = strips,
    };

    /// <summary>The starting design of the worked wheel: tab, floor, riser "auto", arm level when pressed, rivet 2.2 mm.</summary>
    internal static StripBrief Wiper(string name, StripTask task, double approachDeg = 90, double armMm = 24) =>
        new(name, task, "C51000-H04", 0.5,
        [
            new StripTab("4.8x0.5"),
            new StripStraight(14, 6, null),
            new StripBend(Deg(90), 1, IsContact: false),
            new StripStraight(null, 5, null),
            new StripBend(Deg(-93.6), 1, IsContact: false),
            new StripStraight(armMm, 5, 3),
            new StripRivet(2.2, 1.5, 2.5),
        ])
        {
            Grain = StripGrain.Along,
            Clamp = new(8, 21),
            DeflectionMm = 1.5,
            ApproachRad = Deg(approachDeg),
            SeatedOn = "floor",
        };

    internal static RingPlaces Rings { get; } = new(
        new RingPlace(6, 0, 3, 26),
        [new RingPlace(10, Deg(90), 3, 26), new RingPlace(15, Deg(180), 3, 26), new RingPlace(21, Deg(270), 3, 26)]);

    /// <summary>A straight cantilever of one piece, clamped over its first millimetre, its rivet at the end.</summary>
    internal static StripBrief Cantilever(double free, double width, double? widthEnd, double thickness, double riserMm = 0)
    {
        // The rivet's axis lies half its diameter before the end; it is as good as no height, so that the free length is exact.
        StripRivet rivet = new(2, 1, 1);
        List<StripPiece> shape = [new StripStraight(1, width, null)];
        if (riserMm > 0)
        {
            shape.Add(new StripStraight(riserMm, width, null));
        }

        shape.Add(new StripStraight(free, width, widthEnd));
        shape.Add(new StripStraight(0.5, widthEnd ?? width, null));
        shape.Add(rivet);
        return new StripBrief("beam", new ServesFeed(), "C51000-H04", thickness, shape)
        {
            Grain = StripGrain.Along,
            Clamp = new(0, 1),
            ApproachRad = Deg(180),
            SeatedOn = "floor",
        };
    }

    /// <summary>The brief of one strip whose floor is set so that its free contact lies this far below the copper face.</summary>
    internal static Brief Deflected(StripBrief strip, double deflectionMm, double cutMm = 0.05)
    {
        Brief brief = With(strip);
        brief = brief with { Process = brief.Process with { ToleranceMm = cutMm } };
        brief = brief with { Feed = brief.Feed! with { Contact = Patch(0.2) } };
        Brief low = brief with { Surfaces = [new("floor", MaterialGroup.IIIa, -500, null)] };
        double level = -500 + (StripForm.Of(low, 0).DeflectionMm!.Value - deflectionMm);
        return brief with { Surfaces = [new("floor", MaterialGroup.IIIa, level, null)] };
    }
}
