using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>All strips of a design: formed, sprung and in place.</summary>
/// <remarks>API: <c>StripSet.Of(brief, rings)</c> after the wheel layout; <c>StripContact</c> before it.
/// Collisions with what turns are asked of <see cref="StripCollisions"/> once the wheel's solids are known.</remarks>
public sealed record StripSet
{
    /// <summary>The strips in file order.</summary>
    public required IReadOnlyList<PlacedStrip> Strips { get; init; }

    /// <summary>Friction torque of all wipers against the motor; null when the brief gives no friction.</summary>
    public FrictionTorque? Friction { get; init; }

    /// <summary>What the person should know, the strips' own findings included, in file order.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>All strips' solids, those of the positions of wipers that ride lower while their outputs are open among them.</summary>
    public IEnumerable<Solid> Solids => Strips.SelectMany(s => s.AllSolids);

    /// <summary>The strip whose contact rides on a ring at a station; null when none is given there.</summary>
    /// <param name="ringRadiusMm">Radius of the ring.</param>
    /// <param name="stationRad">The station.</param>
    public PlacedStrip? At(double ringRadiusMm, double stationRad) =>
        Strips.FirstOrDefault(s => s.Ring is RingPlace place && place.RadiusMm == ringRadiusMm && place.StationRad == stationRad);

    /// <summary>Forms and places every strip of a brief.</summary>
    /// <param name="brief">The whole brief.</param>
    /// <param name="rings">Where the wheel layout has put rings and stations.</param>
    /// <param name="currents">Currents of the solved circuit; null when it was not solved: then no figure is given that needs them.</param>
    /// <exception cref="DesignRefusedException">A strip cannot be made or placed as asked; every reason of every strip.</exception>
    public static StripSet Of(Brief brief, RingPlaces rings, CircuitCurrents? currents = null)
    {
        ArgumentNullException.ThrowIfNull(brief);
        return Of(new StripSprings(brief), rings, currents);
    }

    /// <summary>The same, with springs that may have been worked out before.</summary>
    /// <param name="springs">The springs.</param>
    /// <param name="rings">Where the wheel layout has put rings and stations.</param>
    /// <param name="currents">Currents of the solved circuit; null when it was not solved.</param>
    /// <param name="clearanceMm">What a net must keep from the wheel's copper, mm: how far the nose of a folded contact reaches; null for nothing.</param>
    /// <param name="before">The same strips before their currents were known, whose solids they have; null when there are none.</param>
    internal static StripSet Of(StripSprings springs, RingPlaces rings, CircuitCurrents? currents = null, Func<string, double>? clearanceMm = null, StripSet? before = null)
    {
        ArgumentNullException.ThrowIfNull(rings);
        Brief brief = springs.Brief;
        List<Finding> reasons = [];
        List<PlacedStrip> strips = [];
        for (int i = 0; i < brief.Strips.Count; i++)
        {
            StripForm? form = springs.Form(i, reasons);
            StripStation? station = StationOf(brief, rings, i, reasons) is { } found ? found with { ClearanceMm = found.Ring is null ? 0 : clearanceMm?.Invoke(found.Net) ?? 0 } : null;
            if (form is not null && station is not null && new StripSetting(springs, form, station, StripCurrent.Of(brief, currents, brief.Strips[i].Task)) { Before = before?.Strips[i] }.Place(reasons) is PlacedStrip placed)
            {
                strips.Add(placed);
            }
        }

        if (reasons.Count > 0)
        {
            throw new DesignRefusedException(reasons);
        }

        FrictionTorque? friction = FrictionTorque.Of(brief, strips);
        return new StripSet
        {
            Strips = strips,
            Friction = friction,
            Findings = [.. strips.SelectMany(s => s.Findings), .. friction?.Findings(brief) ?? []],
        };
    }

