using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Report;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Guide;

/// <summary>What has to be at hand.</summary>
internal static class ShoppingList
{
    // Square millimetres in a square inch.
    private const double InchMm2 = 25.4 * 25.4;

    public static GuideChapter Of(Design design) => new("What you need",
    [
        new GuideTable("The drive", [new("What"), new("Which")], Drive(design)),
        new GuideTable("Sheet and plate: the least size that holds each part, and its finished area",
            [new("Part"), new("Material"), new("Thickness", TextAlong.End), new("Size", TextAlong.End), new("Area", TextAlong.End), new("Cut by")], [.. Stock(design)]),
        .. Small(design) is { Count: > 0 } small ? [new GuideTable("Small parts", [new("What"), new("How many", TextAlong.End), new("For")], small)] : (GuideBlock[])[],
        .. Wired(design) is { Count: > 0 } wired ? [new GuideTable("What is wired to it", [new("What"), new("Between"), new("Which")], wired)] : (GuideBlock[])[],
        new GuideList(Protection(design)),
    ]);

    private static List<IReadOnlyList<string>> Drive(Design design)
    {
        DriveBrief drive = design.Brief.Drive;
        double turn = design.Motion.TurnTimeS;
        List<IReadOnlyList<string>> rows =
        [
            ["Turn", $"{Wording.Seconds(turn)} a turn, {Rpm(60 / turn)} turns a minute, {SheetWordsOf.Turns(design)} seen from the wiper side"],
            ["Motor", $"synchronous, for {Wording.Volts(MotorV(design))} alternating current of {Wording.Number(design.Brief.Supply.FrequencyHz, 2)} Hz{(design.Brief.DriveMotor is LoadBrief motor ? $", counted with {LoadWords.Of(motor.Rating)}" : "")}"],
            ["Speed", Speed(design)],
            ["Sense", "one sense only, by its pawl or its winding: a simple synchronous motor may start either way round"],
        ];
        if (design.Strips.Friction is FrictionTorque friction && design.Strips.Strips.Any(s => s.Ring is not null))
        {
            rows.Add(["Torque at the wheel", $"at least {Torque(BuildFigures.WantedTorqueNm(friction))}, twice the greatest friction of the wipers (common practice, no source), {Torque(friction.MostNm)}{(drive.TorqueNm is double torque ? $"; the file counts on {Torque(torque)}" : "")}"]);
        }

        return rows;
    }

    private static double MotorV(Design design) => design.Brief.DriveMotor?.RatedV ?? design.Brief.Supply.VoltageV;

    private static string Speed(Design design)
    {
        DriveBrief drive = design.Brief.Drive;
        if (drive is { Poles: int poles, GearRatio: double ratio })
        {
            return $"{Wording.Number(poles, 0)} poles, and a gear of {Wording.Number(ratio, 4)} turns of the motor to one of the wheel";
        }

        string hertz = $"{Wording.Number(design.Brief.Supply.FrequencyHz, 2)} Hz";
        return StandardSpeeds.For(design.Motion.TurnTimeS, design.Brief.Supply.FrequencyHz) switch
        {
            null => $"{Rpm(60 / design.Motion.TurnTimeS)} turns a minute at {hertz}: faster than usual geared motors turn, so by a gear of its own",
            { GearDown: 1 } speed => $"{Rpm(speed.Rpm)} turns a minute at {hertz}, a usual speed of geared motors: no further gear",
            { } speed => $"{Rpm(speed.Rpm)} turns a minute at {hertz}, a usual speed of geared motors (common practice, no source), and a gear of {Wording.Number(speed.GearDown, 4)} turns of it to one of the wheel; or one that is sold with the wheel's own speed",
        };
    }

    private static string Rpm(double rpm) => Wording.Number(rpm, 4);

    // Rounded up: what is asked for is never less than what is needed.
    private static string Torque(double newtonMetres) => $"{Wording.Number(Math.Ceiling((newtonMetres * 1e4) - 1e-9) / 1e4, 4)} N m";

    private static IEnumerable<IReadOnlyList<string>> Stock(Design design) => design.Parts.All.Select(p => (IReadOnlyList<string>)
    [
        NameOf(p),
        Material(design, p),
        p.Stock.ThicknessMm is double thickness ? BuildGuide.Numbers(design).LengthWithUnit(thickness, 3) : "as you choose",
        Size(design, p.CutBounds),
        Area(design, p.Shapes.Sum(s => s.Finished.AreaMm2)),
        p.Role is PartRole.Wheel or PartRole.Strip && design.Brief.Process.Name is string process ? process : "a process of your own",
    ]);

    /// <summary>What a part is called in a sentence.</summary>
    internal static string NameOf(Part part) => part.Role is PartRole.Strip or PartRole.Cam ? part.Name : part.Name.ToLowerInvariant();

    /// <summary>What a part is made of.</summary>
    internal static string Material(Design design, Part part)
    {
        MaterialGroup? group = part.Role switch
        {
            PartRole.Carrier => design.Brief.Carrier.Group,
            PartRole.Base => design.Parts.Bases.First(b => ReferenceEquals(b.Part, part)).Surface.Group,
            _ => null,
        };
        return group is MaterialGroup insulating ? $"insulating, material group {insulating}" : part.Stock.Material ?? "";
    }

