using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>How a formed strip presses on the wheel: force, stress and the shape it takes.</summary>
/// <remarks>API: <c>StripSpring.Of(form, contact, adjust)</c>, in seat coordinates. Young's modulus itself is used, not
/// E/(1 − ν²); friction under the contact is left out; small turns are assumed (a warning tells when they are not).</remarks>
public sealed record StripSpring
{
    /// <summary>How far the nose goes for 1 N up, mm/N, seat coordinates.</summary>
    public required SpaceVector GivesMmPerN { get; init; }

    /// <summary>Stiffness of the contact, straight up, N/mm.</summary>
    public double StiffnessNPerMm => 1 / GivesMmPerN.Z;

    /// <summary>How far the wheel pushes the contact back, mm.</summary>
    public required double DeflectionMm { get; init; }

    /// <summary>Force of the contact on the copper when new, at mid travel, N.</summary>
    public double ForceN => DeflectionMm / GivesMmPerN.Z;

    /// <summary>Force when the nose has worn to its worn length, N; null when the nose or its wear is unknown.</summary>
    public double? WornForceN { get; init; }

    /// <summary>The adjusting screw; null without one.</summary>
    public StripAdjuster? Adjuster { get; init; }

    /// <summary>Largest stress at mid travel, MPa.</summary>
    public required double StressMpa { get; init; }

    /// <summary>Where it is, developed position, mm.</summary>
    public required double StressAtMm { get; init; }

    /// <summary>Largest stress over the travel, MPa; that at mid travel without an adjuster.</summary>
    public double WorstStressMpa => Math.Max(StressMpa, Adjuster?.StressMpa ?? 0);

    /// <summary>Yield strength over the largest stress: below 1 the strip takes a set.</summary>
    public required double YieldFactor { get; init; }

    /// <summary>Fatigue strength over the largest stress, as if it were wholly reversed; null when no fatigue strength is known.</summary>
    public double? FatigueFactor { get; init; }

    /// <summary>How far the contact turns with the arm when pressed, radians.</summary>
    public required double TurnRad { get; init; }

    /// <summary>The smallest force over wear and travel, N.</summary>
    public double LeastForceN => Math.Min(Math.Min(ForceN, WornForceN ?? ForceN), Adjuster?.LeastForceN ?? ForceN);

    /// <summary>The largest force over travel, N.</summary>
    public double MostForceN => Math.Max(ForceN, Adjuster is StripAdjuster a ? Math.Max(a.InnerForceN, a.OuterForceN) : 0);

    /// <summary>The elastic line under 1 N.</summary>
    internal SpringChain Chain { get; init; } = null!;

    /// <summary>Works out the spring of a wiper.</summary>
    /// <param name="form">The strip, with a nose.</param>
    /// <param name="contact">Its contact.</param>
    /// <param name="adjust">The adjusting edge that its screw serves; null for none.</param>
    public static StripSpring Of(StripForm form, StripContact contact, AdjustBrief? adjust)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(contact);
        StripNose nose = form.Nose ?? throw new ArgumentException("A plain strip is no spring.", nameof(form));
        SpringChain chain = new(form, RadialOf(nose, contact.ApproachRad ?? Math.PI / 2));
        SpaceVector gives = chain.Vertical.Shift(nose.Centre);
        double force = nose.DepthMm / gives.Z;
        (double stress, double at) = Worst(chain, SpaceVector.Upward * force);
        double? wornForce = contact.WearDepthMm is double worn ? Math.Max(0, nose.DepthMm - worn) / gives.Z : null;
        StripAdjuster? adjuster = adjust is null ? null : StripAdjuster.Of(form, contact, chain, adjust);
        double worst = Math.Max(stress, adjuster?.StressMpa ?? 0);
        return new StripSpring
        {
            GivesMmPerN = gives,
            DeflectionMm = nose.DepthMm,
            WornForceN = wornForce,
            Adjuster = adjuster,
            StressMpa = stress,
            StressAtMm = at,
            YieldFactor = form.Material.YieldMpa.Value / worst,
            FatigueFactor = form.Material.FatigueMpa is MaterialValue fatigue ? fatigue.Value / worst : null,
            TurnRad = (chain.Vertical.Turn * force).Length,
            Chain = chain,
        };
    }

    /// <summary>Outward along the radius in seat coordinates: from the way back along the arm, clockwise by the approach.</summary>
    internal static SpaceVector RadialOf(StripNose nose, double approachRad)
    {
        Vector back = -new Vector(nose.Frame.Along.X, nose.Frame.Along.Y);
        return SpaceVector.Level(back.AngleRad - approachRad);
    }

    internal static (double Mpa, double AtMm) Worst(SpringChain chain, SpaceVector loadN)
    {
        double worst = 0;
        double at = chain.Stations[0].AtMm;
        foreach (ChainStation station in chain.Stations)
        {
            // The second of two equal stresses differs by rounding only; the one nearer the clamp is named.
            const double more = 1 + 1e-9;
            double stress = chain.StressMpa(station, loadN);
            if (stress > worst * more)
            {
                (worst, at) = (stress, station.AtMm);
            }
        }

        return (worst, at);
    }
}