    // What a strip serves, with everything that the serving needs; null with a reason when it cannot be found.
    private static StripStation? StationOf(Brief brief, RingPlaces rings, int index, List<Finding> reasons)
    {
        StripBrief strip = brief.Strips[index];
        try
        {
            switch (strip.Task)
            {
                case ServesFeed when brief.Feed is FeedBrief feed && rings.Feed is RingPlace ring:
                    return new StripStation(feed.Net, StripContact.OfFeed(brief), ring) { SidePlayMm = feed.SidePlayMm };
                case ServesOutput serves:
                    int output = Enumerable.Range(0, brief.Outputs.Count).FirstOrDefault(o => string.Equals(brief.Outputs[o].Name, serves.Output, StringComparison.OrdinalIgnoreCase), -1);
                    RingPlace? place = output < 0 ? null : serves.IsReturn ? rings.Returns.ElementAtOrDefault(output) : rings.Outputs.ElementAtOrDefault(output);
                    if (place is not null)
                    {
                        OutputBrief of = brief.Outputs[output];
                        string net = serves.IsReturn ? of.ReturnNet ?? of.Net : of.Net;
                        return new StripStation(net, StripContact.OfOutput(brief, output, serves.IsReturn), place)
                        {
                            Adjust = of.Adjust,
                            SidePlayMm = of.SidePlayMm,
                            StepMm = of.On.Periods is null ? 0 : brief.Carrier.StepMm,
                        };
                    }

                    break;
                case ServesNet plain:
                    return new StripStation(plain.Net, null, null) { Tip = plain.Tip };
                default:
                    break;
            }
        }
        catch (DesignRefusedException refused)
        {
            reasons.AddRange(refused.Reasons.Where(r => !reasons.Contains(r)));
            return null;
        }

        string what = strip.Task is ServesOutput o ? $"output \"{o.Output}\"{(o.IsReturn ? " (return)" : "")}" : "a feed";
        reasons.Add(Finding.Error("strip.task", $"strip \"{strip.Name}\" serves {what}, which this wheel does not have", brief.PlaceOf(string.Create(CultureInfo.InvariantCulture, $"strip[{index}]"))));
        return null;
    }
}

/// <summary>Friction of all wipers on the wheel, N·m, and what the motor has against it.</summary>
/// <remarks>The torque of a small synchronous motor is taken to fall with the square of its voltage, because nothing better is known (common
/// practice, no source; one whose rotor is a magnet falls less).</remarks>
/// <param name="LeastNm">With the least coefficient and forces, worn and on the carrier or the copper, whichever is less.</param>
/// <param name="MostNm">With the greatest coefficient and forces.</param>
/// <param name="MotorNm">Rated torque of the motor at the wheel; null when not given.</param>
public sealed record FrictionTorque(double LeastNm, double MostNm, double? MotorNm)
{
    // What is wanted over the greatest friction for gears, starting and age (common practice, no source).
    private const double WantedFactor = 2;

    /// <summary>Torque of the motor at the lowest supply voltage, N·m; null when not given.</summary>
    public double? MotorAtLowestNm { get; init; }

    internal static FrictionTorque? Of(Brief brief, IReadOnlyList<PlacedStrip> strips)
    {
        if (brief.Drive.Friction is not FrictionBand band)
        {
            return null;
        }

        double step = brief.Carrier.StepMm;
        double Sum(Func<StripSpring, double> force) => strips.Where(s => s.Ring is not null).Sum(s => force(s.Spring!) * (s.Ring!.RadiusMm / 1000));
        double low = 1 - brief.Supply.VoltageToleranceShare;
        return new FrictionTorque(
            band.Least * Sum(s => Math.Max(0, s.LeastForceN - (step * s.StiffnessNPerMm))),
            band.Most * Sum(s => s.MostForceN),
            brief.Drive.TorqueNm)
        {
            MotorAtLowestNm = brief.Drive.TorqueNm * low * low,
        };
    }

    internal IEnumerable<Finding> Findings(Brief brief)
    {
        if (MotorAtLowestNm is not double motor)
        {
            yield break;
        }

        string at = brief.Supply.VoltageToleranceShare > 0 ? string.Create(CultureInfo.InvariantCulture, $" at {100 * (1 - brief.Supply.VoltageToleranceShare):0.#} % of its voltage (taken to fall with its square)") : "";
        string has = string.Create(CultureInfo.InvariantCulture, $"Friction of all wipers is {LeastNm * 1000:0.###} to {MostNm * 1000:0.###} mN m, the motor gives {motor * 1000:0.###} mN m{at}");
        TextPlace place = brief.PlaceOf("drive.torque");
        if (LeastNm >= motor)
        {
            yield return Finding.Error("strip.torque", $"{has}: it cannot turn the wheel. Lower the forces, or take a stronger motor.", place);
        }
        else if (MostNm >= motor)
        {
            yield return Finding.Error("strip.torque", $"{has}: it may stall. Lower the forces, hold them closer, or take a stronger motor.", place);
        }
        else if (WantedFactor * MostNm > motor)
        {
            yield return Finding.Warning("strip.torque", string.Create(CultureInfo.InvariantCulture, $"{has}: less than {WantedFactor:0} times the greatest, which is usually kept for gears, starting and age (common practice, no source)."), place);
        }
    }
}
