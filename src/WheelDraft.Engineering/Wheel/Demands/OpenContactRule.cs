namespace WheelDraft.Engineering;

/// <summary>What an open contact of one output must keep from the wheel's copper, margin included.</summary>
/// <remarks>Along the face the patch keeps the larger of clearance and creepage. A nose of radius R is round and stands off the face:
/// where it is, its section has the clearance c only at √((c + R)² − R²) in plan from its axis. A rivet is round all round, a fold
/// across its fold line alone: at both ends of the line it stands upright. Where the copper stands a step s proud of the carrier, the
/// open nose rides that much lower, and the edge of the copper is nearer to its round: √((c + R)² − (R − s)²). A fold whose legs are known has
/// them as tangents to its round: a leg that rises by α has the clearance at (c + R − (R − s) cos α) / sin α, where that is more.</remarks>
/// <param name="ClearanceMm">Clearance, mm.</param>
/// <param name="CreepageMm">Creepage distance, mm.</param>
/// <param name="IsNone">Whether no separation is asked.</param>
internal sealed record OpenContactRule(double ClearanceMm, double CreepageMm, bool IsNone)
{
    /// <summary>The distances of a requirement; none where there is none.</summary>
    public static OpenContactRule Of(PairRequirement? requirement) => requirement is null
        ? None
        : new(requirement.Clearance.RequiredMm, requirement.Creepage!.RequiredMm, IsNone: false);

    /// <summary>No separation asked.</summary>
    public static OpenContactRule None { get; } = new(0, 0, IsNone: true);

    /// <summary>The larger of both: over a flush infill both apply.</summary>
    public double RequiredMm => Math.Max(ClearanceMm, CreepageMm);

    /// <summary>What the patch must keep along the face sideways, mm.</summary>
    /// <remarks>A fold whose line lies β from the radius faces a side of the window partly with its end and partly with its round. The
    /// points nearer than c to it reach at most c + (√((c + R)² − R²) − c) sin β beyond the corner of its line, β = 0 to 90°: at 0
    /// exactly c, at 90° exactly the round section, between them up to a few hundredths of a millimetre too much, the safe side.
    /// (With the point at height c sin θ of the round, c sin θ cos β + √(2Rc cos θ + c² cos² θ) sin β, and √(2Rcx + c²x²) − cx
    /// grows with x, so that this is at most c sin(θ + β) + (√((c + R)² − R²) − c) sin β.) From the corner of the patch, half its
    /// length further out, it is less by that half length times sin β.</remarks>
    public double SidewaysMm(ContactPatch patch)
    {
        if (IsNone || patch.NoseRadiusMm is not double nose)
        {
            return RequiredMm;
        }

        double round = patch.IsDisc ? 1 : Math.Abs(Math.Sin(patch.AngleRad));
        return Math.Max(RequiredMm, ClearanceMm + (round * (BeyondPatchMm(nose, patch) - ClearanceMm)));
    }

    /// <summary>The same on a ring, where the legs of a fold, straight as they are, leave the circle of their wiper.</summary>
    /// <remarks>A place of the section at x from the axis of the fold and h over the face lies at most at √(ρ² + 2xρ sin β + x²) from the shaft,
    /// ρ the farthest of the fold's line and β its angle to the radius (there), and at least x sin β less than the nearest; a leg that widens
    /// reaches further by that. The side of the window keeps c from every such place.</remarks>
    /// <param name="patch">The patch, new.</param>
    /// <param name="innerMm">The least ring radius that the wiper rides on, play counted.</param>
    /// <param name="outerMm">The greatest.</param>
    public double SidewaysMm(ContactPatch patch, double innerMm, double outerMm)
    {
        double plain = SidewaysMm(patch);
        if (IsNone || patch.Section is not NoseSection legs || patch.NoseRadiusMm is not double radius)
        {
            return plain;
        }

        NoseProfile profile = new(radius, patch.StepMm + patch.WearDepthMm, legs);
        ContactPatch line = patch with { HalfLengthMm = 0, WornHalfLengthMm = 0 };
        double outer = line.GreatestRadiusMm(outerMm), inner = line.LeastRadiusMm(innerMm);
        double along = patch.HalfWidthMm * Math.Abs(Math.Sin(patch.AngleRad));
        double Radial(double radiusMm) => Math.Sin(Math.Min(Math.PI / 2, Math.Abs(patch.AngleRad) + Math.Asin(Math.Min(1, along / radiusMm))));
        (double outward, double inward) = (Radial(outer), Radial(inner));
        double beyond = profile.MostMm(ClearanceMm, (x, leg) => Math.Sqrt((outer * outer) + (2 * x * outer * outward) + (x * x)) + (legs.WidensShare * leg))
            - patch.Worn.GreatestRadiusMm(outerMm);
        double within = patch.Worn.LeastRadiusMm(innerMm) - inner
            + profile.MostMm(ClearanceMm, (x, leg) => (x * inward) + (legs.WidensShare * leg));
        return Math.Max(plain, Math.Max(beyond, within));
    }

