using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Strips;

public sealed class FoldBackTests
{
    private const double MicronMm = 1e-3;

    public static TheoryData<string> Strips => [.. StripCases.All.Keys];

    // Oracle: the blank folded plate by plate (FoldedBlank), seated, and put in the housing by the clamp's place alone.
    [Theory]
    [MemberData(nameof(Strips))]
    public void Of_BlankFoldedBack_TouchesWhereTheFileSays(string name)
    {
        Brief brief = StripBriefs.With(StripCases.All[name]);
        PlacedStrip strip = StripSet.Of(brief, StripBriefs.Rings).Strips[0];
        StripForm form = strip.Form;
        SpaceVector free = InHousing(strip, FoldedBlank.NoseCentre(form)) - (SpaceVector.Upward * form.Nose!.RadiusMm);

        // Height: the free contact lies the deflection below the copper.
        double deflection = form.Strip.DeflectionMm ?? strip.Spring!.DeflectionMm;
        Assert.Equal(-deflection, free.Z, MicronMm / 1000);

        // Plan: pressed, it is on its ring at its station.
        SpaceVector pressed = free + (strip.Placement.Turned(strip.Spring!.GivesMmPerN) * strip.Spring.ForceN);
        Assert.True(pressed.Plan.DistanceTo(StripBriefs.Rings.Feed!.Contact) < MicronMm / 1000, $"{pressed}");
        Assert.Equal(0, pressed.Z, MicronMm / 1000);
        Assert.True((strip.WorkingContact!.Value - pressed).Length < MicronMm / 1000);

        // The same with the frame's shift of the nose in place of the strip's own: still within a micron or two.
        SpaceVector byFrame = free + (strip.Placement.Turned(StripFrames.Gives(form)) * strip.Spring.ForceN);
        Assert.True(byFrame.Plan.DistanceTo(StripBriefs.Rings.Feed!.Contact) < 2 * MicronMm, $"{byFrame}");
    }

    [Theory]
    [MemberData(nameof(Strips))]
    public void Of_BlankFoldedBack_LeavesInTheApproachDirection(string name)
    {
        PlacedStrip strip = StripSet.Of(StripBriefs.With(StripCases.All[name]), StripBriefs.Rings).Strips[0];
        StripForm form = strip.Form;
        int folds = form.Folds.Count(f => f.AtMm < form.Nose!.AtMm - 2);
        Point from = OnBlank(form, form.Nose!.AtMm - 1.5);
        Point to = OnBlank(form, form.Nose.AtMm - 1.0);
        SpaceVector a = InHousing(strip, FoldedBlank.Fold(form, from.X, from.Y, 0, folds));
        SpaceVector b = InHousing(strip, FoldedBlank.Fold(form, to.X, to.Y, 0, folds));
        Vector back = a.Plan - b.Plan;
        Assert.Equal(0, Angles.Signed(back.AngleRad - StripBriefs.Rings.Feed!.StationRad - form.Strip.ApproachRad!.Value), 1e-9);
    }

    [Theory]
    [MemberData(nameof(Strips))]
    public void Of_SeatedPart_LiesOnItsSurface(string name)
    {
        PlacedStrip strip = StripSet.Of(StripBriefs.With(StripCases.All[name]), StripBriefs.Rings).Strips[0];
        Solid[] seated = [.. strip.Solids.Where(s => s.OnSurface is not null)];
        Assert.NotEmpty(seated);
        Assert.All(seated, s => Assert.Equal(-7, s.FromZMm, 0.05));
        Assert.Equal(-7, seated[0].FromZMm, 1e-12);
        Assert.Equal(-6.5, seated[0].ToZMm, 1e-12);
    }

    // The clamp's second line on the blank is the origin of seat coordinates, x along the strip there.
    private static SpaceVector InHousing(PlacedStrip strip, FoldedBlank.Place p)
    {
        Segment clamp = strip.Form.Blank.ClampLines[1];
        Point origin = clamp.PointAt(0.5);
        Vector left = clamp.Direction;
        Vector along = new(left.Y, -left.X);
        Vector v = new Point(p.X, p.Y) - origin;
        double floor = -7 + (strip.Form.Strip.ThicknessMm / 2);
        return strip.Placement.Of(new SpaceVector(v.Dot(along), v.Dot(left), p.Z + floor));
    }

    // These strips end straight: back from the middle of the end edge.
    private static Point OnBlank(StripForm form, double atMm)
    {
        Segment line = form.Blank.FoldLines[^1];
        FormedPiece last = form.Pieces.Last(p => p.FromMm < atMm && p.DevelopedMm > 0);
        if (form.Pieces.All(p => p.Kind != FormedKind.Sweep || p.FromMm < form.Folds[^1].AtMm))
        {
            Vector along = new(line.Direction.Y, -line.Direction.X);
            return line.PointAt(0.5) + (along * (atMm - form.Folds[^1].AtMm));
        }

        Point mark = form.Blank.Marks.Single(m => m.Means == BlankMarkKind.Rivet).At;
        double turned = form.Pieces.Where(p => p.Kind == FormedKind.Sweep).Sum(p => p.AngleRad);
        Assert.Equal(FormedKind.Straight, last.Kind);
        return mark + Vector.Polar(atMm - form.Nose!.AtMm, turned);
    }
}
