using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Wheel, shaft, bore and what goes with the construction.</summary>
internal sealed class WheelRules(CheckedTable root, DiagnosticList diagnostics) : RuleBase(root, diagnostics)
{
    /// <inheritdoc/>
    public override void Check()
    {
        if (Root.Table("wheel") is not { } wheel)
        {
            return;
        }

        Shaft(wheel);
        Bore(wheel);
        Step(wheel);
        if (wheel.Text("construction") is { } construction)
        {
            bool lands = string.Equals(construction, "lands", StringComparison.Ordinal);
            Construction(wheel, lands);
            Order(wheel, lands);
        }
    }

    /// <summary>Whether a list of rings names each of them once.</summary>
    private void Order(CheckedTable wheel, bool lands)
    {
        string[] rings = [.. lands ? [] : new[] { FeedBrief.NameInOrder }, .. NamesOf("output")];
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (CheckedValue item in wheel.Items("order"))
        {
            if (Refers(item, "ring", rings) && item.Text is { } name && !seen.Add(name))
            {
                Wrong(item.Place, $"ring \"{name}\" stands twice in the order", "each ring has one place");
            }
        }

        bool searched = wheel.Is("order", "auto");
        if (!searched && (!wheel.Has("order") || wheel.Items("order").Any(i => i.Text is null)))
        {
            return;
        }

        if (!lands && Root.Tables("output").FirstOrDefault(o => string.Equals(o.Text("name"), FeedBrief.NameInOrder, StringComparison.OrdinalIgnoreCase)) is { } namesake)
        {
            Wrong(namesake.PlaceOf("name"), "an output is called \"feed\", which in [wheel] order is the feed itself", "give the output another name");
        }
        else if (!searched && rings.Where(r => !seen.Contains(r)).ToArray() is { Length: > 0 } missing)
        {
            Wrong(wheel.PlaceOf("order"), $"the order leaves out {Words.And(missing.Select(Words.Quoted))}", "it names every ring once, from the inside outwards");
        }
    }

    private void Shaft(CheckedTable wheel)
    {
        if (wheel.Text("shaft") is not { } shaft)
        {
            return;
        }

        bool insulating = string.Equals(shaft, "insulating", StringComparison.Ordinal);
        if (!insulating && !wheel.Has("shaft_diameter"))
        {
            Wrong(
                wheel.PlaceOf("shaft"),
                $"a shaft that is {shaft} has no 'shaft_diameter', which decides the distance from the wheel to it",
                "write shaft_diameter = \"3 mm\", or shaft = \"insulating\"");
        }
        else if (insulating && wheel.Has("shaft_diameter"))
        {
            Wrong(wheel.KeyPlaceOf("shaft_diameter"), "an insulating shaft has a 'shaft_diameter', the diameter of metal", "leave it out, or say what the metal is, e.g. shaft = \"floating\"");
        }

        bool live = string.Equals(shaft, "live", StringComparison.Ordinal);
        if (live && !wheel.Has("shaft_net"))
        {
            Wrong(wheel.PlaceOf("shaft"), "a live shaft has no 'shaft_net', which decides its voltage to the wheel", "write shaft_net = \"N\"");
        }
        else if (live && wheel.Is("shaft_net", "E"))
        {
            Wrong(wheel.PlaceOf("shaft_net"), "a live shaft is on net \"E\", which is always earth", "write shaft = \"earthed\" without 'shaft_net', or give it the net that it is joined to");
        }
        else if (!live && wheel.Has("shaft_net"))
        {
            Wrong(wheel.KeyPlaceOf("shaft_net"), $"a shaft that is {shaft} has a 'shaft_net'", "leave it out, or write shaft = \"live\"");
        }
    }

    private void Bore(CheckedTable wheel)
    {
        if (wheel.Table("bore")?.Quantity("diameter")?.InBaseUnit is not { } bore)
        {
            return;
        }

        if (wheel.Table("bore")!.Quantity("flat")?.InBaseUnit is { } flat && (flat >= bore || flat <= bore / 2))
        {
            Wrong(wheel.Table("bore")!.PlaceOf("flat"), $"'flat' is {Mm(flat)} in a bore of {Mm(bore)}", $"from the flat to the opposite side it is more than {Mm(bore / 2)} and less than {Mm(bore)}");
        }

        if (wheel.Quantity("shaft_diameter")?.InBaseUnit is { } shaft && shaft > bore)
        {
            Wrong(wheel.PlaceOf("shaft_diameter"), $"'shaft_diameter' is {Mm(shaft)}, more than the bore of {Mm(bore)}", "the metal lies inside the bore");
        }

        if (wheel.Quantity("outer_diameter")?.InBaseUnit is { } outer && outer <= bore)
        {
            Wrong(wheel.PlaceOf("outer_diameter"), $"'outer_diameter' is {Mm(outer)}, no more than the bore of {Mm(bore)}", "make the wheel larger, or write outer_diameter = \"auto\"");
        }
    }

    private void Step(CheckedTable wheel)
    {
        if (Root.Table("carrier") is { } carrier && carrier.Quantity("step")?.InBaseUnit is { } step && wheel.Quantity("thickness")?.InBaseUnit is { } thickness && step > thickness)
        {
            Wrong(carrier.PlaceOf("step"), $"'step' is {Mm(step)}, more than the copper is thick ({Mm(thickness)})", "the copper lies on the carrier or is let into it, so that it stands proud by its thickness at most");
        }
    }

    private void Construction(CheckedTable wheel, bool lands)
    {
        if (lands && Root.Has("feed"))
        {
            Wrong(Root.KeyPlaceOf("feed"), "a lands wheel has a [feed]", "leave it out: with lands each output has a second wiper, return_station and return_net");
        }
        else if (!lands && !Root.Has("feed"))
        {
            Wrong(Root.Place, "a windowed wheel has no [feed], which decides what the wheel is live with", "add [feed] with net, station, contact_length and contact_width");
        }

        if (!lands && !wheel.Has("web"))
        {
            Wrong(wheel.Place, "[wheel] has no 'web', which decides how much copper stays between windows", "write web = \"1.2 mm\"");
        }

        foreach (CheckedTable output in Root.Tables("output"))
        {
            Returns(output, lands);
        }
    }

    private void Returns(CheckedTable output, bool lands)
    {
        foreach ((string key, string decides, string example) in new[]
        {
            ("return_station", "where the second wiper touches", "return_station = \"150 deg\""),
            ("return_net", "what the contact joins", "return_net = \"L\""),
        })
        {
            if (lands && !output.Has(key))
            {
                Wrong(output.Place, $"an output of a lands wheel has no '{key}', which decides {decides}", $"write {example}");
            }
            else if (!lands && output.Has(key))
            {
                Wrong(output.KeyPlaceOf(key), $"'{key}' belongs to a lands wheel", "leave it out: a windowed wheel is fed by its [feed]; or write construction = \"lands\"");
            }
        }

        if (lands && output.Find("return_net")?.Text is { } net && string.Equals(net, output.Text("net") ?? output.Text("name"), StringComparison.Ordinal))
        {
            Wrong(output.PlaceOf("return_net"), $"both wipers of the output are on net \"{net}\"", "the contact joins two different nets");
        }
    }
}
