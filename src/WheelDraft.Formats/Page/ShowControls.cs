using WheelDraft.Engineering;
using WheelDraft.Formats.Svg;

namespace WheelDraft.Formats.Page;

/// <summary>What a reader can switch, and what answers: inputs, faults, lamps, interlocks.</summary>
internal static class ShowControls
{
    private const string Lamp =
        "<svg viewBox=\"-14 -14 28 28\" aria-hidden=\"true\"><path class=\"rays\" d=\"M0 -13V-10M0 13V10M-13 0H-10M13 0H10M-9.2 -9.2L-7.1 -7.1M9.2 9.2L7.1 7.1M-9.2 9.2L-7.1 7.1M9.2 -9.2L7.1 -7.1\"/><circle class=\"glass\" r=\"7.5\"/><path class=\"cross\" d=\"M-5.3 -5.3L5.3 5.3M-5.3 5.3L5.3 -5.3\"/><text class=\"query\" y=\"4\">?</text></svg>";

    // A machine, not a lamp: the sign of a motor, and an arrow round it while it turns (IEC 60617, from memory).
    private const string Motor =
        "<svg viewBox=\"-14 -14 28 28\" aria-hidden=\"true\"><circle class=\"case\" r=\"8.4\"/><text class=\"letter\" y=\"3.6\">M</text><path class=\"turns\" d=\"M-9.9 -6.5A11.8 11.8 0 0 1 9.9 -6.5M10.6 -10.6L9.9 -6.5L5.9 -7.4\"/><text class=\"query\" x=\"10.5\" y=\"-5.5\">?</text></svg>";

    /// <summary>One checkbox an input.</summary>
    public static string Inputs(Design design)
    {
        Markup html = new();
        IReadOnlyList<string> free = design.Circuit.Inputs;
        for (int i = 0; i < free.Count; i++)
        {
            if (design.Circuit.IsHold(i))
            {
                html.Put($"<div class=\"input\"><label><input type=\"checkbox\" data-input=\"{i}\" autocomplete=\"off\"><span>{SvgMarkup.Escaped(free[i])}</span></label></div>\n");
                continue;
            }

            InputBrief input = design.Brief.Inputs.First(b => string.Equals(b.Name, free[i], StringComparison.Ordinal));
            string when = input.ClosedWhen is null ? "" : FormattableString.Invariant($" aria-describedby=\"input-{i}-when\"");
            html.Put($"<div class=\"input\"><label><input type=\"checkbox\" data-input=\"{i}\" autocomplete=\"off\"{when}><span>{SvgMarkup.Escaped(input.Name)} closed</span></label>");
            if (input.ClosedWhen is string words)
            {
                html.Put($"<p id=\"input-{i}-when\">closed when {SvgMarkup.Escaped(words)}</p>");
            }

            html.Add("</div>\n");
        }

        return free.Count == 0 ? "<p class=\"none\">This timer has no inputs.</p>" : html.ToString();
    }

    /// <summary>One lamp a load; the motor, last, is drawn as a motor.</summary>
    public static string Lamps(CircuitNetwork network)
    {
        Markup html = new();
        for (int l = 0; l < network.Loads.Count; l++)
        {
            string name = SvgMarkup.Escaped(network.Loads[l].Name);
            bool isMotor = l == network.Motor;
            html.Put($"<div class=\"lamp {(isMotor ? "motor " : "")}off\" role=\"status\" data-load=\"{l}\" aria-label=\"{name} off\">{(isMotor ? Motor : Lamp)}<span class=\"name\">{name}</span><span class=\"state\">off</span><span class=\"volts\"></span></div>\n");
        }

        return network.Loads.Count == 0 ? "<p class=\"none\">This timer has no loads.</p>" : html.ToString();
    }

    /// <summary>One switch a fault, in groups.</summary>
    public static string Faults(Design design)
    {
        Markup html = new();
        IReadOnlyList<CircuitFault> faults = ShowData.Faults(design);
        foreach ((string title, CircuitFaultKind[] kinds) in Groups)
        {
            int[] own = [.. Enumerable.Range(0, faults.Count).Where(f => kinds.Contains(faults[f].Kind))];
            if (own.Length == 0)
            {
                continue;
            }

            html.Put($"<fieldset><legend>{title}</legend>\n");
            foreach (int f in own)
            {
                html.Put($"<label><input type=\"checkbox\" role=\"switch\" data-fault=\"{f}\" autocomplete=\"off\">{SvgMarkup.Escaped(faults[f].Words)}</label>\n");
            }

            html.Add("</fieldset>\n");
        }

        return html.ToString();
    }

