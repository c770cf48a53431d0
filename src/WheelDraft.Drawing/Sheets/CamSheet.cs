using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A cam, dimensioned: plan with its lever at rest and lifted, diagrams of lift, velocity, acceleration and pressure angle, a table every 5°.</summary>
internal static class CamSheet
{
    private static IEnumerable<PaperSize> Sizes => [PaperSize.A3, PaperSize.A2, PaperSize.A1, PaperSize.A0];

    /// <summary>Draws a cam on the smallest sheet on which everything finds room, at full size or larger where one has it.</summary>
    /// <param name="design">The design.</param>
    /// <param name="index">Which cam, from 0.</param>
    /// <param name="number">Its place in the set.</param>
    public static Sheet Of(Design design, int index, SheetNumber? number = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        CamLayout cam = design.Cams[index];
        CamWords words = new(design, cam);
        SheetMatter matter = new([words.Sizes(), words.Steps(), words.Motion(), words.Radii()], new("Notes", words.Notes())) { Caution = new(SheetWordsOf.CautionsOf(design)) };
        PaperSize[] papers = [.. SheetPapers.Of(design, Sizes)];
        (PaperSize size, SheetPlan plan, CamPicture picture) =
            SheetPlan.Best(papers, matter, (_, shared) => CamPicture.Fitted(design, cam, shared.Picture, 1), p => p.Scale.Factor)
            ?? SheetPlan.Best(papers, matter, (_, shared) => CamPicture.Fitted(design, cam, shared.Picture, 0), p => p.Scale.Factor)
            ?? (papers[^1], SheetPlan.Of(papers[^1], matter), new(design, cam, SheetPlan.Of(papers[^1], matter).Picture));
        SheetBuilder sheet = new(new(design.Parts.Cams[index].FileName, $"Cam {cam.Brief.Name}: {design.Brief.Title}", words.Description()), size);
        SheetFrame.Draw(sheet, (number ?? SheetNumber.Single).On(SheetWordsOf.TitleBlock(design, $"Cam {cam.Brief.Name}, seen from the wiper side", "Part drawing", picture.Scale)));
        if (plan.Draw(sheet, matter) is > 0 and int missing)
        {
            sheet.Warn(Invariant.Text($"The drawing of cam '{cam.Brief.Name}' lacks {missing} rows of its tables; report.json has all figures."));
        }

        picture.Draw(sheet);
        return sheet.Build();
    }
}

/// <summary>What the sheet of a cam says.</summary>
internal sealed class CamWords(Design design, CamLayout cam)
{
    private const int StepDeg = 5;

    private readonly DrawingNumbers _numbers = new(design.Brief.DrawingUnit);

    private string LiftUnit => cam.Brief.Swings ? "°" : _numbers.UnitSign;

    /// <summary>The cam in sentences.</summary>
    public string Description() => ReadersUnit.Of(design.Brief).Words(
        $"A disc cam of {cam.Brief.Material} with a base radius of {Wording.Mm(cam.BaseRadiusMm)}, seen from the wiper side at home, that lifts its {(cam.Brief.Swings ? "swinging" : "sliding")} lever by {cam.LiftWords(cam.TopLift)} at most; below it four diagrams over one turn: lift, velocity, acceleration and pressure angle.");

    /// <summary>Sizes of cam and lever.</summary>
    public SheetTable Sizes() => new([new("Size"), new(_numbers.UnitSign, TextAlong.End)], [.. SizeRows()]) { Title = "Sizes of cam and lever" };

