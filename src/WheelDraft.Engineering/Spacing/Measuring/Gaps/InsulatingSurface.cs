using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>A plane insulating surface with what stands on it and what is cut into it.</summary>
/// <param name="Name">Name, as <see cref="Solid.OnSurface"/> gives it.</param>
/// <param name="Group">Material group.</param>
/// <param name="LevelMm">Height, z.</param>
/// <param name="Outline">Plan at programme angle 0; null for unbounded.</param>
/// <param name="Turns">Whether it is the carrier's, turning with the wheel.</param>
public sealed record InsulatingSurface(string Name, MaterialGroup Group, double LevelMm, Outline? Outline, bool Turns)
{
    /// <summary>How far its body goes down from the level, mm; 0 when unknown.</summary>
    public double BodyMm { get; init; }

    /// <summary>How far each of its faces, and each face of its ribs and slots, may lie off, mm: the housing's tolerance, or half the
    /// face run-out of a carrier.</summary>
    public double FaceMm { get; init; }

    /// <summary>How far its centre may lie off the axis, mm: half the carrier's run-out; 0 for a fixed one.</summary>
    public double RunOutMm { get; init; }

    /// <summary>The surfaces that are one here; empty for one by itself.</summary>
    public IReadOnlyList<InsulatingSurface> Parts { get; init; } = [];

    /// <summary>The surfaces that it consists of: itself, or those that are one.</summary>
    internal IReadOnlyList<InsulatingSurface> Members => Parts.Count > 0 ? Parts : [this];

    /// <summary>Walls on it.</summary>
    public IReadOnlyList<RibBrief> Ribs { get; init; } = [];

    /// <summary>Slots through it and grooves in it.</summary>
    public IReadOnlyList<SlotBrief> Slots { get; init; } = [];

    /// <summary>Its regions for creepage with a given least groove width.</summary>
    /// <remarks>A slot or groove narrower than X is crossed straight and left out. A V groove adds its contour with a link of X across its
    /// bottom, less the width that the plan already counts, on its straight stretches only: near its ends and bends a path may cut over the flanks, so
    /// there it counts for nothing. A loose rib is passed through its joint and adds nothing.</remarks>
    internal IReadOnlyList<SurfaceRegion> Regions(double grooveXMm)
    {
        List<SurfaceRegion> regions = [];
        for (int i = 0; i < Slots.Count; i++)
        {
            if (!SpacingTolerances.IsBelow(Slots[i].WidthMm, grooveXMm))
            {
                regions.AddRange(Regions(Slots[i], i + 1, grooveXMm));
            }
        }

        for (int i = 0; i < Ribs.Count; i++)
        {
            if (Ribs[i].Joint != RibJoint.Loose)
            {
                regions.Add(new SurfaceRegion(
                    FormattableString.Invariant($"rib {i + 1} on {Name}"), Band.Along(Ribs[i].Path, Ribs[i].ThicknessMm), Ribs[i].HeightMm, RegionWall.Raised));
            }
        }

        return regions;
    }

    /// <summary>Its ribs as boxes that a string through air is pulled over; a joint lets no air through.</summary>
    internal IEnumerable<RibBox> RibBoxes()
    {
        for (int i = 0; i < Ribs.Count; i++)
        {
            for (int p = 0; p + 1 < Ribs[i].Path.Count; p++)
            {
                yield return new RibBox(
                    FormattableString.Invariant($"rib {i + 1} on {Name}"),
                    Ribs[i].Path[p],
                    Ribs[i].Path[p + 1],
                    Ribs[i].ThicknessMm,
                    LevelMm,
                    LevelMm + Ribs[i].HeightMm);
            }
        }
    }

    private IEnumerable<SurfaceRegion> Regions(SlotBrief slot, int number, double grooveXMm)
    {
        if (slot.DepthMm is not { } depth)
        {
            return [SurfaceRegion.Through(FormattableString.Invariant($"slot {number} in {Name}"), Band.Along(slot.Path, slot.WidthMm))];
        }

        string name = FormattableString.Invariant($"groove {number} in {Name}");
        if (slot.Profile == SlotProfile.Parallel)
        {
            return [new SurfaceRegion(name, Band.Along(slot.Path, slot.WidthMm), depth, RegionWall.Sunk)];
        }

        double wall = (VGrooveMm(slot.WidthMm, depth, grooveXMm) - slot.WidthMm) / 2;
        return Straights(slot, VGrooveEndMm(slot.WidthMm, depth)).Select(s => new SurfaceRegion(name, Band.Along(s, slot.WidthMm), wall, RegionWall.None));
    }

    /// <summary>The stretches of a centre line between its bends, shorter by a length at each end and by what the inside of a bend takes.</summary>
    private static IEnumerable<Point[]> Straights(SlotBrief slot, double endMm)
    {
        for (int i = 0; i + 1 < slot.Path.Count; i++)
        {
            Vector along = (slot.Path[i + 1] - slot.Path[i]).Unit();
            Point from = slot.Path[i] + (along * (endMm + BendMm(i))), to = slot.Path[i + 1] - (along * (endMm + BendMm(i + 1)));
            if ((to - from).Dot(along) > Tolerances.JoinMm)
            {
                yield return [from, to];
            }
        }

        double BendMm(int at)
        {
            if (at == 0 || at == slot.Path.Count - 1)
            {
                return 0;
            }

            Vector before = (slot.Path[at] - slot.Path[at - 1]).Unit(), after = (slot.Path[at + 1] - slot.Path[at]).Unit();
            return slot.WidthMm / 2 * Math.Tan(Math.Abs(Math.Atan2(before.Cross(after), before.Dot(after))) / 2);
        }
    }

    /// <summary>How near to an end of a V groove a path may gain by cutting over flank and end, mm.</summary>
    /// <remarks>At the corner of the end less than half a turn of surface meets on the groove's side: a right angle of flank, and α = atan(2h/w) of
    /// the upright end. A path along the side and the end, at a and b from the corner, is √(a² + b² + 2ab sin α) that way; with the groove shortened by
    /// e = w cos²α / (2 sin α) it is never longer round the shortened end, for b up to w and any a.</remarks>
    private static double VGrooveEndMm(double widthMm, double depthMm) =>
        widthMm * widthMm * widthMm / (4 * depthMm * Math.Sqrt((widthMm * widthMm) + (4 * depthMm * depthMm)));

    /// <summary>The contour of a V groove, short-circuited at its bottom by a link of X, mm.</summary>
    /// <remarks>By similar triangles: the flanks are left where they are X apart.</remarks>
    internal static double VGrooveMm(double widthMm, double depthMm, double grooveXMm) =>
        widthMm <= grooveXMm
            ? widthMm
            : (2 * Math.Sqrt((widthMm * widthMm / 4) + (depthMm * depthMm)) * (1 - (grooveXMm / widthMm))) + grooveXMm;
}
