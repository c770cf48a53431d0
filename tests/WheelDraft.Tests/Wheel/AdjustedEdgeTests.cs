using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Wheel;

/// <summary>How far an adjusted edge may be sloped.</summary>
public sealed class AdjustedEdgeTests
{
    // Oracle: symmetry, under a contact that is as good as a point. The line of an edge mirrored in the radius through its crossing gives every wiper radius
    // the opposite time, so what can be set for an on-time longer inwards can be set for one longer outwards, up to the same range, at either edge.
    [Theory]
    [InlineData(15, 2)]
    [InlineData(15, 4)]
    [InlineData(25, 3)]
    public void At_RangeThatGrowsInwardsOrOutwards_IsSetUpToTheSame(double radiusMm, double travelMm)
    {
        int[] set = [.. from edge in new[] { AdjustedEdge.On, AdjustedEdge.Off } from way in new[] { LongerWay.In, LongerWay.Out } select RangesSet(radiusMm, travelMm, edge, way)];
        Assert.InRange(set[0], 10, Ranges - 1);
        Assert.All(set, s => Assert.Equal(set[0], s));
    }

    private const int Ranges = 400;
    private const double PointMm = 1e-6;

    /// <summary>How many ranges, in steps of 0.05 s, can be set before the first that cannot.</summary>
    private static int RangesSet(double radiusMm, double travelMm, AdjustedEdge edge, LongerWay way) => Enumerable.Range(1, Ranges).TakeWhile(i =>
    {
        RingDemand ring = new()
        {
            Name = "drawn",
            Where = default,
            Patch = new() { IsDisc = true, HalfLengthMm = PointMm, HalfWidthMm = PointMm, WornHalfLengthMm = PointMm, AngleRad = 0 },
            Periods = [new(Angles.RadFromDeg(40), Angles.RadFromDeg(150), 0)],
            SidePlayMm = 0.1,
            ToleranceS = 1e9,
            SideGapMm = 1,
            Adjust = new(edge, 0.05 * i, travelMm, way, "M3", 0.5, 1),
        };
        RingShop shop = new(new Motion(180, Turning.Clockwise), 0.01, 0.1, new(null, 0, 0.05, 0.1, 0.1, 0.1, 0.1));
        return new RingSetter(shop, ring).At(radiusMm).Fault is null;
    }).Count();
}