    private IEnumerable<IReadOnlyList<string>> SizeRows()
    {
        BoreBrief bore = cam.Brief.Bore ?? design.Brief.Wheel.Bore;
        yield return [cam.Brief.BaseRadiusMm is null ? "Base radius, the least that serves" : "Base radius", _numbers.Length(cam.BaseRadiusMm, 3)];
        yield return ["Greatest radius", _numbers.Length(cam.OuterRadiusMm, 3)];
        yield return ["Thickness", _numbers.Length(cam.Brief.ThicknessMm, 3)];
        yield return [bore.FlatMm is null ? "Bore" : $"Bore, with a flat whose normal is at {DrawingNumbers.Direction(bore.FlatAtRad)}", _numbers.Length(bore.DiameterMm, 3)];
        if (bore.FlatMm is double flat)
        {
            yield return ["From the flat to the opposite side", _numbers.Length(flat, 3)];
        }

        if (cam.Brief.RollerRadiusMm is double roller)
        {
            yield return ["Roller, diameter", _numbers.Length(2 * roller, 3)];
        }

        if (cam.Brief.Lever is SwingingLever swing)
        {
            yield return ["Pivot of the lever, x", _numbers.Length(swing.Pivot.X, 3)];
            yield return ["Pivot of the lever, y", _numbers.Length(swing.Pivot.Y, 3)];
            yield return [cam.Brief.RollerRadiusMm is null ? "Arm, how far its face reaches" : "Arm, pivot to roller", _numbers.Length(swing.ArmMm, 3)];
        }
        else if (cam.Brief.Lever is SlidingLever slide)
        {
            yield return [$"Path of the slide, at {DrawingNumbers.Direction(slide.DirectionRad)}, beside the axis", _numbers.Length(slide.OffsetMm, 3)];
        }
    }

    /// <summary>What the lever does, step by step.</summary>
    public SheetTable Steps() => new(
        [new("Programme angle from", TextAlong.End), new("to", TextAlong.End), new($"Lift from, {LiftUnit}", TextAlong.End), new("to", TextAlong.End), new("Law")],
        [.. cam.Shape.Task.Profile.Stretches.Select(s => (IReadOnlyList<string>)
        [
            Deg(s.FromRad), Deg(s.ToRad), Lift(s.FromLift), Lift(s.ToLift),
            s.Law is { } law ? MotionLaw.NameOf(law) : s.Falls ? "falls" : s.FromLift == 0 ? "rests" : "rides",
        ])])
    {
        Title = "What the lever does",
    };

    /// <summary>What the lever does, every 5°.</summary>
    public SheetTable Motion() => new(
        [
            new("Programme angle", TextAlong.End), new($"Lift, {LiftUnit}", TextAlong.End), new($"Velocity, {LiftUnit}/s", TextAlong.End), new($"Acceleration, {LiftUnit}/s²", TextAlong.End),
            new("Pressure angle", TextAlong.End),
        ],
        EveryFiveDegrees(Row))
    {
        Title = "The lever at every 5° of the turn, equal rows as one",
    };

    /// <summary>The outline to measure by, every 5°.</summary>
    public SheetTable Radii() => new(
        [new("Wheel angle", TextAlong.End), new($"Radius, {_numbers.UnitSign}", TextAlong.End)],
        EveryFiveDegrees(angleRad => [_numbers.LengthInColumn(cam.RadiusAtMm(angleRad))]))
    {
        Title = "The outline at every 5° round the cam, equal rows as one",
    };

    // While a lever rests or rides nothing changes, for a third of the turn and more: one row says so as well as thirty.
    private static IReadOnlyList<string>[] EveryFiveDegrees(Func<double, IReadOnlyList<string>> at)
    {
        List<(int FromDeg, int ToDeg, IReadOnlyList<string> Figures)> rows = [];
        for (int deg = 0; deg < 360; deg += StepDeg)
        {
            IReadOnlyList<string> figures = at(Angles.RadFromDeg(deg));
            if (rows.Count > 0 && rows[^1].Figures.SequenceEqual(figures, StringComparer.Ordinal))
            {
                rows[^1] = rows[^1] with { ToDeg = deg };
            }
            else
            {
                rows.Add((deg, deg, figures));
            }
        }

        return [.. rows.Select(r => (IReadOnlyList<string>)[r.FromDeg == r.ToDeg ? Invariant.Text($"{r.FromDeg}°") : Invariant.Text($"{r.FromDeg}° to {r.ToDeg}°"), .. r.Figures])];
    }

    private IReadOnlyList<string> Row(double angleRad)
    {
        CamMoment at = CamMoment.Of(design.Motion, cam, angleRad);
        return
        [
            Lift(at.Lift), at.PressureRad is null ? "falls" : Lift(at.VelocityPerS), at.PressureRad is null ? "" : Lift(at.AccelerationPerS2),
            at.PressureRad is double pressure ? DrawingNumbers.Angle(pressure, 1) : "",
        ];
    }

