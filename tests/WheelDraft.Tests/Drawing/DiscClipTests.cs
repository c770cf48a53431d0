using CsCheck;
using WheelDraft.Drawing;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Drawing;

/// <summary>Shapes cut by the circle of an enlarged view, and places pushed apart.</summary>
public sealed class DiscClipTests
{
    // Oracle: points of a grid, each inside the parts if and only if it is inside shape and circle.
    [Fact]
    public void Inside_PolygonsAndCircles_HoldsWhatBothHold() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Double[0.5, 4], Gen.Int[0, 2]).Sample((x, y, radius, kind) =>
        {
            Contour shape = kind switch
            {
                0 => Contour.Rectangle(new(-2, -1), new(2, 1)),
                1 => Contour.Polygon(new(-2, -2), new(2, -2), new(2, 2), new(1, 2), new(1, -1), new(-1, -1), new(-1, 2), new(-2, 2)),
                _ => Contour.Circle(new(0.5, 0), 1.5),
            };
            Outline whole = new(shape);
            Outline[] parts = [.. DiscClip.Inside(shape, new Arc(new(x, y), radius, 0, Angles.TurnRad), whole.Contains).Select(c => new Outline(c))];
            for (double px = -4.03; px < 4; px += 0.37)
            {
                for (double py = -4.01; py < 4; py += 0.41)
                {
                    Point p = new(px, py);
                    if (Math.Abs(p.DistanceTo(new(x, y)) - radius) > 1e-3 && shape.Pieces.Min(s => Enumerable.Range(0, 65).Min(i => s.PointAt(i / 64.0).DistanceTo(p))) > 0.08)
                    {
                        Assert.Equal(whole.Contains(p) && p.DistanceTo(new(x, y)) < radius, parts.Any(o => o.Contains(p)));
                    }
                }
            }
        });

    // Oracle: the definition, by counting. Nothing nearer than the pitch, order kept, inside the limits, and unmoved where there was room.
    [Fact]
    public void Apart_AnyPlaces_KeepPitchOrderAndLimits() =>
        Gen.Double[0, 100].Array[1, 12].Sample(places =>
        {
            double[] ascending = [.. places.Order()];
            double[] apart = Spread.Apart(ascending, 4, 0, 100);
            for (int i = 1; i < apart.Length; i++)
            {
                Assert.True(apart[i] - apart[i - 1] >= 4 - 1e-9);
            }

            Assert.InRange(apart[0], -1e-9, 100);
            Assert.InRange(apart[^1], 0, 100 + 1e-9);
            double[] roomy = [.. Enumerable.Range(0, ascending.Length).Select(i => 5.0 * (i + 1))];
            Assert.Equal(roomy, Spread.Apart(roomy, 4, 0, 100));
        });
}
