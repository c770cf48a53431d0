using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>The parts list of an assembly: every part once, with the number that its leader carries on the drawing.</summary>
internal static class AssemblyItems
{
    /// <summary>The wheel's copper, whether of one piece or of lands.</summary>
    public const int Wheel = 1;

    /// <summary>The carrier.</summary>
    public const int Carrier = 2;

    /// <summary>The number of a strip, base, other part or screw; null for what is none of them.</summary>
    public static int? NumberOf(Design design, string name) => Items(design).FirstOrDefault(i => string.Equals(i.Name, name, StringComparison.Ordinal))?.Number;

    /// <summary>The list.</summary>
    public static SheetTable Table(Design design)
    {
        ReferenceDesignations designations = new(design.Brief);
        return new(
        [new("Item", TextAlong.End), new("Qty", TextAlong.End), new("Part"), new("Ref."), new("Material"), new("Net")],
        [.. Items(design).Select(i => (IReadOnlyList<string>)[Invariant.Text($"{i.Number}"), Invariant.Text($"{i.Count}"), i.Name, designations.Strip(i.Name) is { Length: > 0 } letter ? "-" + letter : "", i.Material, i.Net])])
        {
            Title = "Parts list",
        };
    }

    private sealed record ListedPart(int Number, int Count, string Name, string Material, string Net);

    private static IReadOnlyList<ListedPart> Items(Design design)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        string Stock(string material, double thicknessMm) => $"{material}, {numbers.Thickness(thicknessMm)}";
        WheelBrief wheel = design.Brief.Wheel;
        (int Count, string Name, string Material, string Net)[] all =
        [
            design.Brief.Feed is FeedBrief feed ? (1, "wheel", Stock(wheel.Material, wheel.ThicknessMm), feed.Net) : (design.Wheel.Copper.Count, "land", Stock(wheel.Material, wheel.ThicknessMm), "as labelled"),
            (1, "carrier", Stock($"insulating, group {design.Brief.Carrier.Group}", design.Brief.Carrier.ThicknessMm), ""),
            .. design.Parts.Bases.Select(b => (1, $"base: {b.Surface.Name}", $"insulating, group {b.Surface.Group}{(b.Part.Stock.ThicknessMm is double t ? $", {numbers.Thickness(t)}" : "")}", "")),
            .. design.Strips.Strips.Select(s => (1, s.Form.Strip.Name, Stock(s.Form.Material.Designation, s.Form.Strip.ThicknessMm), s.Net)),
            .. design.Brief.Parts.Select(p => (1, p.Name, "", p.Kind is PartKind.Live or PartKind.Earthed ? p.Net : AssemblyWords.KindWords(p.Kind))),
            .. design.Screws.Select(s => (1, s.Name, s.Thread, "")),
        ];
        return [.. all.Select((a, i) => new ListedPart(i + 1, a.Count, a.Name, a.Material, a.Net))];
    }
}
