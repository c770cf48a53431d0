using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>How much of a wheel is named on its template.</summary>
internal enum TemplateNaming
{
    /// <summary>Holes, rings, edges and windows.</summary>
    Full,

    /// <summary>Holes, rings and edges.</summary>
    Short,

    /// <summary>Holes and edges, rings by their number in the wheel drawing's table.</summary>
    Edges,

    /// <summary>Home mark, flat and fixings.</summary>
    Holes,
}

/// <summary>The names on a wheel's template; their points in the wheel frame, every angle a wheel angle.</summary>
internal sealed class TemplateNames(Design design)
{
    // A whole ring is named where few others are: beside the upright axis.
    private const double WholeRingAtDeg = 100;

    private readonly CutNumbers _cut = CutNumbers.Of(design);
    private readonly DrawingNumbers _numbers = new(design.Brief.DrawingUnit);

    private WheelLayout Wheel => design.Wheel;

    /// <summary>The names of one manner.</summary>
    public IReadOnlyList<RingCallout> Of(TemplateNaming naming) =>
    [
        .. Holes(),
        .. naming is TemplateNaming.Full or TemplateNaming.Short ? Wheel.AllRings.Select(Ring) : [],
        .. naming is TemplateNaming.Holes ? [] : Wheel.Rings.SelectMany(r => Edges(r, naming == TemplateNaming.Edges ? DrawingNumbers.Trimmed(WheelEdges.NumberOf(design, r), 0) : r.Name)),
        .. naming is TemplateNaming.Full ? Wheel.Rings.SelectMany(Cuts) : [],
    ];

    /// <summary>The rings with their numbers and radii, in one line.</summary>
    public string RingLine() => "Rings: " + string.Join("; ", Wheel.AllRings.Select(r =>
        $"{(r.IsFeed ? "feed" : $"{DrawingNumbers.Trimmed(WheelEdges.NumberOf(design, r), 0)} {r.Name}")} R{_cut.Length(r.RadiusMm)}")) + ".";

    private IEnumerable<RingCallout> Holes()
    {
        yield return new(Point.Polar(Math.Max(Wheel.OuterDiameterMm / 2, WheelSolids.CarrierRadiusMm(design.Brief, Wheel)), 0), "home mark, 0°");
        BoreBrief bore = design.Brief.Wheel.Bore;
        if (bore.FlatMm is double flat)
        {
            yield return new(Point.Polar(flat - (bore.DiameterMm / 2), bore.FlatAtRad), $"flat {_numbers.Length(flat)}, normal at {DrawingNumbers.Direction(bore.FlatAtRad)}");
        }

        if (Wheel.Fixings.Count > 0)
        {
            yield return new(Wheel.Fixings[0], $"fixing at {DrawingNumbers.Direction(Wheel.Fixings[0].AngleRad)}");
        }
    }

    private RingCallout Ring(RingLayout ring)
    {
        double at = ring.IsWhole ? Angles.RadFromDeg(WholeRingAtDeg) : Middle(ring.Periods[0].CopperRad);
        return new(Point.Polar(ring.RadiusMm, at), $"{(ring.IsFeed ? "feed" : ring.Name)} ring R{_cut.Length(ring.RadiusMm)}");
    }

    private IEnumerable<RingCallout> Edges(RingLayout ring, string name) => ring.Periods.SelectMany(period =>
    {
        (double make, double off) = WheelEdges.MakeAndBreak(design, period);
        return new[]
        {
            new RingCallout(Point.Polar(ring.RadiusMm, make), $"{name} make {_cut.Direction(make, ring.RadiusMm)}°"),
            new RingCallout(Point.Polar(ring.RadiusMm, off), $"{name} break {_cut.Direction(off, ring.RadiusMm)}°"),
        };
    });

    // What lies between two on-periods of a windowed wheel.
    private IEnumerable<RingCallout> Cuts(RingLayout ring)
    {
        if (ring.WindowFromMm is not double from || ring.WindowToMm is not double to)
        {
            yield break;
        }

        CircleArc[] copper = [.. ring.Periods.Select(p => p.CopperRad).OrderBy(c => Angles.InTurn(c.StartRad))];
        for (int i = 0; i < copper.Length; i++)
        {
            double starts = copper[i].EndRad;
            double sweep = Angles.InTurn(copper[(i + 1) % copper.Length].StartRad - starts);
            yield return new(Point.Polar((from + to) / 2, starts + (sweep / 2)), $"{ring.Name} window");
        }
    }

    private static double Middle(CircleArc arc) => arc.StartRad + (arc.SweepRad / 2);
}
