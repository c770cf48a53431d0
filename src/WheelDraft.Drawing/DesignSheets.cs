using WheelDraft.Engineering;

namespace WheelDraft.Drawing;

/// <summary>The set of sheets of a design.</summary>
internal static class DesignSheets
{
    /// <summary>Draws all sheets, in the order in which they are bound; names, which become file names, differ.</summary>
    /// <param name="design">The design.</param>
    /// <param name="options">How they are drawn; as usual when null.</param>
    /// <param name="leaveOut">Told, in the order of the sheets, which of them cannot be drawn, why and what helps; the others are drawn all the same. Null for the first
    /// such sheet to end the drawing with its exception.</param>
    /// <exception cref="NoRoomException">A sheet has no room for its picture, and nobody wants to be told.</exception>
    public static IReadOnlyList<Sheet> Of(Design design, SheetOptions? options = null, Action<string>? leaveOut = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        IReadOnlyList<SheetOfSet> sheets = InOrder(design, options ?? SheetOptions.Usual);

        // Each sheet is drawn by itself from the design alone, so they are drawn side by side; the order is that of the list.
        Sheet?[] drawn = new Sheet?[sheets.Count];
        string?[] left = new string?[sheets.Count];
        int numbered = sheets.Count - (options?.Moment is null ? 0 : 1); // the picture of a moment has no title block
        Parallel.For(0, sheets.Count, i =>
        {
            try
            {
                drawn[i] = sheets[i].Draw(new SheetNumber(i + 1, numbered));
            }
            catch (Exception trouble) when (leaveOut is not null && trouble is not OutOfMemoryException)
            {
                left[i] = $"Sheet '{sheets[i].Name}' is left out: {WhyOf(trouble)} Everything else is made all the same.";
            }
        });
        foreach (string told in left.OfType<string>())
        {
            leaveOut!(told);
        }

        return [.. drawn.OfType<Sheet>()];
    }

    private static string WhyOf(Exception trouble) => trouble is NoRoomException
        ? $"its labels and tables leave no room for the picture ({trouble.Message.TrimEnd('.')}). Shorter names help, or --callouts numbers."
        : $"this is a fault of the program, not of your file ({trouble.GetType().Name}: {trouble.Message.TrimEnd('.')}); please report it.";

    private readonly record struct SheetOfSet(string Name, Func<SheetNumber, Sheet> Draw);

    // One line a sheet: the wheel, its carrier, strips, assembly, bases, nested sheets of stock, timing, circuit, spacing, runs, the moment.
    private static IReadOnlyList<SheetOfSet> InOrder(Design design, SheetOptions options) =>
    [
        new("wheel", number => WheelSheet.Of(design, number, options)),
        new("carrier", number => CarrierSheet.Of(design, number)),
        .. design.Strips.Strips.Select((s, i) => new SheetOfSet($"strip {s.Form.Strip.Name}", number => StripSheet.Of(design, i, number))),
        .. AssemblySheet.IsWanted(design) ? [new("assembly", number => AssemblySheet.Of(design, number, options))] : (SheetOfSet[])[],
        .. design.Parts.Bases.Select((b, i) => new SheetOfSet(b.Part.FileName, number => BaseSheet.Of(design, i, number))),
        .. design.Parts.Nested.SelectMany(n => Enumerable.Range(0, n.Result.Sheets.Count).Select(i => new SheetOfSet(NestSheet.Name(n, i), number => NestSheet.Of(design, n, i, number)))),
        new("timing", number => TimingSheet.Of(design, number, options)),
        new("circuit", number => CircuitSheet.Of(design, number, options)),
        new("spacing", number => SpacingSheet.Of(design, number)),
        .. design.Brief.Scenarios.Select((s, i) => new SheetOfSet($"run {s.Name}", number => RunSheet.Of(design, i, number))),
        .. options.Moment is CircuitMoment moment ? [new("moment", _ => MomentSheet.Of(design, moment))] : (SheetOfSet[])[],
    ];
}
