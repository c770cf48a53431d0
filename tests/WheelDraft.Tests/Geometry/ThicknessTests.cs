using CsCheck;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using WheelDraft.Tests.Sheets;
using Xunit;

namespace WheelDraft.Tests.Geometry;

/// <summary>Closed forms, each worked out by hand, and the bond with offsets.</summary>
public sealed class ThicknessTests
{
    private static readonly Contour _plate = Contour.Rectangle(new(-20, -20), new(20, 20));

    [Fact]
    public void LeastWeb_Rectangle_IsItsShortSide()
    {
        Nearest web = Web(new(Contour.Rectangle(new(0, 0), new(5, 1))));
        Assert.Equal(1, web.DistanceMm, 1e-12);
        Assert.Equal(1, web.OnFirst.DistanceTo(web.OnSecond), 1e-12);
    }

    [Fact]
    public void LeastWeb_Ring_IsDifferenceOfRadii()
    {
        Outline ring = new(Contour.Circle(Point.Origin, 5), [Contour.Circle(Point.Origin, 3)]);
        Nearest web = Web(ring);
        Assert.Equal(2, web.DistanceMm, 1e-12);
        Assert.Equal(8, web.OnFirst.RadiusMm + web.OnSecond.RadiusMm, 1e-12);
        Assert.Equal(6, Slot(ring).DistanceMm, 1e-12);
    }

    [Fact]
    public void LeastWeb_EccentricHole_IsAtTheNearSide() =>
        Assert.Equal(1.5, Web(new(Contour.Circle(Point.Origin, 5), [Contour.Circle(new(0.5, 0), 3)])).DistanceMm, 1e-12);

    [Fact]
    public void LeastWeb_Disc_IsItsDiameter() =>
        Assert.Equal(4, Web(new(Contour.Circle(new(1, 1), 2))).DistanceMm, 1e-12);

    [Fact]
    public void LeastSlot_DiscAlone_HasNone() => Assert.Null(Thickness.LeastSlot(new Outline(Contour.Circle(new(1, 1), 2))));

    [Fact]
    public void LeastWeb_Triangle_HasNone() =>
        Assert.Null(Thickness.LeastWeb(new(Contour.Polygon(new(0, 0), new(4, 0), new(2, 3)))));

    [Fact]
    public void LeastWeb_BetweenTwoWindowsOfOneRing_IsBetweenTheirRadialSides()
    {
        // Two sectors a tenth of a radian apart: radial sides are not parallel, the inner corners are 2·4·sin(0.05) apart.
        Outline wheel = new(_plate, [Generators.Sector(4, 2, 0.05, 1), Generators.Sector(4, 2, -1.05, 1)]);
        Assert.Equal(8 * Math.Sin(0.05), Web(wheel).DistanceMm, 1e-12);
    }

    // Oracle: the search without a limit.
    [Fact]
    public void LeastWebAndSlot_BelowALimit_AreThoseOfAllOrNone()
    {
        foreach (Outline shape in Demos.Names.Select(n => Demos.Of(n).Parts).SelectMany(p => p.Strips.Append(p.Wheel).Append(p.Carrier)).SelectMany(p => p.Shapes).Select(s => s.Finished))
        {
            Nearest web = Web(shape);
            Assert.Equal(web, Thickness.LeastWeb(shape, web.DistanceMm + 1e-9));
            Assert.Null(Thickness.LeastWeb(shape, web.DistanceMm));
            if (Thickness.LeastSlot(shape) is Nearest slot)
            {
                Assert.Equal(slot, Thickness.LeastSlot([shape], slot.DistanceMm + 1e-9));
                Assert.Null(Thickness.LeastSlot([shape], slot.DistanceMm));
            }
        }
    }

    [Fact]
    public void LeastWeb_BetweenWindowsOfNeighbouringRings_IsRadial()
    {
        Outline wheel = new(Contour.Circle(Point.Origin, 20), [Generators.Sector(4, 2, 0, 1), Generators.Sector(7.25, 2, 0.5, 3)]);
        Assert.Equal(1.25, Web(wheel).DistanceMm, 1e-12);

        // Windows that do not face: the corner at (6, 1 rad) and the corner at (7.25, 1.1 rad), by the law of cosines.
        Outline apart = new(Contour.Circle(Point.Origin, 20), [Generators.Sector(4, 2, 0, 1), Generators.Sector(7.25, 2, 1.1, 3)]);
        Assert.Equal(Math.Sqrt(36 + (7.25 * 7.25) - (12 * 7.25 * Math.Cos(0.1))), Web(apart).DistanceMm, 1e-12);
    }

    [Fact]
    public void LeastWeb_CornerToCorner_IsDistanceOfTheCorners()
    {
        Contour diamond = Contour.Polygon(new(2, 0), new(0, 2), new(-2, 0), new(0, -2));
        Outline plate = new(_plate, [diamond, diamond.Placed(Placement.Translation(new(4.5, 0)))]);
        Nearest web = Web(plate);
        Assert.Equal(0.5, web.DistanceMm, 1e-12);
        Assert.Equal(0, web.OnFirst.Y, 1e-12);
    }

    [Fact]
    public void LeastWeb_CornerToArc_LiesOnTheNormal() =>
        Assert.Equal(0.25, Web(new(_plate, [Contour.Polygon(new(2, 0), new(0, 2), new(-2, 0), new(0, -2)), Contour.Circle(new(5.25, 0), 3)])).DistanceMm, 1e-12);

    [Fact]
    public void LeastSlot_RoundEndedSlot_IsItsWidth()
    {
        Contour slot = Contour.Rectangle(new(0, 0), new(6, 0.8)).Filleted(0.4, Corners.All);
        Nearest least = Slot(new Outline(_plate, [slot]));
        Assert.Equal(0.8, least.DistanceMm, 1e-12);
    }

