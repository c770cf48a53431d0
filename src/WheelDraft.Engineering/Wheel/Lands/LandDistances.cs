namespace WheelDraft.Engineering;

/// <summary>The distances that lands keep from each other and from what is in the hub, margin included.</summary>
/// <param name="LiveMm">Between two lands, and to metal that is joined to nothing: each land is a live net of its own.</param>
/// <param name="ShaftMm">To the shaft by its kind; null when it is insulating.</param>
internal sealed record LandDistances(double LiveMm, double? ShaftMm)
{
    /// <summary>To a fixing: metal between lands and shaft, so it keeps as far from a land as the shaft would.</summary>
    public double FixingMm => Math.Max(LiveMm, ShaftMm ?? 0);

    /// <summary>Asks the rules.</summary>
    /// <exception cref="DesignRefusedException">They give no distance.</exception>
    /// <param name="brief">The brief.</param>
    /// <param name="workingV">Working voltage of two nets, V; null for the supply's.</param>
    public static LandDistances Of(Brief brief, Func<string, string, double>? workingV = null)
    {
        double highest = HighestV(brief, workingV);
        double Required(Insulation grade, string path) => RequiredMm(brief, highest, grade, path);
        double live = Required(brief.Spacing.BetweenLive, "spacing.between_live");
        double? shaft = brief.Wheel.Shaft switch
        {
            ShaftKind.Insulating => null,
            ShaftKind.Earthed => Required(brief.Spacing.ToEarthed, "spacing.to_earthed"),
            ShaftKind.Touchable => Required(brief.Spacing.ToTouchable, "spacing.to_touchable"),
            _ => live,
        };
        return new(live, shaft);
    }

    /// <summary>The highest voltage between any two nets that lands or shaft may be on: one distance serves all lands.</summary>
    private static double HighestV(Brief brief, Func<string, string, double>? workingV)
    {
        if (workingV is null)
        {
            return brief.Supply.HighestV;
        }

        string[] nets =
        [
            .. brief.Outputs.SelectMany(o => new[] { o.Net, o.ReturnNet! })
                .Concat(brief.Wheel.Shaft switch { ShaftKind.Live => [brief.Wheel.ShaftNet!], ShaftKind.Earthed => ["E"], ShaftKind.Touchable => [ItemNames.Shaft], _ => (string[])[] })
                .Distinct(StringComparer.Ordinal),
        ];
        return nets.SelectMany((a, i) => nets.Skip(i + 1).Select(b => workingV(a, b))).DefaultIfEmpty(brief.Supply.HighestV).Max();
    }

    /// <summary>Over the flush carrier clearance and creepage both apply: the larger.</summary>
    private static double RequiredMm(Brief brief, double workingV, Insulation grade, string path)
    {
        try
        {
            PairRequirement both = SpacingRules.RequiredBetween(new PairQuery(brief.Supply, brief.Environment, brief.Spacing, grade)
            {
                WorkingVoltageV = workingV,
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
