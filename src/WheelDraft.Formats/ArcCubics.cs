using WheelDraft.Geometry;

namespace WheelDraft.Formats;

/// <summary>One cubic of an arc: where its two handles end, and where it ends itself.</summary>
internal readonly record struct ArcCubic(Point First, Point Second, Point End);

/// <summary>Arcs as cubics, for formats and canvases that have no arcs.</summary>
internal static class ArcCubics
{
    /// <summary>An eighth of a turn: the cubic then leaves the circle by 4.3e-6 of the radius, below a micrometre up to 230 mm.</summary>
    private const double PartRad = Math.PI / 4;

    /// <summary>Cubics with handles of 4/3 tan(sweep/4) radii, the usual approximation that meets the circle midway too.</summary>
    public static IEnumerable<ArcCubic> Of(Arc arc)
    {
        const double roundingRad = 1e-9;
        int parts = Math.Max(1, (int)Math.Ceiling((Math.Abs(arc.SweepRad) - roundingRad) / PartRad));
        double sweep = arc.SweepRad / parts;
        double handle = 4.0 / 3 * Math.Tan(sweep / 4) * arc.RadiusMm;
        for (int i = 0; i < parts; i++)
        {
            double from = arc.StartRad + (i * sweep);
            Point start = arc.PointAt(i / (double)parts);
            Point end = i == parts - 1 ? arc.End : arc.PointAt((i + 1) / (double)parts);
            yield return new(start + (Vector.Polar(1, from).Left * handle), end - (Vector.Polar(1, from + sweep).Left * handle), end);
        }
    }
}