    [Fact]
    public void LeastSlot_Notch_IsItsWidth()
    {
        Contour comb = Contour.Polygon(new(0, 0), new(7, 0), new(7, 5), new(4, 5), new(4, 1), new(3.3, 1), new(3.3, 5), new(0, 5));
        Assert.Equal(0.7, Slot(new Outline(comb)).DistanceMm, 1e-12);
        Assert.Equal(1, Web(new(comb)).DistanceMm, 1e-12);
    }

    [Fact]
    public void LeastSlot_TwoShapes_IsBetweenThem() =>
        Assert.Equal(1.5, Slot(new Outline(Contour.Circle(Point.Origin, 2)), new Outline(Contour.Circle(new(6.5, 0), 3))).DistanceMm, 1e-12);

    /// <summary>Parallel sides face each other along 10 mm, but only beside the hole is the disc between them empty.</summary>
    [Fact]
    public void LeastWeb_HoleMidwayBetweenSides_LeavesOnlyTheFreeStretch()
    {
        Outline bar = new(Contour.Rectangle(new(0, 0), new(10, 2)), [Contour.Circle(new(5, 1), 0.2)]);
        Assert.Equal(0.8, Web(bar).DistanceMm, 1e-12);
        Nearest slot = Slot(bar);
        Assert.Equal(0.4, slot.DistanceMm, 1e-12);
    }

    /// <summary>Oracle: offsets; a shape falls apart or its holes join only when shrunk by more than half its least web, and
    /// gaps close only when grown by more than half the least slot.</summary>
    [Fact]
    public void LeastWebAndSlot_AnyOutline_BoundTheOffsetsThatTearOrJoin() =>
        Generators.Outlines.Sample(
            outline =>
            {
                double web = Thickness.LeastWeb(outline)?.DistanceMm ?? 4;
                double slot = Thickness.LeastSlot(outline)?.DistanceMm ?? 4;
                Assert.DoesNotContain(Offsets.Of(outline, -0.499 * web).Changes, c => IsTear(c.Kind));
                Assert.DoesNotContain(Offsets.Of(outline, 0.499 * slot).Changes, c => IsTear(c.Kind));
            },
            iter: Generators.FewSamples);

    /// <summary>Oracle: the definition; normal at both ends, disc empty, in the material.</summary>
    [Fact]
    public void LeastWeb_AnyOutline_IsWhatItsDefinitionSays() =>
        Generators.Outlines.Sample(
            outline =>
            {
                if (Thickness.LeastWeb(outline) is Nearest web)
                {
                    Point middle = web.OnFirst.Towards(web.OnSecond, 0.5);
                    Assert.Equal(web.DistanceMm, web.OnFirst.DistanceTo(web.OnSecond), 1e-9);
                    Assert.Equal(Whereabouts.OnEdge, outline.Locate(web.OnFirst, 1e-8));
                    Assert.Equal(Whereabouts.OnEdge, outline.Locate(web.OnSecond, 1e-8));
                    Assert.Equal(web.DistanceMm / 2, Distances.ToEdge(middle, outline).DistanceMm, 1e-8);
                    Assert.True(outline.Contains(middle));
                }
            },
            iter: Generators.FewSamples);

    /// <summary>Oracle: brute force over discs that touch the edge (<see cref="InscribedDiscs"/>), within 2 µm.</summary>
    [Fact]
    public void LeastWeb_AnyOutline_IsThatOfBruteForce() =>
        Generators.Outlines.Sample(
            outline =>
            {
                double found = Thickness.LeastWeb(outline)?.DistanceMm ?? double.PositiveInfinity, asked = InscribedDiscs.LeastWebMm(outline);
                Assert.True(found == asked || Math.Abs(found - asked) <= 0.002, FormattableString.Invariant($"{found} mm, by brute force {asked} mm"));
            },
            iter: 15);

    /// <summary>The same of copper wheels with windows, slopes and fillets.</summary>
    [Fact]
    public void LeastWeb_OfRandomWheels_IsThatOfBruteForce()
    {
        int tried = 0;
        for (int i = 0; tried < 3; i++)
        {
            if (DesignOf(i) is not Design design)
            {
                continue;
            }

            tried++;
            foreach (CutShape shape in design.Parts.Wheel.Shapes)
            {
                Assert.Equal(InscribedDiscs.LeastWebMm(shape.Finished), Thickness.LeastWeb(shape.Finished)!.Value.DistanceMm, 0.002);
            }
        }

        static Design? DesignOf(int number)
        {
            try
            {
                return Design.Of(SheetDesigns.Numbered(number));
            }
            catch (DesignRefusedException)
            {
                return null;
            }
        }
    }

    /// <summary>Oracle: the same shape turned, mirrored or in another unit (metamorphic).</summary>
    [Fact]
    public void LeastWeb_Placed_ScalesWithTheUnit() =>
        Gen.Select(Generators.Outlines, Generators.Placements).Sample(
            (outline, placement) =>
            {
                double? plain = Thickness.LeastWeb(outline)?.DistanceMm;
                double? placed = Thickness.LeastWeb(outline.Placed(placement))?.DistanceMm;
                Assert.Equal(plain ?? -1, placed / placement.Scale ?? -1, 1e-7);
            },
            iter: Generators.FewSamples);

    private static bool IsTear(OffsetChangeKind kind) => kind is OffsetChangeKind.ContourSplit or OffsetChangeKind.ContoursJoined;

    private static Nearest Web(Outline outline) => Assert.NotNull(Thickness.LeastWeb(outline));

    private static Nearest Slot(params Outline[] outlines) => Assert.NotNull(Thickness.LeastSlot(outlines));
}
