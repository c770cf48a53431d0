using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>The three views of a strip on its sheet, one scale: blank, formed from the side, formed from the wiper side (first angle).</summary>
internal sealed class StripViews
{
    // Air above and below each view, mm on the paper: captions and dimension lines.
    private const double BlankAboveMm = 34;
    private const double BlankBelowMm = 30;
    private const double SideAboveMm = 24;
    private const double SideBelowMm = 26;
    private const double PlanAboveMm = 14;
    private const double PlanBelowMm = 12;

    // Beside the views, on either side: upright dimensions and their texts.
    private const double BesideMm = 30;

    // How far floor and copper are drawn beside what they carry, and how thick, model mm.
    private const double BesideContactMm = 6;
    private const double FloorMm = 1.2;

    private readonly Design _design;
    private readonly PlacedStrip _strip;
    private readonly StripForm _form;
    private readonly Bounds _picture;
    private readonly StripProfile _profile;
    private readonly IReadOnlyList<Contour> _ribbons;
    private readonly DrawingNumbers _numbers;
    private readonly double _spareMm;
    private readonly bool _isAlone;

    public StripViews(Design design, PlacedStrip strip, Bounds picture)
        : this(design, strip, picture, null)
    {
        Scale = ScaleOf(_form, _profile, _ribbons, picture) ?? DrawingScale.Iso[^1];
        _spareMm = Math.Max(0, (picture.Height - AirMm - (Heights(_form, _profile, _ribbons) * Scale.Factor)) / 3);
    }

    private StripViews(Design design, PlacedStrip strip, Bounds picture, double? besideMm)
    {
        (_design, _strip, _form, _picture) = (design, strip, strip.Form, picture);
        _numbers = new(design.Brief.DrawingUnit);
        _profile = StripProfile.Of(_form);
        _ribbons = StripRibbon.Of(_form);
        _isAlone = besideMm is not null;
    }

    /// <summary>Draws the blank by itself, under the top of an area and as large as its width allows, without the name of the view.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="of">The design and the strip.</param>
    /// <param name="area">The area.</param>
    /// <param name="besideMm">What upright dimensions take on either side, mm.</param>
    public static void DrawBlankAlone(SheetBuilder sheet, (Design Design, PlacedStrip Strip) of, Bounds area, double besideMm)
    {
        Bounds blank = of.Strip.Form.Blank.Outline.Bounds;
        StripViews views = new(of.Design, of.Strip, area, besideMm) { Scale = AloneScale(blank, area, besideMm) };
        views.Blank(sheet, views.ViewAt(blank, area.MaxY - BlankAboveMm));
    }

    /// <summary>Draws the formed strip from the side by itself, as <see cref="DrawBlankAlone"/> does the blank.</summary>
    public static void DrawSideAlone(SheetBuilder sheet, (Design Design, PlacedStrip Strip) of, Bounds area, double besideMm)
    {
        Bounds side = SideBounds(StripProfile.Of(of.Strip.Form));
        StripViews views = new(of.Design, of.Strip, area, besideMm) { Scale = AloneScale(side, area, besideMm) };
        views.Side(sheet, views.ViewAt(side, area.MaxY - SideAboveMm));
    }

    private static DrawingScale AloneScale(Bounds model, Bounds area, double besideMm) =>
        DrawingScale.Free(model, new(0, 0, area.Width - (2 * besideMm), area.Height - BlankAboveMm - BlankBelowMm));

    /// <summary>Scale of all three views.</summary>
    public DrawingScale Scale { get; private init; }

    /// <summary>Whether the views find room at full size or larger.</summary>
    public static bool Fits(PlacedStrip strip, Bounds picture) =>
        ScaleOf(strip.Form, StripProfile.Of(strip.Form), StripRibbon.Of(strip.Form), picture) is DrawingScale scale && scale.Factor >= 1;

