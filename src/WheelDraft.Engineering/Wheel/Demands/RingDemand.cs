namespace WheelDraft.Engineering;

/// <summary>What one ring must do, before its radius is known.</summary>
internal sealed record RingDemand
{
    /// <summary>The output; for the feed its net.</summary>
    public required string Name { get; init; }

    /// <summary>Where it stands in the parameter file.</summary>
    public required TextPlace Where { get; init; }

    /// <summary>The patch that counts for edges, new.</summary>
    public required ContactPatch Patch { get; init; }

    /// <summary>The on-periods; empty for a whole ring.</summary>
    public required IReadOnlyList<OnPeriod> Periods { get; init; }

    /// <summary>Radial play of the wiper, mm.</summary>
    public required double SidePlayMm { get; init; }

    /// <summary>Radius asked for, mm; null for auto.</summary>
    public double? AskedRadiusMm { get; init; }

    /// <summary>Wanted limit on the on-time, s; null for a whole ring.</summary>
    public double? ToleranceS { get; init; }

    /// <summary>The adjusting edge, or null.</summary>
    public AdjustBrief? Adjust { get; init; }

    /// <summary>How far windows reach beyond the patch path, mm, before fillets ask for more.</summary>
    public double SideGapMm { get; init; }

    /// <summary>What windows must keep beyond the path of the worn patch on a side, mm.</summary>
    public double WornSideGapMm { get; init; }

    /// <summary>The rule of its open contact where a ring's curve asks for more than a straight one; null where it does not.</summary>
    public OpenContactRule? CurvedRule { get; init; }

    /// <summary>What windows must keep beyond <see cref="WornSideGapMm"/> on a ring of this radius, mm.</summary>
    public double CurvedMoreMm(double radiusMm) => CurvedRule is null || InnerEndMm(radiusMm) <= SidePlayMm + Patch.HalfWidthMm ? 0
        : Math.Max(0, CurvedRule.SidewaysMm(Patch, InnerEndMm(radiusMm) - SidePlayMm, OuterEndMm(radiusMm) + SidePlayMm) - CurvedRule.SidewaysMm(Patch));

    /// <summary>What asks for the side gap, in words.</summary>
    public string SideGapWhy { get; init; } = "";

    /// <summary>The second wiper and what lands must keep; null for a ring of a windowed wheel.</summary>
    public LandDemand? Land { get; init; }

    /// <summary>The patch that makes: of two wipers the one that a land reaches last.</summary>
    public ContactPatch MakePatch => Land?.Pair.Downstream ?? Patch;

    /// <summary>The patch that breaks: of two wipers the one that a land leaves first.</summary>
    public ContactPatch BreakPatch => Land?.Pair.Upstream ?? Patch;

    /// <summary>Programme angle from the wiper that breaks to the wiper that makes; 0 where one does both.</summary>
    public double ApartRad => Land?.Pair.ApartRad ?? 0;

    /// <summary>By how much the patch of its wipers reaches beyond the patch path when worn, mm.</summary>
    public double SidewaysWearMm => Math.Max(MakePatch.SidewaysWearMm, BreakPatch.SidewaysWearMm);

    /// <summary>Whether the ring is copper all the way round.</summary>
    public bool IsWhole => Periods.Count == 0;

    /// <summary>Travel of the wiper along the radius, mm.</summary>
    public double TravelMm => Adjust?.TravelMm ?? 0;

    /// <summary>The wiper's radius at the inner end of travel.</summary>
    public double InnerEndMm(double radiusMm) => radiusMm - (TravelMm / 2);

    /// <summary>The wiper's radius at the outer end of travel.</summary>
    public double OuterEndMm(double radiusMm) => radiusMm + (TravelMm / 2);

    /// <summary>Least radius that the patch covers over its travel.</summary>
    public double PathFromMm(double radiusMm) => Math.Min(MakePatch.LeastRadiusMm(InnerEndMm(radiusMm)), BreakPatch.LeastRadiusMm(InnerEndMm(radiusMm)));

    /// <summary>Greatest radius that the patch covers over its travel.</summary>
    public double PathToMm(double radiusMm) => Math.Max(MakePatch.GreatestRadiusMm(OuterEndMm(radiusMm)), BreakPatch.GreatestRadiusMm(OuterEndMm(radiusMm)));

    /// <summary>Least radius that the worn patch covers over its travel, its corners included.</summary>
    public double WornPathFromMm(double radiusMm) => Math.Min(MakePatch.Worn.LeastRadiusMm(InnerEndMm(radiusMm)), BreakPatch.Worn.LeastRadiusMm(InnerEndMm(radiusMm)));

    /// <summary>Greatest radius that the worn patch covers over its travel, its corners included.</summary>
    public double WornPathToMm(double radiusMm) => Math.Max(MakePatch.Worn.GreatestRadiusMm(OuterEndMm(radiusMm)), BreakPatch.Worn.GreatestRadiusMm(OuterEndMm(radiusMm)));

    /// <summary>How far a wiper may stand off its station, as an angle: along the motion on the least radius that its worn patch covers.</summary>
    /// <remarks>On that radius whether the wiper is moved along its circle or straight along the tangent: no point of it moves by
    /// a greater angle.</remarks>
    public double PlacingRad(double placingMm, double radiusMm) => placingMm / (WornPathFromMm(radiusMm) - SidePlayMm);

    /// <summary>The ring radius whose patch path starts at a radius.</summary>
    public double RadiusFromPath(double pathFromMm) =>
        Math.Max(MakePatch.RingRadiusFromLeast(pathFromMm), BreakPatch.RingRadiusFromLeast(pathFromMm)) + (TravelMm / 2);
}

/// <summary>What all rings of a wheel share.</summary>
/// <param name="Motion">The turning.</param>
/// <param name="FrequencyShare">Tolerance of the supply frequency, share.</param>
/// <param name="RunOutMm">Radial run-out, total indicator reading.</param>
/// <param name="Process">The cutter.</param>
internal sealed record RingShop(Motion Motion, double FrequencyShare, double RunOutMm, ProcessBrief Process)
{
    /// <summary>Each wiper along the motion, plus and minus, mm.</summary>
    public double PlacingMm { get; init; }

    /// <summary>Play of the gear at the wheel, rad.</summary>
    public double BacklashRad { get; init; }

    /// <summary>Of a task.</summary>
    public static RingShop Of(WheelTask task) => Of(task.Brief, task.Motion);

    /// <summary>Of a brief.</summary>
    public static RingShop Of(Brief brief, Motion motion) =>
        new(motion, brief.Supply.FrequencyToleranceShare, brief.Wheel.RunOutMm, brief.Process)
        {
            PlacingMm = brief.Housing.PlacingMm,
            BacklashRad = brief.Drive.BacklashRad,
        };
}
