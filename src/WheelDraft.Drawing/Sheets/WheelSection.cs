using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Section A-A of the wheel let into its carrier, under the plan and in line with it.</summary>
/// <remarks>Left of the axis as the plane through axis and home mark cuts it; right of the axis every window, or land, is turned into the plane, so that
/// webs and rim are seen between them. Below it stand all radii as running dimensions from the axis (ISO 129-1), above it bore, datum and run-out.</remarks>
internal sealed class WheelSection
{
    // Over the copper's face: the bore with its datum, the name; below the carrier: the line of radii, their leaders and figures. All mm on the paper.
    private const double AboveMm = 14;
    private const double RadiiLineMm = 5;
    private const double JogMm = 5;
    private const double FigureMm = 24;
    private const double FigurePitchMm = 3.7;
    private const double FrameGapMm = 8;
    private const string Datum = "A";

    private readonly Design _design;
    private readonly SheetView _view;
    private readonly Bounds _area;
    private readonly DrawingNumbers _numbers;
    private readonly CutNumbers _cut;
    private readonly double _halfMm;

    /// <param name="design">The design.</param>
    /// <param name="view">The view: its x is that of the plan, its y zero the copper's face.</param>
    /// <param name="area">Where its dimensions may stand.</param>
    public WheelSection(Design design, SheetView view, Bounds area)
    {
        (_design, _view, _area) = (design, view, area);
        (_numbers, _cut) = (new(design.Brief.DrawingUnit), CutNumbers.Of(design));
        _halfMm = Math.Max(design.Wheel.OuterDiameterMm, design.Parts.Carrier.CutBounds.Width) / 2;
    }

    /// <summary>Whether it stands by itself: radii may then reach out beyond it, and its upright dimensions keep clear of them.</summary>
    public bool IsAlone { get; init; }

    /// <summary>Thicknesses that found no place when it was drawn by itself, each with what it is of.</summary>
    public IReadOnlyList<string> Lost { get; private set; } = [];

    /// <summary>What its figures take on either side of the axis, mm on the paper.</summary>
    public (double LeftMm, double RightMm) FiguresMm => (FiguresOf(RingRadii().Length), FiguresOf(EdgeRadii().Length));

    private static double FiguresOf(int count) => 2.5 + (count * FigurePitchMm) + 2;

    /// <summary>What the notes say of it.</summary>
    public static string Note(Design design) =>
        $"Section A-A: left of the axis as cut, right of it every {(design.Wheel.Feed is null ? "land" : "window")} turned into the plane; radii run from the axis.";

    /// <summary>Height over the copper's face that it takes, mm on the paper.</summary>
    public static double OverMm => AboveMm;

    /// <summary>Height from the copper's face down that it takes at a scale, mm on the paper.</summary>
    public static double UnderMm(Design design, double factor) =>
        ((design.Brief.Carrier.StepMm + design.Brief.Carrier.ThicknessMm) * factor) + RadiiLineMm + JogMm + FigureMm;

    private double FootMm => -_design.Brief.Carrier.StepMm - _design.Brief.Carrier.ThicknessMm;

    /// <summary>Draws it with its dimensions.</summary>
    /// <returns>Whether all radii found room.</returns>
    public bool Draw(SheetBuilder sheet)
    {
        Materials(sheet);
        GroupPen pen = sheet.Group("section-dimensions", "Thicknesses, radii, datum and run-out", "dimensions");
        Point middle = _view.Of(Point.Origin);
        pen.Text("A - A", new(_view.Of(new Point(-_halfMm, 0)) + new Vector(0, 9), TextAlong.Start), TextStyle.Label);
        sheet.Group("section-axis", "The axis", "axes").Line(middle + new Vector(0, 3), _view.Of(new Point(0, FootMm)) - new Vector(0, RadiiLineMm + 2), LineStyle.Centre);
        BoreAndDatum(pen);
        RunOut(pen);
        if (!IsAlone)
        {
            Thicknesses(pen);
        }

        bool rings = Radii(pen, -1, RingRadii());
        bool edges = Radii(pen, 1, EdgeRadii());
        if (IsAlone && Thicknesses(pen) is SheetTable lost)
        {
            Lost = [.. lost.Rows.Select(r => $"{r[0]} {r[1]}")];
        }

        sheet.Texts.Block(_view.Of(new Bounds(-_halfMm, FootMm, _halfMm, 0)).Grown(1));
        return rings && edges;
    }

