namespace WheelDraft.Engineering;

/// <summary>What its current does to a strip and its contact; figures that need the current are null where nothing says it.</summary>
public sealed record StripElectrics
{
    /// <summary>Resistance from the terminal end to the contact (to the tip of a plain strip) at 20 °C, Ω; holes left out.</summary>
    public required double ResistanceOhm { get; init; }

    /// <summary>The current, A.</summary>
    public required double? CurrentA { get; init; }

    /// <summary>Drop along the strip at that current, V.</summary>
    public double? DropV => ResistanceOhm * CurrentA;

    /// <summary>Loss in the strip, W.</summary>
    public double? LossW => DropV * CurrentA;

    /// <summary>Largest current density, A/mm².</summary>
    public required double? DensityAPerMm2 { get; init; }

    /// <summary>Estimated steady temperature rise, K, up to <see cref="MostRiseK"/>: see <see cref="RiseAssumptions"/>; null where the current is not
    /// known, and where the estimate is beyond what it can say (<see cref="WarmsBeyondSense"/>).</summary>
    public double? TemperatureRiseK => WarmsBeyondSense ? null : EstimatedRiseK;

    /// <summary>Whether the strip would warm by more than <see cref="MostRiseK"/>.</summary>
    public bool WarmsBeyondSense => EstimatedRiseK is double rise && !(rise <= MostRiseK);

    /// <summary>Greatest temperature rise of which a figure is given, K.</summary>
    /// <remarks>The estimate takes resistivity at 20 °C. Copper's rises by 0.00393 of that a kelvin (IEC 60028:1925), so that 250 K about double the loss:
    /// from there on the figure would be far too small, and to go on with it would look like knowledge.</remarks>
    public const double MostRiseK = 250;

    /// <summary>The estimate as it comes, sense or not, K; not for reports.</summary>
    public required double? EstimatedRiseK { get; init; }

    /// <summary>Resistance of the contact as one clean spot, Ω; null for a plain strip.</summary>
    public double? ConstrictionOhm { get; init; }

    /// <summary>Voltage over a clean contact, V; null for a plain strip, and beyond <see cref="MostContactV"/>.</summary>
    public double? ContactV => Sensible(ConstrictionOhm * CurrentA);

    /// <summary>Voltage over a contact with films, V: ten times the clean one, the upper end of planning practice; null for a plain strip, and beyond
    /// <see cref="MostContactV"/>.</summary>
    public double? FilmedContactV => Sensible(ConstrictionOhm * CurrentA * FilmFactor);

    /// <summary>Whether the contact with films would drop more than <see cref="MostContactV"/>.</summary>
    public bool ContactMelts => ConstrictionOhm * CurrentA * FilmFactor > MostContactV;

    /// <summary>Greatest contact voltage of which a figure is given, V: tungsten, the hardest to melt of contact metals, melts at about 1.1 V over its spot
    /// (R. Holm, Electric Contacts, 1967, table of melting voltages, from memory); no contact of copper stands more.</summary>
    public const double MostContactV = 1.1;

    private static double? Sensible(double? volts) => volts > MostContactV ? null : volts;

    /// <summary>Voltage at which the softer member of the contact softens, V; null for a plain strip.</summary>
    public MaterialValue? SofteningV { get; init; }

    /// <summary>Upper end of the usual planning margin for films on a clean spot's resistance (common practice, no source: 2 to 10).</summary>
    internal const double FilmFactor = 10;

    /// <summary>What the temperature rise rests on.</summary>
    public const string RiseAssumptions = "steady state; all loss of strip and filmed contact leaves through the free surface at 10 W/(m² K) (still air, common practice, no source), none through clamp, terminal or wheel; resistivity at 20 °C";

    private const double CoolingWPerMm2K = 10e-6;

    /// <summary>Works out resistance, loss and heating.</summary>
    /// <param name="form">The strip.</param>
    /// <param name="forceN">Smallest contact force, N; null for a plain strip.</param>
    /// <param name="wheel">Material of the wheel's copper; null when it is not listed, the worst of the list then stands for it.</param>
    /// <param name="current">What it carries; null where nothing says it.</param>
    public static StripElectrics Of(StripForm form, double? forceN, Material? wheel, StripCurrent? current)
    {
        ArgumentNullException.ThrowIfNull(form);
        double end = form.Nose?.AtMm ?? form.LengthMm;
        double rho = form.Material.ResistivityNanoOhmM.Value * 1e-6;
        double t = form.Strip.ThicknessMm;
        double resistance = 0;
        double surface = 0;
        double narrowest = double.PositiveInfinity;
        foreach (FormedPiece piece in form.Pieces.Where(p => p.FromMm < end && p.DevelopedMm > 0))
        {
            double share = Math.Min(1, (end - piece.FromMm) / piece.DevelopedMm);
            double from = piece.WidthMm;
            double to = piece.WidthAt(share);
            double length = piece.DevelopedMm * share;
            resistance += rho * length / (t * LogMean(from, to));
            surface += length * (from + to + (2 * t));
            narrowest = Math.Min(narrowest, Math.Min(from, to));
        }

        double? amperes = current?.CurrentA;
        double? spot = forceN is > 0 ? ConstrictionOhmOf(form.Material, wheel, forceN.Value) : null;
        double? loss = amperes * amperes * (resistance + ((spot ?? 0) * FilmFactor));
        return new StripElectrics
        {
            ResistanceOhm = resistance,
            CurrentA = amperes,
            DensityAPerMm2 = amperes / (narrowest * t),
            EstimatedRiseK = loss / (CoolingWPerMm2K * surface),
            ConstrictionOhm = spot,
            SofteningV = forceN is null ? null : Softest(form.Material, wheel),
        };
    }

    /// <summary>Resistance of one clean circular spot, Ω: (ρ₁ + ρ₂)/(4a), a = √(F/(π H)) with H of the softer member (R. Holm,
    /// Electric Contacts, 1967, with ξ = 1).</summary>
    /// <remarks>A rivet's own metal is not in the parameter file: the strip's, which resists more, stands for it.</remarks>
    internal static double ConstrictionOhmOf(Material strip, Material? wheel, double forceN)
    {
        double hardness = Math.Min(strip.HardnessMpa.Value, wheel?.HardnessMpa.Value ?? double.PositiveInfinity);
        double spotMm = Math.Sqrt(forceN / (Math.PI * hardness));
        double other = wheel?.ResistivityNanoOhmM.Value ?? MaterialTable.All.Max(m => m.ResistivityNanoOhmM.Value);
        return (strip.ResistivityNanoOhmM.Value + other) * 1e-6 / (4 * spotMm);
    }

    // The lower of the two voltages; an alloy without a value of its own counts as the softest of the list.
    internal static MaterialValue Softest(Material strip, Material? wheel)
    {
        MaterialValue least = MaterialTable.All.Select(m => m.SofteningV).OfType<MaterialValue>().MinBy(v => v.Value)!;
        MaterialValue Of(Material? m) => m?.SofteningV ?? least with { Source = $"no value is known for {m?.Designation ?? "the wheel's alloy"}, so the least of the list stands: {least.Source}" };
        MaterialValue a = Of(strip);
        MaterialValue b = Of(wheel);
        return a.Value <= b.Value ? a : b;
    }

    // ∫ ds/w over a linear taper is the length over this mean; near equal widths the series keeps the digits.
    private static double LogMean(double a, double b)
    {
        double ratio = (b - a) / a;
        const double series = 1e-4;
        return Math.Abs(ratio) < series ? a * (1 + (ratio / 2) - (ratio * ratio / 12)) : (b - a) / Math.Log(b / a);
    }
}