    /// <summary>Draws all views.</summary>
    public void Draw(SheetBuilder sheet)
    {
        double top = _picture.MaxY;
        Bounds blank = _form.Blank.Outline.Bounds;
        double blankTop = top - BlankAboveMm - (_spareMm / 2);
        Blank(sheet, ViewAt(blank, blankTop));
        top = blankTop - (blank.Height * Scale.Factor) - BlankBelowMm - (_spareMm / 2);
        Bounds side = SideBounds(_profile);
        double sideTop = top - SideAboveMm - (_spareMm / 2);
        SheetView sideView = ViewAt(side, sideTop);
        Side(sheet, sideView);
        top = sideTop - (side.Height * Scale.Factor) - SideBelowMm - (_spareMm / 2);
        Bounds plan = PlanBounds(_ribbons);
        double planTop = top - PlanAboveMm - (_spareMm / 2);
        Point corner = new(sideView.Of(Point.Origin).X, planTop);
        Plan(sheet, SheetView.At(Scale, new Point(0, plan.MaxY), corner));
    }

    private const double AirMm = BlankAboveMm + BlankBelowMm + SideAboveMm + SideBelowMm + PlanAboveMm + PlanBelowMm;

    private static double Heights(StripForm form, StripProfile profile, IReadOnlyList<Contour> ribbons) =>
        form.Blank.Outline.Bounds.Height + SideBounds(profile).Height + PlanBounds(ribbons).Height;

    private static DrawingScale? ScaleOf(StripForm form, StripProfile profile, IReadOnlyList<Contour> ribbons, Bounds picture)
    {
        double width = Math.Max(form.Blank.Outline.Bounds.Width, Math.Max(SideBounds(profile).Width, PlanBounds(ribbons).Width));
        double height = Heights(form, profile, ribbons);
        return DrawingScale.Iso.Select(s => (DrawingScale?)s).FirstOrDefault(s =>
            (width * s!.Value.Factor) + (2 * BesideMm) <= picture.Width && (height * s.Value.Factor) + AirMm <= picture.Height);
    }

    private static Bounds SideBounds(StripProfile profile)
    {
        Bounds all = profile.Bounds;
        double low = Math.Min(all.MinY, profile.Form.SeatLevelMm - FloorMm);
        return profile.Contact is Point contact
            ? new(all.MinX, low, Math.Max(all.MaxX, contact.X + BesideContactMm), Math.Max(all.MaxY, 1))
            : new(all.MinX, low, all.MaxX, all.MaxY);
    }

    private static Bounds PlanBounds(IReadOnlyList<Contour> ribbons) => ribbons.Select(r => r.Bounds).Aggregate((a, b) => a.With(b));

    private SheetView ViewAt(Bounds model, double topMm) =>
        SheetView.At(Scale, new Point(model.Centre.X, model.MaxY), new Point(_picture.Centre.X, topMm));

    private void Caption(GroupPen pen, double y, string words)
    {
        if (!_isAlone)
        {
            pen.Text(words, new(new(_picture.MinX, y), TextAlong.Start, TextAcross.Top), TextStyle.Label);
        }
    }

    private void Blank(SheetBuilder sheet, SheetView view)
    {
        GroupPen pen = sheet.Group("blank", "Blank", "copper");
        StripBlank blank = _form.Blank;
        Bounds paper = view.Of(blank.Outline.Bounds);
        const string caption = "Blank, wiper side up";
        Caption(pen, paper.MaxY + BlankAboveMm, caption);
        if (!_isAlone)
        {
            GrainArrow.Draw(sheet.Group("grain", "Rolling direction", "direction"), new(_picture.MinX + TextFit.WidthMm(caption, TextStyle.Label) + 6, paper.MaxY + BlankAboveMm - (TextStyle.Label.HeightMm / 2)), _form.Strip.Grain);
        }

        pen.In(view).Area(blank.Outline, Fill.Of(FillKind.CopperPale), LineStyle.Edge);
        ViewPen thin = sheet.Group("folds", "Fold lines", "folds").In(view);
        foreach (Segment fold in blank.FoldLines)
        {
            thin.Line([fold], LineStyle.Thin);
        }

        ViewPen held = sheet.Group("clamp", "Between these lines the strip is held", "clamp").In(view);
        foreach (Segment line in blank.ClampLines)
        {
            held.Line([line], LineStyle.Phantom);
        }

        ViewPen marks = sheet.Group("marks", "Marks to scribe", "marks").In(view);
        foreach (IReadOnlyList<Piece> mark in StripMarks.Of(_design, _form).Strokes)
        {
            marks.Line(mark, LineStyle.Wide(LineKind.ContinuousNarrow, Ink.Quiet, 0.18));
        }

        HazardMarks.Draw(sheet, view, _design, PartMarks.BlankOf(_design, _strip));
        BlankDimensions(sheet, view, paper);
    }