    /// <summary>What the patch must keep along the face in the direction of motion, mm: there every nose of known radius is round.</summary>
    /// <remarks>Of a fold turned from the radius too, the safe side: the edges that it meets turn as they come.</remarks>
    public double AlongMm(ContactPatch patch) =>
        !IsNone && patch.NoseRadiusMm is double nose ? Math.Max(RequiredMm, BeyondPatchMm(nose, patch)) : RequiredMm;

    /// <summary>In plan, beyond the patch, where a round nose has the clearance, mm; less than the clearance under a wide patch.</summary>
    /// <remarks>A worn nose has come down: a flat leg may then ask for more beyond the worn patch, from which gaps are measured.</remarks>
    private double BeyondPatchMm(double radiusMm, ContactPatch patch)
    {
        double drawn = FromAxisMm(radiusMm, patch) - patch.HalfLengthMm;
        return patch.Section is null ? drawn : Math.Max(drawn, new NoseProfile(radiusMm, patch.StepMm + patch.WearDepthMm, patch.Section).FromAxisMm(ClearanceMm) - patch.WornHalfLengthMm);
    }

    private double FromAxisMm(double radiusMm, ContactPatch patch) => new NoseProfile(radiusMm, patch.StepMm, patch.Section).FromAxisMm(ClearanceMm);

    /// <summary>How what is required along the motion came about, in words.</summary>
    public string AlongWords(ContactPatch patch) => patch.NoseRadiusMm is double
        ? $"Along the motion {Section(patch)}: {Wording.Mm(AlongMm(patch))} are required."
        : $"Along the motion the nose, of unknown radius, is taken to stand upright on its patch: {Wording.Mm(RequiredMm)} are required.";

    /// <summary>How what is required sideways came about, in words.</summary>
    /// <param name="patch">The patch.</param>
    /// <param name="requiredMm">What is required.</param>
    public string SidewaysWords(ContactPatch patch, double requiredMm)
    {
        string required = $"{Wording.Mm(requiredMm)} are required.";
        return patch switch
        {
            _ when requiredMm > SidewaysMm(patch) => $"Sideways the fold ends upright, and its legs leave the circle of the ring as they rise: {required}",
            { NoseRadiusMm: null } => $"Sideways it is taken to stand upright too: {required}",
            { IsDisc: true } => $"Sideways the nose is a dome and round as well: {required}",
            { AngleRad: 0 } => $"Sideways a fold along the radius ends upright: {required}",
            _ => $"Sideways the fold, {Wording.Degrees(patch.AngleRad)} from the radius, is round in part, {Wording.Number(Math.Abs(Math.Sin(patch.AngleRad)), 3)} of the difference from an upright end: {required}",
        };
    }

    private string Section(ContactPatch patch)
    {
        double radius = patch.NoseRadiusMm!.Value;
        if (patch.Section is NoseSection legs && FromAxisMm(radius, patch) > FromAxisMm(radius, patch with { Section = null }))
        {
            return $"the nose has legs that rise by {Wording.Degrees(legs.SlopeRad)} at least, tangents to its round of radius {Wording.Mm(radius)}; its section has the clearance of {Wording.Mm(ClearanceMm)} at {Wording.Mm(FromAxisMm(radius, patch))} in plan from its axis, "
                + $"{Wording.Mm(BeyondPatchMm(radius, patch))} beyond the patch";
        }

        string c = Wording.Number(ClearanceMm, 3);
        string r = Wording.Number(radius, 3);
        string below = patch.StepMm > 0 ? $"({r} − {Wording.Number(patch.StepMm, 3)})" : r;
        return $"the nose is round, of radius {Wording.Mm(radius)}, and its section has the clearance of {Wording.Mm(ClearanceMm)} at √(({c} + {r})² − {below}²) = {Wording.Mm(FromAxisMm(radius, patch))} in plan from its axis, "
            + $"{Wording.Mm(BeyondPatchMm(radius, patch))} beyond the patch{(BeyondPatchMm(radius, patch) > RequiredMm ? ", more than the rules ask along the face" : ", no more than the rules ask along the face")}";
    }
}
