using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Loads, interlocks and scenarios.</summary>
internal sealed class CircuitRules(CheckedTable root, DiagnosticList diagnostics) : RuleBase(root, diagnostics)
{
    /// <inheritdoc/>
    public override void Check()
    {
        foreach (CheckedTable load in Root.Tables("load").Append(Root.Table("drive_motor")).OfType<CheckedTable>())
        {
            Load(load);
        }

        foreach (CheckedTable interlock in Root.Tables("interlock"))
        {
            Interlock(interlock);
        }

        if (Root.Tables("scenario").Skip(Budgets.Scenarios).FirstOrDefault() is { } surplus)
        {
            Wrong(surplus.Place, $"the file has more than {Budgets.Scenarios} scenarios", $"each is a drawing of its own; keep at most {Budgets.Scenarios} in a file");
        }

        foreach (CheckedTable scenario in Root.Tables("scenario"))
        {
            Scenario(scenario);
        }
    }

    private void Load(CheckedTable load)
    {
        if (load.Has("resistance") && load.Has("power_factor"))
        {
            Wrong(load.KeyPlaceOf("power_factor"), "'power_factor' is given beside 'resistance'", "write reactance = \"100 ohm\" instead, or leave it out");
        }

        if (load.Quantity("pull_in") is { } pullIn && load.Quantity("drop_out") is { } dropOut && dropOut.InBaseUnit >= pullIn.InBaseUnit)
        {
            string key = load.Has("drop_out") ? "drop_out" : "pull_in";
            Wrong(
                load.PlaceOf(key),
                $"'drop_out' is {QuantityText.Plain(dropOut.InBaseUnit * 100)} %, not below 'pull_in' of {QuantityText.Plain(pullIn.InBaseUnit * 100)} %",
                "a load drops out at a lower voltage than it pulls in at");
        }
    }

    private void Interlock(CheckedTable interlock)
    {
        string[] loads = [.. NamesOf("load"), .. Root.Has("drive_motor") ? new[] { "motor" } : []];
        foreach (CheckedValue name in interlock.Items("never_on").Concat(interlock.Items("always_on")).Concat(interlock.Items("never_together")))
        {
            Refers(name, "load", loads);
        }

        Together(interlock.Items("never_together"));
        foreach (CheckedValue name in interlock.Items("while_open").Concat(interlock.Items("while_closed")))
        {
            Contact(name);
        }

        foreach (CheckedValue name in interlock.Items("while_true").Concat(interlock.Items("while_false")))
        {
            Refers(name, "input", NamesOf("input"));
        }

        NeverBoth(interlock, "while_closed", "while_open", "open and closed");
        NeverBoth(interlock, "while_true", "while_false", "false and true");
        if (interlock.Items("between") is [{ Quantity: { } from }, { Quantity: { } to }] part && (from.InBaseUnit - to.InBaseUnit) % 360 == 0)
        {
            Wrong(part[1].Place, "the part of the turn ends where it starts", "let it end elsewhere, or leave 'between' out for the whole turn");
        }
    }

    // One load named twice would ask of it alone what is meant of two.
    private void Together(IReadOnlyList<CheckedValue> names)
    {
        for (int i = 1; i < names.Count; i++)
        {
            if (names.Take(i).Any(n => n.Text is not null && string.Equals(n.Text, names[i].Text, StringComparison.Ordinal)))
            {
                Wrong(names[i].Place, $"\"{names[i].Text}\" is named twice", "name each load once; never_together asks that they are not all on at once");
            }
        }
    }

    private void NeverBoth(CheckedTable interlock, string first, string second, string words)
    {
        foreach (CheckedValue name in interlock.Items(first))
        {
            if (interlock.Items(second).Any(o => o.Text is not null && string.Equals(o.Text, name.Text, StringComparison.Ordinal)))
            {
                Wrong(name.Place, $"\"{name.Text}\" is asked to be {words} at once", $"keep it in one of {second} and {first}");
            }
        }
    }

    private void Contact(CheckedValue name)
    {
        IReadOnlyList<string> inputs = NamesOf("input");
        IReadOnlyList<string> outputs = NamesOf("output");
        if (Refers(name, "input or output", [.. inputs, .. outputs]) && name.Text is { } text
            && inputs.Contains(text, StringComparer.Ordinal) && outputs.Contains(text, StringComparer.Ordinal))
        {
            Wrong(name.Place, $"\"{text}\" is the name of an input and of an output", "give one of the two another name, so that it is clear which contact is meant");
        }
    }

    private void Scenario(CheckedTable scenario)
    {
        Quantity? before = null;
        foreach (CheckedTable step in scenario.Tables("steps"))
        {
            Step(step);
            if (step.Quantity("at") is not { } at)
            {
                continue;
            }

            if (before is { } earlier && at.InBaseUnit < earlier.InBaseUnit)
            {
                Wrong(step.PlaceOf("at"), $"a step at {QuantityText.Plain(at.InBaseUnit)} s stands after one at {QuantityText.Plain(earlier.InBaseUnit)} s", "write the steps in time order");
            }

            if (scenario.Quantity("duration") is { } duration && at.InBaseUnit > duration.InBaseUnit)
            {
                Wrong(step.PlaceOf("at"), $"a step at {QuantityText.Plain(at.InBaseUnit)} s lies after the end at {QuantityText.Plain(duration.InBaseUnit)} s", "make the duration longer, or the step earlier");
            }

            before = at;
        }
    }

    private static readonly string[] CamSteps = ["block", "free", "latch", "unlatch"];

    private void Step(CheckedTable step)
    {
        IReadOnlyList<string> inputs = NamesOf("input");
        foreach (CheckedValue name in step.Items("close").Concat(step.Items("open")))
        {
            Refers(name, "input", inputs);
        }

        if (!step.Has("close") && !step.Has("open") && !CamSteps.Any(step.Has))
        {
            Wrong(step.Place, "this step changes nothing", "write close = [\"thermostat\"] or open = [\"thermostat\"] in it, or block, free, latch or unlatch for the lever of a cam");
        }

        foreach (CheckedValue name in step.Items("open").Where(o => step.Items("close").Any(c => c.Text is not null && string.Equals(c.Text, o.Text, StringComparison.Ordinal))))
        {
            Wrong(name.Place, $"\"{name.Text}\" closes and opens in the same step", "keep one of the two, or write two steps");
        }
    }
}
