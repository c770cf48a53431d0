using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The solids of a wheel and of what stands near it, strips aside.</summary>
internal static class WheelSolids
{
    // How far a metal shaft stands under the carrier and above the copper face, and how far fixings stand above the face, mm
    // (methods: solids).
    public const double ShaftUnderCarrierMm = 20;
    public const double ShaftAboveFaceMm = 5;
    public const double FixingsAboveFaceMm = 1.5;

    public static IReadOnlyList<Solid> Of(Brief brief, WheelLayout wheel)
    {
        double underCarrier = -brief.Carrier.StepMm - brief.Carrier.ThicknessMm;
        SolidTolerance turning = new(0, 0, brief.Wheel.RunOutMm / 2, brief.Wheel.FaceRunOutMm / 2);
        List<Solid> solids =
        [
            .. wheel.Copper.Select(c => new Solid(c.Name, c.Net, SolidKind.Live, Turns: true, -brief.Wheel.ThicknessMm, 0, c.Outline)
            {
                IsWheelCopper = true,
                FloatsAtTimes = c.FloatsAtTimes,
                OnSurface = ItemNames.Carrier,
                Tolerance = turning with { CutEdgeMm = brief.Process.ToleranceMm },
            }),
        ];
        if (brief.Wheel.Shaft != ShaftKind.Insulating)
        {
            (string net, SolidKind kind) = ShaftNet(brief);
            (double from, double to) = Shaft(brief);
            solids.Add(new(ItemNames.Shaft, net, kind, Turns: true, from, to,
                new Outline(Contour.Circle(Point.Origin, brief.Wheel.ShaftDiameterMm!.Value / 2)))
            {
                OnSurface = ItemNames.Carrier,
            });
        }

        solids.AddRange(wheel.Fixings.SelectMany((f, i) => Fixing(brief, f, i, turning)));
        solids.AddRange(brief.Parts.Select(p => new Solid(p.Name, p.Net, KindOf(p.Kind), Turns: false, p.FromZMm, p.ToZMm, p.Outline)
        {
            Tolerance = SolidTolerance.None with { FaceMm = brief.Housing.ToleranceMm },
        }));
        return solids;
    }

    /// <summary>How far down and up a metal shaft stands, mm: through each cam, and beyond it as far as beyond the copper.</summary>
    public static (double FromMm, double ToMm) Shaft(Brief brief)
    {
        double underCarrier = -brief.Carrier.StepMm - brief.Carrier.ThicknessMm;
        return (
            Math.Min(underCarrier - ShaftUnderCarrierMm, brief.Cams.Select(c => c.LowerMm - ShaftAboveFaceMm).DefaultIfEmpty(double.PositiveInfinity).Min()),
            Math.Max(ShaftAboveFaceMm, brief.Cams.Select(c => c.UpperMm + ShaftAboveFaceMm).DefaultIfEmpty(double.NegativeInfinity).Max()));
    }

    /// <summary>Shank, head and nut of a fixing. Either may have its head on the wiper side, so both ends are as wide as the wider.</summary>
    /// <remarks>Fixings hold the one piece of copper and are on its net; in a carrier of lands they touch none.</remarks>
    private static IEnumerable<Solid> Fixing(Brief brief, Point at, int index, SolidTolerance turning)
    {
        double underCarrier = -brief.Carrier.StepMm - brief.Carrier.ThicknessMm;
        FixingsBrief fixings = brief.Wheel.Fixings!;
        Solid shank = new(
            FixingName(index), brief.Feed?.Net ?? FixingName(index), brief.Feed is null ? SolidKind.Floating : SolidKind.Live, Turns: true, underCarrier, FixingsAboveFaceMm,
            new Outline(Contour.Circle(at, fixings.DiameterMm / 2)))
        {
            OnSurface = ItemNames.Carrier,
            Tolerance = turning,
        };
        yield return shank;
        if (fixings.HeadMm > fixings.DiameterMm)
        {
            Outline wide = new(Contour.Circle(at, fixings.HeadMm / 2));
            yield return shank with { FromZMm = brief.Feed is null ? -brief.Carrier.StepMm : 0, Outline = wide };

            // A usual nut is no higher than its hole is wide (common practice, no source).
            yield return shank with { FromZMm = underCarrier - fixings.DiameterMm, ToZMm = underCarrier, Outline = wide, OnSurface = null };
        }
    }

    private static string FixingName(int index) => FormattableString.Invariant($"fixing {index + 1}");

    /// <summary>The carrier as a body that strips must not run into; wipers ride on it as on copper. It conducts nothing and is never measured.</summary>
    public static Solid Carrier(Brief brief, WheelLayout wheel) =>
        new(ItemNames.Carrier, ItemNames.Carrier, SolidKind.Floating, Turns: true, -brief.Carrier.StepMm - brief.Carrier.ThicknessMm, -brief.Carrier.StepMm, new Outline(Contour.Circle(Point.Origin, CarrierRadiusMm(brief, wheel))))
        {
            IsWheelCopper = true,
            Tolerance = new(0, 0, brief.Wheel.RunOutMm / 2, brief.Wheel.FaceRunOutMm / 2),
        };

    /// <summary>Radius of the carrier, mm: as asked, else the wheel's own.</summary>
    public static double CarrierRadiusMm(Brief brief, WheelLayout wheel) => (brief.Carrier.DiameterMm ?? wheel.OuterDiameterMm) / 2;

    private static (string Net, SolidKind Kind) ShaftNet(Brief brief) => brief.Wheel.Shaft switch
    {
        ShaftKind.Live => (brief.Wheel.ShaftNet!, SolidKind.Live),
        ShaftKind.Earthed => ("E", SolidKind.Earthed),
        ShaftKind.Touchable => (ItemNames.Shaft, SolidKind.Touchable),
        _ => (ItemNames.Shaft, SolidKind.Floating),
    };

    private static SolidKind KindOf(PartKind kind) => kind switch
    {
        PartKind.Live => SolidKind.Live,
        PartKind.Earthed => SolidKind.Earthed,
        PartKind.Touchable => SolidKind.Touchable,
        _ => SolidKind.Floating,
    };
}