    /// <summary>Notes.</summary>
    public IReadOnlyList<string> Notes()
    {
        List<string> notes =
        [
            $"Seen from the wiper side at home, as the wheel is: the index mark lies in line with the wheel's home mark. It turns {SheetWordsOf.Turns(design)}. A direction on the cam is a wheel angle, anticlockwise from the mark.",
            $"The outline is {DrawingNumbers.Trimmed(cam.Outline.Outer.Pieces.Count, 0)} lines and arcs, off the true one by {DrawingNumbers.Fixed(cam.OffMm * 1000, 1)} µm at most. The cutting file has it whole; the table's radii are for measuring.",
            "The tables have a row every 5°; where rows in turn are equal, one stands for all of them.",
            $"Pressure angle {DrawingNumbers.Angle(cam.MostPressureRad, 1)} at most, at {DrawingNumbers.Angle(cam.MostPressureAtRad, 1)}; {DrawingNumbers.Angle(cam.Brief.PressureAngleRad, 1)} are allowed.",
        ];
        foreach (CamFall fall in cam.Falls)
        {
            notes.Add($"The lever is held to {DrawingNumbers.Angle(fall.HeldToRad, 2)}; the corner of the step has passed it at {DrawingNumbers.Angle(Angles.InTurn(fall.ClearRad), 2)}, and it rests by {DrawingNumbers.Angle(Angles.InTurn(fall.RestByRad), 2)}. Keep the corner sharp: rounded, the lever falls sooner.");
        }

        if (cam.Brief.Contact is { } contact)
        {
            notes.Add($"Its contact is '{contact.Input}', closed {(contact.ClosedBelow ? "below" : "above")} a lift of {cam.LiftWords(contact.Place)} ± {cam.LiftWords(contact.Tolerance)}.");
        }

        return notes;
    }

    private string Lift(double lift) => cam.Brief.Swings ? DrawingNumbers.Fixed(Angles.DegFromRad(lift), 3) : _numbers.LengthInColumn(lift);

    private static string Deg(double angleRad) => DrawingNumbers.Trimmed(Angles.DegFromRad(Angles.InTurn(angleRad)), 2) + "°";
}

/// <summary>Plan and diagrams of a cam in an area of the paper.</summary>
internal sealed class CamPicture
{
    private const double AroundMm = 16;
    private const double LeastDiagramMm = 22;
    private const double PlanShare = 0.55;
    private const double WideShare = 1.4;

    private readonly Design _design;
    private readonly CamLayout _cam;
    private readonly DrawingNumbers _numbers;
    private readonly SheetView _plan;
    private readonly Bounds _diagrams;
    private readonly Bounds _drawing;

    /// <param name="design">The design.</param>
    /// <param name="cam">The cam.</param>
    /// <param name="picture">Where both stand.</param>
    public CamPicture(Design design, CamLayout cam, Bounds picture)
    {
        (_design, _cam, _numbers) = (design, cam, new(design.Brief.DrawingUnit));
        if (IsWide(picture))
        {
            double half = (picture.MinX + picture.MaxX) / 2;
            _drawing = picture with { MaxX = half };
            _diagrams = new(half + AroundMm, picture.MinY + 9, picture.MaxX - 4, picture.MaxY - 2);
        }
        else
        {
            double foot = picture.MinY + Math.Max((1 - PlanShare) * picture.Height, 4 * LeastDiagramMm);
            _drawing = picture with { MinY = foot };
            _diagrams = new(picture.MinX + AroundMm, picture.MinY + 9, picture.MaxX - 4, foot - 2);
        }

        _plan = SheetView.Fitted(Seen(), _drawing.Grown(-AroundMm));
    }

    // Where there is more width than height the diagrams stand beside the plan, else under it.
    private static bool IsWide(Bounds picture) => picture.Width > WideShare * picture.Height;

    /// <summary>Both in an area, or null where the plan does not fit at a scale or larger.</summary>
    public static CamPicture? Fitted(Design design, CamLayout cam, Bounds picture, double leastScale)
    {
        try
        {
            return (IsWide(picture) ? picture.Height > 5 * LeastDiagramMm && picture.Width > 10 * LeastDiagramMm : picture.Height > 8 * LeastDiagramMm) && new CamPicture(design, cam, picture) is { } fitted && fitted.Scale.Factor >= leastScale ? fitted : null;
        }
        catch (NoRoomException)
        {
            return null;
        }
    }

