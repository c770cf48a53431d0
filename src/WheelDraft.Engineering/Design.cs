namespace WheelDraft.Engineering;

/// <summary>A brief worked out and judged: everything that reports and drawings need. Immutable.</summary>
/// <remarks>The stages, in order; each takes the whole result of those before it: motion, programme, contacts, open-contact
/// rules, wheel, open contacts, solids, findings.</remarks>
public sealed record Design
{
    /// <summary>What was asked.</summary>
    public required Brief Brief { get; init; }

    /// <summary>The turning.</summary>
    public required Motion Motion { get; init; }

    /// <summary>When each output is on.</summary>
    public required Programme Programme { get; init; }

    /// <summary>The wheel.</summary>
    public required WheelLayout Wheel { get; init; }

    /// <summary>Where the wheel may come to rest.</summary>
    public required IReadOnlyList<ParkedInterval> Parked { get; init; }

    /// <summary>How far each contact opens, by output in file order; outputs that are always on are left out.</summary>
    public required IReadOnlyList<OpenContact> OpenContacts { get; init; }

    /// <summary>The conductive solids.</summary>
    public required IReadOnlyList<Solid> Solids { get; init; }

    /// <summary>Everything that the person should know, in the order of the stages.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Whether nothing misses.</summary>
    public bool Meets => Findings.All(f => f.Severity != FindingSeverity.Error);

    /// <summary>Works out a brief.</summary>
    /// <exception cref="DesignRefusedException">It cannot be built as asked: every reason of the stage that refused.</exception>
    public static Design Of(Brief brief)
    {
        ArgumentNullException.ThrowIfNull(brief);
        Motion motion = Motion.Of(brief);
        Programme programme = Programme.Of(brief, motion);
        double WorkingV(int output) => brief.Supply.VoltageV;
        OpenContactRequirements rules = OpenContactRequirements.Of(brief, WorkingV);
        WheelLayout wheel = new WheelTask(brief, motion, programme, WiperContacts.Of(brief), rules.Distances).Set();
        IReadOnlyList<ParkedInterval> parked = [new(brief.Drive.Coast.LeastRad, brief.Drive.Coast.MostRad - brief.Drive.Coast.LeastRad)];
        OpenContactMeter gaps = OpenContactMeter.Of(brief, motion, wheel);
        IReadOnlyList<OpenContact> open = [.. brief.Outputs
            .Select((_, i) => gaps.Of(i, rules.Outputs[i], WorkingV(i), parked))
            .OfType<OpenContact>()];
        return new Design
        {
            Brief = brief,
            Motion = motion,
            Programme = programme,
            Wheel = wheel,
            Parked = parked,
            OpenContacts = open,
            Solids = WheelSolids.Of(brief, wheel),
            Findings = wheel.Findings,
        };
    }
}