/// <summary>The screw that moves a wiper along the radius, and what it does to the spring.</summary>
/// <remarks>The screw is taken to push the contact itself, through an ideal lever of the given ratio, while the copper holds the height.</remarks>
public sealed record StripAdjuster
{
    /// <summary>Wiper travel per screw turn, mm: pitch × lever.</summary>
    public required double TipPerTurnMm { get; init; }

    /// <summary>Contact force at the inner end of travel, N.</summary>
    public required double InnerForceN { get; init; }

    /// <summary>Contact force at the outer end of travel, N.</summary>
    public required double OuterForceN { get; init; }

    /// <summary>Force along the screw at the ends of travel, N.</summary>
    public required double ScrewForceN { get; init; }

    /// <summary>Largest stress at the ends of travel, MPa.</summary>
    public required double StressMpa { get; init; }

    /// <summary>Smallest contact force over travel when worn, N.</summary>
    public required double LeastForceN { get; init; }

    internal static StripAdjuster Of(StripForm form, StripContact contact, SpringChain chain, AdjustBrief adjust)
    {
        StripNose nose = form.Nose!;
        SpaceVector radial = RadialOf(form, contact);
        SpaceVector up = chain.Vertical.Shift(nose.Centre);
        SpaceVector outward = chain.Outward.Shift(nose.Centre);

        // Radial push S and contact force F together: the contact stays at the copper and moves ±travel/2 from mid travel.
        double alone = outward.Dot(radial) - (up.Dot(radial) * up.Dot(radial) / up.Z);
        double push = adjust.TravelMm / 2 / alone;
        double ForceAt(double depth, double s) => (depth - (outward.Z * s)) / up.Z;
        double worn = Math.Max(0, nose.DepthMm - (contact.WearDepthMm ?? 0));
        double inner = ForceAt(nose.DepthMm, -push);
        double outer = ForceAt(nose.DepthMm, push);
        double Stress(double force, double s) => StripSpring.Worst(chain, (SpaceVector.Upward * force) + (radial * s)).Mpa;
        return new StripAdjuster
        {
            TipPerTurnMm = adjust.ScrewPitchMm * adjust.Lever,
            InnerForceN = inner,
            OuterForceN = outer,
            ScrewForceN = Math.Abs(push) * adjust.Lever,
            StressMpa = Math.Max(Stress(inner, -push), Stress(outer, push)),
            LeastForceN = Math.Min(ForceAt(worn, -push), ForceAt(worn, push)),
        };
    }

    private static SpaceVector RadialOf(StripForm form, StripContact contact) =>
        StripSpring.RadialOf(form.Nose!, contact.ApproachRad ?? Math.PI / 2);
}
