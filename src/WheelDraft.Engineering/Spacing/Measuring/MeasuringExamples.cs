namespace WheelDraft.Engineering;

/// <summary>Which of the pictured measuring examples a distance follows, for the person who checks it against the standard.</summary>
/// <remarks>Eleven examples, in edition 2 (2007) clause 6.2 by number, in edition 3 (2020) clause 6.8 as figures 4 to 14. What lies
/// behind a number was read in public texts unless it says "from memory"; product standards swap some numbers.</remarks>
internal static class MeasuringExamples
{
    /// <summary>A clearance over a rib.</summary>
    public const string OverARib = "as in example 4 of " + Iec60664Clauses.Measuring;

    /// <summary>The examples that a creepage path on its surface may follow.</summary>
    public static string Of(CreepagePath path)
    {
        InsulatingSurface surface = path.Surface;
        List<string> examples = [];
        void When(bool present, string example)
        {
            if (present)
            {
                examples.Add(example);
            }
        }

        When(surface.Slots.Any(s => s.DepthMm is not null && s.Profile != SlotProfile.V), "1 and 2 for grooves");
        When(surface.Slots.Any(s => s.DepthMm is not null && s.Profile == SlotProfile.V), "3 for V grooves");
        When(surface.Ribs.Count > 0, "4 for ribs");
        When(surface.Ribs.Any(r => r.Joint == RibJoint.Loose), "8 for a loose rib, through its joint");
        When(path.Parts.Count > 1, $"11 for floating conductors, the sum from memory; {Iec60664Clauses.FloatingParts}");
        return examples.Count == 0
            ? $"measured as {Iec60664Clauses.Measuring} says; no example pictures a plain surface"
            : $"examples {string.Join(", ", examples)} of {Iec60664Clauses.Measuring}";
    }
}
