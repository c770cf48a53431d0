using NetTopologySuite.Geometries;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using WheelDraft.Tests.Geometry;
using Xunit;

namespace WheelDraft.Tests.Circuit;

/// <summary>What a meter reads on a timer that is not live, against brute force: patches laid on the cut copper by another library.</summary>
public sealed class ColdTestTests
{
    private const double StepDeg = 0.5;

    public static TheoryData<string> Files => [.. Demos.Names];

    // Oracle: NetTopologySuite, the patch turned onto the copper as cut, at every half degree; no edge, schedule or interval of the program is asked.
    [Theory]
    [MemberData(nameof(Files))]
    public void Of_EveryHalfDegree_ReadsAsPatchesOnTheCutCopperDo(string file)
    {
        Design design = Demos.Of(file);
        ColdTest test = ColdTest.Of(design.Circuit);
        Polygon[] copper = [.. design.Wheel.Copper.Select(c => Flattened.Polygon(c.Outline))];
        int compared = 0;
        for (double deg = 0; deg < 360; deg += StepDeg)
        {
            if (Row(test, deg) is not ColdRow row)
            {
                continue;
            }

            compared++;
            for (int output = 0; output < design.Wheel.Rings.Count; output++)
            {
                RingLayout ring = design.Wheel.Rings[output];
                bool[] touched = [.. copper.Select(c => ring.Wipers.Select(w => c.Intersects(Patch(design, ring, w, deg))).Aggregate(seed: design.Wheel.Feed is not null || ring.Wipers.Count > 1, (a, b) => a && b))];
                Assert.True(touched.Any(t => t) == row.Closed[output], FormattableString.Invariant($"{ring.Name} at {deg}°: {(row.Closed[output] ? "closed" : "open")} in the table"));
            }
        }

        // Edges and their bands take part of the turn, and only a small one.
        Assert.InRange(compared, 0.8 * 360 / StepDeg, 360 / StepDeg);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Of_SureAngles_LieWithinTheirRowByTheWorstCaseOfItsEdges(string file)
    {
        Design design = Demos.Of(file);
        foreach (ColdRow row in ColdTest.Of(design.Circuit).Rows)
        {
            Assert.NotNull(row.SureDeg);
            (double from, double to) = row.SureDeg.Value;
            double start = Angles.DegFromRad(row.FromRad);
            double length = Angles.DegFromRad(row.LengthRad);
            double into = (from - start + 360) % 360;
            double reach = (to - start + 360) % 360;
            Assert.InRange(into, 0, reach);
            Assert.InRange(reach, into, length + 1e-9);
            Assert.Equal(Math.Round(from, 1), from);
        }
    }

    // Two outputs, on 90° to 180° and 120° to 270°, edges within 2°: by hand.
    [Fact]
    public void Of_TwoOverlappingOutputs_GivesTheRowsOfAHandDrawing()
    {
        EdgeBand band = new(Angles.RadFromDeg(2), Angles.RadFromDeg(2));
        ContactSchedule On(string name, double from, double to) => new(name, name, "L", [new(CircleArc.Between(Angles.RadFromDeg(from), Angles.RadFromDeg(to)), band, band)]);
        Brief worked = Briefs.Worked();
        Brief brief = worked with { Outputs = [worked.Outputs[0] with { Name = "a", Net = "a" }, worked.Outputs[1] with { Name = "b", Net = "b" }], Loads = [], Inputs = [], DriveMotor = null, Interlocks = [], Scenarios = [] };
        ColdTest test = ColdTest.Of(CircuitAnalysis.Of(new CircuitRequest(brief, [On("a", 90, 180), On("b", 120, 270)])));
        Assert.Equal([(272.0, 88.0), (92.0, 118.0), (122.0, 178.0), (182.0, 268.0)], test.Rows.Select(r => r.SureDeg!.Value));
        Assert.Equal(["", "a", "ab", "b"], test.Rows.Select(r => (r.Closed[0] ? "a" : "") + (r.Closed[1] ? "b" : "")), StringComparer.Ordinal);
        Assert.Equal([new ColdPair("feed", "a"), new ColdPair("feed", "b")], test.Pairs);
    }

    private static ColdRow? Row(ColdTest test, double deg) => test.Rows.FirstOrDefault(r => r.SureDeg is (double from, double to) && (from <= to ? deg >= from && deg <= to : deg >= from || deg <= to));

    // The patch in the wheel's frame: its station less what the wheel has turned.
    private static NetTopologySuite.Geometries.Geometry Patch(Design design, RingLayout ring, RingWiper wiper, double deg)
    {
        double at = wiper.StationRad - (design.Motion.Sigma * Angles.RadFromDeg(deg));
        GeometryFactory factory = new();
        (double halfLength, double halfWidth) = (wiper.Patch.HalfLengthMm, wiper.Patch.HalfWidthMm);
        if (wiper.Patch.IsDisc)
        {
            return factory.CreatePoint(new Coordinate(ring.RadiusMm * Math.Cos(at), ring.RadiusMm * Math.Sin(at))).Buffer(halfLength, 32);
        }

        double turn = wiper.Patch.AngleRad;
        Coordinate Corner(double along, double across)
        {
            double x = ring.RadiusMm + (across * Math.Cos(turn)) - (along * Math.Sin(turn));
            double y = (across * Math.Sin(turn)) + (along * Math.Cos(turn));
            return new((x * Math.Cos(at)) - (y * Math.Sin(at)), (x * Math.Sin(at)) + (y * Math.Cos(at)));
        }

        Coordinate first = Corner(-halfLength, -halfWidth);
        return factory.CreatePolygon([first, Corner(halfLength, -halfWidth), Corner(halfLength, halfWidth), Corner(-halfLength, halfWidth), first]);
    }
}
