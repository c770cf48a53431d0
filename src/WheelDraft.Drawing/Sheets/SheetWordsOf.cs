using System.Globalization;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Words that all sheets of a design share.</summary>
internal static class SheetWordsOf
{
    /// <summary>The caution of every sheet.</summary>
    public const string Caution =
        "Mains voltage kills: isolate before work. This is a drafting aid and certifies nothing; local codes and a qualified person decide.";

    /// <summary>The cautions of a sheet of a design: that of every sheet, that something misses, and what the person takes on themselves.</summary>
    public static IReadOnlyList<string> CautionsOf(Design design) =>
    [
        .. design.Meets ? Array.Empty<string>() : ["MISSES: DO NOT CUT. Something in this design misses what is required of it; the report says what."],
        Caution,
        .. design.Brief.Spacing.OwnResponsibility is string words ? [$"Distances of one's own below the rule's, on own responsibility: \"{words}\"."] : Array.Empty<string>(),
    ];

    /// <summary>The title block of a sheet.</summary>
    public static TitleBlock TitleBlock(Design design, string subtitle, string documentType, DrawingScale? scale = null)
    {
        DrawingNumbers numbers = new(design.Brief.DrawingUnit);
        return new TitleBlock
        {
            Title = design.Brief.Title,
            Subtitle = subtitle,
            DocumentType = documentType,
            Number = design.Brief.DrawingNumber ?? "",
            Owner = design.Brief.Office.Owner,
            Creator = design.Brief.Office.CreatedBy,
            Approval = design.Brief.Office.ApprovedBy,
            Revision = design.Brief.Office.Revision,
            Date = design.Brief.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
            Scale = scale?.ToString() ?? "",
            Units = scale is null ? "" : $"{numbers.UnitSign}, decimal point",
        };
    }

    /// <summary>Which way a wheel turns, in words.</summary>
    public static string Turns(Design design) => design.Motion.Direction == Turning.Clockwise ? "clockwise" : "anticlockwise";
}

/// <summary>A sheet's place in its set.</summary>
/// <param name="Number">Which one, from 1.</param>
/// <param name="Of">How many there are.</param>
public sealed record SheetNumber(int Number, int Of)
{
    /// <summary>The only one.</summary>
    public static SheetNumber Single { get; } = new(1, 1);

    /// <summary>The title block with this number in it.</summary>
    internal TitleBlock On(TitleBlock block) => block with { Sheet = Number, Sheets = Of };
}
