using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>What a design leaves out that could have been evaluated, and what no design is checked for.</summary>
internal static class NotEvaluated
{
    /// <summary>What no report of this program looks at.</summary>
    public static IReadOnlyList<string> NotChecked { get; } =
    [
        "solid insulation, and distances through it",
        "wiring, and terminals with their receptacles on",
        "breaking capacity, arcing and the life of contacts that break",
        "what a motor feeds back into its net while it runs on, and any other supply from a load",
        "temperature of enclosures, motor and carrier",
        "mechanical strength of carrier, webs and fixings",
        "access to live parts with the test finger",
        "creepage round the edge of a surface and over its other side",
    ];

    /// <summary>In words, in fixed order.</summary>
    public static IReadOnlyList<string> Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        Brief brief = design.Brief;
        List<string> all = [];
        void When(bool present, string words)
        {
            if (present)
            {
                all.Add(words);
            }
        }

        When(brief.Strips.Count == 0, "strips: none are given, so forces, blanks and spacing to arms and terminals are not worked out");
        When(!brief.FeedsAnything, "circuit: no loads and no motor are given, so working voltages are the highest of the supply's, and currents are not known");
        When(brief.Supply.VoltageToleranceShare == 0, "supply voltage other than nominal: no voltage_tolerance is given, so 0 is assumed, and loads and currents are judged at the nominal voltage alone");
        When(brief.Parts.Count == 0, "parts near the wheel: none are given, so spacing to housing, motor and screws is not measured");
        When(brief.Drive.Friction is not null && brief.Strips.Count == 0, "friction torque: it needs strips, whose forces make it");
        When(brief.Drive.Friction is null && brief.Strips.Count > 0, "friction: none is given, so torque against the motor, the drag in contact forces and the wind-up of contacts are not worked out");
        When(brief.Cams.Count > 0, "levers of cams: lever, spring and contact are no solids, so no distance to them is measured, and whether a lever runs into a strip or a part is not looked at; give what conducts a [[part]] where it comes nearest");
        When(brief.Cams.Count > 0, "falling levers: rebound, friction of the pivot and noise are not worked out; the time to fall is that of press and inertia alone");
        When(brief.Drive.Friction is not null && brief.Drive.TorqueNm is null && brief.Strips.Count > 0, "torque of the motor: none is given, so friction is not judged against it");
        When(brief.Scenarios.Count > 0, "scenarios: each is one history, drawn in draw/run-….svg and told by the command run; what this report says of the circuit holds in every reachable state, whether a scenario meets it or not");
        return all;
    }
}
