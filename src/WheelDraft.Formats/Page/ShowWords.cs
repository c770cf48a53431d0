using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Page;

/// <summary>The page's sentences about the design as a whole.</summary>
internal static class ShowWords
{
    /// <summary>Turn, direction, supply: one line under the title.</summary>
    public static string Facts(Design design)
    {
        string direction = design.Motion.Direction == Turning.Clockwise ? "clockwise" : "anticlockwise";
        SupplyBrief supply = design.Brief.Supply;
        return SvgMarkup.Escaped(
            $"One turn in {Wording.Seconds(design.Motion.TurnTimeS)}, {direction} as seen from the wiper side · {Wording.Volts(supply.VoltageV)}, {Wording.Number(supply.FrequencyHz, 2)} Hz · wheel {ReadersUnit.Of(design.Brief).Words(Wording.Mm(design.Wheel.OuterDiameterMm))} across");
    }

    /// <summary>What one is looking at, and what can be done with it.</summary>
    public static string Intro(Design design)
    {
        string rides = design.Wheel.Feed is null ? "the strips that slide on its copper lands" : "the strips that slide on its copper and over its windows";
        string means = design.Brief.Inputs.Count == 0 ? "set faults to see what still works" : "close inputs or set faults to see what follows";
        return $"This is the contact wheel of a timer, seen from the side of {rides}: the motor turns it, and which strip touches copper decides what is on. Press Play or move the time; {means}.";
    }

    /// <summary>Whether the design meets its rules.</summary>
    public static string Verdict(Design design)
    {
        int misses = design.Findings.Count(f => f.Severity == FindingSeverity.Error);
        return misses == 0
            ? "<p id=\"verdict\" class=\"verdict meets\"><span class=\"tick\" aria-hidden=\"true\">✓ </span>Meets its rules</p>"
            : $"<p id=\"verdict\" class=\"verdict misses\"><span aria-hidden=\"true\">✕</span> {(misses == 1 ? "1 finding" : $"{Wording.Number(misses, 0)} findings")} to put right: see the report</p>";
    }
}
