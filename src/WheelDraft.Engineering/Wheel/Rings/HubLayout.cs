using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Bore and fixings.</summary>
internal sealed record HubLayout(Contour Bore, IReadOnlyList<Point> Fixings, double? PitchCircleMm, HubBand Band, IReadOnlyList<KeptBand> Kept)
{
    /// <param name="brief">The brief.</param>
    /// <param name="webMm">What is kept between holes, mm.</param>
    public static HubLayout Of(Brief brief, double webMm)
    {
        WheelBrief wheel = brief.Wheel;
        double bore = wheel.Bore.DiameterMm / 2;
        Contour boreContour = BoreContour(wheel.Bore, brief.Process, brief.PlaceOf("wheel.bore"));
        TextPlace diameter = brief.PlaceOf("wheel.outer_diameter");
        if (wheel.Fixings is not FixingsBrief fixings)
        {
            return new(boreContour, [], null, new("the bore", bore, diameter), []);
        }

        double half = fixings.DiameterMm / 2, head = Math.Max(half, fixings.HeadMm / 2);
        double pitch = fixings.PitchCircleMm / 2 ?? PitchRadius(fixings.Count, bore, (half, head), webMm);

        // A web of copper round the hole, and all of the head: with lands it is metal by itself, so the whole head is kept from.
        double reach = wheel.Construction == WheelConstruction.Lands ? head : Math.Max(half, head - webMm);
        List<Point> centres = [.. Circle(fixings.Count, pitch, fixings.FirstAtRad), .. fixings.More.SelectMany(c => Circle(c.Count, c.PitchCircleMm / 2, c.FirstAtRad))];
        List<KeptBand> more = [.. fixings.More.Select((c, i) => new KeptBand(
            $"the fixings on a circle of {Wording.Mm(c.PitchCircleMm)}", (c.PitchCircleMm / 2) - reach, (c.PitchCircleMm / 2) + reach, brief.PlaceOf(FormattableString.Invariant($"wheel.fixings.more[{i}]"))))];
        if (fixings.PitchCircleMm is null)
        {
            return new(boreContour, centres, 2 * pitch, new("the fixings", pitch + reach, diameter), more);
        }

        KeptBand band = new("the fixings", pitch - reach, pitch + reach, brief.PlaceOf("wheel.fixings"));
        return new(boreContour, centres, 2 * pitch, new("the bore", bore, diameter), [band, .. more]);
    }

    /// <summary>A disc with these holes: the carrier.</summary>
    public Outline Carrier(double radiusMm, FixingsBrief? fixings) =>
        new(Contour.Circle(Point.Origin, radiusMm), [Bore, .. Fixings.Select(f => Contour.Circle(f, fixings!.DiameterMm / 2))]);

    private static IEnumerable<Point> Circle(int count, double radiusMm, double firstAtRad) =>
        Enumerable.Range(0, count).Select(i => Point.Polar(radiusMm, firstAtRad + (i * Angles.TurnRad / count)));

    /// <summary>In the hub: a web outside the bore, no head over it, and so far out that neighbours keep a web and their heads pass.</summary>
    private static double PitchRadius(int count, double boreMm, (double HoleMm, double HeadMm) half, double webMm)
    {
        double beside = boreMm + Math.Max(webMm + half.HoleMm, half.HeadMm);
        double apart = count < 2 ? 0 : Math.Max((2 * half.HoleMm) + webMm, 2 * half.HeadMm) / (2 * Math.Sin(Math.PI / count));
        return Math.Max(beside, apart);
    }

    /// <summary>The outline of a bore, the corners beside its flat rounded by the process.</summary>
    /// <param name="bore">The bore.</param>
    /// <param name="process">How it is cut.</param>
    /// <param name="place">Where it stands in the file.</param>
    /// <exception cref="DesignRefusedException">The flat does not cut it, or its corners cannot be rounded.</exception>
    public static Contour BoreContour(BoreBrief bore, ProcessBrief process, TextPlace place)
    {
        double radius = bore.DiameterMm / 2;
        if (bore.FlatMm is not double flat)
        {
            return Contour.Circle(Point.Origin, radius);
        }

        // The flat lies at this distance from the axis along its normal.
        double depth = flat - radius;
        if (depth >= radius || depth <= -radius)
        {
            throw new DesignRefusedException(
                "wheel.bore",
                $"A flat {Wording.Mm(flat)} from the opposite side does not cut a bore of {Wording.Mm(bore.DiameterMm)}; it must be more than 0 and less than the diameter.",
                place);
        }

        double half = Math.Acos(depth / radius);
        Point from = Point.Polar(radius, bore.FlatAtRad + half);
        Point to = Point.Polar(radius, bore.FlatAtRad - half);
        Contour sharp = new([Arc.About(Point.Origin, from, to, Turning.Anticlockwise), new Segment(to, from)]);
        try
        {
            return process.InsideRadiusMm > 0 ? sharp.Filleted(process.InsideRadiusMm, Corners.All) : sharp;
        }
        catch (FilletException)
        {
            throw new DesignRefusedException(
                "wheel.bore",
                $"The process leaves an inside radius of {Wording.Mm(process.InsideRadiusMm)}, too large for the corners beside the flat of a bore of {Wording.Mm(bore.DiameterMm)}: a smaller [process] inside_radius, a finer process, a larger bore, or a bore without flat.",
                place);
        }
    }
}