    private void BlankDimensions(SheetBuilder sheet, SheetView view, Bounds paper)
    {
        GroupPen pen = sheet.Group("blank-dimensions", "Dimensions of the blank", "dimensions");
        DimensionPen dimensions = new(pen);
        StripBlank blank = _form.Blank;
        Point left = view.Of(new Point(0, blank.Outline.Bounds.MaxY));
        Point foot = view.Of(new Point(0, blank.Outline.Bounds.MinY));
        foreach ((StripFold fold, int i) in _form.Folds.Select((f, i) => (f, i)))
        {
            Segment line = blank.FoldLines[i];
            Point upper = view.Of(line.Start.Y > line.End.Y ? line.Start : line.End);
            dimensions.Add(Across(left, upper, 7, Invariant.Text($"fold {i + 1}: {_numbers.Length(fold.AtMm)}"), Invariant.Text($"fold {i + 1}")));
        }

        double end = blank.Outline.Bounds.MaxX;
        dimensions.Add(Across(left, view.Of(new Point(end, 0)), 7, _numbers.Length(end), "length of the blank"));
        List<(double At, string Text, string Subject)> below =
        [
            .. _form.Strip.Holes.Select(h => (h.AtMm, HoleWords(h), "hole")),
            .. _form.Nose is StripNose nose ? [(nose.AtMm, $"contact {_numbers.Length(nose.AtMm)}", "contact")] : Array.Empty<(double, string, string)>(),
        ];
        foreach ((double at, string text, string subject) in below.Where(b => b.At > 0).OrderBy(b => b.At))
        {
            dimensions.Add(Across(foot, view.Of(new Point(at, blank.Outline.Bounds.MinY)), -7, text, subject));
        }

        Widths(dimensions, view);
        Rest(sheet, pen, dimensions, new Bounds(_picture.MinX, paper.MinY - BlankBelowMm, _picture.MaxX, paper.MinY));
    }

    private string HoleWords(StripHole hole)
    {
        string across = hole.AcrossMm == 0 ? "" : $", {_numbers.Length(Math.Abs(hole.AcrossMm))} {(hole.AcrossMm > 0 ? "left" : "right")}";
        return $"{_numbers.Diameter(hole.DiameterMm)} at {_numbers.Length(hole.AtMm)}{across}";
    }

    private void Widths(DimensionPen dimensions, SheetView view)
    {
        FormedPiece first = _form.Pieces[0];
        FormedPiece last = _form.Pieces[^1];
        dimensions.Add(new LinearDimension(view.Of(new Point(0, -first.WidthMm / 2)), view.Of(new Point(0, first.WidthMm / 2)), 8, _numbers.Length(first.WidthMm)) { Direction = LinearDirection.Upright, Subject = "width at the terminal end" });
        if (_form.Pieces.All(p => p.Kind != FormedKind.Sweep))
        {
            double x = _form.LengthMm;
            dimensions.Add(new LinearDimension(view.Of(new Point(x, -last.WidthEndMm / 2)), view.Of(new Point(x, last.WidthEndMm / 2)), -8, _numbers.Length(last.WidthEndMm)) { Direction = LinearDirection.Upright, Subject = "width at the tip" });
        }

        FormedPiece? wide = _form.Pieces.FirstOrDefault(p => p.WidthMm > first.WidthMm && p.Kind == FormedKind.Straight);
        if (wide is not null)
        {
            dimensions.Add(new CalloutDimension(view.Of(new Point(wide.FromMm + (0.8 * wide.DevelopedMm), wide.WidthMm / 2)), Angles.RadFromDeg(120), $"{_numbers.Length(wide.WidthMm)} wide"));
        }
    }

    private static LinearDimension Across(Point from, Point to, double offsetMm, string text, string subject) =>
        new(from, to, offsetMm, text) { Direction = LinearDirection.Level, Subject = subject };

