namespace WheelDraft.Formats.Parameters;

/// <summary>The profile of each cam: steps in order within one turn, a lift that closes, a rest, and places that lie where they can.</summary>
internal sealed class CamProfileRules(CheckedTable root, DiagnosticList diagnostics) : RuleBase(root, diagnostics)
{
    // Parts of a turn below which two places are the same: as for on-periods.
    private const double Hair = 1e-12;

    private readonly record struct ProfileStep(CheckedTable Table, double From, double To, double? Lift)
    {
        public string Key => Table.Has("drop") ? "at" : "from";
    }

    /// <inheritdoc/>
    public override void Check()
    {
        double? turnS = TurnTime.Of(Root);
        foreach (CheckedTable cam in Root.Tables("cam"))
        {
            CheckedTable[] tables = [.. cam.Tables("profile")];
            NeedsInertia(cam, tables);
            ProfileStep?[] steps = [.. tables.Select(t => Of(t, turnS))];
            if (tables.Length > 0 && tables.Length == cam.Items("profile").Count && Array.TrueForAll(steps, s => s is not null) && OneUnit(cam))
            {
                Order([.. steps.Select(s => s!.Value)]);
                Lifts(cam, [.. steps.Select(s => s!.Value)]);
                Drops([.. steps.Select(s => s!.Value)], turnS!.Value);
            }
        }
    }

    private void NeedsInertia(CheckedTable cam, CheckedTable[] tables)
    {
        if (!cam.Has("inertia") && Array.Find(tables, t => t.Has("drop")) is { } drop)
        {
            Wrong(drop.KeyPlaceOf("drop"), "the lever falls, and the cam has no 'inertia', which decides how long it takes", cam.Has("slide") ? "write inertia = \"5 g\", the mass of the lever" : "write inertia = \"200 g mm2\", of the lever about its pivot");
        }
    }

    private static bool OneUnit(CheckedTable cam) =>
        cam.Tables("profile").Where(t => t.Has("lift")).All(t => t.Quantity("lift") is { } lift && lift.Dimension == (cam.Has("lever") ? Dimension.Angle : Dimension.Length));

    private ProfileStep? Of(CheckedTable table, double? turnS)
    {
        string first = table.Has("drop") ? "at" : "from";
        string last = table.Has("drop") ? "at" : "to";
        if (Share(table, first, turnS) is not { } from || Share(table, last, turnS) is not { } to)
        {
            return null;
        }

        double length = to - from <= -Hair ? to - from + 1 : to - from;
        if (!table.Has("drop") && (length <= Hair || length > 1 - Hair))
        {
            Wrong(table.PlaceOf("to"), "this motion takes no part of the turn, or all of it", "let it end later than it begins, and leave the lever a rest");
            return null;
        }

        return table.Has("drop") ? new ProfileStep(table, from, from, 0) : table.Quantity("lift") is { } lift ? new ProfileStep(table, from, from + length, (double)lift.InBaseUnit) : null;
    }

    private double? Share(CheckedTable table, string key, double? turnS)
    {
        if (table.Quantity(key) is not { } amount || turnS is not { } turn)
        {
            return null;
        }

        double share = amount.Dimension == Dimension.Angle ? amount.Value / 360 : amount.Value / turn;
        if (share <= 1 + Hair)
        {
            return share >= 1 - Hair ? 0 : share;
        }

        Wrong(table.PlaceOf(key), $"'{key}' is {QuantityText.Plain(amount.InBaseUnit)} s, longer than the turn of {Short(turn)} s", $"it lies from 0 s to {Short(turn)} s after home");
        return null;
    }

    // Unrolled from the first step, each begins no sooner than the one before ends, and the last ends within a turn.
    private void Order(ProfileStep[] steps)
    {
        double home = steps[0].From;
        double end = home;
        foreach (ProfileStep step in steps)
        {
            double from = step.From < home - Hair ? step.From + 1 : step.From;
            if (from < end - Hair)
            {
                Wrong(step.Table.PlaceOf(step.Key), "this step of the profile begins before the one above it has ended", "write the steps in the order in which they come, within one turn, each beginning no sooner than the last ends");
                return;
            }

            end = from + (step.To - step.From);
        }

        if (end > home + 1 + Hair)
        {
            Wrong(steps[^1].Table.PlaceOf(steps[^1].Key), "the profile takes longer than a turn", "its last step ends no later than its first begins, a turn on");
        }
    }

