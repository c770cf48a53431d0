using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The gap through air between two solids where it is least.</summary>
/// <param name="First">One solid.</param>
/// <param name="Second">The other.</param>
/// <param name="NominalMm">√(plan² + height²) as drawn; 0 when they touch.</param>
/// <param name="WorstMm">The same with all tolerances against it.</param>
/// <param name="OnFirst">The place on the first, in the housing.</param>
/// <param name="OnSecond">The place on the second.</param>
/// <param name="TurnedRad">How far the wheel is turned there, anticlockwise; null for two fixed solids.</param>
public sealed record SolidGap(
    Solid First, Solid Second, double NominalMm, double WorstMm, SpacePoint OnFirst, SpacePoint OnSecond, double? TurnedRad)
{
    /// <summary>Bounds of the nominal gap where it was found by narrowing; null where it is exact.</summary>
    public GapBounds? Bounds { get; init; }

    /// <summary>The taut string from the first to the second where a rib is in the way; empty for a straight line.</summary>
    public IReadOnlyList<SpacePoint> String { get; init; } = [];

    /// <summary>The gap as the least of a search that gave up what could not be better by more than the certified width.</summary>
    internal SolidGap Certified()
    {
        double width = Math.Max(SpacingTolerances.CertifiedMm, NominalMm - (Bounds?.LowerMm ?? NominalMm));
        return this with { WorstMm = Math.Max(0, WorstMm - width), Bounds = new GapBounds(Math.Max(0, NominalMm - width), NominalMm) };
    }

    /// <summary>The same, with first and second exchanged.</summary>
    public SolidGap Swapped() =>
        new(Second, First, NominalMm, WorstMm, OnSecond, OnFirst, TurnedRad) { Bounds = Bounds, String = [.. String.Reverse()] };
}

/// <summary>Certified bounds of a least distance.</summary>
/// <param name="LowerMm">Nowhere is it less.</param>
/// <param name="UpperMm">Somewhere it is this.</param>
public readonly record struct GapBounds(double LowerMm, double UpperMm);

/// <summary>From plan distances and heights to gaps, nominal and worst.</summary>
internal static class SolidPair
{
    /// <summary>Gap between two height ranges, mm; 0 when they touch or overlap.</summary>
    internal static double HeightGapMm(Solid a, Solid b) =>
        Math.Max(0, Math.Max(b.FromZMm - a.ToZMm, a.FromZMm - b.ToZMm));

    /// <summary>All that can bring two solids nearer in plan, mm. What turns together runs out together.</summary>
    internal static double PlanToleranceMm(Solid a, Solid b)
    {
        double each = OwnMm(a.Tolerance) + OwnMm(b.Tolerance);
        return each + Together(a, b, a.Tolerance.RunOutMm, b.Tolerance.RunOutMm);
    }

    /// <summary>All that can bring two solids nearer in height, mm.</summary>
    internal static double HeightToleranceMm(Solid a, Solid b) =>
        a.Tolerance.FaceMm + a.Tolerance.LevelMm + b.Tolerance.FaceMm + b.Tolerance.LevelMm
        + Together(a, b, a.Tolerance.FaceRunOutMm, b.Tolerance.FaceRunOutMm);

    /// <summary>The gap at a plan distance, as drawn.</summary>
    internal static double NominalMm(Solid a, Solid b, double planMm) => Hypotenuse(planMm, HeightGapMm(a, b));

    /// <summary>The gap at a plan distance, with all tolerances against it.</summary>
    internal static double WorstMm(Solid a, Solid b, double planMm) => Hypotenuse(
        Math.Max(0, planMm - PlanToleranceMm(a, b)),
        Math.Max(0, HeightGapMm(a, b) - HeightToleranceMm(a, b)));

    /// <summary>Whether two solids are looked at at all: not a nose against what it touches on purpose.</summary>
    internal static bool IsMeasured(Solid a, Solid b) =>
        !a.RidesOn(b) && !b.RidesOn(a);

    /// <summary>A gap from the nearest plan points.</summary>
    internal static SolidGap Gap(Solid a, Solid b, Nearest plan, double? turnedRad)
    {
        (double onA, double onB) = Heights(a, b);
        return new SolidGap(
            a,
            b,
            NominalMm(a, b, plan.DistanceMm),
            WorstMm(a, b, plan.DistanceMm),
            SpacePoint.At(plan.OnFirst, onA),
            SpacePoint.At(plan.OnSecond, onB),
            turnedRad);
    }

    internal static double Hypotenuse(double a, double b) => b == 0 ? a : a == 0 ? b : Math.Sqrt((a * a) + (b * b));

    /// <summary>The heights at which two solids are nearest: facing ends, or the middle of what they share.</summary>
    private static (double OnFirst, double OnSecond) Heights(Solid a, Solid b)
    {
        if (b.FromZMm > a.ToZMm)
        {
            return (a.ToZMm, b.FromZMm);
        }

        if (a.FromZMm > b.ToZMm)
        {
            return (a.FromZMm, b.ToZMm);
        }

        double middle = (Math.Max(a.FromZMm, b.FromZMm) + Math.Min(a.ToZMm, b.ToZMm)) / 2;
        return (middle, middle);
    }

    /// <summary>What a solid may differ in plan by itself, whatever turns with it.</summary>
    private static double OwnMm(SolidTolerance t) => t.CutEdgeMm + t.SidePlayMm + t.FaceMm;

    private static double Together(Solid a, Solid b, double ofA, double ofB) =>
        a.Turns && b.Turns ? Math.Abs(ofA - ofB) : ofA + ofB;
}