    private void Rest(SheetBuilder sheet, GroupPen pen, DimensionPen dimensions, Bounds area)
    {
        if (dimensions.Table() is SheetTable rest)
        {
            const double roundingMm = 0.01;
            double width = _isAlone ? Math.Min(rest.NaturalWidthMm, area.Width - roundingMm) : rest.NaturalWidthMm;
            if (_isAlone && sheet.Drawn is Bounds drawn)
            {
                area = area with { MinY = drawn.MinY - 3 - rest.HeightMm(width) - roundingMm };
            }

            rest.Draw(pen, new Bounds(area.MaxX - width - roundingMm, area.MinY, area.MaxX, area.MinY + rest.HeightMm(width) + roundingMm));
        }
    }

    private void Side(SheetBuilder sheet, SheetView view)
    {
        Bounds paper = view.Of(SideBounds(_profile));
        Caption(sheet.Group("side-caption", "Caption of the side view", "caption"), paper.MaxY + SideAboveMm, SideWords);
        ViewPen ground = sheet.Group("ground", "Floor under the clamp, copper under the contact", "carrier").In(view);
        double from = _profile.At(_form.Clamp.FromMm).At.X;
        double to = _profile.At(_form.Clamp.ToMm).At.X;
        if (_form.Strip.SeatedOn is not null)
        {
            ground.Area(Rectangle(from, _form.SeatLevelMm - FloorMm, to, _form.SeatLevelMm), Fill.Of(FillKind.Insulation), LineStyle.Thin);
        }

        if (_profile.Contact is Point contact)
        {
            ground.Area(Rectangle(contact.X - BesideContactMm, -_design.Brief.Wheel.ThicknessMm, contact.X + BesideContactMm, 0), Fill.Of(FillKind.Copper), LineStyle.Thin);
        }

        ViewPen strip = sheet.Group("side", "Formed strip from the side, free", "copper").In(view);
        strip.Area(new Outline(_profile.Edge), Fill.Of(FillKind.CopperPale), LineStyle.Edge);
        if (_profile.Rivet is Contour rivet)
        {
            strip.Area(new Outline(rivet), Fill.Of(FillKind.CopperPale), LineStyle.Edge);
        }

        Pressed(sheet, view);
        SideDimensions(sheet, view, paper);
    }

    private string SideWords => _form.Pieces.Any(p => p.Kind == FormedKind.Sweep) ? "From the side, sweeps unrolled" : "From the side";

    private static Outline Rectangle(double fromX, double fromY, double toX, double toY) => new(Contour.Rectangle(new(fromX, fromY), new(toX, toY)));

    // The middle of the strip as the wheel bends it, through the places that the spring is worked out at.
    private void Pressed(SheetBuilder sheet, SheetView view)
    {
        if (_strip.Spring is null)
        {
            return;
        }

        List<Point> line = [];
        foreach (WorkingStation station in _strip.Working.Where(s => s.AtMm >= _form.Clamp.ToMm))
        {
            Point at = view.Of(_profile.At(station.AtMm).At + new Vector(0, station.LiftMm));
            if (line.Count == 0 || line[^1].DistanceTo(at) > 0.05)
            {
                line.Add(at);
            }
        }

        if (line.Count > 1)
        {
            sheet.Group("pressed", "Middle of the strip, pressed on the copper", "pressed").Polyline(LineStyle.Phantom, line);
        }
    }

