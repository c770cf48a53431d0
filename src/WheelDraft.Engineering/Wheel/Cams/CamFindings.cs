using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What is to be known of a cam that can be drawn.</summary>
/// <param name="brief">The brief.</param>
/// <param name="cam">The cam.</param>
/// <param name="lostMm">By how much the follower stays below its profile at corners, mm.</param>
internal sealed class CamFindings(Brief brief, CamLayout cam, double lostMm)
{
    // A pitch curve tighter than this many rollers wears and strikes (lecture notes on cam size: two to three times).
    private const double WantedRollers = 2;

    private string Name => $"cam '{cam.Brief.Name}'";

    /// <summary>All of them.</summary>
    public IEnumerable<Finding> Of(CamForces forces) => [.. Pressure(), .. Radius(), .. Laws(), .. Steps(), .. Leaves(forces), .. Places(), .. Mounting(), .. Live()];

    /// <summary>Whether the cam turns clear of the lever's pivot.</summary>
    public static bool PivotIsClear(CamBrief cam, CamShape shape)
    {
        double reach = shape.FaceAt(shape.Task.Profile.TopLift) is { } face ? face.Foot.RadiusMm : shape.RollerAt(shape.Task.Profile.TopLift)!.Value.RadiusMm - shape.InwardMm;
        return cam.Lever is not SwingingLever swing || reach < swing.Pivot.RadiusMm;
    }

    /// <summary>Whether a flat face along an arm reaches all of its contact.</summary>
    public static bool FaceReaches(CamBrief cam, CamShape shape) =>
        cam is not { Lever: SwingingLever swing, RollerRadiusMm: null } || swing.Pivot.DistanceTo(shape.FaceAt(0)!.Value.Foot) + shape.MostAsideMm() <= swing.ArmMm;

    private IEnumerable<Finding> Pressure()
    {
        if (cam.MostPressureRad > cam.Brief.PressureAngleRad)
        {
            yield return Error("cam.pressure-angle", $"The pressure angle of {Name} is {Wording.Degrees(cam.MostPressureRad)} at {Wording.Degrees(cam.MostPressureAtRad)}, more than {Wording.Degrees(cam.Brief.PressureAngleRad)}: the lever may jam. A larger base radius, a longer motion or less lift brings it down; base_radius = \"auto\" finds the least that serves.", "base_radius");
        }
    }

    private IEnumerable<Finding> Radius()
    {
        if (cam.Brief.RollerRadiusMm is double roller && cam.LeastRadiusMm < WantedRollers * roller)
        {
            yield return Warning("cam.sharp", $"{Capital(Name)} is sharp at {Wording.Degrees(cam.LeastRadiusAtRad)}: the path of the roller's axis has a radius of {Wording.Mm(cam.LeastRadiusMm)} there, less than twice the roller's {Wording.Mm(roller)}, so it presses hard and wears. A larger base radius or a smaller roller eases it.", "base_radius");
        }
    }

    private IEnumerable<Finding> Laws()
    {
        IReadOnlyList<CamStretch> stretches = cam.Shape.Task.Profile.Stretches;
        double turnS = brief.Drive.TurnTimeS;
        foreach (CamStretch stretch in stretches.Where(s => s.Law == CamLaw.Uniform))
        {
            double velocity = Math.Abs(stretch.ToLift - stretch.FromLift) / (stretch.SweepRad / Angles.TurnRad * turnS);
            string lost = lostMm > 0 ? $" Where it ends the cam has a corner, and the follower stays up to {Wording.Mm(lostMm)} below its profile." : "";
            yield return Warning("cam.strikes", $"The uniform motion of {Name} from {Wording.Degrees(Angles.InTurn(stretch.FromRad))} jumps to {cam.LiftWords(velocity)}/s and back: the lever strikes at both ends.{lost} Any other law begins and ends at rest.", "profile");
        }

        if (stretches.Any(s => s.Law == CamLaw.Harmonic))
        {
            yield return Finding.Note("cam.jerk", $"The simple harmonic motion of {Name} begins and ends with a jump of its acceleration: no matter at the speed of a slow timer, noise at a fast one.", Place("profile"));
        }
    }

    private IEnumerable<Finding> Steps()
    {
        IReadOnlyList<CamStretch> stretches = cam.Shape.Task.Profile.Stretches;
        for (int i = 0; i < cam.Falls.Count; i++)
        {
            CamFall fall = cam.Falls[i];
            CamStretch rest = stretches[(Enumerable.Range(0, stretches.Count).Where(s => stretches[s].Falls).ElementAt(i) + 1) % stretches.Count];
            if (fall.HeldToRad + rest.SweepRad < fall.RestByRad)
            {
                yield return Error("cam.falls-late", $"After {Wording.Degrees(fall.HeldToRad)} the lever of {Name} has the corner of the step behind it at {Wording.Degrees(Angles.InTurn(fall.ClearRad))} and is at rest by {Wording.Degrees(Angles.InTurn(fall.RestByRad))}, later than the next motion begins. Leave it a longer rest, a stronger press or a lighter lever.", "profile");
            }

            if (fall.FreeS > fall.StepS)
            {
                yield return Warning("cam.left-behind", $"The step of {Name} at {Wording.Degrees(fall.HeldToRad)} runs away from the lever: the face is clear after {Wording.Seconds(fall.StepS)}, the lever needs {Wording.Seconds(fall.FreeS)} to fall (rebound not counted). It lands by {Wording.Degrees(Angles.InTurn(fall.RestByRad))}.", "profile");
            }
        }
    }

