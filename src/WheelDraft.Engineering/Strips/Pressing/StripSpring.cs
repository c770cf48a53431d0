using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>How a formed strip presses on the wheel: force, stress and the shape it takes.</summary>
/// <remarks>API: <c>StripSpring.Of(form, contact, adjust)</c>, in seat coordinates. Young's modulus itself is used, not
/// E/(1 − ν²); small turns are assumed (a warning says when they are not). The nominal figures leave friction out, the band
/// (<see cref="Band"/>) counts it.</remarks>
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

    /// <summary>How far force and stress may lie from nominal; no band at all without limits.</summary>
    public required StripBand Band { get; init; }

    /// <summary>What the band counts.</summary>
    public required PressingLimits Limits { get; init; }

    /// <summary>How friction winds up the nose along the motion; null when no friction is given.</summary>
    public WindUp? WindUp => Band.WindUp;

    /// <summary>Largest stress of the drawn strip at mid travel, MPa, on the inside of folds and sweeps.</summary>
    public required double StressMpa { get; init; }

    /// <summary>Where it is, developed position, mm.</summary>
    public required double StressAtMm { get; init; }

    /// <summary>Width of the strip there, mm.</summary>
    public required double StressWidthMm { get; init; }

    /// <summary>Largest stress over travel and band, MPa.</summary>
    public double WorstStressMpa => Band.MostStressMpa;

    /// <summary>Yield strength over the largest stress of the band: below 1 some strip takes a set.</summary>
    public required double YieldFactor { get; init; }

    /// <summary>Fatigue strength over the largest stress of the band, as if it were wholly reversed; null when no fatigue strength is known.</summary>
    public double? FatigueFactor { get; init; }

    /// <summary>How far the contact turns with the arm when pressed, radians.</summary>
    public required double TurnRad { get; init; }

    /// <summary>The smallest force over wear, travel and band, N; 0 when the contact may leave the copper.</summary>
    public double LeastForceN => Band.LeastForceN;

    /// <summary>The largest force over travel and band, N.</summary>
    public double MostForceN => Band.MostForceN;

    /// <summary>The elastic line under 1 N.</summary>
    internal SpringChain Chain { get; init; } = null!;

    /// <summary>Works out the spring of a wiper.</summary>
    /// <param name="form">The strip, with a nose.</param>
    /// <param name="contact">Its contact.</param>
    /// <param name="adjust">The adjusting edge that its screw serves; null for none.</param>
    /// <param name="limits">What may differ from the drawing; null for the drawn strip alone.</param>
    public static StripSpring Of(StripForm form, StripContact contact, AdjustBrief? adjust, PressingLimits? limits = null) => Of(form, contact, adjust, limits, null);

    /// <summary>The same, with bands that may have been found before.</summary>
    internal static StripSpring Of(StripForm form, StripContact contact, AdjustBrief? adjust, PressingLimits? limits, BandMemory? bands)
    {
        ArgumentNullException.ThrowIfNull(form);
        ArgumentNullException.ThrowIfNull(contact);
        StripNose nose = form.Nose ?? throw new ArgumentException("A plain strip is no spring.", nameof(form));
        limits ??= new PressingLimits { Forming = FormingBrief.Exact };
        SpaceVector radial = RadialOf(nose, contact.ApproachRad ?? Math.PI / 2);
        SpringChain chain = new(form, radial, pushAtMm: adjust?.Place?.AtMm);
        NoseBalance balance = new(chain, nose, radial, limits.Direction);
        NoseLoads pressed = balance.At(nose.DepthMm, 0, 0);
        (double stress, ChainStation at) = Worst(chain, pressed);
        PressingUse use = new(contact.WearDepthMm ?? 0, adjust?.TravelMm ?? 0, adjust?.Place?.AtMm);
        StripBand Find() => new StripBanding(form, limits, radial, use).Find();
        StripBand band = bands is null ? Find() : bands.Of(new PressedShape(form, limits, radial, use), Find);
        return new StripSpring
        {
            GivesMmPerN = chain.Vertical.Shift(nose.Centre),
            DeflectionMm = nose.DepthMm,
            WornForceN = contact.WearDepthMm is double worn ? balance.At(Math.Max(0, nose.DepthMm - worn), 0, 0).UpN : null,
            Adjuster = adjust is null ? null : StripAdjuster.Of(chain, balance, nose.DepthMm, adjust),
            Band = band,
            Limits = limits,
            StressMpa = stress,
            StressAtMm = at.AtMm,
            StressWidthMm = at.WidthMm,
            YieldFactor = form.Material.YieldMpa.Value / band.MostStressMpa,
            FatigueFactor = form.Material.FatigueMpa is MaterialValue fatigue ? fatigue.Value / band.MostStressMpa : null,
            TurnRad = (chain.Vertical.Turn * pressed.UpN).Length,
            Chain = chain,
        };
    }

    /// <summary>Outward along the radius in seat coordinates: from the way back along the arm, clockwise by the approach.</summary>
    internal static SpaceVector RadialOf(StripNose nose, double approachRad)
    {
        Vector back = -new Vector(nose.Frame.Along.X, nose.Frame.Along.Y);
        return SpaceVector.Level(back.AngleRad - approachRad);
    }

    /// <summary>The largest stress along a chain, and where.</summary>
    internal static (double Mpa, ChainStation At) Worst(SpringChain chain, NoseLoads loads)
    {
        double worst = 0;
        ChainStation at = chain.Stations[0];
        foreach (ChainStation station in chain.Stations)
        {
            // The second of two equal stresses differs by rounding only; the one nearer the clamp is named.
            const double more = 1 + 1e-9;
            double stress = chain.StressMpa(station, loads);
            if (stress > worst * more)
            {
                (worst, at) = (stress, station);
            }
        }

        return (worst, at);
    }
}

