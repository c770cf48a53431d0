using System.Text;
using WheelDraft.Engineering;
using WheelDraft.Formats.Parameters;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Measuring;

/// <summary>Gaps below X, surfaces that abut, and faces that lie off by the housing's tolerance. X is that of pollution degree 3, 1.5 mm
/// (IEC 60664-1:2020, 6.8); what is nearer is bridged, as the grooves and recesses of its Figures 4 and 13 are. Lengths by hand.</summary>
public sealed class SmallGapTests
{
    private const double CloseMm = 1e-6;

    // A path may be told a micrometre too short.
    private const double ShortMm = 1e-3;

    private static readonly InsulatingSurface Floor = new("floor", MaterialGroup.IIIa, 0, null, false);

    [Fact]
    public void Of_LivePartAHairAboveTheFloor_HasACreepageRow() =>
        Assert.Equal(6, Creepage([Floor], On("L", 0, 4), Above("mist", 10, 14, 0.05))!.NominalMm, CloseMm);

    [Theory]
    [InlineData(1.6, 0, false)]
    [InlineData(1.6, 0.1, true)] // 1.6 less a face of the part and one of the floor: 1.4
    [InlineData(1.5, 0, false)] // exactly X is not below it
    [InlineData(-1.6, 0.1, true)] // under the level as above it
    public void Of_PartBelowXOnlyAtItsWorst_IsJudgedAtItsWorst(double height, double face, bool bridges)
    {
        Solid part = Above("mist", 10, 14, Math.Max(0, height)) with { Tolerance = SolidTolerance.None with { FaceMm = face } };
        part = height < 0 ? part with { FromZMm = height - 1, ToZMm = height } : part;
        SpacingRow? row = Creepage([Floor with { FaceMm = face }], On("L", 0, 4), part);
        Assert.Equal(bridges, row is not null);
        if (row is not null)
        {
            Assert.Equal(6, row.NominalMm, CloseMm);
            Assert.Equal(6 - face, row.WorstMm, CloseMm);
        }
    }

    [Fact]
    public void Of_PartBesideTheEdge_BridgesOntoAllOfItThatIsNearerThanX()
    {
        // The part ends 1 mm before the edge x = 0 and spans y = ±1: nearer than 1.5 is the edge up to 1 + √(1.5² − 1²).
        InsulatingSurface plate = Floor with { Outline = SurfacePathsTests.Box(0, -20, 20, 20) };
        Solid part = new("rail", "E", SolidKind.Earthed, false, -3, 3, SurfacePathsTests.Box(-5, -1, -1, 1));
        Solid copper = new("L strip", "L", SolidKind.Live, false, 0, 0, SurfacePathsTests.Box(0, 8, 2, 9)) { OnSurface = "floor" };
        double expected = 8 - (1 + Math.Sqrt((1.5 * 1.5) - 1));
        Assert.InRange(Creepage([plate], copper, part)!.NominalMm, expected - 0.011, expected + CloseMm);
        Solid facing = copper with { Outline = SurfacePathsTests.Box(10, -1, 12, 1) };
        Assert.Equal(10, Creepage([plate], facing, part)!.NominalMm, ShortMm);
        Assert.Null(Creepage([plate], facing, part with { Outline = SurfacePathsTests.Box(-5, -1, -1.5, 1) }));
    }

