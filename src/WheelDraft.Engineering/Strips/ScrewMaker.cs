using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Makes the adjusting screws of a design whose file says where they meet their strips.</summary>
/// <remarks>A lug counts as live as its screw, whatever it is made of: it stands around it, and damp and dust lie on a few millimetres of it. That is the
/// safe side for one of insulating material, and true for one of metal.</remarks>
internal sealed class ScrewMaker(Brief brief, WheelLayout wheel, StripSet strips)
{
    // No usual head is wider than twice its thread, and none higher than the thread is wide (common practice, no source).
    private const double HeadByThread = 2;

    // The contact may move so much further, or less far, than 'lever' says before the seconds a turn are called wrong: about what a screw's own backlash costs.
    private const double LeverShare = 0.05;

    // Between a lug and what turns, besides run-out, mm (common practice, no source).
    private const double AirMm = 0.5;

    /// <summary>The screws, in the order of their outputs.</summary>
    /// <exception cref="DesignRefusedException">One meets its strip where it is clamped, or beyond its end, or the output has no strip.</exception>
    public IReadOnlyList<AdjustingScrew> All()
    {
        List<AdjustingScrew> screws = [];
        foreach ((OutputBrief output, int i) in brief.Outputs.Select((o, i) => (o, i)))
        {
            if (output.Adjust is { Place: ScrewPlace place } adjust)
            {
                TextPlace where = brief.PlaceOf(string.Create(CultureInfo.InvariantCulture, $"output[{i}].adjust.screw_at"));
                PlacedStrip strip = strips.Strips.FirstOrDefault(s => s.Form.Strip.Task is ServesOutput { IsReturn: false } serves && string.Equals(serves.Output, output.Name, StringComparison.OrdinalIgnoreCase))
                    ?? throw new DesignRefusedException("strip.screw", $"'screw_at' says where the adjusting screw of '{output.Name}' meets its strip, and no strip serves it; give the strip, or leave 'screw_at' and 'screw_length' out", where);
                screws.Add(One(strip, output, place, where));
            }
        }

        return screws;
    }

    private AdjustingScrew One(PlacedStrip strip, OutputBrief output, ScrewPlace place, TextPlace where)
    {
        AdjustBrief adjust = output.Adjust!;
        Axis axis = AxisOf(strip, place, where);
        double diameter = double.Parse(adjust.Screw.AsSpan(1), CultureInfo.InvariantCulture);
        double travel = adjust.TravelMm / adjust.Lever;
        string name = AdjustingScrew.NameOf(strip);
        Solid thread = new(name, strip.Net, strip.Solids[0].Kind, Turns: false, axis.Meets.Z - (diameter / 2), axis.Meets.Z + (diameter / 2), axis.Bar(-travel / 2, place.LengthMm + (travel / 2), diameter))
        {
            Tolerance = SolidTolerance.None with { SidePlayMm = output.SidePlayMm, FaceMm = brief.Housing.ToleranceMm },
        };
        double head = HeadByThread * diameter;
        Solid top = thread with
        {
            FromZMm = axis.Meets.Z - (head / 2),
            ToZMm = axis.Meets.Z + (head / 2),
            Outline = axis.Bar(Math.Max(0, place.LengthMm - diameter) - (travel / 2), place.LengthMm + (travel / 2), head),
        };
        AdjustingScrew bare = new(name, adjust.Screw, axis.Meets, strip.Ring!.StationRad)
        {
            DiameterMm = diameter,
            LengthMm = place.LengthMm,
            TravelMm = travel,
            Solids = [thread, top],
            Lugs = [],
            Findings = [.. LeverFindings(strip, output, where)],
        };
        HeldScrewLug[] lugs = [.. place.Lugs.Select(l => Lug(strip, axis, l, bare.LugWidthMm))];
        return bare with
        {
            Solids = [.. bare.Solids, .. lugs.Select(l => l.Solid)],
            Lugs = lugs,
            Findings = [.. bare.Findings, .. lugs.SelectMany(l => LugFindings(l, strip, where))],
        };
    }

    private static Axis AxisOf(PlacedStrip strip, ScrewPlace place, TextPlace where)
    {
        double from = strip.Form.Clamp.ToMm;
        double to = strip.Working[^1].AtMm;
        if (!(place.AtMm > from && place.AtMm < to))
        {
            throw new DesignRefusedException("strip.screw", $"the adjusting screw meets strip \"{strip.Form.Strip.Name}\" at {Wording.Mm(place.AtMm)} of its developed length; it can push only between the end of the clamp, {Wording.Mm(from)}, and the end of the strip, {Wording.Mm(to)}", where);
        }

        Vector outward = Vector.Polar(1, strip.Ring!.StationRad);
        WorkingStation at = StationAt(strip.Working, place.AtMm);
        SpaceVector left = at.Frame.Left * (at.WidthMm / 2);
        return new(at.Frame.Origin + (left.X * outward.X + (left.Y * outward.Y) >= 0 ? left : -left), outward);
    }

