using WheelDraft.Engineering;
using WheelDraft.Formats.Prose;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Report;

/// <summary>Strips for people: pressing, carrying current, wearing, and how to fold them.</summary>
internal static class StripsMarkdown
{
    /// <summary>Nothing where the file has no strips.</summary>
    public static void Write(ProsePage page, Design design)
    {
        IReadOnlyList<PlacedStrip> strips = design.Strips.Strips;
        if (strips.Count == 0)
        {
            return;
        }

        page.Heading(2, "Strips");
        Pressing(page, design);
        Winding(page, design);
        Carrying(page, strips);
        Wearing(page, strips);
        Adjusting(page, strips);
        Folding(page, strips);
    }

    private static string N(double value, int decimals = 3) => Wording.Number(value, decimals);

    private static string Known(double? value, int decimals = 3) => value is double known ? N(known, decimals) : "-";

    private static string Deg(double angleRad, int decimals = 2) => Wording.Number(Angles.DegFromRad(angleRad), decimals);

    private static void Pressing(ProsePage page, Design design)
    {
        IReadOnlyList<PlacedStrip> strips = design.Strips.Strips;
        FrictionTorque? friction = design.Strips.Friction;
        page.Paragraph($"Force and stress in the working position: of the drawn strip, and the least and most of all strips within their limits at once, new to worn and over travel ({FormingWords.Limits(design.Brief.Forming)}; cut edges, face run-out and friction as well). A factor is how many times the greatest stress goes into the strength. Stress is that on the inside of folds and sweeps.")
            .Table(
                ["Strip", "Net", "Material", "Blank, mm", "Seat underside, mm", "Deflection, mm", "Force and its band", "Force worn, N", "Stress, MPa", "Most, MPa", "At, mm", "Yield factor", "Fatigue factor", "Arm"],
                strips.Select(s => (IReadOnlyList<string>)
                [
                    s.Form.Strip.Name,
                    s.Net,
                    $"{s.Form.Material.Designation}, {N(s.Form.Strip.ThicknessMm)} mm",
                    page.Mm(s.Form.LengthMm),
                    page.Mm(s.Form.SeatLevelMm),
                    s.Spring is StripSpring a ? page.Mm(a.DeflectionMm) : "-",
                    s.Spring is StripSpring b ? FormingWords.Force(b) : "-",
                    s.Spring?.WornForceN is double worn ? N(worn) : "-",
                    s.Spring is StripSpring c ? N(c.StressMpa, 1) : "-",
                    s.Spring is StripSpring m ? N(m.WorstStressMpa, 1) : "-",
                    s.Spring is StripSpring d ? page.Mm(d.StressAtMm) : "-",
                    s.Spring is StripSpring e ? N(e.YieldFactor, 2) : "-",
                    s.Spring?.FatigueFactor is double fatigue ? N(fatigue, 2) : "-",
                    s.Sense switch { ArmSense.Trailing => "trails", ArmSense.Leading => "**leads**", ArmSense.Across => "across", _ => "-" },
                ]));
        if (friction is not null && strips.Any(s => s.Spring is not null))
        {
            page.Paragraph($"Friction of all wipers at the wheel: {N(friction.LeastNm * 1000)} to {N(friction.MostNm * 1000)} mN m"
                + (friction.MotorNm is double motor ? $", against {N(motor * 1000)} mN m of the motor{(friction.MotorAtLowestNm < motor ? $", {N(friction.MotorAtLowestNm!.Value * 1000)} mN m at the lowest voltage (taken to fall with its square)" : "")}." : "."));
        }
    }

    private static void Winding(ProsePage page, Design design)
    {
        IReadOnlyList<PlacedStrip> wound = [.. design.Strips.Strips.Where(s => s.Spring?.WindUp is not null)];
        if (wound.Count > 0)
        {
            double speed = Angles.RadFromDeg(design.Motion.SpeedDegPerS);
            page.Heading(3, "Wind-up by friction")
                .Paragraph("In steady turning the copper drags each contact along its motion, between the least and the greatest friction. Make and break come later by as much; an on-time is longer or shorter by the difference, when friction on carrier and copper differ.")
                .Table(["Strip", "Shift, mm", "Along the radius, mm", "On-time, plus and minus, s"], wound.Select(s => (IReadOnlyList<string>)
                [
                    s.Form.Strip.Name,
                    $"{page.Mm(s.Spring!.WindUp!.Value.LeastMm)} to {page.Mm(s.Spring.WindUp.Value.MostMm)}",
                    page.Mm(s.Spring.WindUp.Value.MostRadialMm),
                    N(s.Spring.WindUp.Value.OnTimeS(s.Ring!.RadiusMm, speed)),
                ]));
        }
    }