    [Theory]
    [InlineData(0, 0, 10.0)]
    [InlineData(1, 0, 10.0)]
    [InlineData(0, -1.4, 10.0)]
    [InlineData(1, -1, 10.0)] // 1.41 apart
    [InlineData(1.2, -1, null)] // 1.56 apart
    public void Of_SurfacesThatAbut_AreOneForPathsThatCross(double gap, double level, double? expected)
    {
        InsulatingSurface left = Floor with { Outline = SurfacePathsTests.Box(-20, -20, 0, 20) };
        InsulatingSurface right = new("shelf", MaterialGroup.II, level, SurfacePathsTests.Box(gap, -20, 20, 20), false);
        Solid b = On("mist", 5, 9) with { OnSurface = "shelf", FromZMm = level, ToZMm = level };
        SpacingRow? row = Creepage([left, right], On("L", -9, -5), b);
        Assert.Equal(expected, row?.NominalMm);
        if (row is not null)
        {
            // The worse material of the two.
            Assert.Contains("IIIa", row.Required.BasisInFull, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(1.6, 0, true)]
    [InlineData(1.6, 0.1, false)] // two faces off: 1.4, crossed straight
    [InlineData(1.8, 0.1, true)]
    public void Of_SlotWidth_IsComparedWithXAtItsWorst(double width, double face, bool isBarrier)
    {
        InsulatingSurface floor = Floor with { FaceMm = face, Slots = [new("floor", [new(0, -30), new(0, 30)], width, 3, SlotProfile.Parallel)] };
        SpacingRow row = Creepage([floor], On("L", -9, -5), On("mist", 5, 9))!;
        Assert.Equal(isBarrier ? 10 + (2 * (3 - (2 * face))) : 10, row.WorstMm, CloseMm);
        Assert.Equal(16, row.NominalMm, CloseMm);
    }

    [Fact]
    public void Of_RibWithTolerance_IsAsLowAsItsFacesLetItBe()
    {
        // Both of top and floor off by 0.1: 4 mm become 3.8, 1.2 thick become 1.0.
        InsulatingSurface floor = Floor with { FaceMm = 0.1, Ribs = [new("floor", [new(0, -200), new(0, 200)], 4, 1.2, RibJoint.Moulded)] };
        SpacingTask task = Task([floor], On("L", -9, -5), On("mist", 5, 9));
        SpacingTable table = SpacingTable.Of(task);
        SpacingRow surface = table.Rows.Single(r => r.Kind == SpacingKind.Creepage), air = table.Rows.Single(r => r.Kind == SpacingKind.Clearance);
        Assert.Equal(18, surface.NominalMm, CloseMm);
        Assert.Equal(10 + (2 * 3.8), surface.WorstMm, CloseMm);
        Assert.Equal((2 * double.Hypot(4.4, 4)) + 1.2, air.NominalMm, CloseMm);
        Assert.Equal((2 * double.Hypot(4.5, 3.8)) + 1.0, air.WorstMm, CloseMm);
    }

    [Fact]
    public void Of_RibNearAConductorOnlyAtItsWorst_IsBridgedOnto()
    {
        // 1.6 mm from the rib; side play of 0.2 brings it to 1.4, and the link of X then meets the wall: the wall no longer counts in full.
        InsulatingSurface floor = Floor with { Ribs = [new("floor", [new(0, -200), new(0, 200)], 4, 1.2, RibJoint.Moulded)] };
        Solid near = On("L", -6.2, -2.2) with { Tolerance = new(0, 0.2, 0, 0) };
        SpacingRow row = Creepage([floor], near, On("mist", 5, 9))!;
        Assert.Equal(7.2 + 8, row.NominalMm, CloseMm);
        Assert.True(row.WorstMm < 7.2 + 8 - 0.2 - 0.1, FormattableString.Invariant($"{row.WorstMm}"));
    }

    [Fact]
    public void Of_WheelOverTheFloor_CountsWhereverItComes()
    {
        // A land from 10 to 12 mm on a wheel 0.5 mm over the floor sweeps a ring; the strip begins at 17 mm.
        Solid land = new("land", "L", SolidKind.Live, true, 0.5, 1, SurfacePathsTests.Box(10, 0, 12, 0.1));
        Solid strip = new("mist strip", "mist", SolidKind.Live, false, 0, 0, SurfacePathsTests.Box(-1, -20, 1, -17)) { OnSurface = "floor" };
        double reach = double.Hypot(12, 0.1);
        Assert.Equal(17 - reach, Creepage([Floor], land, strip)!.NominalMm, CloseMm);
    }

    [Fact]
    public void Of_FixedPartOverTheCarrier_BridgesOntoItBesideTheCopper()
    {
        // 1 mm over a carrier that reaches beyond the wheel: from x = 24 to the copper's edge on radius 20 wherever that turns.
        Solid wheel = Wheel(20);
        Solid part = new("rail", "E", SolidKind.Earthed, false, 1, 2, SurfacePathsTests.Box(24, -0, 30, 1));
        SpacingRow row = Creepage([Carrier(40)], wheel, part)!;
        Assert.Equal(4, row.NominalMm, CloseMm);
        Assert.Null(Creepage([Carrier(40)], wheel, part with { FromZMm = 1.6 }));
        Assert.NotNull(Creepage([Carrier(40) with { FaceMm = 0.2 }], wheel, part with { FromZMm = 1.6 }));
    }

    [Fact]
    public void Of_WiperOnItsRing_HasNoCreepageToTheCopperThatItRidesOnButItsArmBeyondHas()
    {
        Solid nose = new("mist strip", "mist", SolidKind.Live, false, 0, 1.2, SurfacePathsTests.Box(14, -1, 15, 1)) { IsNose = true };
        Solid arm = new("mist strip", "mist", SolidKind.Live, false, 1.2, 1.6, SurfacePathsTests.Box(15, -1, 19, 1));
        Assert.Null(Creepage([Carrier(40)], Wheel(20), nose, arm));
        Solid beyond = arm with { Outline = SurfacePathsTests.Box(23, -0, 30, 1) };
        Assert.Equal(3, Creepage([Carrier(40)], Wheel(20), nose, arm, beyond)!.NominalMm, CloseMm);
    }

    [Fact]
    public void For_SlotThatIsProposed_MeetsWithReserveWhateverItsFaces()
    {
        foreach (double face in (double[])[0, 0.1, 0.2])
        {
            InsulatingSurface floor = Floor with { FaceMm = face };
            SpacingTask task = Task([floor], On("L", 0, 4), On("mist", 7, 11));
            IReadOnlyList<Remedy> remedies = Remedies.For(task, SpacingTable.Of(task), out _);
            Assert.Contains(remedies, r => r.Kind == RemedyKind.Slot);
            Assert.All(remedies, r => Assert.Equal(SpacingVerdict.Meets, Verdicts.On(r.WorstAfterMm, r.Row.Required.RequiredMm)));
            Assert.Contains(FormattableString.Invariant($"cut a slot {1.65 + (2 * face):0.00} mm wide"), remedies.Single(r => r.Kind == RemedyKind.Slot).Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void AllPairs_SeveralItemsANet_HoldEveryPairAndTheLeastIsTheRow()
    {
        Solid[] solids =
        [
            On("L", -9, -5), On("L", -30, -26) with { Name = "L other" }, On("mist", 5, 9), On("mist", 40, 44) with { Name = "mist other" },
            On("c", -2, 1) with { Kind = SolidKind.Floating }, new("case", "E", SolidKind.Earthed, false, 5, 6, SurfacePathsTests.Box(-3, -3, 3, 3)),
        ];
        SpacingTable table = SpacingTable.Of(Task([Floor], solids));

        // L – mist: two by two items, air and floor; E against four live items through air only.
        Assert.Equal(8, table.AllPairs.Count(r => r.Nets.First is "L"));
        Assert.Equal(4, table.AllPairs.Count(r => r.Nets.First is "E"));
        foreach (SpacingRow row in table.Rows)
        {
            SpacingRow[] all = [.. table.AllPairs.Where(r => r.Nets == row.Nets && r.Kind == row.Kind)];
            Assert.Equal(row.WorstMm, all.Min(r => r.WorstMm), CloseMm);
            Assert.Contains(all, r => (r.FirstItem, r.SecondItem) == (row.FirstItem, row.SecondItem));
        }

        // Over the floating part: 3 + 4 mm, and not 10.
        Assert.Equal(7, table.Rows.Single(r => r is { Kind: SpacingKind.Clearance, Nets.First: "L" }).NominalMm, CloseMm);
    }

    [Fact]
    public void Of_TouchableShaft_IsToldAsTouchableAndNeedsReinforcedInsulation()
    {
        Design design = Design.Of(WithShaft(Briefs.Plain(Briefs.Output("mist", 122, 20)), ShaftKind.Touchable));
        Assert.Equal(SolidKind.Touchable, design.Solids.Single(s => s.Name is "shaft").Kind);
        Assert.All(design.Spacing.Rows.Where(r => r.Nets.Second is "shaft"), r => Assert.Equal(Insulation.Reinforced, r.Nets.Grade));
        Assert.Contains(design.Spacing.Rows, r => r.Nets.Second is "shaft" && r.Kind == SpacingKind.Creepage);
    }

    [Fact]
    public void Of_LandsRoundATouchableShaft_KeepWhatIsRequiredOfItInTheHub()
    {
        Design design = Design.Of(WithShaft(Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 30, 20), 40, 10)), ShaftKind.Touchable));
        SpacingRow[] rows = [.. design.Spacing.Rows.Where(r => r.Nets.Second is "shaft")];
        Assert.Contains(rows, r => r.Kind == SpacingKind.Creepage);
        Assert.All(rows, r => Assert.NotEqual(SpacingVerdict.Misses, r.Verdict));
    }

    [Fact]
    public void Of_LandsRoundATouchableShaftThatFillsItsBore_BeginBeyondWhatIsRequiredOfIt()
    {
        // Nothing but the shaft asks for so much here: its wipers stand far from each other, and the bore is hardly wider than the shaft.
        Brief brief = WithShaft(Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 30, 20), 0, 150)), ShaftKind.Touchable);
        Design design = Design.Of(brief with { Wheel = brief.Wheel with { ShaftDiameterMm = 9, Bore = new(9.2, null, 0) } });
        SpacingRow[] rows = [.. design.Spacing.Rows.Where(r => r.Nets.Second is "shaft")];
        double required = rows.Max(r => r.Required.RequiredMm);

