using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Strips and turning bodies that a cam's lever would run into in one of its places.</summary>
/// <remarks>Strips stand still as the lever's bodies do, which hold all of its places: they meet where they are no further apart than both may be off. What turns comes to
/// every angle, so there ranges of radius and height decide; the lever's own cam is left out, which it rides on.</remarks>
internal static class LeverCollisions
{
    /// <summary>All of them, one a lever and thing.</summary>
    public static IEnumerable<Finding> Of(Brief brief, WheelLayout wheel, IReadOnlyList<PlacedStrip> strips, (IReadOnlyList<Solid> Solids, IReadOnlyList<CamLayout> Cams) with)
    {
        Solid[] turning = [.. with.Solids.Where(s => s.Turns), .. CamSolids.Insulating(brief, with.Cams).Where(s => s.Turns), WheelSolids.Carrier(brief, wheel)];
        foreach (CamLayout cam in with.Cams.Where(c => c.Brief.Body is not null))
        {
            TextPlace place = brief.PlaceOf(FormattableString.Invariant($"cam[{cam.Index}].{(cam.Brief.Swings ? "lever" : "slide")}"));
            Solid[] lever = [.. LeverSolids.Of(brief, cam)];
            foreach (PlacedStrip strip in strips.Where(s => s.AllSolids.Any(metal => lever.Any(l => Meet(l, metal)))))
            {
                yield return Finding.Error("cam.lever-meets", $"The lever of cam '{cam.Brief.Name}' runs into strip '{strip.Form.Strip.Name}' between rest and {cam.LiftWords(LeverSolids.MostLift(cam))}. Move its pivot, or put it at another height.", place);
            }

            foreach (string body in turning.Where(t => !string.Equals(t.Name, LeverSolids.SurfaceOf(cam.Brief), StringComparison.Ordinal) && lever.Any(l => MeetsTurning(l, t))).Select(t => t.Name).Distinct(StringComparer.Ordinal))
            {
                yield return Finding.Error("cam.lever-meets", $"The lever of cam '{cam.Brief.Name}' runs into what turns: {body}, between rest and {cam.LiftWords(LeverSolids.MostLift(cam))}. Put it at another height, or move its pivot out.", place);
            }
        }
    }

    private static bool Meet(Solid lever, Solid metal) =>
        IsLevel(lever, metal) && (Distances.Between(lever.Outline, metal.Outline).DistanceMm <= lever.Tolerance.InPlanMm + metal.Tolerance.InPlanMm);

    private static bool MeetsTurning(Solid lever, Solid turning)
    {
        double apart = lever.Tolerance.InPlanMm + turning.Tolerance.InPlanMm;
        RadialInterval own = Distances.Radii(lever.Outline, Point.Origin), reach = Distances.Radii(turning.Outline, Point.Origin);
        return IsLevel(lever, turning) && own.LeastMm <= reach.GreatestMm + apart && reach.LeastMm - apart <= own.GreatestMm;
    }

    private static bool IsLevel(Solid a, Solid b)
    {
        double off = a.Tolerance.InHeightMm + b.Tolerance.InHeightMm;
        return a.FromZMm <= b.ToZMm + off && b.FromZMm <= a.ToZMm + off;
    }
}