    private HeldScrewLug Lug(PlacedStrip strip, Axis axis, ScrewLug lug, double widthMm)
    {
        double half = widthMm / 2;
        SurfaceBrief? surface = brief.Surfaces.FirstOrDefault(s => string.Equals(s.Name, strip.Form.Strip.SeatedOn, StringComparison.OrdinalIgnoreCase));
        Solid solid = new($"{AdjustingScrew.NameOf(strip)} lug", strip.Net, strip.Solids[0].Kind, Turns: false, Math.Min(axis.Meets.Z - half, surface?.LevelMm ?? double.PositiveInfinity), axis.Meets.Z + half, axis.Bar(lug.FromMm, lug.ToMm, widthMm))
        {
            OnSurface = surface?.Name,
            Tolerance = SolidTolerance.None with { FaceMm = brief.Housing.ToleranceMm },
        };
        return new(axis.At(lug.FromMm), axis.At(lug.ToMm), solid);
    }

    // The contact follows the screw as the strip's own shape says, whatever the file hopes for.
    private static IEnumerable<Finding> LeverFindings(PlacedStrip strip, OutputBrief output, TextPlace where)
    {
        double lever = output.Adjust!.Lever;
        if (strip.Spring?.Adjuster?.ContactPerScrew is double real && Math.Abs((real / lever) - 1) > LeverShare)
        {
            yield return new(FindingSeverity.Warning, "strip.lever", $"the contact of \"{strip.Form.Strip.Name}\" moves {Wording.Number(real, 2)} times as far as its screw, which pushes it at {Wording.Mm(output.Adjust.Place!.AtMm)} of its developed length, and 'lever' says {Wording.Number(lever, 2)}: the seconds that a turn of the screw is said to give are {Wording.Number(real / lever, 2)} times as many; write lever = {Wording.Number(real, 2)}, or let the screw push elsewhere", where);
        }
    }

    private IEnumerable<Finding> LugFindings(HeldScrewLug lug, PlacedStrip strip, TextPlace where)
    {
        double turning = Math.Max(WheelSolids.CarrierRadiusMm(brief, wheel), wheel.OuterDiameterMm / 2) + (brief.Wheel.RunOutMm / 2) + AirMm;
        double least = Distances.Radii(lug.Solid.Outline, Point.Origin).LeastMm;
        if (least < turning)
        {
            yield return new(FindingSeverity.Error, "strip.lug", $"a lug of {lug.Solid.Name.Replace(" lug", "", StringComparison.Ordinal)} stands {Wording.Mm(least)} from the axis, where the wheel and its carrier turn: they need {Wording.Mm(turning)}; let the screw push nearer to the clamp, or place the lug further out with 'screw_lugs'", where);
        }

        foreach (string name in strips.Strips.SelectMany(s => s.Solids).Where(s => Meet(s, lug.Solid)).Select(s => s.Name).Distinct(StringComparer.Ordinal))
        {
            yield return new(FindingSeverity.Error, "strip.lug", $"a lug of the screw of \"{strip.Form.Strip.Name}\" stands where {name} lies; place it elsewhere with 'screw_lugs'", where);
        }
    }

    private static bool Meet(Solid first, Solid second) =>
        first.FromZMm < second.ToZMm && second.FromZMm < first.ToZMm && Distances.Between(first.Outline, second.Outline).DistanceMm <= 0;

    private static WorkingStation StationAt(IReadOnlyList<WorkingStation> working, double atMm)
    {
        int next = Math.Max(1, Enumerable.Range(0, working.Count).First(i => working[i].AtMm >= atMm));
        (WorkingStation a, WorkingStation b) = (working[next - 1], working[next]);
        double share = b.AtMm > a.AtMm ? (atMm - a.AtMm) / (b.AtMm - a.AtMm) : 0;
        return a with
        {
            AtMm = atMm,
            WidthMm = a.WidthMm + ((b.WidthMm - a.WidthMm) * share),
            Frame = a.Frame with { Origin = a.Frame.Origin + ((b.Frame.Origin - a.Frame.Origin) * share) },
        };
    }

    // The screw's axis: where it meets the strip, and outward.
    private sealed record Axis(SpaceVector Meets, Vector Outward)
    {
        public Point At(double alongMm) => Meets.Plan + (Outward * alongMm);

        // All between two places along it, in plan.
        public Outline Bar(double fromMm, double toMm, double widthMm)
        {
            Vector half = Outward.Left * (widthMm / 2);
            return new(Contour.Polygon(At(fromMm) - half, At(toMm) - half, At(toMm) + half, At(fromMm) + half));
        }
    }
}
