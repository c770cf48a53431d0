using System.Text.RegularExpressions;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using Xunit;

namespace WheelDraft.Tests.Fabrication;

public sealed partial class CutShapeTests
{
    private static ProcessBrief WideKerf => Briefs.Cutter with { KerfMm = 0.6, InsideRadiusMm = 0.3 };

    // Refusals once told coordinates with every digit that a double has.
    [Fact]
    public void Of_HolesThatTheKerfCloses_AreToldWithRoundedPlaces()
    {
        Outline plate = new(
            Contour.Circle(Point.Origin, 20),
            [Contour.Circle(new(10.0 / 3, -1.0 / 7), 0.2), Contour.Circle(new(-10.0 / 3, 1.0 / 7), 0.25)]);
        string message = Assert.Throws<DesignRefusedException>(() => CutShape.Of(plate, WideKerf, "the wheel", null)).Reasons[0].Message;
        Assert.Contains("hole 1 at (3.53, -0.14) vanishes; hole 2 at (-3.08, 0.14) vanishes", message, StringComparison.Ordinal);
        Assert.DoesNotMatch(ThreeDecimals(), message);
    }

    [Fact]
    public void Of_ContoursThatCross_AreToldWithARoundedPlaceAndOneFullStop()
    {
        Outline crossing = new(Contour.Circle(Point.Origin, 20), [Contour.Circle(new(10.0 / 3, 0), 20)]);
        string message = CutChecks.Of(new(crossing, crossing, "the wheel", null), Briefs.Cutter).First(f => f.Code is "cut.contours").Message;
        Assert.DoesNotMatch(ThreeDecimals(), message);
        Assert.EndsWith(").", message, StringComparison.Ordinal);
    }

    [GeneratedRegex("[.][0-9]{3}", RegexOptions.None, 60_000)]
    private static partial Regex ThreeDecimals();
}
