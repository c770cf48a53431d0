using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>The plate that strips are seated on, as a part; its holes and positions in the housing's plan, from the shaft axis.</summary>
public sealed record BasePlate
{
    /// <summary>The surface that is its upper face.</summary>
    public required SurfaceBrief Surface { get; init; }

    /// <summary>The part, nominal: another process cuts it than the copper.</summary>
    public required Part Part { get; init; }

    /// <summary>Every round hole that is cut, the shaft's first, then those of feet in the order of strips.</summary>
    public required IReadOnlyList<BaseHole> Holes { get; init; }

    /// <summary>Where each strip is held.</summary>
    public required IReadOnlyList<BaseClamp> Clamps { get; init; }

    /// <summary>What could not be cut into it.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>The strips seated on it, by their place in <see cref="StripSet.Strips"/>.</summary>
    public required IReadOnlyList<int> Strips { get; init; }
}

/// <summary>A hole of a base.</summary>
/// <param name="Name">What it is for.</param>
/// <param name="At">Its centre.</param>
/// <param name="DiameterMm">Its diameter.</param>
public sealed record BaseHole(string Name, Point At, double DiameterMm);

/// <summary>Where a strip is held.</summary>
/// <param name="Strip">Name of the strip.</param>
/// <param name="Edge">The rectangle under the clamp.</param>
public sealed record BaseClamp(string Strip, Contour Edge);

/// <summary>Makes the bases of a design: one for each surface that strips are seated on.</summary>
/// <remarks>Where the file gives the surface no outline, the plate is the smallest upright rectangle that holds strips, carrier and parts with
/// <see cref="MarginMm"/> round them, in whole millimetres.</remarks>
internal sealed class BasePlates(Brief brief, WheelLayout wheel, StripSet strips, IReadOnlyList<AdjustingScrew> screws)
{
    /// <summary>Plate round what stands on it, mm (common practice, no source).</summary>
    public const double MarginMm = 5;

    /// <summary>How much wider than the wheel's bore the hole for the shaft is, mm (common practice, no source).</summary>
    public const double ShaftAirMm = 1;

    /// <summary>What the hole for the shaft is called.</summary>
    public const string ShaftName = "shaft";

    public IReadOnlyList<BasePlate> All()
    {
        SurfaceBrief[] used = [.. brief.Surfaces.Where(s => Seated(s).Any())];
        IReadOnlyList<string> slugs = FileSlugs.Of(used.Select(s => s.Name));
        return [.. used.Select((s, i) => One(s, used.Length == 1 ? "base" : $"base-{slugs[i]}"))];
    }

    private IEnumerable<int> Seated(SurfaceBrief surface) => Enumerable.Range(0, strips.Strips.Count)
        .Where(i => string.Equals(strips.Strips[i].Form.Strip.SeatedOn, surface.Name, StringComparison.OrdinalIgnoreCase));

    private BasePlate One(SurfaceBrief surface, string fileName)
    {
        int[] seated = [.. Seated(surface)];
        Contour edge = surface.Outline?.Outer ?? Rectangle();
        List<BaseHole> holes = [];
        List<Contour> cut = [];
        List<Finding> findings = [];
        TextPlace where = brief.PlaceOf(FormattableString.Invariant($"surface[{Index(surface)}]"));
        void Try(string what, Contour hole, BaseHole? round)
        {
            if (Soundness.Faults(new Outline(edge, [.. cut, hole])).Count == 0)
            {
                cut.Add(hole);
                holes.AddRange(round is null ? [] : [round]);
            }
            else
            {
                findings.Add(Finding.Warning("cut.base", $"The base under '{surface.Name}' is drawn without {what}: at ({Wording.Number(hole.Centroid.X, 2)}, {Wording.Number(hole.Centroid.Y, 2)}) mm from the axis it crosses the plate's edge or another opening, or lies outside the plate.", where));
            }
        }

        foreach (BaseHole hole in Wanted(seated, edge))
        {
            Try(hole.Name, Contour.Circle(hole.At, hole.DiameterMm / 2).Travelled(Turning.Clockwise), hole);
        }

        foreach ((SlotBrief slot, int i) in brief.Slots.Select((s, i) => (s, i)).Where(s => s.s.DepthMm is null && IsOn(s.s.Surface, surface)))
        {
            Try(FormattableString.Invariant($"slot {i + 1}"), Band.Along(slot.Path, slot.WidthMm).Outer.Travelled(Turning.Clockwise), null);
        }

        Outline outline = new(edge, cut);
        return new()
        {
            Surface = surface,
            Holes = holes,
            Strips = seated,
            Clamps = [.. seated.Select(i => Clamp(strips.Strips[i]))],
            Findings = findings,
            Part = new()
            {
                Role = PartRole.Base,
                Name = "BASE",
                FileName = fileName,
                Stock = new(null, surface.ThicknessMm, null),
                KerfMm = null,
                Shapes = [new(outline, outline, "the base", where)],
            },
        };
    }

    private int Index(SurfaceBrief surface) => Enumerable.Range(0, brief.Surfaces.Count).First(i => ReferenceEquals(brief.Surfaces[i], surface));

    private static bool IsOn(string name, SurfaceBrief surface) => string.Equals(name, surface.Name, StringComparison.OrdinalIgnoreCase);

    // A plate that does not reach the shaft has no hole for it.
    private IEnumerable<BaseHole> Wanted(IReadOnlyList<int> seated, Contour edge)
    {
        if (new Outline(edge).Contains(Point.Origin))
        {
            yield return new(ShaftName, Point.Origin, brief.Wheel.Bore.DiameterMm + ShaftAirMm);
        }

        foreach (PlacedStrip strip in seated.Select(i => strips.Strips[i]))
        {
            StripClamp held = strip.Form.Clamp;
            foreach (StripHole hole in strip.Form.Strip.Holes.Where(h => h.AtMm >= held.FromMm && h.AtMm <= held.ToMm))
            {
                yield return new($"{strip.Form.Strip.Name}, foot", Place(strip, hole.AtMm, hole.AcrossMm), hole.DiameterMm);
            }
        }
    }

    private static Point Place(PlacedStrip strip, double atMm, double acrossMm) => strip.Placement.Of(strip.Form.FrameAt(atMm).At(0, acrossMm, 0)).Plan;

    private static BaseClamp Clamp(PlacedStrip strip)
    {
        (double from, double to) = (strip.Form.Clamp.FromMm, strip.Form.Clamp.ToMm);
        double half = strip.Form.Pieces.Where(p => p.ToMm > from && p.FromMm < to).Max(p => Math.Max(p.WidthMm, p.WidthEndMm)) / 2;
        return new(strip.Form.Strip.Name, Contour.Polygon(Place(strip, from, -half), Place(strip, to, -half), Place(strip, to, half), Place(strip, from, half)));
    }

    private Contour Rectangle()
    {
        double carrier = WheelSolids.CarrierRadiusMm(brief, wheel);
        Bounds all = strips.Solids.Concat(screws.SelectMany(s => s.Solids)).Select(s => s.Outline.Bounds).Concat(brief.Parts.Select(p => p.Outline.Bounds)).Aggregate(new Bounds(-carrier, -carrier, carrier, carrier), (a, b) => a.With(b)).Grown(MarginMm);
        return Contour.Rectangle(new(Math.Floor(all.MinX), Math.Floor(all.MinY)), new(Math.Ceiling(all.MaxX), Math.Ceiling(all.MaxY)));
    }
}
