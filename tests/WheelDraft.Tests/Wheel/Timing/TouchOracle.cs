using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests.Wheel.Timing;

/// <summary>One member of the box of deviations.</summary>
internal readonly record struct Member(
    double FrequencyShare, double MakeCutMm, double BreakCutMm, double CentreXMm, double CentreYMm, double MakeSideMm, double BreakSideMm, double WearShare)
{
    /// <summary>Each wiper off its station, as a share of what it may be; only lands notice.</summary>
    public double MakePlacing { get; init; }

    public double BreakPlacing { get; init; }
}

/// <summary>On-times of members of the box, found by turning the wheel until the patch no longer touches.</summary>
/// <remarks>Shares no formula with the program: it takes two points of each cut edge, shifts the edge, and finds by halving the angle
/// at which the last point of the patch lies on it. Everything stands in the programme frame of the output's own wiper.</remarks>
internal sealed class TouchOracle(DrawnRing drawn)
{
    private const double SearchRad = 0.6;

    internal double NominalS(double movedMm) => OnS(default, movedMm);

    internal double OnS(Member member, double movedMm)
    {
        double make = TouchRad(EdgeEnd.Make, member, movedMm);
        double off = TouchRad(EdgeEnd.Break, member, movedMm);
        return Math.Max(0, off - make) / (2 * Math.PI) * drawn.Shop.Motion.TurnTimeS / (1 + member.FrequencyShare);
    }

    /// <summary>Programme angle at which the contact makes or breaks.</summary>
    internal double TouchRad(EdgeEnd end, Member member, double movedMm)
    {
        CopperEdge edge = end == EdgeEnd.Make ? drawn.Cut.Make : drawn.Cut.Break;
        ContactPatch patch = end == EdgeEnd.Make ? drawn.Ring.MakePatch : drawn.Ring.BreakPatch;
        double wiper = drawn.Trial.RadiusMm + movedMm + (end == EdgeEnd.Make ? member.MakeSideMm : member.BreakSideMm);

        // Where the wiper that makes, or breaks, stands over the wheel when the output's own wiper stands over 0; plus its placing.
        double stands = -Later(end) + (PlacingRad * (end == EdgeEnd.Make ? member.MakePlacing : member.BreakPlacing));
        (double nx, double ny, double d) = Line(edge, drawn.Trial.BandFromMm, drawn.Trial.BandToMm);
        d += (nx * member.CentreXMm) + (ny * member.CentreYMm) + (end == EdgeEnd.Make ? member.MakeCutMm : member.BreakCutMm);
        (double X, double Y)[] points = Points(patch, member.WearShare);
        double ball = patch.IsDisc ? Half(patch, member.WearShare) : 0;

        // How far the innermost point of the patch stands beyond the edge: nought at the touch, above when it has left.
        double Beyond(double at)
        {
            (double sin, double cos) = Math.SinCos(at + stands);
            double least = double.PositiveInfinity;
            foreach ((double x, double y) in points)
            {
                (double px, double py) = (wiper + x, y);
                least = Math.Min(least, (nx * ((px * cos) - (py * sin))) + (ny * ((px * sin) + (py * cos))) - d - ball);
            }

            return least;
        }

        double nominal = end == EdgeEnd.Make ? drawn.Period.StartRad : drawn.Period.EndRad;
        (double inside, double outside) = end == EdgeEnd.Make ? (nominal + SearchRad, nominal - SearchRad) : (nominal - SearchRad, nominal + SearchRad);
        for (int i = 0; i < 52; i++)
        {
            double middle = (inside + outside) / 2;
            (inside, outside) = Beyond(middle) > 0 ? (inside, middle) : (middle, outside);
        }

        return (inside + outside) / 2;
    }

    // One wiper off its station makes and breaks later alike: only two of them change an on-time.
    private double PlacingRad => drawn.Ring.Land is null ? 0 : drawn.Ring.PlacingRad(drawn.Shop.PlacingMm, drawn.Trial.RadiusMm);

    private double Later(EdgeEnd end)
    {
        if (drawn.Ring.Land is not LandDemand land)
        {
            return 0;
        }

        bool isReturn = end == EdgeEnd.Make ? !land.Pair.ReturnIsUpstream : land.Pair.ReturnIsUpstream;
        return isReturn ? land.Pair.ReturnLaterRad : 0;
    }

    /// <summary>The line through two points of the edge, its normal out of the copper.</summary>
    private static (double X, double Y, double D) Line(CopperEdge edge, double fromMm, double toMm)
    {
        (double a, double b) = (edge.AngleAt(fromMm), edge.AngleAt(toMm));
        (double x1, double y1, double x2, double y2) = (fromMm * Math.Cos(a), fromMm * Math.Sin(a), toMm * Math.Cos(b), toMm * Math.Sin(b));
        double length = Math.Sqrt(((x2 - x1) * (x2 - x1)) + ((y2 - y1) * (y2 - y1)));
        (double nx, double ny) = ((y1 - y2) / length, (x2 - x1) / length); // towards growing angles: out of the copper at a break
        double sense = edge.End == EdgeEnd.Break ? 1 : -1;
        return (sense * nx, sense * ny, sense * ((nx * x1) + (ny * y1)));
    }

    private static double Half(ContactPatch patch, double wearShare) =>
        patch.HalfLengthMm + (wearShare * (patch.WornHalfLengthMm - patch.HalfLengthMm));

    private (double X, double Y)[] Points(ContactPatch patch, double wearShare)
    {
        if (patch.IsDisc)
        {
            return [(0, 0)];
        }

        double mirror = drawn.Shop.Motion.Direction == Turning.Clockwise ? 1 : -1;
        (double sin, double cos) = Math.SinCos(patch.AngleRad);
        double half = Half(patch, wearShare);
        return [.. from along in (double[])[-1, 1]
                   from across in (double[])[-1, 1]
                   let s = along * patch.HalfWidthMm
                   let t = across * half
                   select ((s * cos) - (t * sin), mirror * ((s * sin) + (t * cos)))];
    }
}
