using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>How the sheets of a design are drawn.</summary>
public sealed record SheetOptions
{
    /// <summary>As usual: at home, callouts in words.</summary>
    public static SheetOptions Usual { get; } = new();

    /// <summary>The moment that assembly, timing chart and wiring diagram show, and that gets a sheet of its own; null for none.</summary>
    public CircuitMoment? Moment { get; init; }

    /// <summary>What callouts of wheel and assembly say.</summary>
    public CalloutMarks Callouts { get; init; }

    /// <summary>The moment as a design's drawings show it, or null.</summary>
    internal MomentView? MomentOf(Design design) => Moment is CircuitMoment moment ? new MomentView(design, moment) : null;
}