    private void Materials(SheetBuilder sheet)
    {
        ViewPen pen = sheet.Group("section", "Section A-A: copper and carrier", "section").In(_view);
        WheelBrief wheel = _design.Brief.Wheel;
        double step = _design.Brief.Carrier.StepMm;
        Part carrier = _design.Parts.Carrier;
        double deep = carrier.Recess?.DepthMm ?? 0;
        double bore = wheel.Bore.DiameterMm / 2;
        (double From, double To)[] left = [.. CutOf(_design.Wheel.Copper.Select(c => c.Outline), -_halfMm)];
        (double From, double To)[] right = [.. Turned()];
        List<(double From, double To, double Top)> body = [.. CarrierPicture.SectionOf(carrier).Where(s => s.From < 0).Select(s => (s.From, Math.Min(s.To, 0), s.Top - step))];
        double at = bore;
        foreach ((double from, double to) in right)
        {
            body.Add((at, from, -step));
            body.Add((from, to, -step - deep));
            at = to;
        }

        body.Add((at, carrier.CutBounds.Width / 2, -step));
        foreach (Outline part in SideProfile.Of([.. body.Where(b => b.To > b.From).Select(b => new Bounds(b.From, FootMm, b.To, b.Top))]))
        {
            pen.Area(part, Fill.Of(FillKind.Insulation), LineStyle.Thin);
        }

        foreach ((double from, double to) in left.Concat(right))
        {
            pen.Area(new Outline(Contour.Rectangle(new(from, -wheel.ThicknessMm), new(to, 0))), Fill.Of(FillKind.Copper), LineStyle.Thin);
        }
    }

    // Where copper is met along the x axis from an x to the axis.
    private static IEnumerable<(double From, double To)> CutOf(IEnumerable<Outline> copper, double fromX)
    {
        Segment line = new(new(fromX - 1, 0), Point.Origin);
        foreach (Outline piece in copper)
        {
            double[] cuts = [.. piece.Pieces.SelectMany(p => Intersections.Of(line, p).Points).Select(p => p.At.X).Order()];
            for (int i = 0; i + 1 < cuts.Length; i++)
            {
                if (cuts[i + 1] - cuts[i] > Tolerances.JoinMm && piece.Contains(new Point((cuts[i] + cuts[i + 1]) / 2, 0)))
                {
                    yield return (cuts[i], cuts[i + 1]);
                }
            }
        }
    }

    // Copper along any radius with every window, or land, turned into it.
    private IEnumerable<(double From, double To)> Turned()
    {
        WheelLayout wheel = _design.Wheel;
        if (wheel.Feed is null)
        {
            return wheel.Rings.Where(r => r.LandFromMm is not null && r.LandToMm is not null).Select(r => (r.LandFromMm!.Value, r.LandToMm!.Value)).OrderBy(r => r.Item1);
        }

        List<(double From, double To)> copper = [];
        double at = _design.Brief.Wheel.Bore.DiameterMm / 2;
        foreach (RingLayout ring in wheel.Rings.Where(r => r.WindowFromMm is not null && r.WindowToMm is not null && r.Periods.Count > 0).OrderBy(r => r.WindowFromMm))
        {
            copper.Add((at, ring.WindowFromMm!.Value));
            at = ring.WindowToMm!.Value;
        }

        copper.Add((at, wheel.OuterDiameterMm / 2));
        return copper.Where(c => c.To - c.From > Tolerances.JoinMm);
    }

