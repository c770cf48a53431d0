using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Brings one formed strip to its place and judges it there.</summary>
internal sealed class StripSetting(StripSprings springs, StripForm form, StripStation station, StripCurrent? current)
{
    // Force of bare copper-alloy sliding contacts, N a tip: common practice, no source.
    internal const double LeastUsualN = 0.5;
    internal const double MostUsualN = 3;

    // Where linear theory is off by about 1 %: deflection over length, and turn (common practice, from memory).
    private const double MostSlope = 0.1;
    private static readonly double MostTurnRad = Angles.RadFromDeg(10);

    // Static spring stress is usually kept to three quarters of yield (common practice, no source).
    private const double UsualYieldFactor = 1 / 0.75;

    // A plain copper edge that breaks more than this, or any coil, arcs noticeably (common practice, no source).
    private const double SlowBreakA = 0.5;

    private readonly Brief _brief = springs.Brief;
    private readonly List<Finding> _findings = [.. form.Findings];

    private string Name => form.Strip.Name;

    /// <summary>The same strip at the same place before its current was known: where it is does not change by that. Null when there is none.</summary>
    internal PlacedStrip? Before { get; init; }

    internal PlacedStrip? Place(List<Finding> reasons)
    {
        if (form.Strip.ApproachRad is not double approach)
        {
            reasons.Add(Finding.Error("strip.form", $"strip \"{Name}\" has no approach: the direction from the tip back along the arm, from the outward radial; e.g. approach = \"90 deg\"", At("approach")));
            return null;
        }

        return station is { Contact: StripContact contact, Ring: RingPlace ring } ? Wiper(contact, ring, approach, reasons) : Plain(approach);
    }

    private PlacedStrip? Wiper(StripContact contact, RingPlace ring, double approach, List<Finding> reasons)
    {
        double travel = station.Adjust?.TravelMm ?? 0;
        if (StripPlacing.OffRing(Name, contact, ring, travel) is string off)
        {
            reasons.Add(Finding.Error("strip.off-ring", off, At("approach")));
            return null;
        }

        StripSpring spring = springs.Of(form, contact, station.Adjust);
        if (spring.Band.Fails is string fails)
        {
            reasons.Add(Finding.Error("strip.fails", $"strip \"{Name}\", within what it may differ from the drawing, cannot work: {fails}; fold it otherwise, give it a lower riser or a longer arm, or hold it closer ([forming])", At("shape")));
            return null;
        }

        SpacePlacement placement = StripPlacing.OfWiper(form, spring, approach, ring);
        StripElectrics electrics = StripElectrics.Of(form, spring.LeastForceN, MaterialTable.Find(_brief.Wheel.Material).Found, current);
        JudgeSeat(placement);
        JudgeForce(spring);
        JudgeStress(spring);
        JudgeNose(spring);
        JudgeElectrics(electrics);
        ArmSense? sense = contact.SenseOf(_brief.Drive.Direction);
        if (sense == ArmSense.Leading)
        {
            Warn("strip.leading", "approach", $"The arm of strip \"{Name}\" leads: the copper moves from its tip to its root, and it may dig in at edges. Turn its approach to the other side, so that it trails.");
        }

        PlacedStrip placed = new()
        {
            Form = form,
            Placement = placement,
            Net = station.Net,
            Contact = contact,
            Spring = spring,
            Ring = ring,
            Sense = sense,
            Working = StripPlacing.Working(form, spring, placement),
            Solids = [],
            Electrics = electrics,
            Life = WearLife.Of(contact, spring.MostForceN, ring.RadiusMm, form.Material.HardnessMpa.Value),
            Findings = _findings,
        };
        if (Before is not null)
        {
            return placed with { Solids = Before.Solids, LoweredSolids = Before.LoweredSolids };
        }

        double cut = _brief.Process.ToleranceMm;

        // Friction moves it in plan too, from where it is drawn without.
        double wound = spring.WindUp is WindUp wind ? Math.Sqrt((wind.MostMm * wind.MostMm) + (wind.MostRadialMm * wind.MostRadialMm)) : 0;
        SolidTolerance moved = new(cut, station.SidePlayMm + (travel / 2) + wound, 0, contact.WearDepthMm ?? 0) { LevelMm = _brief.Housing.ToleranceMm };
        SolidTolerance held = new(cut, 0, 0, 0) { LevelMm = _brief.Housing.ToleranceMm };
        return placed with { Solids = StripSolids.Of(placed, held, moved, At("shape"), Reach(placed, moved)), LoweredSolids = Lowered(placed, held, moved) };
    }

