using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Surfaces, parts, ribs and slots.</summary>
internal sealed class BoardRules(CheckedTable root, DiagnosticList diagnostics) : RuleBase(root, diagnostics)
{
    /// <inheritdoc/>
    public override void Check()
    {
        foreach (CheckedTable surface in Root.Tables("surface"))
        {
            Outline(surface);
        }

        foreach (CheckedTable part in Root.Tables("part"))
        {
            Part(part);
        }

        foreach (CheckedTable item in Root.Tables("rib").Concat(Root.Tables("slot")))
        {
            Refers(item.Find("surface"), "surface", NamesOf("surface"));
            Drawable(item, item.Quantity("thickness") ?? item.Quantity("width"));
        }

        NotTooManyLegs();
        foreach (CheckedTable slot in Root.Tables("slot").Where(s => s.Is("profile", "v") && s.Is("depth", "through")))
        {
            Wrong(slot.PlaceOf("depth"), "a v groove is cut \"through\"", "give its depth as a length, or write profile = \"parallel\"");
        }
    }

    private void NotTooManyLegs()
    {
        foreach (IGrouping<string?, CheckedTable> onOne in Root.Tables("rib").Concat(Root.Tables("slot")).GroupBy(t => t.Text("surface"), StringComparer.Ordinal))
        {
            int legs = 0;
            foreach (CheckedTable item in onOne)
            {
                int before = legs;
                legs += Math.Max(0, item.Items("path").Count - 1);
                if (before <= Budgets.BarrierLegs && legs > Budgets.BarrierLegs)
                {
                    Wrong(item.PlaceOf("path"), $"with this the ribs and slots on \"{onOne.Key}\" have more than {Budgets.BarrierLegs} straight legs", $"ways over and round them are sought among at most {Budgets.BarrierLegs} on a surface; leave out those far from any conductor, and points of a path that change little");
                }
            }
        }
    }

    private void Outline(CheckedTable surface)
    {
        if (PlanPoints.Of(surface, "outline") is { Count: >= 3 } points && PlanPoints.CornersFault(points) is { } fault)
        {
            Wrong(surface.PlaceOf("outline"), fault, "give the corners in order round it, each once");
        }
    }

    private void Part(CheckedTable part)
    {
        bool live = part.Is("kind", "live");
        if (live && !part.Has("net"))
        {
            Wrong(part.PlaceOf("kind"), "a live part has no 'net', which decides its voltages", "write net = \"N\"");
        }
        else if (live && part.Is("net", "E"))
        {
            Wrong(part.PlaceOf("net"), "a live part is on net \"E\", which is always earth", "write kind = \"earthed\" without 'net', or give it the net that it is joined to");
        }
        else if (!live && part.Text("kind") is { } kind && part.Has("net"))
        {
            string own = string.Equals(kind, "earthed", StringComparison.Ordinal) ? "an earthed part is on net \"E\"" : $"a {kind} part is a net of its own name";
            Wrong(part.KeyPlaceOf("net"), $"a part that is {kind} has a 'net'", $"leave it out: {own}");
        }

        if (part.Items("z") is [{ Quantity: { } low }, { Quantity: { } high }] z && high.InBaseUnit <= low.InBaseUnit)
        {
            Wrong(z[1].Place, $"the part ends at {Mm(high.InBaseUnit)}, not above its beginning at {Mm(low.InBaseUnit)}", "z is lower end and upper end, in that order");
        }

        if (part.Table("rectangle") is { } rectangle && PlanPoints.One(rectangle, "from") is { } corner && PlanPoints.One(rectangle, "to") is { } opposite
            && (PlanPoints.Same(corner, corner with { X = opposite.X }) || PlanPoints.Same(corner, corner with { Y = opposite.Y })))
        {
            Wrong(rectangle.PlaceOf("to"), "the rectangle has no area", "its corners differ in x and in y");
        }

        if (part.Quantity("width") is { } width && PlanPoints.Of(part, "path") is { Count: >= 2 } path && PathOutline.Fault(path, width.Value) is { } fault)
        {
            Wrong(part.PlaceOf("path"), fault, "give it fewer or longer legs, a smaller width, or several parts");
        }
    }

    // A leg that runs back over the one before has no wall of its own, and no cutter leaves such a corner.
    private void Drawable(CheckedTable item, Quantity? width)
    {
        if (PlanPoints.Of(item, "path") is not { Count: >= 2 } points)
        {
            return;
        }

        if (PathOutline.Repeated(points) is int repeated)
        {
            Wrong(item.Items("path")[repeated].Place, "the same point stands twice in a row", "leave one of the two out");
        }
        else if (width is { } wide && PathOutline.BandFault(points, wide.Value) is { } fault)
        {
            Wrong(item.PlaceOf("path"), fault, "give it fewer or longer legs and blunter corners, or write it as several");
        }
    }
}
