using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What the spacing table makes a person look at.</summary>
internal static class SpacingFindings
{
    internal static IReadOnlyList<Finding> Of(SpacingTask task, SpacingMeter meter, IReadOnlyList<SpacingRow> rows)
    {
        // Two nets that touch are reported as such: that no distance is left between them needs no finding of its own.
        HashSet<NetPair> touching = [.. rows.Where(r => r is { Kind: SpacingKind.Clearance, NominalMm: 0, Gaps.Count: 1 }).Select(r => r.Nets)];
        return
        [
            .. Touching(task, meter),
            .. rows.Where(r => !touching.Contains(r.Nets)).Select(r => Judged(task, r)).OfType<Finding>(),
            .. rows.Where(GoesRoundASlot).Select(SlotReading),
            .. SurfacesNear(task),
        ];
    }

    private static Finding? Judged(SpacingTask task, SpacingRow row) => row.Verdict switch
    {
        SpacingVerdict.Misses => Finding.Error(Code(row), Sentence(row), Place(task, row.FirstItem, row.SecondItem)),
        SpacingVerdict.Tight => Finding.Warning("spacing.tight", Sentence(row), Place(task, row.FirstItem, row.SecondItem)),
        _ => null,
    };

    private static TextPlace? Place(SpacingTask task, string first, string second) => task.PlaceOf(first) ?? task.PlaceOf(second);

    private static string Code(SpacingRow row) => row.Kind == SpacingKind.Clearance ? "spacing.clearance" : "spacing.creepage";

    private static string Sentence(SpacingRow row)
    {
        string kind = row.Kind == SpacingKind.Clearance ? "Clearance" : "Creepage distance";
        string surface = row.Path is { } path ? $" on {path.Surface.Name}" : "";
        string wheel = row.AtRad is { } angle && row.Kind == SpacingKind.Clearance ? $", wheel at {MeasuringWords.Degrees(angle)}" : "";
        string distance = $"{kind} {MeasuringWords.Mm(row.WorstMm)} (as drawn {MeasuringWords.Mm(row.NominalMm)}) between {Item(row.FirstItem, row.Nets.First)} and {Item(row.SecondItem, row.Nets.Second)}{surface}";
        string required = $"{MeasuringWords.Mm(row.Required.RequiredMm)} ({row.Required.BasisInFull})";
        string points = $"the nearest points are {MeasuringWords.At(row.OnFirst)} and {MeasuringWords.At(row.OnSecond)}{wheel}";
        return row.Verdict == SpacingVerdict.Misses ? $"{distance} is below {required}; {points}." : $"{distance} is less than 1.1 times {required}; {points}.";
    }

    private static string Item(string item, string net) =>
        string.Equals(item, net, StringComparison.Ordinal) ? $"'{item}'" : $"'{item}' (net {net})";

    /// <summary>Solids of different nets that touch, and fixed ones that the wheel runs into.</summary>
    private static IEnumerable<Finding> Touching(SpacingTask task, SpacingMeter meter)
    {
        string[] nets = [.. meter.Nets];
        for (int i = 0; i < nets.Length; i++)
        {
            if (Collision(meter.GroupOf(nets[i])) is { } collision)
            {
                yield return Finding.Error("spacing.collision", $"The wheel runs into {collision.First.Name}: {collision.Second.Name} meets it at {MeasuringWords.At(collision.OnFirst)}{Turned(task, collision)}. Move one of them in radius or height.", Place(task, collision.First.Name, collision.Second.Name));
            }

            for (int j = i + 1; j < nets.Length; j++)
            {
                if (meter.Gap(nets[i], nets[j]) is { NominalMm: 0 } touch)
                {
                    string where = $"{Item(touch.First.Name, nets[i])} and {Item(touch.Second.Name, nets[j])} touch at {MeasuringWords.At(touch.OnFirst)}{Turned(task, touch)}";
                    yield return IsDead(meter, nets[i]) && IsDead(meter, nets[j])
                        ? Finding.Note("spacing.joined", where + ": neither is live, so nothing is asked of them.")
                        : Finding.Error("spacing.touch", where + ": different nets need a distance between them.", Place(task, touch.First.Name, touch.Second.Name));
                }
            }
        }
    }

    private static bool IsDead(SpacingMeter meter, string net) => meter.KindOf(net) is SolidKind.Earthed or SolidKind.Touchable;

    private static SolidGap? Collision(SolidGroup group)
    {
        if (group.Still.Solids.Count == 0 || group.Turning.Solids.Count == 0)
        {
            return null;
        }

        SolidGroup still = new(group.Still.Solids), turning = new(group.Turning.Solids);
        return LeastGaps.Between(still, turning, ClearanceRibs.None) is { NominalMm: 0 } gap ? gap : null;
    }

    private static string Turned(SpacingTask task, SolidGap gap) => gap.TurnedRad is { } turned
        ? $", wheel at {MeasuringWords.Degrees(Angles.InTurn(task.Direction == Turning.Anticlockwise ? turned : -turned))}"
        : "";

    private static bool GoesRoundASlot(SpacingRow row) =>
        row.Path is { } path
        && path.Surface.Slots.Any(s => s.DepthMm is null)
        && path.Parts.Any(p => p.Path.Legs.Count > 1);

    private static Finding SlotReading(SpacingRow row) => Finding.Note(
        "spacing.slot-end",
        $"The creepage path between '{row.FirstItem}' and '{row.SecondItem}' on {row.Path!.Surface.Name} goes round the end of a slot. No standard pictures a slot with closed ends; this reading is ours.");

    /// <summary>Surfaces nearer than X to each other: paths across are measured as if they were one.</summary>
    private static IEnumerable<Finding> SurfacesNear(SpacingTask task)
    {
        double x = task.Demands.GrooveXMm(double.MaxValue);
        foreach (InsulatingSurface joined in JoinedSurfaces.Of(task.Surfaces, x))
        {
            yield return Finding.Note("spacing.surfaces-near", $"{string.Join(" and ", joined.Parts.Select(p => p.Name))} come nearer than X = {MeasuringWords.Mm(x)} to each other: creepage paths that cross from one to the other are measured as on one surface of group {joined.Group}.");
        }
    }
}
