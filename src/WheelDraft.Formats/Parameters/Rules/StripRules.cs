using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>What strips serve, and what goes with what in them.</summary>
internal sealed class StripRules(CheckedTable root, DiagnosticList diagnostics) : RuleBase(root, diagnostics)
{
    // Keys that count from the terminal end.
    private static readonly string[] FromTheEnd = ["clamp", "holes"];

    private readonly Dictionary<string, string> _served = new(StringComparer.Ordinal);

    /// <inheritdoc/>
    public override void Check()
    {
        Recipe();
        foreach (CheckedTable strip in Root.Tables("strip"))
        {
            Task(strip);
            if (strip.Is("shape", "auto"))
            {
                SetOut(strip);
            }
            else
            {
                Shape(strip);
                Spring(strip);
            }

            Refers(strip.Find("seated_on"), "surface", NamesOf("surface"));
        }
    }

    private bool IsLands => Root.Table("wheel")?.Is("construction", "lands") == true;

    private static bool IsPlain(CheckedTable strip) => strip.Has("net") || strip.Has("tip");

    private void Task(CheckedTable strip)
    {
        bool known = Refers(strip.Find("output"), "output", NamesOf("output"));
        if (strip.Has("wiper") && Root.Table("wheel")?.Text("construction") is not null && !IsLands)
        {
            Wrong(strip.KeyPlaceOf("wiper"), "'wiper' belongs to a lands wheel", "leave it out: on a windowed wheel an output has one wiper");
        }

        if (strip.Flag("feed") == true && IsLands)
        {
            Wrong(strip.KeyPlaceOf("feed"), "a lands wheel has no feed", "write output = with wiper = \"return\" for a second wiper");
        }

        string? task = strip.Text("output") is { } output && known ? $"the {(strip.Has("wiper") ? "second wiper" : "wiper")} of output \"{output}\""
            : strip.Flag("feed") == true ? "the feed wiper"
            : null;
        if (task is not null && !_served.TryAdd(task, strip.Text("name") ?? ""))
        {
            Wrong(strip.KeyPlaceOf(strip.Has("output") ? "output" : "feed"), $"{task} has a strip already, \"{_served[task]}\"", "one strip serves one wiper");
        }
    }

    private void Recipe()
    {
        if (Root.Table("strips") is not { } recipe)
        {
            return;
        }

        Refers(recipe.Find("seated_on"), "surface", NamesOf("surface"));
        if (recipe.Items("force") is [{ Quantity: { } least }, { Quantity: { } most }] force && most.InBaseUnit < least.InBaseUnit)
        {
            Wrong(force[1].Place, $"the greatest force, {QuantityText.Plain(most.InBaseUnit)} N, is less than the least, {QuantityText.Plain(least.InBaseUnit)} N", "both are written in that order, e.g. force = [\"0.4 N\", \"0.8 N\"]");
        }

        if (recipe.Text("tab") is { } tab && TabDimensions.Find(tab) is { } size && recipe.Tables("stock").SelectMany(s => s.Items("thickness")).ToArray() is { Length: > 0 } thicknesses
            && thicknesses.All(t => t.Quantity is { } thickness && !size.IsCutFrom((double)thickness.InBaseUnit)))
        {
            Wrong(recipe.PlaceOf("tab"), $"a tab {tab} is cut from stock of {Mm((decimal)size.LeastThicknessMm)} to {Mm((decimal)size.MostThicknessMm)} (IEC 61210, dimension C), and no stock at hand is so thick", $"add thickness \"{tab.Split('x')[1]} mm\" to the stock, or leave 'tab' out");
        }
    }

    // A strip set out by the program: for a wiper, from [strips].
    private void SetOut(CheckedTable strip)
    {
        if (IsPlain(strip))
        {
            Wrong(strip.PlaceOf("shape"), "a plain strip has the shape \"auto\"", "give its pieces: it presses on nothing that would decide its shape");
        }
        else if (!Root.Has("strips"))
        {
            Wrong(strip.PlaceOf("shape"), "the shape is \"auto\", and there is no [strips] that says what strips are made of", "add [strips] with stock, contact, foot, force and seated_on, or give the pieces");
        }

        foreach (string key in FromTheEnd.Where(strip.Has))
        {
            Wrong(strip.KeyPlaceOf(key), $"'{key}' is given where the shape is \"auto\"", "leave it out: it counts from the terminal end of a shape that is not known yet; settle the file first, then add it");
        }
    }

    private void Spring(CheckedTable strip)
    {
        bool plain = IsPlain(strip);
        CheckedTable[] automatic = [.. strip.Tables("shape").Where(p => p.Is("straight", "auto"))];
        if (automatic.Length > 1)
        {
            Wrong(automatic[1].PlaceOf("straight"), "two straights are \"auto\"", "one length at most is solved, so give this one");
        }

        if (plain && strip.Has("deflection"))
        {
            Wrong(strip.KeyPlaceOf("deflection"), "a plain strip has a 'deflection'", "leave it out: only a wiper is pushed back by the wheel");
        }
        else if (plain && automatic.Length > 0)
        {
            Wrong(automatic[0].PlaceOf("straight"), "a plain strip has a straight of \"auto\" length", "give the length: there is no deflection to solve it from");
        }
        else if (!plain && strip.Is("deflection", "auto") && (automatic.Length == 0 || !Root.Has("strips")) && strip.Find("shape")?.Content is not null)
        {
            Wrong(
                strip.PlaceOf("deflection"),
                automatic.Length == 0 ? "'deflection' is \"auto\", and no straight is" : "'deflection' is \"auto\", and there is no [strips] that says how hard contacts press",
                automatic.Length == 0 ? "write straight = \"auto\" for the length that is to be solved with it" : "add [strips] with its force, or give the deflection");
        }
        else if (!plain && automatic.Length > 0 && !strip.Has("deflection"))
        {
            Wrong(automatic[0].PlaceOf("straight"), "a straight is \"auto\", and there is no 'deflection' to solve it from", "write deflection = \"1.5 mm\" in the strip, or give the length");
        }

        Clamp(strip, plain);
    }