    private static void Carrying(ProsePage page, IReadOnlyList<PlacedStrip> strips) => page.Heading(3, "Current")
        .Paragraph($"The largest current over every reachable state, at the upper end of the supply voltage; none where the circuit does not say it. Temperature rise: {StripElectrics.RiseAssumptions}. A spot softens at its softening voltage; films raise the clean contact voltage.")
        .Table(
            ["Strip", "Current, A", "Resistance, mΩ", "Drop, mV", "Loss, mW", "Density, A/mm²", "Rise, K", "Contact clean, mV", "Contact filmed, mV", "Softens at, mV"],
            strips.Select(s => (IReadOnlyList<string>)
            [
                s.Form.Strip.Name,
                Known(s.Electrics.CurrentA),
                N(s.Electrics.ResistanceOhm * 1000),
                Known(s.Electrics.DropV * 1000),
                Known(s.Electrics.LossW * 1000),
                Known(s.Electrics.DensityAPerMm2, 2),
                s.Electrics.WarmsBeyondSense ? $"over {N(StripElectrics.MostRiseK, 0)}" : Known(s.Electrics.TemperatureRiseK, 2),
                s.Electrics.ContactV is double clean ? N(clean * 1000) : "-",
                s.Electrics.FilmedContactV is double filmed ? N(filmed * 1000) : s.Electrics.ContactMelts ? $"over {N(StripElectrics.MostContactV * 1000, 0)}" : "-",
                s.Electrics.SofteningV is MaterialValue soft ? N(soft.Value * 1000, 0) : "-",
            ]));

    private static void Wearing(ProsePage page, IReadOnlyList<PlacedStrip> strips)
    {
        IReadOnlyList<PlacedStrip> wearing = [.. strips.Where(s => s.Life is not null)];
        if (wearing.Count > 0)
        {
            page.Heading(3, "Wear")
                .Paragraph($"Turns until the patch has its worn length: a band, never one number. {WearLife.Source}.")
                .Table(["Strip", "Dry", "Poor lubricant", "Good lubricant"], wearing.Select(s => (IReadOnlyList<string>)
                [
                    s.Form.Strip.Name, Turns(s.Life!.DryTurns), Turns(s.Life.PoorTurns), Turns(s.Life.GoodTurns),
                ]));
        }
    }

    /// <summary>A number of turns to two figures: it is not known more closely.</summary>
    private static string Turns(double turns)
    {
        double step = turns > 0 ? Math.Pow(10, Math.Floor(Math.Log10(turns)) - 1) : 1;
        return (Math.Round(turns / step) * step).ToString("N0", System.Globalization.CultureInfo.InvariantCulture);
    }

    private static void Adjusting(ProsePage page, IReadOnlyList<PlacedStrip> strips)
    {
        IReadOnlyList<PlacedStrip> adjusted = [.. strips.Where(s => s.Spring?.Adjuster is not null)];
        if (adjusted.Count > 0)
        {
            page.Heading(3, "Adjusters").Table(
                ["Strip", "Tip moves a screw turn, mm", "Force at inner end, N", "Force at outer end, N", "Screw pushes with, N", "Stress at the ends, MPa"],
                adjusted.Select(s => (IReadOnlyList<string>)
                [
                    s.Form.Strip.Name,
                    page.Mm(s.Spring!.Adjuster!.TipPerTurnMm),
                    N(s.Spring.Adjuster.InnerForceN),
                    N(s.Spring.Adjuster.OuterForceN),
                    N(s.Spring.Adjuster.ScrewForceN),
                    N(s.Spring.Adjuster.StressMpa, 1),
                ]));
        }
    }

    private static void Folding(ProsePage page, IReadOnlyList<PlacedStrip> strips) => page.Heading(3, "Folds")
        .Paragraph("In the order of folding. Positions at mid-allowance, from the terminal end of the flat blank; a positive angle turns a level strip toward the wiper side. Set the fold to the over-bent angle; it springs back to the angle wanted.")
        .Table(
            ["Strip", "Order", "At, mm", "Angle, °", "Bend to, °", "Inside radius, mm", "Allowance, mm", "K"],
            strips.SelectMany(s => s.Form.Folds.OrderBy(f => f.Order).Select(f => (IReadOnlyList<string>)
            [
                s.Form.Strip.Name,
                N(f.Order, 0),
                page.Mm(f.AtMm),
                Deg(f.AngleRad),
                Deg(Math.Sign(f.AngleRad) * (Math.Abs(f.AngleRad) + f.OverbendRad)),
                page.Mm(f.RadiusMm),
                page.Mm(f.AllowanceMm),
                N(f.K.Value),
            ])));
}
