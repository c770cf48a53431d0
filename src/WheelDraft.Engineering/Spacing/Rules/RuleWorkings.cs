namespace WheelDraft.Engineering;

/// <summary>The steps of one look-up as they are taken, and the confidence that is left after them.</summary>
internal sealed class RuleWorkings
{
    private readonly List<string> _steps;

    /// <summary>Begins a look-up.</summary>
    public RuleWorkings()
        : this([])
    {
    }

    private RuleWorkings(IEnumerable<string> steps) => _steps = [.. steps];

    /// <summary>The steps so far.</summary>
    public IReadOnlyList<string> Steps => _steps;

    /// <summary>Confidence of the weakest thing used so far.</summary>
    public RuleConfidence Confidence { get; private set; }

    /// <summary>Goes on where a requirement left off.</summary>
    public static RuleWorkings After(Requirement requirement) => new(requirement.Steps) { Confidence = requirement.Confidence };

    /// <summary>Records a step.</summary>
    public void Note(string step) => _steps.Add(step);

    /// <summary>Records what something used is worth.</summary>
    public void Trust(RuleConfidence confidence) => Confidence = (RuleConfidence)Math.Max((int)Confidence, (int)confidence);
}
