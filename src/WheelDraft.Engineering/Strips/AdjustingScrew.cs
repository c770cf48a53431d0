using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>An adjusting screw in its place: it pushes the edge of its strip along the radius of the strip's station, from the rim's side.</summary>
/// <remarks>Live, since it touches the strip, and turned by hand. Its axis lies level with the middle of the strip where it meets it.</remarks>
/// <param name="Name">What reports call it: the strip's name and "screw".</param>
/// <param name="Thread">Its thread, e.g. M3.</param>
/// <param name="Meets">Where it meets the strip's edge at mid travel; z over the copper face.</param>
/// <param name="DirectionRad">Outward along its axis: the station's radius, housing angle.</param>
public sealed record AdjustingScrew(string Name, string Thread, SpaceVector Meets, double DirectionRad)
{
    // No usual head is wider than twice its thread, and none higher than the thread is wide (common practice, no source).
    private const double HeadByThread = 2;

    /// <summary>Diameter of its thread, mm.</summary>
    public required double DiameterMm { get; init; }

    /// <summary>From the strip to the far end of its head, mm.</summary>
    public required double LengthMm { get; init; }

    /// <summary>How far it moves between the ends of the wiper's travel, mm: the travel by the lever.</summary>
    public required double TravelMm { get; init; }

    /// <summary>Its thread and its head over all of its travel, as spacing measures them.</summary>
    public required IReadOnlyList<Solid> Solids { get; init; }

    /// <summary>What the screw of a strip is called.</summary>
    internal static string NameOf(PlacedStrip strip) => $"{strip.Form.Strip.Name} screw";

    /// <summary>The screws of a design whose file says where they meet their strips.</summary>
    /// <exception cref="DesignRefusedException">One meets its strip where it is clamped, or beyond its end, or the output has no strip.</exception>
    internal static IReadOnlyList<AdjustingScrew> Of(Brief brief, StripSet strips)
    {
        List<AdjustingScrew> screws = [];
        foreach ((OutputBrief output, int i) in brief.Outputs.Select((o, i) => (o, i)))
        {
            if (output.Adjust is { Place: ScrewPlace place } adjust)
            {
                TextPlace where = brief.PlaceOf(string.Create(CultureInfo.InvariantCulture, $"output[{i}].adjust.screw_at"));
                PlacedStrip strip = strips.Strips.FirstOrDefault(s => s.Form.Strip.Task is ServesOutput { IsReturn: false } serves && string.Equals(serves.Output, output.Name, StringComparison.OrdinalIgnoreCase))
                    ?? throw new DesignRefusedException("strip.screw", $"'screw_at' says where the adjusting screw of '{output.Name}' meets its strip, and no strip serves it; give the strip, or leave 'screw_at' and 'screw_length' out", where);
                screws.Add(One(strip, adjust, place, (output.SidePlayMm, brief.Housing.ToleranceMm), where));
            }
        }

        return screws;
    }

    private static AdjustingScrew One(PlacedStrip strip, AdjustBrief adjust, ScrewPlace place, (double SidePlayMm, double FaceMm) moved, TextPlace where)
    {
        double from = strip.Form.Clamp.ToMm;
        double to = strip.Working[^1].AtMm;
        if (!(place.AtMm > from && place.AtMm < to))
        {
            throw new DesignRefusedException("strip.screw", $"the adjusting screw meets strip \"{strip.Form.Strip.Name}\" at {Wording.Mm(place.AtMm)} of its developed length; it can push only between the end of the clamp, {Wording.Mm(from)}, and the end of the strip, {Wording.Mm(to)}", where);
        }

        double direction = strip.Ring!.StationRad;
        Vector outward = Vector.Polar(1, direction);
        WorkingStation at = StationAt(strip.Working, place.AtMm);
        SpaceVector left = at.Frame.Left * (at.WidthMm / 2);
        SpaceVector edge = at.Frame.Origin + (left.X * outward.X + (left.Y * outward.Y) >= 0 ? left : -left);
        double diameter = double.Parse(adjust.Screw.AsSpan(1), CultureInfo.InvariantCulture);
        double travel = adjust.TravelMm / adjust.Lever;
        string name = NameOf(strip);
        Solid pattern = new(name, strip.Net, strip.Solids[0].Kind, Turns: false, edge.Z - (diameter / 2), edge.Z + (diameter / 2), Bar(edge.Plan, outward, -travel / 2, place.LengthMm + (travel / 2), diameter))
        {
            Tolerance = SolidTolerance.None with { SidePlayMm = moved.SidePlayMm, FaceMm = moved.FaceMm },
        };
        double head = HeadByThread * diameter;
        return new(name, adjust.Screw, edge, direction)
        {
            DiameterMm = diameter,
            LengthMm = place.LengthMm,
            TravelMm = travel,
            Solids =
            [
                pattern,
                pattern with
                {
                    FromZMm = edge.Z - (head / 2),
                    ToZMm = edge.Z + (head / 2),
                    Outline = Bar(edge.Plan, outward, Math.Max(0, place.LengthMm - diameter) - (travel / 2), place.LengthMm + (travel / 2), head),
                },
            ],
        };
    }

    // Everything that it sweeps over its travel, in plan: a bar along its axis.
    private static Outline Bar(Point at, Vector outward, double fromMm, double toMm, double widthMm)
    {
        Vector half = outward.Left * (widthMm / 2);
        return new(Contour.Polygon(at + (outward * fromMm) - half, at + (outward * toMm) - half, at + (outward * toMm) + half, at + (outward * fromMm) + half));
    }

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
}
