using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>The set of sheets of a design.</summary>
internal static class DesignSheets
{
    /// <summary>Draws all sheets, in the order in which they are bound; names, which become file names, differ.</summary>
    /// <param name="design">The design.</param>
    /// <param name="options">How they are drawn; as usual when null.</param>
    public static IReadOnlyList<Sheet> Of(Design design, SheetOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        IReadOnlyList<Func<SheetNumber, Sheet>> sheets = InOrder(design, options ?? SheetOptions.Usual);

        // Each sheet is drawn by itself from the design alone, so they are drawn side by side; the order is that of the list.
        Sheet[] drawn = new Sheet[sheets.Count];
        int numbered = sheets.Count - (options?.Moment is null ? 0 : 1); // the picture of a moment has no title block
        Parallel.For(0, sheets.Count, i => drawn[i] = sheets[i](new SheetNumber(i + 1, numbered)));
        return drawn;
    }

    // One line a sheet: the wheel, strips, assembly, timing, circuit, spacing, runs, the moment.
    private static IReadOnlyList<Func<SheetNumber, Sheet>> InOrder(Design design, SheetOptions options) =>
    [
        number => WheelSheet.Of(design, number, options),
        .. Enumerable.Range(0, design.Strips.Strips.Count).Select(i => (Func<SheetNumber, Sheet>)(number => StripSheet.Of(design, i, number))),
        .. AssemblySheet.IsWanted(design) ? [number => AssemblySheet.Of(design, number, options)] : (Func<SheetNumber, Sheet>[])[],
        number => TimingSheet.Of(design, number, options),
        number => CircuitSheet.Of(design, number, options),
        number => SpacingSheet.Of(design, number),
        .. Enumerable.Range(0, design.Brief.Scenarios.Count).Select(i => (Func<SheetNumber, Sheet>)(number => RunSheet.Of(design, i, number))),
        .. options.Moment is CircuitMoment moment ? [_ => MomentSheet.Of(design, moment)] : (Func<SheetNumber, Sheet>[])[],
    ];
}
