namespace WheelDraft.Geometry;

/// <summary>Where edges of a relief face each other across a recess narrower than a link: across it leads a bridge.</summary>
/// <remarks><para>A recess is bridged by a straight link in the worst place (IEC 60664-1, clause on measuring, assumption 2), and where it narrows a way may go
/// to where it is narrow enough. Each edge is cut where it comes within a link of another's line; what lies nearer to each other than a link after that is
/// joined by a bridge from anywhere on the one to anywhere on the other. All links are on bridges, and a way over bridges bends only at ends of the edges
/// that they join; so none comes out longer than the shortest over links.</para>
/// <para>Between ribs corners are recesses as well; in the outline of the surface only edges that close in on each other at less than a right angle are, so that
/// the square end of a notch is gone round. Slots and grooves are as wide everywhere: those that are narrower than the link are no regions at all.</para></remarks>
/// <param name="edges">The edges.</param>
/// <param name="linkMm">The link between ribs, mm.</param>
/// <param name="notchMm">Notches of the outline are bridged where they are narrower, mm.</param>
internal sealed class Recesses(IReadOnlyList<ReliefEdge> edges, double linkMm, double notchMm)
{
    private const double SquareShare = 1e-9;

    /// <summary>Places at which edges are to be cut, so that each part of one is nearer to the line of another than a link, or further.</summary>
    internal List<Point> Cuts()
    {
        List<Point> cuts = [];
        foreach ((ReliefEdge near, ReliefEdge far, double link) in Facing())
        {
            AddCut(near, far, link, cuts);
            AddCut(far, near, link, cuts);
        }

        return cuts;
    }

    /// <summary>Joins edges by bridges.</summary>
    internal void Bridge()
    {
        foreach ((ReliefEdge near, ReliefEdge far, _) in Facing())
        {
            near.Across.Add(far);
            far.Across.Add(near);
        }
    }

    private IEnumerable<(ReliefEdge Near, ReliefEdge Far, double LinkMm)> Facing()
    {
        double most = Math.Max(linkMm, notchMm);
        for (int i = 0; i < edges.Count; i++)
        {
            Bounds around = edges[i].Bounds.Grown(most);
            for (int k = i + 1; k < edges.Count; k++)
            {
                if (edges[k].Bounds.Overlaps(around) && LinkMm(edges[i], edges[k]) is { } link && ApartMm(edges[i], edges[k]) < link)
                {
                    yield return (edges[i], edges[k], link);
                }
            }
        }
    }

    /// <summary>The link by which two edges can be joined; null when they do not face each other.</summary>
    private double? LinkMm(ReliefEdge a, ReliefEdge b)
    {
        bool areRibs = a.IsRaised && b.IsRaised && !a.Blocks && !b.Blocks && a.LowMm == b.LowMm;
        bool areNotch = a.IsOutline && b.IsOutline && a.Outward.Dot(b.Outward) < -SquareShare;
        return (areRibs || areNotch) && LiesBefore(a, b) && LiesBefore(b, a)
            ? areRibs ? linkMm : notchMm - SurfaceTolerances.SameMm
            : null;
    }

    private static bool LiesBefore(ReliefEdge a, ReliefEdge b) => Math.Max(a.OutwardOf(b.From), a.OutwardOf(b.To)) > Tolerances.TouchMm;

    private static double ApartMm(ReliefEdge a, ReliefEdge b) => Distances.Between(new Segment(a.From, a.To), new Segment(b.From, b.To)).DistanceMm;

    private static void AddCut(ReliefEdge near, ReliefEdge far, double link, List<Point> cuts)
    {
        double from = near.OutwardOf(far.From) - link, to = near.OutwardOf(far.To) - link;
        if (from * to < 0)
        {
            cuts.Add(far.From.Towards(far.To, from / (from - to)));
        }
    }
}
