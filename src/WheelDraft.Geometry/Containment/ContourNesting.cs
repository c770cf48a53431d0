namespace WheelDraft.Geometry;

/// <summary>Which closed contour lies in which: all questions together from one tree, so that thousands of contours take n log n.</summary>
/// <remarks>Contours are taken not to cross; those that do are reported elsewhere (<see cref="Soundness"/>).</remarks>
public static class ContourNesting
{
    /// <summary>For each contour the smallest other one that it lies in; -1 for none.</summary>
    public static IReadOnlyList<int> Parents(IReadOnlyList<Contour> contours)
    {
        ArgumentNullException.ThrowIfNull(contours);
        int[] parents = new int[contours.Count];
        if (contours.Count == 0)
        {
            return parents;
        }

        Boundary all = new(contours);
        double[] sizes = [.. contours.Select(c => Math.Abs(c.SignedAreaMm2))];
        Dictionary<int, int> windings = [];
        for (int i = 0; i < parents.Length; i++)
        {
            windings.Clear();
            all.Windings(contours[i].Pieces[0].PointAt(0.5), windings);
            parents[i] = -1;
            foreach ((int other, int winding) in windings)
            {
                bool larger = sizes[other] > sizes[i] || (sizes[other] == sizes[i] && other < i);
                bool nearer = parents[i] < 0 || sizes[other] < sizes[parents[i]] || (sizes[other] == sizes[parents[i]] && other > parents[i]);
                parents[i] = other != i && winding != 0 && larger && nearer ? other : parents[i];
            }
        }

        return parents;
    }

    /// <summary>The shapes of contours: the outermost are material, the next holes, and so on; largest first.</summary>
    public static IReadOnlyList<Outline> Outlines(IReadOnlyList<Contour> contours)
    {
        IReadOnlyList<int> parents = Parents(contours);
        int[] bySize = [.. Enumerable.Range(0, contours.Count).OrderByDescending(i => Math.Abs(contours[i].SignedAreaMm2))];
        List<(Contour Outer, List<Contour> Holes)> shapes = [];
        int[] shapeOf = new int[contours.Count];
        int[] depth = new int[contours.Count];
        foreach (int i in bySize)
        {
            int parent = parents[i];
            depth[i] = parent < 0 ? 0 : depth[parent] + 1;
            if (depth[i] % 2 == 0)
            {
                shapeOf[i] = shapes.Count;
                shapes.Add((contours[i], []));
            }
            else
            {
                shapeOf[i] = shapeOf[parent];
                shapes[shapeOf[i]].Holes.Add(contours[i]);
            }
        }

        return [.. shapes.Select(s => new Outline(s.Outer, s.Holes))];
    }
}
