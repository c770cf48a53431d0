using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The pocket of a carrier that the copper is let into; wheel frame.</summary>
/// <param name="Pockets">Its shapes, seen from the wiper side: as the copper, larger by the fit all round; what stands in a window fills it.</param>
/// <param name="DepthMm">Depth below the carrier's face, mm: what of the copper's thickness does not stand proud of it.</param>
/// <param name="FitMm">From the copper's finished edge to the pocket's wall, mm.</param>
/// <param name="FloorMm">What is left of the carrier under the copper, mm; 0 or less when nothing is.</param>
/// <param name="LostWindows">How many windows are too narrow for anything to be left standing in them.</param>
internal sealed record CarrierRecess(IReadOnlyList<Outline> Pockets, double DepthMm, double FitMm, double FloorMm, int LostWindows)
{
    // A pocket less deep than this is none: the copper lies on the face, mm.
    private const double LeastDepthMm = 1e-6;

    // Holes of the copper this near to a fixing's centre are that fixing's, mm.
    private const double SamePlaceMm = 1e-6;

    /// <summary>The recess of a wheel; null where the copper lies on the carrier's face.</summary>
    /// <remarks>The fit is the process tolerance of the copper's cut edges, so that copper as large as the process may leave it goes in. Bore and
    /// fixings go through both and are no part of the pocket.</remarks>
    public static CarrierRecess? Of(Brief brief, WheelLayout wheel)
    {
        double depth = brief.Wheel.ThicknessMm - brief.Carrier.StepMm;
        if (depth < LeastDepthMm)
        {
            return null;
        }

        double fit = brief.Process.ToleranceMm;
        Outline[] copper = [.. wheel.Copper.Select(c => new Outline(c.Outline.Outer, c.Outline.Holes.Where(h => !IsThrough(h, wheel))))];
        OffsetResult[] grown = [.. copper.Select(c => Offsets.Of(c, fit))];
        int lost = copper.Sum(c => c.Holes.Count) - grown.Sum(g => g.Outlines.Sum(o => o.Holes.Count));
        return new([.. grown.SelectMany(g => g.Outlines)], depth, fit, brief.Carrier.ThicknessMm - depth, Math.Max(0, lost));
    }

    /// <summary>What the shop could not make of it.</summary>
    public IEnumerable<Finding> Findings(Brief brief)
    {
        if (FloorMm <= 0)
        {
            yield return Finding.Error(
                "carrier.floor",
                $"A recess of {Wording.Mm(DepthMm)} goes through a carrier of {Wording.Mm(brief.Carrier.ThicknessMm)}: nothing is left under the copper to hold it. A thicker carrier would do, or a larger [carrier] step.",
                brief.PlaceOf("carrier.thickness"));
        }
    }

    private static bool IsThrough(Contour hole, WheelLayout wheel) =>
        new Outline(hole.Travelled(Turning.Anticlockwise)).Contains(Point.Origin)
        || wheel.Fixings.Any(f => hole.Pieces is [Arc arc] && arc.Centre.DistanceTo(f) < SamePlaceMm);
}
