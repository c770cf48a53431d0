using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What is looked at before a cutting file is written: contours that can be cut, least web, slot and hole.</summary>
internal static class CutChecks
{
    // Distances are compared after rounding to this, mm: far below what a shop can hold, above the rounding of arcs.
    private const int ComparedDecimals = 6;
    private const double ComparedMm = 1e-6;

    public static IEnumerable<Finding> Of(CutShape shape, ProcessBrief process)
    {
        (string what, TextPlace? where) = (shape.What, shape.Where);
        foreach (ContourFault fault in Soundness.Faults(shape.ToCut))
        {
            yield return Finding.Error("cut.contours", FormattableString.Invariant($"The cutting contours of {what} cannot be cut: {fault.InWords(At(fault.At))}"), where);
        }

        if (Thickness.LeastWeb(shape.Finished, process.LeastWebMm + ComparedMm) is Nearest web && Less(web.DistanceMm, process.LeastWebMm))
        {
            yield return Finding.Error("cut.web", $"The narrowest copper of {what} is {Wording.Mm(web.DistanceMm)} at {At(web)}; the process needs {Wording.Mm(process.LeastWebMm)}.", where);
        }

        if (Thickness.LeastSlot([shape.Finished], process.LeastSlotMm + ComparedMm) is Nearest slot && Less(slot.DistanceMm, process.LeastSlotMm))
        {
            yield return Finding.Error("cut.slot", $"The narrowest opening of {what} is {Wording.Mm(slot.DistanceMm)} at {At(slot)}; the process needs {Wording.Mm(process.LeastSlotMm)}.", where);
        }

        foreach (Arc hole in shape.Finished.Holes.Where(h => h.Pieces.Count == 1).Select(h => h.Pieces[0]).OfType<Arc>())
        {
            if (Less(2 * hole.RadiusMm, process.LeastHoleMm))
            {
                yield return Finding.Error("cut.hole", $"A hole of {Wording.Mm(2 * hole.RadiusMm)} in {what} at {At(hole.Centre)} is smaller than the process makes, {Wording.Mm(process.LeastHoleMm)}.", where);
            }
        }
    }

    private static bool Less(double mm, double neededMm) => Math.Round(mm, ComparedDecimals) < Math.Round(neededMm, ComparedDecimals);

    private static string At(Nearest nearest) => At(nearest.OnFirst.Towards(nearest.OnSecond, 0.5));

    /// <summary>A place on the part in words, to a hundredth of a millimetre.</summary>
    internal static string At(Point point) => $"({Wording.Number(point.X, 2)}, {Wording.Number(point.Y, 2)})";
}
