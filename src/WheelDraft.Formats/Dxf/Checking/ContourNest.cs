using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Checking;

/// <summary>Sorts closed contours into shapes with holes: what lies in an odd number of others is a hole.</summary>
/// <remarks>Contours are taken not to cross; those that do are told of by the reader.</remarks>
internal static class ContourNest
{
    /// <summary>The shapes, largest first.</summary>
    public static IReadOnlyList<Outline> Outlines(IReadOnlyList<Contour> contours)
    {
        Contour[] bySize = [.. contours.OrderByDescending(c => Math.Abs(c.SignedAreaMm2))];
        List<(Contour Outer, List<Contour> Holes)> shapes = [];
        int[] shapeOf = new int[bySize.Length];
        int[] depth = new int[bySize.Length];
        for (int i = 0; i < bySize.Length; i++)
        {
            int parent = Enumerable.Range(0, i).LastOrDefault(j => Holds(bySize[j], bySize[i]), -1);
            depth[i] = parent < 0 ? 0 : depth[parent] + 1;
            if (depth[i] % 2 == 0)
            {
                shapeOf[i] = shapes.Count;
                shapes.Add((bySize[i], []));
            }
            else
            {
                shapeOf[i] = shapeOf[parent];
                shapes[shapeOf[i]].Holes.Add(bySize[i]);
            }
        }

        return [.. shapes.Select(s => new Outline(s.Outer, s.Holes))];
    }

    private static bool Holds(Contour outer, Contour inner)
    {
        Bounds a = outer.Bounds, b = inner.Bounds;
        return a.MinX <= b.MinX && a.MinY <= b.MinY && a.MaxX >= b.MaxX && a.MaxY >= b.MaxY
            && outer.Locate(inner.Pieces[0].PointAt(0.5)) == Whereabouts.Inside;
    }
}
