using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The parts of a surface's edge that are near a conductor beside it, as slivers that paths begin at.</summary>
internal static class EdgeSlivers
{
    /// <summary>How wide a sliver is to either side of the edge, mm.</summary>
    /// <remarks>Half of the micrometre that a path may come out too short; far above what counts as on a border.</remarks>
    private const double HalfMm = 5e-4;

    /// <summary>How much longer than near a sliver may be at its ends, mm: on the safe side, and below what a drawing shows.</summary>
    private const double EndMm = 0.01;

    /// <summary>The slivers, in the order of the edge; each at most half of one edge, so that a whole circle is no ring.</summary>
    internal static IEnumerable<Outline> Of(Outline surface, Outline conductor, double reachMm)
    {
        foreach (Piece piece in surface.Pieces)
        {
            foreach (Piece half in (Piece[])[piece.Part(0, 0.5), piece.Part(0.5, 1)])
            {
                List<(double From, double To)> near = [];
                AddNear(half, 0, 1, conductor, reachMm, near);
                foreach ((double from, double to) in near)
                {
                    yield return Sliver(half.Part(from, to));
                }
            }
        }
    }

    private static void AddNear(Piece edge, double from, double to, Outline conductor, double reachMm, List<(double From, double To)> near)
    {
        Piece part = edge.Part(from, to);
        if (conductor.Pieces.Min(p => Distances.Between(part, p).DistanceMm) >= reachMm)
        {
            return;
        }

        double middle = (from + to) / 2;
        bool isNearAllAlong = conductor.Pieces.Min(p => Distances.Between(edge.PointAt(middle), p).DistanceMm) + (part.Length / 2) < reachMm;
        if (!isNearAllAlong && part.Length > EndMm)
        {
            AddNear(edge, from, middle, conductor, reachMm, near);
            AddNear(edge, middle, to, conductor, reachMm, near);
        }
        else if (near.Count > 0 && near[^1].To == from)
        {
            near[^1] = (near[^1].From, to);
        }
        else
        {
            near.Add((from, to));
        }
    }

    private static Outline Sliver(Piece edge)
    {
        Piece right = Beside(edge, -HalfMm), left = Beside(edge, HalfMm).Reversed();
        Contour contour = new([right, new Segment(right.End, left.Start), left, new Segment(left.End, right.Start)]);
        return new Outline(contour.Travelled(Turning.Anticlockwise));
    }

    /// <summary>The edge moved to its left.</summary>
    private static Piece Beside(Piece edge, double leftMm) => edge is Arc arc
        ? new Arc(arc.Centre, arc.RadiusMm - (Math.Sign(arc.SweepRad) * leftMm), arc.StartRad, arc.SweepRad)
        : edge.Placed(Placement.Translation(edge.TangentAt(0).Left * leftMm));
}
