namespace WheelDraft.Engineering;

/// <summary>A brief worked out and judged: everything that reports and drawings need. Immutable.</summary>
/// <remarks>The stages stand as a list in <see cref="DesignStages"/>; each takes the whole result of those before it.</remarks>
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

    /// <summary>The strips, formed, sprung and in place.</summary>
    public required StripSet Strips { get; init; }

    /// <summary>The adjusting screws whose place the file gives.</summary>
    public IReadOnlyList<AdjustingScrew> Screws { get; init; } = [];

    /// <summary>The cams on the wheel's shaft, in file order.</summary>
    internal IReadOnlyList<CamLayout> Cams { get; init; } = [];

    /// <summary>What is cut: the wheel's copper, a carrier, the strips' blanks.</summary>
    public required PartList Parts { get; init; }

    /// <summary>What friction, which winds up arms, does to the times of outputs with strips.</summary>
    public required IReadOnlyList<FrictionShift> FrictionShifts { get; init; }

    /// <summary>How times and doses are spread; drawn when first asked for.</summary>
    public required TimingSpreads Spreads { get; init; }

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

    /// <summary>Works out a brief as far as it is judged: the same verdicts and figures as <see cref="Of"/>, without remedies, without notes for the shop.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="bands">Bands of strips that may have been found before; null for none.</param>
    /// <exception cref="DesignRefusedException">It cannot be built as asked.</exception>
    internal static Design Judged(Brief brief, BandMemory? bands = null) => new DesignStages(MeasuredCopper.Resolved(brief)) { OnlyJudges = true, Bands = bands }.Run();

    /// <summary>Works out a brief.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="attend">Who attends to what takes long: draws, nesting, worked out when they are first asked for; null for nobody.</param>
    /// <exception cref="DesignRefusedException">It cannot be built as asked: every reason of the stage that refused.</exception>
    public static Design Of(Brief brief, LongWork? attend = null)
    {
        ArgumentNullException.ThrowIfNull(brief);
        Brief resolved = MeasuredCopper.Resolved(brief);
        try
        {
            Design design = new DesignStages(resolved) { Attend = attend ?? LongWork.Unattended }.Run();
            return design with { Findings = ToleranceRemedies.Told(resolved, design.Findings) };
        }
        catch (DesignRefusedException refusal) when (ToleranceRemedies.Concern(refusal.Reasons))
        {
            throw new DesignRefusedException(ToleranceRemedies.Told(resolved, refusal.Reasons));
        }
    }
}
