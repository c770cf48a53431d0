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
        foreach (CheckedValue name in interlock.Items("never_on").Concat(interlock.Items("always_on")))
        {
            Refers(name, "load", loads);
        }

        foreach (CheckedValue name in interlock.Items("while_open").Concat(interlock.Items("while_closed")))
        {
            Contact(name);
        }

        foreach (CheckedValue name in interlock.Items("while_closed"))
        {
            if (interlock.Items("while_open").Any(o => o.Text is not null && string.Equals(o.Text, name.Text, StringComparison.Ordinal)))
            {
                Wrong(name.Place, $"\"{name.Text}\" is asked to be open and closed at once", "keep it in one of while_open and while_closed");
            }
        }

        if (interlock.Items("between") is [{ Quantity: { } from }, { Quantity: { } to }] part && (from.InBaseUnit - to.InBaseUnit) % 360 == 0)
        {
            Wrong(part[1].Place, "the part of the turn ends where it starts", "let it end elsewhere, or leave 'between' out for the whole turn");
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

    private void Step(CheckedTable step)
    {
        IReadOnlyList<string> inputs = NamesOf("input");
        foreach (CheckedValue name in step.Items("close").Concat(step.Items("open")))
        {
            Refers(name, "input", inputs);
        }

        if (!step.Has("close") && !step.Has("open"))
        {
            Wrong(step.Place, "this step changes nothing", "write close = [\"thermostat\"] or open = [\"thermostat\"] in it");
        }

        foreach (CheckedValue name in step.Items("open").Where(o => step.Items("close").Any(c => c.Text is not null && string.Equals(c.Text, o.Text, StringComparison.Ordinal))))
        {
            Wrong(name.Place, $"\"{name.Text}\" closes and opens in the same step", "keep one of the two, or write two steps");
        }
    }
}