    /// <summary>The scale of the plan.</summary>
    public DrawingScale Scale => _plan.Scale;

    /// <summary>Draws both.</summary>
    public void Draw(SheetBuilder sheet)
    {
        DrawPlan(sheet);
        LeverPen.Draw(sheet.Group("lever", "The lever, at rest and at its greatest lift", "lever").In(_plan), _cam, 0, LineStyle.Phantom);
        LeverPen.Draw(sheet.Group("lifted", "The lever at its greatest lift", "lever").In(_plan), _cam, _cam.TopLift, LineStyle.Hidden);
        DrawDimensions(sheet);
        AngleSense.TryDraw(sheet, _drawing);
        CamDiagrams.Draw(sheet, _design, _cam, _diagrams);
    }

    private Bounds Seen()
    {
        Bounds seen = _cam.Outline.Bounds;
        foreach (Bounds lever in new[] { LeverPen.BoundsOf(_cam, 0), LeverPen.BoundsOf(_cam, _cam.TopLift) })
        {
            seen = seen.With(lever);
        }

        return seen;
    }

    private void DrawPlan(SheetBuilder sheet)
    {
        sheet.Group("cam", "The cam", "cam").In(_plan).Area(_cam.Outline, Fill.Of(_cam.Brief.Net is null ? FillKind.Carrier : FillKind.Copper), LineStyle.Edge);
        sheet.Texts.TakeEdges(_cam.Outline.Pieces.Select(p => p.Placed(_plan.ToPaper)));
        ViewPen axes = sheet.Group("axes", "Centre lines, base circle and index mark", "axes").In(_plan);
        axes.CentreCross(Point.Origin, _cam.OuterRadiusMm);
        axes.Line(Contour.Circle(Point.Origin, _cam.BaseRadiusMm), LineStyle.Centre);
        foreach (IReadOnlyList<Piece> mark in PartMarks.Of(_design, _design.Parts.Cams[_cam.Index]).Scribed)
        {
            axes.Line(mark, LineStyle.Thin);
        }
    }

    private void DrawDimensions(SheetBuilder sheet)
    {
        DimensionPen pen = new(sheet.Group("dimensions", "Dimensions", "dimensions"));
        BoreBrief bore = _cam.Brief.Bore ?? _design.Brief.Wheel.Bore;
        double away = LeverAwayRad();
        pen.Add(new CalloutDimension(_plan.Of(Point.Polar(bore.DiameterMm / 2, away + Angles.RadFromDeg(35))), away + Angles.RadFromDeg(35), _numbers.Diameter(bore.DiameterMm) + (bore.FlatMm is double flat ? $", flat {_numbers.Length(flat)}" : "")));
        pen.Add(new CalloutDimension(_plan.Of(Point.Polar(_cam.BaseRadiusMm, away - Angles.RadFromDeg(35))), away - Angles.RadFromDeg(35), $"base circle {_numbers.Radius(_cam.BaseRadiusMm)}"));
        pen.Add(new CalloutDimension(_plan.Of(Point.Polar(_cam.BaseRadiusMm * 0.95, 0)), LeverAwayRad() + Angles.RadFromDeg(Math.Sin(LeverAwayRad()) < 0 ? 60 : -60), "index mark, 0°"));
        if (_cam.Shape.Drops is [{ } drop, ..])
        {
            pen.Add(new CalloutDimension(_plan.Of(drop.Corner), drop.Corner.AngleRad, $"corner of the step, {_numbers.Radius(drop.Corner.RadiusMm)} at {DrawingNumbers.Direction(drop.Corner.AngleRad)}"));
        }

        if (_cam.Brief.Lever is SwingingLever swing)
        {
            pen.Add(new CalloutDimension(_plan.Of(swing.Pivot), swing.Pivot.AngleRad, "pivot"));
        }
    }

    private double LeverAwayRad() => (_cam.Brief.Lever is SwingingLever swing ? swing.Pivot.AngleRad : ((SlidingLever)_cam.Brief.Lever).DirectionRad) + Math.PI;
}
