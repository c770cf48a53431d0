using CsCheck;
using WheelDraft.Drawing;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Sheets;

/// <summary>Boxes seen from the side as outlines; the oracle is a grid of points that lie in a box or in none.</summary>
public sealed class SideProfileTests
{
    // Two boxes that touch within rounding left a slab too thin for an outline, and the sheet was left out.
    [Fact]
    public void Of_BoxesThatTouchWithinRounding_IsOneOutline()
    {
        Outline profile = Assert.Single(SideProfile.Of([new(0, 0, 1, 1), new(Math.BitIncrement(1), 0, 2, 1), new(1 - 1e-12, 0.5, 2, 2)]));
        Assert.Equal(new(0, 0, 2, 2), profile.Bounds);
    }

    [Fact]
    public void Of_AnyBoxes_CoversWhatTheyCoverAndNothingElse()
    {
        Gen<Bounds> box = Gen.Select(Gen.Int[0, 8], Gen.Int[0, 8], Gen.Int[1, 4], Gen.Int[1, 4]).Select((x, y, w, h) => new Bounds(x, y, x + w, y + h));
        box.Array[1, 8].Sample(boxes =>
        {
            IReadOnlyList<Outline> profiles = SideProfile.Of(boxes);
            for (double x = 0.5; x < 13; x++)
            {
                for (double y = 0.5; y < 13; y++)
                {
                    Point at = new(x, y);
                    bool covered = boxes.Any(b => b.Contains(at));
                    Assert.Equal(covered ? 1 : 0, profiles.Count(p => p.Contains(at)));
                }
            }
        });
    }
}
