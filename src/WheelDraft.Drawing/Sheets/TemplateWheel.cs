using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The wheel and its carrier at true size, named on the part: rings, edges, windows, home mark, flat, holes.</summary>
internal sealed class TemplateWheel
{
    // Hatched waste outside the outline, mm.
    private const double WasteMm = 3;

    // From the outline to the home line's end, mm.
    private const double HomeLineMm = 7;

    // What names need beside the air round a part: the hatching and the knees of leaders, mm.
    private const double BesideMm = 9;

    private readonly Design _design;
    private readonly DrawingNumbers _numbers;
    private readonly double _roomMm;
    private readonly double _halfMm;

    /// <param name="design">The design.</param>
    /// <param name="roomMm">Width that a page shows, mm: names give way before they make a part wider than that.</param>
    public TemplateWheel(Design design, double roomMm)
    {
        (_design, _roomMm, _numbers) = (design, roomMm, new(design.Brief.DrawingUnit));
        _halfMm = Math.Max(design.Wheel.OuterDiameterMm / 2, WheelSolids.CarrierRadiusMm(design.Brief, design.Wheel));
    }

    private WheelLayout Wheel => _design.Wheel;

    private bool IsLands => Wheel.Feed is null;

    /// <summary>The copper: lands in their places on the disc, whose outline, bore and fixings go with them.</summary>
    public Sheet Copper()
    {
        double half = IsLands ? _halfMm : Wheel.OuterDiameterMm / 2;
        (TemplatePart part, IReadOnlyList<RingCallout> callouts) = Begin(
            new("template-wheel", $"{_design.Brief.Title}: wheel", "The contact wheel at true size: cut lines, waste hatched, holes to drill, home mark, names and wheel angles."),
            half,
            [TemplateNaming.Full, TemplateNaming.Short, TemplateNaming.Edges, TemplateNaming.Holes],
            [
                $"{(IsLands ? "Lands in their places on the disc" : "Wheel")}, wiper side. Outer {_numbers.Diameter(Wheel.OuterDiameterMm)}, {_numbers.Thickness(_design.Brief.Wheel.ThicknessMm)} {_design.Brief.Wheel.Material}. {(IsLands ? "Hatched: no copper." : "Hatched: waste.")}",
                .. DrillWords.OfWheel(_design),
                "Angles are wheel angles, from the home mark, edges on their ring radius.",
            ]);
        ViewPen waste = part.In("waste", "Waste");
        waste.Area(new Outline(Contour.Circle(Point.Origin, half + (IsLands ? 0 : WasteMm))), Fill.Of(FillKind.Waste));
        ViewPen cut = part.In("cut", "Cut lines");
        foreach (CopperPiece piece in Wheel.Copper)
        {
            cut.Area(piece.Outline, Fill.Of(FillKind.Paper), TemplateMarks.Cut);
        }

        Holes(part.In("holes", "Bore and fixings"));
        if (IsLands)
        {
            part.In("disc", "The disc that lands lie on").Line(Wheel.Carrier.Outer, TemplateMarks.Cut);
        }

        Finish(part, callouts, WheelMarks.Of(_design).Strokes, half);
        return part.Build();
    }

    /// <summary>The carrier: its outline, what goes through it, and the recess that takes the copper.</summary>
    public Sheet Carrier()
    {
        double half = _design.Parts.Carrier.CutBounds.Width / 2;
        (TemplatePart part, IReadOnlyList<RingCallout> callouts) = Begin(
            new("template-carrier", $"{_design.Brief.Title}: carrier", "The carrier at true size: outline, holes to drill, the recess for the copper, home mark."),
            half,
            [TemplateNaming.Holes],
            [
                $"Carrier, wiper side. Outer {_numbers.Diameter(2 * half)}, {_numbers.Thickness(_design.Brief.Carrier.ThicknessMm)} insulating material. Hatched: waste.",
                .. CarrierWords.Recess(_design),
                .. DrillWords.OfWheel(_design),
            ]);
        part.In("waste", "Waste").Area(new Outline(Contour.Circle(Point.Origin, half + WasteMm)), Fill.Of(FillKind.Waste));
        part.In("cut", "Cut lines").Area(new Outline(Wheel.Carrier.Outer), Fill.Of(FillKind.Paper), TemplateMarks.Cut);
        if (_design.Parts.Carrier.Recess is CarrierRecess recess)
        {
            ViewPen pen = part.In("recess", "Recess for the copper, not through");
            foreach (Outline pocket in recess.Pockets)
            {
                pen.Area(pocket, Fill.Of(FillKind.Recess), TemplateMarks.Cut);
            }
        }

        Holes(part.In("holes", "Bore and fixings"));
        Finish(part, callouts, PartMarks.Of(_design, _design.Parts.Carrier).Scribed, half);
        return part.Build();
    }

