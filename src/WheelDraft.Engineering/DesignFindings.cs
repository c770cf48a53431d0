namespace WheelDraft.Engineering;

/// <summary>Everything that the stages of a design found, in their order.</summary>
internal static class DesignFindings
{
    /// <summary>The findings of a design; what two stages found alike stands once, where it was found first.</summary>
    /// <param name="design">The design.</param>
    /// <param name="forShop">Whether the notes for who cuts it are among them; they take long, and judge nothing.</param>
    public static IReadOnlyList<Finding> Of(Design design, bool forShop = true)
    {
        Brief brief = design.Brief;
        IReadOnlyList<Finding> collisions = StripCollisions.Of(brief, design.Wheel, design.Strips.Strips, [.. design.Solids, .. CamSolids.Insulating(brief, design.Cams)]);
        IEnumerable<Finding> all =
        [
            .. MeasuredCopper.Findings(brief, design.Motion),
            .. design.Wheel.Findings,
            .. design.Strips.Findings,
            .. StripWishes.Findings(brief, design.Strips.Strips),
            .. design.Screws.SelectMany(s => s.Findings),
            .. design.Cams.SelectMany(c => c.Findings),
            .. ShaftTorque.Findings(design),
            .. design.FrictionShifts.SelectMany(s => s.Findings(brief, design.Wheel)),
            .. DoseLimits.Findings(brief, design.Motion, design.Wheel),
            .. collisions,
            .. LeverCollisions.Of(brief, design.Wheel, design.Strips.Strips, (design.Solids, design.Cams)),
            .. design.Spacing.Findings.Where(f => !StripCollisions.Repeats(f, collisions)),
            .. design.OpenContacts.SelectMany(o => OpenContactFindings.Of(brief, o)),
            .. OwnDistances.Of(brief, design.Spacing, design.OpenContacts),
            .. InsulationGrades.Of(brief),
            .. design.Circuit.Findings,
            .. Oversights.Of(design),
            .. CopperHeat.Findings(brief, design.Wheel, design.Circuit.Currents),
            .. design.Parts.Findings(brief),
            .. forShop ? ForShop(design) : [],
        ];
        return [.. all.Distinct()];
    }

    private static IEnumerable<Finding> ForShop(Design design) =>
    [
        .. CutHazards.Of(design.Brief, design.Wheel, design.Strips, design.Parts).Select(h => h.Finding),
        .. HoldingTabs.Findings(design.Brief, design.Wheel, design.Strips, design.Parts),
    ];
}
