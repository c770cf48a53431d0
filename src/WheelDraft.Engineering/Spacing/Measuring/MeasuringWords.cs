using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>How something was measured, in words.</summary>
internal static class MeasuringWords
{
    internal static string Mm(double mm) => Wording.Fixed(mm, 2) + " mm";

    internal static string At(SpacePoint p) => $"({F(p.X)}, {F(p.Y)}, {F(p.Z)})";

    internal static string Degrees(double rad) => Wording.Fixed(Angles.DegFromRad(rad), 1) + "°";

    internal static string Gap(ClearancePart part, double xMm)
    {
        SolidGap gap = part.Gap;
        string how = gap.String.Count > 2
            ? $"taut string over or round a rib by way of {string.Join(", ", gap.String.Skip(1).SkipLast(1).Select(At))}, {MeasuringExamples.OverARib}"
            : gap.Bounds is not null ? "least over the given parts of the turn, certified"
            : gap.TurnedRad is null ? "both fixed"
            : gap.First.Turns && gap.Second.Turns ? "both turn together"
            : "least over the whole turn, by radius";
        return $"From {gap.First.Name} {At(gap.OnFirst)} to {gap.Second.Name} {At(gap.OnSecond)}: {Mm(gap.NominalMm)}, at worst {Mm(gap.WorstMm)} ({how}){(part.Counts ? "" : $"; below X = {Mm(xMm)} and counted as nothing")}.";
    }

    internal static IEnumerable<string> Path(CreepagePath path, double grooveXMm)
    {
        yield return $"On {path.Surface.Name}; grooves, slots and recesses narrower than X = {Mm(grooveXMm)} are bridged ({MeasuringExamples.Of(path)}).";
        foreach (CreepagePart part in path.Parts)
        {
            string counted = part.Counts ? "" : ", below X and counted as nothing";
            yield return $"From {part.From} to {part.To}: {Mm(part.NominalMm)}, at worst {Mm(part.WorstMm)}{counted}.";
            foreach (SurfaceLeg leg in part.Path.Legs)
            {
                yield return Leg(leg);
            }
        }
    }

    private static string Leg(SurfaceLeg leg)
    {
        Point a = leg.Piece.Start, b = leg.Piece.End;
        string way = leg.Piece is Arc ? "along a round edge" : "straight";
        string crossed = leg.Crossed.Count == 0
            ? ""
            : "; " + string.Join(", ", leg.Crossed.Select(c => $"{RegionName(c.Region)} {(c.Bridged ? "(bridged) " : "")}adds {Mm(c.AddedMm)}"));
        return $"Leg {way} from ({F(a.X)}, {F(a.Y)}) to ({F(b.X)}, {F(b.Y)}): {Mm(leg.LengthMm)}{crossed}.";
    }

    private static string RegionName(string region) => string.Equals(region, SurfaceRegion.OutlineName, StringComparison.Ordinal) ? "the edge of the surface" : region;

    private static string F(double mm) => Wording.Fixed(mm, 2);
}
