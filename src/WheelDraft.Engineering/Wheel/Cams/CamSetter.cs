using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

// The chapter "Cams": from what a lever is to do to an outline of lines and arcs, and what the lever's contact and the shaft feel of it. It knows no copper and no strip.

/// <summary>Sets out the cams of a brief.</summary>
internal static class CamSetter
{
    /// <summary>The cams, in file order.</summary>
    /// <exception cref="DesignRefusedException">One of them cannot be built as asked.</exception>
    public static IReadOnlyList<CamLayout> Of(Brief brief, Motion motion) => [.. brief.Cams.Select((c, i) => new OneCam(brief, motion, i).Set())];
}

/// <summary>Sets out one cam.</summary>
internal sealed class OneCam(Brief brief, Motion motion, int index)
{
    // A cam larger than this is none, mm.
    private const double LargestMm = 400;

    // Base radii that are found are rounded up to this, mm, so that a drawing has a plain figure.
    private const double PlainMm = 0.01;

    // A base radius is looked for in steps of this share, then to a fraction of a plain figure.
    private const double Step = 1.01;

    // How much larger than its roller the pitch curve's least radius is wanted: two to three times (lecture notes on cam size, after Norton); under a flat face 1 mm at least (common practice, no source).
    private const double WantedRollers = 2;
    private const double FlatRadiusMm = 1;

    private readonly CamBrief _cam = brief.Cams[index];

    public CamLayout Set()
    {
        CamTask task = new(CamProfile.Of(_cam, motion), _cam.Lever, _cam.RollerRadiusMm, motion.Sigma);
        CamShape shape = _cam.BaseRadiusMm is double given ? Given(task, given) : Least(task);
        CamOutline outline = CamOutline.Of(shape) ?? throw Refused(
            "cam.outline",
            $"The outline of cam '{_cam.Name}' cannot be drawn: a step finds no room before the next motion (its lever clears it {StepWords(shape)} after it), or the outline crosses itself. Leave the lever a longer rest after the drop, or make the cam larger.",
            "profile");
        Contour bore = HubLayout.BoreContour(_cam.Bore ?? brief.Wheel.Bore, brief.Process, Place("bore"));
        CamForces forces = new(brief, _cam, shape);
        IReadOnlyList<CamFall> falls = forces.Falls();
        LeverSwitching? switching = _cam.Contact is null ? null : new(brief, _cam, shape, (falls, outline.LostMm));
        (double pressure, double pressureAt) = shape.MostPressure();
        (double radius, double radiusAt) = shape.LeastRadius();
        CamLayout layout = new()
        {
            Brief = _cam,
            Index = index,
            Shape = shape,
            Outline = new Outline(outline.Contour, [bore]),
            BaseRadiusMm = shape.BaseMm,
            OffMm = outline.OffMm,
            MostPressureRad = pressure,
            MostPressureAtRad = Angles.InTurn(pressureAt),
            LeastRadiusMm = radius,
            LeastRadiusAtRad = Angles.InTurn(radiusAt),
            Falls = falls,
            Torque = forces.Torque(),
            Contact = switching?.Schedule(),
            Findings = [],
        };
        return layout with { Findings = [.. new CamFindings(brief, layout, outline.LostMm).Of(forces), .. switching?.Findings(layout.LiftWords) ?? []] };
    }

    // From the bore's edge to the outline: the wheel's web, or what the process leaves standing.
    private double HubMm => ((_cam.Bore ?? brief.Wheel.Bore).DiameterMm / 2) + Math.Max(brief.Wheel.WebMm, brief.Process.LeastWebMm);