    // What is above the clearance from the copper's face at its worst meets by height alone; the nose is at least as high as its bend is deep.
    private NoseReach Reach(PlacedStrip placed, SolidTolerance moved, double rideMm = 0)
    {
        NoseLegs? legs = springs.LegsOf(form, placed.Contact!, station.Adjust);
        double least = rideMm + (2 * form.Strip.ThicknessMm) + (placed.Contact!.NoseRadiusMm ?? 0) - form.Strip.ThicknessMm;
        return new(rideMm, Math.Max(least, station.ClearanceMm + moved.InHeightMm + (_brief.Wheel.FaceRunOutMm / 2)), placed.Ring!.RadiusMm)
        {
            Before = legs?.Before ?? false,
            After = legs?.After ?? false,
        };
    }

    // While its output is open the wiper rides on the carrier: the spring is relaxed by the step, down to where it hangs free.
    private IReadOnlyList<Solid> Lowered(PlacedStrip placed, SolidTolerance held, SolidTolerance moved)
    {
        if (station.StepMm <= 0)
        {
            return [];
        }

        StripSpring relaxed = placed.Spring! with { DeflectionMm = Math.Max(0, placed.Spring.DeflectionMm - station.StepMm) };
        PlacedStrip lowered = placed with { Spring = relaxed, Working = StripPlacing.Working(form, relaxed, placed.Placement) };
        return [.. StripSolids.Of(lowered, held, moved, At("shape"), Reach(placed, moved, -station.StepMm)).Select(s => s with { IsLowered = true })];
    }

    private PlacedStrip Plain(double approach)
    {
        SpacePlacement placement = StripPlacing.OfPlain(form, station.Tip, approach);
        JudgeSeat(placement);
        StripElectrics electrics = StripElectrics.Of(form, null, MaterialTable.Find(_brief.Wheel.Material).Found, current);
        JudgeElectrics(electrics);
        PlacedStrip placed = new()
        {
            Form = form,
            Placement = placement,
            Net = station.Net,
            Working = StripPlacing.Working(form, null, placement),
            Solids = [],
            Electrics = electrics,
            Findings = _findings,
        };
        if (Before is not null)
        {
            return placed with { Solids = Before.Solids };
        }

        SolidTolerance tolerance = new(_brief.Process.ToleranceMm, 0, 0, 0) { LevelMm = _brief.Housing.ToleranceMm };
        return placed with { Solids = StripSolids.Of(placed, tolerance, tolerance, At("shape")) };
    }

    // The four corners of the clamped part lie on the surface.
    private void JudgeSeat(SpacePlacement placement)
    {
        SurfaceBrief? surface = _brief.Surfaces.FirstOrDefault(s => string.Equals(s.Name, form.Strip.SeatedOn, StringComparison.OrdinalIgnoreCase));
        if (surface?.Outline is not Outline outline)
        {
            return;
        }

        double off = 0;
        foreach (double at in new[] { form.Clamp.FromMm, form.Clamp.ToMm })
        {
            StripFrame frame = placement.Of(form.FrameAt(at));
            FormedPiece piece = form.PieceAt(at);
            double half = piece.WidthAt(piece.DevelopedMm > 0 ? Math.Clamp((at - piece.FromMm) / piece.DevelopedMm, 0, 1) : 0) / 2;
            off = Math.Max(off, Math.Max(Distances.Between(frame.At(0, half, 0).Plan, outline).DistanceMm, Distances.Between(frame.At(0, -half, 0).Plan, outline).DistanceMm));
        }

        const double offMm = 1e-6;
        if (off > offMm)
        {
            Warn("strip.seat", "seated_on", $"The clamped part of strip \"{Name}\" reaches {off:0.###} mm beyond the outline of surface \"{surface.Name}\": it is not held there. Enlarge the surface, or move the clamp.");
        }
    }

    private void JudgeForce(StripSpring spring)
    {
        string limits = FormingWords.Limits(_brief.Forming);
        if (!(spring.LeastForceN > 0))
        {
            Miss("strip.lifts", "deflection", $"The contact of strip \"{Name}\" may leave the copper: of {spring.DeflectionMm:0.###} mm deflection as little as {spring.Band.LeastDeflectionMm:0.###} mm may be left when worn, face run-out counted ({limits}). A larger deflection, or closer limits, keep it down.");
        }
        else if (spring.LeastForceN < LeastUsualN)
        {
            Warn("strip.force", "deflection", $"Strip \"{Name}\" presses with as little as {spring.LeastForceN:0.##} N (drawn {spring.ForceN:0.##} N; {limits}); bare sliding copper-alloy contacts want {LeastUsualN} to {MostUsualN} N (common practice, no source). A larger deflection, thicker stock or a shorter arm presses harder.");
        }

        if (spring.MostForceN > MostUsualN)
        {
            Warn("strip.force", "deflection", $"Strip \"{Name}\" presses with as much as {spring.MostForceN:0.##} N (drawn {spring.ForceN:0.##} N; {limits}); bare sliding copper-alloy contacts want {LeastUsualN} to {MostUsualN} N (common practice, no source). A smaller deflection, thinner stock or a longer arm presses less.");
        }
    }