    private IEnumerable<Finding> Leaves(CamForces forces)
    {
        if (forces.LeavesAtRad() is double at)
        {
            yield return Error("cam.lifts-off", $"At {Wording.Degrees(at)} the lever of {Name} would leave its cam: its press does not speed it up as the profile asks. A stronger press, a lighter lever or a longer motion holds it on.", "press");
        }
    }

    private IEnumerable<Finding> Places()
    {
        if (!PivotIsClear(cam.Brief, cam.Shape))
        {
            yield return Error("cam.pivot", $"{Capital(Name)} reaches {Wording.Mm(cam.OuterRadiusMm)} from its axis, and the pivot of its lever lies {Wording.Mm(((SwingingLever)cam.Brief.Lever).Pivot.RadiusMm)} from it: they meet. Move the pivot out.", "lever");
        }

        if (!FaceReaches(cam.Brief, cam.Shape))
        {
            yield return Error("cam.face", $"The flat face of the lever of {Name} reaches {Wording.Mm(((SwingingLever)cam.Brief.Lever).ArmMm)} from its pivot, and is touched as far as {Wording.Mm(((SwingingLever)cam.Brief.Lever).Pivot.DistanceTo(cam.Shape.FaceAt(0)!.Value.Foot) + cam.Shape.MostAsideMm())}. Make the arm longer.", "lever");
        }

        if (Math.Abs(cam.Brief.UpperMm - cam.Brief.LowerMm - cam.Brief.ThicknessMm) > 1e-9)
        {
            yield return Warning("cam.height", $"{Capital(Name)} is {Wording.Mm(cam.Brief.ThicknessMm)} thick, and its faces lie {Wording.Mm(cam.Brief.UpperMm - cam.Brief.LowerMm)} apart.", "z");
        }

        double under = -brief.Carrier.StepMm - brief.Carrier.ThicknessMm;
        if (cam.Brief.LowerMm < 0 && cam.Brief.UpperMm > under)
        {
            yield return Error("cam.in-wheel", $"{Capital(Name)} lies from {Wording.Mm(cam.Brief.LowerMm)} to {Wording.Mm(cam.Brief.UpperMm)}, in the wheel and its carrier, from {Wording.Mm(under)} to 0 mm. Put it above the copper face or under the carrier.", "z");
        }
    }

    // One shaft has one flat: two bores that name it differently are put on turned against each other. Without a flat only marks hold cam and wheel in line.
    private IEnumerable<Finding> Mounting()
    {
        BoreBrief wheel = brief.Wheel.Bore, own = cam.Brief.Bore ?? wheel;
        if (wheel.FlatMm is not null && own.FlatMm is not null)
        {
            double turned = Math.Abs(Angles.Signed(own.FlatAtRad - wheel.FlatAtRad));
            if (turned > SameRad)
            {
                yield return Error("cam.flat", $"The flat of {Name} is at {Wording.Degrees(own.FlatAtRad)} and the wheel's at {Wording.Degrees(wheel.FlatAtRad)}: on a shaft with one flat it sits {Wording.Degrees(turned)} off its place. Write the same flat_at, which cuts the cam so that its index mark comes in line with the wheel's home mark.", "bore");
            }
        }
        else
        {
            yield return Warning("cam.no-flat", $"Only their marks hold {Name} and the wheel in line, because {(own.FlatMm is null ? "its bore" : "the wheel's bore")} has no flat: one that is put on turned, or slips, lifts its lever at another time. A flat in both bores holds them.", "bore");
        }
    }

    // Angles nearer than this are one, rad: far below what a flat can hold.
    private const double SameRad = 1e-6;

    // What a hand lifts, or what reaches among wet pellets, must not be live.
    private IEnumerable<Finding> Live()
    {
        if (cam.Brief.Body?.Net is { } net && CamSolids.KindOf(brief, net) == SolidKind.Live)
        {
            string key = cam.Brief.Swings ? "lever" : "slide";
            yield return cam.Brief.Latch is null
                ? Warning("cam.live-lever", $"The lever of {Name} is on net '{net}': whatever it feels or moves is live with it. Make it of what insulates, or earth it.", key)
                : Error("cam.live-lever", $"The lever of {Name} is hooked up by hand, and is on net '{net}'. Make it of what insulates, or earth it.", key);
        }
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private TextPlace Place(string key) => brief.PlaceOf(FormattableString.Invariant($"cam[{cam.Index}].{key}"));

    private Finding Error(string code, string message, string key) => Finding.Error(code, message, Place(key));

    private Finding Warning(string code, string message, string key) => Finding.Warning(code, message, Place(key));
}
