using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Geometry;

public sealed class BorderCutsTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void IsOnSpan_HairBeforeTheStart_IsOnTheArc(int sense)
    {
        // A tangent point found by calculation may lie 1e-10 mm before the arc begins; 1e-6 mm before it is off.
        Arc arc = new(new Point(2, 1), 3, 0.5, sense * 1.2);
        Assert.True(BorderCuts.IsOnSpan(arc, At(-1e-10)));
        Assert.True(BorderCuts.IsOnSpan(arc, At(3.6 + 1e-10)));
        Assert.False(BorderCuts.IsOnSpan(arc, At(-1e-6)));
        Assert.False(BorderCuts.IsOnSpan(arc, At(3.6 + 1e-6)));

        Point At(double alongMm) => arc.Centre + Vector.Polar(3, 0.5 + (sense * alongMm / 3));
    }

    [Fact]
    public void Add_LegThroughAnArcsVeryStart_IsCut()
    {
        Arc arc = new(Point.Origin, 2, 0, 1);
        List<double> shares = [];
        BorderCuts.Add(new Segment(new Point(1, -5e-10), new Point(3, -5e-10)), arc, shares);
        Assert.Equal(0.5, Assert.Single(shares), 1e-9);
    }
}