    /// <summary>What is claimed, what was proved, and how it stands at this instant.</summary>
    public static string Interlocks(Design design)
    {
        Markup html = new();
        for (int i = 0; i < design.Brief.Interlocks.Count; i++)
        {
            InterlockResult result = design.Circuit.Interlocks[i];
            (string look, string verdict) = result.Verdict switch
            {
                InterlockVerdict.Holds when !result.Applies => ("unsure", "<span class=\"tick\" aria-hidden=\"true\">? </span>never asks anything"),
                InterlockVerdict.Holds => ("meets", "<span class=\"tick\" aria-hidden=\"true\">✓ </span>proved"),
                InterlockVerdict.Fails => ("misses", "<span aria-hidden=\"true\">✕ </span>refuted"),
                _ => ("unsure", "<span aria-hidden=\"true\">? </span>undecided"),
            };

            // A proof says for which faults it is one, so that it stays true when the reader sets some.
            string depth = result.Verdict != InterlockVerdict.Holds ? "" : design.Brief.Interlocks[i].Faults == FaultDepth.Single ? " with any one fault" : " without faults";
            html.Put($"<article class=\"interlock\" data-interlock=\"{i}\"><h3>{SvgMarkup.Escaped(result.Name)}</h3><p class=\"badge {look}\">{verdict}{depth}</p><p>{SvgMarkup.Escaped(Claim(design.Brief.Interlocks[i]))}</p>{Blindness(result)}");
            if (result.History.Count > 0)
            {
                html.Put($"<ol>{string.Concat(result.History.Select(h => $"<li>{SvgMarkup.Escaped(h)}</li>"))}</ol>");
            }

            html.Add("<p class=\"now\"></p></article>\n");
        }

        return design.Brief.Interlocks.Count == 0 ? "<p class=\"none\">No interlock is claimed.</p>" : html.ToString();
    }

    private static readonly (string Title, CircuitFaultKind[] Kinds)[] Groups =
    [
        ("Contacts", [CircuitFaultKind.ContactWelded, CircuitFaultKind.ContactNeverMade, CircuitFaultKind.FeedOpen]),
        ("Inputs", [CircuitFaultKind.InputStuckClosed, CircuitFaultKind.InputStuckOpen, CircuitFaultKind.LeverStuckUp, CircuitFaultKind.LeverStuckDown]),
        ("Loads and motor", [CircuitFaultKind.LoadOpen, CircuitFaultKind.LoadShorted, CircuitFaultKind.MotorStalled, CircuitFaultKind.MotorReversed]),
        ("Supply and nets", [CircuitFaultKind.NeutralOpen, CircuitFaultKind.NetEarthed, CircuitFaultKind.NetsBridged]),
    ];

    private static string Claim(InterlockBrief interlock)
    {
        string loads = string.Join(interlock.Claim == InterlockClaim.NeverOn ? " or " : " and ", interlock.Loads);
        List<string> conditions =
        [
            .. interlock.WhileClosed.Select(c => $"{c} is closed"),
            .. interlock.WhileOpen.Select(c => $"{c} is open"),
            .. interlock.WhileTrue.Select(c => $"what {c} senses is true"),
            .. interlock.WhileFalse.Select(c => $"what {c} senses is false"),
        ];
        if (interlock.Between is { } part)
        {
            conditions.Add($"the wheel is between {Wording.Degrees(part.StartRad)} and {Wording.Degrees(Geometry.Angles.InTurn(part.EndRad))}");
        }

        string claim = interlock.Claim switch
        {
            InterlockClaim.NeverOn => $"{loads}: never on",
            InterlockClaim.AlwaysOn => $"{loads}: always on",
            _ => $"{loads}: never all on at once",
        };
        string faults = interlock.Faults == FaultDepth.Single ? ", not even with any one fault" : "";
        return conditions.Count == 0 ? $"{claim}{faults}." : $"{claim} while {string.Join(" and ", conditions)}{faults}.";
    }

    // A condition on a contact is met by what the contact does, so it asks nothing when the sensor is stuck the other way.
    private static string Blindness(InterlockResult result) => result.AsksContactsOf.Count == 0 ? ""
        : $"<p>It asks the contact of {SvgMarkup.Escaped(string.Join(", ", result.AsksContactsOf))}: it says nothing of a sensor that is stuck.</p>";
}