        // 230 V, reinforced, pollution degree 3, material group IIIa: twice the 3.2 mm of 200 V at least (IEC 60664-1:2020, Table F.5).
        Assert.True(required >= 6.4, FormattableString.Invariant($"{required}"));

        // Off by the cutter's 0.05 mm and half the run-out of 0.1 mm.
        Assert.Equal(4.5 + required + 0.05 + 0.05, design.Wheel.Rings[0].LandFromMm!.Value, 0.011);
        Assert.All(rows, r => Assert.NotEqual(SpacingVerdict.Misses, r.Verdict));
    }

    [Fact]
    public void Of_Fixings_HaveHeadsAndNuts()
    {
        Brief plain = Briefs.Plain(Briefs.Output("mist", 122, 20));
        Brief brief = plain with { Wheel = plain.Wheel with { Fixings = new(3, 2.2, null, 0) } };
        Design taken = Design.Of(brief), given = Design.Of(brief with { Wheel = brief.Wheel with { Fixings = brief.Wheel.Fixings! with { GivenHeadMm = 5.5 } } });
        Assert.Equal(4.4, taken.Solids.Where(s => s.Name is "fixing 1").Max(s => s.Outline.Bounds.Width), CloseMm);
        Assert.Equal(5.5, given.Solids.Where(s => s.Name is "fixing 1").Max(s => s.Outline.Bounds.Width), CloseMm);
        Assert.Equal(-3 - 2.2, taken.Solids.Where(s => s.Name is "fixing 1").Min(s => s.FromZMm), CloseMm);
        Assert.Contains(taken.Findings, f => f.Code is "wheel.heads");
        Assert.DoesNotContain(given.Findings, f => f.Code is "wheel.heads");

        // No head lies over the bore, or over another.
        Assert.True(given.Wheel.PitchCircleMm / 2 >= 3 + 2.75 - CloseMm);
        Assert.True(given.Wheel.Fixings[0].DistanceTo(given.Wheel.Fixings[1]) >= 5.5 - CloseMm);
        Assert.True(given.Wheel.Feed!.PathFromMm >= (given.Wheel.PitchCircleMm / 2) + 2.75 - CloseMm);
    }

    [Fact]
    public void Of_WheelOfAnUnknownMaterial_IsToldWhatIsNotJudged()
    {
        Brief plain = Briefs.Plain(Briefs.Output("mist", 122, 20));
        Finding told = Design.Of(plain with { Wheel = plain.Wheel with { Material = "unobtainium" } }).Findings.Single(f => f.Code is "wheel.material");
        Assert.Equal(FindingSeverity.Warning, told.Severity);
        Assert.DoesNotContain(Design.Of(plain).Findings, f => f.Code is "wheel.material");
    }

    [Fact]
    public void Placing_OfBothWipersOfALand_ComesOffTheGapBetweenTheirPatches()
    {
        // Without side play, whose share of the gap along the motion depends on the ring's radius.
        Brief brief = Briefs.Lands(Briefs.TwoWipers(Briefs.Output("lamp", 30, 20), 40, 10) with { SidePlayMm = 0 });
        OpenContact exact = Design.Of(brief).OpenContacts[0], placed = Design.Of(brief with { Housing = new(0, 0.2) }).OpenContacts[0];

        // The ring grows so that what is required is kept all the same: what is taken off is the difference.
        Assert.Equal(exact.Sideways.NominalMm - exact.Sideways.WorstMm + 0.4, placed.Sideways.NominalMm - placed.Sideways.WorstMm, CloseMm);
        Assert.Equal(exact.Along!.NominalMm - exact.Along.WorstMm + 0.2, placed.Along!.NominalMm - placed.Along.WorstMm, CloseMm);
    }

    [Fact]
    public void Steps_ValueOfTheUpperRowItself_AreNotSaidToBeRoundedUp()
    {
        // 25 V of IEC 60664-1:2020 Table F.5, pollution degree 1, has 0.125 mm: just below it the value rounded up would be 0.13.
        Requirement found = Iec60664Rules.Instance.RequiredCreepage(new CreepageQuery(24.9, Insulation.Functional, 1, MaterialGroup.I));
        Assert.Equal(0.125, found.RequiredMm, CloseMm);
        Assert.DoesNotContain(found.Steps, s => s.Contains("rounded up", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_Housing_GivesItsTolerances()
    {
        string text = File.ReadAllText(Demos.PathOf("propagation-bench")) + "\n[housing]\ntolerance = \"0.1 mm\"\nplacing = \"0.2 mm\"\n";
        Brief brief = ParameterReader.Read(Encoding.UTF8.GetBytes(text)).Brief!;
        Assert.Equal(new Housing(0.1, 0.2), brief.Housing);
        Design design = Design.Of(brief);
        Assert.Equal(0.1, design.Solids.First(s => s.Name is "motor case").Tolerance.FaceMm);
        Assert.All(design.Solids.Where(s => s.Name is "mist strip"), s => Assert.Equal(0.1, s.Tolerance.LevelMm));
        SpacingRow Row(Design d) => d.Spacing.Rows.Single(r => r is { Nets.First: "E", Nets.Second: "mist", Kind: SpacingKind.Clearance });
        Assert.True(Row(design).WorstMm < Row(Demos.Of("propagation-bench")).WorstMm - 0.05);
    }

    private static Brief WithShaft(Brief brief, ShaftKind shaft) => brief with { Wheel = brief.Wheel with { Shaft = shaft, ShaftDiameterMm = 3, Bore = new(20, null, 0) } };

    private static Solid Wheel(double radius) =>
        new("wheel", "L", SolidKind.Live, true, -0.5, 0, new Outline(Contour.Circle(Point.Origin, radius))) { IsWheelCopper = true, OnSurface = "carrier" };

    private static InsulatingSurface Carrier(double radius) =>
        new("carrier", MaterialGroup.IIIa, 0, new Outline(Contour.Circle(Point.Origin, radius)), true) { BodyMm = 3 };

    private static Solid On(string net, double fromX, double toX) =>
        new(net + " strip", net, SolidKind.Live, false, 0, 0, SurfacePathsTests.Box(fromX, -5, toX, 5)) { OnSurface = "floor" };

    private static Solid Above(string net, double fromX, double toX, double height) =>
        On(net, fromX, toX) with { OnSurface = null, FromZMm = height, ToZMm = height + 1 };

    private static SpacingTask Task(IReadOnlyList<InsulatingSurface> surfaces, params IReadOnlyList<Solid> solids) =>
        new(solids, surfaces, SpacingTableTests.Demands(), Turning.Clockwise);

    private static SpacingRow? Creepage(IReadOnlyList<InsulatingSurface> surfaces, params IReadOnlyList<Solid> solids) =>
        SpacingTable.Of(Task(surfaces, solids)).Rows.SingleOrDefault(r => r.Kind == SpacingKind.Creepage);
}