    private void JudgeStress(StripSpring spring)
    {
        MaterialValue yield = form.Material.YieldMpa;
        FormattableString stressed = $"Strip \"{Name}\" is stressed to {spring.WorstStressMpa:0.#} MPa within its limits (drawn {spring.StressMpa:0.#} MPa at {spring.StressAtMm:0.##} mm from its terminal end), {form.Material.Designation} yields at {yield.Value:0.#} MPa ({yield.SourceInWords}): factor {spring.YieldFactor:0.##}";
        if (spring.YieldFactor < 1)
        {
            Miss("strip.yield", "deflection", $"{FormattableString.Invariant(stressed)}, so it takes a set and no force here holds. A longer arm, less deflection, thinner stock or a larger fold radius lowers it.");
        }
        else if (spring.YieldFactor < UsualYieldFactor)
        {
            Warn("strip.yield", "deflection", $"{FormattableString.Invariant(stressed)}, little is left before it takes a set; usual practice keeps {UsualYieldFactor:0.##}. A longer arm, less deflection, thinner stock or a larger fold radius lowers it.");
        }

        if (spring.FatigueFactor is null)
        {
            _findings.Add(Finding.Note("strip.fatigue", string.Create(CultureInfo.InvariantCulture, $"No fatigue strength is known for {form.Material.Designation}: strip \"{Name}\", stressed to {spring.WorstStressMpa:0.#} MPa, is not judged by it."), At("material")));
        }
        else if (spring.FatigueFactor is < 1)
        {
            Warn("strip.fatigue", "deflection", $"Strip \"{Name}\" is stressed to {spring.WorstStressMpa:0.#} MPa within its limits, above the fatigue strength of {form.Material.Designation}, {form.Material.FatigueMpa!.Value:0.#} MPa ({form.Material.FatigueMpa.SourceInWords}), were that stress reversed; at an edge it only changes a little.");
        }

        for (int i = 0; i < form.Strip.Holes.Count; i++)
        {
            StripHole hole = form.Strip.Holes[i];
            if (hole.AtMm + (hole.DiameterMm / 2) > form.Clamp.ToMm && hole.AtMm - (hole.DiameterMm / 2) < form.Nose!.AtMm)
            {
                Warn("strip.hole", string.Create(CultureInfo.InvariantCulture, $"holes[{i}]"), $"The hole of {hole.DiameterMm:0.##} mm at {hole.AtMm:0.##} mm lies in the sprung part of strip \"{Name}\": force, stress and resistance are worked out without it, so the strip presses less and is stressed more than they say. Move it into the clamp.");
            }
        }

        double free = form.Nose!.AtMm - form.Clamp.ToMm;
        if (spring.DeflectionMm > MostSlope * free || spring.TurnRad > MostTurnRad)
        {
            Warn("strip.linear", "deflection", $"Strip \"{Name}\" is deflected {spring.DeflectionMm:0.###} mm over {free:0.#} mm and its contact turns {Angles.DegFromRad(spring.TurnRad):0.#}°; beyond a tenth of the length or 10° the linear figures are off by more than about 1 % (common practice, from memory).");
        }
    }

