namespace WheelDraft.Engineering;

/// <summary>The stages of a design, one line each. What its circuit asks of its spacing, and what its spacing may do to its circuit, meet here.</summary>
/// <param name="brief">The brief.</param>
/// <param name="mostRounds">Most rounds of layout; if it takes more, the design says so.</param>
internal sealed class DesignStages(Brief brief, int mostRounds = DesignStages.MostRounds)
{
    // Tolerances may bring states about that exact edges do not, and with them a higher working voltage: then everything is
    // laid out again with it. Voltages only ever rise, over a finite set of states, so this ends; two rounds are usual. If it has not
    // ended after the most rounds, the layout was made for lower voltages than it has, and that is an error.
    private const int MostRounds = 8;

    /// <summary>Who attends to what takes long.</summary>
    public LongWork Attend { get; init; } = LongWork.Unattended;

    /// <summary>Whether only what is judged is worked out: no remedies of what misses, and no notes for the shop.</summary>
    public bool OnlyJudges { get; init; }

    /// <summary>Strips that were worked out before; null for none.</summary>
    public StripMemory? Memory { get; init; }

    /// <summary>Bands of strips that were found before; null for none.</summary>
    public BandMemory? Bands { get; init; }

    /// <summary>The circuit with exact edges, where other briefs with the same times, loads and inputs have shared it; null to work it out.</summary>
    public Lazy<CircuitAnalysis>? Exact { get; init; }

    private readonly Motion _motion = Motion.Of(brief);
    private readonly IReadOnlyList<CamLayout> _cams = CamSetter.Of(brief, Motion.Of(brief));

    private StripSprings Springs => field ??= new(brief, Memory, Bands);

    private IReadOnlyList<LeverSchedule> Levers => [.. _cams.Select(c => c.Contact).OfType<LeverSchedule>()];

    public Design Run()
    {
        Programme programme = Programme.Of(brief, _motion);
        WiperContacts contacts = WiperContacts.Of(Springs);
        VoltageBook voltages = new(brief, Exact?.Value ?? ExactCircuit());
        for (int round = 1; ; round++)
        {
            Design design = Round(programme, contacts, voltages);
            IReadOnlyList<(WorkingVoltage Pair, double BeforeV)> rises = voltages.Raise(design.Circuit);
            if (rises.Count == 0)
            {
                return design;
            }

            if (round == mostRounds)
            {
                return design with { Findings = [.. design.Findings, StillRising(rises, round)] };
            }
        }
    }

    /// <summary>The wheel alone, with the voltages of exact edges, and what strips must keep from its copper.</summary>
    public (WheelLayout Wheel, CopperClearances Clearances) WheelOnly()
    {
        Programme programme = Programme.Of(brief, _motion);
        VoltageBook voltages = new(brief, Exact?.Value ?? ExactCircuit());
        OpenContactRequirements rules = OpenContactRequirements.Of(brief, voltages.AcrossContact);
        WheelLayout wheel = WheelSetter.Of(new WheelTask(brief, _motion, programme, WiperContacts.Of(Springs), rules.Distances) { WorkingV = voltages.Between });
        return (wheel, new(brief, wheel, voltages));
    }

    /// <summary>The circuit with edges exactly where they are asked for.</summary>
    public CircuitAnalysis ExactCircuit() => CircuitAnalysis.Of(new CircuitRequest(brief, WheelContacts.Exact(brief, Programme.Of(brief, _motion))) { Levers = Levers });

    private Design Round(Programme programme, WiperContacts contacts, VoltageBook voltages)
    {
        OpenContactRequirements rules = OpenContactRequirements.Of(brief, voltages.AcrossContact);
        WheelLayout wheel = WheelSetter.Of(new WheelTask(brief, _motion, programme, contacts, rules.Distances) { WorkingV = voltages.Between });
        RingPlaces places = RingPlaces.Of(brief, wheel);
        CopperClearances clearances = new(brief, wheel, voltages);
        StripSet standing = StripSet.Of(Springs, places, clearanceMm: clearances.ToWheelMm);
        IReadOnlyList<AdjustingScrew> screws = new ScrewMaker(brief, wheel, standing).All();
        IReadOnlyList<Solid> solids = [.. WheelSolids.Of(brief, wheel), .. standing.Solids, .. screws.SelectMany(s => s.Solids), .. CamSolids.Conducting(brief, _cams)];
        JudgedSpacing spacing = JudgedSpacing.Of(brief, (wheel, _cams), solids, voltages, seeksRemedies: !OnlyJudges);
        FrictionShifts friction = FrictionShifts.Of(brief, _motion, wheel, standing);
        CircuitAnalysis circuit = CircuitAnalysis.Of(new CircuitRequest(brief, WheelContacts.OnWheel(brief, wheel, friction.MostMm)) { Bridges = spacing.Bridges, Levers = Levers });
        StripSet strips = StripSet.Of(Springs, places, circuit.Currents, clearances.ToWheelMm, standing);
        IReadOnlyList<OpenContact> open = OpenContactMeter.Of(brief, _motion, wheel, friction.MostMm).All(rules, voltages.AcrossContact, circuit.Standing);
        PartList parts = PartList.Of(brief, wheel, strips, screws, Attend, _cams);
        Design design = new()
        {
            Brief = brief,
            Motion = _motion,
            Programme = programme,
            Wheel = wheel,
            Strips = strips,
            Screws = screws,
            Cams = _cams,
            Solids = solids,
            Spacing = spacing.Table,
            Remedies = spacing.Remedies,
            FrictionShifts = friction.Shifts,
            Spreads = new(brief, _motion, wheel, Attend),
            Circuit = circuit,
            OpenContacts = open,
            Parts = parts,
            Assumptions = Assumptions.Of(brief),
            Findings = [],
        };
        return design with { Findings = DesignFindings.Of(design, forShop: !OnlyJudges) };
    }

    private static Finding StillRising(IReadOnlyList<(WorkingVoltage Pair, double BeforeV)> rises, int rounds)
    {
        IEnumerable<string> pairs = rises.Select(r => FormattableString.Invariant($"{r.Pair.First} – {r.Pair.Second} from {r.BeforeV:0.##} V to {r.Pair.VoltageV:0.##} V ({r.Pair.Where})"));
        return Finding.Error(
            "spacing.voltages-rise",
            FormattableString.Invariant($"Working voltages still rose in the last of {rounds} rounds of layout: {string.Join("; ", pairs)}. Distances were asked for the lower voltages, so no verdict on them stands. Edges further apart, or narrower tolerances, let the rounds end."));
    }
}