/// <summary>The screw that moves a wiper along the radius, and what it does to the spring.</summary>
/// <remarks>Where the file says at which place the screw pushes the strip, it pushes there, and the spring itself says how far the contact moves with it
/// (<see cref="ContactPerScrew"/>). Else it is taken to push the contact itself, through an ideal lever of the given ratio. The copper holds the height.</remarks>
public sealed record StripAdjuster
{
    /// <summary>Wiper travel per screw turn, mm: pitch × lever.</summary>
    public required double TipPerTurnMm { get; init; }

    /// <summary>Travel of the contact per travel of the screw, by the spring's own shape; null where the file does not say at which place the screw pushes.</summary>
    public double? ContactPerScrew { get; init; }

    /// <summary>Contact force at the inner end of travel, N.</summary>
    public required double InnerForceN { get; init; }

    /// <summary>Contact force at the outer end of travel, N.</summary>
    public required double OuterForceN { get; init; }

    /// <summary>Force along the screw at the ends of travel, N.</summary>
    public required double ScrewForceN { get; init; }

    /// <summary>Largest stress at the ends of travel, MPa.</summary>
    public required double StressMpa { get; init; }

    internal static StripAdjuster Of(SpringChain chain, NoseBalance balance, double depthMm, AdjustBrief adjust)
    {
        // Radial push and contact force together: the contact stays at the copper and moves half the travel from mid travel.
        NoseLoads inner = balance.At(depthMm, 0, -adjust.TravelMm / 2);
        NoseLoads outer = balance.At(depthMm, 0, adjust.TravelMm / 2);
        return new StripAdjuster
        {
            TipPerTurnMm = adjust.ScrewPitchMm * adjust.Lever,
            InnerForceN = inner.UpN,
            OuterForceN = outer.UpN,

            // Through a lever the tip moves lever times as far as the screw, so the screw pushes lever times as hard; one that pushes the strip needs what it needs.
            ScrewForceN = Math.Abs(outer.OutwardN) * (adjust.Place is null ? adjust.Lever : 1),
            ContactPerScrew = adjust.Place is null ? null : chain.ContactPerPush,
            StressMpa = Math.Max(StripSpring.Worst(chain, inner).Mpa, StripSpring.Worst(chain, outer).Mpa),
        };
    }
}