    private static string Size(Design design, Bounds bounds)
    {
        DrawingNumbers numbers = BuildGuide.Numbers(design);
        return $"{numbers.Length(bounds.Width, 1)} × {numbers.LengthWithUnit(bounds.Height, 1)}";
    }

    private static string Area(Design design, double mm2) => design.Brief.DrawingUnit == DrawingUnit.Inch ? $"{Wording.Number(mm2 / InchMm2, 2)} in²" : $"{Wording.Number(mm2, 0)} mm²";

    /// <summary>Small parts: what, how many, what for.</summary>
    internal static List<IReadOnlyList<string>> Small(Design design)
    {
        DrawingNumbers numbers = BuildGuide.Numbers(design);
        List<IReadOnlyList<string>> rows = [];
        foreach (IGrouping<(double, double, double, double), PlacedStrip> same in design.Strips.Strips.Where(s => s.Form.Nose?.Rivet is not null).GroupBy(s => (s.Form.Nose!.Rivet!.DiameterMm, s.Form.Nose.Rivet.HeightMm, s.Form.Nose.Rivet.DomeRadiusMm, s.Form.Strip.ThicknessMm)))
        {
            (double head, double height, double dome, double thickness) = same.Key;
            rows.Add([$"contact rivet, head {numbers.Diameter(head)}, {numbers.LengthWithUnit(height)} high from the strip, dome {numbers.Radius(dome)}, shank through {numbers.LengthWithUnit(thickness, 3)} and about its own diameter more to be headed (common practice, no source)", Count(same.Count()), Names(same.Select(s => s.Form.Strip.Name))]);
        }

        foreach (IGrouping<string, PlacedStrip> same in design.Strips.Strips.Where(s => s.Form.Tab is not null).GroupBy(s => s.Form.Tab!.Size, StringComparer.Ordinal))
        {
            rows.Add([$"receptacle for a tab {same.Key} (IEC 61210), with an insulating sleeve", Count(same.Count()), Names(same.Select(s => s.Form.Strip.Name))]);
        }

        foreach (IGrouping<double, BaseHole> same in design.Parts.Bases.SelectMany(b => b.Holes.Skip(b.Holes is [{ Name: BasePlates.ShaftName }, ..] ? 1 : 0)).GroupBy(h => Math.Round(h.DiameterMm, 6)))
        {
            rows.Add([$"insulating pin, or screw, for a foot, through holes of {numbers.LengthWithUnit(same.Key)}", Count(same.Count()), "the feet of the strips"]);
        }

        if (design.Brief.Wheel.Fixings is FixingsBrief fixings)
        {
            rows.Add([$"screw with nut, or rivet, through holes of {numbers.LengthWithUnit(fixings.DiameterMm)}, head and nut at most {numbers.LengthWithUnit(fixings.HeadMm)} wide, to grip copper and carrier of {numbers.LengthWithUnit(BuildFigures.GripMm(design), 3)} together", Count(fixings.Count), "the wheel"]);
        }

        foreach (RingLayout ring in design.Wheel.Rings.Where(r => r.Adjust is not null))
        {
            rows.Add([$"adjusting screw {ring.Adjust!.Asked.Screw}, with a head that an insulated tool fits", Count(1), $"'{ring.Name}'"]);
        }

        return rows;
    }

    private static string Count(int count) => Wording.Number(count, 0);

    internal static string Names(IEnumerable<string> names) => string.Join(", ", names);

    private static List<IReadOnlyList<string>> Wired(Design design) =>
    [
        .. design.Brief.Loads.Select(l => (IReadOnlyList<string>)[$"'{l.Name}'", $"{l.From} – {l.To}", LoadWords.Of(l.Rating)]),
        .. design.Brief.DriveMotor is LoadBrief motor ? [["the motor", $"{motor.From} – {motor.To}", LoadWords.Of(motor.Rating)]] : (IReadOnlyList<string>[])[],
        .. design.Brief.Inputs.Select(i => (IReadOnlyList<string>)[$"'{i.Name}', a sensor or switch", $"{i.From} – {i.To}", i.ClosedWhen is string when ? $"closed when {when}" : "closed as its name says"]),
    ];

    private static List<string> Protection(Design design)
    {
        double most = BuildFigures.MostCurrentA(design);
        string carries = double.IsFinite(most) && most > 0 ? $" The most that one contact of this circuit carries is {Wording.Number(most, 3)} A, inrush not counted." : "";
        return
        [
            $"A fuse in {string.Join(", ", design.Brief.Supply.Lines)}, of the rating and kind that local rules ask.{carries}",
            "A thermal cut-out wherever something may grow hot, as local rules ask.",
            .. !design.Brief.Supply.IsExtraLow ? ["For the tests: a meter rated for the supply's overvoltage category, an isolating transformer, a residual-current device, and leads with insulated clips."] : (string[])["For the tests: a meter, and a supply through a safety transformer that keeps it apart from mains."],
            .. design.Wheel.Rings.Any(r => r.Adjust is not null) ? ["An insulated screwdriver for the adjusting screw, which is live."] : (string[])[],
            .. !design.Brief.Supply.IsExtraLow ? ["An enclosure that nobody reaches into, as local rules ask."] : (string[])[],
        ];
    }
}
