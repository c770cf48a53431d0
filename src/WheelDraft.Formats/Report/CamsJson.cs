using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Report;

/// <summary>The cams in the report. A lift is an angle of a swinging lever and a length of a sliding one; its keys end in deg or mm.</summary>
internal static class CamsJson
{
    // The table, as the drawing has it.
    private const int Step = 5;

    /// <summary>Nothing without cams.</summary>
    public static void Write(JsonSheet json, Design design)
    {
        if (design.Cams.Count > 0)
        {
            json.Objects("cams", design.Cams, cam => One(json, design, cam));
            json.Object("shaft_torque", () => Torque(json, ShaftTorque.Of(design)!));
        }
    }

    private static void Torque(JsonSheet json, ShaftTorque torque)
    {
        json.Plain("cams_most_nm", torque.CamsMostNm);
        json.Deg("at_deg", torque.AtRad);
        if (torque.WipersMostNm is double wipers)
        {
            json.Plain("wipers_most_nm", wipers);
        }

        if (torque.MotorNm is double motor)
        {
            json.Plain("motor_at_lowest_nm", motor);
        }

        json.Plain("drives_nm", torque.DrivesNm);
    }

    private static void One(JsonSheet json, Design design, CamLayout cam)
    {
        json.Text("name", cam.Brief.Name);
        json.Text("file", design.Parts.Cams[cam.Index].FileName);
        json.Mm("base_radius_mm", cam.BaseRadiusMm);
        json.Mm("outer_radius_mm", cam.OuterRadiusMm);
        json.Whole("pieces", cam.Outline.Outer.Pieces.Count);
        json.Mm("off_mm", cam.OffMm);
        Lift(json, cam, "greatest_lift", cam.TopLift);
        json.Deg("pressure_angle_deg", cam.MostPressureRad);
        json.Deg("pressure_at_deg", cam.MostPressureAtRad);
        if (double.IsFinite(cam.LeastRadiusMm))
        {
            json.Mm("least_radius_mm", cam.LeastRadiusMm);
            json.Deg("least_radius_at_deg", cam.LeastRadiusAtRad);
        }

        json.Objects("falls", cam.Falls, fall =>
        {
            json.Deg("held_to_deg", fall.HeldToRad);
            json.Deg("clear_deg", fall.ClearRad);
            json.Plain("step_s", fall.StepS);
            json.Plain("free_s", fall.FreeS);
            json.Deg("rest_by_deg", fall.RestByRad);
        });
        json.Object("torque", () =>
        {
            json.Plain("most_nmm", cam.Torque.MostNmm);
            json.Deg("most_at_deg", cam.Torque.MostAtRad);
            json.Plain("drives_nmm", cam.Torque.DrivesNmm);
            json.Deg("drives_at_deg", cam.Torque.DrivesAtRad);
        });
        if (cam.Contact is { } contact)
        {
            json.Object("contact", () => Contact(json, contact));
        }

        json.Array("table", Enumerable.Range(0, 360 / Step), i => json.RawValue(Row(design, cam, Angles.RadFromDeg(i * Step))));
    }

    private static void Contact(JsonSheet json, LeverSchedule contact)
    {
        json.Text("input", contact.Input);
        json.Objects("closed", contact.Free.Periods, period =>
        {
            json.RawAngle("from_deg", period.Closed.IsFull ? "0" : JsonSheet.DegFigure(period.Closed.StartRad));
            json.RawAngle("to_deg", period.Closed.IsFull ? "360" : JsonSheet.DegFigure(period.Closed.EndRad));
            json.SignedDeg("make_earlier_deg", period.Make.EarlierRad);
            json.SignedDeg("make_later_deg", period.Make.LaterRad);
            json.SignedDeg("break_earlier_deg", period.Break.EarlierRad);
            json.SignedDeg("break_later_deg", period.Break.LaterRad);
        });
        Hold(json, "blocked", contact.Blocked);
        Hold(json, "latched", contact.Latched);
    }

    private static void Hold(JsonSheet json, string key, LeverHold? hold)
    {
        if (hold is { } held)
        {
            json.Text(key, held switch
            {
                LeverHold.Open => "open",
                LeverHold.Closed => "closed",
                _ => "as free",
            });
        }
    }

    private static void Lift(JsonSheet json, CamLayout cam, string key, double lift)
    {
        if (cam.Brief.Swings)
        {
            json.SignedDeg(key + "_deg", lift);
        }
        else
        {
            json.Mm(key + "_mm", lift);
        }
    }

    private static string Row(Design design, CamLayout cam, double programmeRad)
    {
        CamMoment at = CamMoment.Of(design.Motion, cam, programmeRad);
        string unit = cam.Brief.Swings ? "deg" : "mm";
        string Figure(double lift) => cam.Brief.Swings ? JsonSheet.ExtentFigure(lift) : JsonSheet.MmFigure(lift);
        List<(string Key, string Json)> members =
        [
            ("at_deg", JsonSheet.DegFigure(programmeRad)),
            ("lift_" + unit, Figure(at.Lift)),
        ];
        if (at.PressureRad is double pressure)
        {
            members.Add(($"velocity_{unit}_per_s", Figure(at.VelocityPerS)));
            members.Add(($"acceleration_{unit}_per_s2", Figure(at.AccelerationPerS2)));
            members.Add(("pressure_angle_deg", JsonSheet.DegFigure(pressure)));
        }

        if (cam.Torque.At(programmeRad) is var (least, most))
        {
            members.Add(("torque_nmm", JsonSheet.List([JsonSheet.Figure(least, 6), JsonSheet.Figure(most, 6)])));
        }

        members.Add(("radius_mm", JsonSheet.MmFigure(cam.RadiusAtMm(programmeRad))));
        return JsonSheet.Line(members);
    }
}
