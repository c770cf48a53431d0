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

        int numbered = sheets.Count - (options?.Moment is null ? 0 : 1); // the picture of a moment has no title block
        return SheetSet.Drawn("Sheet", [.. sheets.Select((s, i) => new UndrawnSheet(s.Name, () => s.Draw(new SheetNumber(i + 1, numbered))))], leaveOut);
    }

    private readonly record struct SheetOfSet(string Name, Func<SheetNumber, Sheet> Draw);

    // One line a sheet: the wheel, its carrier, strips, assembly, bases, nested sheets of stock, timing, draws of on-times, circuit, spacing, runs, the moment.
    private static IReadOnlyList<SheetOfSet> InOrder(Design design, SheetOptions options) =>
    [
        new("wheel", number => WheelSheet.Of(design, number, options)),
        new("carrier", number => CarrierSheet.Of(design, number)),
        .. design.Cams.Select((c, i) => new SheetOfSet($"cam {c.Brief.Name}", number => CamSheet.Of(design, i, number))),
        .. design.Strips.Strips.Select((s, i) => new SheetOfSet($"strip {s.Form.Strip.Name}", number => StripSheet.Of(design, i, number))),
        .. AssemblySheet.IsWanted(design) ? [new("assembly", number => AssemblySheet.Of(design, number, options))] : (SheetOfSet[])[],
        .. design.Parts.Bases.Select((b, i) => new SheetOfSet(b.Part.FileName, number => BaseSheet.Of(design, i, number))),
        .. design.Parts.Nested.SelectMany(n => Enumerable.Range(0, n.Result.Sheets.Count).Select(i => new SheetOfSet(NestSheet.Name(n, i), number => NestSheet.Of(design, n, i, number)))),
        new("timing", number => TimingSheet.Of(design, number, options)),
        .. DrawsSheet.IsWanted(design) ? [new("draws", number => DrawsSheet.Of(design, number))] : (SheetOfSet[])[],
        new("circuit", number => CircuitSheet.Of(design, number, options)),
        new("spacing", number => SpacingSheet.Of(design, number)),
        .. design.Brief.Scenarios.Select((s, i) => new SheetOfSet($"run {s.Name}", number => RunSheet.Of(design, i, number))),
        .. options.Moment is CircuitMoment moment ? [new("moment", _ => MomentSheet.Of(design, moment))] : (SheetOfSet[])[],
    ];
}