    // Pressed, the nose still has to meet the copper where it is drawn: on the dome's cap, inside the fold, and not on one corner.
    private void JudgeNose(StripSpring spring)
    {
        StripNose nose = form.Nose!;
        StripFrame pressed = (spring.Chain.Vertical * spring.ForceN).Carry(nose.Frame);
        if (nose.Rivet is StripRivet rivet)
        {
            double tilt = Math.Acos(Math.Clamp(pressed.Up.Z, -1, 1));
            double cap = Math.Asin(Math.Min(1, rivet.DiameterMm / (2 * rivet.DomeRadiusMm)));
            if (tilt > cap)
            {
                Warn("strip.nose", "shape", $"Pressed, the rivet of strip \"{Name}\" is tilted {Angles.DegFromRad(tilt):0.##}°, past the edge of its dome ({Angles.DegFromRad(cap):0.##}°): it rides on its rim.");
            }

            return;
        }

        FormedPiece fold = form.Pieces[nose.PieceIndex];
        double rolled = Math.Asin(Math.Clamp(pressed.Along.Z, -1, 1));
        double before = Math.Abs(fold.AngleRad) * (nose.AtMm - fold.FromMm) / fold.DevelopedMm;
        double share = before - rolled;
        if (share < 0 || share > Math.Abs(fold.AngleRad))
        {
            Warn("strip.nose", "shape", $"Pressed, the contact fold of strip \"{Name}\" has rolled {Angles.DegFromRad(rolled):0.##}° and touches beyond its end: a leg rides on the copper. Fold it further on that side.");
        }

        const double leanMm = 0.05;
        double lean = Math.Abs(pressed.Left.Z) * nose.WidthMm / 2;
        if (lean > leanMm)
        {
            Warn("strip.nose", "shape", $"Pressed, the contact fold of strip \"{Name}\" leans so that one end of its line stands {2 * lean:0.###} mm above the other: it touches with a corner. A rivet tolerates this; or keep sweeps in level parts.");
        }
    }

    private void JudgeElectrics(StripElectrics electrics)
    {
        if (electrics is { ContactMelts: true, CurrentA: double melting })
        {
            Miss("strip.softening", "deflection", $"At {melting:0.###} A the contact of strip \"{Name}\" may drop more than {StripElectrics.MostContactV} V at its least force with films, at which any contact metal melts: no figure is given. Press harder, or let a relay carry the load.");
        }
        else if (electrics is { FilmedContactV: double volts, SofteningV: MaterialValue soft })
        {
            if (volts >= soft.Value)
            {
                Miss("strip.softening", "deflection", $"At {electrics.CurrentA:0.###} A the contact of strip \"{Name}\" may drop {volts * 1000:0.#} mV at its least force with films, beyond the softening voltage of {soft.Value * 1000:0.#} mV ({soft.SourceInWords}): it sinks in and may weld. Press harder, or let a relay carry the load.");
            }
            else if (volts > soft.Value / 2)
            {
                Warn("strip.softening", "deflection", $"At {electrics.CurrentA:0.###} A the contact of strip \"{Name}\" may drop {volts * 1000:0.#} mV at its least force with films, over half the softening voltage of {soft.Value * 1000:0.#} mV ({soft.SourceInWords}; the half is common practice). Press harder, or let a relay carry the load.");
            }
        }

        JudgeHeat(electrics);
        if (current is { BrokenA: > 0 } && (current.Inductive || current.BrokenA > SlowBreakA))
        {
            Warn("strip.slow-break", "output", $"The contact of strip \"{Name}\" opens slowly and breaks {current.BrokenA:0.###} A{(current.Inductive ? ", inductive" : "")}: it arcs for many half-cycles and burns. The drawing does not prove breaking capacity; suppress the coil, let a relay take the load, or let another contact break first.");
        }
    }

    private void JudgeHeat(StripElectrics electrics)
    {
        const double roomC = 40;
        if (electrics.WarmsBeyondSense)
        {
            Miss("strip.heat", "material", $"Strip \"{Name}\" may warm by more than {StripElectrics.MostRiseK} K at {electrics.CurrentA:0.###} A: it glows or melts, and no figure is given. A wider or thicker strip, or a relay for the load, keeps it cooler.");
        }
        else if (form.Material.RelaxesAboveC is MaterialValue relax)
        {
            if (roomC + electrics.TemperatureRiseK > relax.Value)
            {
                Miss("strip.heat", "material", $"Strip \"{Name}\" may warm by {electrics.TemperatureRiseK:0.#} K at {electrics.CurrentA:0.###} A ({StripElectrics.RiseAssumptions}); from {roomC} °C that passes {relax.Value} °C, above which it loses force ({relax.SourceInWords}). A wider or thicker strip, or a relay for the load, keeps it cooler.");
            }
        }
        else
        {
            _findings.Add(Finding.Note("strip.heat", string.Create(CultureInfo.InvariantCulture, $"No temperature is known above which {form.Material.Designation} loses force: that strip \"{Name}\" may warm by {electrics.TemperatureRiseK:0.#} K is not judged."), At("material")));
        }
    }

    private TextPlace At(string key) => _brief.PlaceOf(string.Create(CultureInfo.InvariantCulture, $"strip[{form.Index}].{key}"));

    private void Miss(string code, string key, FormattableString message) =>
        _findings.Add(Finding.Error(code, FormattableString.Invariant(message), At(key)));

    private void Warn(string code, string key, FormattableString message) =>
        _findings.Add(Finding.Warning(code, FormattableString.Invariant(message), At(key)));
}
