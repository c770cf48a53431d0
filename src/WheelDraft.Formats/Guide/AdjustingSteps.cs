using WheelDraft.Drawing;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.Guide;

/// <summary>Turning the adjusting screws: which way, how much a turn, where to stop.</summary>
internal static class AdjustingSteps
{
    /// <summary>The chapter; none where nothing is adjusted.</summary>
    public static IEnumerable<GuideChapter> Of(Design design)
    {
        RingLayout[] rings = [.. design.Wheel.Rings.Where(r => r.Adjust is not null)];
        if (rings.Length > 0)
        {
            yield return new("Adjusting",
            [
                new GuideCautions([$"An adjusting screw touches its strip and is as live as it. Turn it with the supply isolated and proved dead{(!design.Brief.Supply.IsExtraLow ? ", or, where a qualified person allows it, with an insulated tool and nothing else in reach" : "")}."]),
                .. rings.SelectMany(r => One(design, r)),
            ]);
        }
    }

    private static IEnumerable<GuideBlock> One(Design design, RingLayout ring)
    {
        AdjustLayout adjust = ring.Adjust!;
        DrawingNumbers numbers = BuildGuide.Numbers(design);
        double? flow = design.Brief.Outputs.First(o => string.Equals(o.Name, ring.Name, StringComparison.Ordinal)).FlowLPerS;
        (string longer, string shorter) = adjust.Asked.Longer == LongerWay.In ? ("toward the shaft", "toward the rim") : ("toward the rim", "toward the shaft");
        AdjustStep middle = adjust.Middle;
        AdjustStep inner = adjust.Steps[0];
        AdjustStep outer = adjust.Steps[^1];
        string dose = flow is double f ? $", which is {Wording.Number(middle.SecondsPerTurn * f * 1000, 2)} mL" : "";
        AdjustingScrew? screw = design.Screws.FirstOrDefault(s => design.Strips.At(ring.RadiusMm, ring.StationRad) is PlacedStrip strip && string.Equals(s.Name, AdjustingScrew.NameOf(strip), StringComparison.Ordinal));
        yield return new GuideList(
        [
            .. Screw(design, ring, screw, numbers),
            $"'{ring.Name}': begin with its contact on the ring radius, {numbers.LengthWithUnit(ring.RadiusMm)} from the axis, the middle of its travel: there it is on for {Wording.Seconds(middle.OnS)}.",
            $"Moved {longer} it is on longer, {shorter} shorter. One turn of the {adjust.Asked.Screw} screw changes its on-time by {Wording.Number(middle.SecondsPerTurn, 3)} s{dose}.",
            $"Stop at {numbers.LengthWithUnit(adjust.Asked.TravelMm / 2)} either way from the middle, {Wording.Number(adjust.Turns, 2)} turns over all of the travel: {Wording.Seconds(inner.OnS)} at the end toward the shaft, {Wording.Seconds(outer.OnS)} at the end toward the rim. Beyond them the contact leaves its path.",
            .. design.Strips.Strips.FirstOrDefault(s => s.Ring?.RadiusMm == ring.RadiusMm && s.Spring?.Adjuster is not null)?.Spring!.Adjuster is StripAdjuster push
                ? [$"The contact presses with {Wording.Number(push.InnerForceN, 2)} N at the end toward the shaft and {Wording.Number(push.OuterForceN, 2)} N at the end toward the rim; the screw pushes with up to {Wording.Number(push.ScrewForceN, 2)} N."]
                : (string[])[],
            "Turn a little, lock the screw, and time the output again; a lock nut turned tight moves the screw.",
        ]);
    }

    private static IEnumerable<string> Screw(Design design, RingLayout ring, AdjustingScrew? screw, DrawingNumbers numbers)
    {
        if (screw is null)
        {
            yield return $"'{ring.Name}': the file does not say where its screw is, so no distance of the screw was measured: 'screw_at' and 'screw_length' in its 'adjust' say it.";
            yield break;
        }

        yield return $"'{ring.Name}': the {screw.Thread} screw pushes its strip at x {numbers.Length(screw.Meets.X)}, y {numbers.LengthWithUnit(screw.Meets.Y)} from the axis, {numbers.LengthWithUnit(screw.Meets.Z)} over the copper face, along the radius of its station.";
        yield return screw.Lugs.Count == 0
            ? $"'{ring.Name}': what holds the screw is not in the file, so no distance of it was measured: 'screw_lugs' in its 'adjust' says where."
            : $"'{ring.Name}': make {(screw.Lugs.Count == 1 ? "a lug" : "two lugs")}, {numbers.LengthWithUnit(screw.LugWidthMm)} wide, {string.Join(" and ", screw.Lugs.Select(l => $"from ({numbers.Length(l.From.X)}, {numbers.Length(l.From.Y)}) to ({numbers.Length(l.To.X)}, {numbers.LengthWithUnit(l.To.Y)})"))} along the screw's axis{Foot(design, ring, screw, numbers)}. Tap the {(screw.Lugs.Count == 1 ? "lug" : "outer one")} {screw.Thread} and give the screw a lock nut; a lug was counted as live as its screw, so metal will do where nothing says otherwise.";
        yield return $"'{ring.Name}': as drawn the strip leans on its screw only in the inner half of the travel. Hold its edge between two nuts on the screw, so that the screw pushes and pulls: that is what was worked out. A foot fixed further out, so that the strip always leans on the screw, adds a sideways force that was not.";
    }

    private static string Foot(Design design, RingLayout ring, AdjustingScrew screw, DrawingNumbers numbers) =>
        design.Strips.At(ring.RadiusMm, ring.StationRad)?.Form.Strip.SeatedOn is string seat && design.Brief.Surfaces.FirstOrDefault(s => string.Equals(s.Name, seat, StringComparison.OrdinalIgnoreCase)) is SurfaceBrief surface
            ? $", standing on '{surface.Name}', the hole {numbers.LengthWithUnit(screw.Meets.Z - surface.LevelMm)} over it"
            : "";
}