    private void Clamp(CheckedTable strip, bool plain)
    {
        if (!plain && !strip.Has("clamp"))
        {
            Wrong(strip.Place, "a strip that is a wiper has no 'clamp', which decides where its spring begins", "write clamp = [\"8 mm\", \"21 mm\"]");
        }

        if (strip.Items("clamp") is [{ Quantity: { } from }, { Quantity: { } to }] clamp && to.InBaseUnit <= from.InBaseUnit)
        {
            Wrong(clamp[1].Place, $"the clamp ends at {Mm(to.InBaseUnit)}, not beyond its beginning at {Mm(from.InBaseUnit)}", "both are developed positions from the terminal end, in that order");
        }
    }

    private void Shape(CheckedTable strip)
    {
        IReadOnlyList<CheckedValue> pieces = strip.Items("shape");
        decimal? width = null;
        bool widthKnown = true;
        for (int i = 0; i < pieces.Count; i++)
        {
            if (pieces[i].Table is not { } piece)
            {
                widthKnown = false;
                continue;
            }

            Piece(strip, piece, (i == 0, i == pieces.Count - 1));
            if (widthKnown && width is null && (piece.Has("straight") || piece.Has("sweep") || piece.Has("bend") || piece.Has("rivet")) && !piece.Has("width"))
            {
                Wrong(piece.Place, "the strip has no width here", "write width = \"5 mm\" in its first straight; later pieces go on with it");
                widthKnown = false;
            }

            width = StripContact.WidthAfter(piece, width);
            widthKnown &= width is not null;
        }

        Contacts(strip);
    }

    private void Piece(CheckedTable strip, CheckedTable piece, (bool First, bool Last) at)
    {
        if (piece.Has("tab") && !at.First)
        {
            Wrong(piece.Place, "a tab stands inside the strip", "it is the first piece, at the terminal end");
        }

        if (piece.Has("rivet") && !at.Last)
        {
            Wrong(piece.Place, "a rivet stands inside the strip", "it is the last piece, at the tip");
        }

        if (piece.Quantity("width") is { } width && piece.Quantity("width_end") is { } end
            && Math.Max(width.InBaseUnit, end.InBaseUnit) > Budgets.TaperRatio * Math.Min(width.InBaseUnit, end.InBaseUnit))
        {
            Wrong(piece.PlaceOf("width_end"), $"the straight tapers from {Mm(width.InBaseUnit)} to {Mm(end.InBaseUnit)}", $"one end is at most {Budgets.TaperRatio} times as wide as the other");
        }

        foreach (string key in new[] { "bend", "sweep" })
        {
            if (piece.Quantity(key) is { InBaseUnit: 0 })
            {
                Wrong(piece.PlaceOf(key), $"'{key}' is 0 deg", "leave the piece out, or give its angle");
            }
        }

        if (piece.Text("tab") is { } tab && strip.Quantity("thickness") is { } thickness
            && TabDimensions.Find(tab) is { } size && !size.IsCutFrom((double)thickness.InBaseUnit))
        {
            string[] fitting = [.. TabDimensions.All.Where(t => t.IsCutFrom((double)thickness.InBaseUnit)).Select(t => Words.Quoted(t.Size))];
            string others = fitting.Length == 0 ? "no tab can be cut from this stock" : $"from this stock there are {Words.Or(fitting)}";
            Wrong(
                piece.PlaceOf("tab"),
                $"a tab {tab} is cut from stock of {Mm((decimal)size.LeastThicknessMm)} to {Mm((decimal)size.MostThicknessMm)} (IEC 61210, dimension C), and this strip is {Mm(thickness.InBaseUnit)} thick",
                $"write thickness = \"{tab.Split('x')[1]} mm\"; {others}");
        }
    }

    private void Contacts(CheckedTable strip)
    {
        CheckedTable[] touching = [.. strip.Tables("shape").Where(p => p.Has("rivet") || p.Flag("contact") == true)];
        if (touching.Length > 1)
        {
            Wrong(touching[1].Place, "the strip has a second contact", "one rivet, or one bend with contact = true, touches");
        }

        if (IsPlain(strip) && touching.Length > 0)
        {
            Wrong(touching[0].Place, "a plain strip has a contact", "leave it out: a plain strip touches no ring");
        }
        else if (!IsPlain(strip) && touching.Length == 0 && strip.Find("shape")?.Content is not null && strip.Items("shape").All(p => p.Table is not null))
        {
            Wrong(strip.KeyPlaceOf("shape"), "the strip has no contact", "end it with a rivet, e.g. { rivet = \"2.2 mm\", radius = \"1.5 mm\", diameter = \"2.5 mm\" }, or mark one bend with contact = true");
        }
    }
}