    // The fullest of the ways that fits a page; a wheel that fits none by itself may be named in full over several. Rings that are not
    // named by leaders stand in a line under the part.
    private (TemplatePart Part, IReadOnlyList<RingCallout> Callouts) Begin(SheetWords words, double half, IReadOnlyList<TemplateNaming> ways, IReadOnlyList<string> text)
    {
        TemplateNames names = new(_design);
        Bounds bounds = new(-half, -half, half, half);
        foreach (TemplateNaming way in ways)
        {
            IReadOnlyList<RingCallout> callouts = names.Of(way);
            TemplateRoom room = new(BesideMm + CalloutRing.ColumnMm(CalloutMarks.Words, callouts.Select(c => c.Text)), ShowsSense: true);
            TemplatePart part = TemplatePart.Of(words, bounds, room, way == TemplateNaming.Edges || (way == TemplateNaming.Holes && ways.Count > 1) ? [.. text, names.RingLine()] : text);
            RingCallout[] placed = [.. callouts.Select(c => c with { At = part.View.Of(c.At) })];
            bool fits = part.WidthMm <= _roomMm || 2 * half > _roomMm - (2 * BesideMm);
            if (fits && placed.Length <= Ring(part).Capacity)
            {
                return (part, placed);
            }
        }

        return (TemplatePart.Of(words, bounds, new(ShowsSense: true), [.. text, names.RingLine()]), []);
    }

    private static CalloutRing Ring(TemplatePart part) => new(part.Part.Grown(WasteMm + 3), part.Area);

    private void Holes(ViewPen pen)
    {
        pen.Area(new Outline(Wheel.Bore.Travelled(Turning.Anticlockwise)), Fill.Of(FillKind.Paper), TemplateMarks.Cut);
        foreach (Point fixing in Wheel.Fixings)
        {
            pen.Area(new Outline(Contour.Circle(fixing, _design.Brief.Wheel.Fixings!.DiameterMm / 2)), Fill.Of(FillKind.Paper), TemplateMarks.Cut);
        }
    }

    private void Finish(TemplatePart part, IReadOnlyList<RingCallout> callouts, IReadOnlyList<IReadOnlyList<Piece>> scribed, double half)
    {
        ViewPen marks = part.In("marks", "Scribed marks and home line");
        foreach (IReadOnlyList<Piece> stroke in scribed)
        {
            marks.Line(stroke, TemplateMarks.Scribed);
        }

        marks.Line(Point.Polar(half, 0), Point.Polar(half + HomeLineMm, 0), TemplateMarks.Cut);
        GroupPen drills = part.On("drills", "Holes to drill");
        foreach ((DrillPlan plan, double hole) in Drills())
        {
            drills.Add(TemplateMarks.Drill(part.View.Of(plan.At), plan.DrillMm, hole));
        }

        Ring(part).TryDraw(part.On("names", "Names and wheel angles"), callouts);
    }

    private IEnumerable<(DrillPlan Plan, double HoleMm)> Drills()
    {
        DrillSeries series = DrillSeries.Of(_design.Brief.DrawingUnit);
        if (DrillPlan.Bore(_design.Brief.Wheel.Bore, Wheel.Bore, series) is DrillPlan bore)
        {
            yield return (bore, _design.Brief.Wheel.Bore.DiameterMm);
        }

        foreach (Point fixing in Wheel.Fixings)
        {
            double hole = _design.Brief.Wheel.Fixings!.DiameterMm;
            if (DrillPlan.Round(fixing, hole, series) is DrillPlan plan)
            {
                yield return (plan, hole);
            }
        }
    }
}