    private CamShape Given(CamTask task, double baseMm)
    {
        if (baseMm < HubMm)
        {
            throw Refused("cam.hub", $"A base radius of {Wording.Mm(baseMm)} leaves less than {Wording.Mm(HubMm - ((_cam.Bore ?? brief.Wheel.Bore).DiameterMm / 2))} round the bore of cam '{_cam.Name}': it is {Wording.Mm(HubMm)} at least.", "base_radius");
        }

        CamShape shape = CamShape.Of(task, baseMm) ?? throw Refused("cam.reach", $"The lever of cam '{_cam.Name}' does not reach its cam at a base radius of {Wording.Mm(baseMm)}{ReachWords(task, baseMm)}.", "base_radius");
        if (!shape.IsUndercut)
        {
            return shape;
        }

        (double radius, double at) = shape.LeastRadius();
        string serves = TryLeast(task) is { } least ? $"A base radius of {Wording.Mm(least.BaseMm)} would do" : "No base radius would do";
        throw Refused(
            "cam.undercut",
            _cam.RollerRadiusMm is double roller
                ? $"Cam '{_cam.Name}' is undercut at {Wording.Degrees(Angles.InTurn(at))}: the path of the roller's axis has a radius of {Wording.Mm(radius)} there, no more than the roller's {Wording.Mm(roller)}, so the roller would cut off what lifts it. {serves}; or take a smaller roller, or a longer motion."
                : $"Cam '{_cam.Name}' is undercut at {Wording.Degrees(Angles.InTurn(at))}: its outline would have a radius of {Wording.Mm(radius)} there, and a flat face follows bulges alone. {serves}; or take a longer motion.",
            "base_radius");
    }

    private CamShape Least(CamTask task) => TryLeast(task) ?? throw Refused(
        "cam.no-base",
        $"No base radius from {Wording.Mm(HubMm)} to {Wording.Mm(LargestMm)} gives cam '{_cam.Name}' a pressure angle of {Wording.Degrees(_cam.PressureAngleRad)} at most without undercut within the reach of its lever. A longer motion, less lift, a longer arm or a pivot further away would do.",
        "base_radius");

    private CamShape? TryLeast(CamTask task)
    {
        double before = HubMm, at = HubMm;
        while (!Serves(task, at))
        {
            (before, at) = (at, at * Step);
            if (at > LargestMm)
            {
                return null;
            }
        }

        double least = at > HubMm ? RootFinding.LeastWhere(r => Serves(task, r), before, at, PlainMm / 10) : at;
        double plain = Math.Ceiling(least / PlainMm) * PlainMm;
        return CamShape.Of(task, Serves(task, plain) ? plain : least);
    }

    private bool Serves(CamTask task, double baseMm)
    {
        if (CamShape.Of(task, baseMm) is not { } shape || shape.MostPressure().PressureRad > _cam.PressureAngleRad)
        {
            return false;
        }

        double wanted = task.RollerMm is double roller ? WantedRollers * roller : FlatRadiusMm;
        return shape.IsNowhereTighterThan(wanted) && CamFindings.PivotIsClear(_cam, shape) && CamFindings.FaceReaches(_cam, shape);
    }

    private static string ReachWords(CamTask task, double baseMm) => task.Lever switch
    {
        SwingingLever swing when task.RollerMm is double roller => $": pivot and roller are {Wording.Mm(swing.ArmMm)} apart, pivot and axis {Wording.Mm(swing.Pivot.RadiusMm)}, and at rest the roller's axis lies {Wording.Mm(baseMm + roller)} from the axis; or the arm passes the line of centres as it is lifted",
        SlidingLever slide => $": its path passes the axis at {Wording.Mm(Math.Abs(slide.OffsetMm))}",
        _ => ", or swings past the line of centres as it is lifted",
    };

    private static string StepWords(CamShape shape) => shape.Drops.Count == 0 ? "at once" : Wording.Degrees(shape.Drops.Max(d => d.ClearRad - d.HeldToRad));

    private TextPlace Place(string key) => brief.PlaceOf(FormattableString.Invariant($"cam[{index}].{key}"));

    private DesignRefusedException Refused(string code, string message, string key) => new(code, message, Place(key));
}
