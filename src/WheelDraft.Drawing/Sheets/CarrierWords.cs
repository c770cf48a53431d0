using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>What is said of a carrier.</summary>
internal static class CarrierWords
{
    // A recess less deep than this is hardly milled by hand or on a small router, mm (common practice, no source).
    private const double LeastMilledMm = 0.2;

    /// <summary>The recess, its depth, its fit and what is left under it.</summary>
    public static IReadOnlyList<string> Recess(Design design)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        if (design.Parts.Carrier.Recess is not CarrierRecess recess)
        {
            return ["No recess: the copper lies on the carrier's face."];
        }

        List<string> words =
        [
            $"Dotted: recess for the copper, {numbers.Thickness(recess.DepthMm)} deep ({(design.Brief.Carrier.StepMm > 0 ? "the copper's thickness less the step" : "the copper's thickness, so that its face is flush")}); {numbers.Thickness(recess.FloorMm)} stay under it.",
            $"Fit: the recess's walls stand {numbers.Thickness(recess.FitMm)} outside the copper's edge all round, the tolerance of its cut. Where a window is, the carrier stands up to its face. The recess may run out over the rim.",
        ];
        if (recess.LostWindows > 0)
        {
            words.Add($"{DrawingNumbers.Trimmed(recess.LostWindows, 0)} of the windows {(recess.LostWindows == 1 ? "is" : "are")} too narrow for the carrier to stand in: fill flush with the same material, bonded.");
        }

        if (recess.DepthMm < LeastMilledMm)
        {
            words.Add("So shallow a recess is hardly milled. Copper that lies on the face stands proud by its thickness: then say so with [carrier] step, because edges and open contacts depend on it.");
        }

        return words;
    }

    /// <summary>What the carrier is made of and what it holds apart.</summary>
    public static IReadOnlyList<string> Notes(Design design)
    {
        CarrierBrief carrier = design.Brief.Carrier;
        string cti = carrier.Cti is double index ? $" (CTI {DrawingNumbers.Trimmed(index, 0)})" : "";
        return
        [
            $"Insulating material of group {RuleWords.Group(carrier.Group)}{cti}, {new DrawingNumbers(design.Brief.DrawingUnit).Thickness(carrier.ThicknessMm)} thick, of proven make: rigid laminate or moulding that keeps its shape when damp and warm.",
            "Seen from the wiper side. All angles are wheel angles: from the home mark, anticlockwise. Finished sizes; another process than the copper's cuts it, so that the file is nominal.",
            .. MakerWords.Of(design, design.Parts.Carrier),
            .. Recess(design),
            .. Shaft(design),
        ];
    }

    private static IEnumerable<string> Shaft(Design design) => design.Brief.Wheel.Shaft switch
    {
        ShaftKind.Earthed or ShaftKind.Touchable or ShaftKind.Floating =>
            [$"The shaft is {(design.Brief.Wheel.Shaft == ShaftKind.Earthed ? "earthed" : design.Brief.Wheel.Shaft == ShaftKind.Touchable ? "touchable" : "floating metal")}: the carrier alone holds the copper on it and apart from it. No metal bush, grub screw or fixing may join the two."],
        ShaftKind.Live => ["The shaft is live: no part of it may be touched, nor anything that it turns."],
        _ => [],
    };
}