    private void BoreAndDatum(GroupPen pen)
    {
        BoreBrief bore = _design.Brief.Wheel.Bore;
        double radius = bore.DiameterMm / 2;
        (Point left, Point right) = (_view.Of(new Point(-radius, 0)), _view.Of(new Point(radius, 0)));
        string words = $"{_numbers.Diameter(bore.DiameterMm, 3)}{(bore.Fit.Length > 0 ? " " + bore.Fit : "")}";
        new DimensionPen(pen).Add(new LinearDimension(left, right, 5, words) { Direction = LinearDirection.Level, Subject = "bore" });

        // In line with the dimension of a diameter, a datum is the axis.
        ToleranceFrame.Datum(pen, new Point(left.X, left.Y + 5), new Vector(-1, 0), Datum);
    }

    private void RunOut(GroupPen pen)
    {
        WheelBrief wheel = _design.Brief.Wheel;
        double copper = _design.Wheel.Copper.Max(c => c.Outline.Bounds.MaxX);
        double rim = Math.Max(copper, _halfMm);
        Point corner = _view.Of(new Point(rim, 0));
        if (wheel.FaceRunOutMm > 0)
        {
            Point face = _view.Of(new Point(copper - Math.Min(1 / _view.Scale.Factor, copper / 8), 0));
            Point left = corner + new Vector(FrameGapMm, 9);
            ToleranceFrame.RunOut(pen, left, (_numbers.Length(wheel.FaceRunOutMm, 3), Datum), new Point(face.X, left.Y), face);
        }

        if (wheel.RunOutMm > 0)
        {
            double deep = copper < _halfMm ? (_design.Brief.Carrier.StepMm - FootMm) / 2 : wheel.ThicknessMm / 2;
            Point edge = _view.Of(new Point(rim, -deep));
            ToleranceFrame.RunOut(pen, edge + new Vector(FrameGapMm, 0), (_numbers.Length(wheel.RunOutMm, 3), Datum), edge);
        }
    }

    // What finds no place comes back as a table, or null.
    private SheetTable? Thicknesses(GroupPen pen)
    {
        DimensionPen dimensions = new(pen);
        WheelBrief wheel = _design.Brief.Wheel;
        CarrierBrief carrier = _design.Brief.Carrier;
        Point face = _view.Of(new Point(-_halfMm, 0));
        Point At(double z) => face + new Vector(0, _view.OnPaperMm(z));
        dimensions.Add(new LinearDimension(At(-wheel.ThicknessMm), face, 5, _numbers.Length(wheel.ThicknessMm, 3)) { Direction = LinearDirection.Upright, Subject = "copper" });
        dimensions.Add(new LinearDimension(At(FootMm), At(-carrier.StepMm), 11.5, _numbers.Length(carrier.ThicknessMm, 3)) { Direction = LinearDirection.Upright, Subject = "carrier" });
        if (_design.Parts.Carrier.Recess is CarrierRecess recess && Math.Abs(recess.DepthMm - wheel.ThicknessMm) > Tolerances.JoinMm)
        {
            dimensions.Add(new LinearDimension(At(-carrier.StepMm - recess.DepthMm), At(-carrier.StepMm), 18, $"recess {_numbers.Length(recess.DepthMm, 3)}") { Direction = LinearDirection.Upright, Subject = "recess" });
        }
        else if (_design.Parts.Carrier.Recess is CarrierRecess flush)
        {
            string words = $"recess {_numbers.Length(flush.DepthMm, 3)}, copper flush";
            TextSpot[] spots =
            [
                new(face + new Vector(0, 3), TextAlong.Start),
                new(At(FootMm) - new Vector(20, 4), TextAlong.End, TextAcross.Top),
                new(At(FootMm) - new Vector(20, 9), TextAlong.End, TextAcross.Top),
                new(new(_view.Of(new Point(_halfMm, 0)).X - 1, face.Y + 1.5), TextAlong.End),
            ];
            if (!pen.TryText(words, spots, DimensionForm.TextStyle))
            {
                pen.TryText($"recess {_numbers.Length(flush.DepthMm, 3)}, flush", spots, DimensionForm.TextStyle);
            }
        }

        return dimensions.Table();
    }

