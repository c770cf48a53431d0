using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

public sealed class SpacingTableTests
{
    [Fact]
    public void Of_LiveEarthedAndTouchable_GradesEachPairByItsKinds()
    {
        SpacingTable table = SpacingTable.Of(new(
            [Box("L strip", "L", SolidKind.Live, 0), Box("mist strip", "mist", SolidKind.Live, 10), Box("frame", "E", SolidKind.Earthed, 20), Box("lid", "lid", SolidKind.Touchable, 30)],
            [],
            Demands(),
            Turning.Clockwise));
        Assert.Equal(
            "E/L Basic, E/mist Basic, L/lid Reinforced, L/mist Functional, lid/mist Reinforced",
            string.Join(", ", table.Rows.Select(r => $"{r.Nets.First}/{r.Nets.Second} {r.Nets.Grade}")));
        Assert.All(table.Rows, r => Assert.Null(r.AtRad));
        Assert.All(table.Rows, r => Assert.NotEmpty(r.Required.Steps));
    }

    [Theory]
    [InlineData(2.9999994, 3.0, SpacingVerdict.Misses)]
    [InlineData(2.9999996, 3.0, SpacingVerdict.Tight)]
    [InlineData(3.0, 3.0, SpacingVerdict.Tight)]
    [InlineData(3.2999994, 3.0, SpacingVerdict.Tight)]
    [InlineData(3.2999999, 3.0, SpacingVerdict.Meets)]
    public void On_NearTheLimit_ComparesAtANanometre(double worst, double required, SpacingVerdict verdict) =>
        Assert.Equal(verdict, Verdicts.On(worst, required));

    [Fact]
    public void Of_FixedStripBesideTheWheel_TakesAllTolerancesOff()
    {
        // Wheel of radius 20 with cutter tolerance 0.05, run-out 0.1 and face run-out 0.1 (half of each counts); strip leg from x = 24, 1 mm above.
        Solid wheel = new("wheel", "L", SolidKind.Live, true, -0.5, 0, new Outline(Contour.Circle(Point.Origin, 20)))
        {
            IsWheelCopper = true,
            Tolerance = new(0.05, 0, 0.05, 0.05),
        };
        Solid strip = new("mist strip", "mist", SolidKind.Live, false, 1, 2, SurfacePathsTests.Box(24, -2, 30, 2)) { Tolerance = new(0, 0.1, 0, 0) };
        SpacingRow row = SpacingTable.Of(new([wheel, strip], [], Demands(), Turning.Clockwise)).Rows.Single();
        Assert.Equal(Math.Sqrt(16 + 1), row.NominalMm, 1e-9);
        Assert.Equal(Math.Sqrt((3.8 * 3.8) + (0.95 * 0.95)), row.WorstMm, 1e-9);
        Assert.NotNull(row.AtRad);
    }

    [Fact]
    public void Of_NoseOnTheWheel_IsLeftOutButTheRestOfItsStripIsNot()
    {
        Solid wheel = new("wheel", "L", SolidKind.Live, true, -0.5, 0, new Outline(Contour.Circle(Point.Origin, 20))) { IsWheelCopper = true };
        Solid nose = new("mist strip", "mist", SolidKind.Live, false, 0, 1, SurfacePathsTests.Box(14, -1, 15, 1)) { IsNose = true };
        Solid arm = new("mist strip", "mist", SolidKind.Live, false, 3, 3.5, SurfacePathsTests.Box(15, -1, 40, 1));
        SpacingRow row = SpacingTable.Of(new([wheel, nose, arm], [], Demands(), Turning.Clockwise)).Rows.Single();
        Assert.Equal(3, row.NominalMm, 1e-12);
    }

    [Fact]
    public void Of_DifferentNetsTouching_IsAnErrorWithTheAngle()
    {
        Solid land = new("land", "L", SolidKind.Live, true, -0.5, 0, SurfacePathsTests.Box(10, -1, 12, 1));
        Solid frame = new("frame", "E", SolidKind.Earthed, false, -5, 5, SurfacePathsTests.Box(-1, 11.5, 1, 20));
        SpacingTable table = SpacingTable.Of(new([land, frame], [], Demands(), Turning.Clockwise));
        Finding touch = table.Findings.Single(f => f is { Code: "spacing.touch" });
        Assert.Equal(FindingSeverity.Error, touch.Severity);
        Assert.Contains("wheel at 2", touch.Message, StringComparison.Ordinal);
        Assert.Equal(SpacingVerdict.Misses, table.Rows.Single().Verdict);
    }

