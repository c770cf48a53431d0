using WheelDraft.Engineering;
namespace WheelDraft.Formats.Parameters;

/// <summary>The contacts of feed and outputs against the strips that serve them, and what goes with the on-periods of an output.</summary>
internal sealed class ContactRules(CheckedTable root, DiagnosticList diagnostics) : RuleBase(root, diagnostics)
{
    private static readonly string[] FoldKeys = ["contact_width", "contact_angle"];

    /// <inheritdoc/>
    public override void Check()
    {
        CheckedTable[] strips = [.. Root.Tables("strip")];
        if (Root.Table("feed") is { } feed)
        {
            Contact(feed, [.. strips.Where(s => s.Flag("feed") == true)]);
        }

        foreach (CheckedTable output in Root.Tables("output"))
        {
            Contact(output, [.. strips.Where(s => output.Text("name") is { } name && s.Is("output", name))]);
            Times(output);
        }
    }

    private void Times(CheckedTable output)
    {
        bool always = output.Is("on", "always");
        if (!always && (output.Find("on")?.Content is not null || output.Has("copper")) && !output.Has("tolerance"))
        {
            Wrong(output.Place, "[[output]] has no 'tolerance', which decides how large its ring must be", "write tolerance = \"0.6 s\", plus and minus about the nominal on-time");
        }

        Measured(output);
        if (!output.Has("adjust"))
        {
            return;
        }

        if (always)
        {
            Wrong(output.KeyPlaceOf("adjust"), "an output that is always on has an adjusting edge", "leave out 'adjust', or give it one on-period");
        }
        else if (output.Items("on").Count > 1)
        {
            Wrong(output.KeyPlaceOf("adjust"), $"an output with {ValueCheck.Items(output.Items("on").Count).Replace("items", "on-periods", StringComparison.Ordinal)} has an adjusting edge", "'adjust' goes with one on-period only");
        }

        if (output.Table("adjust") is { } adjust && adjust.Has("screw_lugs"))
        {
            Lugs(adjust);
        }
    }

    /// <summary>Lugs lie one behind the other between the strip and the screw's head, at both ends of travel.</summary>
    private void Lugs(CheckedTable adjust)
    {
        if (adjust.Quantity("travel") is not { } travel || adjust.Number("lever") is not { } lever || adjust.Quantity("screw_length") is not { } length || adjust.Text("screw") is not { } screw)
        {
            return;
        }

        double half = travel.Value / lever / 2;
        double behind = half;
        foreach (CheckedValue lug in adjust.Items("screw_lugs"))
        {
            if (lug.Items is not [{ Quantity: { } from }, { Quantity: { } to }])
            {
                return;
            }

            if (from.Value < behind || to.Value <= from.Value)
            {
                Wrong(lug.Place, $"this lug reaches from {Wording.Mm(from.Value)} to {Wording.Mm(to.Value)} of the screw's axis", $"it begins {Wording.Mm(behind)} from the strip or further out, {(behind > half ? "behind the lug before it" : "where the strip does not reach it at the end of travel")}, and ends beyond its beginning");
                return;
            }

            behind = to.Value;
        }

        // The head is at most as high as the thread is wide, a lock nut 0.8 of it (ISO 4032, rounded up, from memory).
        double needed = behind + half + (1.8 * Screws.DiameterMm(screw));
        if (length.Value < needed)
        {
            Wrong(adjust.PlaceOf("screw_length"), $"a screw of {Wording.Mm(length.Value)} does not reach through its lugs with lock nut and head", $"at least {Wording.Mm(needed)}: the far face of the last lug, half its own travel, 1.8 times the thread");
        }
    }

    /// <summary>What measured copper needs beside it, so that times follow from it.</summary>
    private void Measured(CheckedTable output)
    {
        if (!output.Has("copper"))
        {
            return;
        }

        if (Root.Table("wheel")?.Is("construction", "lands") == true)
        {
            Wrong(output.KeyPlaceOf("copper"), "'copper' of a lands wheel is measured", "give the times with 'on': with two wipers to a ring they do not follow from one stretch of copper alone");
        }

        if (output.Is("radius", "auto"))
        {
            Wrong(output.PlaceOf("radius"), "'copper' is measured on a ring whose radius is not given", "write radius = \"18.5 mm\", measured as well: how far the patch reaches depends on it");
        }

        if (output.Is("station", "auto"))
        {
            Wrong(output.PlaceOf("station"), "'copper' is measured for a wiper whose station is not given", "write station = \"120 deg\", where it touches when the wheel is at home");
        }

        foreach (CheckedTable stretch in output.Tables("copper"))
        {
            if (stretch.Quantity("from") is { } from && stretch.Quantity("to") is { } to && (to.InBaseUnit - from.InBaseUnit) % 360 == 0)
            {
                Wrong(stretch.PlaceOf("to"), "this stretch of copper ends where it begins", "from and to are its two edges; for a ring of copper all the way round write on = \"always\"");
            }
        }

        if (output.Has("adjust"))
        {
            Wrong(output.KeyPlaceOf("adjust"), "an output with measured copper has an adjusting edge", "a sloped edge is not known by one angle: give the on-time with 'on' instead, as timed or as reported for 'copper' without 'adjust'");
        }
    }

