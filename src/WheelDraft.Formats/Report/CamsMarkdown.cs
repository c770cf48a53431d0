using WheelDraft.Engineering;
using WheelDraft.Formats.Prose;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Report;

/// <summary>The cams for people: figures, laws, falls, torque, and what the lever's contact does.</summary>
internal static class CamsMarkdown
{
    /// <summary>Nothing without cams.</summary>
    public static void Write(ProsePage page, Design design)
    {
        if (design.Cams.Count == 0)
        {
            return;
        }

        page.Heading(2, "Cams")
            .Paragraph("Programme angles from home. The outline is lines and arcs; how far they may be from the true outline is computed, not sampled. A lift counts from rest.")
            .Table(["Cam", "Base radius, mm", "Greatest lift", "Pressure angle", "allowed", "Least radius of its follower's curve, mm", "Pieces", "Off by at most, µm"], design.Cams.Select(c => (IReadOnlyList<string>)
            [
                c.Brief.Name,
                page.Mm(c.BaseRadiusMm),
                c.LiftWords(c.TopLift),
                $"{Deg(c.MostPressureRad)}° at {Deg(c.MostPressureAtRad)}°",
                $"{Deg(c.Brief.PressureAngleRad)}°",
                double.IsFinite(c.LeastRadiusMm) ? $"{page.Mm(c.LeastRadiusMm)} at {Deg(c.LeastRadiusAtRad)}°" : "none",
                Wording.Number(c.Outline.Outer.Pieces.Count, 0),
                Wording.Number(c.OffMm * 1000, 2),
            ]));
        ShaftTorque torque = ShaftTorque.Of(design)!;
        page.Paragraph($"Torque on the shaft: cams {Wording.Number(torque.CamsMostNm * 1000, 2)} mN m at most, at {Deg(torque.AtRad)}°; wipers {(torque.WipersMostNm is double wipers ? $"{Wording.Number(wipers * 1000, 2)} mN m at most" : "not known")}; motor at its lowest voltage {(torque.MotorNm is double motor ? $"{Wording.Number(motor * 1000, 2)} mN m" : "not given")}.");
        foreach (CamLayout cam in design.Cams)
        {
            One(page, design, cam);
        }
    }

    private static void One(ProsePage page, Design design, CamLayout cam)
    {
        page.Heading(3, $"Cam {cam.Brief.Name}")
            .Table(["From", "To", "Lift from", "to", "Law", "Greatest velocity, /s", "acceleration, /s²", "jerk, /s³", "Jump of acceleration at its ends, /s²"], cam.Shape.Task.Profile.Stretches.Select(s => Row(design, cam, s)));
        page.List(Lines(design, cam));
    }

    private static IReadOnlyList<string> Row(Design design, CamLayout cam, CamStretch stretch)
    {
        string from = Deg(Angles.InTurn(stretch.FromRad)), to = Deg(Angles.InTurn(stretch.ToRad));
        if (stretch.Law is not { } law)
        {
            return [from, to, cam.LiftWords(stretch.FromLift), cam.LiftWords(stretch.ToLift), stretch.Falls ? "falls" : stretch.FromLift == 0 ? "rests" : "rides", "", "", "", ""];
        }

        double speed = design.Motion.SpeedRadPerS, rise = stretch.ToLift - stretch.FromLift;
        MotionPoint most = MotionLaw.Peaks(law).Scaled(Math.Abs(rise), stretch.SweepRad);
        double jump = MotionLaw.AccelerationJump(law) * Math.Abs(rise) / (stretch.SweepRad * stretch.SweepRad) * speed * speed;
        return
        [
            from, to, cam.LiftWords(stretch.FromLift), cam.LiftWords(stretch.ToLift), MotionLaw.NameOf(law), cam.LiftWords(most.Velocity * speed), cam.LiftWords(most.Acceleration * speed * speed),
            cam.LiftWords(most.Jerk * speed * speed * speed), double.IsFinite(jump) ? cam.LiftWords(jump) : "velocity jumps",
        ];
    }

    private static IEnumerable<string> Lines(Design design, CamLayout cam)
    {
        foreach (CamFall fall in cam.Falls)
        {
            yield return $"Held to {Deg(fall.HeldToRad)}°, then the corner of the step passes under the follower until {Deg(Angles.InTurn(fall.ClearRad))}°, in {Wording.Seconds(fall.StepS)}; free it would fall in {Wording.Seconds(fall.FreeS)} (press and inertia as given, no friction, no rebound). At rest by {Deg(Angles.InTurn(fall.RestByRad))}°.";
        }

        string drives = cam.Torque.DrivesNmm > 0 ? $" At {Deg(cam.Torque.DrivesAtRad)}° it drives the wheel on with up to {Wording.Number(cam.Torque.DrivesNmm, 2)} N mm; over a step it does so too." : cam.Falls.Count > 0 ? " Over a step it drives the wheel on." : "";
        yield return $"Torque on the shaft, lift and friction of the follower: at most {Wording.Number(cam.Torque.MostNmm, 2)} N mm at {Deg(cam.Torque.MostAtRad)}°.{drives}{(design.Brief.Drive.Friction is null ? " Without [drive] friction the follower's friction is not counted." : "")}";
        if (cam.Contact is not { } contact)
        {
            yield break;
        }

        string closed = contact.Free.IsAlways ? "all the turn" : contact.Free.Periods.Count == 0 ? "never" : string.Join(", ", contact.Free.Periods.Select(p =>
            $"{Deg(p.Closed.StartRad)}° (−{Deg(p.Make.EarlierRad)} +{Deg(p.Make.LaterRad)}) to {Deg(Angles.InTurn(p.Closed.EndRad))}° (−{Deg(p.Break.EarlierRad)} +{Deg(p.Break.LaterRad)})"));
        yield return $"The lever's contact, '{contact.Input}', is closed {closed} while nothing holds the lever; worst case of its own tolerance, the cut edge, run-out, backlash and the fall in brackets.{Held("in something's way", contact.Blocked)}{Held("hooked up", contact.Latched)}";
    }

    private static string Held(string how, LeverHold? hold) => hold switch
    {
        LeverHold.Open => $" With the lever {how} it stays open.",
        LeverHold.Closed => $" With the lever {how} it stays closed.",
        LeverHold.AsFree => $" With the lever {how} it changes as before.",
        _ => "",
    };

    private static string Deg(double angleRad) => Wording.Number(Angles.DegFromRad(angleRad), 2);
}
