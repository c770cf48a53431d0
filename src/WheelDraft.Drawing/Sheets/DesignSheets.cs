using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>The set of sheets of a design.</summary>
public static class DesignSheets
{
    /// <summary>Draws all sheets, in the order in which they are bound; names, which become file names, differ.</summary>
    public static IReadOnlyList<Sheet> Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        IReadOnlyList<Func<SheetNumber, Sheet>> sheets = InOrder(design);

        // Each sheet is drawn by itself from the design alone, so they are drawn side by side; the order is that of the list.
        Sheet[] drawn = new Sheet[sheets.Count];
        Parallel.For(0, sheets.Count, i => drawn[i] = sheets[i](new SheetNumber(i + 1, sheets.Count)));
        return drawn;
    }

    // One line a sheet: the wheel, strips, assembly, timing, circuit, spacing, runs.
    private static IReadOnlyList<Func<SheetNumber, Sheet>> InOrder(Design design) =>
    [
        number => WheelSheet.Of(design, number),
        .. Enumerable.Range(0, design.Strips.Strips.Count).Select(i => (Func<SheetNumber, Sheet>)(number => StripSheet.Of(design, i, number))),
        .. AssemblySheet.IsWanted(design) ? [number => AssemblySheet.Of(design, number)] : (Func<SheetNumber, Sheet>[])[],
        number => TimingSheet.Of(design, number),
        number => CircuitSheet.Of(design, number),
        number => SpacingSheet.Of(design, number),
        .. Enumerable.Range(0, design.Brief.Scenarios.Count).Select(i => (Func<SheetNumber, Sheet>)(number => RunSheet.Of(design, i, number))),
    ];
}
