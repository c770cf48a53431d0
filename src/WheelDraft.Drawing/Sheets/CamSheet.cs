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
