using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Ribs and slots as they are at the least when each of their faces may lie off by a tolerance.</summary>
/// <remarks>The worst barrier is what all that may be made have in common: each face drawn in by the tolerance, the face that it
/// stands on or is cut into counted as one of them. No way round or over any barrier within tolerance is shorter than round this.</remarks>
internal static class WorstBarriers
{
    /// <summary>What the face of a surface and one of a barrier, or two faces of a barrier, take off together.</summary>
    private const int FacesAcross = 2;

    /// <summary>The surface with its ribs and slots at their least; one that may vanish altogether is left out.</summary>
    internal static InsulatingSurface On(InsulatingSurface surface) => surface.FaceMm == 0 || surface is { Ribs.Count: 0, Slots.Count: 0 }
        ? surface
        : surface with
        {
            Ribs = [.. surface.Ribs.Select(r => Least(r, surface.FaceMm)).OfType<RibBrief>()],
            Slots = [.. surface.Slots.Select(s => Least(s, surface.FaceMm)).OfType<SlotBrief>()],
        };

    private static RibBrief? Least(RibBrief rib, double faceMm)
    {
        double off = FacesAcross * faceMm;
        return rib.HeightMm > off && rib.ThicknessMm > off && Shortened(rib.Path, faceMm, (rib.ThicknessMm - off) / 2) is { } path
            ? rib with { HeightMm = rib.HeightMm - off, ThicknessMm = rib.ThicknessMm - off, Path = path }
            : null;
    }

    private static SlotBrief? Least(SlotBrief slot, double faceMm)
    {
        double off = FacesAcross * faceMm;
        return slot.WidthMm > off && !(slot.DepthMm <= off) && Shortened(slot.Path, faceMm, (slot.WidthMm - off) / 2) is { } path
            ? slot with { WidthMm = slot.WidthMm - off, DepthMm = slot.DepthMm - off, Path = path }
            : null;
    }

    /// <summary>A centre line with both ends drawn in; null when nothing is left.</summary>
    private static IReadOnlyList<Point>? Shortened(IReadOnlyList<Point> path, double byMm, double halfMm) =>
        FromStart(path, byMm, halfMm) is { } late && FromStart([.. late.Reverse()], byMm, halfMm) is { } both ? [.. both.Reverse()] : null;

    // What is left of a leg must be longer than the bend at its end takes; else the leg counts for nothing.
    private static IReadOnlyList<Point>? FromStart(IReadOnlyList<Point> path, double byMm, double halfMm)
    {
        for (int i = 0; i + 1 < path.Count; i++)
        {
            double length = path[i].DistanceTo(path[i + 1]);
            if (length > byMm + Tolerances.JoinMm + (halfMm * BendShare(path, i + 1)))
            {
                return [path[i].Towards(path[i + 1], byMm / length), .. path.Skip(i + 1)];
            }

            byMm = Math.Max(0, byMm - length);
        }

        return null;
    }

    // tan(θ/2) of the turn at an inner point: by so many half widths the inside of the bend is shorter.
    private static double BendShare(IReadOnlyList<Point> path, int point)
    {
        if (point + 1 >= path.Count)
        {
            return 0;
        }

        Vector arrives = (path[point] - path[point - 1]).Unit();
        Vector leaves = (path[point + 1] - path[point]).Unit();
        return Math.Abs(Math.Tan(Math.Atan2(arrives.Cross(leaves), arrives.Dot(leaves)) / 2));
    }
}