    // Before a drop the lever stands still; after it there is time to come down.
    private void Drops(ProfileStep[] steps, double turnS)
    {
        for (int i = 0; i < steps.Length; i++)
        {
            ProfileStep before = steps[(i + steps.Length - 1) % steps.Length], next = steps[(i + 1) % steps.Length];
            if (!steps[i].Table.Has("drop"))
            {
                continue;
            }

            if (before.Table.Is("law", "uniform") && Same(before.To, steps[i].From))
            {
                Wrong(
                    before.Table.PlaceOf("law"),
                    "a uniform motion ends where the lever drops: it would not fall there but go on over the corner of the step, higher than asked",
                    $"let it ride first, e.g. {RideExample(steps[i], turnS)}, or take a law that ends at rest");
            }

            if (Same(next.From, steps[i].From))
            {
                Wrong(steps[i].Table.PlaceOf("at"), "the next step of the profile begins where the lever drops", "leave it a rest: a roller needs some degrees to roll over the corner of the step");
            }
        }
    }

    // A drop a few degrees later, as the file writes its place.
    private static string RideExample(ProfileStep drop, double turnS)
    {
        const double rideDeg = 3;
        double at = (drop.From + (rideDeg / 360)) % 1;
        return drop.Table.Quantity("at") is { Dimension: Dimension.Angle } ? $"at = \"{Short(at * 360)} deg\"" : $"at = \"{Short(at * turnS)} s\"";
    }

    private static bool Same(double a, double b) => Math.Abs(a - b - Math.Round(a - b)) <= Hair;

    private void Lifts(CheckedTable cam, ProfileStep[] steps)
    {
        double before = steps[^1].Lift ?? 0;
        double top = 0;
        bool rests = false;
        foreach (ProfileStep step in steps)
        {
            if (step.Lift == before)
            {
                string key = step.Table.Has("drop") ? "drop" : "lift";
                Wrong(step.Table.PlaceOf(key), before == 0 ? "this step of the profile leaves the lever at rest" : "this step of the profile leaves the lever where it is", "leave it out: between steps the lever rides where it is; a profile that ends lifted begins lifted");
            }

            before = step.Lift ?? 0;
            top = Math.Max(top, before);
            rests |= before == 0;
        }

        if (!rests)
        {
            Wrong(cam.PlaceOf("profile"), "the lever never comes to rest, from which lifts count", "add a return to lift 0, or a drop");
        }

        Place(cam, "obstacle", top, beyond: false);
        Place(cam, "latch", top, beyond: true);
        Stop(cam, top);
    }

    // A stop that ends the lever's way before the cam or the latch does would be no stop.
    private void Stop(CheckedTable cam, double top)
    {
        if ((cam.Table("lever") ?? cam.Table("slide")) is not { } lever || lever.Quantity("stop") is not { } stop || stop.Dimension != (cam.Has("lever") ? Dimension.Angle : Dimension.Length))
        {
            return;
        }

        double highest = Math.Max(top, cam.Quantity("latch")?.Value ?? 0);
        if (stop.Value < highest)
        {
            string unit = stop.Dimension == Dimension.Angle ? "deg" : "mm";
            Wrong(lever.PlaceOf("stop"), $"'stop' is {Short(stop.Value)} {unit}, and the lever goes to {Short(highest)} {unit}", "it lies at the latch or the greatest lift, or beyond");
        }
    }

    private void Place(CheckedTable cam, string key, double top, bool beyond)
    {
        if (cam.Quantity(key) is not { } place || (beyond ? place.Value > top : place.Value < top))
        {
            return;
        }

        string unit = place.Dimension == Dimension.Angle ? "deg" : "mm";
        Wrong(
            cam.PlaceOf(key),
            $"'{key}' is {Short(place.Value)} {unit}, and the greatest lift is {Short(top)} {unit}",
            beyond ? "it lies beyond the greatest lift, so that the cam does not lift the lever out of it" : "it lies below the greatest lift: the lever stays there on its way back to rest");
    }
}