    [Fact]
    public void Of_StripOfTheWheelsOwnNetInItsWay_IsACollision()
    {
        Solid wheel = new("wheel", "L", SolidKind.Live, true, -0.5, 0, new Outline(Contour.Circle(Point.Origin, 20))) { IsWheelCopper = true };
        Solid leg = new("feed strip", "L", SolidKind.Live, false, -6, 4, SurfacePathsTests.Box(19, -1, 19.5, 1));
        SpacingTable table = SpacingTable.Of(new([wheel, leg], [], Demands(), Turning.Clockwise));
        Assert.Equal("spacing.collision", table.Findings.Single().Code);
    }

    [Fact]
    public void Of_CopperRoundAShaft_MeasuresCreepageOnTheTurningCarrier()
    {
        // Bore of radius 3 round a shaft of radius 1.5: 1.5 mm on the carrier face, all the way round; the eccentric fixing plays no part.
        Solid wheel = new("wheel", "L", SolidKind.Live, true, -0.5, 0, new Outline(Contour.Circle(Point.Origin, 20), [Contour.Circle(Point.Origin, 3)])) { IsWheelCopper = true, OnSurface = "carrier" };
        Solid shaft = new("shaft", "E", SolidKind.Earthed, true, -20, 5, new Outline(Contour.Circle(Point.Origin, 1.5)));
        InsulatingSurface carrier = new("carrier", MaterialGroup.IIIa, 0, new Outline(Contour.Circle(Point.Origin, 21)), true) { BodyMm = 3 };
        SpacingTable table = SpacingTable.Of(new([wheel, shaft], [carrier], Demands(), Turning.Clockwise));
        Assert.Equal([SpacingKind.Clearance, SpacingKind.Creepage], table.Rows.Select(r => r.Kind));
        Assert.All(table.Rows, r => Assert.Equal(1.5, r.NominalMm, 1e-9));
        Assert.Contains("IIIa", table.Rows[1].Required.BasisInFull, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_PairOnTwoSurfaces_IsJudgedOnTheOneWithTheShorterPath()
    {
        // Posts through floor and ceiling, 10 mm apart; a groove 3 mm deep in the floor makes 16 mm there.
        InsulatingSurface floor = new("floor", MaterialGroup.IIIa, 0, null, false) { Slots = [new("floor", [new(5, -99), new(5, 99)], 4, 3, SlotProfile.Parallel)] };
        InsulatingSurface ceiling = new("ceiling", MaterialGroup.IIIa, 30, null, false);
        SpacingRow row = Creepage([Post("L", -2, 0), Post("mist", 10, 12)], floor, ceiling);
        Assert.Equal((10.0, "ceiling"), (Math.Round(row.NominalMm, 9), row.Path!.Surface.Name));

        // The words tell what each path crosses.
        Assert.Contains(Creepage([Post("L", -2, 0), Post("mist", 10, 12)], floor).Measured, w => w.EndsWith(": 16.00 mm; groove 1 in floor adds 3.00 mm, groove 1 in floor adds 3.00 mm.", StringComparison.Ordinal));
        Assert.Contains(row.Measured, w => w.StartsWith("Leg", StringComparison.Ordinal) && w.EndsWith(": 10.00 mm.", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_PairThatMissesOnTheLongerOfTwoPaths_IsJudgedOnThatOne()
    {
        // 230 V, pollution degree 3, functional, by interpolation: 3.68 mm over group IIIa, 2.92 mm over group I (IEC 60664-1:2020 Table F.5). A groove
        // 0.2 mm deep makes 3.6 mm over the floor, which misses; 3.2 mm over the ceiling do not.
        InsulatingSurface floor = new("floor", MaterialGroup.IIIa, 0, null, false) { Slots = [new("floor", [new(1.6, -99), new(1.6, 99)], 1.5, 0.2, SlotProfile.Parallel)] };
        InsulatingSurface ceiling = new("ceiling", MaterialGroup.I, 30, null, false);
        SpacingRow row = Creepage([Post("L", -2, 0), Post("mist", 3.2, 5.2)], ceiling, floor);
        Assert.Equal((3.6, "floor", SpacingVerdict.Misses), (Math.Round(row.NominalMm, 9), row.Path!.Surface.Name, row.Verdict));
    }

    // Two solids of one net near one of the other, 0.9 mm to one side and 0.4 mm to another.
    [Theory]
    [InlineData(2.9, 0, 0, 0, 2.4, 0)]
    [InlineData(0, 2.9, 0, 2.4, 0, 0)]
    [InlineData(2.9, 0, 0, 0, 0, 2.4)]
    [InlineData(0, 0, 2.9, 0, 2.4, 0)]
    public void Of_SeveralSolidsOfANet_IsTheGapOfTheNearest(double x, double y, double z, double nearX, double nearY, double nearZ)
    {
        Solid Cube(string net, double atX, double atY, double atZ) =>
            new(net, net, SolidKind.Live, false, atZ, atZ + 2, SurfacePathsTests.Box(atX, atY, atX + 2, atY + 2));
        foreach (int sign in new[] { 1, -1 })
        {
            Solid[] solids = [Cube("L", 0, 0, 0), Cube("mist", sign * x, sign * y, sign * z), Cube("mist", sign * nearX, sign * nearY, sign * nearZ)];
            Assert.Equal(0.4, SpacingTable.Of(new(solids, [], Demands(), Turning.Clockwise)).Rows.Single().WorstMm, 1e-9);
        }
    }

    [Fact]
    public void Of_OneNetOfTwoKinds_IsRefused() =>
        Assert.Throws<ArgumentException>(() => SpacingTable.Of(new(
            [Box("a", "L", SolidKind.Live, 0), Box("b", "L", SolidKind.Earthed, 10)], [], Demands(), Turning.Clockwise)));

    [Fact]
    public void Of_PartsOfTheTurnOnly_GivesBoundsAMicrometreApart()
    {
        // A land from 10 to 12 mm that turns a quarter towards a frame at 90°: nearest at the end of its range.
        Solid land = new("land", "L", SolidKind.Live, true, -0.5, 0, SurfacePathsTests.Box(10, -1, 12, 1));
        Solid frame = new("frame", "E", SolidKind.Earthed, false, -5, 5, SurfacePathsTests.Box(-1, 10, 1, 20));
        SpacingTask task = new([land, frame], [], Demands(), Turning.Anticlockwise) { OnlyDuring = (_, _) => [new TurnRange(0, 0.5)] };
        SpacingRow row = SpacingTable.Of(task).Rows.Single();
        Nearest there = Distances.Between(land.Outline.Placed(Placement.Turn(0.5)), frame.Outline);
        Assert.InRange(there.DistanceMm, row.Bounds!.Value.LowerMm, row.Bounds.Value.UpperMm + 1e-12);
        Assert.True(row.Bounds.Value.UpperMm - row.Bounds.Value.LowerMm <= 1e-3);
        Assert.Equal(0.5, row.AtRad!.Value, 1e-4);
        Assert.True(row.WorstMm <= there.DistanceMm);
    }

    internal static SpacingDemands Demands() => new(
        new SupplyBrief(230, 50, 0.01, OvervoltageCategory.II),
        new EnvironmentBrief(3, 300, false),
        new SpacingBrief(SpacingStandard.Iec60664, Insulation.Functional, Insulation.Basic, Insulation.Reinforced, null, 0, GrooveX.Full),
        (_, _) => 230);

    private static SpacingRow Creepage(Solid[] solids, params InsulatingSurface[] surfaces) =>
        SpacingTable.Of(new(solids, surfaces, Demands(), Turning.Clockwise)).Rows.Single(r => r.Kind == SpacingKind.Creepage);

    private static Solid Post(string net, double fromX, double toX) =>
        new(net, net, SolidKind.Live, false, -1, 31, SurfacePathsTests.Box(fromX, -2, toX, 2));

    private static Solid Box(string name, string net, SolidKind kind, double atX) =>
        new(name, net, kind, false, 0, 1, SurfacePathsTests.Box(atX, 0, atX + 2, 2));
}
