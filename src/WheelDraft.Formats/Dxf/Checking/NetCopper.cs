using WheelDraft.Engineering;
using WheelDraft.Formats.Dxf.Reading;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Checking;

/// <summary>A connected piece of copper of a drawing.</summary>
/// <param name="Outline">Its outline, mm.</param>
/// <param name="OffMm">How far the outline may lie from what was drawn, mm.</param>
/// <param name="Source">The entity that it begins with.</param>
internal sealed record CopperShape(Outline Outline, double OffMm, DxfSource Source)
{
    /// <summary>As far as the outline may be off, its distances count less.</summary>
    internal SolidTolerance Tolerance => OffMm > 0 ? SolidTolerance.None with { CutEdgeMm = OffMm } : SolidTolerance.None;
}

/// <summary>The copper of a layer: contours nested into copper, hole, copper; holes of other layers cut out; filled areas on top.</summary>
internal static class NetCopper
{
    private enum Ground
    {
        Nothing,
        Copper,
        Hole,
    }

    /// <summary>The shapes of a net's layer.</summary>
    /// <param name="layer">The layer.</param>
    /// <param name="holes">Contours that cut holes into it where they lie inside its copper.</param>
    /// <param name="findings">Where holes cross edges of copper: those are not cut.</param>
    internal static IReadOnlyList<CopperShape> Of(ReadLayer layer, IReadOnlyList<ReadContour> holes, List<Finding> findings)
    {
        ReadContour[] own = [.. layer.Contours];
        ReadContour[] cutting = [.. Sound(layer, own, [.. holes.Where(h => own.Any(c => c.Contour.Bounds.Overlaps(h.Contour.Bounds)))], findings)];
        return [.. Nested(own, cutting), .. layer.Areas.Select(a => new CopperShape(a.Outline, a.OffMm, a.Source))];
    }

    /// <summary>The holes that cross no edge of copper and not each other.</summary>
    private static IEnumerable<ReadContour> Sound(ReadLayer layer, ReadContour[] own, ReadContour[] holes, List<Finding> findings)
    {
        if (holes.Length == 0)
        {
            return [];
        }

        HashSet<int> crossing = [];
        foreach (ContourFault fault in Soundness.Faults([.. own.Concat(holes).Select(c => c.Contour)]).Where(f => Math.Max(f.First, f.Second) >= own.Length))
        {
            int hole = Math.Max(fault.First, fault.Second) - own.Length;
            if (crossing.Add(hole))
            {
                findings.Add(Finding.Error("drawing.hole-crossing", $"The hole of {holes[hole].Source} meets another edge at {LayerJoiner.Text(fault.At)} mm, so it is not cut into layer {layer.Name}: a hole lies wholly inside the copper.", new(holes[hole].Source.Line, 1)));
            }

            if (Math.Min(fault.First, fault.Second) >= own.Length)
            {
                crossing.Add(Math.Min(fault.First, fault.Second) - own.Length);
            }
        }

        return holes.Where((_, i) => !crossing.Contains(i));
    }

    private static IEnumerable<CopperShape> Nested(ReadContour[] own, ReadContour[] holes)
    {
        ReadContour[] all = [.. own, .. holes];
        IReadOnlyList<int> parents = ContourNesting.Parents([.. all.Select(c => c.Contour)]);
        Ground[] inside = new Ground[all.Length];
        int[] shapeOf = new int[all.Length];
        List<(ReadContour Outer, List<ReadContour> Holes)> shapes = [];
        foreach (int i in Enumerable.Range(0, all.Length).OrderByDescending(i => Math.Abs(all[i].Contour.SignedAreaMm2)))
        {
            Ground around = parents[i] < 0 ? Ground.Nothing : inside[parents[i]];
            shapeOf[i] = parents[i] < 0 ? -1 : shapeOf[parents[i]];
            if (around == Ground.Copper)
            {
                inside[i] = Ground.Hole;
                shapes[shapeOf[i]].Holes.Add(all[i]);
            }
            else if (i < own.Length || around == Ground.Hole)
            {
                // A hole inside a hole leaves copper between: the safe side.
                inside[i] = Ground.Copper;
                shapeOf[i] = shapes.Count;
                shapes.Add((all[i], []));
            }
        }

        return shapes.Select(s => new CopperShape(
            new Outline(s.Outer.Contour, s.Holes.Select(h => h.Contour)),
            s.Holes.Append(s.Outer).Max(c => c.OffMm),
            s.Outer.Source));
    }
}
