namespace WheelDraft.Engineering;

// The chapter "SettingOut": whole designs held against each other, and choices made for what is "auto". A candidate is a brief, worked out by
// the same stages as any other: the design itself is the judge, so nothing is approximated twice.

/// <summary>The figures by which designs are held against each other.</summary>
internal sealed record DesignMerits
{
    /// <summary>Findings of severity error.</summary>
    public required int Errors { get; init; }

    /// <summary>Outer diameter of the wheel, mm.</summary>
    public required double DiameterMm { get; init; }

    /// <summary>The greatest departure of any on-time from nominal, worst case, s; null where every output is always on.</summary>
    public double? WorstOnTimeS { get; init; }

    /// <summary>The place with the least of what it needs: of all pairs and of the open contacts; null where nothing is measured.</summary>
    public TightestDistance? Tightest { get; init; }

    /// <summary>Least force of any contact over wear, travel and band, N; null without strips that press.</summary>
    public double? LeastForceN { get; init; }

    /// <summary>Greatest force of any contact over travel and band, N; null without strips that press.</summary>
    public double? MostForceN { get; init; }

    /// <summary>Greatest friction torque of all wipers, N m; null where the brief gives no friction, or no strip presses.</summary>
    public double? TorqueNm { get; init; }

    /// <summary>The first finding of severity error; null when there is none.</summary>
    public Finding? First { get; init; }

    /// <summary>The merits of a design.</summary>
    public static DesignMerits Of(Design design)
    {
        StripSpring[] springs = [.. design.Strips.Strips.Select(s => s.Spring).OfType<StripSpring>()];
        double[] worst = [.. design.Wheel.Rings.SelectMany(r => r.Periods).Select(p => p.Limits.WorstS)];
        Finding[] errors = [.. design.Findings.Where(f => f.Severity == FindingSeverity.Error)];
        return new()
        {
            Errors = errors.Length,
            DiameterMm = design.Wheel.OuterDiameterMm,
            WorstOnTimeS = worst.Length == 0 ? null : worst.Max(),
            Tightest = TightestDistance.Of(design),
            LeastForceN = springs.Length == 0 ? null : springs.Min(s => s.LeastForceN),
            MostForceN = springs.Length == 0 ? null : springs.Max(s => s.MostForceN),
            TorqueNm = springs.Length == 0 ? null : design.Strips.Friction?.MostNm,
            First = errors.FirstOrDefault(),
        };
    }
}

/// <summary>A distance that a design has at worst, and what is required there.</summary>
/// <param name="What">Which, in words.</param>
/// <param name="WorstMm">At the worst tolerance, mm.</param>
/// <param name="RequiredMm">Required, margin included, mm, above 0.</param>
internal sealed record TightestDistance(string What, double WorstMm, double RequiredMm)
{
    /// <summary>Measured over required: below 1 it misses.</summary>
    public double Ratio => WorstMm / RequiredMm;

    /// <summary>What is measured beyond what is required, mm; below 0 it misses.</summary>
    public double SpareMm => WorstMm - RequiredMm;

    /// <summary>Of all pairs the one with the least ratio, ties to the first; null where nothing is measured.</summary>
    /// <remarks>Windows are cut so that open contacts have just what they need: these count where they miss, or where there is nothing else.</remarks>
    public static TightestDistance? Of(Design design)
    {
        TightestDistance[] pairs = [.. Pairs(design).Where(p => p.RequiredMm > 0)];
        return pairs.Concat(OpenContacts(design).Where(o => o.RequiredMm > 0 && (pairs.Length == 0 || Verdicts.On(o.WorstMm, o.RequiredMm) == SpacingVerdict.Misses))).MinBy(p => p.Ratio);
    }

    private static IEnumerable<TightestDistance> Pairs(Design design) => design.Spacing.Rows.Select(r => new TightestDistance(
        $"{(r.Kind == SpacingKind.Clearance ? "clearance" : "creepage")} between {r.FirstItem} and {r.SecondItem}", r.WorstMm, r.Required.RequiredMm));

    private static IEnumerable<TightestDistance> OpenContacts(Design design) => design.OpenContacts
        .Where(o => o.RequiredMm is not null).Select(o => new TightestDistance($"open contact of {o.Output}", o.WorstMm, o.RequiredMm!.Value));
}
