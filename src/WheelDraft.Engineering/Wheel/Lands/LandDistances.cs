namespace WheelDraft.Engineering;

/// <summary>The distances that lands keep from each other and from what is in the hub, margin included.</summary>
/// <param name="LiveMm">Between two lands, and to metal that is joined to nothing: each land is a live net of its own.</param>
/// <param name="ShaftMm">To the shaft by its kind; null when it is insulating.</param>
internal sealed record LandDistances(double LiveMm, double? ShaftMm)
{
    /// <summary>To a fixing: metal between lands and shaft, so it keeps from a land whatever the shaft would.</summary>
    public double FixingMm => Math.Max(LiveMm, ShaftMm ?? 0);

    /// <summary>Asks the rules.</summary>
    /// <exception cref="DesignRefusedException">They give no distance.</exception>
    public static LandDistances Of(Brief brief)
    {
        double live = Required(brief, brief.Spacing.BetweenLive, "spacing.between_live");
        double? shaft = brief.Wheel.Shaft switch
        {
            ShaftKind.Insulating => null,
            ShaftKind.Earthed => Required(brief, brief.Spacing.ToEarthed, "spacing.to_earthed"),
            ShaftKind.Touchable => Required(brief, brief.Spacing.ToTouchable, "spacing.to_touchable"),
            _ => live,
        };
        return new(live, shaft);
    }

    /// <summary>Over the flush carrier clearance and creepage both apply: the larger, at the supply voltage.</summary>
    private static double Required(Brief brief, Insulation grade, string path)
    {
        try
        {
            PairRequirement both = SpacingRules.RequiredBetween(new PairQuery(brief.Supply, brief.Environment, brief.Spacing, grade)
            {
                WorkingVoltageV = brief.Supply.VoltageV,
                Group = brief.Carrier.Group,
            });
            return Math.Max(both.Clearance.RequiredMm, both.Creepage!.RequiredMm);
        }
        catch (RuleRefusedException refusal)
        {
            throw new DesignRefusedException([refusal.ToFinding(brief.PlaceOf(refusal.Key ?? path))]);
        }
    }
}
