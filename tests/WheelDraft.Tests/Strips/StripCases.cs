using WheelDraft.Engineering;

namespace WheelDraft.Tests.Strips;

/// <summary>Feed strips of many shapes, all seated on the floor 7 mm below the copper.</summary>
internal static class StripCases
{
    private static double Deg(double d) => StripBriefs.Deg(d);

    internal static IReadOnlyDictionary<string, StripBrief> All { get; } = new Dictionary<string, StripBrief>(StringComparer.Ordinal)
    {
        ["Z with rivet"] = StripBriefs.Wiper("feed strip", new ServesFeed(), 45, 26),
        ["Z swept at its foot and in its arm"] = Of(
            [
                new StripTab("4.8x0.5"),
                new StripStraight(14, 6, null),
                new StripBend(Deg(90), 1, false),
                new StripStraight(null, 5, null),
                new StripBend(Deg(-90), 1, false),
                new StripSweep(Deg(30), 8, 5),
                new StripStraight(20, 5, 3),
                new StripRivet(2.2, 1.5, 2.5),
            ],
            new(8, 21),
            1.5),
        ["foot swept before the riser"] = Of(
            [
                new StripStraight(20, 5, null),
                new StripSweep(Deg(-60), 6, 4),
                new StripBend(Deg(90), 0.8, false),
                new StripStraight(null, 4, null),
                new StripBend(Deg(-94), 0.8, false),
                new StripStraight(25, 4, 2.5),
                new StripRivet(2.0, 1.2, 2.0),
            ],
            new(2, 18),
            1.2),
        ["fold as contact"] = Of(
            [
                new StripStraight(15, 5, null),
                new StripBend(Deg(90), 1, false),
                new StripStraight(null, 5, null),
                new StripBend(Deg(-98), 1, false),
                new StripStraight(25, 5, 3),
                new StripBend(Deg(40), 1, true),
                new StripStraight(3, 3, null),
            ],
            new(3, 14),
            1.5),
        ["slope up, arm back"] = Of(
            [
                new StripStraight(15, 5, null),
                new StripBend(Deg(45), 1, false),
                new StripStraight(null, 5, null),
                new StripBend(Deg(-52), 1, false),
                new StripStraight(22, 4, 3),
                new StripBend(Deg(30), 1, true),
                new StripStraight(2, 3, null),
            ],
            new(3, 14),
            1.0),
        ["no auto"] = Of(
            [
                new StripStraight(15, 5, null),
                new StripBend(Deg(90), 1, false),
                new StripStraight(6.6, 5, null),
                new StripBend(Deg(-93.6), 1, false),
                new StripStraight(24, 5, 3),
                new StripRivet(2.2, 1.5, 2.5),
            ],
            new(3, 14),
            null),
    };

    private static StripBrief Of(IReadOnlyList<StripPiece> shape, StripClamp clamp, double? deflection) =>
        new("feed strip", new ServesFeed(), "C51000-H04", 0.5, shape)
        {
            Grain = StripGrain.Along,
            Clamp = clamp,
            DeflectionMm = deflection,
            ApproachRad = Deg(70),
            SeatedOn = "floor",
        };
}