    private void SideDimensions(SheetBuilder sheet, SheetView view, Bounds paper)
    {
        GroupPen pen = sheet.Group("side-dimensions", "Dimensions of the formed strip", "dimensions");
        pen.Texts.TakeEdges(_profile.Edge.Placed(view.ToPaper).Pieces);
        DimensionPen dimensions = new(pen);
        Point terminal = new(_profile.At(0).At.X, _form.SeatLevelMm);
        Point held = new(_profile.At(_form.Clamp.ToMm).At.X, _form.SeatLevelMm);
        if (_profile.Contact is Point contact)
        {
            Point low = view.Of(contact);
            double bottom = view.Of(terminal).Y;
            dimensions.Add(Across(view.Of(held), new Point(low.X, bottom), -9, _numbers.Length(contact.X - held.X), "end of the clamp to the contact"));
            dimensions.Add(Across(view.Of(terminal), new Point(low.X, bottom), -9, _numbers.Length(contact.X - terminal.X), "terminal end to the contact"));
            double right = view.Of(new Point(_profile.Bounds.MaxX, 0)).X;
            dimensions.Add(new LinearDimension(low, view.Of(new Point(contact.X, 0)), -(right - low.X + 16), $"deflection {_numbers.Length(-contact.Y)}") { Direction = LinearDirection.Upright, Subject = "deflection" });
            double beside = view.Of(held).X - paper.MinX + 8;
            dimensions.Add(new LinearDimension(view.Of(held), view.Of(new Point(contact.X - BesideContactMm, 0)), beside, _numbers.Length(-_form.SeatLevelMm)) { Direction = LinearDirection.Upright, Subject = "floor to copper face" });
        }

        foreach ((StripFold fold, int i) in _form.Folds.Select((f, i) => (f, i)))
        {
            ProfileLeg leg = _profile.Legs[_form.Pieces.ToList().FindIndex(p => p.ShapeIndex == fold.ShapeIndex)];
            Point middle = leg.Along(0.5).At;
            double away = (middle - leg.Centre).AngleRad;
            Point outside = leg.Along(0.5).Off(0, -Math.Sign(fold.AngleRad) * _form.Strip.ThicknessMm / 2);
            dimensions.Add(new CalloutDimension(view.Of(outside), away, Invariant.Text($"fold {i + 1}: {DrawingNumbers.Angle(Math.Abs(fold.AngleRad))} {_numbers.Radius(fold.RadiusMm)}")));
        }

        Rest(sheet, pen, dimensions, new Bounds(_picture.MinX, paper.MinY - SideBelowMm, _picture.MaxX, paper.MinY));
    }

    private void Plan(SheetBuilder sheet, SheetView view)
    {
        Bounds paper = view.Of(PlanBounds(_ribbons));
        Caption(sheet.Group("plan-caption", "Caption of the plan view", "caption"), paper.MaxY + PlanAboveMm, "From the wiper side");
        ViewPen plan = sheet.Group("plan", "Formed strip from the wiper side", "copper").In(view);
        foreach (Contour ribbon in _ribbons)
        {
            plan.Area(new Outline(ribbon), Fill.Of(FillKind.CopperPale), LineStyle.Edge);
        }

        foreach (StripHole hole in _form.Strip.Holes)
        {
            StripFrame frame = _form.FrameAt(hole.AtMm);
            const double levelCosine = 0.9999;
            if (frame.Up.Z > levelCosine)
            {
                plan.Area(new Outline(Contour.Circle(frame.At(0, hole.AcrossMm, 0).Plan, hole.DiameterMm / 2)), Fill.Of(FillKind.Paper), LineStyle.Edge);
            }
        }

        if (_form.Nose is StripNose nose)
        {
            Point at = nose.Centre.Plan;
            if (nose.Rivet is StripRivet rivet)
            {
                plan.Line(Contour.Circle(at, rivet.DiameterMm / 2), LineStyle.Hidden);
            }

            Motion(sheet, view, at);
        }
    }

    // Which way the copper moves under the contact.
    private void Motion(SheetBuilder sheet, SheetView view, Point at)
    {
        if (_strip.Ring is not RingPlace ring)
        {
            return;
        }

        double turn = _design.Motion.Direction == Turning.Anticlockwise ? 1 : -1;
        double way = ring.StationRad - _strip.Placement.TurnRad + (turn * Math.PI / 2);
        Vector along = Vector.Polar(1, way);
        Point start = view.Of(at) + (along * (view.OnPaperMm(4) + 2));
        Point tip = start + (along * 12);
        GroupPen pen = sheet.Group("motion", "Which way the copper moves", "motion");
        pen.Line(start, tip, LineStyle.Dimension);
        pen.Add(DimensionForm.Head(tip, along));
        pen.Texts.TakeLine(start, tip);
        pen.TryText(
            "copper moves",
            [
                new(tip + (along * 2), along.X >= 0 ? TextAlong.Start : TextAlong.End, TextAcross.Middle),
                new(tip + new Vector(2, 3), TextAlong.Start),
                new(tip + new Vector(2, -3), TextAlong.Start, TextAcross.Top),
                new(tip + new Vector(-2, 3), TextAlong.End),
                new(tip + new Vector(-2, -3), TextAlong.End, TextAcross.Top),
            ],
            TextStyle.Small);
    }
}
