namespace WheelDraft.Engineering;

/// <summary>A brief worked out and judged: everything that reports and drawings need. Immutable.</summary>
/// <remarks>The stages, in order; each takes the whole result of those before it: motion, programme, contacts, first look at
/// the circuit for working voltages, wheel, strips, solids, spacing, circuit with tolerances and bridges, open contacts, cut
/// shapes, findings.</remarks>
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

    /// <summary>The wheel's copper as it is cut, piece by piece.</summary>
    public required IReadOnlyList<CutCopper> CutWheel { get; init; }

    /// <summary>The strips, formed, sprung and in place.</summary>
    public required StripSet Strips { get; init; }

    /// <summary>The strips' blanks as they are cut, in the order of <see cref="StripSet.Strips"/>.</summary>
    public required IReadOnlyList<CutCopper> CutStrips { get; init; }

    /// <summary>What friction, which winds arms up, does to the times of outputs with strips.</summary>
    public required IReadOnlyList<FrictionShift> FrictionShifts { get; init; }

    /// <summary>How far each contact opens, by output in file order; outputs that are always on are left out.</summary>
    public required IReadOnlyList<OpenContact> OpenContacts { get; init; }

    /// <summary>The conductive solids.</summary>
    public required IReadOnlyList<Solid> Solids { get; init; }

    /// <summary>Every pair of nets, measured and judged.</summary>
    public required SpacingTable Spacing { get; init; }

    /// <summary>For every row that misses, the smallest changes that would meet; empty when none misses.</summary>
    public required IReadOnlyList<Remedy> Remedies { get; init; }

    /// <summary>The circuit, solved in every state.</summary>
    public required CircuitAnalysis Circuit { get; init; }

    /// <summary>What the design counts on because the file does not say otherwise, in the order of the file.</summary>
    public required IReadOnlyList<Assumption> Assumptions { get; init; }

    /// <summary>Everything that the person should know, in the order of the stages.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Whether nothing misses.</summary>
    public bool Meets => Findings.All(f => f.Severity != FindingSeverity.Error);

    /// <summary>Works out a brief.</summary>
    /// <exception cref="DesignRefusedException">It cannot be built as asked: every reason of the stage that refused.</exception>
    public static Design Of(Brief brief)
    {
        ArgumentNullException.ThrowIfNull(brief);
        return new DesignStages(brief).Run();
    }
}

/// <summary>Runs the stages. What a design's circuit asks of its spacing, and what its spacing may do to its circuit, meet here.</summary>
/// <param name="brief">The brief.</param>
/// <param name="mostRounds">Most rounds of layout; fewer than it takes are told.</param>
internal sealed class DesignStages(Brief brief, int mostRounds = DesignStages.MostRounds)
{
    // Tolerances may bring states about that exact edges do not, and with them a higher working voltage: then everything is
    // laid out again with it. Voltages only ever rise, over a finite set of states, so this ends; two rounds are usual. Should it not
    // have ended after as many, the layout was made for lower voltages than it has, and that is an error.
    private const int MostRounds = 8;

    private readonly Motion _motion = Motion.Of(brief);
    private readonly StripSprings _springs = new(brief);