    private void Contact(CheckedTable wiper, CheckedTable[] strips)
    {
        if (wiper.Quantity("worn_length") is { } worn && wiper.Quantity("contact_length") is { } length && worn.InBaseUnit < length.InBaseUnit)
        {
            Wrong(wiper.PlaceOf("worn_length"), $"'worn_length' is {Mm(worn.InBaseUnit)}, less than the new 'contact_length' of {Mm(length.InBaseUnit)}", "a contact grows longer as it wears");
        }

        // A strip that is set out by the program has the contact of [strips].
        if (Root.Table("strips")?.Table("contact") is { } recipe && (strips.Length == 0 || strips.Any(s => s.Is("shape", "auto"))))
        {
            if (recipe.Has("rivet"))
            {
                Rivet(wiper, recipe);
            }

            return;
        }

        if (strips.Length == 0)
        {
            if (!wiper.Has("contact_width") && !Root.Has("strips"))
            {
                Wrong(wiper.Place, $"{wiper.Definition.Name} has no 'contact_width', which decides how wide its ring is", "write contact_width = \"2.0 mm\", or add the strip whose fold has that width");
            }

            return;
        }

        foreach (CheckedTable strip in strips)
        {
            switch (StripContact.Of(strip))
            {
                case { IsRivet: true } rivet:
                    Rivet(wiper, rivet.Piece);
                    break;
                case { } fold:
                    Fold(wiper, strip, fold);
                    break;
                default:
                    break;
            }
        }
    }

    private void Rivet(CheckedTable wiper, CheckedTable rivet)
    {
        foreach (string key in FoldKeys.Where(wiper.Has))
        {
            Wrong(wiper.KeyPlaceOf(key), $"'{key}' is given where the strip has a rivet", "leave it out: the patch of a rivet is a disc of diameter contact_length");
        }

        Same(wiper, "nose_radius", rivet.Quantity("radius")?.InBaseUnit, "the dome of its strip's rivet has");
        if (rivet.Quantity("diameter") is { } head)
        {
            foreach (string key in new[] { "contact_length", "worn_length" })
            {
                if (wiper.Quantity(key) is { } length && length.InBaseUnit > head.InBaseUnit)
                {
                    Wrong(wiper.PlaceOf(key), $"'{key}' is {Mm(length.InBaseUnit)}, more than the rivet's head of {Mm(head.InBaseUnit)}", "the patch lies within the head");
                }
            }
        }
    }

    private void Fold(CheckedTable wiper, CheckedTable strip, StripContact fold)
    {
        Same(wiper, "contact_width", fold.WidthMm, "the strip's fold has");
        decimal? outside = fold.Piece.Quantity("radius") is { } radius && strip.Quantity("thickness") is { } thickness ? radius.InBaseUnit + thickness.InBaseUnit : null;
        Same(wiper, "nose_radius", outside, "the outside of its strip's fold has");
        if (wiper.Quantity("contact_angle") is { } angle && strip.Quantity("approach") is { } approach)
        {
            decimal wanted = FoldAngleDeg(approach.InBaseUnit);

            // Angles in radians are rounded in their 28th digit.
            if (Math.Abs(FoldAngleDeg(angle.InBaseUnit + 90) - wanted) > 1e-9m)
            {
                Wrong(
                    wiper.PlaceOf("contact_angle"),
                    $"'contact_angle' is {QuantityText.Plain(angle.InBaseUnit)} deg, and its strip's approach of {QuantityText.Plain(approach.InBaseUnit)} deg gives {QuantityText.Plain(wanted)} deg",
                    "leave it out, or write the same");
            }
        }
    }

    /// <summary>approach − 90°, brought into (−90°, 90°]: a fold line has no sense.</summary>
    public static decimal FoldAngleDeg(decimal approachDeg)
    {
        decimal rest = (approachDeg - 90) % 180;
        return rest > 90 ? rest - 180 : rest <= -90 ? rest + 180 : rest;
    }

    private void Same(CheckedTable wiper, string key, decimal? fromStrip, string whose)
    {
        if (wiper.Quantity(key) is { } own && fromStrip is { } strip && own.InBaseUnit != strip)
        {
            Wrong(wiper.PlaceOf(key), $"'{key}' is {Mm(own.InBaseUnit)}, and {whose} {Mm(strip)}", "leave it out, or write the same");
        }
    }
}