    private (double RadiusMm, string Text)[] RingRadii() =>
        [.. _design.Wheel.AllRings.OrderBy(r => r.RadiusMm).GroupBy(r => _cut.Length(r.RadiusMm), StringComparer.Ordinal).Select(g => (g.First().RadiusMm, $"{g.Key} {string.Join(", ", g.Select(NameOf))}"))];

    // As many letters as the room for figures takes; with more, the ring's number in the table.
    private string NameOf(RingLayout ring) =>
        ring.IsFeed ? "feed" : TextFit.WidthMm(ring.Name, DimensionForm.TextStyle) < 9 ? ring.Name : Invariant.Text($"ring {WheelEdges.NumberOf(_design, ring)}");

    private (double RadiusMm, string Text)[] EdgeRadii()
    {
        WheelLayout wheel = _design.Wheel;
        IEnumerable<double> edges = wheel.Rings.SelectMany(r => new[] { r.WindowFromMm ?? r.LandFromMm, r.WindowToMm ?? r.LandToMm }).OfType<double>();
        return [.. edges.Append(wheel.OuterDiameterMm / 2).Order().GroupBy(_cut.Length, StringComparer.Ordinal).Select(g => (g.First(), g.Key))];
    }

    // Running dimensions: a line from the axis with a stroke at each radius, figures upright below, pushed apart where radii are close.
    private bool Radii(GroupPen pen, int side, (double RadiusMm, string Text)[] radii)
    {
        if (radii.Length == 0)
        {
            return true;
        }

        double axis = _view.Of(Point.Origin).X;
        double foot = _view.Of(new Point(0, FootMm)).Y;
        double line = foot - RadiiLineMm;
        double room = side > 0 ? _area.MaxX - axis : axis - _area.MinX;
        double[] at = Spread.Apart([.. radii.Select(r => _view.OnPaperMm(r.RadiusMm))], FigurePitchMm, 2.5, room - 2);
        if (at[^1] > room - 1.9)
        {
            return false;
        }

        pen.Line(Contour.Circle(new Point(axis, line), 0.8), LineStyle.Dimension);
        pen.Line(new Point(axis + (side * 0.8), line), new Point(axis + (side * _view.OnPaperMm(radii[^1].RadiusMm)), line), LineStyle.Dimension);
        for (int i = 0; i < radii.Length; i++)
        {
            Point on = new(axis + (side * _view.OnPaperMm(radii[i].RadiusMm)), line);
            Point end = new(axis + (side * at[i]), line - JogMm);
            pen.Polyline(LineStyle.Dimension, new Point(on.X, foot - 1), on - new Vector(0, 1), end);
            pen.Line(on - new Vector(0.9, 0.9), on + new Vector(0.9, 0.9), LineStyle.Thin);
            pen.Text(radii[i].Text, new(end - new Vector(0, 0.8), TextAlong.End, TextAcross.Middle, Math.PI / 2), DimensionForm.TextStyle);
        }

        pen.Texts.Block(new Bounds(Math.Min(axis, axis + (side * at[^1])), line - JogMm, Math.Max(axis, axis + (side * at[^1])), foot));
        return true;
    }
}

/// <summary>The arrow that shows from where a section is seen, at the end of its cutting plane (ISO 128-3, from memory).</summary>
internal static class SectionArrow
{
    private const double LongMm = 6;

    /// <summary>Draws it from below up to the plane: a section that stands under its plan in line with it is seen that way.</summary>
    public static void Draw(GroupPen pen, Point tip)
    {
        pen.Line(tip - new Vector(0, LongMm), tip, LineStyle.Dimension).Add(DimensionForm.Head(tip, new Vector(0, 1)));
        pen.Texts.TakeLine(tip - new Vector(0, LongMm), tip);
    }
}
