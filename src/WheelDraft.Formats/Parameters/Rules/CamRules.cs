using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Cams: what goes with a swinging or a sliding lever, what conducts, and what the lever's contact is.</summary>
internal sealed class CamRules(CheckedTable root, DiagnosticList diagnostics) : RuleBase(root, diagnostics)
{
    // Words in the name of a material that conducts: such a cam without a net would be left out of all distances.
    private static readonly string[] Metals = ["steel", "brass", "bronze", "copper", "alumin", "dural", "zinc", "zamak", "iron", "metal", "nickel", "titan", "magnes", "graphite", "carbon fib"];

    /// <inheritdoc/>
    public override void Check()
    {
        IReadOnlyList<CheckedTable> cams = Root.Tables("cam");
        if (cams.Count > Budgets.Cams)
        {
            Wrong(cams[Budgets.Cams].Place, $"the file has more than {Budgets.Cams} cams", $"a timer is set out with at most {Budgets.Cams}");
        }

        HashSet<string> driven = new(StringComparer.Ordinal);
        foreach (CheckedTable cam in cams)
        {
            Follower(cam);
            Units(cam);
            Conducts(cam);
            Upwards(cam);
            if ((cam.Table("lever") ?? cam.Table("slide")) is { } lever)
            {
                LeverConducts(lever);
                Upwards(lever);
            }

            Contact(cam, driven);

            if (cam.Table("bore") is { } bore && bore.Quantity("diameter")?.InBaseUnit is { } diameter && bore.Quantity("flat")?.InBaseUnit is { } flat && (flat >= diameter || flat <= diameter / 2))
            {
                Wrong(bore.PlaceOf("flat"), $"'flat' is {Mm(flat)} in a bore of {Mm(diameter)}", $"from the flat to the opposite side it is more than {Mm(diameter / 2)} and less than {Mm(diameter)}");
            }
        }

        foreach (CheckedTable input in Root.Tables("input"))
        {
            if (cams.Select(c => c.Text("name")).OfType<string>().FirstOrDefault(n => input.Is("name", n + LeverContact.Blocked) || input.Is("name", n + LeverContact.Latched)) is { } cam)
            {
                Wrong(input.PlaceOf("name"), $"the input \"{input.Text("name")}\" bears the name that says how the lever of cam \"{cam}\" is held", "give it another name");
            }
        }

        foreach (CheckedTable step in Root.Tables("scenario").SelectMany(s => s.Tables("steps")))
        {
            Step(step, driven);
        }
    }

    private void Follower(CheckedTable cam)
    {
        if (cam.Table("follower") is not { } follower || follower.Text("kind") is not { } kind)
        {
            return;
        }

        bool roller = string.Equals(kind, "roller", StringComparison.Ordinal);
        if (roller && !follower.Has("radius"))
        {
            Wrong(follower.Place, "a roller has no 'radius', which decides the cam's outline", "write radius = \"2 mm\"");
        }
        else if (!roller && follower.Has("radius"))
        {
            Wrong(follower.KeyPlaceOf("radius"), "a flat follower has a 'radius'", "leave it out, or write kind = \"roller\"");
        }
    }

    // A swinging lever is lifted by angles and pressed by a torque, a sliding one by lengths and a force.
    private void Units(CheckedTable cam)
    {
        if (cam.Has("lever") == cam.Has("slide"))
        {
            return;
        }

        bool swings = cam.Has("lever");
        string how = swings ? "swinging" : "sliding";
        Dimension lift = swings ? Dimension.Angle : Dimension.Length;
        Is(cam, "obstacle", lift, how);
        Is(cam, "latch", lift, how);
        Is((cam.Table("lever") ?? cam.Table("slide"))!, "stop", lift, how);
        Is(cam, "inertia", swings ? Dimension.Inertia : Dimension.Mass, how);
        foreach (CheckedTable rise in cam.Tables("profile"))
        {
            Is(rise, "lift", lift, how);
        }

        if (cam.Table("contact") is { } contact)
        {
            Is(contact, "closed_below", lift, how);
            Is(contact, "closed_above", lift, how);
            Is(contact, "tolerance", lift, how);
        }

        if (cam.Table("press") is not { } press)
        {
            return;
        }

        Is(press, "rate", swings ? Dimension.TorqueRate : Dimension.ForceRate, how);
        string other = swings ? "force" : "torque";
        if (press.Has(other))
        {
            Wrong(press.KeyPlaceOf(other), $"a {how} lever is pressed by a {other}", swings ? "write torque = \"4 N mm\", the force times its distance from the pivot" : "write force = \"0.8 N\"");
        }
    }