    public Design Run()
    {
        Programme programme = Programme.Of(brief, _motion);
        WiperContacts contacts = WiperContacts.Of(brief);
        CircuitAnalysis circuit = CircuitAnalysis.Of(new CircuitRequest(brief, WheelContacts.Exact(brief, programme))
        {
            VoltagesUnderFaults = brief.Spacing.VoltagesUnderFaults,
        });
        VoltageBook voltages = new(circuit);
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

    private static Finding StillRising(IReadOnlyList<(WorkingVoltage Pair, double BeforeV)> rises, int rounds)
    {
        IEnumerable<string> pairs = rises.Select(r => FormattableString.Invariant($"{r.Pair.First} – {r.Pair.Second} from {r.BeforeV:0.##} V to {r.Pair.VoltageV:0.##} V ({r.Pair.Where})"));
        return Finding.Error(
            "spacing.voltages-rise",
            FormattableString.Invariant($"Working voltages still rose in the last of {rounds} rounds of layout: {string.Join("; ", pairs)}. Distances were asked for the lower voltages, so no verdict on them stands. Edges further apart, or narrower tolerances, let the rounds end."));
    }

    private Design Round(Programme programme, WiperContacts contacts, VoltageBook voltages)
    {
        double WorkingV(int output) => voltages.Between(WheelContacts.OtherNet(brief, brief.Outputs[output]), brief.Outputs[output].Net);
        OpenContactRequirements rules = OpenContactRequirements.Of(brief, WorkingV);
        WheelLayout wheel = new WheelTask(brief, _motion, programme, contacts, rules.Distances) { WorkingV = voltages.Between }.Set();
        LandNets lands = new(wheel);
        StripSet strips = StripSet.Of(_springs, PlacesOf(wheel), null);
        IReadOnlyList<Solid> solids = [.. WheelSolids.Of(brief, wheel), .. strips.Solids];
        double carrierRadius = (brief.Carrier.DiameterMm ?? wheel.OuterDiameterMm) / 2;
        SpacingTask task = SpacingStage.Task(brief, solids, (a, b) => lands.WorkingV(a, b, voltages.Between), carrierRadius);
        SpacingTable spacing = SpacingStage.Table(brief, task);
        IReadOnlyList<FrictionShift> shifts = FrictionShift.Of(brief, _motion, wheel, strips);
        double WoundMm(int output) => FrictionShift.MostMmOf(shifts, output);
        CircuitAnalysis circuit = CircuitAnalysis.Of(new CircuitRequest(brief, WheelContacts.OnWheel(brief, wheel, WoundMm))
        {
            Bridges = lands.Bridges(SpacingStage.Bridges(spacing)),
            VoltagesUnderFaults = brief.Spacing.VoltagesUnderFaults,
        });
        // Where strips stand does not turn on currents; what they carry does, over the wheel's worst-case edges.
        strips = StripSet.Of(_springs, PlacesOf(wheel), circuit.Currents);
        OpenContactMeter gaps = OpenContactMeter.Of(brief, _motion, wheel, WoundMm);
        IReadOnlyList<OpenContact> open = [.. brief.Outputs
            .Select((_, i) => gaps.Of(i, rules.Outputs[i], WorkingV(i), [.. circuit.Standing.Where(s => s.VoltageAcross.Contains(i))]))
            .OfType<OpenContact>()];
        TextPlace process = brief.PlaceOf("process");
        string Name(CopperPiece piece) => wheel.Feed is null ? $"'{piece.Name}'" : "the wheel";
        IReadOnlyList<CutCopper> cut = [.. wheel.Copper.Select(c => CutCopper.Of(c.Outline, brief.Process, Name(c), process))];
        IReadOnlyList<CutCopper> cutStrips = [.. strips.Strips.Select(s => CutCopper.Of(s.Form.Blank.Outline, brief.Process, NameOf(s), PlaceOf(s)))];
        IEnumerable<Solid> turning = solids.Where(s => s.Turns).Append(WheelSolids.Carrier(brief, carrierRadius));
        IReadOnlyList<Finding> collisions = StripCollisions.Of(
            strips.Strips, [.. turning], _motion.Direction, i => brief.PlaceOf(FormattableString.Invariant($"strip[{i}]")));
        return new Design
        {
            Brief = brief,
            Motion = _motion,
            Programme = programme,
            Wheel = wheel,
            CutWheel = cut,
            Strips = strips,
            CutStrips = cutStrips,
            FrictionShifts = shifts,
            OpenContacts = open,
            Solids = solids,
            Spacing = spacing,
            Remedies = SpacingStage.Remedies(task, spacing),
            Circuit = circuit,
            Assumptions = Assumptions.Of(brief),
            Findings = OnceEach(
            [
                .. wheel.Findings,
                .. strips.Findings,
                .. shifts.SelectMany(s => s.Findings(brief, wheel)),
                .. collisions,
                .. spacing.Findings.Where(f => !SpacingStage.IsToldByCollision(f, collisions)),
                .. open.SelectMany(o => OpenContactFindings.Of(brief, o)),
                .. OwnDistances.Of(brief, spacing, open),
                .. InsulationGrades.Of(brief),
                .. circuit.Findings,
                .. cut.SelectMany((c, i) => CutChecks.Of(c, brief.Process, Name(wheel.Copper[i]), process)),
                .. strips.Strips.SelectMany((s, i) => CutChecks.Of(cutStrips[i], brief.Process, NameOf(s), PlaceOf(s))),
            ]),
        };
    }

    /// <summary>What two stages found alike is told once, where it was found first.</summary>
    private static IReadOnlyList<Finding> OnceEach(IEnumerable<Finding> findings) => [.. findings.Distinct()];

    private static string NameOf(PlacedStrip strip) => $"the blank of strip \"{strip.Form.Strip.Name}\"";

    private TextPlace PlaceOf(PlacedStrip strip) => brief.PlaceOf(FormattableString.Invariant($"strip[{strip.Form.Index}]"));

    private RingPlaces PlacesOf(WheelLayout wheel)
    {
        // A contact is off its ring when it reaches into the bore or over the rim.
        RingPlace PlaceOf(RingLayout ring) =>
            new(ring.RadiusMm, ring.StationRad, brief.Wheel.Bore.DiameterMm / 2, wheel.OuterDiameterMm / 2);
        return new(wheel.Feed is null ? null : PlaceOf(wheel.Feed), [.. wheel.Rings.Select(PlaceOf)])
        {
            Returns = [.. wheel.Rings.Select(r => r.Return is ReturnWiper other ? PlaceOf(r) with { StationRad = other.StationRad } : null)],
        };
    }
}

/// <summary>The working voltage of every pair of nets, the highest that any look at the circuit has found.</summary>
internal sealed class VoltageBook(CircuitAnalysis first)
{
    // Solved voltages agree to rounding; less than this is no rise, V.
    private const double SameV = 1e-6;

    private readonly Dictionary<(string First, string Second), double> _raised = [];

    /// <summary>Working voltage of two nets, V.</summary>
    public double Between(string firstNet, string secondNet)
    {
        (string, string) key = string.CompareOrdinal(firstNet, secondNet) <= 0 ? (firstNet, secondNet) : (secondNet, firstNet);
        return Math.Max(first.WorkingVoltageV(firstNet, secondNet), _raised.GetValueOrDefault(key));
    }

    /// <summary>Takes a later look into account.</summary>
    /// <returns>The pairs whose voltage rose, with what it was before.</returns>
    public IReadOnlyList<(WorkingVoltage Pair, double BeforeV)> Raise(CircuitAnalysis later)
    {
        List<(WorkingVoltage, double)> rises = [];
        foreach (WorkingVoltage pair in later.WorkingVoltages)
        {
            double beforeV = Between(pair.First, pair.Second);
            if (pair.VoltageV > beforeV + SameV)
            {
                _raised[(pair.First, pair.Second)] = pair.VoltageV;
                rises.Add((pair, beforeV));
            }
        }

        return rises;
    }
}
