using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The timer seen from the side, along the plan's y axis: parts, base, carrier, copper, strips pressed on the wheel, screws.</summary>
internal static class SideElevation
{
    /// <summary>From the lowest to the highest point that it shows, over the copper face, mm.</summary>
    public static (double LowMm, double HighMm) HeightsOf(Design design)
    {
        CarrierBrief carrier = design.Brief.Carrier;
        IEnumerable<double> heights =
        [
            0,
            -carrier.StepMm - carrier.ThicknessMm,
            .. design.Brief.Parts.SelectMany(p => new[] { p.FromZMm, p.ToZMm }),
            .. design.Strips.Strips.SelectMany(s => s.Solids).Concat(design.Screws.SelectMany(s => s.Solids)).SelectMany(s => new[] { s.FromZMm, s.ToZMm }),
            .. design.Parts.Bases.SelectMany(b => new[] { b.Surface.LevelMm, b.Surface.LevelMm - (b.Part.Stock.ThicknessMm ?? 0) }),
        ];
        return (heights.Min(), heights.Max());
    }

    // Strips are as thin as a line on the paper: finer edges leave them their colour.
    private static readonly LineStyle Edge = LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Outline, 0.18);

    /// <summary>Draws it, what is farthest away first.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="design">The design.</param>
    /// <param name="view">The view: x as in the plan, y the height over the copper face.</param>
    /// <param name="plate">The base to show, or null for none.</param>
    public static void Draw(SheetBuilder sheet, Design design, SheetView view, BasePlate? plate)
    {
        ViewPen pen = sheet.Group("side", "The timer from the side", "side").In(view);
        foreach (PartBrief part in design.Brief.Parts.OrderByDescending(p => p.Outline.Bounds.MaxY))
        {
            pen.Area(Box(part.Outline.Bounds, part.FromZMm, part.ToZMm), Fill.Of(FillKind.Paper), LineStyle.Thin);
        }

        Plate(pen, plate);
        CarrierBrief carrier = design.Brief.Carrier;
        double radius = (carrier.DiameterMm ?? design.Wheel.OuterDiameterMm) / 2;
        double copper = design.Wheel.Copper.Max(c => Math.Max(c.Outline.Bounds.MaxX, -c.Outline.Bounds.MinX));
        pen.Area(Box(new(-radius, 0, radius, 0), -carrier.StepMm - carrier.ThicknessMm, -carrier.StepMm), Fill.Of(FillKind.Insulation), LineStyle.Thin);
        pen.Area(Box(new(-copper, 0, copper, 0), -design.Brief.Wheel.ThicknessMm, 0), Fill.Of(FillKind.Copper), LineStyle.Thin);
        GroupPen strips = sheet.Group("side-strips", "Strips from the side", "strips");
        foreach (PlacedStrip strip in design.Strips.Strips.OrderByDescending(s => s.Solids.Max(p => p.Outline.Bounds.MaxY)))
        {
            Bounds[] boxes = [.. strip.Solids.Select(s => new Bounds(s.Outline.Bounds.MinX, s.FromZMm, s.Outline.Bounds.MaxX, s.ToZMm))];
            foreach (Outline profile in SideProfile.Of(boxes))
            {
                strips.In(view).Area(profile, Fill.Of(FillKind.CopperPale), Edge);
            }
        }

        foreach (Solid screw in design.Screws.SelectMany(s => s.Solids))
        {
            pen.Area(Box(screw.Outline.Bounds, screw.FromZMm, screw.ToZMm), Fill.Of(FillKind.Paper), LineStyle.Thin);
        }
    }

    private static void Plate(ViewPen pen, BasePlate? plate)
    {
        if (plate is null)
        {
            return;
        }

        Bounds bounds = plate.Part.CutBounds;
        double level = plate.Surface.LevelMm;
        if (plate.Part.Stock.ThicknessMm is double thickness)
        {
            pen.Area(Box(bounds, level - thickness, level), Fill.Of(FillKind.Carrier), LineStyle.Edge);
        }
        else
        {
            pen.Line(new Point(bounds.MinX, level), new Point(bounds.MaxX, level), LineStyle.Edge);
        }
    }

    private static Outline Box(Bounds plan, double fromZMm, double toZMm) => new(Contour.Rectangle(new(plan.MinX, fromZMm), new(plan.MaxX, toZMm)));
}