    private void Is(CheckedTable table, string key, Dimension wanted, string how)
    {
        if (table.Has(key) && table.Quantity(key) is { } given && given.Dimension != wanted)
        {
            Wrong(table.PlaceOf(key), $"'{key}' of a {how} lever is {DimensionWords.ANames([given.Dimension])}", $"it is {DimensionWords.ANames([wanted])}, e.g. {DimensionWords.Example([wanted])}");
        }
    }

    private void Conducts(CheckedTable cam)
    {
        if (cam.Text("material") is not { } material || cam.Has("net"))
        {
            return;
        }

        if (IsMetal(material))
        {
            Wrong(cam.PlaceOf("material"), $"\"{material}\" conducts, and the cam has no 'net', without which it would keep no distance from live parts", "write the net that shaft and lever give it, e.g. net = \"E\", or a name of its own where it floats");
        }
    }

    private void LeverConducts(CheckedTable lever)
    {
        if (lever.Text("material") is { } material && !lever.Has("net") && IsMetal(material))
        {
            Wrong(lever.PlaceOf("material"), $"\"{material}\" conducts, and the lever has no 'net', without which it would keep no distance from live parts", "write net = \"E\" and its width where it is earthed, or a net of its own: then it counts as touchable");
        }
    }

    private static bool IsMetal(string material) => MaterialTable.Find(material).Found is not null || Metals.Any(m => material.Contains(m, StringComparison.OrdinalIgnoreCase));

    private void Upwards(CheckedTable table)
    {
        if (table.Items("z") is [{ Quantity: { } lower }, { Quantity: { } upper }] && upper.InBaseUnit <= lower.InBaseUnit)
        {
            Wrong(table.PlaceOf("z"), "'z' does not go upwards", "write the lower face first, e.g. z = [\"4 mm\", \"7 mm\"]");
        }
    }

    private void Contact(CheckedTable cam, HashSet<string> driven)
    {
        if (cam.Table("contact") is not { } contact)
        {
            return;
        }

        if (Refers(contact.Find("input"), "input", NamesOf("input")) && contact.Text("input") is { } input && !driven.Add(input))
        {
            Wrong(contact.PlaceOf("input"), $"input \"{input}\" is worked by two cams", "one lever works one input; give the other cam an input of its own");
        }
    }

    private void Step(CheckedTable step, HashSet<string> driven)
    {
        foreach (CheckedValue name in step.Items("close").Concat(step.Items("open")).Where(n => n.Text is { } text && driven.Contains(text)))
        {
            Wrong(name.Place, $"input \"{name.Text}\" is the contact of a cam's lever, which the cam moves", "block, free, latch or unlatch the cam instead");
        }

        foreach ((string key, string undo, string needs) in new[] { ("block", "free", "obstacle"), ("latch", "unlatch", "latch") })
        {
            foreach (CheckedValue name in step.Items(key).Concat(step.Items(undo)))
            {
                if (Refers(name, "cam", NamesOf("cam")) && name.Text is { } text && Root.Tables("cam").First(c => c.Is("name", text)) is { } cam && !cam.Has(needs))
                {
                    Wrong(name.Place, $"cam \"{text}\" has no '{needs}'", $"write {needs} = \"8 deg\" in the cam, the lift at which its lever then stays");
                }
            }

            foreach (CheckedValue both in step.Items(undo).Where(o => step.Items(key).Any(c => c.Text is not null && string.Equals(c.Text, o.Text, StringComparison.Ordinal))))
            {
                Wrong(both.Place, $"\"{both.Text}\" stands under {key} and {undo} in the same step", "keep one of the two, or write two steps");
            }
        }
    }
}
