using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Where the numbers of the process come from: the person's own first, then the named process at the copper's thickness.</summary>
internal sealed class ProcessRules(CheckedTable root, DiagnosticList diagnostics) : RuleBase(root, diagnostics)
{
    private static readonly (string Key, string Decides)[] Numbers =
    [
        ("kerf", "how far the cut line lies from the edge (0 when the shop allows for it)"),
        ("tolerance", "how sharp times and how far windows are"),
        ("least_slot", "the narrowest window"),
        ("least_web", "the narrowest copper"),
        ("least_hole", "the smallest hole"),
        ("inside_radius", "the corners of windows"),
    ];

    // Common practice, no source.
    private const double LeastTabMm = 0.3;
    private const double MostTabMm = 1;

    /// <inheritdoc/>
    public override void Check()
    {
        if (Root.Table("process") is not { } process)
        {
            return;
        }

        decimal? thickness = Root.Table("wheel")?.Quantity("thickness")?.InBaseUnit;
        if (!process.Has("name"))
        {
            foreach ((string key, string decides) in Numbers.Where(n => !process.Has(n.Key) && n.Key is not "least_hole"))
            {
                Wrong(
                    process.Place,
                    $"[process] has no '{key}', which decides {decides}, and no name of a process to take it from",
                    $"{MissingKeys.RightForm(process.Definition.Find(key)!)}, or name = \"fibre-laser\"");
            }
        }
        else if (process.Text("name") is { } name && thickness is { } stock)
        {
            Stock(process, CuttingProcesses.Find(name)!, stock);
        }

        InsideRadius(process);
        if (process.Has("tab_width") && !process.Has("holding_tabs"))
        {
            Wrong(process.PlaceOf("tab_width"), "'tab_width' has no tabs to be the width of", "add e.g. holding_tabs = 3, or leave it out");
        }
    }

    /// <summary>The numbers for a file without faults.</summary>
    public static ProcessBrief Resolve(CheckedTable root)
    {
        CheckedTable process = root.Table("process")!;
        double thickness = root.Table("wheel")!.Quantity("thickness")!.Value.Value;
        double Of(string key) => Number(process, key, thickness)!.Value;
        return new ProcessBrief(process.Text("name"), Of("kerf"), Of("tolerance"), Of("least_slot"), Of("least_web"), Of("least_hole"), Of("inside_radius"))
        {
            HoldingTabs = (int)(process.Number("holding_tabs") ?? 0),
            TabWidthMm = process.Quantity("tab_width")?.Value ?? Math.Clamp(Of("least_web"), LeastTabMm, MostTabMm),
        };
    }

    private static double? Number(CheckedTable process, string key, double thicknessMm)
    {
        if (process.Find(key) is { } own)
        {
            return own.Quantity?.Value;
        }

        if (process.Text("name") is not { } name)
        {
            return string.Equals(key, "least_hole", StringComparison.Ordinal) ? Number(process, "least_slot", thicknessMm) : null;
        }

        CuttingProcess listed = CuttingProcesses.Find(name)!;
        return key switch
        {
            "kerf" => listed.KerfMm,
            "tolerance" => listed.Tolerance.At(thicknessMm),
            "least_slot" => listed.LeastSlot.At(thicknessMm),
            "least_web" => listed.LeastWeb.At(thicknessMm),
            "least_hole" => listed.LeastHole.At(thicknessMm),
            _ => listed.InsideRadius.At(thicknessMm),
        };
    }

    private void Stock(CheckedTable process, CuttingProcess listed, decimal thickness)
    {
        if ((double)thickness < listed.ThinnestMm || (double)thickness > listed.ThickestMm)
        {
            string range = listed.ThickestMm is { } most ? $"from {Short(listed.ThinnestMm)} mm to {Short(most)} mm" : $"from {Short(listed.ThinnestMm)} mm";
            string[] others = [.. CuttingProcesses.All.Where(p => (double)thickness >= p.ThinnestMm && !((double)thickness > p.ThickestMm)).Select(p => $"\"{p.Name}\"")];
            Wrong(process.PlaceOf("name"), $"{listed.Name} does not cut copper of {Mm(thickness)}", $"it cuts {range}; for this thickness there are {Words.And(others)}");
        }
    }

    private void InsideRadius(CheckedTable process)
    {
        double thickness = Root.Table("wheel")?.Quantity("thickness")?.Value ?? 0;
        if (Number(process, "kerf", thickness) is not { } kerf || Number(process, "inside_radius", thickness) is not { } radius || radius >= kerf / 2)
        {
            return;
        }

        // Placed at the number that the person gave; the radius first, since it is the one to change.
        string key = process.Has("inside_radius") ? "inside_radius" : process.Has("kerf") ? "kerf" : "name";
        Wrong(
            process.PlaceOf(key),
            $"'inside_radius' is {Short(radius)} mm, less than half the kerf of {Short(kerf)} mm: such corners cannot be cut",
            $"write inside_radius = \"{Short(kerf / 2)} mm\" or more");
    }
}
